using System.Collections.Immutable;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing;

/// <summary>A fix and the finding it is for, in the text that both speak of.</summary>
public sealed record ChosenFix(Finding Finding, Fix Fix, SourceText Text);

/// <summary>What came of making all fixes that are certain.</summary>
/// <param name="Analysis">The program with them.</param>
/// <param name="Made">Those that were made, in their order.</param>
/// <param name="Left">Those that did not mend what they are for: they are not in the text.</param>
/// <param name="HasEnded">Whether none is left to make; otherwise they bring out each other without end.</param>
public sealed record MadeFixes(ProgramAnalysis Analysis, ImmutableArray<ChosenFix> Made, ImmutableArray<ChosenFix> Left, bool HasEnded);

/// <summary>The fixes that are certain: those that can be made at one go, and all of them, again and again, since one may bring out the next.</summary>
public static class CertainFixes
{
    const int MostRounds = 25;

    /// <summary>Makes them until none is left. One whose finding stands there as before is taken back, and tried again only when others have been made: what hindered it may be gone with them.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static MadeFixes MakeAll(ProgramAnalysis analysis, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var made = ImmutableArray.CreateBuilder<ChosenFix>();
        var left = new Dictionary<Place, ChosenFix>();
        for (var round = 0; round < MostRounds; round++)
        {
            var chosen = Choose(analysis, left, cancel);
            if (chosen.Count == 0)
                return new MadeFixes(analysis, made.ToImmutable(), [.. left.Values], HasEnded: true);
            var edits = TextEdits.Merge(chosen.SelectMany(choice => choice.Fix.Edits));
            var next = ProgramAnalysis.Create(TextEdits.Apply(analysis.Text, edits), analysis.Setup, analysis.Machine, analysis.Options, cancel);
            var vain = InVain(analysis, next, chosen, edits);
            foreach (var choice in vain)
                left[PlaceOf(choice.Finding)] = choice;
            if (vain.Count > 0)
                continue;
            made.AddRange(chosen);
            left.Clear();
            analysis = next;
        }
        return new MadeFixes(analysis, made.ToImmutable(), [.. left.Values], HasEnded: false);
    }

    /// <summary>For every finding its first certain fix, in the order of the text. A fix is taken whole or not at all: one that meets another waits for the next time.</summary>
    public static IReadOnlyList<ChosenFix> Choose(ProgramAnalysis analysis, CancellationToken cancel = default) => Choose(analysis, [], cancel);

    /// <summary>Whether there is one.</summary>
    public static bool HasAny(ProgramAnalysis analysis, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        foreach (var finding in analysis.Findings)
        {
            cancel.ThrowIfCancellationRequested();
            if (FirstOf(finding, analysis) is not null)
                return true;
        }
        return false;
    }

    static List<ChosenFix> Choose(ProgramAnalysis analysis, Dictionary<Place, ChosenFix> left, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var (chosen, taken) = (new List<ChosenFix>(), new EditSet());
        foreach (var finding in analysis.Findings)
        {
            cancel.ThrowIfCancellationRequested();
            if (!left.ContainsKey(PlaceOf(finding)) && FirstOf(finding, analysis) is { } fix && taken.TryTake(fix.Edits))
                chosen.Add(new ChosenFix(finding, fix, analysis.Text));
        }
        return chosen;
    }

    // A rule promises no more for any of its fixes than it says of itself.
    static Fix? FirstOf(Finding finding, ProgramAnalysis analysis) => finding.Rule.Info.FixSafety == FixSafety.Safe
        ? analysis.FixesOf(finding).FirstOrDefault(fix => fix.Safety == FixSafety.Safe)
        : null;

    /// <summary>Those of the fixes whose findings stand in the edited program as before. One that takes something out comes to an end by itself, and may meet the next of its kind at the same place.</summary>
    static List<ChosenFix> InVain(ProgramAnalysis before, ProgramAnalysis after, List<ChosenFix> made, ImmutableArray<Edit> edits)
    {
        var (stood, stand) = (before.Findings.CountBy(PlaceOf).ToDictionary(), after.Findings.CountBy(PlaceOf).ToDictionary());
        var vain = new List<ChosenFix>();
        var (next, added) = (0, 0);
        foreach (var choice in made)
        {
            var finding = choice.Finding;
            for (; next < edits.Length && (edits[next].Line, edits[next].StartColumn).CompareTo((finding.Line, finding.StartColumn)) <= 0; next++)
                added += LineEnds(edits[next].NewText);
            var place = PlaceOf(finding);
            if (choice.Fix.Edits.All(edit => edit.StartColumn == edit.EndColumn) && stand.GetValueOrDefault(place with { Line = finding.Line + added }) >= stood[place])
                vain.Add(choice);
        }
        return vain;
    }

    static int LineEnds(string text) => text.Contains('\n', StringComparison.Ordinal) ? text.Count(sign => sign == '\n') : text.Count(sign => sign == '\r');

    static Place PlaceOf(Finding finding) => new(finding.Name, finding.Line, finding.Message);

    /// <summary>What a finding is known by from one text to the next; columns move with the words that a fix adds.</summary>
    readonly record struct Place(string Rule, int Line, string Message);
}
