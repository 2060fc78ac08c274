using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Clearance;

public sealed partial class StockField
{
    /// <summary>A cell size, mm, that shows what a tool of this diameter, mm, leaves: a tenth of it, from 0.05 to 1; 1 when no diameter is known.</summary>
    public static double CellSizeFor(double smallestDiameter) =>
        smallestDiameter > 0 ? Math.Clamp(smallestDiameter / 10, 0.05, 1) : 1;

    /// <summary>Does a tool on a straight rapid meet what still stands? Asked at the middles of the cells.</summary>
    /// <param name="from">Where the tip starts, mm.</param>
    /// <param name="to">Where it ends, mm.</param>
    /// <param name="end">Form of the tool's end; give the same that it cut with, or its own hole will seem too small for it.</param>
    /// <param name="where">Where the tip is when the tool first meets it, mm; <see cref="Point3.Unknown"/> when it does not.</param>
    /// <param name="depth">The most that anything stands higher than the tool's end over it, mm, never more than the stock is thick; 0 when they do not meet.</param>
    /// <returns>False too when the move, the tool or what stands is not known.</returns>
    public bool Meets(in Point3 from, in Point3 to, in EndForm end, out Point3 where, out double depth)
    {
        where = Point3.Unknown;
        depth = 0;
        if (!MayMeet(from, to, end.Radius))
            return false;
        var pass = new StraightPass(from, to, end);
        var highest = Math.Max(_floor, Math.Min(from.Z, to.Z) - end.Drop + Tolerance);
        var met = double.PositiveInfinity;
        var (firstRow, lastRow) = RowsBetween(Math.Min(from.Y, to.Y) - end.Radius, Math.Max(from.Y, to.Y) + end.Radius);
        for (var row = firstRow; row <= lastRow; row++)
        {
            var y = _stock.Min.Y + (row + 0.5) * _depth;
            var (low, high) = pass.Row(y);
            var (first, last) = ColumnsBetween(low, high);
            for (var column = first; column <= last; column++)
            {
                var top = _tops[row * _columns + column];
                if (top <= highest || !pass.Over(_stock.Min.X + (column + 0.5) * _width, y, out var over))
                    continue;
                var lowest = over.EndAt(over.Lowest());
                if (top - lowest <= Tolerance)
                    continue;
                // Nothing stands below the stock's underside, however low the tool goes.
                depth = Math.Max(depth, top - Math.Max(lowest, _floor));
                if (over.Start < met)
                    met = Math.Min(met, over.FirstBelow(top - Tolerance));
            }
        }
        if (double.IsInfinity(met))
            return false;
        where = Point3.Lerp(from, to, met);
        return true;
    }

    /// <summary>Whether a cut of a run comes anywhere near what still stands; the arguments as for the straight move.</summary>
    /// <param name="arc">Its path, where it is an arc.</param>
    internal bool IsNear(in StockCut cut, in ArcPath arc, in EndForm end, double within)
    {
        // Most cuts begin over a floor that was cut before: it is seen under the tip.
        if (TopAt(cut.From.X, cut.From.Y) > cut.From.Z - within)
            return true;
        if (cut.Arc < 0)
            return IsNear(cut.From, cut.To, end, within);
        if (!IsKnown || !arc.IsKnown)
            return true;
        // The chords of an arc may lie aside by a part of what counts as near.
        var aside = within / 10;
        var form = Near(end, within + aside);
        if (StandsBeside(arc.From - new Point3(0, 0, within + aside), form))
            return true;
        // Most that is not near is seen at a glance, and more quickly than chord by chord.
        if (IsFollowedExactly(arc, aside) && !MayMeet(arc, within + aside, form.Radius))
            return false;
        foreach (var (from, to) in arc.ChordsWithin(aside))
            if (IsNear(from, to, end, within + aside))
                return true;
        return false;
    }

    /// <summary>Whether a tool on a straight move comes anywhere near what still stands.</summary>
    /// <param name="within">How near counts, mm: sideways, to which the cells' own size is added, and in height.</param>
    /// <returns>True too when the move, the tool or what stands is not known.</returns>
    public bool IsNear(Point3 from, Point3 to, in EndForm end, double within)
    {
        if (!IsKnown || !IsKnownCut(from, to, end.Radius))
            return true;
        var form = Near(end, within);
        var lower = new Point3(0, 0, within);
        (from, to) = (from - lower, to - lower);
        if (TopAt(from.X, from.Y) > from.Z || TopAt(to.X, to.Y) > to.Z)
            return true;
        // A cut along a wall that was cut before is seen to be near it right beside the tip.
        if (StandsBeside(from, form) || StandsBeside(to, form))
            return true;
        if (!MayMeet(from, to, form.Radius))
            return false;
        var pass = new StraightPass(from, to, form);
        var highest = Math.Max(_floor, Math.Min(from.Z, to.Z) - form.Drop);
        var (firstRow, lastRow) = RowsBetween(Math.Min(from.Y, to.Y) - form.Radius, Math.Max(from.Y, to.Y) + form.Radius);
        for (var row = firstRow; row <= lastRow; row++)
        {
            var y = _stock.Min.Y + (row + 0.5) * _depth;
            var (low, high) = pass.Row(y);
            var (first, last) = ColumnsBetween(low, high);
            for (var column = first; column <= last; column++)
            {
                var top = _tops[row * _columns + column];
                if (top > highest && pass.Over(_stock.Min.X + (column + 0.5) * _width, y, out var over) && top > over.EndAt(over.Lowest()))
                    return true;
            }
        }
        return false;
    }

    /// <summary>The end that holds all that is near a tool's. What is cut may be cut too far by a diagonal of a cell.</summary>
    EndForm Near(in EndForm end, double within) => end.Grown(within + 2 * _growth);

    /// <summary>Whether one of four cells just inside a tool's rim stands higher than its end does anywhere. Their middles lie within the rim, wherever in them it is asked.</summary>
    bool StandsBeside(in Point3 tip, in EndForm form)
    {
        var off = form.Radius - _halfDiagonal;
        var level = tip.Z + form.HeightAt(form.Radius);
        return off > 0
            && (TopAt(tip.X - off, tip.Y) > level || TopAt(tip.X + off, tip.Y) > level || TopAt(tip.X, tip.Y - off) > level || TopAt(tip.X, tip.Y + off) > level);
    }

    /// <summary>False when it is seen at a glance that a move meets nothing: most go where nothing stands any more.</summary>
    bool MayMeet(in Point3 from, in Point3 to, double radius)
    {
        var low = Math.Min(from.Z, to.Z);
        if (!IsKnown || !IsKnownCut(from, to, radius) || low >= _stock.Max.Z - Tolerance)
            return false;
        return StandsUnder(new Strip(from, to, radius), Math.Min(from.Y, to.Y) - radius, Math.Max(from.Y, to.Y) + radius, low);
    }

    /// <summary>The same for a level arc that is lowered by some mm.</summary>
    bool MayMeet(in ArcPath arc, double lower, double radius)
    {
        var strip = new ArcStrip(arc.From, arc.To, arc.Center, arc.Angle, radius);
        return StandsUnder(strip, strip.Low.Y, strip.High.Y, arc.From.Z - lower);
    }

    /// <summary>Whether anything in the rows from a Y to another stands higher than a tip under a path; cells just outside it are looked at too.</summary>
    bool StandsUnder<TPath>(TPath path, double low, double high, double tip)
        where TPath : struct, ILevelPath
    {
        var highest = (float)Math.Max(_floor, tip + Tolerance);
        var (firstRow, lastRow) = RowsBetween(low, high);
        for (var row = firstRow; row <= lastRow; row++)
        {
            var (before, rest) = ColumnsOf(path.Span(_stock.Min.Y + (row + 0.5) * _depth));
            var tops = _tops.AsSpan(row * _columns, _columns);
            if (Strip.NextAbove(tops, before.First, before.Last, highest) <= before.Last || Strip.NextAbove(tops, rest.First, rest.Last, highest) <= rest.Last)
                return true;
        }
        return false;
    }
}
