using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A reamer or boring bar that the hole before it leaves nothing, or too much.</summary>
public sealed class HoleSize : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5010",
        Name = "hole-size",
        Severity = Severity.Warning,
        Title = "A hole that leaves a reamer or boring bar nothing to cut, or too much",
        Finds = "A reamer that goes into a hole of this program which leaves it less than a third of the least or more than twice the greatest stock of the reaming table; a boring bar, and a reamer, in a hole that is as wide as itself; a boring bar in a hole that its shank does not go into, or that is less than two thirds as wide as itself.",
        AtTheMachine = "With too little to cut the reamer rubs and burnishes, and the hole keeps the drill's marks; with too much it chatters, cuts oversize or breaks. A boring bar strikes the rim of a hole that is too narrow for it with its shank.",
        Setup = """
            { "stock": { "min": [0, 0, -30], "max": [100, 60, 0] },
              "tools": [ { "number": 3, "kind": "drill", "diameter": 6, "pointAngle": 118, "fluteLength": 60, "length": 120 },
                         { "number": 4, "kind": "reamer", "diameter": 8, "fluteLength": 40, "length": 130 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            G0 G53 Z0
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-20 F150
            G80
            G0 G53 Z0 M9
            M5
            T4 M6
            S500 M3
            G0 X20 Y30
            G43 H4 Z40 M8
            G99 G85 X20 Y30 R2 Z-14 F150
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
            G99 G81 X20 Y30 R2 Z-20 F150
            G80
            G0 G53 Z0 M9
            M5
            T4 M6
            S500 M3
            G0 X20 Y30
            G43 H4 Z40 M8
            G99 G85 X20 Y30 R2 Z-14 F150
            G80
            G0 G53 Z0 M9
            M5
            M30
            """,
        InsteadSetup = """
            { "stock": { "min": [0, 0, -30], "max": [100, 60, 0] },
              "tools": [ { "number": 3, "kind": "drill", "diameter": 7.7, "pointAngle": 118, "fluteLength": 60, "length": 120 },
                         { "number": 4, "kind": "reamer", "diameter": 8, "fluteLength": 40, "length": 130 } ] }
            """,
        NotFound = "Holes that another program drilled, or that go down less than half as deep as the reamer. Boring bars in holes that mills have opened in another way than by full circles. Reamers below 2.3 mm and above 63.5 mm are not in the table.",
        Source = "Reaming stock on the diameter: published shop table, hole .090–.170 in .005–.010 in, .171–.280 .008–.012, .281–.880 .010–.016, .881–2.50 .015–.030. The third and the double of it, and the two thirds of a boring bar, are common practice.",
    };

    /// <summary>Stock on the diameter for holes up to a diameter, mm, as the table has them in inches.</summary>
    static readonly (double UpTo, double Least, double Greatest)[] Table =
    [
        (0.090 * 25.4, double.NaN, double.NaN), (0.170 * 25.4, 0.005 * 25.4, 0.010 * 25.4), (0.280 * 25.4, 0.008 * 25.4, 0.012 * 25.4),
        (0.880 * 25.4, 0.010 * 25.4, 0.016 * 25.4), (2.50 * 25.4, 0.015 * 25.4, 0.030 * 25.4),
    ];

    /// <summary>Differences of less are none, mm.</summary>
    const double Equal = 0.01;

    /// <summary>How wide a hole is to be for a boring bar, in its diameters: of what is left a bar takes a sixth of its diameter at its side (common practice, from memory).</summary>
    const double LeastForBar = 2.0 / 3;

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var faults = new List<PlaceFault>();
        MilledLevels? levels = null;
        foreach (var place in PlaceGroups.PlacesOf(file, ToolKind.Reamer, ToolKind.BoringBar))
        {
            var at = place.Works.FindIndex(work => work.Kind is WorkKind.Ream or WorkKind.Bore && work.Diameter > 0);
            if (at >= 0 && HoleBefore(place, at, file.Run.Job.Setup) is { } hole && !IsInOrder(place.Works[at], hole.Diameter)
                && (place.Works[at] is not { Kind: WorkKind.Bore } bar || LeavesNothing(bar, hole) || !IsOpened(levels ??= new MilledLevels(file.Run), place, bar, hole)))
                faults.Add(new PlaceFault(place, place.Works[at], hole));
        }
        foreach (var group in PlaceGroups.Of(faults))
            Report(group, file);
    }

    /// <summary>The widest hole before that goes down at least half as deep; null where there is none, or a width is not known. One as wide as the tool counts only where
    /// it is as deep: above that it is a counterbore.</summary>
    static PlaceWork? HoleBefore(WorkedPlace place, int at, Setup setup)
    {
        var (tool, stock) = (place.Works[at], setup.Stock);
        var (top, bottom) = (stock?.Max.Z, stock?.Min.Z ?? double.NegativeInfinity);
        // Below the stock nothing is drilled and nothing reamed.
        var end = Math.Max(tool.Tip, bottom);
        var surface = double.IsNaN(tool.RLevel) ? top ?? double.NaN : Math.Min(tool.RLevel, top ?? tool.RLevel);
        PlaceWork? before = null;
        foreach (var work in HollowWorks.At(setup, place.X, place.Y).Concat(place.Works.Take(at)))
        {
            if (!work.Makes)
                continue;
            if (double.IsNaN(work.Diameter))
                return null;
            var isDeep = work.Diameter < tool.Diameter - Equal ? surface - Math.Max(work.Full, bottom) >= (surface - end) / 2 : work.Full <= end + Equal;
            if (isDeep && !(work.Diameter <= before?.Diameter))
                before = work;
        }
        return before;
    }

    static (double Least, double Greatest) StockFor(double diameter)
    {
        foreach (var (upTo, least, greatest) in Table)
            if (diameter <= upTo)
                return (least, greatest);
        return (double.NaN, double.NaN);
    }

    static bool LeavesNothing(in PlaceWork tool, in PlaceWork hole) => tool.Diameter - hole.Diameter <= Equal;

    /// <summary>Whether mills have opened a hole as wide as a bar wants it, halfway down at least.</summary>
    static bool IsOpened(MilledLevels levels, WorkedPlace place, in PlaceWork bar, in PlaceWork hole) =>
        levels.IsCleared(place.X, place.Y, LeastForBar * bar.Diameter / 2, (levels.Top + Math.Max(bar.Tip, hole.Tip)) / 2);

    /// <summary>Whether a bar's shank goes into a hole; true where it is not known how thick it is, or given as no thinner than what it bores.</summary>
    static bool GoesIn(in PlaceWork bar, double hole) => !(bar.Tool?.ShankDiameter is { } shank && shank < bar.Diameter && shank >= hole);

    static bool IsInOrder(in PlaceWork tool, double hole)
    {
        var stock = tool.Diameter - hole;
        if (stock <= Equal)
            return false;
        if (tool.Kind == WorkKind.Bore)
            return hole >= LeastForBar * tool.Diameter - Equal && GoesIn(tool, hole);
        var (least, greatest) = StockFor(tool.Diameter);
        // What is not in the table is NaN and in order.
        return !(stock < least / 3 || stock > greatest * 2);
    }

    void Report(List<PlaceFault> group, in FileContext file)
    {
        var (tool, hole) = (group[0].Work, group[0].Other);
        var say = file.SayAt(tool.Line, tool.Coordinates);
        var stock = tool.Diameter - hole.Diameter;
        var (least, greatest) = StockFor(tool.Diameter);
        var usual = tool.Kind == WorkKind.Ream && !double.IsNaN(least) ? $" Reamers of this size take {say.Number(least)} to {say.Length(greatest)} on the diameter." : "";
        file.ReportBlock(this, tool.Line, $"T{tool.ToolNumber} {(tool.Kind == WorkKind.Ream ? "reams" : "bores")} {say.Length(tool.Diameter)} {PlaceGroups.Places(group, say)} in a hole of {say.Length(hole.Diameter)}: "
            + (stock <= Equal ? "there is nothing left to cut."
                : tool.Kind == WorkKind.Bore && !GoesIn(tool, hole.Diameter) ? $"its shank of {say.Length(tool.Tool!.ShankDiameter!.Value)} does not go in."
                : $"it has {say.Length(stock)} to take, {(stock < least ? "too little" : "too much")}.") + usual);
    }
}
