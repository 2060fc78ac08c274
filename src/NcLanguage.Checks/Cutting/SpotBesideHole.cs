using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;
using NcLanguage.Control.Flow;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A spot that no hole follows, in line with a hole that has no spot.</summary>
public sealed class SpotBesideHole : Rule
{
    /// <summary>Holes that a spot drill and a drill must share, so that a spot for each hole is the rule in this program.</summary>
    const int FewestShared = 2;

    /// <summary>More places than this lack the other by no slip, and each spot is held against each hole.</summary>
    const int MostAlone = 200;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5017",
        Name = "spot-beside-hole",
        Severity = Severity.Warning,
        Title = "A spot without a hole, in line with a hole without a spot",
        Finds = "A place that is spotted and nothing else, and another with the same X or the same Y where a drill makes a hole that has no spot, though this drill's other holes, two at least and as many as those, "
            + "are spotted by the same tool. Once, at the spot, with the hole as its related place.",
        AtTheMachine = "The drill starts without its spot, wanders or breaks, and the part has a spot where none should be; or the hole itself is in the wrong place.",
        Setup = """
            { "tools": [ { "number": 2, "kind": "spot-drill", "diameter": 10, "pointAngle": 90, "length": 95 }, { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118, "length": 120 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T2 M6
            S2000 M3
            G0 X20 Y30
            G43 H2 Z40 M8
            G99 G81 X20 Y30 R2 Z-4.4 F200
            X50
            X8
            ~^
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
        Instead = """
            G21 G90 G17 G54
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
        NotFound = "A spot that is only left out, or only too many; more than 200 of either; one that differs from its hole in X and Y; spots and holes that mills other than face mills cut over; programs whose setup lists the drawing's holes, against which each place is held (hole-extra, hole-missing); programs with holes at places that are not known, or whose run is not followed to its end. "
            + "A mark for another operation in line with a hole that is meant to have no spot is told as well.",
        Source = "That a drill finds the spot made for it is common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (!file.Run.Job.Setup.Holes.IsEmpty || file.Run.Flow is { End: not (FlowEnd.Ended or FlowEnd.OffTheEnd) } || PlaceGroups.PlacesOf(file, ToolKind.SpotDrill, ToolKind.CentreDrill) is not [_, _, ..] places || !file.Places.AreAllKnown)
            return;
        // A face that is milled as a whole tells nothing of single places.
        var milled = new MilledOver(file.Run, kind => kind != ToolKind.FaceMill && ShapingMoves.Mills(kind));
        var (spots, holes, shared) = (new List<PlaceFault>(), new List<PlaceFault>(), new Dictionary<(int Spot, int Drill), int>());
        foreach (var place in places)
        {
            var spot = place.Works.FindIndex(work => work.Kind == WorkKind.Spot);
            var drill = place.Works.FindIndex(work => work.Kind == WorkKind.Drill);
            if (spot >= 0 && drill >= 0)
                shared[(place.Works[spot].ToolNumber, place.Works[drill].ToolNumber)] = shared.GetValueOrDefault((place.Works[spot].ToolNumber, place.Works[drill].ToolNumber)) + 1;
            else if (place.Works.TrueForAll(work => work.Kind == WorkKind.Spot))
                spots.Add(new PlaceFault(place, place.Works[0], default));
            else if (drill == 0)
                holes.Add(new PlaceFault(place, place.Works[0], default));
        }
        if (spots.Count == 0 || holes.Count == 0)
            return;
        foreach (var ((spotTool, drillTool), count) in shared)
        {
            if (count < FewestShared)
                continue;
            var alone = spots.FindAll(fault => fault.Work.ToolNumber == spotTool);
            var bare = holes.FindAll(fault => fault.Work.ToolNumber == drillTool);
            if (alone.Count <= Math.Min(count, MostAlone) && bare.Count <= Math.Min(count, MostAlone) && !alone.Exists(fault => milled.Touches(fault.Place, 0)) && !bare.Exists(fault => milled.Touches(fault.Place, 0)))
                Report(alone, bare, count, file);
        }
    }

    void Report(List<PlaceFault> spots, List<PlaceFault> holes, int count, in FileContext file)
    {
        var inLine = spots.FindAll(spot => holes.Exists(hole => IsInLine(spot.Place, hole.Place)));
        if (inLine.Count == 0)
            return;
        var first = inLine[0];
        var bare = holes.FindAll(hole => IsInLine(first.Place, hole.Place)).MinBy(hole => double.Hypot(first.Place.X - hole.Place.X, first.Place.Y - hole.Place.Y));
        var say = file.SayAt(first.Work.Line, first.Work.Coordinates);
        var (start, end) = StepContext.WordsOf(file.Run.BlockAt(first.Work.Line));
        var (otherStart, otherEnd) = StepContext.WordsOf(file.Run.BlockAt(bare.Work.Line));
        var many = inLine.Count == 1 ? "" : $" The same goes for {Say.Count(inLine.Count - 1, "more spot")} of T{first.Work.ToolNumber}.";
        file.Report(
            this, first.Work.Line, start, end,
            $"T{first.Work.ToolNumber} spots {PlaceOf(first, say)}, where no hole is made, and T{bare.Work.ToolNumber} drills {PlaceOf(bare, say)} without a spot, while {Say.Number(count)} more of its holes have one: is one of the two places wrong?{many}",
            related: new RelatedPlace(bare.Work.Line, otherStart, otherEnd, "The hole without a spot is drilled here."));
    }

    static string PlaceOf(in PlaceFault fault, LengthText say) => say.Place(fault.Place.X - fault.Work.ToFrame.X, fault.Place.Y - fault.Work.ToFrame.Y);

    static bool IsInLine(WorkedPlace spot, WorkedPlace hole) =>
        Math.Abs(spot.X - hole.X) <= WorkedPlaces.SamePlace || Math.Abs(spot.Y - hole.Y) <= WorkedPlaces.SamePlace;
}
