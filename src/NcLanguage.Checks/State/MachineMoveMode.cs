using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>G53 while neither G0 nor G1 is in force.</summary>
public sealed class MachineMoveMode : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2023",
        Name = "machine-move-mode",
        Severity = Severity.Error,
        Title = "G53 without G0 or G1",
        Finds = "A move in machine coordinates (G53) while an arc, a cycle or no motion at all is in force.",
        AtTheMachine = "The control stops with an alarm, or runs the cycle at a place in machine coordinates.",
        Example = """
            G21 G90 G17 G54
            M3 S1500
            G0 X10 Y0 Z5
            G1 Z-1 F100
            G2 X0 Y10 R10
            G53 Z0
            ~^^
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            M3 S1500
            G0 X10 Y0 Z5
            G1 Z-1 F100
            G2 X0 Y10 R10
            G53 G0 Z0
            M5
            M30
            """,
        NotFound = "What the control does under a motion that is not known here.",
        Source = "NISTIR 6556 §3.5.12.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        if (step.Step.Before.IsCalled && step.Step.After.Motion == MotionMode.Unknown)
            return;
        foreach (ref readonly var fault in step.Step.Faults.Items)
            if (fault.Kind == FaultKind.MachineMoveMode)
                step.Report(this, fault.Token, $"G53 moves only under G0 or G1, and {InForce(step.Step.After)}: the control stops with an alarm.", Slot.Motion | Slot.Cycle, "The way of moving is set here.");
    }

    static string InForce(in ControlState state)
    {
        if (state.InCycle)
            return $"cycle G{state.Cycle} is in force";
        return state.Motion switch
        {
            MotionMode.ArcClockwise => "G2 is in force",
            MotionMode.ArcCounterclockwise => "G3 is in force",
            MotionMode.Thread => "G33 is in force",
            MotionMode.Probe => "a probe move (G38.2 to G38.5) is in force",
            MotionMode.None => "none has come since G80",
            _ => "neither has been given",
        };
    }
}
