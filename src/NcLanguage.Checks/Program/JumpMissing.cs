using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>A jump that leads nowhere.</summary>
public sealed class JumpMissing : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6033",
        Name = "jump-missing",
        Severity = Severity.Error,
        Title = "The block to go to is not there",
        Finds = "GOTO, or M99 with P, with a number that no block of the program has; a loop or condition whose beginning or end is missing.",
        AtTheMachine = "The control searches the program and stops with an alarm.",
        Example = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50
            GOTO 90
            ~^^^^^^
            N80 G0 X20
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50
            GOTO 80
            N80 G0 X20
            M30
            """,
        NotFound = "Jumps whose condition does not hold in this run, and jumps to a number that is not known.",
        Source = "Common practice.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
        {
            if (fault.Kind == FaultKind.JumpMissing)
                step.Report(this, fault.Token, $"No block of this program has the number N{Say.Number(fault.A)}: the control stops here with an alarm.");
            else if (fault.Kind == FaultKind.PairMissing)
                step.Report(this, fault.Token, $"The statement that goes with this one by its number {Say.Number(fault.A)} is not there: the control stops here with an alarm.");
        }
    }
}
