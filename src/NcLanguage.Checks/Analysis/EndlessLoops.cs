using NcLanguage.Checks.Rules;

namespace NcLanguage.Checks.Analysis;

/// <summary>A counter that runs away takes all that the loop reckons with it: what is told of the loop's blocks at a later turn than the first is counted and named with the cause, and not told by itself.</summary>
static class EndlessLoops
{
    /// <summary>Takes out what a loop with a counter that runs the wrong way may have brought.</summary>
    public static void TakeOut(List<Finding> findings)
    {
        var cause = findings.FindIndex(finding => finding is { Rule: RunTooLong, Fault: null } && RunTooLong.LoopOf(finding) is not null);
        if (cause < 0)
            return;
        var loop = findings[cause];
        var (first, last) = RunTooLong.LoopOf(loop)!.Value;
        var others = findings.FindAll(IsBrought);
        if (others.Count == 0)
            return;
        findings.RemoveAll(IsBrought);
        findings[findings.IndexOf(loop)] = loop with { Message = $"{loop.Message} {ExplainedFindings.Others(others.Count, "it", ExplainedFindings.Names(others))}." };

        bool IsBrought(Finding finding) => finding != loop && finding.Line >= first && finding.Line <= last && finding is { Run: > 0, Fault: null, IsElsewhere: false };
    }
}
