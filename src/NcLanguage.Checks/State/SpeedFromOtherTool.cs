using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Cutting;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A tool that cuts at the spindle speed of the tool before it.</summary>
public sealed class SpeedFromOtherTool : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2039",
        Name = "speed-from-other-tool",
        Severity = Severity.Warning,
        Title = "A tool cuts at the spindle speed of the tool before",
        Finds =
            "The first cut after a tool change, with the spindle turning, when no S has come since the last cut of the tool before. A speed that cutting-speed tells of is left to it, "
            + "a tapping cycle whose pitch the setup gives to tap-feed, and a probe is left out.",
        AtTheMachine = "M3 starts the spindle at the S that came last: a large tool turns as fast as the small one before it and burns, or a small one so slowly that its feed breaks it.",
        Example = """
            G21 G90 G17 G54
            T1 M6
            M3 S4000
            G0 X10 Y10
            G43 H1 Z5
            G1 Z-2 F100
            G0 Z50
            G91 G28 Z0
            G90 T2 M6
            M3
            G0 X30 Y10
            G43 H2 Z5
            G1 Z-2 F60
            ~^^^^^^^^^
            G0 Z50
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T1 M6
            M3 S4000
            G0 X10 Y10
            G43 H1 Z5
            G1 Z-2 F100
            G0 Z50
            G91 G28 Z0
            G90 T2 M6
            M3 S1200
            G0 X30 Y10
            G43 H2 Z5
            G1 Z-2 F60
            G0 Z50
            M5
            M30
            """,
        NotFound = "That both tools may be meant to turn alike. A speed that is given between the last cut of the tool before and the tool change counts as meant for the tool after it. Feeds straight up, "
            + "and feeds at or above the top of the setup's stock, are no first cut here.",
        Source = "NISTIR 6556 §3.6.3 and §3.7.2 (a tool change stops the spindle and leaves the speed as it is); a speed for each tool is common practice.",
    };

    public override StepEvents Interest => StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        if ((step.Step.Before.Happened & ~after.Happened & Happened.SpeedOfOtherTool) == 0 || (step.Step.Sets & (Slot.Speed | Slot.Tool)) != 0 || after.IsCalled || !(after.Speed > 0)
            || after.Spindle is not (SpindleState.Clockwise or SpindleState.Counterclockwise))
            return;
        if (FirstCut.IsLeftOut(step))
            return;
        // One cause, one finding: of a tool that has to stand it is told that it turns; where the table shows that it is far off, that is told at M3.
        if (step.Job.Setup.FindTool(after.Tool) is { } tool
            && (tool.Stands || (ToolRange.Speed(step.Job.Setup, tool) is { } range && CuttingSpeedRule.SideOf(after.Speed, tool, range, step.Job) != 0)))
            return;
        step.ReportBlock(this, $"The first cut of {FirstCut.ToolOf(step)} runs at the speed of the tool before, S{Say.Number(after.Speed)}: no S has come since the tool change.");
    }
}
