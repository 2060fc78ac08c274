using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A hole or a move that reaches what the stock rests on.</summary>
public sealed class HitsSupport : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC4008",
        Name = "hits-support",
        Severity = Severity.Error,
        Title = "The tool reaches what the stock rests on",
        Finds = "A hole, a cut or a rapid on which the tool goes into a support of the setup: a parallel, the table, the vice. Touching alone is none. "
            + "Where more holes of a run are too deep it is told at the first, with their number; a hole into another support, or much deeper, is told by itself.",
        AtTheMachine = "The tool drills or mills into the parallel or the table.",
        Setup = """
            { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] },
              "supports": [ { "name": "rear parallel", "min": [0, 50, -45], "max": [100, 60, -15] } ],
              "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118, "fluteLength": 60, "length": 140 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-19 F150
            Y52
            ~^^
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
            G99 G81 X20 Y30 R2 Z-19 F150
            Y42
            G80
            G0 Z60 M9
            M5
            M30
            """,
        NotFound = "Supports the setup does not list, moves whose place is not known, probe moves, and holes not drilled along Z. Without the tool's diameter, or the point angle "
            + "of a pointed tool, and of taps, only the axis counts. On moves other than holes so it does of centre drills, and a cone or a round counts as sixteen cylinders inside it: a contact by less than one of their steps is missed.",
        Source = "Common practice.",
    };

    public override StepEvents Interest => StepEvents.Moves;

    public override bool Concerns(Job job) => !job.Supports.IsEmpty;

    public override void CheckStep(in StepContext step)
    {
        if (step.Job.Supports.IsEmpty)
            return;
        if (ReportHoles(step))
            return;
        for (var i = 0; i < step.Step.Moves.Count; i++)
            if (Report(step.Step.Moves[i], step))
                return;
    }

    bool ReportHoles(in StepContext step)
    {
        if (step.Step.Holes.Count == 0 || step.Step.After.Plane != WorkPlane.XY)
            return false;
        var isMet = false;
        foreach (var support in step.Job.Supports)
        {
            // All holes of a block are as deep as each other.
            var (first, count) = (default(Hole), 0);
            foreach (ref readonly var hole in step.Step.Holes.Items)
                if (Meets(hole, support, step) && count++ == 0)
                    first = hole;
            if (count == 0)
                continue;
            isMet = true;
            var deep = DepthIn(support, first, step);
            step.ReportBlock(
                this, $"The hole at {ContactWords.Place(first.X, first.Y, step)} goes down to {step.Say.Level(first.Bottom)}, "
                    + $"{step.Say.Length(deep)} into {Called(support)}, which begins at {step.Say.Level(support.Top - step.Step.ToFrame.Z)}.",
                value: count, text: HoleFindings.MarkOf(support, step.Job.Supports, deep));
        }
        return isMet;
    }

    static double DepthIn(Obstacle support, in Hole hole, in StepContext step) => support.Top - (hole.Bottom + step.Step.ToFrame.Z);

    static bool Meets(in Hole hole, Obstacle support, in StepContext step)
    {
        var toFrame = step.Step.ToFrame;
        var deep = DepthIn(support, hole, step);
        return deep > Sweep.ClearanceTolerance
            && ToolEnd.RadiusAt(step.Job.Setup.FindTool(hole.Tool), deep) - Footprint.Distance(support, hole.X + toFrame.X, hole.Y + toFrame.Y) > Sweep.ClearanceTolerance;
    }

    // Names of the file are often bare nouns; a support without one is called by its number: "support 2".
    static string Called(Obstacle support) => support.Name.StartsWith("support", StringComparison.Ordinal) ? support.Name : "the support " + support.Name;

    bool Report(in Move move, in StepContext step)
    {
        if (!move.IsMotion || move.Role == MoveRole.Probe)
            return false;
        var tool = step.Step.After.Tool;
        var approach = step.Job.SupportApproachOf(move, step.Step.ToFrame, tool, 0);
        if (!(approach.Distance < -Sweep.ClearanceTolerance))
            return false;
        for (var i = 0; i < step.Job.Supports.Length && StandsIn(approach, move, tool, step); i++)
            approach = step.Job.SupportApproachOf(move, step.Step.ToFrame, tool, 0, i);
        if (!(approach.Distance < -Sweep.ClearanceTolerance) || StandsIn(approach, move, tool, step))
            return false;
        var support = step.Job.Supports[approach.ObstacleIndex];
        // What is inside a cone or a round is not as deep as the tool is.
        var least = approach.Part == ToolPart.Cutting && !step.Job.EndOf(tool).IsFlat ? "at least " : "";
        step.ReportBlock(
            this, $"{ContactWords.Move(move, step)} goes {least}{step.Say.Length(-approach.Distance)} deep into {Called(support)}{ContactWords.With(approach.Part)} at "
                + $"{ContactWords.At(approach.Tip - step.Step.ToFrame, step)}; it begins at {step.Say.Level(support.Top - step.Step.ToFrame.Z)}.",
            value: 1, text: move.Role is MoveRole.Approach or MoveRole.InHole ? HoleFindings.MarkOf(support, step.Job.Supports, -approach.Distance) : "");
        return true;
    }

    /// <summary>True where the support is not met, or the tool stands in it already when the move begins: that was told then.</summary>
    static bool StandsIn(in Approach approach, in Move move, int tool, in StepContext step)
    {
        if (!(approach.Distance < -Sweep.ClearanceTolerance))
            return true;
        var from = move.From + step.Step.ToFrame;
        return Sweep.Line(from, from, step.Job.ShapeWithin(tool), step.Job.Supports.Slice(approach.ObstacleIndex, 1), 0).Distance < -Sweep.ClearanceTolerance;
    }
}
