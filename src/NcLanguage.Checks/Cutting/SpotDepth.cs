using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Checks.Cutting;
using NcLanguage.Checks.Drawing;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A spot that leaves no chamfer about the hole, or goes deeper than its cone.</summary>
public sealed class SpotDepth : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5007",
        Name = "spot-depth",
        Severity = Severity.Note,
        Title = "A spot that leaves no chamfer about its hole",
        Finds = "A spot drill that goes so little deep that the drill after it is wider than the spot, so that nothing of its cone stays as a chamfer; or so deep that its straight "
            + "part goes in, and the hole's mouth is as wide as the tool. The message tells the diameter that the spot leaves.",
        AtTheMachine = "Too shallow, the hole keeps a sharp edge and a burr, and the drill's corners meet the work first; too deep, the mouth is a bore of the spot drill's diameter.",
        Setup = """
            { "stock": { "min": [0, 0, -30], "max": [100, 60, 0] },
              "tools": [ { "number": 2, "kind": "spot-drill", "diameter": 10, "pointAngle": 90, "fluteLength": 20, "length": 95 },
                         { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118, "fluteLength": 60, "length": 120 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            G0 G53 Z0
            T2 M6
            S2000 M3
            G0 X20 Y30
            G43 H2 Z40 M8
            G99 G81 X20 Y30 R2 Z-2.5 F200
            ~^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            G80
            G0 G53 Z0 M9
            M5
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
        Instead = """
            G21 G90 G17 G54
            G0 G53 Z0
            T2 M6
            S2000 M3
            G0 X20 Y30
            G43 H2 Z40 M8
            G99 G81 X20 Y30 R2 Z-4.4 F200
            G80
            G0 G53 Z0 M9
            M5
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
        NotFound = "Centre drills, which only guide; spot drills no wider than what drills, reams or bores the hole, which can leave no chamfer; spots that no drill follows; holes over whose mouth a countersink, counterbore or chamfer mill goes; holes in a face that is milled in the same program or hollow in the stock, or whose R lies below the stock's top: their surface is not known. Without a stock "
            + "nothing is reported. A spot just as wide as the drill, or wider, is taken as meant.",
        Source = "Diameter = 2·depth·tan(α/2) (engineering reference; the same table as Machinery's Handbook). That a spot drill is to leave a chamfer is common practice.",
    };

    /// <summary>Differences of less are none, mm.</summary>
    const double Equal = 0.05;

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (file.Run.Job.Setup.Stock is not { } stock || PlaceGroups.PlacesOf(file, ToolKind.SpotDrill) is not [_, ..] places)
            return;
        var setup = file.Run.Job.Setup;
        var milled = new MilledOver(file.Run);
        var chamfered = new MilledOver(file.Run, kind => kind is ToolKind.Countersink or ToolKind.Counterbore or ToolKind.ChamferMill);
        var faults = new List<PlaceFault>();
        foreach (var place in places)
        {
            var at = place.Works.FindIndex(work => work is { Kind: WorkKind.Spot, Tool: { Kind: ToolKind.SpotDrill, Diameter: not null, PointAngle: > 0 and < 180 } });
            if (at < 0 || place.Works[at] is var spot && (spot.RLevel < stock.Max.Z || spot.Tip >= stock.Max.Z))
                continue;
            var drill = place.Works.FindIndex(at, work => work.Kind == WorkKind.Drill && !double.IsNaN(work.Diameter));
            if (drill < 0 || (Left(spot, stock.Max.Z) >= place.Works[drill].Diameter - Equal && spot.Full >= stock.Max.Z - Equal) || milled.Touches(place, spot.Diameter / 2) || Openings.LowestTouched(setup, place.X, place.Y, spot.Diameter / 2, stock.Max.Z) < stock.Max.Z)
                continue;
            // What is as wide as the spot drill takes its mouth away, and its cone makes none that is wider.
            if (WidestFrom(place, at) >= spot.Diameter - Equal || chamfered.Touches(place, spot.Diameter / 2))
                continue;
            faults.Add(new PlaceFault(place, spot, place.Works[drill]));
        }
        foreach (var group in PlaceGroups.Of(faults))
            Report(group, stock.Max.Z, file);
    }

    void Report(List<PlaceFault> group, double top, in FileContext file)
    {
        var (spot, drill) = (group[0].Work, group[0].Other);
        var say = file.SayAt(spot.Line, spot.Coordinates);
        var depth = top - spot.Tip;
        var where = PlaceGroups.Places(group, say);
        file.ReportBlock(this, spot.Line, depth > spot.Full - spot.Tip + Equal
            ? $"T{spot.ToolNumber} goes {say.Length(depth)} deep {where}, and its point is only {say.Length(spot.Full - spot.Tip)} long: the mouth of the hole is {say.Length(spot.Diameter)} wide with a straight wall."
            : $"The spot {where} is {say.Length(Left(spot, top))} wide, and T{drill.ToolNumber} drills {say.Length(drill.Diameter)}: no chamfer stays. "
                + $"For a spot as wide as the hole T{spot.ToolNumber} goes to {say.Level(top - spot.ToFrame.Z - PointShape.Length(drill.Diameter, spot.Tool!.PointAngle!.Value))}.");
    }

    /// <summary>The widest hole that is made at a place from its work <paramref name="at"/> on, mm; 0 where no diameter is known.</summary>
    static double WidestFrom(WorkedPlace place, int at)
    {
        var widest = 0.0;
        for (var i = at; i < place.Works.Count; i++)
            if (place.Works[i] is { Makes: true } work && work.Diameter > widest)
                widest = work.Diameter;
        return widest;
    }

    /// <summary>The diameter that a spot leaves in the surface, mm.</summary>
    static double Left(in PlaceWork spot, double top) => Math.Min(spot.Diameter, PointShape.Diameter(top - spot.Tip, spot.Tool!.PointAngle!.Value));
}
