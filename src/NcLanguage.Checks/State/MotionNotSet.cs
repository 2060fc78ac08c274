using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>Axis words without a code that says how to move.</summary>
public sealed class MotionNotSet : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2002",
        Name = "motion-not-set",
        Severity = Severity.Error,
        Title = "No code says how to move",
        Finds =
            "Axis words in a block while no G0, G1, G2, G3 or cycle is in force: none has been given yet, or none has come since "
            + "G80. The first such block is reported.",
        AtTheMachine = "The control stops with an alarm, or moves in whatever mode the program before has left: a rapid where a cut was meant.",
        Example = """
            G21 G90 G17 G54
            X10 Y10
            ~^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X10 Y10
            M30
            """,
        NotFound = "Controls that take up G0 or G1 by themselves when they are switched on.",
        Source = "NISTIR 6556 §3.5.15 and §3.3.4.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        if ((step.Step.Before.Happened & Happened.MotionMissing) != 0)
            return;
        foreach (ref readonly var fault in step.Step.Faults.Items)
        {
            if (fault.Kind != FaultKind.MotionNotSet)
                continue;
            ref readonly var token = ref step.Block.Tokens[fault.Token];
            // What cannot be read is not said again.
            var isRead = !double.IsNaN(step.Step.Words[fault.Letter]);
            var word = Quote.Word(step.Block, token);
            var (to, before) = isRead ? ($" to {word}", word) : ("", "this block");
            if (step.Step.After.Motion == MotionMode.None)
                step.Report(this, fault.Token, $"No G0, G1, G2 or G3 has come since G80: the control does not know how to move{to} and stops.", Slot.Cycle, "G80 takes out the way of moving here.");
            else
                step.Report(this, fault.Token, $"No G0, G1, G2 or G3 has been given before {before}: the control stops, or moves as the program before has left it.");
        }
    }
}
