using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Analysis;

// The holes of a part, those among them that nothing has to be told of but where they are.
public sealed partial class PartScan
{
    readonly HoleLog.Gatherer _holes = new();

    /// <summary>How the last step passed the obstacles, where it drilled the next hole of a run and no rule wanted to see it: then none wants to see another that does the same and passes them so.
    /// That is known of those that stay in a room where nothing is near, and of those that lead nobody knows where.</summary>
    Nearness _quietHole;

    /// <summary>Notes the next hole of the run that the last step belongs to, without a step of its own; false, with nothing noted, where it may have to be looked at.</summary>
    /// <param name="hole">What it does.</param>
    /// <param name="from">Where the tool comes from.</param>
    /// <param name="trace">What is left of its block.</param>
    internal bool TryNoteNextHole(in NextHole hole, in Point3 from, in PlainTrace trace)
    {
        if (_quietHole == Nearness.NotAsked || hole.SetsMoreThan(_step, trace))
            return false;
        var place = trace.Position;
        var (x, y, isLost) = (place.X + _step.ToFrame.X, place.Y + _step.ToFrame.Y, _quietHole == Nearness.Lost);
        if (isLost ? double.IsFinite(x + y) : !Job.Obstacles.IsEmpty && !_room.HoldsAcross(x, y))
            return false;
        if (!isLost)
            _lastInRoom = BlocksRun + 1;
        BlocksRun++;
        _blocks++;
        var at = _count++;
        _sets[at] = hole.SetsOf(trace);
        _holes.AddNext(place.X, place.Y, at, _cuts.Count, isNear: isLost);
        NoteTime(at, hole.SecondsOf(from, trace, out var untimed), untimed);
        return true;
    }

    /// <summary>How the present step passes the obstacles, where one like it need not be looked at.</summary>
    Nearness QuietHole() =>
        !_step.RepeatsHole || Job.HasStock ? Nearness.NotAsked
        : Job.Obstacles.IsEmpty || _lastInRoom == BlocksRun ? Nearness.Free
        : IsNextHoleLost() ? Nearness.Lost
        : Nearness.NotAsked;

    StepEvents NoteHoles(int at)
    {
        var (hopsAboveR, isFar) = (false, Job.Obstacles.IsEmpty || Nearness <= Nearness.Far);
        for (var i = 0; i < _step.Holes.Count; i++)
        {
            ref readonly var hole = ref _step.Holes[i];
            if (isFar)
                _holes.Add(hole, _step, at, _cuts.Count);
            else
                _holes.Add(hole, _step, at, _cuts.Count, TraverseTo(hole));
            hopsAboveR |= hole.IsHop && hole.ArriveAt > hole.RLevel;
        }
        return hopsAboveR ? HopsAboveR : StepEvents.None;
    }

    Approach TraverseTo(in Hole hole)
    {
        if (_step.RepeatsHole && Nearness == Nearness.Lost)
            return Approach.Unknown;
        var nearest = Approach.None;
        for (var i = hole.FirstMove; i < _step.Moves.Count; i++)
        {
            // The lift goes up where the tool came down: how near that is, is the hole's own matter and not the traverse's.
            if (_step.Moves[i].Role == MoveRole.Lift)
                continue;
            if (_step.Moves[i].Role is not (MoveRole.Hop or MoveRole.FirstTraverse))
                break;
            var approach = ApproachOf(i);
            if (double.IsNaN(approach.Distance) || approach.Distance < nearest.Distance)
                nearest = approach;
        }
        return nearest;
    }
}
