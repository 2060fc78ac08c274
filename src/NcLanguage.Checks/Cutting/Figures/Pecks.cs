using System.Collections.Immutable;

namespace NcLanguage.Checks.Cutting;

/// <summary>Feed strokes of a peck cycle, and what deep holes ask for.</summary>
public static class Pecks
{
    /// <summary>The most strokes that are listed: a slip of the keyboard must not fill the memory.</summary>
    public const int Most = 10_000;

    /// <summary>Strokes: the whole way by the step, rounded up (NISTIR 6556 §3.5.16.4); a rest too small to be written is none.</summary>
    /// <param name="rLevel">mm.</param>
    /// <param name="bottom">mm.</param>
    /// <param name="step">Depth of a peck, mm.</param>
    public static double Count(double rLevel, double bottom, double step) => Math.Ceiling(Math.Round((rLevel - bottom) / step, 6));

    /// <summary>The level that each stroke ends at, mm; at most <see cref="Most"/>.</summary>
    /// <param name="rLevel">mm.</param>
    /// <param name="bottom">mm.</param>
    /// <param name="step">Depth of a peck, mm.</param>
    public static ImmutableArray<double> Levels(double rLevel, double bottom, double step)
    {
        var count = (int)Math.Min(Count(rLevel, bottom, step), Most);
        var levels = ImmutableArray.CreateBuilder<double>(count);
        for (var stroke = 1; stroke <= count; stroke++)
            levels.Add(Math.Max(rLevel - stroke * step, bottom));
        return levels.MoveToImmutable();
    }

    /// <summary>By how much speed and feed are lowered in a deep hole, in hundredths (drill reference sheet); none below 3 diameters.</summary>
    /// <param name="diameters">Depth divided by diameter; what a division is off by counts for nothing.</param>
    public static (int Speed, int Feed) DeepHole(double diameters) => Math.Round(diameters, 9) switch
    {
        >= 6 => (40, 20),
        >= 5 => (30, 20),
        >= 4 => (20, 10),
        >= 3 => (10, 10),
        _ => (0, 0),
    };
}
