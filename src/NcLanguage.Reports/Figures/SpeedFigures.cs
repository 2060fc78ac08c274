using NcLanguage.Checks.Cutting;
using NcLanguage.Control.State;
using NcLanguage.Machine.Cutting;

namespace NcLanguage.Reports.Figures;

/// <summary>Spindle speed, feed and the times that go with them. Lengths in mm, speeds in m/min or 1/min, feeds in mm/min.</summary>
public static class SpeedFigures
{
    const string FeedSource = "textbook, from memory";

    /// <summary>The spindle speed for a cutting speed.</summary>
    public static FigureReport Speed(double cuttingSpeed, double diameter, FigureUnit unit) =>
        new("speed", [FigureUnit.Turns("spindle speed", CuttingSpeed.SpindleSpeed(cuttingSpeed, diameter), Formula(unit), Source(unit))]);

    /// <summary>The cutting speed of a spindle speed.</summary>
    public static FigureReport SpeedAt(double turns, double diameter, FigureUnit unit) =>
        new("speed", [unit.CuttingSpeed("cutting speed", CuttingSpeed.AtDiameter(turns, diameter), unit.IsInch ? "v = π·D·n / 12" : "v = π·D·n / 1000", Source(unit))]);

    /// <summary>The spindle speeds for a range of the table.</summary>
    public static FigureReport Speed(CuttingRange range, double diameter, FigureUnit unit) => new("speed",
    [
        unit.CuttingSpeed("least cutting speed", range.Least, $"cutting data for {range.Material}", range.Source),
        unit.CuttingSpeed("greatest cutting speed", range.Greatest, $"cutting data for {range.Material}", range.Source),
        FigureUnit.Turns("least spindle speed", CuttingSpeed.SpindleSpeed(range.Least, diameter), Formula(unit), Source(unit)),
        FigureUnit.Turns("greatest spindle speed", CuttingSpeed.SpindleSpeed(range.Greatest, diameter), Formula(unit), Source(unit)),
    ]);

    static string Formula(FigureUnit unit) => unit.IsInch ? "n = 12·v / (π·D)" : "n = 1000·v / (π·D)";

    static string Source(FigureUnit unit) => "open textbook Machining 1, chapter 8" + (unit.IsInch ? "" : "; the metric form from memory");

    /// <summary>The feed for a feed per tooth or, with one tooth, per turn.</summary>
    public static FigureReport Feed(double turns, int teeth, double each, bool isPerTooth, FigureUnit unit) =>
        new("feed", [unit.Feed("feed", CuttingSpeed.Feed(turns, teeth, each), isPerTooth ? "F = n·z·fz" : "F = n·f", FeedSource)]);

    /// <summary>The feeds for a range of the table.</summary>
    public static FigureReport Feed(double turns, FeedRange feed, FigureUnit unit)
    {
        var formula = feed.IsPerTooth ? "F = n·z·fz" : "F = n·f";
        return new("feed",
        [
            unit.Fine($"least feed {feed.Per}", feed.Range.Least, $"cutting data for {feed.Range.Material}", feed.Range.Source),
            unit.Fine($"greatest feed {feed.Per}", feed.Range.Greatest, $"cutting data for {feed.Range.Material}", feed.Range.Source),
            unit.Feed("least feed", CuttingSpeed.Feed(turns, feed.Teeth, feed.Range.Least), formula, FeedSource),
            unit.Feed("greatest feed", CuttingSpeed.Feed(turns, feed.Teeth, feed.Range.Greatest), formula, FeedSource),
        ]);
    }

    /// <summary>The feed per tooth or turn of a feed.</summary>
    public static FigureReport FeedOf(double feed, double turns, int teeth, bool isPerTooth, FigureUnit unit) => new("feed",
        [unit.Fine(isPerTooth ? "feed per tooth" : "feed per turn", feed / turns / teeth, isPerTooth ? "fz = F / (n·z)" : "f = F / n", FeedSource)]);

    /// <summary>The dwell for a number of turns, as both readings of P take it.</summary>
    public static FigureReport Dwell(double turns, double speed)
    {
        var seconds = DrillingTime.Dwell(turns, speed);
        const string formula = "t = 60·turns / n";
        const string source = "by arithmetic";
        return new("dwell", [new("dwell", seconds, "s", formula, source, 4), new("dwell", seconds * 1000, "ms", formula, source, 1)]);
    }

    /// <summary>The turns that a dwell takes.</summary>
    public static FigureReport TurnsOf(double seconds, double speed) =>
        new("dwell", [new("turns", DrillingTime.Turns(seconds, speed), "turns", "turns = n·t / 60", "by arithmetic", 2)]);

    /// <summary>The time for a hole at one stroke, with its point and without, and what is removed.</summary>
    public static FigureReport Time(double depth, double diameter, double angle, double feed, FigureUnit unit)
    {
        const string source = "drilling problems of Groover, Fundamentals of Modern Manufacturing (formula from memory)";
        var point = PointShape.Length(diameter, angle);
        return new("time",
        [
            unit.Length("point length", point, "A = D/2 / tan(α/2)", ShapeFigures.PointSource),
            new("drilling time", DrillingTime.Seconds(depth, point, feed), "s", "t = 60·(d + A) / F", source, 1),
            new("drilling time without the point", DrillingTime.Seconds(depth, 0, feed), "s", "t = 60·d / F", source + "; some answers leave the point out", 1),
            unit.IsInch
                ? new("removal", CuttingSpeed.DrillRemoval(diameter, feed) / Math.Pow(UnitLength.MmPerInch, 3), "in³/min", "π/4·D²·F", FeedSource, 3)
                : new("removal", CuttingSpeed.DrillRemoval(diameter, feed) / 1000, "cm³/min", "π/4·D²·F", FeedSource, 2),
        ]);
    }
}
