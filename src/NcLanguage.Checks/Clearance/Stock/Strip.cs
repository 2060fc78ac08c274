using System.Numerics;
using System.Runtime.CompilerServices;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Clearance;

/// <summary>All places, seen from above, within some distance of a straight path: a bar with round ends. What lies in it is asked row by row.</summary>
readonly struct Strip : ILevelPath
{
    readonly double _fromX, _fromY, _toX, _toY, _reach, _acrossX, _acrossY;

    // How far the sides go along X for each mm along Y; infinite, or not a number, where they lie level and bound no row.
    readonly double _perRow;

    /// <param name="from">Start of the path, mm; only X and Y count.</param>
    /// <param name="to">Its end, mm; may be the same place.</param>
    /// <param name="reach">Distance from the path, mm.</param>
    public Strip(in Point3 from, in Point3 to, double reach)
    {
        (_fromX, _fromY, _toX, _toY, _reach) = (from.X, from.Y, to.X, to.Y, reach);
        var length = double.Hypot(_toX - _fromX, _toY - _fromY);
        if (length > 0)
            (_acrossX, _acrossY) = (-(_toY - _fromY) / length * reach, (_toX - _fromX) / length * reach);
        _perRow = (_toX - _fromX) / (_toY - _fromY);
    }

    /// <summary>From where to where in X, mm, the strip reaches at a Y; empty (low above high) where it does not.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public (double Low, double High) Row(double y)
    {
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        AddEnd(_fromX, _fromY, y, ref low, ref high);
        AddEnd(_toX, _toY, y, ref low, ref high);
        // The strip is convex, so its row is as wide as the widest of the ends and the sides make it.
        if (double.IsFinite(_perRow))
        {
            AddSide(_fromX + _acrossX, _fromY + _acrossY, _toY + _acrossY, y, ref low, ref high);
            AddSide(_fromX - _acrossX, _fromY - _acrossY, _toY - _acrossY, y, ref low, ref high);
        }
        return (low, high);
    }

    void AddEnd(double endX, double endY, double y, ref double low, ref double high)
    {
        var square = _reach * _reach - (y - endY) * (y - endY);
        if (square < 0)
            return;
        var half = Math.Sqrt(square);
        low = double.MinNative(low, endX - half);
        high = double.MaxNative(high, endX + half);
    }

    void AddSide(double startX, double startY, double endY, double y, ref double low, ref double high)
    {
        if ((y - startY) * (y - endY) > 0)
            return;
        var x = startX + _perRow * (y - startY);
        low = double.MinNative(low, x);
        high = double.MaxNative(high, x);
    }

    public RowSpan Span(double y)
    {
        var (low, high) = Row(y);
        return new(low, high, 0, 0);
    }

    public (double X, double Y) Origin => (_fromX, _fromY);

    public Vector<float> SquaresTo(Vector<float> x, Vector<float> y)
    {
        var (travelX, travelY) = ((float)(_toX - _fromX), (float)(_toY - _fromY));
        var square = travelX * travelX + travelY * travelY;
        // A shorter way is a place: its square is nothing that single precision divides by.
        if (square > 1e-12f)
        {
            var t = Vector.MinNative(Vector.MaxNative((x * travelX + y * travelY) * (1 / square), Vector<float>.Zero), Vector<float>.One);
            (x, y) = (x - t * travelX, y - t * travelY);
        }
        return x * x + y * y;
    }

    /// <summary>Lowers all heights to at most <paramref name="level"/>.</summary>
    public static void Lower(Span<float> heights, float level, ref CutSum sum)
    {
        var (all, taken) = (new Vector<float>(level), new CellsTaken());
        for (; heights.Length >= Vector<float>.Count; heights = heights[Vector<float>.Count..])
        {
            var before = new Vector<float>(heights);
            var after = Vector.MinNative(before, all);
            after.CopyTo(heights);
            taken.Add(before - after);
        }
        taken.AddTo(ref sum);
        foreach (ref var height in heights)
            sum.Lower(ref height, level);
    }

    /// <summary>The first of the heights from one on, up to a last, that is greater than a level; the one behind the last where none is.</summary>
    public static int NextAbove(ReadOnlySpan<float> heights, int first, int last, float level)
    {
        // Most cuts go where others went, and pass by what they left.
        var all = new Vector<float>(level);
        while (first + Vector<float>.Count <= last + 1 && !Vector.GreaterThanAny(new Vector<float>(heights[first..]), all))
            first += Vector<float>.Count;
        while (first <= last && !(heights[first] > level))
            first++;
        return first;
    }

    /// <summary>The greatest of the heights; negative infinity where there is none.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float Highest(ReadOnlySpan<float> heights)
    {
        var best = new Vector<float>(float.NegativeInfinity);
        for (; heights.Length >= Vector<float>.Count; heights = heights[Vector<float>.Count..])
            best = Vector.MaxNative(best, new Vector<float>(heights));
        var highest = float.NegativeInfinity;
        for (var i = 0; i < Vector<float>.Count; i++)
            highest = Math.Max(highest, best[i]);
        foreach (var height in heights)
            highest = Math.Max(highest, height);
        return highest;
    }
}
