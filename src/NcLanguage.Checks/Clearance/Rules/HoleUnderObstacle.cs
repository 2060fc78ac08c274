using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;

namespace NcLanguage.Checks.Rules;

/// <summary>A hole at a place where an obstacle stands above its bottom.</summary>
public sealed class HoleUnderObstacle : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC4006",
        Name = "hole-under-obstacle",
        Severity = Severity.Error,
        Title = "A hole lies under an obstacle",
        Finds = "A hole whose circle (the tool's diameter about the hole's axis) reaches into an obstacle that stands higher than the hole's bottom.",
        AtTheMachine = "The tool drills into the clamp on its way down.",
        Setup = """
            { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] },
              "obstacles": [ { "name": "clamp A", "min": [40, -20, 0], "max": [60, 12, 25] } ],
              "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118, "fluteLength": 60, "length": 140 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G98 G81 X20 Y30 R2 Z-10 F150
            X50 Y8
            ~^^^^^
            G80
            G0 Z60 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-10 F150
            X50 Y28
            G80
            G0 Z60 M9
            M5
            M30
            """,
        NotFound = "Holes whose place or bottom is not known, and holes not drilled along Z. A tool the setup does not describe counts as its bare axis.",
        Source = "Common practice.",
    };

    public override StepEvents Interest => PartScan.Near;

    public override bool Concerns(Job job) => !job.Obstacles.IsEmpty;

    public override void CheckStep(in StepContext step)
    {
        if (step.IsFree)
            return;
        foreach (ref readonly var hole in step.Step.Holes.Items)
            if (Report(hole, step))
                return;
    }

    bool Report(in Hole hole, in StepContext step)
    {
        foreach (var obstacle in step.Job.Obstacles)
        {
            if (!HoleCover.IsOver(obstacle, hole, step))
                continue;
            var toFrame = step.Step.ToFrame;
            var radius = step.Job.ShapeOf(hole.Tool).Radius;
            var beside = Footprint.Distance(obstacle, hole.X + toFrame.X, hole.Y + toFrame.Y);
            var where = beside < 0
                ? $"lies under {obstacle.Name}"
                : $"reaches {(radius - beside > 0.0005 ? step.Say.Length(radius - beside) + " " : "just ")}under {obstacle.Name}{(radius > 0 ? $" (tool diameter {step.Say.Length(2 * radius)})" : ", even with the tool's thickness, which is not known, left out")}";
            step.ReportBlock(this, $"The hole at {ContactWords.Place(hole.X, hole.Y, step)} {where}: the tool meets it at {step.Say.Level(obstacle.Top - toFrame.Z)} "
                + $"on its way down to {step.Say.Level(hole.Bottom)}.");
            return true;
        }
        return false;
    }
}
