using System.Collections.Immutable;
using NcLanguage.Checks;
using NcLanguage.Checks.Cutting;

namespace NcLanguage.Reports.Figures;

/// <summary>Points, spots, threads, pecks, chords. Lengths in mm, angles in degrees.</summary>
public static class ShapeFigures
{
    internal const string PointSource = "engineering reference, the table of Machinery's Handbook";

    /// <summary>How deep a spot drill or countersink goes for a diameter.</summary>
    /// <param name="flat">Diameter of a flat at the tip, or of the hole that is sunk; 0 for none.</param>
    public static FigureReport SpotDepth(double diameter, double angle, double flat, FigureUnit unit) =>
        new("spot", [unit.Length("depth", PointShape.Length(diameter, angle, flat), flat > 0 ? "Z = (D − T)/2 / tan(α/2)" : "Z = D/2 / tan(α/2)", PointSource)]);

    /// <summary>The diameter that a spot drill or countersink leaves at a depth.</summary>
    /// <param name="flat">Diameter of a flat at the tip, or of the hole that is sunk; 0 for none.</param>
    public static FigureReport SpotDiameter(double depth, double angle, double flat, FigureUnit unit) =>
        new("spot", [unit.Length("diameter", PointShape.Diameter(depth, angle, flat), flat > 0 ? "D = T + 2·Z·tan(α/2)" : "D = 2·Z·tan(α/2)", PointSource)]);

    /// <summary>The point's length, and how deep the tip has to go through a part.</summary>
    /// <param name="thickness">Of the part; null where it is not asked for.</param>
    public static FigureReport Point(double diameter, double angle, double? thickness, double beyond, FigureUnit unit)
    {
        var point = PointShape.Length(diameter, angle);
        var row = unit.Length("point length", point, "A = D/2 / tan(α/2)", PointSource);
        return new("point", thickness is not { } part ? [row]
            : [row, unit.Length("depth of the tip", PointShape.Through(part, point, beyond), "thickness + A + what it goes beyond", "engineering reference")]);
    }

    /// <summary>What is drilled for a thread, how much thread a drill leaves, and the feed of the tap.</summary>
    /// <param name="drill">A drill to judge; null for the table's.</param>
    /// <param name="speed">Spindle speed, 1/min; null where no feed is asked for.</param>
    /// <param name="percent">Per cent of thread, on the usual base, that a hole is wanted for; null for none.</param>
    public static FigureReport Tap(ScrewThread thread, double? drill, double? speed, FigureUnit unit, double? percent = null)
    {
        ArgumentNullException.ThrowIfNull(thread);
        var rows = ImmutableArray.CreateBuilder<FigureRow>();
        if (thread.TapDrill is { } tapDrill)
            rows.Add(unit.Length(thread.DrillName is { } name ? $"tap drill ({name})" : "tap drill", tapDrill, thread.Name, thread.Source));
        rows.Add(unit.Fine("pitch", thread.Pitch, thread.Name, thread.Source));
        const string profile = "basic profile, ISO 68-1";
        rows.Add(unit.Length("minor diameter", Threads.Minor(thread.Major, thread.Pitch), "D1 = D − 1.082532·P", profile));
        rows.Add(unit.Length("pitch diameter", Threads.PitchDiameter(thread.Major, thread.Pitch), "D2 = D − 0.649519·P", profile));
        if ((drill ?? thread.TapDrill) is { } hole)
        {
            var at = $"at {new LengthText(unit.IsInch).Length(hole)}";
            rows.Add(new FigureRow($"thread {at}", Threads.Percent(thread.Major, thread.Pitch, hole), "%", "100·(D − d) / (1.299038·P)", "the shop's usual base, Machinery's Handbook 31, Table 2", 1));
            rows.Add(new FigureRow(
                $"thread {at}, of the profile", Threads.PercentOfProfile(thread.Major, thread.Pitch, hole), "%", "100·(D − d) / (1.082532·P)", "base of ASME B1.1 and ISO 68, engineering reference", 1));
        }
        if (percent is { } wanted)
            rows.Add(unit.Length($"hole for {Say.Number(wanted)} % thread", Threads.DrillFor(thread.Major, thread.Pitch, wanted), "D − %·1.299038·P / 100", "the shop's usual base, Machinery's Handbook 31, Table 2"));
        if (speed is { } turns)
            rows.Add(unit.Feed("feed", CuttingSpeed.TapFeed(turns, thread.Pitch), "F = n·P", "NISTIR 6556 §3.5.16.5"));
        return new FigureReport("tap", rows.ToImmutable());
    }

    /// <summary>The strokes of a peck cycle with the level each ends at.</summary>
    public static FigureReport Pecks(double rLevel, double bottom, double step, FigureUnit unit)
    {
        const string source = "NISTIR 6556 §3.5.16.4";
        var levels = Checks.Cutting.Pecks.Levels(rLevel, bottom, step);
        return new FigureReport("peck",
        [
            new FigureRow("strokes", levels.Length, "", "(R − Z) / Q, rounded up", source, 0),
            .. levels.Select((level, i) => unit.Length($"stroke {i + 1} ends at Z", level, i + 1 < levels.Length ? $"R − {i + 1}·Q" : "the bottom", source)),
        ]);
    }

    /// <summary>What a hole's depth asks for: how many diameters deep it is and by how much speed and feed are lowered.</summary>
    public static FigureReport DeepHole(double depth, double diameter)
    {
        const string source = "drill reference sheet; pecks of up to 1 diameter are common practice";
        var ratio = depth / diameter;
        var (speed, feed) = Checks.Cutting.Pecks.DeepHole(ratio);
        return new FigureReport("peck",
        [
            new FigureRow("depth in diameters", ratio, "", "depth / D", "by arithmetic", 2),
            new FigureRow("less speed", speed, "%", "from 3 D 10, from 4 D 20, from 5 D 30, from 6 D 40", source, 0),
            new FigureRow("less feed", feed, "%", "from 3 D 10, from 5 D 20", source, 0),
        ]);
    }

    /// <summary>Chords that follow a circle within an error.</summary>
    public static FigureReport Chord(double radius, double error) => new("chord",
    [
        new FigureRow("angle of a chord", ChordError.Angle(radius, error), "°", "θ = 2·acos(1 − e/r)", "geometry of the circle", 4),
        new FigureRow("chords for a full circle", ChordError.Pieces(radius, error), "", "360° / θ, rounded up", "geometry of the circle", 0),
    ]);
}
