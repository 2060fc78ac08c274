using System.Globalization;

namespace NcLanguage.Control.Compensation;

/// <summary>A place or a vector in the XY plane, mm; NaN where not known.</summary>
public readonly record struct Point2(double X, double Y)
{
    public bool IsKnown => !double.IsNaN(X + Y);

    public double Length => Math.Sqrt(X * X + Y * Y);

    /// <summary>The same direction, 1 long; NaN for a vector without a length.</summary>
    public Point2 Unit => this * (1 / Length);

    /// <summary>Turned by a quarter turn to the left.</summary>
    public Point2 Left => new(-Y, X);

    /// <summary>"X, Y"; what a record prints by itself would go on without end through <see cref="Left"/>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{X}, {Y}");

    public static double Dot(Point2 a, Point2 b) => a.X * b.X + a.Y * b.Y;

    /// <summary>Positive where <paramref name="b"/> points to the left of <paramref name="a"/>.</summary>
    public static double Cross(Point2 a, Point2 b) => a.X * b.Y - a.Y * b.X;

    public static Point2 operator +(Point2 a, Point2 b) => new(a.X + b.X, a.Y + b.Y);

    public static Point2 operator -(Point2 a, Point2 b) => new(a.X - b.X, a.Y - b.Y);

    public static Point2 operator *(Point2 a, double factor) => new(a.X * factor, a.Y * factor);

    public static Point2 Add(Point2 left, Point2 right) => left + right;

    public static Point2 Subtract(Point2 left, Point2 right) => left - right;

    public static Point2 Multiply(Point2 left, double right) => left * right;
}
