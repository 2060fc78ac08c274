using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>A traverse runs no higher than the clamps.</summary>
public sealed class RetractBelowClamp : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC4002",
        Name = "retract-below-clamp",
        Severity = Severity.Error,
        Title = "A traverse runs below the clamps' top",
        Finds = "A traverse from one hole of a cycle to the next, to the first hole, or a rapid that moves in X or Y, at or below the clamp height of the setup, "
            + "where the setup lists no obstacles.",
        AtTheMachine = "Where the clamps stand is not known, only how high they are: a traverse below their top strikes one if it lies in the way.",
        Example = """
            G21 G90 G17 G54
            T3 M6
            G43 H3
            S1800 M3
            G0 X12 Y20 Z40
            M8
            G99 G81 X12 Y20 Z-8 R2 F180
            X60
            ~^^
            G80 G0 Z40
            M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T3 M6
            G43 H3
            S1800 M3
            G0 X12 Y20 Z40
            M8
            G98 G81 X12 Y20 Z-8 R2 F180
            X60
            G80 G0 Z40
            M9
            M5
            M30
            """,
        Setup = HopExample.ClampHeightSetup,
        FixSafety = FixSafety.Safe,
        Fix = "For a traverse between two holes: writes G98 on the blocks whose traverse runs too low, for the whole run of holes; none where the initial level is not high enough. Where no machine is chosen, a choice to be looked at.",
        NotFound = "Setups that list obstacles: there each traverse is measured against them. Moves whose level is not known. "
            + "A traverse that keeps clear of every clamp sideways is reported too: list the clamps as obstacles and it is not.",
        Source = "Common practice: no traverse below the clamps.",
    };

    public override StepEvents Interest => StepEvents.Moves;

    public override bool MendsAllRuns => true;

    public override bool Concerns(Job job) => job.Obstacles.IsEmpty;

    public override void CheckStep(in StepContext step)
    {
        if (step.Job.Obstacles.IsEmpty && BlockHop.TryFindNearest(step, out var hop) && HopClearance.Of(step.Job, hop.Distance) == HopOutcome.Contact)
            hop.Report(this, step, BlockHop.Mark);
        else if (PlainTraverse.LowestOf(step) is { } traverse && HopClearance.Of(step.Job, traverse.Distance) == HopOutcome.Contact)
            step.ReportBlock(this, traverse.Message(step), traverse.LevelIn(step), LevelSet);
    }

    const string LevelSet = "This block sets the level.";

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.Text == BlockHop.Mark ? HopFixes.Clear(finding, analysis) : [];
    }
}
