using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A boring bar or reamer that goes down within a hole, beside the hole's axis.</summary>
public sealed class BoreBesideHole : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5025",
        Name = "bore-beside-hole",
        Severity = Severity.Warning,
        Title = "A bar or reamer goes down beside the axis of its hole",
        Finds = "A boring bar or reamer whose axis lies within a hole of the program, or a bore of the setup's stock, but so far beside its axis that the tool does not clean up all of its wall, where that hole is as deep and none stands about the tool's own axis.",
        AtTheMachine = "The tool cuts on one side alone, far more than it takes, and is bent or broken; on the other side the old wall stays.",
        Setup = """
            { "stock": { "min": [0, 0, -30], "max": [150, 80, 0], "hollows": [ { "center": [40, 40], "diameter": 38 }, { "center": [110, 40], "diameter": 38 } ] },
              "tools": [ { "number": 6, "kind": "boring-bar", "diameter": 42, "fluteLength": 60, "length": 150 } ] }
            """,
        Example = """
            G21 G90 G17 G54 G94
            T6 M6
            S700 M3
            G0 X40 Y40
            G43 H6 Z30 M8
            G98 G85 X40 Y40 Z-31 R2 F50
            X101
            ~^^^
            G80
            G0 Z50 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54 G94
            T6 M6
            S700 M3
            G0 X40 Y40
            G43 H6 Z30 M8
            G98 G85 X40 Y40 Z-31 R2 F50
            X110
            G80
            G0 Z50 M9
            M5
            M30
            """,
        NotFound = "Cores that stand a little off, as castings have them: a bar that cleans up all of the wall is right. Slots and pockets of the stock, and what mills open in another way than by full circles. Programs whose setup lists the drawing's holes, against which each place is held (hole-missing, hole-extra). "
            + "Reamers and bars beside the hole that they were to open, into full material, are hole-too-short-for-tool.",
        Source = "A bore takes in a hole where its radius is at least the hole's and the way between both axes (plane geometry); that bars and reamers follow the hole they open: common practice.",
    };

    /// <summary>Lengths that differ by less are one, mm.</summary>
    const double Rounding = 0.01;

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var setup = file.Run.Job.Setup;
        if (!setup.Holes.IsEmpty)
            return;
        var places = PlaceGroups.PlacesOf(file, ToolKind.BoringBar, ToolKind.Reamer);
        var told = new HashSet<int>();
        foreach (var place in places)
        {
            var at = place.Works.FindIndex(work => work is { Kind: WorkKind.Bore or WorkKind.Ream, Diameter: > 0 });
            if (at >= 0 && !place.Works.Take(at).Any(other => other.Makes) && !HollowWorks.At(setup, place.X, place.Y).Any() && HoleAround(setup, places, place, place.Works[at]) is { } hole && told.Add(place.Works[at].Line))
                Tell(file, place, place.Works[at], hole);
        }
    }

    /// <summary>The widest hole before whose wall stands about a tool's axis and is not taken in by the tool; null where there is none.</summary>
    static (PlaceWork Work, double X, double Y)? HoleAround(Setup setup, IReadOnlyList<WorkedPlace> places, WorkedPlace of, PlaceWork work)
    {
        var end = Math.Max(work.Tip, setup.Stock?.Min.Z ?? double.NegativeInfinity);
        var widest = ((PlaceWork Work, double X, double Y)?)null;
        foreach (var hollow in setup.Hollows)
            if (hollow.IsRound)
                foreach (var bore in HollowWorks.At(setup, hollow.CenterX, hollow.CenterY))
                    Try(bore, hollow.CenterX, hollow.CenterY);
        foreach (var place in places)
            foreach (var other in place.Works)
                if (other.Makes && other.Number < work.Number && (other.Number > 0 || other.Line < work.Line))
                    Try(other, place.X, place.Y);
        return widest;

        void Try(in PlaceWork hole, double x, double y)
        {
            var (off, radius) = (double.Hypot(x - of.X, y - of.Y), hole.Diameter / 2);
            if (off < radius && off + radius > work.Diameter / 2 + Rounding && hole.Tip <= end + Rounding && !(hole.Diameter <= widest?.Work.Diameter))
                widest = (hole, x, y);
        }
    }

    void Tell(in FileContext file, WorkedPlace place, in PlaceWork work, (PlaceWork Work, double X, double Y) hole)
    {
        var say = file.SayAt(work.Line, work.Coordinates);
        var shift = work.ToFrame;
        file.ReportBlock(this, work.Line, $"T{work.ToolNumber} {(work.Kind == WorkKind.Ream ? "reams" : "bores")} {say.Length(work.Diameter)} about {say.Place(place.X - shift.X, place.Y - shift.Y)}, and the hole of {say.Length(hole.Work.Diameter)} that it goes into stands at "
            + $"{say.Place(hole.X - shift.X, hole.Y - shift.Y)}, {say.Length(double.Hypot(hole.X - place.X, hole.Y - place.Y))} beside it: on one side the old wall stays.");
    }
}
