using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>An alarm that the program gives itself, and that the run comes to.</summary>
public sealed class AlarmReached : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6037",
        Name = "alarm-reached",
        Severity = Severity.Error,
        Title = "The program stops itself with an alarm",
        Finds = "A setting of #3000 that the run comes to, as the program and the setup's variables stand.",
        AtTheMachine = "The control stops at the block with an alarm and shows the comment beside it; what comes behind never runs.",
        Example = """
            G21 G90 G17 G54
            #1=3
            IF [#1 LE 2] GOTO 50
            #3000=1 (TYPE NOT KNOWN)
            ~^^^^^^^^^^^^^^^^^^^^^^^
            N50 G0 X0 Y0
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            #1=2
            IF [#1 LE 2] GOTO 50
            #3000=1 (TYPE NOT KNOWN)
            N50 G0 X0 Y0
            M30
            """,
        NotFound = "Alarms behind a condition that is not known: those the program keeps in store.",
        Source = "Common practice.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
            if (fault.Kind == FaultKind.AlarmReached)
                step.Report(this, 0, fault.Token, "The run comes to this block, which stops the control with an alarm: nothing behind it runs, and nothing behind it is checked.");
    }
}
