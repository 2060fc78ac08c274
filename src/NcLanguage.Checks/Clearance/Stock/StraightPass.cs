using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Clearance;

/// <summary>A straight move of an upright tool, as seen from places under it.</summary>
readonly struct StraightPass
{
    readonly Point3 _from, _travel;
    readonly double _square;
    readonly EndForm _end;

    /// <param name="from">Where the tip starts, mm.</param>
    /// <param name="to">Where it ends, mm.</param>
    /// <param name="end">Form of the tool's end.</param>
    public StraightPass(in Point3 from, in Point3 to, in EndForm end)
    {
        _from = from;
        _travel = to - from;
        _square = _travel.X * _travel.X + _travel.Y * _travel.Y;
        _end = end;
    }

    /// <summary>X values, mm, outside which the row at <paramref name="y"/> is nowhere under the tool; empty (low above high) where none is.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public (double Low, double High) Row(double y)
    {
        var radius = _end.Radius;
        var (start, end) = (0.0, 1.0);
        if (_travel.Y != 0)
        {
            var first = (y - radius - _from.Y) / _travel.Y;
            var second = (y + radius - _from.Y) / _travel.Y;
            start = Math.Max(0, Math.Min(first, second));
            end = Math.Min(1, Math.Max(first, second));
        }
        else if (Math.Abs(y - _from.Y) > radius)
        {
            end = -1;
        }
        if (start > end)
            return (double.PositiveInfinity, double.NegativeInfinity);
        double a = _from.X + _travel.X * start, b = _from.X + _travel.X * end;
        return (Math.Min(a, b) - radius, Math.Max(a, b) + radius);
    }

    /// <summary>The part of the move during which a place lies under the tool.</summary>
    [UnscopedRef]
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public bool Over(double x, double y, out CellPass pass)
    {
        var radius = _end.Radius;
        double dx = x - _from.X, dy = y - _from.Y;
        if (_square == 0)
        {
            var square = dx * dx + dy * dy;
            pass = new(in this, 0, 1, square, 0);
            return square <= radius * radius;
        }
        var beside = (dx * _travel.X + dy * _travel.Y) / _square;
        var across = dx * _travel.Y - dy * _travel.X;
        var offSquare = across * across / _square;
        var left = radius * radius - offSquare;
        if (left < 0)
        {
            pass = default;
            return false;
        }
        var half = Math.Sqrt(left / _square);
        pass = new(in this, Math.Max(0, beside - half), Math.Min(1, beside + half), offSquare, beside);
        return pass.Start <= pass.End;
    }

    /// <summary>The tool over one place, from the fraction <see cref="Start"/> of the move to <see cref="End"/>.</summary>
    /// <param name="move">The move.</param>
    /// <param name="start">Where the tool comes over the place.</param>
    /// <param name="end">Where it leaves it.</param>
    /// <param name="offSquare">Square of the place's distance from the line of travel, mm².</param>
    /// <param name="beside">The fraction of the move at which the axis is nearest to the place; may lie outside 0 to 1.</param>
    internal readonly ref struct CellPass(ref readonly StraightPass move, double start, double end, double offSquare, double beside)
    {
        readonly ref readonly StraightPass _move = ref move;

        public double Start { get; } = start;

        public double End { get; } = end;

        /// <summary>Z of the tip, mm.</summary>
        public double TipAt(double fraction) => _move._from.Z + _move._travel.Z * fraction;

        /// <summary>Lowest Z of the tip, mm.</summary>
        public double LowestTip => Math.Min(TipAt(Start), TipAt(End));

        /// <summary>Z of the tool's end over the place, mm; of a grown ball it may be below the tip.</summary>
        public double EndAt(double fraction)
        {
            var tip = TipAt(fraction);
            if (_move._end.IsFlat)
                return tip;
            var along = fraction - beside;
            return tip + _move._end.HeightAt(Math.Sqrt(offSquare + along * along * _move._square));
        }

        /// <summary>The fraction of the move at which the tool's end is lowest over the place.</summary>
        public double Lowest()
        {
            ref readonly var form = ref _move._end;
            var fall = _move._travel.Z;
            if (_move._square == 0 || form.IsFlat)
                return fall < 0 ? End : Start;
            if (fall == 0)
                return Math.Clamp(beside, Start, End);
            // The end over the place is a straight line plus a convex curve: lowest where their slopes cancel.
            var length = Math.Sqrt(_move._square);
            var slope = Math.Abs(fall) / length;
            var along = form.CornerRadius > 0 ? AlongCorner(form, slope) : AlongCone(form, slope);
            return Math.Clamp(beside - Math.CopySign(along, fall) / length, Start, End);
        }

        /// <summary>How far downhill of the nearest place a cone is lowest, mm.</summary>
        double AlongCone(in EndForm form, double slope)
        {
            if (form.Steepness <= slope)
                return double.MaxValue;
            var along = slope * Math.Sqrt(offSquare / ((form.Steepness - slope) * (form.Steepness + slope)));
            var flat = form.FlatRadius * form.FlatRadius;
            return offSquare + along * along >= flat ? along : Math.Sqrt(flat - offSquare);
        }

        /// <summary>The same for a round corner.</summary>
        double AlongCorner(in EndForm form, double slope)
        {
            var (flat, corner) = (form.FlatRadius, form.CornerRadius);
            if (flat == 0)
                return slope * Math.Sqrt(Math.Max(0, corner * corner - offSquare) / (1 + slope * slope));
            // Halving is enough: about the lowest place the curve is level, so that what is left of an error counts squared.
            const int Halvings = 10;
            var low = Math.Sqrt(Math.Max(0, flat * flat - offSquare));
            var high = Math.Sqrt(Math.Max(0, (flat + corner) * (flat + corner) - offSquare));
            for (var i = 0; i < Halvings; i++)
            {
                var along = (low + high) / 2;
                var off = Math.Sqrt(offSquare + along * along);
                var beyond = off - flat;
                if (beyond * along < slope * off * Math.Sqrt(Math.Max(0, corner * corner - beyond * beyond)))
                    low = along;
                else
                    high = along;
            }
            return (low + high) / 2;
        }

        /// <summary>The first fraction of the move at which the tool's end is below <paramref name="level"/>; it must get there.</summary>
        public double FirstBelow(double level)
        {
            if (EndAt(Start) < level)
                return Start;
            double above = Start, below = Lowest();
            for (var i = 0; i < 40; i++)
            {
                var middle = (above + below) / 2;
                if (EndAt(middle) < level)
                    below = middle;
                else
                    above = middle;
            }
            return below;
        }
    }
}
