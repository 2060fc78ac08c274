using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A cycle's R level lies below the bottom of the hole, or back boring does not end between them.</summary>
public sealed class RBelowBottom : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3020",
        Name = "r-below-bottom",
        Severity = Severity.Error,
        Title = "The R level lies below the bottom of the hole",
        Finds = "A cycle whose R level is lower than its depth, at the block that makes it so; back boring (G87) that reaches up to a level (K) at or below its bottom, or at or above R.",
        AtTheMachine = "The control stops with an alarm, or goes at rapid to an R level inside the part and feeds upwards. A back boring bar bores up through the whole part, or nothing.",
        Example = CycleExample.Program("""
            G98 G81 X12 Y20 Z8 R2 F120
            ~                  ^^
            X40
            """),
        Instead = CycleExample.Program("""
            G98 G81 X12 Y20 Z-8 R2 F120
            X40
            """),
        NotFound = "The R level of G87, which some controls take from below the part, and levels that are not known.",
        Source = "NISTIR 6556 §3.5.16: it is an error if the R number is less than the depth's; §3.5.16.8 for G87, whose levels' order is common practice.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        if ((step.Step.Sets & (Slot.Cycle | Slot.CycleR | Slot.CycleBottom)) == 0 || CycleRuns.IsLoneRise(step))
            return;
        foreach (ref readonly var fault in step.Step.Faults.Items)
        {
            var axis = CycleRuns.DepthAxis(step.Step.After.Plane);
            if (fault.Kind == FaultKind.BoreTopOutside)
            {
                var (top, other) = (step.Say.Level(fault.A, axis), step.Say.Level(fault.B, axis));
                step.Report(this, fault.Token, fault.B == step.Step.After.Bottom
                    ? $"{fault.Letter} leads to {top}, and the bottom is {other}: back boring feeds upwards from the bottom, and here there is nothing to bore."
                    : $"{fault.Letter} leads to {top}, and the R level is {other}: the bar bores up through the whole part.");
                return;
            }
            if (fault.Kind != FaultKind.RBelowBottom)
                continue;
            step.Report(
                this, fault.Token, $"The R level {step.Say.Level(fault.A, axis)} lies {step.Say.Length(fault.B - fault.A)} below the bottom {step.Say.Level(fault.B, axis)}: the control stops, or goes at rapid into the part.",
                (step.Step.Sets & Slot.CycleR) == 0 ? Slot.CycleR : Slot.CycleBottom,
                (step.Step.Sets & Slot.CycleR) == 0 ? "The R level was set here." : "The depth was set here.");
            return;
        }
    }
}
