using System.Collections.Immutable;
using NcLanguage.Checks;
using NcLanguage.Server.Protocol;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Features;

/// <summary>The findings of a document as they went out: behind a key all but a few go out again, and are neither mapped nor written as JSON a second time.</summary>
sealed class ShownFindings
{
    readonly SourceText _text;
    readonly ImmutableArray<Finding> _findings;
    readonly bool[] _areNotes;
    readonly bool _hasLinks;

    ShownFindings(SourceText text, ImmutableArray<Finding> findings, bool[] areNotes, bool hasLinks, Diagnostic[] diagnostics)
    {
        (_text, _findings, _areNotes, _hasLinks) = (text, findings, areNotes, hasLinks);
        Diagnostics = diagnostics;
    }

    public Diagnostic[] Diagnostics { get; }

    /// <param name="text">The text that the findings are of.</param>
    /// <param name="findings">In the order of the text.</param>
    /// <param name="areNotes">Which of them are told as notes, whatever they are.</param>
    /// <param name="hasLinks">Whether findings link to the pages of their rules.</param>
    /// <param name="before">What went out last; null for nothing.</param>
    /// <param name="relatesBack">Whether a finding names a place before its own: an edit between the two may change that, though the finding is the same.</param>
    /// <param name="map">Puts a finding into the protocol's words, perhaps as a note.</param>
    public static ShownFindings Of(
        SourceText text, ImmutableArray<Finding> findings, bool[] areNotes, bool hasLinks, ShownFindings? before, Func<Finding, bool> relatesBack, Func<Finding, bool, Diagnostic> map)
    {
        (var unmoved, var unmovedAtEnd) = before is not null && before._hasLinks == hasLinks ? before.UnmovedOf(text, findings) : (0, 0);
        var diagnostics = new Diagnostic[findings.Length];
        for (var i = 0; i < findings.Length; i++)
        {
            var fromEnd = findings.Length - i;
            diagnostics[i] = i < unmoved && before!.Has(i, findings[i], areNotes[i]) ? before.Diagnostics[i]
                : fromEnd <= unmovedAtEnd && before!.Has(before._findings.Length - fromEnd, findings[i], areNotes[i]) && !relatesBack(findings[i]) ? before.Diagnostics[^fromEnd]
                : map(findings[i], areNotes[i]);
        }
        return new ShownFindings(text, findings, areNotes, hasLinks, diagnostics);
    }

    bool Has(int index, Finding finding, bool isNote) => ReferenceEquals(_findings[index], finding) && _areNotes[index] == isNote;

    /// <summary>How many findings, at the beginning and at the end, may be the very same because their lines are.</summary>
    (int AtBeginning, int AtEnd) UnmovedOf(SourceText text, ImmutableArray<Finding> findings)
    {
        (var chunks, var chunksAtEnd) = SharedEnds.Of(_text.Chunks, text.Chunks);
        var most = Math.Min(_findings.Length, findings.Length);
        var unmoved = chunks == text.Chunks.Length ? most : Math.Min(most, FirstFrom(findings, text.FirstLineOf(chunks)));
        return text.LineCount != _text.LineCount || chunksAtEnd == 0 ? (unmoved, 0)
            : (unmoved, Math.Min(most, findings.Length - FirstFrom(findings, text.FirstLineOf(text.Chunks.Length - chunksAtEnd))));
    }

    /// <summary>The first finding at or behind a line.</summary>
    static int FirstFrom(ImmutableArray<Finding> findings, int line)
    {
        (var low, var high) = (0, findings.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (findings[middle].Line < line)
                low = middle + 1;
            else
                high = middle;
        }
        return low;
    }
}
