using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Comparison;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Holds what an edited program does against what the program did, with the block skip switch either way where blocks can be skipped.</summary>
static class MotionProof
{
    /// <summary>How far apart places may be where numbers are worked out anew, mm.</summary>
    public const double WorkedOut = MotionComparison.UsualTolerance;

    /// <summary>One sentence why the motion is not proven to be the same; null where it is.</summary>
    /// <param name="tolerance">How far apart places may be, mm.</param>
    /// <param name="everyWay">Whether blocks come to depend on others that they may run behind: then every way has to be known.</param>
    public static string? Refuse(ProgramAnalysis analysis, SourceText edited, double tolerance, bool everyWay, CancellationToken cancel)
    {
        foreach (var job in JobsOf(analysis))
        {
            var before = MotionList.Of(analysis.Text, job, cancel);
            if (NotFollowed(before) is { } sentence)
                return sentence;
            var comparison = MotionComparison.Of(before, MotionList.Of(edited, job, cancel), tolerance, cancel);
            if (everyWay && LostWay(comparison.First) is { } lost)
                return lost;
            if (!comparison.IsSame)
                return $"The new text would not move as this one does{Where(comparison)}, so nothing was changed.";
        }
        return null;
    }

    /// <summary>The program as it is run here: under the machine in force, and with blocks skipped the other way where that differs.</summary>
    public static IEnumerable<Job> JobsOf(ProgramAnalysis analysis)
    {
        yield return analysis.Main.Job;
        if (analysis.Runs.OtherSkip is { } other)
            yield return other.Job;
    }

    /// <summary>Why a run proves nothing, one sentence; null where it was followed to its end.</summary>
    public static string? NotFollowed(MotionList list) =>
        list.End is FlowEnd.TooLong or FlowEnd.Endless ? "The program runs on too long to be followed to its end, so nothing can be proven of a new text." : null;

    /// <summary>Why what was run proves nothing of the blocks that may run again or otherwise, one sentence; null where every way is known.</summary>
    public static string? LostWay(MotionList list) =>
        list.LineOfLostWay is { } line ? $"Which way line {line + 1} leads is not known: blocks may run again from another place or in other modes, so nothing can be proven of a new text." : null;

    /// <summary>, first at line 12; empty where no line is to be told.</summary>
    public static string Where(MotionComparison comparison)
    {
        foreach (var change in comparison.Changes)
            if (change.First is { } first)
                return $", first at line {first.Line + 1}";
        foreach (var change in comparison.Changes)
            if (change.Second is { } second)
                return $", which has no move like that of line {second.Line + 1} of the new one";
        return "";
    }
}
