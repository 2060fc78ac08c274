using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Clearance;

/// <summary>The path of a rapid on a machine that moves each axis at its own rate: all start together, each stops when it is there.</summary>
public static class BentRapid
{
    /// <summary>Length of the path, mm; NaN where it is not known.</summary>
    public static double Length(Point3 from, Point3 to, Point3 rates)
    {
        Span<Point3> path = stackalloc Point3[4];
        var points = Points(from, to, rates, path);
        var length = points == 0 ? double.NaN : 0;
        for (var i = 1; i < points; i++)
            length += Point3.Distance(path[i - 1], path[i]);
        return length;
    }

    /// <summary>Writes the corners of the path.</summary>
    /// <param name="from">Start, mm.</param>
    /// <param name="to">End, mm.</param>
    /// <param name="rates">Rapid rate of each axis, mm/min.</param>
    /// <param name="path">Room for at least four points.</param>
    /// <returns>How many points were written, both ends included: 2 to 4. 0 when a coordinate, or the rate of an axis that
    /// moves, is not known, not positive or not finite: then the path is not known.</returns>
    public static int Points(Point3 from, Point3 to, Point3 rates, Span<Point3> path)
    {
        if (path.Length < 4)
            throw new ArgumentException("The path needs room for four points.", nameof(path));
        if (!from.IsKnown || !to.IsKnown)
            return 0;
        var travel = to - from;
        Span<double> arrivals = stackalloc double[3];
        for (var axis = 0; axis < 3; axis++)
        {
            if (travel[axis] == 0)
                continue;
            if (!(rates[axis] > 0) || double.IsInfinity(rates[axis]))
                return 0;
            arrivals[axis] = Math.Abs(travel[axis]) / rates[axis];
        }

        var last = Math.Max(arrivals[0], Math.Max(arrivals[1], arrivals[2]));
        path[0] = from;
        var count = 1;
        for (var time = 0.0; time < last;)
        {
            var next = last;
            foreach (var arrival in arrivals)
                if (arrival > time && arrival < next)
                    next = arrival;
            time = next;
            // Axes that arrive together but for rounding make no corner.
            if (last - time <= last * 1e-12)
                break;
            path[count++] = new(At(0, time, arrivals), At(1, time, arrivals), At(2, time, arrivals));
        }
        path[count++] = to;
        return count;

        double At(int axis, double time, ReadOnlySpan<double> arrivals) =>
            time >= arrivals[axis] ? to[axis] : from[axis] + travel[axis] * (time / arrivals[axis]);
    }
}
