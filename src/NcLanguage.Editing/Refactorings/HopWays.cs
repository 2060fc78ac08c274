using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Editing.Refactorings;

/// <summary>The traverses between the holes of a run: at which of the levels that the run uses each clears, and what it takes, s.</summary>
sealed class HopWays
{
    /// <summary>Taken for a traverse that clears at none of the levels: any other way is better.</summary>
    const double Never = 1e6;

    readonly double[,] _seconds;
    readonly ReturnLevel[,] _levels;

    HopWays(int count, double[] fromStart) => (_seconds, _levels, FromStart) = (new double[count, count], new ReturnLevel[count, count], fromStart);

    /// <summary>From where the tool stands before the run.</summary>
    public double[] FromStart { get; }

    public double Between(int from, int to) => _seconds[from, to];

    public ReturnLevel LevelOf(int from, int to) => _levels[from, to];

    /// <summary>Null where the setup says nothing to judge by and the run uses both levels.</summary>
    /// <param name="start">Where the tool stands before the run, work coordinates; not known where NaN.</param>
    public static HopWays? Of(Job job, HoleRun run, Point3 start)
    {
        var (usesR, usesInitial) = (false, false);
        for (var i = run.First; i < run.End; i++)
        {
            usesR |= run.Table[i].Return == ReturnLevel.RLevel;
            usesInitial |= run.Table[i].Return != ReturnLevel.RLevel;
        }
        var canJudge = HopClearance.CanJudge(job);
        if (!canJudge && usesR && usesInitial)
            return null;
        var ways = new HopWays(run.Count, [.. Enumerable.Range(0, run.Count).Select(hole => FirstWay(job, run.Table[run.First + hole].Hole, start))]);
        for (var from = 0; from < run.Count; from++)
            for (var to = 0; to < run.Count; to++)
                if (from != to)
                    (ways._seconds[from, to], ways._levels[from, to]) = Way(job, run.Table[run.First + from], run.Table[run.First + to], usesR, usesInitial, canJudge);
        return ways;
    }

    static double FirstWay(Job job, in Hole hole, Point3 start)
    {
        var seconds = MoveTime.Rapid(new Point3(hole.X - start.X, hole.Y - start.Y, 0), job.Machine);
        return double.IsNaN(seconds) ? 0 : seconds;
    }

    static (double Seconds, ReturnLevel Level) Way(Job job, in HoleRow from, in HoleRow to, bool usesR, bool usesInitial, bool canJudge)
    {
        var across = MoveTime.Rapid(new Point3(to.Hole.X - from.Hole.X, to.Hole.Y - from.Hole.Y, 0), job.Machine);
        var rise = Math.Max(0, from.Hole.InitialLevel - from.Hole.RLevel);
        var upAndDown = 2 * MoveTime.Rapid(new Point3(0, 0, rise), job.Machine);
        if (usesR && (!canJudge || Clears(job, from, to, from.Hole.RLevel)))
            return (across, ReturnLevel.RLevel);
        if (usesInitial && (!canJudge || Clears(job, from, to, from.Hole.InitialLevel)))
            return (across + upAndDown, ReturnLevel.Initial);
        return (Never + across, usesInitial ? ReturnLevel.Initial : ReturnLevel.RLevel);
    }

    static bool Clears(Job job, in HoleRow from, in HoleRow to, double level)
    {
        var (a, b) = (new Point3(from.Hole.X, from.Hole.Y, level) + from.ToFrame, new Point3(to.Hole.X, to.Hole.Y, level) + to.ToFrame);
        return HopClearance.CanGoAt(job, a, b, a.Z, to.Hole.Tool);
    }
}
