using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A rapid down among clamps and stock from a place that is not known.</summary>
public sealed class LowWayUnseen : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC4016",
        Name = "low-way-unseen",
        Severity = Severity.Warning,
        Title = "A low rapid from a place that is not known",
        Finds = "A rapid, or the traverse to the first hole of a cycle, that goes lower than the clearance above the highest obstacle of the setup (or its clamp height), or than the stock's top, while the program has not "
            + "said yet where the tool stands in X and Y. Straight down it is a note. Each is reported once.",
        AtTheMachine = "The tool starts from wherever the last job or the operator left it, perhaps behind a clamp, and goes through whatever stands between at full rapid.",
        Setup = """
            { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] },
              "obstacles": [ { "name": "clamp A", "min": [40, -20, 0], "max": [60, 12, 25] } ],
              "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118, "fluteLength": 60, "length": 140 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T3 M6
            S1500 M3
            G0 X20 Y30 G43 H3 Z5 M8
            ~^^^^^^^^^^^^^^^^^^^^^^
            G1 Z-4 F150
            G0 Z50 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z5 M8
            G1 Z-4 F150
            G0 Z50 M9
            M5
            M30
            """,
        NotFound = "Rapids whose level is not known either: the first move across of most programs. Rapids across that the clamp height tells: retract-below-clamp, clearance-small. The way home is home-through-work. Where a work offset or a length is not known, that is told: path-not-known. Nor a way back from where a probe has touched.",
        Source = "Common practice: X and Y first, high up, then Z.",
    };

    public override StepEvents Interest => StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        if (!step.HasHappened(Happened.WentDownUnseen | Happened.WentAcrossUnseen))
            return;
        for (var i = 0; i < step.Step.Moves.Count; i++)
        {
            ref readonly var move = ref step.Step.Moves[i];
            if (WayUnseen.Of(move, step.Step.ToFrame, step.Job.Setup) is not { } way || !step.HasHappened(way.Marks))
                continue;
            if (IsToldByClampHeight(way, step))
                return;
            var z = step.Step.ToFrame.Z;
            var below = way.Level < way.Top ? $"{step.Say.Length(way.Top - way.Level)} below" : "close above";
            var where = $"{step.Say.Level(way.Level - z)}, {below} the top of {way.Under} at {step.Say.Level(way.Top - z)}";
            var message = way.IsSideways ? $"Where this rapid comes from is not known, and it goes at {where}" : $"Where the tool stands in X and Y is not known, and this rapid takes it down to {where}";
            // The clamp height holds for rapids across wherever they come from.
            var behind = step.Job.Obstacles.IsEmpty && step.Job.Setup.ClampHeight is not null ? "" : ", nor is that of the rapids behind it until both are known";
            // Straight down goes who has set the tool over the place by hand.
            step.ReportBlock(this, $"{message}: its way is not checked{behind}. Move in X and Y first, high up, then in Z.", step.LevelOf(i, way.Level - z), "This block sets the level.",
                severity: way.IsSideways ? Severity.Warning : Severity.Note);
            return;
        }
    }

    /// <summary>Whether a rapid across is held against the clamp height, and found too low: where it comes from does not matter then.</summary>
    static bool IsToldByClampHeight(in WayUnseen way, in StepContext step) =>
        way.IsSideways && PlainTraverse.LowestOf(step) is { } traverse && HopClearance.Of(step.Job, traverse.Distance) is HopOutcome.Contact or HopOutcome.Close;
}
