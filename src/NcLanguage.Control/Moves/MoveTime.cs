using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Moves;

/// <summary>Seconds a move takes.</summary>
public static class MoveTime
{
    /// <summary>A rest-to-rest move of <paramref name="distance"/> mm at <paramref name="rate"/> mm/min with
    /// <paramref name="acceleration"/> mm/s²: a trapezoid of speed, or a triangle where the way is short.</summary>
    public static double Trapezoid(double distance, double rate, double acceleration)
    {
        if (distance == 0)
            return 0;
        var speed = rate / 60;
        return distance >= speed * speed / acceleration
            ? distance / speed + speed / acceleration
            : 2 * Math.Sqrt(distance / acceleration);
    }

    /// <summary>A rapid between two places, mm.</summary>
    public static double Rapid(in Point3 from, in Point3 to, MachineProfile machine) => Rapid(to - from, machine);

    /// <summary>A rapid: all axes together on a straight line, as fast as no axis goes beyond its own rate and
    /// acceleration; or each at its own rate.</summary>
    /// <param name="way">How far each axis goes, mm; 0 for one that stands still.</param>
    public static double Rapid(in Point3 way, MachineProfile machine)
    {
        if (machine.Readings.RapidPath == RapidPathReading.PerAxis)
        {
            return Math.Max(Axis(way.X, machine.Rapid.X, machine), Math.Max(
                Axis(way.Y, machine.Rapid.Y, machine), Axis(way.Z, machine.Rapid.Z, machine)));
        }
        // Straight up or down, as most rapids of a cycle go.
        if (way.X == 0 && way.Y == 0)
            return Axis(way.Z, machine.Rapid.Z, machine);
        var length = way.Length;
        if (length == 0 || double.IsNaN(length))
            return length;
        var rapid = machine.Rapid;
        var perMinute = Math.Min(Most(way.X, rapid.X), Math.Min(Most(way.Y, rapid.Y), Most(way.Z, rapid.Z)));
        var longest = Math.Max(Math.Abs(way.X), Math.Max(Math.Abs(way.Y), Math.Abs(way.Z)));
        return Trapezoid(length, length * perMinute, machine.Acceleration * (length / longest));
    }

    /// <summary>How often in a minute an axis can go so far at its rate.</summary>
    static double Most(double along, double rate) => along == 0 ? double.PositiveInfinity : rate / Math.Abs(along);

    static double Axis(double way, double rate, MachineProfile machine) => Trapezoid(Math.Abs(way), rate, machine.Acceleration);
}
