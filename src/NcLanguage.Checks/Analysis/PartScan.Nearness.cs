using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Analysis;

// How the moves of a step pass what stands on the table.
public sealed partial class PartScan
{
    readonly Contacts _contacts = new();
    Approach[] _approaches = new Approach[16];
    int _approachesKnown;
    Nearness _nearness;
    bool _areContactsKnown;
    FreeRoom _room;
    int _roomTool;
    int _lastInRoom = -1;

    /// <summary>How the moves of the present step pass the obstacles, found once and kept for all rules.</summary>
    internal Nearness Nearness
    {
        get
        {
            if (_nearness == Nearness.NotAsked)
                _nearness = IsNextHoleLost() ? Nearness.Lost : IsStepFree() ? Nearness.Free : IsStepLost() ? Nearness.Lost : AreAllFar() ? Nearness.Far : Nearness.Near;
            return _nearness;
        }
    }

    /// <summary>The nearest approach of a move of the present step, found once and kept for all rules.</summary>
    internal Approach ApproachOf(int move)
    {
        if (Nearness == Nearness.Free)
            return Approach.None;
        if (Nearness == Nearness.Lost)
            return _step.Moves[move].IsMotion ? Approach.Unknown : Approach.None;
        FindApproaches();
        return _approaches[move];
    }

    /// <summary>What the moves of the present step come too near to, found once and kept for all rules.</summary>
    internal Contacts ContactsOf(in StepContext step)
    {
        if (!_areContactsKnown)
        {
            _contacts.Find(step);
            _areContactsKnown = true;
        }
        return _contacts;
    }

    bool IsStepFree()
    {
        if (_step.After.Tool != _roomTool)
            (_room, _roomTool, _lastInRoom) = (default, _step.After.Tool, -1);
        if (IsNextHoleInRoom() || (_step.Moves.Count > 1 && Job.AreFree(_step.Moves.Items, _step.ToFrame, _room)))
        {
            _lastInRoom = BlocksRun;
            return true;
        }
        var moves = false;
        foreach (ref readonly var move in _step.Moves.Items)
        {
            if (!move.IsMotion)
                continue;
            if (!Job.IsFree(move, _step.ToFrame, _roomTool, ref _room))
                return false;
            moves = true;
        }
        return moves;
    }

    /// <summary>Whether the step drills as the one before it did, which stayed in the room, and in the room too: it begins where that ended, and goes as low.</summary>
    bool IsNextHoleInRoom()
    {
        if (!_step.RepeatsHole || _lastInRoom != BlocksRun - 1)
            return false;
        ref readonly var hole = ref _step.Holes[0];
        return _room.HoldsAcross(hole.X + _step.ToFrame.X, hole.Y + _step.ToFrame.Y);
    }

    /// <summary>Whether the step drills as the one before it did, and it is not known where: as much of the place that it begins at, and no move of it ends at a third.</summary>
    bool IsNextHoleLost()
    {
        if (!_step.RepeatsHole)
            return false;
        ref readonly var hole = ref _step.Holes[0];
        var frame = _step.ToFrame.X + _step.ToFrame.Y;
        return !double.IsFinite(hole.X + hole.Y + frame) && _step.Moves[0].From is var from && !double.IsFinite(from.X + from.Y + frame);
    }

    /// <summary>Whether it is not known of any move where it ends: none of them can be held against anything.</summary>
    bool IsStepLost()
    {
        var moves = false;
        foreach (ref readonly var move in _step.Moves.Items)
        {
            if (!move.IsMotion)
                continue;
            if (IsPlaceKnown(move))
                return false;
            moves = true;
        }
        return moves;
    }

    bool IsPlaceKnown(in Move move)
    {
        var place = move.To + _step.ToFrame;
        return double.IsFinite(place.X + place.Y + place.Z);
    }

    bool AreAllFar()
    {
        FindApproaches();
        foreach (ref readonly var approach in _approaches.AsSpan(0, _step.Moves.Count))
            if (!double.IsPositiveInfinity(approach.Distance))
                return false;
        return true;
    }

    void FindApproaches()
    {
        if (_approachesKnown >= _step.Moves.Count)
            return;
        if (_approaches.Length < _step.Moves.Count)
            _approaches = new Approach[_step.Moves.Count * 2];
        for (var i = 0; i < _step.Moves.Count; i++)
            _approaches[i] = Job.ApproachOf(_step.Moves[i], _step.ToFrame, _step.After.Tool, Job.Setup.Clearance);
        _approachesKnown = _step.Moves.Count;
    }

    void ForgetNearness()
    {
        _approachesKnown = 0;
        _nearness = Nearness.NotAsked;
        _areContactsKnown = false;
    }
}
