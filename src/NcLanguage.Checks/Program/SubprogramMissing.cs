using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>A call of a program that is not there.</summary>
public sealed class SubprogramMissing : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6030",
        Name = "subprogram-missing",
        Severity = Severity.Error,
        Title = "The program called is not there, or cannot be read",
        Finds = "M98, G65 or an O call with a number that no program or subroutine of the file has, and no file beside it that can be read; of several calls of one the first.",
        AtTheMachine = "The control stops at the call with an alarm, or runs another program of that number that its memory happens to hold.",
        Example = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50
            M98 P200
            ~^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50
            M98 P200
            M30
            O200
            G0 X20
            M99
            """,
        NotFound = "Programs that are kept in the control, and files that cannot be read: what they do is not known, so nothing behind the call is checked until it is set anew.",
        Source = "Common practice.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
            if (fault.Kind == FaultKind.SubprogramMissing)
                step.Report(this, fault.Token, step.Job.Programs?.WhyNotRead((int)fault.A) is { } why
                    ? $"Program {Say.Number(fault.A)} is not in this file, and beside it {why}: what it does is not known, so nothing behind the call is checked until it is set anew."
                    : $"There is no program {Say.Number(fault.A)} in this file, nor a file of that number beside it: unless the control holds one, it stops here with an alarm.");
    }
}
