using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>An obstacle as numbers, so that the search reads no objects: a footprint (a rectangle, or a circle inside it) and
/// two heights, all in mm.</summary>
readonly struct Solid
{
    readonly double _minX, _maxX, _minY, _maxY, _bottom, _top;
    readonly bool _round;
    readonly double _centerX, _centerY, _radius;

    Solid(Solid other, double bottom, double top)
    {
        this = other;
        _bottom = bottom;
        _top = top;
    }

    public Solid(Obstacle obstacle)
    {
        switch (obstacle)
        {
            case BoxObstacle { Box: var box }:
                (_minX, _maxX, _minY, _maxY) = (box.Min.X, box.Max.X, box.Min.Y, box.Max.Y);
                break;
            case CylinderObstacle round:
                _round = true;
                (_centerX, _centerY, _radius) = (round.CenterX, round.CenterY, round.Diameter / 2);
                (_minX, _maxX) = (_centerX - _radius, _centerX + _radius);
                (_minY, _maxY) = (_centerY - _radius, _centerY + _radius);
                break;
            default:
                throw new ArgumentException($"Obstacle {obstacle.Name} is neither a box nor an upright cylinder.", nameof(obstacle));
        }
        (_bottom, _top) = (obstacle.Bottom, obstacle.Top);
    }

    /// <summary>So many are held without asking for storage.</summary>
    public const int Few = 16;

    /// <summary>Obstacles made ready.</summary>
    /// <param name="few">Room for <see cref="Few"/>.</param>
    public static ReadOnlySpan<Solid> Of(ReadOnlySpan<Obstacle> obstacles, Span<Solid> few)
    {
        var solids = obstacles.Length <= few.Length ? few : new Solid[obstacles.Length];
        for (var i = 0; i < obstacles.Length; i++)
            solids[i] = new(obstacles[i]);
        return solids[..obstacles.Length];
    }

    /// <summary>True where, seen from above, the box from <paramref name="low"/> to <paramref name="high"/> stays farther than <paramref name="distance"/> mm
    /// beside it: the cheapest bound, which settles most.</summary>
    public bool IsBeside(Point3 low, Point3 high, double distance) =>
        _minX - high.X > distance || low.X - _maxX > distance || _minY - high.Y > distance || low.Y - _maxY > distance;

    /// <summary>The highest Z, mm.</summary>
    public double Top => _top;

    /// <summary>Least and greatest X, mm.</summary>
    public double Left => _minX;
    public double Right => _maxX;

    /// <summary>Least and greatest Y, mm.</summary>
    public double Front => _minY;
    public double Back => _maxY;

    /// <summary>The same footprint reaching without end up and down: its distance is the horizontal one.</summary>
    public Solid WithoutHeight() => new(this, double.NegativeInfinity, double.PositiveInfinity);

    /// <summary>A distance in mm that no tip place within the box from <paramref name="low"/> to <paramref name="high"/> goes below.</summary>
    public double LowerBound(Point3 low, Point3 high, in ToolCylinder tool)
    {
        var x = Math.Max(_minX - high.X, low.X - _maxX) - tool.Radius;
        var y = Math.Max(_minY - high.Y, low.Y - _maxY) - tool.Radius;
        var z = Math.Max(low.Z + tool.Bottom - _top, _bottom - (high.Z + tool.Top));
        var greatest = Math.Max(Math.Max(x, y), z);
        if (greatest <= 0)
            return greatest;
        x = Math.Max(x, 0);
        y = Math.Max(y, 0);
        z = Math.Max(z, 0);
        return Math.Max(greatest, Math.Sqrt(x * x + y * y + z * z));
    }

    /// <summary>
    /// Signed distance in mm between one cylinder of the tool, its tip at <paramref name="tip"/>, and this obstacle; and a
    /// slope of that distance when the tip moves on by <paramref name="step"/>.
    /// </summary>
    /// <remarks>Along a straight move the distance is convex: it is the signed distance of a point to a convex body (the
    /// obstacle grown by the cylinder). The slope given is a subgradient, so its sign tells on which side the minimum lies.</remarks>
    public double Distance(Point3 tip, in ToolCylinder tool, Point3 step, out double slope)
    {
        double h, hSlope;
        if (_round)
            h = RoundFootprint(tip, step, out hSlope);
        else
            h = SquareFootprint(tip, step, out hSlope);
        h -= tool.Radius;

        var above = tip.Z + tool.Bottom - _top;
        var below = _bottom - (tip.Z + tool.Top);
        var (v, vSlope) = above > below ? (above, step.Z) : (below, -step.Z);

        if (h > 0 && v > 0)
        {
            var distance = Math.Sqrt(h * h + v * v);
            slope = (h * hSlope + v * vSlope) / distance;
            return distance;
        }
        // With at most one gap open the distance is that gap; with none it is the shallower overlap.
        if (h > v)
        {
            slope = hSlope;
            return h;
        }
        slope = h == v ? Math.Max(hSlope, vSlope) : vSlope;
        return v;
    }

    double RoundFootprint(Point3 tip, Point3 step, out double slope)
    {
        var x = tip.X - _centerX;
        var y = tip.Y - _centerY;
        var distance = Math.Sqrt(x * x + y * y);
        slope = distance > 0 ? (x * step.X + y * step.Y) / distance : 0;
        return distance - _radius;
    }

    double SquareFootprint(Point3 tip, Point3 step, out double slope)
    {
        double left = _minX - tip.X, right = tip.X - _maxX;
        double front = _minY - tip.Y, back = tip.Y - _maxY;
        var (x, xSlope) = left > right ? (left, -step.X) : (right, step.X);
        var (y, ySlope) = front > back ? (front, -step.Y) : (back, step.Y);
        if (x > 0 && y > 0)
        {
            var distance = Math.Sqrt(x * x + y * y);
            slope = (x * xSlope + y * ySlope) / distance;
            return distance;
        }
        slope = x > y ? xSlope : ySlope;
        return Math.Max(x, y);
    }
}
