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

    /// <summary>One set of edits that takes the first safe fix of every finding that has one, in the order of the text. A fix is taken
    /// whole or not at all: one that overlaps another is left for the next time.</summary>
    public static ImmutableArray<Edit> AllSafe(ProgramAnalysis analysis, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var taken = new EditSet();
        foreach (var finding in analysis.Findings)
        {
            cancel.ThrowIfCancellationRequested();
            foreach (var fix in analysis.FixesOf(finding))
                if (fix.Safety == FixSafety.Safe)
                {
                    taken.TryTake(fix.Edits);
                    break;
                }
        }
        return TextEdits.Merge(taken.All);
    }

    /// <summary>Whether <see cref="AllSafe"/> would change anything.</summary>
    public static bool HasSafe(ProgramAnalysis analysis, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        foreach (var finding in analysis.Findings)
        {
            cancel.ThrowIfCancellationRequested();
            foreach (var fix in analysis.FixesOf(finding))
                if (fix is { Safety: FixSafety.Safe, Edits.IsEmpty: false })
                    return true;
        }
        return false;
    }

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

    /// <summary>Edits that can be made together.</summary>
    sealed class EditSet
    {
        readonly Dictionary<int, List<Edit>> _byLine = [];

        public IEnumerable<Edit> All => _byLine.Values.SelectMany(edits => edits);

        public void TryTake(ImmutableArray<Edit> edits)
        {
            foreach (var edit in edits)
                if (!Fits(edit))
                    return;
            foreach (var edit in edits)
            {
                if (!_byLine.TryGetValue(edit.Line, out var taken))
                    _byLine[edit.Line] = taken = [];
                if (!taken.Contains(edit))
                    taken.Add(edit);
            }
        }

        bool Fits(in Edit edit)
        {
            if (!_byLine.TryGetValue(edit.Line, out var taken))
                return true;
            foreach (var other in taken)
                if (other != edit && edit.StartColumn < other.EndColumn && other.StartColumn < edit.EndColumn)
                    return false;
            return true;
        }
    }
}
