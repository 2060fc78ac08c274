using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>A rapid, other than a traverse between two holes, that runs into an obstacle.</summary>
public sealed class RapidHitsObstacle : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC4003",
        Name = "rapid-hits-obstacle",
        Severity = Severity.Error,
        Title = "A rapid runs into an obstacle",
        Finds = "A rapid, the traverse to the first hole of a cycle, its way down to the R level, or a move in machine coordinates whose place is "
            + "known, on which the cutting part or the shank of the tool touches an obstacle of the setup.",
        AtTheMachine = "The tool hits the clamp at full rapid: a broken tool, a torn-out clamp, a damaged spindle.",
        Setup = """
            { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] },
              "obstacles": [ { "name": "clamp A", "min": [40, -20, 0], "max": [60, 12, 25] } ],
              "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118, "fluteLength": 60, "length": 140 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T3 M6
            S1500 M3
            G0 X20 Y8
            G43 H3 Z50 M8
            Z5
            X80
            ~^^
            G1 Z-4 F150
            G0 Z50 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T3 M6
            S1500 M3
            G0 X20 Y8
            G43 H3 Z50 M8
            X80
            Z5
            G1 Z-4 F150
            G0 Z50 M9
            M5
            M30
            """,
        NotFound = "Obstacles the setup does not list, and moves whose place is not known. A tool the setup does not describe counts as its bare axis, "
            + "so only the certain contacts are found. A tool that already touches at the start of a move is reported at the block that took it there.",
        Source = "Common practice; the path of a rapid as the reading rapidPath says (NISTIR 6556 §3.5.1: the axes move together on a straight line).",
    };

    public override StepEvents Interest => PartScan.Near;

    public override bool Concerns(Job job) => !job.Obstacles.IsEmpty;

    public override void CheckStep(in StepContext step)
    {
        if (Contact.FirstOf(ContactKind.Rapid, step) is not { } contact)
            return;
        var message = $"{ContactWords.Move(step.Step.Moves[contact.Move], step)} runs into {contact.Obstacle.Name}{ContactWords.With(contact.Part)} at {ContactWords.At(contact.Tip, step)}, "
            + $"{ContactWords.Depth(contact, step)}{ContactWords.Thickness(step)}: {ContactWords.Top(contact, step)}.{ContactWords.Besides(contact, step)}";
        step.ReportBlock(this, message, step.LevelOf(contact.Move, contact.Tip.Z), "This block sets the level.");
    }
}
