using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Checks.Cutting;
using NcLanguage.Checks.Drawing;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A countersink that does not reach the edge of its hole.</summary>
public sealed class CountersinkCutsNothing : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5020",
        Name = "countersink-cuts-nothing",
        Severity = Severity.Warning,
        Title = "A countersink does not reach the edge of its hole",
        Finds = "A countersink, chamfer mill or spot drill that goes straight down into a hole made before it, or that the stock has, whose cone is nowhere wider than the hole at that level: neither at its mouth nor at the edge of a narrower step.",
        AtTheMachine = "The tool goes down and up and takes nothing away: the edge stays sharp, with its burr.",
        Setup = """
            { "stock": { "min": [0, 0, -30], "max": [100, 60, 0] },
              "tools": [ { "number": 3, "kind": "drill", "diameter": 9, "pointAngle": 118, "fluteLength": 60, "length": 120 },
                         { "number": 4, "kind": "countersink", "diameter": 16, "pointAngle": 90, "length": 100 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            G0 G53 Z0
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G83 X20 Y30 R2 Z-20 Q8 F150
            G80
            G0 G53 Z0 M9
            M5
            T4 M6
            S500 M3
            G0 X20 Y30
            G43 H4 Z40 M8
            G99 G82 X20 Y30 R2 Z-4 P0.2 F60
            ~^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
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
            G99 G83 X20 Y30 R2 Z-20 Q8 F150
            G80
            G0 G53 Z0 M9
            M5
            T4 M6
            S500 M3
            G0 X20 Y30
            G43 H4 Z40 M8
            G99 G82 X20 Y30 R2 Z-5 P0.2 F60
            G80
            G0 G53 Z0 M9
            M5
            M30
            """,
        NotFound = "Tools without a point angle, and such with a flat tip, whose cone is wider than it is taken for; holes in a face that is milled in the same program or is hollow in the stock; chamfer mills that go round. Without a stock nothing is reported.",
        Source = "Diameter = 2·depth·tan(α/2) (engineering reference; the same table as Machinery's Handbook). That a countersink is to break the edge is common practice.",
    };

    /// <summary>Differences of less are none, mm.</summary>
    const double Equal = 0.01;

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (file.Run.Job.Setup.Stock is not { } stock || PlaceGroups.PlacesOf(file, ToolKind.Countersink, ToolKind.ChamferMill, ToolKind.SpotDrill) is not [_, ..] places)
            return;
        var setup = file.Run.Job.Setup;
        var milled = new MilledOver(file.Run);
        var faults = new List<PlaceFault>();
        foreach (var place in places)
        {
            List<PlaceWork> holes = [.. HollowWorks.At(setup, place.X, place.Y)];
            var count = holes.Count;
            foreach (var work in place.Works)
            {
                if (IsCone(work, stock.Max.Z) && holes.Count > 0 && CutsNothing(work, holes, stock.Max.Z) && IsPlain(place, work, count, setup, milled))
                {
                    faults.Add(new PlaceFault(place, work, holes.MaxBy(hole => hole.Diameter)));
                    break;
                }
                if (work.Makes)
                    holes.Add(work);
            }
        }
        foreach (var group in PlaceGroups.Of(faults))
            Report(group, stock.Max.Z, file);
    }

    /// <summary>Whether a work is that of a cone which comes from above the stock and goes into it.</summary>
    static bool IsCone(in PlaceWork work, double top) =>
        work.Tool is { Kind: ToolKind.Countersink or ToolKind.ChamferMill or ToolKind.SpotDrill, PointAngle: > 0 and < 180, Diameter: > 0 } && work.Cycle != 87 && !(work.RLevel < top) && work.Tip < top;

    /// <summary>Whether the surface about the hole is the stock's top: nothing is milled there, and no hollow but the bores at its middle reaches there.</summary>
    static bool IsPlain(WorkedPlace place, in PlaceWork work, int bores, Setup setup, MilledOver milled)
    {
        var reach = work.Tool!.Diameter!.Value / 2;
        return setup.Hollows.Count(hollow => hollow.DistanceTo(place.X, place.Y) < reach) == bores && !milled.Touches(place, reach);
    }

    /// <summary>Whether the cone is nowhere wider than what the holes have opened: asked at the mouth, and where each of them ends and a narrower one, or nothing, goes on.</summary>
    static bool CutsNothing(in PlaceWork cone, List<PlaceWork> holes, double top)
    {
        foreach (var hole in holes)
            if (!(hole.Diameter > 0) || double.IsNaN(hole.Full) || hole.Kind is WorkKind.Mill or WorkKind.Plunge)
                return false;
        if (Width(cone, top) > Opened(holes, top) + Equal)
            return false;
        foreach (var hole in holes)
            if (hole.Full < top && hole.Full > cone.Tip && Width(cone, hole.Full) > Opened(holes, hole.Full - Equal) + Equal)
                return false;
        return true;
    }

    /// <summary>How wide the holes are at a level, mm.</summary>
    static double Opened(List<PlaceWork> holes, double level)
    {
        var widest = 0.0;
        foreach (var hole in holes)
            if (hole.Full <= level && hole.Diameter > widest)
                widest = hole.Diameter;
        return widest;
    }

    static double Width(in PlaceWork cone, double level) => Math.Min(cone.Tool!.Diameter!.Value, PointShape.Diameter(Math.Max(0, level - cone.Tip), cone.Tool.PointAngle!.Value));

    void Report(List<PlaceFault> group, double top, in FileContext file)
    {
        var (cone, hole) = (group[0].Work, group[0].Other);
        var say = file.SayAt(cone.Line, cone.Coordinates);
        var width = Width(cone, top);
        file.ReportBlock(this, cone.Line, $"T{cone.ToolNumber} {PlaceGroups.Places(group, say)} goes down to {say.Level(cone.Tip - cone.ToFrame.Z)}, where its cone is {say.Length(width)} wide at the top, and the hole there is {say.Length(hole.Diameter)} wide: it takes nothing away.");
    }
}
