using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>How near a moving tool comes to obstacles. Nothing here allocates.</summary>
/// <remarks>
/// Places are of the tool's tip, in the obstacles' frame, mm. On straight moves distances are right to 1e-9 mm for coordinates
/// up to some metres. Obstacles may be unbounded (infinite) but none of their numbers may be NaN.
/// </remarks>
public static partial class Sweep
{
    /// <summary>Distances closer together than this, mm, count as equal: a tool at exactly the clearance is clear.</summary>
    public const double ClearanceTolerance = 1e-6;

    // Halvings of the travel: what is left of a metre is a millionth of a nanometre.
    const int Halvings = 50;

    /// <summary>The nearest approach of a tool that goes straight from one place to another.</summary>
    /// <param name="from">Where the tip starts, mm.</param>
    /// <param name="to">Where the tip ends, mm; may be the same place.</param>
    /// <param name="tool">The tool.</param>
    /// <param name="obstacles">What stands there.</param>
    /// <param name="within">Obstacles certainly farther than this, mm, may be left out: the answer is exact when its distance is
    /// at most this, and is otherwise some greater distance or <see cref="Approach.None"/>.</param>
    /// <returns>The least distance; where several places share it, the first on the way (to within rounding), and the first
    /// obstacle of the list. <see cref="Approach.Unknown"/> when a coordinate is not known.</returns>
    public static Approach Line(Point3 from, Point3 to, ToolShape tool, ReadOnlySpan<Obstacle> obstacles, double within = double.PositiveInfinity)
    {
        var searched = 0;
        return Line(from, to, tool, obstacles, within, ref searched);
    }

    /// <summary>The same, for tests that count work.</summary>
    /// <param name="searched">Grows by the cylinders of the tool for which a least distance to an obstacle was searched; for the others a bound was enough.</param>
    /// <inheritdoc cref="Line(Point3, Point3, ToolShape, ReadOnlySpan{Obstacle}, double)"/>
    public static Approach Line(Point3 from, Point3 to, ToolShape tool, ReadOnlySpan<Obstacle> obstacles, double within, ref int searched) =>
        LineAmong(from, to, tool, Solid.Of(obstacles, stackalloc Solid[Solid.Few]), within, ref searched);

    /// <summary>The same for obstacles made ready.</summary>
    internal static Approach LineAmong(in Point3 from, in Point3 to, ToolShape tool, ReadOnlySpan<Solid> solids, double within, ref int searched)
    {
        if (!IsFinite(from) || !IsFinite(to))
            return Approach.Unknown;
        var low = Lower(from, to);
        var high = Higher(from, to);
        var best = Approach.None;
        for (var i = 0; i < solids.Length; i++)
        {
            ref readonly var solid = ref solids[i];
            if (solid.IsBeside(low, high, tool.GreatestRadius + Math.Min(within, best.Distance)))
                continue;
            foreach (ref readonly var cylinder in tool.Cylinders)
            {
                var bound = solid.LowerBound(low, high, cylinder);
                if (bound > within || bound >= best.Distance)
                    continue;
                searched++;
                var distance = Nearest(solid, cylinder, from, to, out var t);
                if (distance < best.Distance)
                    best = new(distance, i, t == 1 ? to : Point3.Lerp(from, to, t), cylinder.Part);
            }
        }
        return best;
    }

    /// <summary>
    /// The lowest tip level at which a level traverse keeps clear of everything by going over it, never underneath.
    /// </summary>
    /// <param name="from">Where the traverse starts; only X and Y count.</param>
    /// <param name="to">Where it ends; only X and Y count.</param>
    /// <param name="tool">The tool, all of it: a holder that would touch raises the level too.</param>
    /// <param name="obstacles">What stands there.</param>
    /// <param name="clearance">Distance in space to keep, mm, 0 or more; equal counts as clear.</param>
    /// <param name="floor">The answer is not below this level, mm.</param>
    /// <returns>The level in mm; positive infinity where an obstacle in the way has no top; NaN when X, Y or the floor is not known.</returns>
    public static double LeastLevel(in Point3 from, in Point3 to, ToolShape tool, ReadOnlySpan<Obstacle> obstacles, double clearance, double floor)
    {
        var start = new Point3(from.X, from.Y, 0);
        var end = new Point3(to.X, to.Y, 0);
        if (!IsFinite(start) || !IsFinite(end) || double.IsNaN(floor) || double.IsNaN(clearance))
            return double.NaN;
        ArgumentOutOfRangeException.ThrowIfNegative(clearance);
        var low = Lower(start, end);
        var high = Higher(start, end);
        var level = floor;
        foreach (var obstacle in obstacles)
        {
            var solid = new Solid(obstacle);
            var footprint = solid.WithoutHeight();
            foreach (ref readonly var cylinder in tool.Cylinders)
            {
                // Even going over with the whole clearance between asks for no more than the level so far.
                if (solid.Top + clearance - cylinder.Bottom <= level)
                    continue;
                if (footprint.LowerBound(low, high, cylinder) >= clearance)
                    continue;
                var beside = Nearest(footprint, cylinder, start, end, out _);
                if (beside >= clearance - ClearanceTolerance)
                    continue;
                var over = beside > 0 ? Math.Sqrt((clearance - beside) * (clearance + beside)) : clearance;
                level = Math.Max(level, solid.Top + over - cylinder.Bottom);
            }
        }
        return level;
    }

    /// <summary>Least distance over a straight move, and the fraction of the way where it is first met.</summary>
    static double Nearest(in Solid solid, in ToolCylinder cylinder, in Point3 from, in Point3 to, out double t)
    {
        var step = to - from;
        t = 0;
        var distance = solid.Distance(from, cylinder, step, out var slope);
        if (slope >= 0)
            return distance;
        var atEnd = solid.Distance(to, cylinder, step, out slope);
        if (slope < 0)
        {
            t = 1;
            return atEnd;
        }
        // A slope of 0 sends the search back towards the start, so a plateau is reported where it begins.
        double low = 0, high = 1;
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) / 2;
            solid.Distance(Point3.Lerp(from, to, middle), cylinder, step, out slope);
            if (slope < 0)
                low = middle;
            else
                high = middle;
        }
        t = high;
        return solid.Distance(Point3.Lerp(from, to, high), cylinder, step, out _);
    }

    static bool IsFinite(in Point3 p) => double.IsFinite(p.X) && double.IsFinite(p.Y) && double.IsFinite(p.Z);
}
