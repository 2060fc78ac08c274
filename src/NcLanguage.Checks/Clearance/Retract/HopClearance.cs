using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Clearance;

/// <summary>What comes of a traverse between two holes.</summary>
public enum HopOutcome
{
    /// <summary>Not known: a place, a level or what stands on the table.</summary>
    Unknown,

    /// <summary>At least the setup's clearance between.</summary>
    Clear,

    /// <summary>Less than the clearance, but no contact.</summary>
    Close,

    /// <summary>The tool meets something.</summary>
    Contact,
}

/// <summary>Judges level traverses from hole to hole against what the setup lists: the obstacles or, where none are listed, the
/// clamp height. Places are in the setup's frame, mm.</summary>
public static class HopClearance
{
    /// <summary>True when the setup says anything that a traverse can be judged by.</summary>
    public static bool CanJudge(Job job) => !job.Obstacles.IsEmpty || job.Setup.ClampHeight is not null;

    /// <summary>True when the setup says that nothing stands in the way: its list of obstacles is empty, and no clamp height is given.</summary>
    static bool NothingStands(Job job) =>
        job.Setup.ObstaclesAreListed && job.Setup.ObstaclesAreKnown && job.Obstacles.IsEmpty && job.Setup.ClampHeight is null;

    /// <summary>True when a level at which the tool clears can be called clear: all obstacles could be read, and the tool is described
    /// where its size matters.</summary>
    public static bool CanCallClear(Job job, int tool) =>
        job.Setup.ObstaclesAreKnown && (job.Obstacles.IsEmpty ? job.Setup.ClampHeight is not null : job.ShapeOf(tool).Radius > 0);

    /// <summary>The least distance of the traverse that reached a hole, mm; infinite where it is more than the clearance by far.</summary>
    public static double DistanceOf(Job job, in HoleResult hole) =>
        !job.Obstacles.IsEmpty ? hole.Traverse.Distance
        : hole.Plane == WorkPlane.XY ? hole.Hole.ArriveAt + hole.ToFrame.Z - ClampTop(job)
        : double.NaN;

    /// <summary>The least distance that a traverse on one level would keep, mm; looked for within the clearance.</summary>
    public static double DistanceAt(Job job, Point3 from, Point3 to, double level, int tool)
    {
        if (!job.Obstacles.IsEmpty)
            return job.ApproachOfRapid(from.With(2, level), to.With(2, level), tool, job.Setup.Clearance).Distance;
        return from.X == to.X && from.Y == to.Y ? double.PositiveInfinity : level - ClampTop(job);
    }

    /// <summary>True when a traverse on this level can be called clear of all that the setup lists: obstacles or clamp height, and the
    /// stock, whose top it must not go below.</summary>
    public static bool CanGoAt(Job job, Point3 from, Point3 to, double level, int tool) =>
        CanCallClear(job, tool)
        && !(level < job.Setup.Stock?.Max.Z)
        && Of(job, DistanceAt(job, from, to, level, tool)) == HopOutcome.Clear;

    /// <summary>What a distance means.</summary>
    public static HopOutcome Of(Job job, double distance)
    {
        if (double.IsNaN(distance))
            return HopOutcome.Unknown;
        if (distance >= job.Setup.Clearance - Sweep.ClearanceTolerance)
            return HopOutcome.Clear;
        return distance <= Sweep.ClearanceTolerance ? HopOutcome.Contact : HopOutcome.Close;
    }

    /// <summary>The lowest level at which the traverse clears by the setup's clearance, going over what is in the way; not below
    /// <paramref name="floor"/>. NaN where not known.</summary>
    public static double LeastLevel(Job job, Point3 from, Point3 to, int tool, double floor)
    {
        if (job.Obstacles.IsEmpty)
            return double.IsNaN(from.X + from.Y + to.X + to.Y) ? double.NaN : Math.Max(floor, ClampTop(job) + job.Setup.Clearance);
        var shape = job.ShapeOf(tool);
        if (job.Readings.RapidPath != RapidPathReading.PerAxis)
            return Sweep.LeastLevel(from, to, shape, job.Obstacles, job.Setup.Clearance, floor);
        Span<Point3> path = stackalloc Point3[4];
        var points = BentRapid.Points(from.With(2, 0), to.With(2, 0), job.Machine.Rapid, path);
        var level = points == 0 ? double.NaN : floor;
        for (var i = 1; i < points; i++)
            level = Math.Max(level, Sweep.LeastLevel(path[i - 1], path[i], shape, job.Obstacles, job.Setup.Clearance, floor));
        return level;
    }

    /// <summary>The lowest level in work coordinates, not below the hole's R level, at which the traverse to the next hole clears; NaN
    /// where not known.</summary>
    public static double LeastReturn(Job job, in HoleResult hole, in HoleResult next)
    {
        if (!next.Hole.IsHop || hole.Plane != WorkPlane.XY || next.Plane != WorkPlane.XY)
            return double.NaN;
        if (NothingStands(job))
            return hole.Hole.RLevel;
        if (!CanCallClear(job, next.Hole.Tool))
            return double.NaN;
        var floor = hole.Hole.RLevel + hole.ToFrame.Z;
        return LeastLevel(job, hole.PlaceAt(0), next.PlaceAt(0), next.Hole.Tool, floor) - hole.ToFrame.Z;
    }

    static double ClampTop(Job job) => job.Setup.ClampHeight ?? double.NaN;
}
