using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>An inside corner or arc that the tool does not fit into.</summary>
public sealed class CompensationCorner : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2012",
        Name = "compensation-corner",
        Severity = Severity.Error,
        Title = "The tool does not fit into an inside corner or arc",
        Finds =
            "Under G41 or G42, an inside arc whose radius is not larger than the tool's, and an inside corner at which one of the two pieces is shorter than "
            + "the tool needs to stay off the other.",
        AtTheMachine = "The control stops with an alarm; one that goes on cuts into the part.",
        Setup = CompensationExample.EndMill,
        Example = CompensationExample.Program("""
            G1 G41 D2 X0 Y0
            Y60
            ~^^
            X-4
            Y90
            G40 X-30
            G0 Z50
            M5
            M30
            """),
        Instead = CompensationExample.Program("""
            G1 G41 D2 X0 Y0
            Y60
            X-12
            Y90
            G40 X-30
            G0 Z50
            M5
            M30
            """),
        NotFound =
            "Pieces that are not neighbours, such as the two walls of a slot narrower than the tool. The published specification refuses every inside corner of two "
            + "pieces; most controls run to where the two offset pieces cross, and so is it read here.",
        Source = "NISTIR 6556 appendix B.5; the crossing of the offset pieces is common practice.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
            if (fault.Kind == FaultKind.CompensationCorner && !(fault.Letter == 'R' && IsNoArc(step.Step)))
                step.Report(this, fault.Token, Message(fault, step.Say), Slot.Compensation, "Compensation is switched on here.");
    }

    /// <summary>Whether the block's arc is none, whose radius is no matter then: arc-radius-mismatch.</summary>
    static bool IsNoArc(Step step)
    {
        foreach (ref readonly var fault in step.Faults.Items)
            if (fault.Kind == FaultKind.ArcRadiusMismatch)
                return true;
        return false;
    }

    static string Message(in Fault fault, LengthText say) => fault.Letter == 'R'
        ? $"The arc's radius of {say.Length(fault.B)} is not larger than the tool's of {say.Length(fault.A)}: the tool does not fit into it, and the control stops with an alarm or cuts into the part."
        : $"The inside corner at the end of this block leaves no room for the tool's radius of {say.Length(fault.A)}, because one of its sides is too short: the control stops with an alarm or cuts into the part.";
}
