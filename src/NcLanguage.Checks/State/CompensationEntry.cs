using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A move on which the tool cannot come onto its offset path, or leave it.</summary>
public sealed class CompensationEntry : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2011",
        Name = "compensation-entry",
        Severity = Severity.Error,
        Title = "The way in or out of radius compensation is no straight line, or too short",
        Finds = "The first move in X and Y under G41 or G42 that is an arc, or shorter than the radius; the first after G40 that is an arc.",
        AtTheMachine = "The control stops with an alarm; one that goes on cuts into the contour at its beginning.",
        Setup = CompensationExample.EndMill,
        Example = CompensationExample.Program("""
            G0 X-3 Y0
            G1 G41 D2 X0
            ~         ^^
            Y60
            G40 X-30
            G0 Z50
            M5
            M30
            """),
        Instead = CompensationExample.Program("""
            G0 X-8 Y0
            G1 G41 D2 X0
            Y60
            G40 X-30
            G0 Z50
            M5
            M30
            """),
        NotFound = "A way in that is long enough and still starts on the wrong side of the contour: what it cuts there is the clearance and stock rules' matter.",
        Source = "NISTIR 6556 §3.5.10 and appendix B; that the way out is straight is common practice.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
            if (fault.Kind == FaultKind.CompensationEntry)
                step.Report(this, fault.Token, Message(step.Step, fault, step.Say), Slot.Compensation, "It is switched here.");
    }

    static string Message(Step step, in Fault fault, LengthText say)
    {
        var code = step.After.Compensation switch { CompensationSide.Left => "G41", CompensationSide.Right => "G42", _ => "G40" };
        if (code == "G40")
            return "The first move after G40 is an arc: the tool leaves the offset path on a straight line only, and the control stops with an alarm.";
        return fault.Letter == 'I'
            ? $"The first move under {code} is an arc: the tool comes onto the offset path on a straight line only, and the control stops with an alarm."
            : $"The first move under {code} is {say.Length(fault.B)} long, shorter than the tool's radius of {say.Length(fault.A)}: the tool cannot come onto the path, and the control stops with an alarm.";
    }
}
