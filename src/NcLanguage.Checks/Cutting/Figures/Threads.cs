using System.Collections.Immutable;

using NcLanguage.Control.State;
namespace NcLanguage.Checks.Cutting;

/// <summary>A thread with what is drilled for it; lengths in mm.</summary>
/// <param name="Name">M8, 1/4-20.</param>
/// <param name="TapDrill">Null where the table does not have it.</param>
/// <param name="DrillName">The drill as a chart calls it where that is no diameter in mm: 7, F, 27/64 in.</param>
public sealed record ScrewThread(string Name, double Major, double Pitch, double? TapDrill, string? DrillName, string Source);

/// <summary>The metric coarse and the unified threads with their tap drills.</summary>
public static class Threads
{
    const string Metric = "pitches and tap drills of a published chart; ISO 261 and ISO 2306 have the same (from memory)";
    const string MetricByHeart = "pitches of ISO 261 and tap drills of ISO 2306, from memory";
    const string Unified = "published charts of unified threads, drill for about 75 % thread";

    /// <summary>M2 to M30, coarse pitch.</summary>
    public static ImmutableArray<ScrewThread> Coarse { get; } =
    [
        M(2, 0.4, 1.6, MetricByHeart), M(2.5, 0.45, 2.05, MetricByHeart), M(3, 0.5, 2.5), M(4, 0.7, 3.3), M(5, 0.8, 4.2), M(6, 1, 5), M(7, 1, 6, MetricByHeart), M(8, 1.25, 6.8), M(10, 1.5, 8.5), M(12, 1.75, 10.2), M(14, 2, 12), M(16, 2, 14),
        M(18, 2.5, 15.5), M(20, 2.5, 17.5), M(22, 2.5, 19.5), M(24, 3, 21), M(27, 3, 24, MetricByHeart),
        M(30, 3.5, 26.5, MetricByHeart),
    ];

    /// <summary>No. 4 to 3/4 in, coarse and fine.</summary>
    public static ImmutableArray<ScrewThread> InchSeries { get; } =
    [
        U("4-40", .1120, 40, .0890, "No. 43"), U("4-48", .1120, 48, .0935, "No. 42"), U("6-32", .1380, 32, .1065, "No. 36"), U("6-40", .1380, 40, .1130, "No. 33"),
        U("8-32", .1640, 32, .1360, "No. 29"), U("8-36", .1640, 36, .1360, "No. 29"), U("10-24", .1900, 24, .1495, "No. 25"), U("10-32", .1900, 32, .1590, "No. 21"),
        U("1/4-20", .2500, 20, .2010, "No. 7"), U("1/4-28", .2500, 28, .2130, "No. 3"), U("5/16-18", .3125, 18, .2570, "F"), U("5/16-24", .3125, 24, .2720, "I"),
        U("3/8-16", .3750, 16, .3125, "5/16 in"), U("3/8-24", .3750, 24, .3320, "Q"), U("7/16-14", .4375, 14, .3680, "U"), U("7/16-20", .4375, 20, .3906, "25/64 in"),
        U("1/2-13", .5000, 13, .4219, "27/64 in"), U("1/2-20", .5000, 20, .4531, "29/64 in"), U("5/8-11", .6250, 11, 17.0 / 32, "17/32 in"),
        U("5/8-18", .6250, 18, 37.0 / 64, "37/64 in"), U("3/4-10", .7500, 10, 21.0 / 32, "21/32 in"), U("3/4-16", .7500, 16, 11.0 / 16, "11/16 in"),
    ];

    /// <summary>The thread of a name (<see cref="ThreadName"/>): M8, M10x1.25, 1/4-20, 10-32 UNF; null where it is none that is known.</summary>
    /// <remarks>A metric thread of another pitch has major diameter less pitch as its drill, which is common practice.</remarks>
    public static ScrewThread? Find(string designation) => ThreadName.Read(designation) is not { Pitch: > 0 } name ? null
        : (name.IsInch ? InchSeries : Coarse).FirstOrDefault(thread => Same(thread.Major, name.Major) && Same(thread.Pitch, name.Pitch)) is { } known ? known
        : name.IsInch ? null
        : new ScrewThread($"M{Say.Number(name.Major)}x{Say.Number(name.Pitch)}", name.Major, name.Pitch, name.Major - name.Pitch, null, "drill = major diameter − pitch, common practice");

    /// <summary>The unified thread of a diameter, mm, in the coarse or the fine series; null where the table does not have it.</summary>
    internal static ScrewThread? OfSeries(double major, bool isCoarse)
    {
        var both = InchSeries.Where(thread => Same(thread.Major, major));
        return isCoarse ? both.MaxBy(thread => thread.Pitch) : both.MinBy(thread => thread.Pitch);
    }

    static bool Same(double one, double other) => Math.Abs(one - other) < 1e-6;

    /// <summary>Minor diameter D1 of the basic profile, mm: D − 1.082532·P (ISO 68-1).</summary>
    public static double Minor(double major, double pitch) => major - 1.082532 * pitch;

    /// <summary>Pitch diameter D2 of the basic profile, mm: D − 0.649519·P (ISO 68-1).</summary>
    public static double PitchDiameter(double major, double pitch) => major - 0.649519 * pitch;

    /// <summary>Per cent of thread on the shop's usual base, a depth of 0.6495·P on each side: 100·(D − d)/(1.299038·P) (Machinery's Handbook 31, Table 2).</summary>
    /// <param name="drill">Diameter d of the hole, mm.</param>
    public static double Percent(double major, double pitch, double drill) => 100 * (major - drill) / (1.299038 * pitch);

    /// <summary>Per cent of thread on the basis of the basic profile, 5/8 of the full height: 100·(D − d)/(1.082532·P) (engineering reference that
    /// gives ASME B1.1 and ISO 68).</summary>
    /// <param name="drill">Diameter d of the hole, mm.</param>
    public static double PercentOfProfile(double major, double pitch, double drill) => 100 * (major - drill) / (1.082532 * pitch);

    /// <summary>The hole in mm for a per cent of thread on the usual base: D − %·1.299038·P/100.</summary>
    public static double DrillFor(double major, double pitch, double percent) => major - percent * 1.299038 * pitch / 100;

    static ScrewThread M(double major, double pitch, double drill, string source = Metric) => new($"M{Say.Number(major)}", major, pitch, drill, null, source);

    static ScrewThread U(string name, double major, int perInch, double drill, string drillName) =>
        new(name, major * UnitLength.MmPerInch, UnitLength.MmPerInch / perInch, drill * UnitLength.MmPerInch, drillName, Unified);
}
