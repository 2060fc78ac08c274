using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A move in work coordinates before any work offset was chosen.</summary>
public sealed class WorkOffsetNotSet : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2006",
        Name = "work-offset-not-set",
        Severity = Severity.Warning,
        Title = "No code chooses the work offset",
        Finds = "The first move in work coordinates while the program has chosen no work offset (G54 to G59.3) and set no position (G92).",
        AtTheMachine = "The control counts from the datum the program before has used, which may lie somewhere else on the table.",
        Example = """
            G21 G90 G17
            G0 X10 Y10
            ~^^^^^^^^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X10 Y10
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Adds to the first block the work offset that the setup measures in, or G54: the one that the program is read in here.",
        NotFound = "Machines with a single datum; moves in machine coordinates and to the reference point.",
        Source = "NISTIR 6556 §3.5.13; common practice.",
    };

    public override StepEvents Interest => StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        if (!step.HasHappened(Happened.WorkMove) || after.IsCalled || (after.Set & (Slot.WorkOffset | Slot.Shift | Slot.LocalShift)) != 0)
            return;
        step.ReportBlock(this, "No work offset (G54 to G59) has been chosen: this move counts from the datum the program before has used.");
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        var frame = analysis.Setup.Frame;
        return frame != Setup.UnknownFrame && Inserts.ModeBefore(analysis, finding.Line, WorkOffsetName.Format(frame)) is { } fix ? [fix] : [];
    }
}
