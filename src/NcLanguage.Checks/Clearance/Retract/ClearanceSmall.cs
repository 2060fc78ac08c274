using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>A move passes an obstacle nearer than the setup's clearance.</summary>
public sealed class ClearanceSmall : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC4010",
        Name = "clearance-small",
        Severity = Severity.Warning,
        Title = "A move passes an obstacle nearer than the clearance",
        Finds = "A rapid or a cut that touches nothing but comes nearer to an obstacle than the setup's clearance; where only the clamp height is known, "
            + "a traverse that runs nearer above it.",
        AtTheMachine = "It passes, as long as the clamp stands where the setup says and nothing is bent or shimmed: a chip or a clamp set a little off makes it a crash.",
        Example = """
            G21 G90 G17 G54
            T3 M6
            G43 H3
            S1800 M3
            G0 X12 Y20 Z40
            M8
            G99 G81 X12 Y6 Z-8 R2 F180
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
            G98 G81 X12 Y6 Z-8 R2 F180
            X60
            G80 G0 Z40
            M9
            M5
            M30
            """,
        Setup = HopExample.Setup,
        FixSafety = FixSafety.Safe,
        Fix = "For a traverse between two holes: writes G98 where it needs the initial level, for the whole run of holes. Exactly the clearance counts as clear. Where no machine is chosen, a choice to be looked at.",
        NotFound = "Moves whose place is not known, tools whose diameter is not known, and obstacles the setup does not list. A tool that is as near at the start of a move already is reported at the "
            + "block that took it there.",
        Source = "The clearance is the setup's own; common practice is 2 mm or more above what can be measured.",
    };

    public override StepEvents Interest => PartScan.Near;

    public override bool MendsAllRuns => true;

    public override void CheckStep(in StepContext step)
    {
        // How near a tool of unknown diameter passes is not known; tool-size-unknown says so.
        if (!step.Job.Obstacles.IsEmpty && !(step.Job.ShapeOf(step.Step.After.Tool).Radius > 0))
            return;
        if (BlockHop.TryFindNearest(step, out var hop) && HopClearance.Of(step.Job, hop.Distance) == HopOutcome.Close && !OnlyLeaves(hop, step))
            hop.Report(this, step, BlockHop.Mark);
        else if (Contact.FirstOf(ContactKind.Near, step) is { } contact)
            step.ReportBlock(this, Message(contact, step), step.LevelOf(contact.Move, contact.Tip.Z), LevelSet);
        else if (PlainTraverse.LowestOf(step) is { } traverse && HopClearance.Of(step.Job, traverse.Distance) == HopOutcome.Close)
            step.ReportBlock(this, traverse.Message(step), traverse.LevelIn(step), LevelSet);
    }

    /// <summary>True when the traverse is nowhere nearer than at the hole it leaves, whose own block has been reported.</summary>
    static bool OnlyLeaves(in BlockHop hop, in StepContext step) =>
        hop.Approach.ObstacleIndex >= 0 && hop.Approach.Tip == step.Step.Moves[hop.Move].From + step.Step.ToFrame;

    const string LevelSet = "This block sets the level.";

    static string Message(in Contact contact, in StepContext step) =>
        $"{ContactWords.Move(step.Step.Moves[contact.Move], step)} passes {contact.Obstacle.Name}{ContactWords.With(contact.Part)} at {step.Say.Length(contact.Distance)}, "
        + $"nearer than the clearance of {step.Say.Length(step.Job.Setup.Clearance)}, when the tip is at {ContactWords.At(contact.Tip, step)}.";

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.Text == BlockHop.Mark ? HopFixes.Clear(finding, analysis) : [];
    }
}
