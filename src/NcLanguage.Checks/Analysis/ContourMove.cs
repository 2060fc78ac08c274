using NcLanguage.Control.Compensation;

namespace NcLanguage.Checks.Analysis;

/// <summary>How two directions meet.</summary>
/// <param name="Across">Their cross product.</param>
/// <param name="Along">Their dot product.</param>
readonly record struct Joint(double Across, double Along)
{
    public Joint(Point2 a, Point2 b)
        : this(Point2.Cross(a, b), Point2.Dot(a, b))
    {
    }

    public Joint Reversed => new(Across, -Along);

    /// <summary>Whether they differ by no more than the angle of this tangent, below a right angle.</summary>
    public bool IsWithin(double tangent) => Along > 0 && Math.Abs(Across) <= tangent * Along;
}

/// <summary>A programmed move, seen from above.</summary>
record struct ContourMove
{
    public Point2 From { get; private set; }

    public Point2 To { get; private set; }

    public Point2 Center { get; private set; }

    // The square spares a root at every arc: the radius itself is seldom asked for.
    double _squareOfRadius;

    /// <summary>mm; 0 for a straight line.</summary>
    public readonly double Radius => Math.Sqrt(_squareOfRadius);

    public bool Clockwise { get; private set; }

    /// <summary>Whether R and not I, J gives the circle.</summary>
    public bool IsByRadius { get; private set; }

    public bool IsG2 { get; private set; }

    /// <summary>Its block, counted from 0 within its part.</summary>
    public int Line { get; private set; }

    /// <summary>Directions that differ by less go on smoothly, tangent of 3°: half a degree for rounded numbers on small radii, and more for contours that are not quite tangent.</summary>
    internal const double Smooth = 0.0524;

    /// <summary>Centres and radii that differ by less are one, mm.</summary>
    internal const double Same = 0.01;

    /// <summary>How far a radius may be off that was written for places rounded to a hundredth, as a part of it.</summary>
    const double RoundedBy = 0.01;

    public readonly bool IsThere => From != To || IsArc;

    public readonly bool IsArc => _squareOfRadius > 0;

    public readonly bool IsWholeTurn => IsArc && AreSame(From, To);

    public readonly Point2 DirectionAtStart => IsArc ? Along(From) : To - From;

    public readonly Point2 DirectionAtEnd => IsArc ? Along(To) : To - From;

    public readonly bool EndsAt(Point2 place) => AreSame(place, To);

    /// <summary>Whether both are arcs of one circle: one goes back over the other.</summary>
    public readonly bool IsOn(in ContourMove other) => IsArc && other.IsArc && AreSame(Center, other.Center) && Math.Abs(Radius - other.Radius) <= Same;

    public readonly bool TurnsAs(in ContourMove arc) => IsArc && Clockwise == arc.Clockwise;

    /// <summary>Becomes a straight line.</summary>
    public void BecomeLine(Point2 from, Point2 to, int line)
    {
        (From, To) = (from, to);
        (Center, _squareOfRadius, Clockwise, IsByRadius, IsG2, Line) = (default, 0, false, false, false, line);
    }

    /// <summary>Becomes an arc, where it stands: a copy of what has just been written takes long.</summary>
    /// <param name="squareOfRadius">mm².</param>
    public void BecomeArc(Point2 from, Point2 to, Point2 center, double squareOfRadius, bool clockwise, bool isByRadius, bool isG2, int line)
    {
        (From, To, Center) = (from, to, center);
        (_squareOfRadius, Clockwise, IsByRadius, IsG2, Line) = (squareOfRadius, clockwise, isByRadius, isG2, line);
    }

    /// <summary>How many times as large R is as the radius of the arc between the same ends that goes on smoothly from one direction to another, where that is 10, 100 or 1000; otherwise 0.</summary>
    public readonly int Tenfold(Point2 start, Point2 end)
    {
        var chord = To - From;
        // No radius is shorter than half its chord: a tenth of this one would have to be as long. Most arcs are done with by that.
        const double Least = 10 * (1 - RoundedBy) / 2;
        if (!IsByRadius || IsWholeTurn || _squareOfRadius < Least * Least * Point2.Dot(chord, chord))
            return 0;
        // A tangent arc leaves its chord at both ends by the same angle.
        var (atStart, atEnd) = (Math.Atan2(Point2.Cross(start, chord), Point2.Dot(start, chord)), Math.Atan2(Point2.Cross(chord, end), Point2.Dot(chord, end)));
        if (Math.Abs(atStart - atEnd) > Smooth || Clockwise != atStart < 0)
            return 0;
        var times = Radius * 2 * Math.Abs(Math.Sin(atStart)) / chord.Length;
        var nearest = times < 5 ? 1 : times < 50 ? 10 : times < 500 ? 100 : 1000;
        return nearest > 1 && Math.Abs(times - nearest) <= RoundedBy * nearest ? nearest : 0;
    }

    readonly Point2 Along(Point2 place) => (place - Center).Left * (Clockwise ? -1 : 1);

    // Asked at every move: the square spares a root.
    internal static bool AreSame(Point2 a, Point2 b) => Point2.Dot(a - b, a - b) <= Same * Same;
}
