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
            if (NotKnown(analysis.Text, job, everyWay, cancel) is { } sentence)
                return sentence;
            var match = MotionMatch.Of(analysis.Text, edited, job, tolerance, cancel);
            if (!match.IsSame)
                return $"The new text would not move as this one does{Where(match)}, so nothing was changed.";
        }
        return null;
    }

    /// <summary>Whether the new text moves as the old one does, which tells nothing of what is not known of both.</summary>
    /// <param name="tolerance">How far apart places may be, mm.</param>
    public static bool MovesAlike(ProgramAnalysis analysis, SourceText edited, double tolerance, CancellationToken cancel)
    {
        foreach (var job in JobsOf(analysis))
            if (!MotionMatch.Of(analysis.Text, edited, job, tolerance, cancel).IsSame)
                return false;
        return true;
    }

    /// <summary>The program as it is run here: under the machine in force, and with blocks skipped the other way where that differs.</summary>
    public static IEnumerable<Job> JobsOf(ProgramAnalysis analysis)
    {
        yield return analysis.Main.Job;
        if (analysis.Runs.OtherSkip is { } other)
            yield return other.Job;
    }

    /// <summary>Why what a program does proves nothing of a new text, one sentence: it was not followed to its end, or blocks may run again or otherwise; null where it
    /// proves something.</summary>
    /// <param name="everyWay">Whether every way has to be known.</param>
    public static string? NotKnown(SourceText text, Job job, bool everyWay, CancellationToken cancel)
    {
        var reach = MotionReach.Of(text, job, cancel);
        if (reach.End is FlowEnd.TooLong or FlowEnd.Endless)
            return "The program runs on too long to be followed to its end, so nothing can be proven of a new text.";
        return everyWay && reach.LineOfLostWay is { } line
            ? $"Which way line {line + 1} leads is not known: blocks may run again from another place or in other modes, so nothing can be proven of a new text."
            : null;
    }

    /// <summary>, first at line 12; empty where no line is to be told.</summary>
    public static string Where(MotionMatch match) =>
        match.First is { } first ? $", first at line {first.Line + 1}"
        : match.Second is { } second ? $", which has no move like that of line {second.Line + 1} of the new one"
        : "";
}
