using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Analysis;

// Blocks that go on as the one before them, of which nothing has to be told but where they lead and how long they take: most of a large program.
public sealed partial class PartScan
{
    /// <summary>How the last step passed the obstacles, where it was a cut or the next hole of a run and no rule had anything to tell of it: then none has of another that does the same and
    /// passes them so. That is known of those that stay in a room where nothing is near, and of those that lead nobody knows where.</summary>
    Nearness _quiet;

    /// <summary>A feed, mm/min, that the rules which look at feeds were shown and told nothing of; NaN where there is none. As long as blocks go on as the one before them they need not be
    /// shown the same again.</summary>
    double _feedShown;

    /// <summary>Whether the block that showed it led nobody knows where.</summary>
    bool _isFeedShownNowhere;

    /// <summary>Notes a block that goes on as the last step did, to the next hole or by a straight cut, without a step of its own; false, with nothing noted, where it may have to be looked at.</summary>
    /// <param name="next">What it does.</param>
    /// <param name="from">Where the tool comes from.</param>
    /// <param name="trace">What is left of it.</param>
    internal bool TryNoteNext(in Continuation next, in Point3 from, in PlainTrace trace)
    {
        var to = trace.Position;
        if (!DoesNoMore(next, trace) || !PassesAlike(next.IsHole, to + _step.ToFrame) || (!next.IsHole && ShapingMoves.IsStraightDown(from, to)) || !StaysWithin(to, isCut: !next.IsHole))
            return false;
        var at = CountNext(next.SetsOf(trace));
        var seconds = next.SecondsOf(from, trace, out var untimed);
        if (!next.IsHole)
        {
            _joints.NoteLine(from, to, at);
            if (Job.HasStock)
                StockMoves.NoteLine(from, to, _step, at, untimed == 0 ? seconds : double.NaN, _cuts);
        }
        else
        {
            _holes.AddNext(to.X, to.Y, at, _cuts.Count, isNear: _quiet == Nearness.Lost);
            if (Job.HasStock)
                StockMoves.NoteHole(to.X, to.Y, _step, at, _cuts);
            if (_quiet == Nearness.Free)
                _lastInRoom = BlocksRun;
        }
        NoteTime(at, seconds, untimed);
        return true;
    }

    /// <summary>The same of a block that cuts along an arc in the XY plane with which nothing is amiss.</summary>
    internal bool TryNoteNext(in Continuation next, in Move arc, bool isByRadius, in PlainTrace trace)
    {
        if (!DoesNoMore(next, trace) || !PassesAlike(arc) || !(_bounds.AreNone || _bounds.Hold(arc)))
            return false;
        var at = CountNext(next.SetsOf(trace));
        _joints.NoteArc(arc, isByRadius, trace.Motion == MotionMode.ArcClockwise, at);
        ShapingMoves.NoteRound(arc, _step, at, Job.Setup, _rounds);
        if (Job.HasStock)
            StockMoves.NoteArc(arc, _step, at, _cuts, _arcs);
        var isTimed = !double.IsNaN(arc.Seconds);
        NoteTime(at, isTimed ? arc.Seconds : 0, isTimed ? 0 : 1);
        return true;
    }

    bool DoesNoMore(in Continuation next, in PlainTrace trace) =>
        _quiet != Nearness.NotAsked && next.DoesNoMore(trace) && ((trace.Sets & Slot.Feed) == 0 || trace.Feed == _feedShown);

    /// <summary>Counts a block that is not looked at; its place among those of the part.</summary>
    int CountNext(Slot sets)
    {
        BlocksRun++;
        _blocks++;
        _sets[_count] = sets;
        return _count++;
    }

    /// <summary>Whether what goes on as the last step did passes the obstacles as that did, from the place on which that has ended.</summary>
    /// <param name="to">Where it leads, in the obstacles' frame.</param>
    bool PassesAlike(bool isHole, in Point3 to)
    {
        if (_quiet == Nearness.Lost)
            return !double.IsFinite(to.X + to.Y + (isHole ? 0 : to.Z));
        return Job.Obstacles.IsEmpty || (isHole ? _room.HoldsAcross(to.X, to.Y) : _room.Holds(to));
    }

    bool StaysWithin(in Point3 to, bool isCut) => _bounds.AreNone || _bounds.Hold(to, isCut);

    bool PassesAlike(in Move arc) =>
        _quiet == Nearness.Lost ? !IsPlaceKnown(arc) : Job.Obstacles.IsEmpty || _room.Holds(arc, _step.ToFrame);

    /// <summary>How the present step, of which no rule had anything to tell, passes the obstacles, where one like it need not be looked at.</summary>
    Nearness Quiet()
    {
        if (!(_step.RepeatsHole || (_step.IsPlainMove && _step.After.Motion != MotionMode.Rapid)) || (Job.HasStock && !StockMoves.AreCutsAlone(_step, Job)))
            return Nearness.NotAsked;
        if (Job.Obstacles.IsEmpty || (_step.RepeatsHole ? _lastInRoom == BlocksRun : _nearness == Nearness.Free))
            return Nearness.Free;
        return (_step.RepeatsHole ? IsNextHoleLost() : _nearness == Nearness.Lost) ? Nearness.Lost : Nearness.NotAsked;
    }

    /// <summary>Notes whether another block that does the same as the present step has to be looked at, which the rules have seen.</summary>
    /// <param name="rules">How many rules wanted to see it.</param>
    /// <param name="isSilent">Whether none of them had anything to tell.</param>
    void NoteQuiet(StepEvents events, int rules, bool isSilent)
    {
        if ((events & StepEvents.FeedGiven) != 0)
        {
            _feedShown = isSilent && ShowsFeed() ? _step.After.Feed : double.NaN;
            if (rules > 0 && _step.After.Feed == _feedShown)
                rules = RulesFor(events & ~StepEvents.FeedGiven).Length;
        }
        else if (!_step.IsPlainMove || (_isFeedShownNowhere && Nearness != Nearness.Lost))
            _feedShown = double.NaN;
        _quiet = rules == 0 ? Quiet() : Nearness.NotAsked;
    }

    /// <summary>Whether the rules that look at feeds would have told of any that is amiss: they look at a mill where it is known to cut more across than down. A step that leads nobody knows
    /// where, from a datum that is known, shows it for others that do.</summary>
    bool ShowsFeed()
    {
        if (!_step.IsPlainMove)
            return false;
        ref readonly var move = ref _step.Moves[0];
        _isFeedShownNowhere = !Job.Obstacles.IsEmpty && Nearness == Nearness.Lost && _step.ToFrame.IsKnown;
        return _isFeedShownNowhere || Math.Abs(move.From.X - move.To.X) + Math.Abs(move.From.Y - move.To.Y) > Math.Abs(move.From.Z - move.To.Z);
    }
}
