using System.Runtime.CompilerServices;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Clearance;

/// <summary>Which cells of a stock's footprint a cut lowers.</summary>
public enum CellRule
{
    /// <summary>Every cell that it touches even in part, to the lowest level over any part of it: what stands is never said to be more than it is.
    /// For findings that must raise no false alarm.</summary>
    Touched,

    /// <summary>Every cell whose middle it goes over, to the level over the middle: as exact as the cells are small. For measuring and drawing.</summary>
    Middle,
}

/// <summary>What one cut takes away.</summary>
/// <param name="Removed">Volume, mm³.</param>
/// <param name="Deepest">The largest height taken away anywhere along it, mm: how deep the tool goes along its axis into what stood.</param>
public readonly record struct CutTally(double Removed, double Deepest);

/// <summary>The heights of a field at some time.</summary>
sealed record StockPicture(float[] Tops, bool IsKnown);

/// <summary>
/// What still stands of the stock: one height for each cell of its footprint. Feeds lower the heights, rapids are asked whether
/// they meet what is left. All lengths in mm.
/// </summary>
/// <remarks>
/// Under <see cref="CellRule.Touched"/> a rapid that grazes what stands by less than about one and a half cells sideways, or by less than
/// <see cref="Tolerance"/> in height, is not found. Undercuts are not held: above a cell's height there is taken to be nothing.
/// </remarks>
public sealed partial class StockField
{
    /// <summary>The field is coarsened rather than have more cells than this.</summary>
    public const int MostCells = 4_000_000;

    /// <summary>A rapid meets only what stands higher than the tool's end by more than this, mm.</summary>
    public const double Tolerance = 0.02;

    const double ChordsPerCell = 8;

    /// <summary>Level arcs up to this radius, mm, are cut exactly: beyond it single precision leaves more than a thousandth of a millimetre.</summary>
    const double GreatestExact = 10_000;

    readonly Box3 _stock;
    readonly int _columns, _rows;
    readonly double _width, _depth, _columnsPerMm, _rowsPerMm, _halfDiagonal, _growth;
    readonly float _floor;
    readonly float[] _tops;

    /// <summary>The whole stock, uncut.</summary>
    /// <param name="stock">The stock, mm; finite, with some extent on every axis.</param>
    /// <param name="cellSize">Longest side of a cell, mm; cells grow where there would be more than <see cref="MostCells"/>.</param>
    /// <param name="rule">Which cells a cut lowers.</param>
    public StockField(Box3 stock, double cellSize, CellRule rule = CellRule.Touched)
    {
        var size = stock.Max - stock.Min;
        if (!(size.X > 0 && size.Y > 0 && size.Z > 0 && double.IsFinite(size.Length)))
            throw new ArgumentException("The stock needs some extent on every axis.", nameof(stock));
        if (!(cellSize > 0))
            throw new ArgumentOutOfRangeException(nameof(cellSize), cellSize, "A cell needs some size.");
        _stock = stock;
        // Each count is rounded up, hence the loop rather than one division.
        while (CellsAlong(size.X, cellSize) * Math.Ceiling(size.Y / cellSize) > MostCells)
            cellSize = Math.Max(cellSize * 1.01, Math.Sqrt(size.X * size.Y / MostCells));
        _columns = (int)CellsAlong(size.X, cellSize);
        _rows = (int)Math.Ceiling(size.Y / cellSize);
        _width = size.X / _columns;
        _depth = size.Y / _rows;
        (_columnsPerMm, _rowsPerMm) = (1 / _width, 1 / _depth);
        Rule = rule;
        _halfDiagonal = double.Hypot(_width, _depth) / 2;
        _growth = rule == CellRule.Touched ? _halfDiagonal : 0;
        _floor = (float)stock.Min.Z;
        _tops = new float[_columns * _rows];
        Array.Fill(_tops, (float)stock.Max.Z);
    }

    public CellRule Rule { get; }

    /// <summary>The stock as it was before the first cut, mm.</summary>
    public Box3 Stock => _stock;

    /// <summary>Cells along X.</summary>
    public int Columns => _columns;

    /// <summary>Cells along Y.</summary>
    public int Rows => _rows;

    /// <summary>Side of a cell along X, mm.</summary>
    public double CellWidth => _width;

    /// <summary>Side of a cell along Y, mm.</summary>
    public double CellDepth => _depth;

    /// <summary>Longest side of a cell, mm.</summary>
    public double CellSize => Math.Max(_width, _depth);

    /// <summary>How many cells there are.</summary>
    public int Cells => _tops.Length;

    /// <summary>Z of what stands in each cell, mm, row by row from the least Y, each row from the least X. At <see cref="Floor"/> nothing stands.</summary>
    public ReadOnlySpan<float> Heights => _tops;

    /// <summary>Z of the stock's underside, mm: the height of a cell that is cut through.</summary>
    public float Floor => _floor;

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
                height += top - _floor;
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
        var top = _tops[row * _columns + column];
        return top > _floor ? top : double.NegativeInfinity;
    }

    /// <summary>Takes away what a straight feed cuts; a drill's way down too.</summary>
    /// <param name="from">Where the tip starts, mm.</param>
    /// <param name="to">Where it ends, mm.</param>
    /// <param name="end">Form of the tool's end.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public CutTally Cut(in Point3 from, in Point3 to, in EndForm end)
    {
        if (Math.Min(from.Z, to.Z) >= _stock.Max.Z)
            return default;
        if (!IsKnownCut(from, to, end.Radius))
        {
            IsKnown = false;
            return default;
        }
        var form = end.Grown(_growth);
        var sum = new CutSum();
        var low = new Point3(Math.Min(from.X, to.X) - form.Radius, Math.Min(from.Y, to.Y) - form.Radius, Math.Min(from.Z, to.Z));
        var isUpright = from.X == to.X && from.Y == to.Y;
        if (form.IsFlat && (from.Z == to.Z || isUpright))
        {
            LowerRows(new Strip(from, to, form.Radius), low.Z, low.Y, Math.Max(from.Y, to.Y) + form.Radius, ref sum);
        }
        else if (isUpright)
        {
            LowerAt(new Spot(from.X, from.Y, form.Radius), low.Z, form, low.Y, from.Y + form.Radius, ref sum);
        }
        else if (from.Z == to.Z)
        {
            LowerAt(new Strip(from, to, form.Radius), low.Z, form, low.Y, Math.Max(from.Y, to.Y) + form.Radius, ref sum);
        }
        else if (SlopeProfile.Knows(from, to, form))
        {
            LowerSlope(from, to, form, low.Y, Math.Max(from.Y, to.Y) + form.Radius, ref sum);
        }
        else
        {
            LowerSlope(new StraightPass(from, to, form), low.Z, low.Y, Math.Max(from.Y, to.Y) + form.Radius, ref sum);
        }
        return Tally(sum);
    }

    /// <summary>Takes away what a feed on an arc or helix cuts: exactly on a level arc in XY that is not of a huge radius, else by chords much finer than a cell; the path's arguments
    /// as for <see cref="Sweep.Arc(Point3, Point3, Point3, bool, int, int, ToolShape, ReadOnlySpan{Machine.Setups.Obstacle}, double)"/>.</summary>
    /// <returns>On a helix the deepest is that of one chord: what the tool has before it on its way, however many turns it goes down.</returns>
    public CutTally CutArc(in Point3 from, in Point3 to, in Point3 center, bool clockwise, int plane, int fullTurns, in EndForm end)
    {
        return CutArc(new ArcPath(from, to, center, clockwise, plane, fullTurns), end);
    }

    /// <summary>Takes away what a cut of a run takes.</summary>
    /// <param name="path">Its path, where it is an arc.</param>
    internal CutTally Cut(in StockCut cut, in ArcPath path, in EndForm end) => cut.Arc < 0 ? Cut(cut.From, cut.To, end) : CutArc(path, end);

    CutTally CutArc(in ArcPath arc, in EndForm end)
    {
        if (arc.Low.Z >= _stock.Max.Z)
            return default;
        if (!arc.IsKnown || !(end.Radius > 0))
        {
            IsKnown = false;
            return default;
        }
        var within = Math.Max(Sweep.ChordTolerance, CellSize / ChordsPerCell);
        if (IsFollowedExactly(arc, within))
        {
            // The chords of a helix before it leave slivers beside the arc, as high as the helix is deep: what is narrower than they may be counts as volume, and not as a depth of cut.
            var sum = new CutSum();
            var measures = Rule == CellRule.Middle && end.FlatRadius > within;
            if (measures)
                LowerLevel(arc, end.Grown(-within), ref sum);
            var deep = sum.Deepest;
            LowerLevel(arc, end.Grown(_growth), ref sum);
            return Tally(measures ? sum with { Deepest = deep } : sum);
        }
        var (removed, deepest) = (0.0, 0.0);
        foreach (var (from, to) in arc.ChordsWithin(within))
        {
            var cut = Cut(from, to, end);
            (removed, deepest) = (removed + cut.Removed, Math.Max(deepest, cut.Deepest));
        }
        return new CutTally(removed, deepest);
    }

    /// <summary>Whether an arc is taken as it is, and not by chords.</summary>
    static bool IsFollowedExactly(in ArcPath arc, double within) => arc.IsLevel && arc.Widening <= within && arc.Radius <= GreatestExact;

    void LowerLevel(in ArcPath arc, in EndForm form, ref CutSum sum)
    {
        var strip = new ArcStrip(arc.From, arc.To, arc.Center, arc.Angle, form.Radius);
        LowerAt(strip, arc.From.Z, form, strip.Low.Y, strip.High.Y, ref sum);
    }

    /// <summary>What stands now, to come back to.</summary>
    internal StockPicture Picture() => new((float[])_tops.Clone(), IsKnown);

    /// <summary>Comes back to what stood, in a field of the same cells.</summary>
    internal void Restore(StockPicture stock)
    {
        stock.Tops.CopyTo(_tops, 0);
        IsKnown = stock.IsKnown;
    }

    /// <summary>From now on what stands is not known.</summary>
    internal void Forget() => IsKnown = false;

    CutTally Tally(in CutSum sum) => new(sum.Height * _width * _depth, sum.Deepest);

    /// <summary>The height that a cell keeps under a tool at a level.</summary>
    float Kept(double level) => level <= _stock.Min.Z ? _floor : (float)level;

    /// <summary>A flat end at one level: whole rows at a time.</summary>
    void LowerRows(in Strip strip, double level, double low, double high, ref CutSum sum)
    {
        var kept = Kept(level);
        var (firstRow, lastRow) = RowsBetween(low, high);
        for (var row = firstRow; row <= lastRow; row++)
            Strip.Lower(RowUnder(strip, row), kept, ref sum);
    }

    /// <summary>Any end at one level: the height over a cell hangs on its distance from the path alone. Some cells of a row at a time.</summary>
    void LowerAt<TPath>(TPath path, double level, in EndForm form, double low, double high, ref CutSum sum)
        where TPath : struct, ILevelPath
    {
        var (end, taken, origin) = (new EndProfile<TPath>(path, form, level, _floor), new CellsTaken(), path.Origin);
        var x = _stock.Min.X + 0.5 * _width - origin.X;
        var (firstRow, lastRow) = RowsBetween(low, high);
        for (var row = firstRow; row <= lastRow; row++)
        {
            var y = _stock.Min.Y + (row + 0.5) * _depth;
            var (before, rest) = ColumnsOf(path.Span(y));
            var tops = _tops.AsSpan(row * _columns, _columns);
            CellRow.Lower(ref end, tops, before.First, before.Last, x, _width, y - origin.Y, ref taken);
            CellRow.Lower(ref end, tops, rest.First, rest.Last, x, _width, y - origin.Y, ref taken);
        }
        taken.AddTo(ref sum);
    }

    /// <summary>A flat or a ball end on a slope: some cells of a row at a time.</summary>
    void LowerSlope(in Point3 from, in Point3 to, in EndForm form, double low, double high, ref CutSum sum)
    {
        var (pass, end, taken) = (new StraightPass(from, to, form), new SlopeProfile(from, to, form, _floor), new CellsTaken());
        var (firstRow, lastRow) = RowsBetween(low, high);
        for (var row = firstRow; row <= lastRow; row++)
        {
            var y = _stock.Min.Y + (row + 0.5) * _depth;
            var span = pass.Row(y);
            var (first, last) = ColumnsBetween(span.Low, span.High);
            var tops = _tops.AsSpan(row * _columns, _columns);
            CellRow.Lower(ref end, tops, first, last, _stock.Min.X + 0.5 * _width - from.X, _width, y - from.Y, ref taken);
        }
        taken.AddTo(ref sum);
    }

    /// <summary>Any end on a slope.</summary>
    void LowerSlope(in StraightPass pass, double lowestTip, double low, double high, ref CutSum sum)
    {
        var lowest = Kept(lowestTip);
        var (firstRow, lastRow) = RowsBetween(low, high);
        for (var row = firstRow; row <= lastRow; row++)
        {
            var y = _stock.Min.Y + (row + 0.5) * _depth;
            var span = pass.Row(y);
            var (first, last) = ColumnsBetween(span.Low, span.High);
            var tops = _tops.AsSpan(row * _columns, _columns);
            for (var column = Strip.NextAbove(tops, first, last, lowest); column <= last; column = Strip.NextAbove(tops, column + 1, last, lowest))
                if (pass.Over(_stock.Min.X + (column + 0.5) * _width, y, out var over))
                    sum.Lower(ref tops[column], Kept(Math.Max(over.EndAt(over.Lowest()), over.LowestTip)));
        }
    }

    /// <summary>The cells of a row whose middles lie in a strip.</summary>
    Span<float> RowUnder(in Strip strip, int row)
    {
        const double Rounding = 1e-9;
        var (low, high) = strip.Row(_stock.Min.Y + (row + 0.5) * _depth);
        var first = Math.Clamp(Math.Ceiling((low - _stock.Min.X) / _width - 0.5 - Rounding), 0, _columns);
        var last = Math.Clamp(Math.Floor((high - _stock.Min.X) / _width - 0.5 + Rounding), -1, _columns - 1);
        return first > last ? [] : _tops.AsSpan(row * _columns + (int)first, (int)last - (int)first + 1);
    }

    static double CellsAlong(double length, double cellSize) => Math.Max(CellRow.LeastCells, Math.Ceiling(length / cellSize));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static bool IsKnownCut(in Point3 from, in Point3 to, double radius) =>
        radius > 0 && double.IsFinite(radius) && double.IsFinite((from - to).Length);

    /// <summary>The columns whose middles may lie in a span: those before its gap, none where it has no gap, and the rest.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    ((int First, int Last) BeforeGap, (int First, int Last) BehindGap) ColumnsOf(in RowSpan span)
    {
        var all = ColumnsBetween(span.Low, span.High);
        if (!(span.GapLow < span.GapHigh))
            return ((0, -1), all);
        var (before, behind) = (ColumnsBetween(span.Low, span.GapLow), ColumnsBetween(span.GapHigh, span.High));
        return (before, (Math.Max(before.Last + 1, behind.First), all.Last));
    }

    /// <summary>The columns whose middles may lie between two places; none is missed, and the last is below the first when there are none.</summary>
    (int First, int Last) ColumnsBetween(double low, double high) => Between(low - _stock.Min.X, high - _stock.Min.X, _columnsPerMm, _columns);

    /// <summary>The rows whose middles may lie between two places.</summary>
    (int First, int Last) RowsBetween(double low, double high) => Between(low - _stock.Min.Y, high - _stock.Min.Y, _rowsPerMm, _rows);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static (int First, int Last) Between(double low, double high, double perMm, int count)
    {
        if (low > high)
            return (0, -1);
        var first = Math.Clamp(low * perMm - 1, 0, count);
        var last = Math.Clamp(high * perMm, -1, count - 1);
        return ((int)first, (int)last);
    }
}
