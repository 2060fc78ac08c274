using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>Axis words before any G90 or G91.</summary>
public sealed class DistanceModeNotSet : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2005",
        Name = "distance-mode-not-set",
        Severity = Severity.Warning,
        Title = "No code says position or distance",
        Finds = "The first move, or the first point on the way to the reference point, while the program has said neither G90 nor G91.",
        AtTheMachine = "After a program that has left G91 on, positions are taken as distances: the tool runs off by its whole coordinates.",
        Example = """
            G21 G17 G54
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
        Fix = "Adds G90 to the first block: the one that the program is read in here, and that the end of a program sets on most controls.",
        NotFound = "Moves in machine coordinates (G53), which neither code rules.",
        Source = "NISTIR 6556 §3.5.17 and §3.6.1; a line that sets all modes at the beginning is common practice.",
    };

    public override StepEvents Interest => StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        if (!step.HasHappened(Happened.PlaceRead) || after.HasSet(Slot.Distance) || after.IsCalled)
            return;
        step.ReportBlock(this, "Neither G90 nor G91 has been given: these numbers are positions or distances, as the program before has left it.");
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis) =>
        Inserts.ModeBefore(analysis, finding.Line, "G90") is { } fix ? [fix] : [];
}
