using System.Numerics;
using System.Runtime.CompilerServices;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Clearance;

/// <summary>All places, seen from above, within some distance of an arc about the Z axis: a bent bar with round ends.</summary>
readonly struct ArcStrip : ILevelPath
{
    readonly double _centerX, _centerY, _radius, _reach, _startX, _startY, _endX, _endY;
    readonly Vector<float> _radii, _startsX, _startsY, _endsX, _endsY;
    readonly bool _isWhole, _isLong;

    /// <param name="from">Where the arc starts, mm; only X and Y count.</param>
    /// <param name="to">Its end, mm, as far from the centre as its start.</param>
    /// <param name="center">The centre, mm.</param>
    /// <param name="angle">Angle travelled, radians; negative clockwise.</param>
    /// <param name="reach">Distance from the arc, mm.</param>
    public ArcStrip(Point3 from, Point3 to, Point3 center, double angle, double reach)
    {
        (_centerX, _centerY, _reach) = (center.X, center.Y, reach);
        if (angle < 0)
            (from, to) = (to, from);
        (_startX, _startY, _endX, _endY) = (from.X - center.X, from.Y - center.Y, to.X - center.X, to.Y - center.Y);
        _radius = double.Hypot(_startX, _startY);
        (_radii, _startsX, _startsY, _endsX, _endsY) = (new((float)_radius), new((float)_startX), new((float)_startY), new((float)_endX), new((float)_endY));
        _isWhole = Math.Abs(angle) > Math.Tau - 1e-9;
        _isLong = Math.Abs(angle) > Math.PI;
        Low = new(-Farthest(-1, 0), -Farthest(0, -1), 0);
        High = new(Farthest(1, 0), Farthest(0, 1), 0);
    }

    /// <summary>The corner with the least X and Y of what it covers, mm.</summary>
    public Point3 Low { get; }

    /// <summary>The corner with the greatest X and Y of what it covers, mm.</summary>
    public Point3 High { get; }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public RowSpan Span(double y)
    {
        var off = y - _centerY;
        var outer = (_radius + _reach) * (_radius + _reach) - off * off;
        if (outer < 0)
            return new(1, 0, 0, 0);
        outer = Math.Sqrt(outer);
        var inner = _radius > _reach ? (_radius - _reach) * (_radius - _reach) - off * off : 0;
        inner = inner > 0 ? Math.Sqrt(inner) : 0;
        return new(Math.Max(Low.X, _centerX - outer), Math.Min(High.X, _centerX + outer), _centerX - inner, _centerX + inner);
    }

    public (double X, double Y) Origin => (_centerX, _centerY);

    public Vector<float> SquaresTo(Vector<float> x, Vector<float> y)
    {
        var off = Vector.SquareRoot(x * x + y * y) - _radii;
        if (_isWhole)
            return off * off;
        var (fromStartX, fromStartY, fromEndX, fromEndY) = (x - _startsX, y - _startsY, x - _endsX, y - _endsY);
        var toEnds = Vector.MinNative(fromStartX * fromStartX + fromStartY * fromStartY, fromEndX * fromEndX + fromEndY * fromEndY);
        var behindStart = Vector.GreaterThanOrEqual(_startsX * y, _startsY * x);
        var beforeEnd = Vector.GreaterThanOrEqual(x * _endsY, y * _endsX);
        return Vector.ConditionalSelect(_isLong ? behindStart | beforeEnd : behindStart & beforeEnd, off * off, toEnds);
    }

    /// <summary>Whether a direction from the centre lies within the arc.</summary>
    bool IsBeside(double x, double y)
    {
        if (_isWhole)
            return true;
        var behindStart = _startX * y - _startY * x >= 0;
        var beforeEnd = x * _endY - y * _endX >= 0;
        return _isLong ? behindStart || beforeEnd : behindStart && beforeEnd;
    }

    /// <summary>How far it reaches in a direction along an axis, counted from the origin, mm.</summary>
    double Farthest(int x, int y) =>
        _centerX * x + _centerY * y + _reach + (IsBeside(x, y) ? _radius : Math.Max(_startX * x + _startY * y, _endX * x + _endY * y));
}
