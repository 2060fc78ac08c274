using System.Diagnostics.CodeAnalysis;
using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Clearance;

/// <summary>The tip's path on an arc or helix in one of the planes 17 (XY), 18 (ZX), 19 (YZ). Where start and end lie at
/// different distances from the centre the radius changes evenly on the way.</summary>
readonly struct ArcPath
{
    // An angle smaller than this, radians, is no arc: start and end are the same place and the arc is a full circle.
    const double SameAngle = 1e-9;

    const int MostOver = 1000;

    readonly Point3 _from, _to, _center;
    readonly int _first, _second, _third;
    readonly double _startFirst, _startSecond, _startRadius, _endRadius;

    public ArcPath(in Point3 from, in Point3 to, in Point3 center, bool clockwise, int plane, int fullTurns)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(fullTurns);
        (_first, _second, _third) = plane switch
        {
            17 => (0, 1, 2),
            18 => (2, 0, 1),
            19 => (1, 2, 0),
            _ => throw new ArgumentOutOfRangeException(nameof(plane), plane, "A plane is 17, 18 or 19."),
        };
        (_from, _to, _center) = (from, to, center);
        double a0 = from[_first] - center[_first], b0 = from[_second] - center[_second];
        double a1 = to[_first] - center[_first], b1 = to[_second] - center[_second];
        _startRadius = Math.Sqrt(a0 * a0 + b0 * b0);
        _endRadius = Math.Sqrt(a1 * a1 + b1 * b1);
        (_startFirst, _startSecond) = _startRadius > 0 ? (a0 / _startRadius, b0 / _startRadius) : (1, 0);
        var angle = Math.Atan2(_startFirst * b1 - _startSecond * a1, _startFirst * a1 + _startSecond * b1);
        if (clockwise)
            angle = -angle;
        if (angle < SameAngle)
            angle += Math.Tau;
        angle += Math.Tau * TurnsThatDiffer(fullTurns, Math.Abs(to[_third] - from[_third]));
        Angle = clockwise ? -angle : angle;
        var rise = to[_third] - from[_third];
        var widening = _endRadius - _startRadius;
        Length = Math.Sqrt(Radius * Radius * angle * angle + rise * rise + widening * widening);
    }

    public Point3 From => _from;

    public Point3 To => _to;

    /// <summary>The centre, mm; only the two coordinates of the plane count.</summary>
    public Point3 Center => _center;

    /// <summary>Whether it lies in XY and keeps its height.</summary>
    public bool IsLevel => _third == 2 && _from.Z == _to.Z;

    /// <summary>Angle travelled, radians; negative clockwise.</summary>
    public double Angle { get; }

    /// <summary>The larger of the start's and the end's distance from the centre, mm.</summary>
    public double Radius => Math.Max(_startRadius, _endRadius);

    /// <summary>How much the distance from the centre changes on the way, mm.</summary>
    public double Widening => Math.Abs(_endRadius - _startRadius);

    /// <summary>Length of the path, mm; where the radius changes, a length it does not exceed.</summary>
    public double Length { get; }

    /// <summary>Lowest coordinates of a box that holds the whole circle's path, mm.</summary>
    public Point3 Low => Corner(-Radius, Math.Min(_from[_third], _to[_third]));

    /// <summary>Highest coordinates of a box that holds the whole circle's path, mm.</summary>
    public Point3 High => Corner(Radius, Math.Max(_from[_third], _to[_third]));

    /// <summary>False when a coordinate that the path depends on is not known or not finite, or the radius is beyond <see cref="Arcs.GreatestRadius"/>.</summary>
    public bool IsKnown => double.IsFinite(Length) && Radius <= Arcs.GreatestRadius;

    /// <summary>The equal chords that keep within <paramref name="tolerance"/> mm of the arc.</summary>
    [UnscopedRef]
    public ArcChords ChordsWithin(double tolerance) => new(in this, Chords(tolerance));

    /// <summary>The equal chords that go over no more than an angle each, radians; a thousand at most.</summary>
    [UnscopedRef]
    public ArcChords ChordsOver(double angle) => new(in this, Math.Clamp((int)Math.Ceiling(Math.Abs(Angle) / angle), 1, MostOver));

    /// <summary>How many equal chords keep within <paramref name="tolerance"/> mm of the arc.</summary>
    public int Chords(double tolerance)
    {
        // Sagitta of a chord over the angle a: r (1 − cos(a / 2)) = 2 r sin²(a / 4).
        var step = Radius > tolerance ? Math.Min(4 * Math.Asin(Math.Sqrt(tolerance / (2 * Radius))), Math.PI / 2) : Math.PI / 2;
        return (int)Math.Min(Math.Max(1, Math.Ceiling(Math.Abs(Angle) / step)), int.MaxValue / 2);
    }

    /// <summary>The tip at a fraction (0 to 1) of the angle.</summary>
    public Point3 At(double fraction)
    {
        if (fraction <= 0)
            return _from;
        if (fraction >= 1)
            return _to;
        var (sin, cos) = Math.SinCos(Angle * fraction);
        var radius = _startRadius + (_endRadius - _startRadius) * fraction;
        return _from
            .With(_first, _center[_first] + radius * (_startFirst * cos - _startSecond * sin))
            .With(_second, _center[_second] + radius * (_startSecond * cos + _startFirst * sin))
            .With(_third, _from[_third] + (_to[_third] - _from[_third]) * fraction);
    }

    Point3 Corner(double off, double third) =>
        _from.With(_first, _center[_first] + off).With(_second, _center[_second] + off).With(_third, third);

    /// <summary>Turns nearer together than half a hundredth of a millimetre add nothing to where the tool has been; the first does.</summary>
    static double TurnsThatDiffer(int fullTurns, double rise) => Math.Min(fullTurns, Math.Max(1, Math.Ceiling(rise / 0.005)));
}
