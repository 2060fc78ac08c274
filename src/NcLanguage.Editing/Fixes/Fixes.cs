using System.Collections.Immutable;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;

namespace NcLanguage.Editing;

/// <summary>A fix on offer and the finding it mends.</summary>
public sealed record FixAnswer(string Title, Finding Finding, FixSafety Safety, ImmutableArray<Edit> Edits);

/// <summary>The fixes for findings.</summary>
public static class Fixes
{
    /// <summary>The fixes of the findings that touch the lines from <paramref name="firstLine"/> to <paramref name="lastLine"/> (0-based, both included).</summary>
    public static IReadOnlyList<FixAnswer> In(ProgramAnalysis analysis, int firstLine, int lastLine)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var answers = new List<FixAnswer>();
        foreach (var finding in analysis.Findings)
            if (finding.Line >= firstLine && finding.Line <= lastLine)
                answers.AddRange(analysis.FixesOf(finding).Select(fix => new FixAnswer(fix.Title, finding, fix.Safety, fix.Edits)));
        return answers;
    }

    /// <summary>One set of edits that takes the first safe fix of every finding that has one; what overlaps is left for the next time.</summary>
    public static ImmutableArray<Edit> AllSafe(ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return TextEdits.Merge(analysis.Findings
            .Select(finding => analysis.FixesOf(finding).FirstOrDefault(fix => fix.Safety == FixSafety.Safe))
            .OfType<Fix>()
            .SelectMany(fix => fix.Edits));
    }
}
