using System.Collections.Immutable;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;

namespace NcLanguage.Editing;

/// <summary>A fix on offer and the finding it mends.</summary>
public sealed record FixAnswer(string Title, Finding Finding, FixSafety Safety, ImmutableArray<Edit> Edits);

/// <summary>The fixes for findings.</summary>
public static class Fixes
{
    /// <summary>The fixes of the findings that stand in the lines from <paramref name="firstLine"/> to <paramref name="lastLine"/> (0-based,
    /// both included), in the order of the text.</summary>
    /// <param name="most">Findings that are looked at; those behind are left out.</param>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static IReadOnlyList<FixAnswer> In(ProgramAnalysis analysis, int firstLine, int lastLine, int most = int.MaxValue, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var answers = new List<FixAnswer>();
        var first = FirstFrom(analysis.Findings, firstLine);
        for (var i = first; i < analysis.Findings.Length && analysis.Findings[i].Line <= lastLine && i - first < most; i++)
        {
            cancel.ThrowIfCancellationRequested();
            var finding = analysis.Findings[i];
            foreach (var fix in analysis.FixesOf(finding))
                answers.Add(new FixAnswer(fix.Title, finding, fix.Safety, fix.Edits));
        }
        return answers;
    }

    /// <summary>One set of edits that makes at one go what <see cref="CertainFixes.Choose(ProgramAnalysis, CancellationToken)"/> takes.</summary>
    public static ImmutableArray<Edit> AllSafe(ProgramAnalysis analysis, CancellationToken cancel = default) =>
        TextEdits.Merge(CertainFixes.Choose(analysis, cancel).SelectMany(choice => choice.Fix.Edits));

    // Findings lie in the order of their lines.
    static int FirstFrom(ImmutableArray<Finding> findings, int line)
    {
        var (low, high) = (0, findings.Length);
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
