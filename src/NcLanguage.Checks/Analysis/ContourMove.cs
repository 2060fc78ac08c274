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
/// <param name="Radius">mm; 0 for a straight line.</param>
/// <param name="IsByRadius">Whether R and not I, J gives the circle.</param>
readonly record struct ContourMove(Point2 From, Point2 To, Point2 Center, double Radius, bool Clockwise, bool IsByRadius, bool IsG2, int Line)
{
    /// <summary>Directions that differ by less go on smoothly, tangent of 3°: half a degree for rounded numbers on small radii, and more for contours that are not quite tangent.</summary>
    internal const double Smooth = 0.0524;

    /// <summary>Centres and radii that differ by less are one, mm.</summary>
    internal const double Same = 0.01;

    /// <summary>How far a radius may be off that was written for places rounded to a hundredth, as a part of it.</summary>
    const double RoundedBy = 0.01;

    public bool IsThere => From != To || IsArc;

    public bool IsArc => Radius > 0;

    public bool IsWholeTurn => IsArc && AreSame(From, To);

    public Point2 DirectionAtStart => IsArc ? Along(From) : To - From;

    public Point2 DirectionAtEnd => IsArc ? Along(To) : To - From;

    public bool EndsAt(Point2 place) => AreSame(place, To);

    /// <summary>Whether both are arcs of one circle: one goes back over the other.</summary>
    public bool IsOn(in ContourMove other) => IsArc && other.IsArc && AreSame(Center, other.Center) && Math.Abs(Radius - other.Radius) <= Same;

    public bool TurnsAs(in ContourMove arc) => IsArc && Clockwise == arc.Clockwise;

    /// <summary>The same with the other code: by R the centre lies on the other side, by I and J it stays.</summary>
    public ContourMove Turned()
    {
        if (!IsByRadius || IsWholeTurn)
            return this with { Clockwise = !Clockwise };
        return AboutOtherCentre() with { Clockwise = !Clockwise };
    }

    /// <summary>The arc that turns the same way between the same ends on the other circle of its radius.</summary>
    public ContourMove AboutOtherCentre() => this with { Center = From + To - Center };

    /// <summary>How many times as large R is as the radius of the arc between the same ends that goes on smoothly from one direction to another, where that is 10, 100 or 1000; otherwise 0.</summary>
    public int Tenfold(Point2 start, Point2 end)
    {
        var chord = To - From;
        // No radius is shorter than half its chord: a tenth of this one would have to be as long. Most arcs are done with by that.
        if (!IsByRadius || IsWholeTurn || Radius < 10 * (1 - RoundedBy) * chord.Length / 2)
            return 0;
        // A tangent arc leaves its chord at both ends by the same angle.
        var (atStart, atEnd) = (Math.Atan2(Point2.Cross(start, chord), Point2.Dot(start, chord)), Math.Atan2(Point2.Cross(chord, end), Point2.Dot(chord, end)));
        if (Math.Abs(atStart - atEnd) > Smooth || Clockwise != atStart < 0)
            return 0;
        var times = Radius * 2 * Math.Abs(Math.Sin(atStart)) / chord.Length;
        var nearest = times < 5 ? 1 : times < 50 ? 10 : times < 500 ? 100 : 1000;
        return nearest > 1 && Math.Abs(times - nearest) <= RoundedBy * nearest ? nearest : 0;
    }

    Point2 Along(Point2 place) => (place - Center).Left * (Clockwise ? -1 : 1);

    // Asked at every move: the square spares a root.
    internal static bool AreSame(Point2 a, Point2 b) => Point2.Dot(a - b, a - b) <= Same * Same;
}
