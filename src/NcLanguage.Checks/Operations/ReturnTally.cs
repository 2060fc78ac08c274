using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Operations;

/// <summary>Sums what the return levels of traverses between holes cost.</summary>
/// <remarks>Compared are the moves that go above a hole's R level: its pecks and its return, the lift before the traverse and the way down behind it. At
/// the least level each is cut off there, and what is left takes its own trapezoid of speed.</remarks>
sealed class ReturnTally(Job job)
{
    /// <summary>Levels nearer together than this are one level, mm.</summary>
    const double OneLevel = 1e-6;

    readonly record struct Rise(double From, double To, double Feed, double Seconds);

    readonly List<Rise> _above = [];
    HoleResult _last;

    /// <summary>The traverse that leads to a hole, where it is one from another hole of the same run; null where it is none.</summary>
    /// <param name="step">The step that drills the hole.</param>
    /// <param name="index">Which of its holes.</param>
    /// <param name="end">Index of the first move behind those of the hole.</param>
    public ReturnCost? Add(Step step, int index, int end)
    {
        ref readonly var hole = ref step.Holes[index];
        var next = new HoleResult(hole, 0, Approach.None, step.ToFrame, step.After.Plane, step.After.ReturnLevel, 0);
        ReturnCost? cost = null;
        if (hole.IsHop)
        {
            for (var i = hole.FirstMove; i < end; i++)
                if (step.Moves[i].Role is MoveRole.Lift or MoveRole.Approach)
                    Note(step.Moves[i], double.NegativeInfinity);
            cost = Compare(next);
        }
        _above.Clear();
        _last = next;
        for (var i = hole.FirstMove; i < end; i++)
            if (step.Moves[i].Role is MoveRole.InHole or MoveRole.Return)
                Note(step.Moves[i], hole.RLevel);
        return cost;
    }

    void Note(in Move move, double above)
    {
        if (move.IsMotion && !(Math.Max(move.From.Z, move.To.Z) <= above + OneLevel))
            _above.Add(new Rise(move.From.Z, move.To.Z, move.Kind == MoveKind.Rapid ? double.NaN : move.Feed, move.Seconds));
    }

    ReturnCost Compare(in HoleResult next)
    {
        var least = LeastLevel(next);
        var (chosen, cut) = (0.0, 0.0);
        foreach (var rise in _above)
        {
            chosen += rise.Seconds;
            cut += SecondsBelow(rise, least);
        }
        if (!(next.Hole.ArriveAt >= least - OneLevel) || double.IsNaN(chosen + cut))
            return new ReturnCost(0, 0, 0, 0, 1);
        return new ReturnCost(1, next.Hole.ArriveAt > least + OneLevel ? 1 : 0, chosen, cut, 0);
    }

    /// <summary>The least level in work coordinates at which the traverse clears what the setup lists, the stock included; NaN where not known.</summary>
    double LeastLevel(in HoleResult next)
    {
        if (next.ToFrame != _last.ToFrame)
            return double.NaN;
        var level = Math.Max(HopClearance.LeastReturn(job, _last, next), next.Hole.RLevel);
        return job.Setup.Stock is { } stock ? Math.Max(level, stock.Max.Z - next.ToFrame.Z) : level;
    }

    double SecondsBelow(in Rise rise, double level)
    {
        if (rise.From <= level && rise.To <= level)
            return rise.Seconds;
        var way = Math.Abs(Math.Min(rise.To, level) - Math.Min(rise.From, level));
        return double.IsNaN(rise.Feed) ? MoveTime.Rapid(default(Point3).With(2, way), job.Machine) : way / rise.Feed * 60;
    }
}
