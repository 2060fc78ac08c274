using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A through hole whose drill comes out with its point only.</summary>
public sealed class PointNotThrough : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5008",
        Name = "point-not-through",
        Severity = Severity.Warning,
        Title = "A through hole that is short by the point of the drill",
        Finds = "A drill whose tip reaches the stock's bottom or goes through it, but by less than the length of its point, so that the hole is narrower at the bottom than the drill.",
        AtTheMachine = "The hole tapers at its end: a screw or a pin does not pass, and a thin cap or a burr is left hanging.",
        Setup = """
            { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] },
              "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118, "fluteLength": 60, "length": 120 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            G0 G53 Z0
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-16 F150
            ~^^^^^^^^^^^^^^^^^^^^^^^^^^^
            G80
            G0 G53 Z0 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 G53 Z0
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-18 F150
            G80
            G0 G53 Z0 M9
            M5
            M30
            """,
        NotFound = "Tools without a point angle in the setup. A hole that another tool opens through the stock to the same width or a larger one, and one that is less deep than the drawing's list asks: that is hole-shallow. A hole that ends in the stock in the drawing's list: that is hole-too-deep where its tool comes out, but would not at the drawing's depth. "
            + "The stock's bottom counts: where less than the stock is the part, give the part's thickness.",
        Source = "Length of the point (D/2)·cot(α/2): engineering reference; 7/8 in at 118 degrees 0.263 in: trade mathematics course. Part thickness + point + clearance for through holes: common practice.",
    };

    /// <summary>Differences of less are none, mm.</summary>
    const double Equal = 0.01;

    public override bool ReadsFile => true;

    /// <summary>Whether the drawing says more of the place: the hole falls short of the depth asked for, which is told by hole-shallow, or all that is drawn there ends in the stock.</summary>
    static bool IsOfDrawing(Setup setup, WorkedPlace place, in PlaceWork drill, MilledLevels levels)
    {
        var (drawn, inside) = (0, 0);
        foreach (var hole in setup.Holes)
        {
            if (!WorkedPlaces.IsAt(hole, place))
                continue;
            var surface = levels.SurfaceAt(place.X, place.Y, drill.Diameter / 2);
            if (hole.Depth is { } depth && surface - drill.Full < depth - Equal)
                return true;
            drawn++;
            inside += DepthLimit.EndsInside(hole, surface, drill, setup.Stock!.Value) ? 1 : 0;
        }
        return drawn > 0 && inside == drawn;
    }

    /// <summary>How far the tip goes, with the place put between: "ends at the stock's bottom", "goes 0.5 mm below the stock".</summary>
    static string Reach(double below, string places, LengthText say) => Math.Abs(below) <= Equal ? $"ends at the stock's bottom {places}" : $"goes {say.Length(below)} below the stock {places}";

    /// <summary>Whether a cycle or a feed straight down goes as low as a level at all, before the places are gathered.</summary>
    static bool GoesThrough(ProgramRun run, double level)
    {
        foreach (var part in run.Results)
            if (part.Holes.LowestBottom <= level || Array.Exists(part.Plunges, plunge => plunge.To.Z <= level))
                return true;
        return false;
    }

    public override void CheckFile(in FileContext file)
    {
        if (file.Run.Job.Setup.Stock is not { } stock)
            return;
        var bottom = stock.Min.Z;
        if (!GoesThrough(file.Run, bottom + Equal))
            return;
        var faults = new List<PlaceFault>();
        var levels = new MilledLevels(file.Run);
        foreach (var place in PlaceGroups.PlacesOf(file))
        {
            var drill = place.Works.FindIndex(work => work is { Kind: WorkKind.Drill, Tool.Kind: ToolKind.Drill } && work.Tip <= bottom + Equal && work.Full > bottom + Equal);
            if (drill < 0 || place.Works.Exists(work => work.Makes && work.Full <= bottom + Equal && !(work.Diameter < place.Works[drill].Diameter - Equal)))
                continue;
            if (!IsOfDrawing(file.Run.Job.Setup, place, place.Works[drill], levels))
                faults.Add(new PlaceFault(place, place.Works[drill], place.Works[drill]));
        }
        foreach (var group in PlaceGroups.Of(faults))
        {
            var work = group[0].Work;
            var say = file.SayAt(work.Line, work.Coordinates);
            file.ReportBlock(this, work.Line, $"The tip of T{work.ToolNumber} {Reach(bottom - work.Tip, PlaceGroups.Places(group, say), say)}, and its point is {say.Length(work.Full - work.Tip)} long: "
                + $"the hole is narrower than {say.Length(work.Diameter)} at the bottom. It is through from {say.Level(bottom - (work.Full - work.Tip) - work.ToFrame.Z)} down.");
        }
    }
}
