using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Cutting;
using NcLanguage.Checks.Drawing;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A tap in a hole that is too small or too large for its thread.</summary>
public sealed class TapDrillSize : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5009",
        Name = "tap-drill-size",
        Severity = Severity.Warning,
        Title = "A hole that is too small or too large for its tap",
        Finds = "A tap that goes into a hole of this program where the thread would be less than 60 or more than 85 per cent deep. Per cent of thread is 100·(D − d)/(1.299·P), which is 74 to 79 for the "
            + "drills of ISO 2306.",
        AtTheMachine = "In a hole that is too small the tap jams and breaks; in one that is too large the thread is shallow, and strips.",
        Setup = """
            { "stock": { "min": [0, 0, -30], "max": [100, 60, 0] },
              "tools": [ { "number": 3, "kind": "drill", "diameter": 6, "pointAngle": 118, "fluteLength": 60, "length": 120 },
                         { "number": 4, "kind": "tap", "diameter": 8, "pitch": 1.25, "fluteLength": 40, "length": 120 } ] }
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
            G99 G81 X20 Y30 R2 Z-20 F150
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
        InsteadSetup = """
            { "stock": { "min": [0, 0, -30], "max": [100, 60, 0] },
              "tools": [ { "number": 3, "kind": "drill", "diameter": 6.8, "pointAngle": 118, "fluteLength": 60, "length": 120 },
                         { "number": 4, "kind": "tap", "diameter": 8, "pitch": 1.25, "fluteLength": 40, "length": 120 } ] }
            """,
        NotFound = "Holes that another program drilled, tools without diameter or pitch, and places whose core hole the drawing's list gives: that is hole-wrong-size. A hole as a tap wants it that forms its thread, half the pitch below "
            + "the thread's diameter, is taken as meant. A counterbore as wide as the thread does not count.",
        Source = "Per cent of thread on the shop's usual base: Machinery's Handbook 31, Table 2. Tap drills of ISO 2306 (from memory; a published chart has the same). That 60 to 85 per cent are in order is common practice.",
    };

    /// <summary>Per cent of thread that are in order.</summary>
    const double Least = 60, Most = 85;

    /// <summary>How far from half the pitch below the thread's diameter a hole for forming may lie, in pitches (common practice).</summary>
    const double FormingRange = 0.1;

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var faults = new List<PlaceFault>();
        foreach (var place in PlaceGroups.PlacesOf(file, ToolKind.Tap))
        {
            var at = place.Works.FindIndex(work => work is { Kind: WorkKind.Tap, Tool: { Kind: ToolKind.Tap, Diameter: not null, Pitch: not null } });
            if (at < 0 || CoreOf([.. HollowWorks.At(file.Run.Job.Setup, place.X, place.Y), .. place.Works.Take(at)], place.Works[at].Diameter) is not { } core || IsInOrder(place.Works[at].Tool!, core.Diameter))
                continue;
            if (!file.Run.Job.Setup.Holes.Any(hole => hole.Diameter is not null && WorkedPlaces.IsAt(hole, place)))
                faults.Add(new PlaceFault(place, place.Works[at], core));
        }
        foreach (var group in PlaceGroups.Of(faults))
            Report(group, file);
    }

    /// <summary>The widest hole before the tap that is narrower than the thread; where there is none the narrowest. Null where a hole's width is not known.</summary>
    static PlaceWork? CoreOf(List<PlaceWork> works, double major)
    {
        PlaceWork? core = null;
        for (var i = 0; i < works.Count; i++)
        {
            if (!works[i].Makes)
                continue;
            if (double.IsNaN(works[i].Diameter))
                return null;
            var isBetter = core is not { } best || (works[i].Diameter < major
                ? best.Diameter >= major || works[i].Diameter > best.Diameter
                : best.Diameter >= major && works[i].Diameter < best.Diameter);
            if (isBetter)
                core = works[i];
        }
        return core;
    }

    static bool IsInOrder(Tool tap, double hole)
    {
        var (major, pitch) = (tap.Diameter!.Value, tap.Pitch!.Value);
        return Percent(major, pitch, hole) is >= Least and <= Most || Math.Abs(major - pitch / 2 - hole) <= FormingRange * pitch;
    }

    /// <summary>Per cent of thread as it is told, without decimals.</summary>
    static double Percent(double major, double pitch, double hole) => Math.Round(Threads.Percent(major, pitch, hole), MidpointRounding.AwayFromZero);

    void Report(List<PlaceFault> group, in FileContext file)
    {
        var (tap, core) = (group[0].Work, group[0].Other);
        var (major, pitch) = (tap.Tool!.Diameter!.Value, tap.Tool.Pitch!.Value);
        var say = file.SayAt(tap.Line, tap.Coordinates);
        var percent = Percent(major, pitch, core.Diameter);
        var result = percent <= 0 ? "there is no thread at all" : $"the thread is {Say.Number(percent)} per cent deep";
        file.ReportBlock(this, tap.Line, $"T{tap.ToolNumber} taps {say.Length(major)} by a pitch of {say.Length(pitch)} {PlaceGroups.Places(group, say)} in a hole of {say.Length(core.Diameter)}: {result}. "
            + $"{Say.Number(Least)} to {Say.Number(Most)} per cent take {say.Number(Threads.DrillFor(major, pitch, Most))} to {say.Length(Threads.DrillFor(major, pitch, Least))}.");
    }
}
