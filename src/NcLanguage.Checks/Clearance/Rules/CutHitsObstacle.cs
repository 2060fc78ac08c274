using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>A feed or an arc that runs into an obstacle.</summary>
public sealed class CutHitsObstacle : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC4004",
        Name = "cut-hits-obstacle",
        Severity = Severity.Error,
        Title = "A cut runs into an obstacle",
        Finds = "A feed or an arc on which the cutting part or the shank of the tool touches an obstacle of the setup.",
        AtTheMachine = "The cutter mills into the clamp: it breaks, or tears the part out of its clamping.",
        Setup = """
            { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] },
              "obstacles": [ { "name": "clamp A", "min": [40, -20, 0], "max": [60, 12, 25] } ],
              "tools": [ { "number": 5, "kind": "end-mill", "diameter": 10, "fluteLength": 60, "length": 110 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T5 M6
            S3000 M3
            G0 X-10 Y8
            G43 H5 Z50 M8
            Z-2
            G1 X80 F300
            ~^^^^^^^^^^
            G0 Z50 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T5 M6
            S3000 M3
            G0 X-10 Y8
            G43 H5 Z50 M8
            Z-2
            G1 X32 F300
            G0 Z50 M9
            M5
            M30
            """,
        NotFound = "Obstacles the setup does not list, and cuts whose place is not known (under radius compensation by a radius that is not known, say). "
            + "A hole that lies under an obstacle is hole-under-obstacle. A tool that already touches at the start of a cut is reported at the block that took it there.",
        Source = "Common practice; arcs as NISTIR 6556 §3.5.3 lays down.",
    };

    public override StepEvents Interest => PartScan.Near;

    public override bool Concerns(Job job) => !job.Obstacles.IsEmpty;

    public override void CheckStep(in StepContext step)
    {
        if (Contact.FirstOf(ContactKind.Cut, step) is not { } contact)
            return;
        ref readonly var move = ref step.Step.Moves[contact.Move];
        var message = $"{ContactWords.Move(move, step)} {(move.IsCut ? "cuts" : "runs")} into {contact.Obstacle.Name}{ContactWords.With(contact.Part)} at {ContactWords.At(contact.Tip, step)}, "
            + $"{ContactWords.Depth(contact, step)}{ContactWords.Thickness(step)}: {ContactWords.Top(contact, step)}.{ContactWords.Besides(contact, step)}";
        step.ReportBlock(this, message, step.LevelOf(contact.Move, contact.Tip.Z), "This block sets the level.");
    }
}
