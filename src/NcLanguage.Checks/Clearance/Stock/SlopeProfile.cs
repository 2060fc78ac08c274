using System.Numerics;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Clearance;

/// <summary>The lowest that a flat or a ball end comes over the cells of a field on a slope: as <see cref="StraightPass"/> tells, but for some cells at once and in single
/// precision, as the heights are held. The last cut of most forms is made of such moves, and so are helices.</summary>
readonly struct SlopeProfile : IEndOver
{
    /// <summary>How far it rises for each mm at most.</summary>
    const double Steepest = 100;

    readonly Vector<float> _square, _length, _alongX, _alongY, _rise, _lean, _tip, _middle, _floor, _lowest;
    readonly bool _isBall, _falls;

    /// <param name="from">Where the tip starts, mm.</param>
    /// <param name="to">Where it ends, at another height and not right above or below, mm.</param>
    /// <param name="end">An end that it <see cref="Knows"/> on this way.</param>
    /// <param name="floor">The height that a cell keeps at least.</param>
    public SlopeProfile(in Point3 from, in Point3 to, in EndForm end, float floor)
    {
        var travel = to - from;
        var length = Math.Sqrt(travel.X * travel.X + travel.Y * travel.Y);
        var slope = travel.Z / length;
        _square = new((float)(end.Radius * end.Radius));
        _length = new((float)length);
        _alongX = new((float)(travel.X / length));
        _alongY = new((float)(travel.Y / length));
        _rise = new((float)slope);
        // The ball's middle is so much of half the chord over the place uphill or downhill of it where the ball is lowest there: the tangent plane has the way's slope.
        _lean = new((float)(slope / Math.Sqrt(1 + slope * slope)));
        _tip = new((float)from.Z);
        _middle = new((float)(from.Z + end.CornerRadius - end.Drop));
        _floor = new(floor);
        _lowest = new(Math.Max(floor, (float)Math.Min(from.Z, to.Z)));
        _isBall = !end.IsFlat;
        _falls = travel.Z < 0;
    }

    /// <summary>Whether it is a flat end or a ball, on a slope on which single precision leaves no more than a thousandth of a millimetre.</summary>
    public static bool Knows(in Point3 from, in Point3 to, in EndForm end) =>
        (end.IsFlat || (end.CornerRadius > 0 && end.FlatRadius == 0))
        && Math.Abs(to.Z - from.Z) <= Steepest * Math.Max(Math.Abs(to.X - from.X), Math.Abs(to.Y - from.Y));

    public Vector<float> Lowest => _lowest;

    public Vector<float> LevelOver(Vector<float> x, Vector<float> y, Vector<float> otherwise)
    {
        var along = x * _alongX + y * _alongY;
        var off = x * _alongY - y * _alongX;
        var left = _square - off * off;
        var half = Vector.SquareRoot(Vector.MaxNative(left, Vector<float>.Zero));
        var start = Vector.MaxNative(along - half, Vector<float>.Zero);
        var end = Vector.MinNative(along + half, _length);
        var level = _tip + _rise * (_falls ? end : start);
        if (_isBall)
        {
            var lowest = Vector.MinNative(Vector.MaxNative(along - _lean * half, start), end);
            var beside = along - lowest;
            level = Vector.MaxNative(level, _middle + _rise * lowest - Vector.SquareRoot(Vector.MaxNative(left - beside * beside, Vector<float>.Zero)));
        }
        var isUnder = Vector.GreaterThanOrEqual(left, Vector<float>.Zero) & Vector.LessThanOrEqual(start, end);
        return Vector.ConditionalSelect(isUnder, Vector.MaxNative(level, _floor), otherwise);
    }
}
