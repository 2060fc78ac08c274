using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;
using NcLanguage.Control.Flow;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A hole without the spot that the other holes of its drill have.</summary>
public sealed class SpotLeftOut : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5021",
        Name = "spot-left-out",
        Severity = Severity.Note,
        Title = "A hole lacks the spot that others of its drill have",
        Finds = "Holes that a drill makes without a spot, where a spot drill or centre drill has marked at least twice as many of its holes, two or more, each spot has its hole, and none was made twice. Once for each drill.",
        AtTheMachine = "The drill starts on the bare face and wanders: the hole is off its place, and has no chamfer where the spot leaves one.",
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
            G99 G81 X20 Y30 R2 Z-4.4 F200
            X50
            G80
            G0 G53 Z0 M9
            M5
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-18 F150
            X50
            X80
            ~^^
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
            X50
            X80
            G80
            G0 G53 Z0 M9
            M5
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-18 F150
            X50
            X80
            G80
            G0 G53 Z0 M9
            M5
            M30
            """,
        NotFound = "Holes that mills cut over, that another tool has begun, or that the stock has already; spots that have no hole (spot-beside-hole, hole-missing) or stand twice at one place (hole-repeated); programs with holes at places that are not known, or whose run is not followed to its end.",
        Source = "That a drill finds the spot made for it is common practice.",
    };

    /// <summary>Spots that tell that the drill is meant to have them.</summary>
    const int FewestSpotted = 2;

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (file.Run.Flow is { End: not (FlowEnd.Ended or FlowEnd.OffTheEnd) } || PlaceGroups.PlacesOf(file, ToolKind.SpotDrill, ToolKind.CentreDrill) is not [_, _, ..] places || !file.Places.AreAllKnown)
            return;
        // Where a spot has no hole, or was made twice, a place is wrong, and that is told.
        if (places.Any(place => place.Works.Count(work => work.Kind == WorkKind.Spot) is var spots && (spots > 1 || (spots == 1 && !place.Works.Exists(work => work.Kind == WorkKind.Drill)))))
            return;
        var setup = file.Run.Job.Setup;
        var (spotted, bare) = (new Dictionary<int, int>(), new List<PlaceFault>());
        foreach (var place in places)
        {
            var drill = place.Works.FindIndex(work => work is { Kind: WorkKind.Drill, Tool.Kind: ToolKind.Drill });
            if (drill > 0 && place.Works[drill - 1].Kind == WorkKind.Spot)
                spotted[place.Works[drill].ToolNumber] = spotted.GetValueOrDefault(place.Works[drill].ToolNumber) + 1;
            else if (drill == 0 && place.Works.TrueForAll(work => work.Kind != WorkKind.Spot) && !setup.Hollows.Any(hollow => hollow.DistanceTo(place.X, place.Y) <= 0))
                bare.Add(new PlaceFault(place, place.Works[0], place.Works[0]));
        }
        var milled = new MilledOver(file.Run);
        foreach (var ofTool in bare.GroupBy(fault => fault.Work.ToolNumber))
        {
            var group = ofTool.ToList();
            var count = spotted.GetValueOrDefault(ofTool.Key);
            if (count < Math.Max(FewestSpotted, 2 * group.Count) || group.Exists(fault => milled.Touches(fault.Place, 0)))
                continue;
            var work = group[0].Work;
            file.ReportBlock(this, work.Line, $"T{work.ToolNumber} drills {PlaceGroups.Places(group, file.SayAt(work.Line, work.Coordinates))} without a spot, and its {Say.Number(count)} other holes have one.");
        }
    }
}
