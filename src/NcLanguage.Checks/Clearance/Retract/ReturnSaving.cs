using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Clearance;

/// <summary>What a traverse between two holes costs because it runs higher than it needs to: the ways up to its level and down from it, less those by way of the R levels.</summary>
static class ReturnSaving
{
    /// <summary>Strokes of a peck cycle that are counted: more than a hole has.</summary>
    const int MostStrokes = 1000;

    /// <summary>What is known of the hole that a traverse leaves. Levels in mm, the feed in mm/min.</summary>
    readonly record struct Left(int Cycle, double RLevel, double Bottom, double Peck, double Feed);

    /// <summary>Seconds; NaN where not known.</summary>
    /// <param name="step">The step that drills the hole which the traverse leads to, in the XY plane.</param>
    /// <param name="index">Which of its holes that is.</param>
    /// <param name="lower">The level at which the traverse would do too, mm; not below the R level of either hole.</param>
    public static double Of(in StepContext step, int index, double lower)
    {
        ref readonly var hole = ref step.Step.Holes[index];
        var machine = step.Job.Machine;
        var down = Less(hole.ArriveAt, lower, hole.RLevel, machine);
        if (step.Job.Readings.ReturnLevel == ReturnLevelReading.BeforeMove)
            return down + Less(hole.ArriveAt, lower, index > 0 ? step.Step.Holes[index - 1].RLevel : step.Step.Before.RLevel, machine);
        var left = index > 0 ? LeftBy(step.Step.Holes[index - 1]) : LeftBy(step.Step.Before, machine);
        // What goes out at a feed does so all the way up (NISTIR 6556 §3.5.16.5, .6 and .10).
        var up = left.Cycle is 84 or 74 or 85 or 89 ? (hole.ArriveAt - left.RLevel) / left.Feed * 60 : Less(hole.ArriveAt, left.RLevel, left.Bottom, machine);
        // From its own R up to that of the next hole there is a lift of its own.
        return down + up - Rapid(lower - left.RLevel, machine) + (PecksGoUp(left, machine) ? OfPecks(left, hole.ArriveAt, machine) : 0);
    }

    static bool PecksGoUp(in Left left, MachineProfile machine) => left.Cycle == 83 && machine.Readings.PeckReturn == PeckReturnReading.ReturnLevel;

    /// <summary>Each stroke but the last goes all the way up, and down again to just above where it ended (NISTIR 6556 §3.5.16.4).</summary>
    static double OfPecks(in Left left, double level, MachineProfile machine)
    {
        var seconds = 0.0;
        for (var stroke = 1; stroke <= MostStrokes && left.RLevel - stroke * left.Peck > left.Bottom + Sweep.ClearanceTolerance; stroke++)
        {
            var reached = left.RLevel - stroke * left.Peck;
            seconds += Less(level, left.RLevel, reached, machine) + Less(level, left.RLevel, Math.Min(left.RLevel, reached + BlockExecutor.PeckGap), machine);
        }
        return seconds;
    }

    static Left LeftBy(in Hole hole) => new(hole.Cycle, hole.RLevel, hole.Bottom, hole.Peck, hole.Feed);

    static Left LeftBy(in ControlState state, MachineProfile machine)
    {
        var feed = state.FeedMode == FeedMode.PerTurn ? state.Feed * machine.SpeedOf(state.Speed) : state.Feed;
        return new(state.Cycle, state.RLevel, state.Bottom, state.Peck, machine.MaxFeed is { } most && feed > most ? most : feed);
    }

    /// <summary>How much longer a rapid between two levels takes from a higher one, s.</summary>
    static double Less(double higher, double lower, double other, MachineProfile machine) => Rapid(higher - other, machine) - Rapid(lower - other, machine);

    static double Rapid(double height, MachineProfile machine) => MoveTime.Rapid(new Point3(0, 0, height), machine);
}
