using System.Runtime.CompilerServices;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.Moves;

/// <summary>Geometry of arcs in the three planes. Clockwise is as seen against the third axis (NISTIR 6556 §3.5.3).</summary>
public static class Arcs
{
    /// <summary>An arc of a larger radius, mm, is a slip of the keyboard and not followed: chords that keep near to it would be without end.</summary>
    public const double GreatestRadius = 1e6;

    /// <summary>The axes of a plane: first and second in the plane, third across it. XY: X Y Z; ZX: Z X Y; YZ: Y Z X.</summary>
    public static (int First, int Second, int Third) Axes(WorkPlane plane) => plane switch
    {
        WorkPlane.ZX => (2, 0, 1),
        WorkPlane.YZ => (1, 2, 0),
        _ => (0, 1, 2),
    };

    /// <summary>Largest difference of an arc's start and end radius, and of a radius and half the chord, mm (NISTIR 6556 §3.5.3.2): 0.002 mm or 0.0002 in.</summary>
    public static double Tolerance(LengthUnit units) => units == LengthUnit.Inch ? 0.0002 * UnitLength.MmPerInch : 0.002;

    /// <summary>The centre of the arc with radius <paramref name="r"/> from (a0, b0) to (a1, b1): the shorter way for a
    /// positive radius, the longer for a negative one. Null when the radius is shorter than half the chord, or there is no chord.</summary>
    /// <param name="tolerance">How much shorter than half the chord a radius may be and still be read as a half circle, mm.</param>
    public static (double A, double B)? CentreFromRadius(double a0, double b0, double a1, double b1, double r, bool clockwise, double tolerance)
    {
        var (a, b, longest) = (a1 - a0, b1 - b0, Math.Abs(r) + tolerance);
        var chord = a * a + b * b;
        // A half circle written with rounded numbers is still meant as one.
        if (chord == 0 || chord > 4 * longest * longest)
            return null;
        // The height of the centre above the chord, as a part of that. The left normal of the way of travel points to the centre of a short counterclockwise arc.
        var height = Math.Sqrt(Math.Max(0, r * r - chord / 4) / chord);
        var offset = clockwise == r < 0 ? height : -height;
        return ((a0 + a1) / 2 - offset * b, (b0 + b1) / 2 + offset * a);
    }

    /// <summary>Distance in mm of a place from a centre, in the plane of two axes.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Radius(in Point3 at, in Point3 centre, int first, int second) => Math.Sqrt(Square(at, centre, first, second));

    /// <summary>Whether two distances, of which the squares are given, differ by more than a tolerance, mm; false where one is not known.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool Differ(double square, double other, double tolerance)
    {
        var difference = square - other;
        // Asked at every arc: |a − b| · a is no more than |a² − b²|, so that most are done with without a root.
        return !(difference * difference <= tolerance * tolerance * square) && Math.Abs(Math.Sqrt(square) - Math.Sqrt(other)) > tolerance;
    }

    /// <summary>The square of the distance of a place from a centre, in the plane of two axes, mm².</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Square(in Point3 at, in Point3 centre, int first, int second)
    {
        var (a, b) = (at[first] - centre[first], at[second] - centre[second]);
        return a * a + b * b;
    }

    /// <summary>Whether the radius at the start of an arc in the XY plane is larger than one, mm.</summary>
    public static bool IsLargerThan(double radius, in Move arc) => Square(arc.From, arc.Center, 0, 1) > radius * radius;

    /// <summary>True for an arc whose radius at the start or at the end is larger than <see cref="GreatestRadius"/>; false where that is not known.</summary>
    public static bool IsTooLarge(in Move arc)
    {
        var (first, second, _) = Axes(arc.Plane);
        const double Most = GreatestRadius * GreatestRadius;
        return Square(arc.From, arc.Center, first, second) > Most || Square(arc.To, arc.Center, first, second) > Most;
    }

    /// <summary>The greater of its radii at the start and at the end, mm; NaN where one is not known.</summary>
    public static double GreatestOf(in Move arc)
    {
        var (first, second, _) = Axes(arc.Plane);
        return Math.Max(Radius(arc.From, arc.Center, first, second), Radius(arc.To, arc.Center, first, second));
    }

    /// <summary>The swept angle in radians, positive, full turns included.</summary>
    public static double Sweep(in Move arc)
    {
        var (first, second, _) = Axes(arc.Plane);
        var (startA, startB) = (arc.From[first] - arc.Center[first], arc.From[second] - arc.Center[second]);
        var (endA, endB) = (arc.To[first] - arc.Center[first], arc.To[second] - arc.Center[second]);
        var across = startA * endB - startB * endA;
        var sweep = Math.Atan2(arc.Clockwise ? -across : across, startA * endA + startB * endB);
        // Equal within rounding is a full circle, not a move of nothing.
        const double Rounding = 1e-9;
        while (sweep <= Rounding)
            sweep += 2 * Math.PI;
        return sweep + 2 * Math.PI * arc.FullTurns;
    }

    /// <summary>Length of the path in mm, the third axis included (NISTIR 6556 §4.3.6.1: the feed acts along the helix).</summary>
    public static double Length(in Move arc)
    {
        var third = Axes(arc.Plane).Third;
        return Length(arc, arc.To[third] - arc.From[third], arc.Sweep);
    }

    /// <summary>The same where it is known how far the third axis goes, mm, and the angle, radians.</summary>
    public static double Length(in Move arc, double across, double sweep)
    {
        var (first, second, _) = Axes(arc.Plane);
        var along = Radius(arc.From, arc.Center, first, second) * sweep;
        return across == 0 ? along : Math.Sqrt(along * along + across * across);
    }
}
