using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Clearance;

/// <summary>A straight move of an upright tool with a flat or a cone-shaped end, as seen from places under it.</summary>
internal readonly struct StraightPass
{
    private readonly Point3 _from, _travel;
    private readonly double _square;

    /// <param name="from">Where the tip starts, mm.</param>
    /// <param name="to">Where it ends, mm.</param>
    /// <param name="pointAngle">Included angle of the end's cone, degrees; null or 180 for a flat end.</param>
    public StraightPass(Point3 from, Point3 to, double? pointAngle)
    {
        _from = from;
        _travel = to - from;
        _square = _travel.X * _travel.X + _travel.Y * _travel.Y;
        Steepness = pointAngle is > 0 and < 180 ? 1 / Math.Tan(pointAngle.Value * Math.PI / 360) : 0;
    }

    /// <summary>How far the end rises for each mm away from the axis, mm; 0 for a flat end.</summary>
    public double Steepness { get; }

    /// <summary>X values, mm, outside which the row at <paramref name="y"/> is nowhere within <paramref name="radius"/> of the axis; empty (low above high) where none is.</summary>
    public (double Low, double High) Row(double y, double radius)
    {
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

    /// <summary>The part of the move during which a place lies within <paramref name="radius"/> of the axis.</summary>
    public bool Over(double x, double y, double radius, out CellPass pass)
    {
        double dx = x - _from.X, dy = y - _from.Y;
        if (_square == 0)
        {
            var square = dx * dx + dy * dy;
            pass = new(this, 0, 1, square, 0);
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
        pass = new(this, Math.Max(0, beside - half), Math.Min(1, beside + half), offSquare, beside);
        return pass.Start <= pass.End;
    }

    /// <summary>The tool over one place, from the fraction <see cref="Start"/> of the move to <see cref="End"/>.</summary>
    /// <param name="move">The move.</param>
    /// <param name="start">Where the tool comes over the place.</param>
    /// <param name="end">Where it leaves it.</param>
    /// <param name="offSquare">Square of the place's distance from the line of travel, mm².</param>
    /// <param name="beside">The fraction of the move at which the axis is nearest to the place; may lie outside 0 to 1.</param>
    internal readonly struct CellPass(StraightPass move, double start, double end, double offSquare, double beside)
    {
        private readonly StraightPass _move = move;

        public double Start { get; } = start;

        public double End { get; } = end;

        /// <summary>Z of the tip, mm.</summary>
        public double TipAt(double fraction) => _move._from.Z + _move._travel.Z * fraction;

        /// <summary>Z of the tool's end over the place, mm.</summary>
        public double EndAt(double fraction)
        {
            if (_move.Steepness == 0)
                return TipAt(fraction);
            var along = fraction - beside;
            return TipAt(fraction) + _move.Steepness * Math.Sqrt(offSquare + along * along * _move._square);
        }

        /// <summary>Lowest Z of the tip, mm.</summary>
        public double LowestTip => Math.Min(TipAt(Start), TipAt(End));

        /// <summary>The fraction of the move at which the tool's end is lowest over the place.</summary>
        public double Lowest()
        {
            var fall = _move._travel.Z;
            var length = Math.Sqrt(_move._square);
            var steepness = _move.Steepness * length;
            // The end over the place is a straight line plus a hyperbola: lowest where their slopes cancel.
            if (steepness > Math.Abs(fall))
            {
                var along = -fall * Math.Sqrt(offSquare / ((steepness - fall) * (steepness + fall))) / length;
                return Math.Clamp(beside + along, Start, End);
            }
            return fall < 0 ? End : Start;
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
