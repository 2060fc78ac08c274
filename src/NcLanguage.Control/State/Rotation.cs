using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.State;

/// <summary>A rotation of the programmed path in a plane (G68, common practice).</summary>
public sealed record Rotation
{
    readonly double _cos;
    readonly double _sin;

    /// <param name="plane">The plane in force when it was switched on; where that is not known, nothing is.</param>
    /// <param name="about">The point that stays, mm; only its coordinates in the plane count.</param>
    /// <param name="degrees">Counterclockwise as seen against the plane's third axis.</param>
    public Rotation(WorkPlane plane, Point3 about, double degrees)
    {
        Plane = plane;
        About = about.With(Arcs.Axes(plane).Third, 0);
        Degrees = degrees;
        (_cos, _sin) = Angles.Direction(degrees);
    }

    public WorkPlane Plane { get; }

    /// <summary>The point that stays, mm; 0 across the plane.</summary>
    public Point3 About { get; }

    /// <summary>Counterclockwise as seen against the plane's third axis.</summary>
    public double Degrees { get; }

    /// <summary>False for whole turns.</summary>
    public bool IsTurned => !(_cos == 1 && _sin == 0);

    /// <summary>Where a programmed place comes to lie, mm.</summary>
    public Point3 ToWork(Point3 programmed) => Turn(programmed, _sin);

    /// <summary>Which programmed place lies there, mm.</summary>
    public Point3 ToProgram(Point3 work) => Turn(work, -_sin);

    Point3 Turn(Point3 place, double sin)
    {
        if (!IsTurned)
            return place;
        if (Plane == WorkPlane.Unknown)
            return Point3.Unknown;
        var (first, second, _) = Arcs.Axes(Plane);
        var (a, b) = (place[first] - About[first], place[second] - About[second]);
        return place
            .With(first, About[first] + (Angles.Share(_cos, a) - Angles.Share(sin, b)))
            .With(second, About[second] + (Angles.Share(sin, a) + Angles.Share(_cos, b)));
    }
}
