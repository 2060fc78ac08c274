using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>Blocks behind the end of the program.</summary>
public sealed class AfterProgramEnd : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC1014",
        Name = "after-program-end",
        Severity = Severity.Warning,
        Title = "Blocks behind the program's end never run",
        Finds = "The first block that stands behind M2, M30, M99 or the closing % and belongs to no further program (O).",
        AtTheMachine = "The control ends the program before and never reaches these blocks.",
        Example = """
            G21 G90 G17 G54
            G0 X10 Y10
            M30
            G0 X20 Y20
            ~^^^^^^^^^
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X10 Y10
            G0 X20 Y20
            M30
            """,
        NotFound = "Blocks that no jump leads to.",
        Source = "NISTIR 6556 §3.3 and §3.6.1.",
    };

    public override StepEvents Interest => StepEvents.NotRun;

    public override void CheckStep(in StepContext step)
    {
        if (!step.HasHappened(Happened.PastEnd))
            return;
        step.ReportBlock(this, "The program has ended before this block: it never runs, nor do the blocks behind it.");
    }
}
