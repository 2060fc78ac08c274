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
        var (x, y, z) = (Math.Abs(way.X), Math.Abs(way.Y), Math.Abs(way.Z));
        var longest = Greatest(x, y, z);
        if (longest == 0)
            return 0;
        // Along the line all axes are at the same part of their way, so that it is enough to know how long the slowest takes at its rate, and the longest to gather speed.
        var atRate = 60 * Greatest(x / machine.Rapid.X, y / machine.Rapid.Y, z / machine.Rapid.Z);
        var gathering = longest / machine.Acceleration;
        return atRate * atRate >= gathering ? atRate + gathering / atRate : 2 * Math.Sqrt(gathering);
    }

    /// <summary>The greatest of three numbers of 0 or more; NaN where one is not known. That is asked once for all three: to heed it in each comparison takes longer than the rest of a rapid's time.</summary>
    static double Greatest(double a, double b, double c)
    {
        var ofTwo = a > b ? a : b;
        return double.IsNaN(a + b + c) ? double.NaN : ofTwo > c ? ofTwo : c;
    }

    static double Axis(double way, double rate, MachineProfile machine) => Trapezoid(Math.Abs(way), rate, machine.Acceleration);
}
