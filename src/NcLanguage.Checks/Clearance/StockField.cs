using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Clearance;

/// <summary>
/// What still stands of the stock: one height for each cell of its footprint. Feeds lower the heights, rapids are asked whether
/// they meet what is left. All lengths in mm.
/// </summary>
/// <remarks>
/// Built so that a sound program raises no false alarm. A cut takes away every cell it touches even in part, each to the lowest
/// level the tool had over it (so along a slope never too little); a rapid meets a cell only when its middle is under the tool.
/// A rapid that grazes what stands by less than about one and a half cells sideways, or by less than <see cref="Tolerance"/> in
/// height, is therefore not found. Undercuts are not held: above a cell's height there is taken to be nothing.
/// </remarks>
public sealed class StockField
{
    /// <summary>The field is coarsened rather than have more cells than this.</summary>
    public const int MostCells = 4_000_000;

    /// <summary>A rapid meets only what stands higher than the tool's end by more than this, mm.</summary>
    public const double Tolerance = 0.02;

    private const double ChordsPerCell = 20;

    private readonly Box3 _stock;
    private readonly int _columns, _rows;
    private readonly double _width, _depth, _halfDiagonal;
    private readonly float[] _tops;

    /// <summary>The whole stock, uncut.</summary>
    /// <param name="stock">The stock, mm; finite, with some extent on every axis.</param>
    /// <param name="cellSize">Longest side of a cell, mm; cells grow where there would be more than <see cref="MostCells"/>.</param>
    public StockField(Box3 stock, double cellSize)
    {
        var size = stock.Max - stock.Min;
        if (!(size.X > 0 && size.Y > 0 && size.Z > 0 && double.IsFinite(size.Length)))
            throw new ArgumentException("The stock needs some extent on every axis.", nameof(stock));
        if (!(cellSize > 0))
            throw new ArgumentOutOfRangeException(nameof(cellSize), cellSize, "A cell needs some size.");
        _stock = stock;
        // Each count is rounded up, hence the loop rather than one division.
        while (Math.Ceiling(size.X / cellSize) * Math.Ceiling(size.Y / cellSize) > MostCells)
            cellSize = Math.Max(cellSize * 1.01, Math.Sqrt(size.X * size.Y / MostCells));
        _columns = (int)Math.Ceiling(size.X / cellSize);
        _rows = (int)Math.Ceiling(size.Y / cellSize);
        _width = size.X / _columns;
        _depth = size.Y / _rows;
        _halfDiagonal = double.Hypot(_width, _depth) / 2;
        _tops = new float[_columns * _rows];
        Array.Fill(_tops, (float)stock.Max.Z);
    }

    /// <summary>A cell size, mm, that shows what a tool of this diameter, mm, leaves: a tenth of it, from 0.05 to 1; 1 when no diameter is known.</summary>
    public static double CellSizeFor(double smallestDiameter) =>
        smallestDiameter > 0 ? Math.Clamp(smallestDiameter / 10, 0.05, 1) : 1;

    /// <summary>Longest side of a cell, mm.</summary>
    public double CellSize => Math.Max(_width, _depth);

    /// <summary>How many cells there are.</summary>
    public int Cells => _tops.Length;

    /// <summary>False once something was cut with a tool or along a path that is not known: from then on nobody can say what
    /// stands, and no rapid meets anything.</summary>
    public bool IsKnown { get; private set; } = true;

    /// <summary>Volume of what still stands, mm³.</summary>
    public double Volume
    {
        get
        {
            var height = 0.0;
            foreach (var top in _tops)
                height += Math.Max(0, top - _stock.Min.Z);
            return height * _width * _depth;
        }
    }

    /// <summary>Z of what stands at a place, mm; negative infinity where nothing does: beside the stock or cut through.</summary>
    public double TopAt(double x, double y)
    {
        if (!(x >= _stock.Min.X && x <= _stock.Max.X && y >= _stock.Min.Y && y <= _stock.Max.Y))
            return double.NegativeInfinity;
        var column = Math.Min((int)((x - _stock.Min.X) / _width), _columns - 1);
        var row = Math.Min((int)((y - _stock.Min.Y) / _depth), _rows - 1);
        return _tops[row * _columns + column];
    }

    /// <summary>Takes away what a straight feed cuts.</summary>
    /// <param name="from">Where the tip starts, mm.</param>
    /// <param name="to">Where it ends, mm.</param>
    /// <param name="radius">Radius of the tool, mm.</param>
    /// <param name="pointAngle">Included angle of a cone-shaped end, degrees; null for a flat end, which also stands for any other form
    /// (it takes away too much rather than too little).</param>
    public void Cut(Point3 from, Point3 to, double radius, double? pointAngle = null)
    {
        if (!IsKnownCut(from, to, radius))
        {
            IsKnown = false;
            return;
        }
        if (Math.Min(from.Z, to.Z) >= _stock.Max.Z)
            return;
        var pass = new StraightPass(from, to, pointAngle);
        // A cell touched in part counts as cut, to the lowest that any part of it is cut to.
        var reach = radius + _halfDiagonal;
        if (pass.Steepness == 0 && (from.Z == to.Z || (from.X == to.X && from.Y == to.Y)))
        {
            LowerTo(Math.Min(from.Z, to.Z), from, to, reach);
            return;
        }
        var lower = pass.Steepness * _halfDiagonal;
        var (firstRow, lastRow) = Range(Math.Min(from.Y, to.Y) - reach, Math.Max(from.Y, to.Y) + reach, _stock.Min.Y, _depth, _rows);
        for (var row = firstRow; row <= lastRow; row++)
        {
            var y = _stock.Min.Y + (row + 0.5) * _depth;
            var (low, high) = pass.Row(y, reach);
            var (first, last) = Range(low, high, _stock.Min.X, _width, _columns);
            for (var column = first; column <= last; column++)
            {
                if (!pass.Over(_stock.Min.X + (column + 0.5) * _width, y, reach, out var over))
                    continue;
                var end = Math.Max(over.EndAt(over.Lowest()) - lower, over.LowestTip);
                ref var top = ref _tops[row * _columns + column];
                if (end <= _stock.Min.Z)
                    top = float.NegativeInfinity;
                else if (end < top)
                    top = (float)end;
            }
        }
    }

    /// <summary>Takes away what a feed on an arc or helix cuts, by chords much finer than a cell; the arguments as for <see cref="Sweep.Arc"/>.</summary>
    public void CutArc(Point3 from, Point3 to, Point3 center, bool clockwise, int plane, int fullTurns, double radius, double? pointAngle = null)
    {
        var arc = new ArcPath(from, to, center, clockwise, plane, fullTurns);
        if (!arc.IsKnown)
        {
            IsKnown = false;
            return;
        }
        var chords = arc.Chords(Math.Max(Sweep.ChordTolerance, CellSize / ChordsPerCell));
        var last = from;
        for (var i = 1; i <= chords; i++)
        {
            var next = arc.At((double)i / chords);
            Cut(last, next, radius, pointAngle);
            last = next;
        }
    }

    /// <summary>Takes away a hole: a cylinder down to where its end, flat or a cone, has its tip.</summary>
    /// <param name="x">Axis of the hole, mm.</param>
    /// <param name="y">Axis of the hole, mm.</param>
    /// <param name="radius">Radius of the drill, mm.</param>
    /// <param name="bottom">Z of the tip at the bottom, mm.</param>
    /// <param name="pointAngle">Included angle of the point, degrees; null for a flat end.</param>
    public void Drill(double x, double y, double radius, double bottom, double? pointAngle = null) =>
        Cut(new(x, y, bottom), new(x, y, bottom), radius, pointAngle);

    /// <summary>Does a tool on a straight rapid meet what still stands?</summary>
    /// <param name="from">Where the tip starts, mm.</param>
    /// <param name="to">Where it ends, mm.</param>
    /// <param name="radius">Radius of the tool, mm.</param>
    /// <param name="where">Where the tip is when the tool first meets it, mm; <see cref="Point3.Unknown"/> when it does not.</param>
    /// <param name="depth">The most that anything stands higher than the tool's end over it, mm; 0 when they do not meet.</param>
    /// <param name="pointAngle">As for <see cref="Cut"/>; give the same that the tool cut with, or its own hole will seem too small for it.</param>
    /// <returns>False too when the move, the tool or what stands is not known.</returns>
    public bool Meets(Point3 from, Point3 to, double radius, out Point3 where, out double depth, double? pointAngle = null)
    {
        where = Point3.Unknown;
        depth = 0;
        if (!IsKnown || !IsKnownCut(from, to, radius) || Math.Min(from.Z, to.Z) >= _stock.Max.Z - Tolerance)
            return false;
        // Most rapids go where nothing stands any more: that is seen at a glance.
        if (HighestUnder(from, to, radius) - Math.Min(from.Z, to.Z) <= Tolerance)
            return false;
        var pass = new StraightPass(from, to, pointAngle);
        var met = double.PositiveInfinity;
        var (firstRow, lastRow) = Range(Math.Min(from.Y, to.Y) - radius, Math.Max(from.Y, to.Y) + radius, _stock.Min.Y, _depth, _rows);
        for (var row = firstRow; row <= lastRow; row++)
        {
            var y = _stock.Min.Y + (row + 0.5) * _depth;
            var (low, high) = pass.Row(y, radius);
            var (first, last) = Range(low, high, _stock.Min.X, _width, _columns);
            for (var column = first; column <= last; column++)
            {
                if (!pass.Over(_stock.Min.X + (column + 0.5) * _width, y, radius, out var over))
                    continue;
                double top = _tops[row * _columns + column];
                var above = top - over.EndAt(over.Lowest());
                if (above <= Tolerance)
                    continue;
                depth = Math.Max(depth, above);
                if (over.Start < met)
                    met = Math.Min(met, over.FirstBelow(top - Tolerance));
            }
        }
        if (double.IsInfinity(met))
            return false;
        where = Point3.Lerp(from, to, met);
        return true;
    }

    /// <summary>A level or upright cut with a flat end: the same as cell by cell, but whole rows at a time.</summary>
    private void LowerTo(double level, Point3 from, Point3 to, double reach)
    {
        var top = level <= _stock.Min.Z ? float.NegativeInfinity : (float)level;
        var strip = new Strip(from, to, reach);
        var (firstRow, lastRow) = Range(Math.Min(from.Y, to.Y) - reach, Math.Max(from.Y, to.Y) + reach, _stock.Min.Y, _depth, _rows);
        for (var row = firstRow; row <= lastRow; row++)
            Strip.Lower(RowUnder(strip, row), top);
    }

    /// <summary>The highest that stands under a tool on its way; never too low.</summary>
    private double HighestUnder(Point3 from, Point3 to, double radius)
    {
        var strip = new Strip(from, to, radius);
        var highest = float.NegativeInfinity;
        var (firstRow, lastRow) = Range(Math.Min(from.Y, to.Y) - radius, Math.Max(from.Y, to.Y) + radius, _stock.Min.Y, _depth, _rows);
        for (var row = firstRow; row <= lastRow; row++)
            highest = Math.Max(highest, Strip.Highest(RowUnder(strip, row)));
        return highest;
    }

    /// <summary>The cells of a row whose middles lie in a strip.</summary>
    private Span<float> RowUnder(in Strip strip, int row)
    {
        const double Rounding = 1e-9;
        var (low, high) = strip.Row(_stock.Min.Y + (row + 0.5) * _depth);
        var first = Math.Clamp(Math.Ceiling((low - _stock.Min.X) / _width - 0.5 - Rounding), 0, _columns);
        var last = Math.Clamp(Math.Floor((high - _stock.Min.X) / _width - 0.5 + Rounding), -1, _columns - 1);
        return first > last ? [] : _tops.AsSpan(row * _columns + (int)first, (int)last - (int)first + 1);
    }

    private static bool IsKnownCut(Point3 from, Point3 to, double radius) =>
        radius > 0 && double.IsFinite(radius) && double.IsFinite((from - to).Length);

    /// <summary>The cells whose middles may lie between two places; none is missed, and the last is below the first when there are none.</summary>
    private static (int First, int Last) Range(double low, double high, double origin, double size, int count)
    {
        if (low > high)
            return (0, -1);
        var first = Math.Clamp((low - origin) / size - 1, 0, count);
        var last = Math.Clamp((high - origin) / size, -1, count - 1);
        return ((int)first, (int)last);
    }
}
