using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Analysis;

// Blocks that go on as the one before them, of which nothing has to be told but where they lead and how long they take: most of a large program.
public sealed partial class PartScan
{
    /// <summary>How the last step passed the obstacles, where it was a straight cut or the next hole of a run and no rule wanted to see it: then none wants to see another that does the same and
    /// passes them so. That is known of those that stay in a room where nothing is near, and of those that lead nobody knows where.</summary>
    Nearness _quiet;

    /// <summary>Notes a block that goes on as the last step did, without a step of its own; false, with nothing noted, where it may have to be looked at.</summary>
    /// <param name="next">What it does.</param>
    /// <param name="from">Where the tool comes from.</param>
    /// <param name="trace">What is left of it.</param>
    internal bool TryNoteNext(in Continuation next, in Point3 from, in PlainTrace trace)
    {
        if (_quiet == Nearness.NotAsked || !next.DoesNoMore(trace))
            return false;
        var to = trace.Position;
        if (!PassesAlike(next.IsHole, to + _step.ToFrame) || (!next.IsHole && ShapingMoves.IsStraightDown(from, to)))
            return false;
        BlocksRun++;
        _blocks++;
        var at = _count++;
        _sets[at] = next.SetsOf(trace);
        if (next.IsHole)
            _holes.AddNext(to.X, to.Y, at, _cuts.Count, isNear: _quiet == Nearness.Lost);
        else
            _joints.NoteLine(from, to, at);
        if (next.IsHole && _quiet == Nearness.Free)
            _lastInRoom = BlocksRun;
        NoteTime(at, next.SecondsOf(from, trace, out var untimed), untimed);
        return true;
    }

    /// <summary>Whether what goes on as the last step did passes the obstacles as that did, from the place on which that has ended.</summary>
    /// <param name="to">Where it leads, in the obstacles' frame.</param>
    bool PassesAlike(bool isHole, in Point3 to)
    {
        if (_quiet == Nearness.Lost)
            return !double.IsFinite(to.X + to.Y + (isHole ? 0 : to.Z));
        return Job.Obstacles.IsEmpty || (isHole ? _room.HoldsAcross(to.X, to.Y) : _room.Holds(to));
    }

    /// <summary>How the present step, which no rule wanted to see, passes the obstacles, where one like it need not be looked at.</summary>
    Nearness Quiet()
    {
        if (Job.HasStock || !(_step.RepeatsHole || (_step.IsPlainMove && _step.After.Motion == MotionMode.Linear)))
            return Nearness.NotAsked;
        if (Job.Obstacles.IsEmpty || (_step.RepeatsHole ? _lastInRoom == BlocksRun : _nearness == Nearness.Free))
            return Nearness.Free;
        return (_step.RepeatsHole ? IsNextHoleLost() : _nearness == Nearness.Lost) ? Nearness.Lost : Nearness.NotAsked;
    }
}
