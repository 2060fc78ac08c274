using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.State;

/// <summary>The place that polar words (G16, common practice) name: the plane's first axis is the radius, the second the angle.</summary>
/// <param name="Plane">The plane in force when they were switched on.</param>
/// <param name="Pole">What radius and angle count from, mm; 0 across the plane.</param>
/// <param name="Radius">In mm.</param>
/// <param name="Angle">In degrees, counterclockwise from the plane's first axis.</param>
public sealed record PolarPlace(WorkPlane Plane, Point3 Pole, double Radius, double Angle)
{
    /// <summary>Radius and angle of a place about the datum.</summary>
    public static PolarPlace At(Point3 place, WorkPlane plane)
    {
        var (first, second, _) = Arcs.Axes(plane);
        var (a, b) = (place[first], place[second]);
        return new(plane, default, Math.Sqrt(a * a + b * b), Math.Atan2(b, a) * 180 / Math.PI);
    }

    /// <summary>The place with its coordinates in the plane taken from radius and angle, mm.</summary>
    public Point3 Put(Point3 place)
    {
        if (Plane == WorkPlane.Unknown)
            return Point3.Unknown;
        var (first, second, _) = Arcs.Axes(Plane);
        var (cos, sin) = Angles.Direction(Angle);
        return place
            .With(first, Pole[first] + Angles.Share(cos, Radius))
            .With(second, Pole[second] + Angles.Share(sin, Radius));
    }
}
