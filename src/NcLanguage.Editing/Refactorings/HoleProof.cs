using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Comparison;
using NcLanguage.Control.Moves;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Refactorings;

/// <summary>For what changes the way from hole to hole on purpose: the same holes by the same tools, the same other cuts, no new finding of clearance, less time.
/// Rapids may differ; what they meet is what the clearance findings are about.</summary>
static class HoleProof
{
    /// <summary>Numbers of the findings of clearance begin so.</summary>
    const string Clearance = "NC4";

    /// <summary>The finding of a traverse between holes that meets something.</summary>
    const string Contact = "hop-hits-obstacle";

    /// <summary>Less than this is no gain, s.</summary>
    const double LeastGain = 0.001;

    /// <summary>One sentence why the new text must not be handed out; null where it may.</summary>
    public static string? Refuse(ProgramAnalysis analysis, SourceText edited, CancellationToken cancel)
    {
        var after = analysis.WithText(edited, cancel: cancel);
        if (OtherHoles(analysis.Main, after.Main) is { } changed)
            return changed;
        if (analysis.Runs.OtherSkip is { } skipped && after.Runs.OtherSkip is { } then && OtherHoles(skipped, then) is { } changedToo)
            return changedToo;
        if (OtherCuts(analysis, edited, cancel) is { } sentence)
            return sentence;
        // What meets something already is no way to save time on: it is to be mended first.
        foreach (var finding in after.Findings)
            if (finding.Name == Contact)
                return $"The way to a hole in line {finding.Line + 1} would still meet something ({finding.Name}): mend that first.";
        var before = Clearances(analysis);
        foreach (var (name, count) in Clearances(after))
            if (count > before.GetValueOrDefault(name))
                return $"The new way brings a finding that this one does not have ({name}), so nothing was changed.";
        var gain = Seconds(analysis.Main) - Seconds(after.Main);
        return gain >= LeastGain ? null : "No way was found that takes less time than this one.";
    }

    static string? OtherHoles(ProgramRun before, ProgramRun after)
    {
        foreach (var change in HoleChanges.Of(HoleTable.Of(before), HoleTable.Of(after)))
            if (change.Kind != ChangeKind.Altered || (change.Differs & ~HoleDifferences.Way) != 0)
                return $"The new text would not drill the same holes{(change.First is { } hole ? $", first at line {hole.Line + 1}" : "")}, so nothing was changed.";
        return null;
    }

    /// <summary>Known seconds of all moves.</summary>
    public static double Seconds(ProgramRun run)
    {
        var seconds = 0.0;
        foreach (var part in run.Results)
            seconds += part.Seconds;
        return seconds;
    }

    static string? OtherCuts(ProgramAnalysis analysis, SourceText edited, CancellationToken cancel)
    {
        foreach (var job in MotionProof.JobsOf(analysis))
        {
            if (MotionProof.NotKnown(analysis.Text, job, everyWay: true, cancel) is { } sentence)
                return sentence;
            if (!MotionMatch.Of(analysis.Text, edited, job, MotionProof.WorkedOut, cancel, share: 0, IsOtherCut).IsSame)
                return "The new text would not do the same between the holes, so nothing was changed.";
        }
        return null;
    }

    /// <summary>All that is neither a rapid nor part of a hole; of what does not travel, only that it is done.</summary>
    static bool IsOtherCut(ref Motion motion)
    {
        if (motion.Kind > MoveKind.Arc)
            motion = motion with { From = default, To = default };
        return motion.Kind != MoveKind.Rapid && motion.Role is MoveRole.Plain or MoveRole.Machine or MoveRole.Probe;
    }

    static Dictionary<string, int> Clearances(ProgramAnalysis analysis)
    {
        var counts = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var finding in analysis.Findings)
            if (finding.Id.StartsWith(Clearance, StringComparison.Ordinal) && finding.Severity != Severity.Note)
                counts[finding.Name] = counts.GetValueOrDefault(finding.Name) + 1;
        return counts;
    }
}
