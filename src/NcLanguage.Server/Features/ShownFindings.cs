using System.Collections.Immutable;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Server.Protocol;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Features;

/// <summary>The findings of a document as they went out: behind a key all but a few go out again, perhaps some lines further down, and are not put into the protocol's words a second time.</summary>
sealed class ShownFindings
{
    readonly SourceText _text;
    readonly ImmutableArray<Finding> _findings;
    readonly bool[] _areNotes;
    readonly int[] _setters;
    readonly bool _hasLinks;

    ShownFindings(SourceText text, ImmutableArray<Finding> findings, bool[] areNotes, int[] setters, bool hasLinks, Diagnostic[] diagnostics)
    {
        (_text, _findings, _areNotes, _setters, _hasLinks) = (text, findings, areNotes, setters, hasLinks);
        Diagnostics = diagnostics;
    }

    public Diagnostic[] Diagnostics { get; }

    /// <param name="text">The text that the findings are of.</param>
    /// <param name="findings">In the order of the text.</param>
    /// <param name="areNotes">Which of them are told as notes, whatever they are.</param>
    /// <param name="hasLinks">Whether findings link to the pages of their rules.</param>
    /// <param name="before">What went out last; null for nothing.</param>
    /// <param name="setterOf">The line of the block that set what a finding concerns, which an edit far from it may change; −1 where none is told. Asked in the order of the text.</param>
    /// <param name="map">Puts a finding into the protocol's words, perhaps as a note.</param>
    public static ShownFindings Of(
        SourceText text, ImmutableArray<Finding> findings, bool[] areNotes, bool hasLinks, ShownFindings? before, Func<Finding, int> setterOf, Func<Finding, bool, Diagnostic> map)
    {
        var setters = new int[findings.Length];
        for (var i = 0; i < setters.Length; i++)
            setters[i] = setterOf(findings[i]);
        var diagnostics = new Diagnostic[findings.Length];
        if (before is not null && before._hasLinks == hasLinks)
            before.TakeOver(new LineMap(before._text, text), findings, areNotes, setters, diagnostics);
        for (var i = 0; i < diagnostics.Length; i++)
            diagnostics[i] ??= map(findings[i], areNotes[i]);
        return new ShownFindings(text, findings, areNotes, setters, hasLinks, diagnostics);
    }

    /// <summary>Fills in what was told of the same findings before. Both are in the order of the text, in which the lines that are in both versions stand alike.</summary>
    void TakeOver(LineMap lines, ImmutableArray<Finding> findings, bool[] areNotes, int[] setters, Diagnostic[] diagnostics)
    {
        Func<int, int> now = lines.Same;
        var from = 0;
        for (var i = 0; i < findings.Length; i++)
        {
            var finding = findings[i];
            var line = lines.SameBefore(finding.Line);
            if (line < 0)
                continue;
            while (from < _findings.Length && (_findings[from].Line, _findings[from].StartColumn).CompareTo((line, finding.StartColumn)) < 0)
                from++;
            for (var at = from; at < _findings.Length && _findings[at].Line == line && _findings[at].StartColumn == finding.StartColumn; at++)
            {
                if (_areNotes[at] != areNotes[i] || !IsAgain(at, finding, setters[i], lines))
                    continue;
                diagnostics[i] = Stays(at, lines) ? Diagnostics[at] : Diagnostics[at].MovedBy(now);
                break;
            }
        }
    }

    /// <summary>Whether a finding is one of those before, of which nothing is said otherwise but the numbers of lines.</summary>
    bool IsAgain(int index, Finding finding, int setter, LineMap lines)
    {
        var before = _findings[index];
        if (finding.Rule.PutsFixesInDoubt || (_setters[index] < 0 ? -1 : lines.Same(_setters[index])) != setter || (setter < 0 && _setters[index] >= 0))
            return false;
        return (ReferenceEquals(before, finding) && finding.Related is null)
            || (before.Rule == finding.Rule && before.Severity == finding.Severity && before.EndColumn == finding.EndColumn
                && before.Message == finding.Message && before.ConcernsMessage == finding.ConcernsMessage && IsAgain(before.Related, finding.Related, lines));
    }

    static bool IsAgain(RelatedPlace? before, RelatedPlace? place, LineMap lines) =>
        before is null || place is null
            ? before is null && place is null
            : lines.Same(before.Line) is >= 0 and var line && before with { Line = line } == place;

    /// <summary>Whether all lines that were told with a finding have their numbers still.</summary>
    bool Stays(int index, LineMap lines)
    {
        return lines.Shift == 0 || (IsInPlace(_findings[index].Line) && (_setters[index] < 0 || IsInPlace(_setters[index])) && (_findings[index].Related is not { } related || IsInPlace(related.Line)));

        bool IsInPlace(int line) => lines.Same(line) == line;
    }
}
