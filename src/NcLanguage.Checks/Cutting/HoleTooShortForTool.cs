using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A tap, reamer or boring bar that goes deeper than the hole made for it, or where there is none.</summary>
public sealed class HoleTooShortForTool : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5012",
        Name = "hole-too-short-for-tool",
        Severity = Severity.Error,
        Title = "A tap, reamer or boring bar that goes deeper than its hole",
        Finds = "A tap, reamer or boring bar that goes deeper than the hole made before it at that place is wide, by more than a tenth of its diameter, or comes there before the drill or mill that makes it; a warning where nothing makes a hole there at all, in a program that drills others; and a tap under a work offset of which the setup does not tell where it lies, where nothing is drilled under it and holes at the same X and Y under another are drilled and not tapped.",
        AtTheMachine = "These tools cut at their sides: the tap runs up against the bottom and breaks, the reamer is pushed off, the bar bends.",
        Setup = """
            { "stock": { "min": [0, 0, -30], "max": [100, 60, 0] },
              "tools": [ { "number": 3, "kind": "drill", "diameter": 6.8, "pointAngle": 118, "fluteLength": 60, "length": 120 },
                         { "number": 4, "kind": "tap", "diameter": 8, "pitch": 1.25, "fluteLength": 40, "length": 120 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            G0 G53 Z0
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-14 F150
            G80
            G0 G53 Z0 M9
            M5
            T4 M6
            S500 M3
            G0 X20 Y30
            G43 H4 Z40 M8
            G99 G84 X20 Y30 R5 Z-14 F625
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
            G99 G81 X20 Y30 R2 Z-19 F150
            G80
            G0 G53 Z0 M9
            M5
            T4 M6
            S500 M3
            G0 X20 Y30
            G43 H4 Z40 M8
            G99 G84 X20 Y30 R5 Z-14 F625
            G80
            G0 G53 Z0 M9
            M5
            M30
            """,
        NotFound = "Without a stock nothing is known of what stands. A tool that goes a tenth of its diameter or less into the drill's cone: the end of a tap is narrower than its thread. Room for chips below a tap is not asked for. Holes that go through the "
            + "stock, if only by the point: that is point-not-through. Where a mill clears the place as deep, in a program that drills no hole at all, and in programs with the setup nc.setup.json, which others share, a hole that is not there is not told. Of holes made later only those count that begin at the top and are 0.7 of the tool's diameter wide or more: narrower ones may be steps at the bottom of a hole that was there before. Where the setup lists the drawing's holes, a tap without a hole is hole-missing, and what is made at a place that the list does not have is hole-extra. "
            + "A hole that is cast, or that another program drills, is known where the setup lists it among the hollows of its stock.",
        Source = "Common practice; length of the drill's point (D/2)·cot(α/2), engineering reference.",
    };

    /// <summary>How far a tool may go into the drill's cone, in its diameters.</summary>
    const double IntoCone = 0.1;

    /// <summary>Differences of less are none, mm.</summary>
    const double Equal = 0.01;

    /// <summary>How wide a hole that is made later must be, in the tool's diameters, to be the one that the tool is to open: the core of a coarse thread is 0.8 of it, and a narrower hole may be a step at the bottom.</summary>
    const double LeastCore = 0.7;

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var run = file.Run;
        if (run.Job.Setup.Stock is null || run.Results[0].Entry.IsCalled || PlaceGroups.PlacesOf(file, ToolKind.Tap, ToolKind.Reamer, ToolKind.BoringBar) is not [_, ..] places)
            return;
        var levels = new MilledLevels(run);
        var faults = new List<PlaceFault>();
        var (setup, made) = (run.Job.Setup, file.Places);
        var drawn = setup.Holes.Select(hole => made.At(hole.X, hole.Y)).ToHashSet();
        // A program that drills nothing finishes what was drilled before.
        var drills = places.Any(place => place.Works.Exists(work => work.Kind == WorkKind.Drill));
        foreach (var place in places)
            if (FaultAt(place, setup, levels) is { } fault && (fault.Work != fault.Other || (drills && IsToldHere(fault, setup, drawn))))
                faults.Add(fault);
        foreach (var group in PlaceGroups.Of(faults.Where(IsOfOrder)))
            ReportOrder(group, file);
        foreach (var group in PlaceGroups.Of(faults.Where(fault => !IsOfOrder(fault))))
            Report(group, file);
        if (run.NamesCoordinates && !setup.IsShared)
            foreach (var group in TapsUnderOtherOffset.Of(run).GroupBy(tap => (tap.Tool, tap.Coordinates, tap.DrillTool, tap.DrillCoordinates)))
                ReportElsewhere([.. group], file);
    }

    void ReportElsewhere(List<TapElsewhere> group, in FileContext file)
    {
        var tap = group[0];
        var say = file.SayAt(tap.Line, tap.Coordinates);
        var (there, name) = (tap.Coordinates.Name(say.IsInch), tap.DrillCoordinates.Name(say.IsInch));
        file.ReportBlock(this, tap.Line,
            $"T{tap.Tool} taps at {say.Place(tap.X, tap.Y)}{(group.Count > 1 ? $" and {Say.Count(group.Count - 1, "more place")}" : "")} to {say.Level(tap.Bottom)}, and nothing in this program makes a hole under {there}; "
                + $"the one that T{tap.DrillTool} makes at the same X and Y under {name} is not tapped: is {name} meant?",
            severity: Severity.Warning);
    }

    static bool IsOfOrder(PlaceFault fault) => fault.Place.Works.IndexOf(fault.Other) > fault.Place.Works.IndexOf(fault.Work);

    /// <summary>The first tool at a place that has no room there, and the hole that it has, or that is made after it; itself where there is none.</summary>
    static PlaceFault? FaultAt(WorkedPlace place, Setup setup, MilledLevels levels)
    {
        var works = place.Works;
        var bottom = setup.Stock!.Value.Min.Z;
        PlaceWork? hole = null;
        foreach (var given in HollowWorks.At(setup, place.X, place.Y))
            if (hole is not { } deeper || given.Full < deeper.Full)
                hole = given;
        for (var i = 0; i < works.Count; i++)
        {
            var work = works[i];
            if (work is { Tool.Kind: ToolKind.Tap or ToolKind.Reamer or ToolKind.BoringBar, Kind: WorkKind.Tap or WorkKind.Ream or WorkKind.Bore })
            {
                var end = Math.Max(work.Tip, bottom) + Math.Max(Equal, IntoCone * (work.Tool!.Diameter ?? 0));
                if (hole is null && end < levels.Top && IsInFull(place, end, setup, levels))
                {
                    var later = works.FindIndex(i + 1, made => IsItsHole(made, work, setup.Stock.Value.Max.Z));
                    if (later >= 0 || !setup.IsShared)
                        return new PlaceFault(place, work, works[later >= 0 ? later : i]);
                }
                if (hole is { } before && before.Tip > bottom + Equal && end < before.Full && !levels.IsCleared(place.X, place.Y, 0, end))
                    return new PlaceFault(place, work, before);
            }
            if (work.Makes && (hole is null || double.IsNaN(work.Full) || work.Full < hole.Value.Full))
                hole = work;
        }
        return null;
    }

    /// <summary>Whether a hole that is made from the top is the one that a tool is to open.</summary>
    static bool IsItsHole(in PlaceWork made, in PlaceWork work, double top) =>
        made.Kind is WorkKind.Drill or WorkKind.Mill && work.Tool?.Diameter is { } diameter && made.Diameter >= LeastCore * diameter && made.Diameter < diameter && !(made.RLevel < top);

    static bool IsInFull(WorkedPlace place, double end, Setup setup, MilledLevels levels) =>
        Clearance.Footprint.Distance(setup.Stock!.Value, place.X, place.Y) < 0
        && !levels.IsCleared(place.X, place.Y, 0, end);

    /// <summary>Whether the rules on the drawing, where it is known, say nothing of a hole that nothing makes before its tap, reamer or boring bar comes.</summary>
    static bool IsToldHere(in PlaceFault fault, Setup setup, HashSet<WorkedPlace?> drawn) => setup.Holes.IsEmpty || (fault.Work.Kind != WorkKind.Tap && drawn.Contains(fault.Place));

    static string Does(List<PlaceFault> group, LengthText say) =>
        $"T{group[0].Work.ToolNumber} {group[0].Work.Kind switch { WorkKind.Tap => "taps", WorkKind.Ream => "reams", _ => "bores" }} {PlaceGroups.Places(group, say)}";

    void ReportOrder(List<PlaceFault> group, in FileContext file)
    {
        var (work, hole) = (group[0].Work, group[0].Other);
        var say = file.SayAt(work.Line, work.Coordinates);
        var (start, end) = StepContext.WordsOf(file.Run.BlockAt(work.Line));
        var (holeStart, holeEnd) = StepContext.WordsOf(file.Run.BlockAt(hole.Line));
        file.Report(this, work.Line, start, end, $"{Does(group, say)} to {say.Level(work.Tip - work.ToFrame.Z)} before {hole.ToolName} makes the hole there: it goes into full material.",
            related: new RelatedPlace(hole.Line, holeStart, holeEnd, "The hole is made here, later in the run."));
    }

    /// <summary>How deep a hole is as wide as its tool; of one that ends within the tool's point there is no such level in the stock.</summary>
    static string FullWidth(in PlaceWork hole, Setup setup, LengthText say, double z) => hole.Full < setup.Stock!.Value.Max.Z
        ? $"is full width to {say.Level(hole.Full - z)} only" : $"goes to {say.Level(hole.Tip - z)} only and is nowhere as wide as its tool";

    void Report(List<PlaceFault> group, in FileContext file)
    {
        var (work, hole) = (group[0].Work, group[0].Other);
        var say = file.SayAt(work.Line, work.Coordinates);
        var does = Does(group, say);
        var z = work.ToFrame.Z;
        if (hole == work)
            file.ReportBlock(this, work.Line, $"{does} to {say.Level(work.Tip - z)}, and nothing in this program makes a hole there before: it goes into full material, unless the hole is in the stock already, which the setup can say (hollows).",
                severity: Severity.Warning);
        else
            file.ReportBlock(this, work.Line, $"{does} to {say.Level(work.Tip - z)}, and the hole that {(hole.Kind == WorkKind.Hollow ? "the stock has" : $"{hole.ToolName} makes")} there {FullWidth(hole, file.Run.Job.Setup, say, z)}: "
                + $"{(hole.Kind == WorkKind.Hollow ? "it has to be drilled" : "it has to go")} to {say.Level(work.Tip - (hole.Full - hole.Tip) - z)}, or {work.ToolName} less deep.");
    }
}
