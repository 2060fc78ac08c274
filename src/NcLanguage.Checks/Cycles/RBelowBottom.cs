using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A cycle's R level lies below the bottom of the hole.</summary>
public sealed class RBelowBottom : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3020",
        Name = "r-below-bottom",
        Severity = Severity.Error,
        Title = "The R level lies below the bottom of the hole",
        Finds = "A cycle whose R level is lower than its depth, at the block that makes it so.",
        AtTheMachine = "The control stops with an alarm, or goes at rapid to an R level inside the part and feeds upwards.",
        Example = CycleExample.Program("""
            G98 G81 X12 Y20 Z8 R2 F120
            ~                  ^^
            X40
            """),
        Instead = CycleExample.Program("""
            G98 G81 X12 Y20 Z-8 R2 F120
            X40
            """),
        NotFound = "G87, which bores upwards, and levels that are not known.",
        Source = "NISTIR 6556 §3.5.16: it is an error if the R number is less than the depth's.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        if ((step.Step.Sets & (Slot.Cycle | Slot.CycleR | Slot.CycleBottom)) == 0 || CycleRuns.IsLoneRise(step))
            return;
        foreach (ref readonly var fault in step.Step.Faults.Items)
        {
            if (fault.Kind != FaultKind.RBelowBottom)
                continue;
            var axis = CycleRuns.DepthAxis(step.Step.After.Plane);
            step.Report(
                this, fault.Token, $"The R level {step.Say.Level(fault.A, axis)} lies {step.Say.Length(fault.B - fault.A)} below the bottom {step.Say.Level(fault.B, axis)}: the control stops, or goes at rapid into the part.",
                (step.Step.Sets & Slot.CycleR) == 0 ? Slot.CycleR : Slot.CycleBottom,
                (step.Step.Sets & Slot.CycleR) == 0 ? "The R level was set here." : "The depth was set here.");
            return;
        }
    }
}
