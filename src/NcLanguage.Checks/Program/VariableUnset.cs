using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>A variable that is read before anything has set it.</summary>
public sealed class VariableUnset : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6036",
        Name = "variable-unset",
        Severity = Severity.Warning,
        Title = "A variable is read that has no value",
        Finds = "A value that reads a variable which nothing has set before, neither the program nor the setup file (\"variables\"). Asking whether it was set (#5 EQ #0) is no such reading. Each variable is told once.",
        AtTheMachine = "Controls take it as 0, or leave the word out, or stop with an alarm; or it holds what another program has left.",
        Example = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50
            G0 X#500
            ~  ^^^^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50
            #500=20
            G0 X#500
            M30
            """,
        NotFound = "Variables that the control fills itself.",
        Source = "NISTIR 6556 §3.3.2 takes a variable never set as 0; the rest is common practice.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
            if (fault.Kind == FaultKind.VariableUnset)
                step.Report(this, fault.Token, $"#{Say.Number(fault.A)} has no value here: nothing sets it before, and the setup's variables do not give it. Controls take it as 0, leave the word out or stop.");
    }
}
