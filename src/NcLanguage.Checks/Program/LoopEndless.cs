using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>A loop without a way out.</summary>
public sealed class LoopEndless : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6034",
        Name = "loop-endless",
        Severity = Severity.Error,
        Title = "The loop never ends",
        Finds = "A jump back, or the end of a loop, at which all variables are as they were when the run came there before, and nothing on the way depends on anything else; and a way back without any condition.",
        AtTheMachine = "The machine does the same again and again until someone stops it.",
        Example = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50 S800 M3
            #1=0
            WHILE [#1 LT 5] DO 1
            G1 X10 F200
            G1 X0
            END 1
            ~^^^^
            M5 M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50 S800 M3
            #1=0
            WHILE [#1 LT 5] DO 1
            G1 X10 F200
            G1 X0
            #1=#1+1
            END 1
            M5 M30
            """,
        NotFound = "Loops that go on counting for ever: those meet run-too-long.",
        Source = "Common practice.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
            if (fault.Kind == FaultKind.LoopEndless)
                step.Report(this, fault.Token, $"From here the run goes back to line {Say.Number(fault.A)} for ever: nothing that it depends on changes on the way.");
    }
}
