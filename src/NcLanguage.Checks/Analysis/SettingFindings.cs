using NcLanguage.Checks.Rules;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Analysis;

/// <summary>A plane or a radius compensation that was left on is one slip, however many arcs or codes that it forbids follow it: what is told of them is told at the first, with the number of the others.</summary>
static class SettingFindings
{
    /// <summary>Joins what concerns the plane, and what radius compensation forbids, up to where each is set again. What a comment has silenced is gone by then: it takes no others with it.</summary>
    /// <param name="findings">Those of each run in its order.</param>
    public static void Join(ProgramRun run, List<Finding> findings)
    {
        Join(run, findings, Slot.Plane, "the plane", static _ => true);
        // What has no room for the tool is a matter of each corner, not of the setting.
        Join(run, findings, Slot.Compensation, "radius compensation", static finding => finding.Rule is NotAllowedHere);
    }

    static void Join(ProgramRun run, List<Finding> findings, Slot slot, string cause, Predicate<Finding> comesOfIt)
    {
        // Where the fault lies in another file, or shows only with the block skip switch the other way, it is another matter.
        bool IsOfSetting(Finding finding) => finding.Concerns == slot && finding is { IsElsewhere: false, IsOfOtherSkip: false } && comesOfIt(finding);

        var first = findings.FindIndex(IsOfSetting);
        if (first < 0)
            return;
        // Where a called program lacks what would end it, the block that set it is the same each time.
        var settings = new Dictionary<int, Setting>();
        var (kept, setter, next) = (first, -1, -1);
        for (var i = first; i < findings.Count; i++)
        {
            var finding = findings[i];
            if (!IsOfSetting(finding))
            {
                findings[kept++] = finding;
                continue;
            }
            // In the order of the text it is looked for once for each setting, not for each finding.
            if (run.Flow is not null || finding.Line > next)
            {
                setter = run.LastSetterBefore(slot, finding.Line, finding.Run);
                next = run.Flow is null && run.FirstSetter(slot, setter) is >= 0 and var again ? again : int.MaxValue;
            }
            if (settings.TryGetValue(setter, out var setting))
            {
                setting.Others.Add(finding);
                continue;
            }
            settings.Add(setter, new Setting(kept, []));
            findings[kept++] = finding;
        }
        findings.RemoveRange(kept, findings.Count - kept);
        foreach (var (index, others) in settings.Values)
            if (others.Count > 0)
                findings[index] = Told(findings[index], others, cause);
    }

    static Finding Told(Finding first, List<Finding> others, string cause) => first with
    {
        Severity = (Severity)Math.Min((int)first.Severity, others.Min(other => (int)other.Severity)),
        Message = $"{first.Message} {ExplainedFindings.Others(others.Count, cause, ExplainedFindings.Names(others))}"
            + $"{(others.Count == 1 ? "" : ", the last")} in line {others.Max(other => other.Line) + 1}.",
    };

    /// <summary>What is told under one setting.</summary>
    /// <param name="Index">The place of the first in the list.</param>
    /// <param name="Others">Those behind it.</param>
    readonly record struct Setting(int Index, List<Finding> Others);
}
