using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Tests.Clearance.Sampling;

/// <summary>The tip's way on a move, worked out apart from the code under test, and the least of something on it.</summary>
sealed class SampledPath
{
    /// <summary>The least found is at most this above the true least, mm.</summary>
    public const double Error = 0.004;

    readonly List<(Func<double, Point3> At, double Length)> _pieces = [];

    public SampledPath(Move move, Point3 shift, MachineProfile machine)
    {
        Point3 from = move.From + shift, to = move.To + shift;
        if (move.Kind == MoveKind.Arc)
            AddArc(move, from, to, move.Center + shift);
        else if (move.Kind == MoveKind.Rapid && machine.Readings.RapidPath == RapidPathReading.PerAxis)
            AddBent(from, to, machine.Rapid);
        else
            AddLine(from, to);
    }

    public Point3 Start => _pieces[0].At(0);

    /// <summary>The least of a function of the place that changes by no more than the place moves. A stretch is left out when half its length,
    /// taken from the value at its middle, cannot lead below what is known; else it is halved.</summary>
    public double Least(Func<Point3, double> function)
    {
        var least = double.PositiveInfinity;
        var open = new Stack<(int Piece, double Low, double High)>();
        for (var i = _pieces.Count - 1; i >= 0; i--)
        {
            for (var k = 0; k <= 16; k++)
                least = Math.Min(least, function(_pieces[i].At(k / 16.0)));
            open.Push((i, 0, 1));
        }
        while (open.TryPop(out var stretch))
        {
            var (at, length) = _pieces[stretch.Piece];
            var middle = (stretch.Low + stretch.High) / 2;
            var value = function(at(middle));
            least = Math.Min(least, value);
            if (value - length * (stretch.High - stretch.Low) / 2 >= least - Error)
                continue;
            open.Push((stretch.Piece, middle, stretch.High));
            open.Push((stretch.Piece, stretch.Low, middle));
        }
        return least;
    }

    /// <summary>How far a place lies off the way, mm, to within <see cref="Error"/>.</summary>
    public double Off(Point3 place) => Least(at => Point3.Distance(at, place));

    void AddLine(Point3 from, Point3 to) => _pieces.Add((t => from + (to - from) * t, Point3.Distance(from, to)));

    /// <summary>All axes start together, each at its own rate: the corners lie where one arrives.</summary>
    void AddBent(Point3 from, Point3 to, Point3 rates)
    {
        Point3 At(double minutes)
        {
            var place = from;
            for (var axis = 0; axis < 3; axis++)
            {
                var way = to[axis] - from[axis];
                place = place.With(axis, from[axis] + Math.Sign(way) * Math.Min(Math.Abs(way), rates[axis] * minutes));
            }
            return place;
        }

        var last = from;
        foreach (var time in Enumerable.Range(0, 3).Select(axis => Math.Abs(to[axis] - from[axis]) / rates[axis]).Order())
        {
            var corner = At(time);
            AddLine(last, corner);
            last = corner;
        }
    }

    /// <summary>Turned about the centre with the rotation matrix; seen against the third axis clockwise or not.</summary>
    void AddArc(Move move, Point3 from, Point3 to, Point3 center)
    {
        var (a, b, c) = move.Plane switch { WorkPlane.ZX => (2, 0, 1), WorkPlane.YZ => (1, 2, 0), _ => (0, 1, 2) };
        double x = from[a] - center[a], y = from[b] - center[b];
        double endX = to[a] - center[a], endY = to[b] - center[b];
        double radius = Math.Sqrt(x * x + y * y), endRadius = Math.Sqrt(endX * endX + endY * endY);
        var angle = Math.Atan2(x * endY - y * endX, x * endX + y * endY) * (move.Clockwise ? -1 : 1);
        if (angle <= 1e-9)
            angle += 2 * Math.PI;
        angle += 2 * Math.PI * move.FullTurns;
        var turn = move.Clockwise ? -angle : angle;
        Point3 At(double t)
        {
            var scale = radius > 0 ? 1 + t * (endRadius / radius - 1) : 1;
            double sin = Math.Sin(turn * t), cos = Math.Cos(turn * t);
            return from.With(a, center[a] + scale * (x * cos - y * sin)).With(b, center[b] + scale * (x * sin + y * cos)).With(c, from[c] + t * (to[c] - from[c]));
        }
        _pieces.Add((At, angle * Math.Max(radius, endRadius) + Math.Abs(endRadius - radius) + Math.Abs(to[c] - from[c])));
    }
}
