using System.Numerics;
using System.Runtime.CompilerServices;

namespace NcLanguage.Checks.Clearance;

/// <summary>A path at one level with all places, seen from above, within some distance of it.</summary>
interface ILevelPath
{
    /// <summary>The place that others are counted from where they are looked at some at once, in single precision, mm.</summary>
    (double X, double Y) Origin { get; }

    /// <summary>Where in X it reaches at a Y, mm.</summary>
    RowSpan Span(double y);

    /// <summary>Squares of places' distances from the path, mm².</summary>
    /// <param name="x">The places along X, counted from the origin, mm.</param>
    /// <param name="y">The same along Y.</param>
    Vector<float> SquaresTo(Vector<float> x, Vector<float> y);
}

/// <summary>From where to where a row reaches, mm, and the gap inside it; empty where the low end is not below the high one.</summary>
readonly record struct RowSpan(double Low, double High, double GapLow, double GapHigh);

/// <summary>All places within some distance of one.</summary>
readonly struct Spot(double x, double y, double reach) : ILevelPath
{
    public (double X, double Y) Origin => (x, y);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public RowSpan Span(double row)
    {
        var square = reach * reach - (row - y) * (row - y);
        if (square < 0)
            return new(1, 0, 0, 0);
        var half = Math.Sqrt(square);
        return new(x - half, x + half, 0, 0);
    }

    public Vector<float> SquaresTo(Vector<float> x, Vector<float> y) => x * x + y * y;
}

/// <summary>What a cut takes from the cells of a field: heights added up, and the largest of them, mm.</summary>
struct CutSum
{
    public double Height;
    public float Deepest;

    /// <summary>Lowers a height to at most <paramref name="level"/>.</summary>
    public void Lower(ref float height, float level)
    {
        var taken = height - level;
        if (!(taken > 0))
            return;
        height = level;
        Height += taken;
        Deepest = Math.Max(Deepest, taken);
    }
}
