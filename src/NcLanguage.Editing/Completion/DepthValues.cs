using NcLanguage.Checks.Cutting;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Editing;

/// <summary>R levels and bottoms from the stock and the drawing, as cycles take them. In work coordinates, mm.</summary>
static class DepthValues
{
    /// <summary>R words: the clearance above the stock.</summary>
    public static IReadOnlyList<WordValue> RLevels(Spot spot)
    {
        var level = RLevel(spot);
        var from = spot.Readings.IncrementalR == IncrementalRReading.InitialLevel && spot.Cycle > 0 ? spot.After.InitialLevel : spot.Before.Position.Z;
        var number = spot.After.Distance switch { DistanceMode.Absolute => level, DistanceMode.Incremental => level - from, _ => double.NaN };
        return double.IsNaN(number)
            ? []
            : [new WordValue(spot.Style.Length('R', spot.Say.Upward(number)), $"{spot.Say.Length(spot.Setup.Clearance)} above the stock", "The setup's clearance above the top of its stock.")];
    }

    /// <summary>The clearance above the stock; NaN where the setup has no stock or its place is not known.</summary>
    public static double RLevel(Spot spot) => spot.IsPlain && spot.Setup.Stock is { } stock ? stock.Max.Z + spot.Setup.Clearance - spot.ToFrame.Z : double.NaN;

    /// <summary>Z words: how deep the holes at the block's place, else all that are left, ask the tool to go.</summary>
    /// <param name="rLevel">Where Z counts from under G91, mm.</param>
    public static IReadOnlyList<WordValue> Bottoms(Spot spot, int cycle, double rLevel)
    {
        var values = new List<WordValue>();
        foreach (var hole in Asking(spot))
        {
            if (Depth(spot.Tool, hole.Hole, cycle, spot) is not { } depth)
                continue;
            var bottom = Bottom(spot, hole, depth.Value);
            var number = spot.After.Distance switch { DistanceMode.Absolute => bottom, DistanceMode.Incremental => bottom - rLevel, _ => double.NaN };
            if (double.IsNaN(number))
                continue;
            var text = spot.Style.Length('Z', -spot.Say.Upward(-number));
            if (!values.Exists(value => value.Text == text))
                values.Add(new WordValue(text, $"{(hole with { Fit = default }).Describe(spot.Say)}: {depth.How}", "Counted from the top of the stock, or what mills leave of it all round the hole; from Z0 where the setup has no stock.\n\nSource of the point's length: Z = (D − T)/2·cot(α/2), engineering reference"));
        }
        return values;
    }

    /// <summary>How deep a hole asks the tool to go; NaN where it is not known, or left to the setter, as for spots and for drills whose point is not known.</summary>
    public static double Bottom(Spot spot, WantedHole hole, int cycle) =>
        spot.Tool is not { } tool || tool is { Kind: ToolKind.Drill, PointAngle: null } || tool.Kind is ToolKind.SpotDrill or ToolKind.CentreDrill or ToolKind.Countersink
        || Depth(tool, hole.Hole, cycle, spot) is not { } depth
            ? double.NaN
            : Bottom(spot, hole, depth.Value);

    // To a hundredth, deeper rather than not deep enough.
    static double Bottom(Spot spot, WantedHole hole, double depth) =>
        spot.Levels.SurfaceAt(hole.Hole.X, hole.Hole.Y, (hole.Hole.Diameter ?? 0) / 2) - Math.Ceiling(depth * 100 - 1e-6) / 100 - spot.ToFrame.Z;

    /// <summary>The hole at the block's own place, or all that are left where it names none.</summary>
    static IReadOnlyList<WantedHole> Asking(Spot spot)
    {
        if (!spot.Step.Words.Has('X') && !spot.Step.Words.Has('Y'))
            return spot.HolesLeft;
        var at = HoleValues.PlaceOf(spot.Step);
        var here = WantedHoles.Fitting(spot).FindAll(hole => WantedHoles.IsNear((hole.X, hole.Y), (at.X, at.Y)));
        return here.Count > 0 ? here : spot.HolesLeft;
    }

    static (double Value, string How)? Depth(Tool? tool, DrawingHole hole, int cycle, Spot spot)
    {
        var point = tool is { PointAngle: > 0 and < 180 and var angle, Diameter: { } diameter } ? (Angle: angle, Diameter: diameter) : default;
        if (tool?.Kind is ToolKind.SpotDrill or ToolKind.CentreDrill or ToolKind.Countersink)
        {
            var wanted = hole.Thread is { } name && Threads.Find(name) is { } thread ? thread.Major : hole.Diameter;
            if (point.Angle == 0 || wanted is not { } size)
                return null;
            var spotted = Math.Min(size, point.Diameter);
            return (PointShape.Length(spotted, point.Angle), $"a spot of {spot.Say.Length(spotted)}");
        }
        if (hole.Depth is not { } depth)
            return null;
        if (cycle is 74 or 84 || tool?.Kind == ToolKind.Tap || point.Angle == 0)
            return (depth, "its depth");
        return (depth + PointShape.Length(point.Diameter, point.Angle), "its depth and the drill's point");
    }
}
