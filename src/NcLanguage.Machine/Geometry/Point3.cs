using System.Runtime.CompilerServices;

namespace NcLanguage.Machine.Geometry;

/// <summary>A place or a vector in millimetres. A coordinate that is not known is <see cref="double.NaN"/>.</summary>
public readonly record struct Point3(double X, double Y, double Z)
{
    /// <summary>A place none of whose coordinates is known.</summary>
    public static Point3 Unknown => new(double.NaN, double.NaN, double.NaN);

    /// <summary>True when all three coordinates are known.</summary>
    public bool IsKnown
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => !double.IsNaN(X + Y + Z);
    }

    /// <summary>True when at least one coordinate is known.</summary>
    public bool IsKnownAlongAny => !(double.IsNaN(X) && double.IsNaN(Y) && double.IsNaN(Z));

    /// <summary>The coordinate of an axis: 0 is X, 1 is Y, 2 is Z.</summary>
    public double this[int axis]
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => axis == 0 ? X : axis == 1 ? Y : axis == 2 ? Z : throw new ArgumentOutOfRangeException(nameof(axis));
    }

    /// <summary>The same place with one axis (0, 1 or 2) put at <paramref name="value"/> mm.</summary>
    public Point3 With(int axis, double value) => axis switch
    {
        0 => this with { X = value },
        1 => this with { Y = value },
        2 => this with { Z = value },
        _ => throw new ArgumentOutOfRangeException(nameof(axis)),
    };

    /// <summary>Length of the vector in mm.</summary>
    public double Length => Math.Sqrt(X * X + Y * Y + Z * Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Point3 operator +(Point3 a, Point3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Point3 operator -(Point3 a, Point3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Point3 operator *(Point3 a, double factor) => new(a.X * factor, a.Y * factor, a.Z * factor);

    public static Point3 Add(Point3 left, Point3 right) => left + right;

    public static Point3 Subtract(Point3 left, Point3 right) => left - right;

    public static Point3 Multiply(Point3 left, double right) => left * right;

    /// <summary>The place at fraction <paramref name="t"/> (0 to 1) of the way from <paramref name="a"/> to <paramref name="b"/>.</summary>
    public static Point3 Lerp(Point3 a, Point3 b, double t) =>
        new(a.X + (b.X - a.X) * t, a.Y + (b.Y - a.Y) * t, a.Z + (b.Z - a.Z) * t);

    /// <summary>Distance in mm between two places.</summary>
    public static double Distance(Point3 a, Point3 b) => (b - a).Length;
}
