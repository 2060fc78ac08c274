using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;

namespace NcLanguage.Checks.Drawing;

/// <summary>How low mills have gone about a place when all is done: the surface that a hole's depth counts from, and whether the middle of a milled circle is cleared.
/// Told from the cuts themselves, not from a grid of them.</summary>
/// <remarks>Cuts are gathered when first asked for. On a slope a cut counts by its higher end.</remarks>
public sealed class MilledLevels(ProgramRun run)
{
    /// <summary>Cuts that are looked at for all places together, arcs counting one for each 5 degrees; behind them nothing counts as milled.</summary>
    const int MostLooks = 5_000_000;

    /// <summary>Places asked on a ring: every 22.5 degrees.</summary>
    const int OnRing = 16;

    /// <summary>How far beside the hole's wall its mouth is looked at, mm.</summary>
    const double BesideMouth = 0.2;

    /// <summary>Centres that lie nearer are one, mm.</summary>
    const double SameCentre = 0.05;

    readonly double _top = run.Job.Setup.Stock?.Max.Z ?? 0;
    List<MilledCut>? _cuts;
    long _looks;

    /// <summary>Top of the stock, Z0 without one, mm.</summary>
    public double Top => _top;

    /// <summary>Level of the surface all round the mouth of a hole, in the setup's frame, mm: the top of the stock, or what mills and the stock's hollows have left of it on every side. Without a stock Z0.</summary>
    /// <param name="radius">Of the hole, mm.</param>
    /// <remarks>What is milled about the hole's own middle is the hole, or its counterbore, and leaves the surface as it is.</remarks>
    public double SurfaceAt(double x, double y, double radius)
    {
        if (run.Job.Setup.Stock is null)
            return _top;
        Span<(double X, double Y)> ring = stackalloc (double, double)[OnRing];
        Ring(x, y, radius + BesideMouth, ring);
        return Highest(ring, x, y, radius + BesideMouth, withOwn: false);
    }

    /// <summary>Whether all within a radius of a place is cut down to a level or lower.</summary>
    public bool IsCleared(double x, double y, double radius, double level)
    {
        const int Rings = 4;
        // At the rim itself it is the circle that cuts.
        const double Inside = 0.98;
        Span<(double X, double Y)> disc = stackalloc (double, double)[Rings * OnRing + 1];
        for (var i = 0; i < Rings; i++)
            Ring(x, y, radius * Inside * (i + 1) / Rings, disc.Slice(i * OnRing, OnRing));
        disc[^1] = (x, y);
        return Highest(disc, x, y, radius, withOwn: true) <= level;
    }

    /// <summary>The highest that is left on a circle about a place when all is done, mm.</summary>
    public double HighestOn(double x, double y, double radius)
    {
        Span<(double X, double Y)> ring = stackalloc (double, double)[OnRing];
        Ring(x, y, radius, ring);
        return Highest(ring, x, y, radius, withOwn: true);
    }

    static void Ring(double x, double y, double radius, Span<(double X, double Y)> places)
    {
        for (var i = 0; i < places.Length; i++)
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * i / places.Length);
            places[i] = (x + radius * cos, y + radius * sin);
        }
    }

    /// <summary>What stands at a place before the first cut.</summary>
    double Given((double X, double Y) place, (double X, double Y) middle, bool withOwn)
    {
        var level = _top;
        foreach (var hollow in run.Job.Setup.Hollows)
            if (hollow.Bottom < level && hollow.Holds(place.X, place.Y, 0)
                && (withOwn || !hollow.IsRound || Math.Abs(hollow.CenterX - middle.X) > SameCentre || Math.Abs(hollow.CenterY - middle.Y) > SameCentre))
                level = hollow.Bottom;
        return level;
    }

    /// <summary>The highest of what the cuts leave at some places about a middle.</summary>
    double Highest(ReadOnlySpan<(double X, double Y)> places, double x, double y, double reach, bool withOwn)
    {
        _cuts ??= MilledCut.Below(_top, run, ShapingMoves.Mills);
        _looks += _cuts.Count;
        if (_looks > MostLooks)
            return _top;
        Span<double> levels = stackalloc double[places.Length];
        for (var i = 0; i < levels.Length; i++)
            levels[i] = Given(places[i], (x, y), withOwn);
        foreach (var cut in _cuts)
        {
            if (cut.DistanceTo(x, y) >= cut.End.Radius + reach)
                continue;
            if (!withOwn && Math.Abs(cut.CentreX - x) <= SameCentre && Math.Abs(cut.CentreY - y) <= SameCentre)
                continue;
            var level = Math.Max(cut.From.Z, cut.To.Z);
            for (var i = 0; i < places.Length; i++)
            {
                var off = cut.DistanceTo(places[i].X, places[i].Y);
                if (off <= cut.End.Radius)
                    levels[i] = Math.Min(levels[i], level + cut.End.HeightAt(off));
            }
        }
        var highest = double.NegativeInfinity;
        foreach (var level in levels)
            highest = Math.Max(highest, level);
        return highest;
    }
}
