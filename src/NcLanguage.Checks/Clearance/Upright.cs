using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Clearance;

/// <summary>Tells moves straight up or down from others. A place that is written again, in other coordinates or after a sum of distances, is the same but for rounding.</summary>
static class Upright
{
    /// <summary>How far aside a move may lead, mm: three decimals of an inch are rounded by 0.013.</summary>
    const double Rounding = 0.02;

    /// <summary>And for each mm up or down: the short pieces of a curved path are none.</summary>
    const double Slope = 0.1;

    /// <summary>False where one of the places is not known.</summary>
    public static bool Is(in Point3 from, in Point3 to)
    {
        var most = Math.Min(Rounding, Slope * Math.Abs(to.Z - from.Z));
        return Math.Abs(to.X - from.X) <= most && Math.Abs(to.Y - from.Y) <= most;
    }
}
