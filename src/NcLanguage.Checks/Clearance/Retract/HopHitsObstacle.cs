using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>The traverse between two holes of a cycle runs into an obstacle.</summary>
public sealed class HopHitsObstacle : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC4001",
        Name = "hop-hits-obstacle",
        Severity = Severity.Error,
        Title = "The traverse between two holes runs into an obstacle",
        Finds = "A traverse from one hole of a cycle to the next that touches an obstacle of the setup, at the block of the hole it leads to.",
        AtTheMachine = "The tool crosses at rapid, at the level the hole before was left at or the tool was lifted to, and strikes the clamp sideways: "
            + "the tool breaks, the part is torn out of its place or the spindle is damaged.",
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
        Setup = HopExample.Setup,
        FixSafety = FixSafety.Safe,
        Fix = "Writes G98 where the traverse needs the initial level, for the whole run of holes, and G99 where the words before it would otherwise "
            + "carry on: on the block before the traverse where the return acts after the hole, on the traverse's own block where it acts "
            + "before the move. Blocks that need nothing keep what is in effect. No fix where the initial level is not high enough, or where a block that runs more than once would need another word each time. Where no machine is chosen, a choice to be looked at.",
        NotFound = "Traverses whose place or level is not known, obstacles the setup does not list, and more than the axis of a tool the setup does not describe. "
            + "The traverse to the first hole and rapids outside cycles have findings of their own.",
        Source = "NISTIR 6556 §3.5.16 (motion of a cycle) and §3.5.20 (return level); the other reading is common practice.",
    };

    public override StepEvents Interest => PartScan.Near;

    public override bool MendsAllRuns => true;

    public override bool Concerns(Job job) => !job.Obstacles.IsEmpty;

    public override void CheckStep(in StepContext step)
    {
        if (!step.Job.Obstacles.IsEmpty && BlockHop.TryFindNearest(step, out var hop) && HopClearance.Of(step.Job, hop.Distance) == HopOutcome.Contact)
            hop.Report(this, step);
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis) => HopFixes.Clear(finding, analysis);
}
