using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A code that the modes in force forbid.</summary>
public sealed class NotAllowedHere : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2029",
        Name = "not-allowed-here",
        Severity = Severity.Error,
        Title = "A code cannot be used in the present modes",
        Finds =
            "A cycle or a probe move under inverse time feed (G93) or radius compensation; radius compensation switched on while it is on, or outside the XY plane "
            + "(G17); another plane, another unit, a work offset, a shift, scaling (G51), rotation (G68), G53 or the reference point while radius compensation is on; a probe move that begins too "
            + "near its end; an arc under scaling with unequal factors.",
        AtTheMachine = "The control stops at the block with an alarm.",
        Example = """
            G21 G90 G17 G54
            M3 S1500
            G0 X0 Y0 Z5
            G93
            G99 G81 X10 Y10 Z-2 R2 F100
            ~   ^^^
            G80
            G94
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            M3 S1500
            G0 X0 Y0 Z5
            G99 G81 X10 Y10 Z-2 R2 F100
            G80
            M5
            M30
            """,
        NotFound = "Controls that allow more.",
        Source = "NISTIR 6556 §3.5.9, §3.5.10, §3.5.12, §3.5.13, §3.5.16 and appendix B.5; arcs under unequal scaling, and G51 and G68 under radius compensation, are common practice.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
        {
            if (fault.Kind != FaultKind.NotAllowedHere || !Begins(step, fault))
                continue;
            ref readonly var token = ref step.Block.Tokens[fault.Token];
            // What is carried over from an earlier block is named by its code, not by the word that runs it.
            var word = token.IsWord('G') ? Quote.Word(step.Block, token) : "G" + Say.Number(fault.A);
            if (fault.A is 2 or 3)
                step.Report(this, fault.Token, $"Scaled by unequal factors, or turned in another plane, {word} is no arc any more: the control stops with an alarm.", Slot.ProgramFrame, "It is set here.");
            else if (fault.A is > 38 and < 39 && (fault.B > 0 || (!step.Step.Before.IsCompensationOn && step.Step.After.FeedMode != FeedMode.InverseTime)))
                step.Report(this, fault.Token, $"The probe stands only {step.Say.Length(fault.B)} from the point it is to move to, and needs {step.Say.Length(BlockExecutor.LeastProbeWay)}: the control stops with an alarm.");
            else if (step.Step.After.FeedMode == FeedMode.InverseTime && fault.A is (31 or (> 38 and < 39)))
                step.Report(this, fault.Token, "Probe moves do not run under inverse time feed (G93): the control stops with an alarm.", Slot.FeedMode, "Inverse time feed is set here.");
            else if (step.Step.After.FeedMode == FeedMode.InverseTime && fault.A is >= 73 and <= 89)
                step.Report(this, fault.Token, "Cycles do not run under inverse time feed (G93): the control stops with an alarm.", Slot.FeedMode, "Inverse time feed is set here.");
            else if (fault.A is 41 or 42 && fault.B > 0)
                step.Report(this, fault.Token, $"Radius compensation works in the XY plane (G17), and G{fault.B} is in force: the control stops with an alarm.", Slot.Plane, "The plane is set here.");
            else if (fault.A is 41 or 42)
                step.Report(this, fault.Token, $"Radius compensation is on already: {word} needs a G40 first, and the control stops with an alarm.", Slot.Compensation, "It is switched on here.", asMet: true);
            else
                step.Report(this, fault.Token, $"{word} is not allowed while radius compensation is on: the control stops with an alarm.", Slot.Compensation, "It is switched on here.");
        }
    }

    // Of a run of blocks that carry a motion or cycle over only the first is told.
    static bool Begins(in StepContext step, in Fault fault) =>
        step.Block.Tokens[fault.Token].IsWord('G') || (step.Step.Sets & Fault.ModesThatForbid) != 0 || step.HasHappened(Happened.RefusedInModes);
}
