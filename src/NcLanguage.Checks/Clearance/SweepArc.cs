using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

public static partial class Sweep
{
    /// <summary>How far a chord may stand off its arc, mm.</summary>
    public const double ChordTolerance = 0.005;

    /// <summary>The nearest approach of a tool on an arc or helix.</summary>
    /// <param name="from">Where the tip starts, mm.</param>
    /// <param name="to">Where the tip ends, mm. Over the same place of the plane as the start: a full circle.</param>
    /// <param name="center">Centre of the arc, mm; only the two coordinates of the plane count.</param>
    /// <param name="clockwise">True for clockwise as seen from the positive end of the axis the plane lacks.</param>
    /// <param name="plane">17 (XY), 18 (ZX) or 19 (YZ).</param>
    /// <param name="fullTurns">Whole turns on top of the arc or the full circle, 0 or more.</param>
    /// <param name="tool">The tool.</param>
    /// <param name="obstacles">What stands there.</param>
    /// <param name="within">As for <see cref="Line(Point3, Point3, ToolShape, ReadOnlySpan{Obstacle}, double)"/>.</param>
    /// <returns>As for <see cref="Line(Point3, Point3, ToolShape, ReadOnlySpan{Obstacle}, double)"/>, found by chords within <see cref="ChordTolerance"/> and then sharpened on the arc itself: off by
    /// at most 0.01 mm, commonly far less. Where the ends lie at different radii the radius changes evenly on the way.</returns>
    public static Approach Arc(Point3 from, Point3 to, Point3 center, bool clockwise, int plane, int fullTurns, ToolShape tool, ReadOnlySpan<Obstacle> obstacles, double within = double.PositiveInfinity)
    {
        var searched = 0;
        return Arc(from, to, center, clockwise, plane, fullTurns, tool, obstacles, within, ref searched);
    }

    /// <summary>The same, for tests that count work.</summary>
    /// <param name="searched">Grows by the cylinders of the tool for which a least distance to an obstacle was searched; for the others a bound was enough.</param>
    /// <inheritdoc cref="Arc(Point3, Point3, Point3, bool, int, int, ToolShape, ReadOnlySpan{Obstacle}, double)"/>
    public static Approach Arc(Point3 from, Point3 to, Point3 center, bool clockwise, int plane, int fullTurns, ToolShape tool, ReadOnlySpan<Obstacle> obstacles, double within, ref int searched) =>
        ArcAmong(from, to, center, clockwise, plane, fullTurns, tool, Solid.Of(obstacles, stackalloc Solid[Solid.Few]), within, ref searched);

    /// <summary>The same for obstacles made ready.</summary>
    internal static Approach ArcAmong(in Point3 from, in Point3 to, in Point3 center, bool clockwise, int plane, int fullTurns, ToolShape tool, ReadOnlySpan<Solid> solids, double within, ref int searched)
    {
        if (IsBesideAll(from, to, center, plane, tool.GreatestRadius + within, solids))
            return Approach.None;
        var arc = new ArcPath(from, to, center, clockwise, plane, fullTurns);
        if (!arc.IsKnown)
            return Approach.Unknown;
        var best = Approach.None;
        var chords = arc.Chords(ChordTolerance);
        var (low, high) = (arc.Low, arc.High);
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
                var search = new ArcSearch(arc, chords, solid, cylinder, within, best.Distance, bound);
                search.Run();
                if (search.Best < best.Distance)
                    best = new(search.Best, i, search.Tip, cylinder.Part);
            }
        }
        return best;
    }

    /// <summary>Whether the whole circle of an arc in the XY plane lies farther from everything than so much, seen from above; settled without an angle. False where a
    /// coordinate is not known.</summary>
    static bool IsBesideAll(in Point3 from, in Point3 to, in Point3 center, int plane, double distance, ReadOnlySpan<Solid> solids)
    {
        if (plane != 17 || !IsFinite(from) || !IsFinite(to))
            return false;
        var radius = Math.Sqrt(Math.Max(SquareOf(from.X - center.X, from.Y - center.Y), SquareOf(to.X - center.X, to.Y - center.Y)));
        if (!double.IsFinite(radius))
            return false;
        var low = new Point3(center.X - radius, center.Y - radius, 0);
        var high = new Point3(center.X + radius, center.Y + radius, 0);
        foreach (ref readonly var solid in solids)
            if (!solid.IsBeside(low, high, distance))
                return false;
        return true;
    }

    static double SquareOf(double x, double y) => x * x + y * y;

    /// <summary>Search of one arc for the least distance between one cylinder and one obstacle. The distance changes by no more
    /// than the tip travels, so a stretch whose middle is far enough away is left out whole.</summary>
    ref struct ArcSearch(ArcPath arc, int chords, Solid solid, ToolCylinder cylinder, double within, double toBeat, double least)
    {
        public double Best { get; private set; } = toBeat;

        public Point3 Tip { get; private set; } = Point3.Unknown;

        // A distance that the arc certainly comes down to.
        double _reached = double.PositiveInfinity;

        // A distance that no place of the arc goes below. A level circle over an obstacle is all at this distance, so the first
        // such place ends the search.
        readonly double _least = least;

        public void Run()
        {
            const int Samples = 16;
            for (var i = 0; i <= Samples; i++)
                _reached = Math.Min(_reached, At((double)i / Samples));
            Visit(0, chords);
        }

        void Visit(int first, int end)
        {
            if (_least >= Best)
                return;
            // Tip places of the stretch lie within half its length of its middle.
            var reach = arc.Length * (end - first) * 0.5 / chords;
            var bound = At((first + end) * 0.5 / chords) - reach;
            if (bound > within || bound >= Best || bound > _reached)
                return;
            if (end - first > 1)
            {
                var half = first + (end - first) / 2;
                Visit(first, half);
                Visit(half, end);
                return;
            }

            var start = arc.At((double)first / chords);
            var stop = arc.At((double)end / chords);
            Sharpen(first, Nearest(solid, cylinder, start, stop, out var t), t);
        }

        /// <summary>Goes from the nearest place on a chord to the nearest place on its arc.</summary>
        void Sharpen(int chord, double onChord, double t)
        {
            if (onChord - ChordTolerance >= Best || onChord - ChordTolerance > _reached)
                return;
            _reached = Math.Min(_reached, At((chord + t) / chords));
            Keep((chord + t) / chords);
            // Golden section, no wider than the chord: on so short a stretch the distance has one minimum, but for wrinkles
            // smaller than the chord's own error.
            const double Golden = 0.6180339887498949;
            double low = chord, high = chord + 1;
            double left = high - Golden, right = low + Golden;
            double atLeft = At(left / chords), atRight = At(right / chords);
            for (var i = 0; i < 60 && high - low > 1e-12 * chords; i++)
            {
                if (atLeft <= atRight)
                {
                    (high, right, atRight) = (right, left, atLeft);
                    left = high - Golden * (high - low);
                    atLeft = At(left / chords);
                }
                else
                {
                    (low, left, atLeft) = (left, right, atRight);
                    right = low + Golden * (high - low);
                    atRight = At(right / chords);
                }
            }
            Keep(low / chords);
            Keep(high / chords);
            Keep((low + high) / 2 / chords);
        }

        readonly double At(double fraction) => solid.Distance(arc.At(fraction), cylinder, default, out _);

        void Keep(double fraction)
        {
            var distance = At(fraction);
            if (distance < Best)
                (Best, Tip) = (distance, arc.At(fraction));
        }
    }

    internal static Point3 Lower(in Point3 a, in Point3 b) => new(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Min(a.Z, b.Z));

    internal static Point3 Higher(in Point3 a, in Point3 b) => new(Math.Max(a.X, b.X), Math.Max(a.Y, b.Y), Math.Max(a.Z, b.Z));
}
