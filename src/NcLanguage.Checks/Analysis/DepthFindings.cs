using NcLanguage.Checks.Rules;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Analysis;

/// <summary>A tool that is too short for a level is one slip, however many passes go down to it: it is told at the first of them, with the number of the others.</summary>
static class DepthFindings
{
    /// <summary>Joins what is told of one depth of one tool. What a comment has silenced is gone by then: it takes no others with it.</summary>
    /// <param name="findings">Those of each run in its order.</param>
    public static void Join(ProgramRun run, List<Finding> findings)
    {
        if (!findings.Exists(IsOfDepth))
            return;
        var others = new Dictionary<(int Tool, double Depth), (int First, int Count, int Last)>();
        var kept = 0;
        for (var i = 0; i < findings.Count; i++)
        {
            var finding = findings[i];
            if (IsOfDepth(finding))
            {
                var key = (run.LastSetterBefore(Slot.Tool, finding.Line, finding.Run), Math.Round(finding.Value, 3));
                if (others.TryGetValue(key, out var met))
                {
                    others[key] = (met.First, met.Count + 1, Math.Max(met.Last, finding.Line));
                    continue;
                }
                others.Add(key, (kept, 0, -1));
            }
            findings[kept++] = finding;
        }
        findings.RemoveRange(kept, findings.Count - kept);
        foreach (var (first, count, last) in others.Values)
            if (count > 0)
                findings[first] = findings[first] with
                {
                    Message = $"{findings[first].Message} The same goes for {Say.Count(count, "more block")} of this tool, {(count == 1 ? "in" : "the last in")} line {last + 1}.",
                };
    }

    // Where the fault lies in another file, or shows only with the block skip switch the other way, it is another matter.
    static bool IsOfDepth(Finding finding) => finding is { Rule: DeeperThanFlutes, Fault: null, IsElsewhere: false, IsOfOtherSkip: false, Value: > 0 };
}
