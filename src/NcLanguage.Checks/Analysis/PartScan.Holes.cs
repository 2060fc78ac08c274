using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Analysis;

// The holes of a part.
public sealed partial class PartScan
{
    readonly HoleLog.Gatherer _holes = new();

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
