using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>Calls within calls beyond what controls take.</summary>
public sealed class CallTooDeep : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6032",
        Name = "call-too-deep",
        Severity = Severity.Error,
        Title = "Too many calls within each other",
        Finds = "A call that stands within ten others, as when a program calls itself.",
        AtTheMachine = "The control stops at the call with an alarm; many take no more than four calls within each other.",
        Example = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50
            M98 P200
            M30
            O200
            G91 G0 X1
            G90 M98 P200
            ~   ^^^
            M99
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50
            M98 P200 L5
            M30
            O200
            G91 G0 X1
            G90
            M99
            """,
        NotFound = "Controls that take fewer than ten calls within each other.",
        Source = "From memory; common practice.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
            if (fault.Kind == FaultKind.CallTooDeep)
                step.Report(this, fault.Token, fault.B == 1
                    ? $"The program calls itself: after {Say.Number(fault.A)} calls within each other the control stops with an alarm."
                    : $"This call stands within {Say.Number(fault.A)} others: the control stops here with an alarm.");
    }
}
