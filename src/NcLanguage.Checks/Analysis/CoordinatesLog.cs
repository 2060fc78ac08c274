using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Analysis;

/// <summary>The coordinates that places are meant in from a block on, counted from 0 within its part.</summary>
readonly record struct CoordinatesFrom(int Block, WorkCoordinates Coordinates);

/// <summary>Gathers, part by part, the coordinates that places of the blocks are meant in, and which of them the run works under.</summary>
sealed class CoordinatesLog
{
    /// <summary>No work offset is worked under, or none that is known.</summary>
    public const int None = 0;

    /// <summary>More than one is worked under, or one that the program has shifted.</summary>
    public const int Several = -1;

    readonly List<CoordinatesFrom> _changes = [];
    CoordinatesFrom[] _entry = [];
    int _used;
    bool _isUsed;

    /// <summary>Those in force.</summary>
    public WorkCoordinates Now { get; private set; } = WorkCoordinates.Of(ControlState.AtStart(None));

    /// <summary>What is worked under by two stretches of a run.</summary>
    public static int Join(int a, int b) => a == b || b == None ? a : a == None ? b : Several;

    /// <summary>Begins a part.</summary>
    public void Begin(in ControlState entry)
    {
        _changes.Clear();
        Change(0, entry);
        _used = None;
    }

    public void Note(Step step, int block)
    {
        // Where another program begins behind the end of one, nothing is known any more.
        if ((step.Sets & WorkCoordinates.Slots) != 0 || step.Before.Ended != step.After.Ended)
            Change(block, step.After);
        if (!_isUsed && (step.Events & (StepEvents.Moves | StepEvents.Holes | StepEvents.Cut)) != 0 && Works(step))
            (_isUsed, _used) = (true, Join(_used, !Now.IsKnown ? None : Now.IsShifted ? Several : Now.WorkOffset));
    }

    /// <summary>Ends the part: what its blocks meet, and what it works under.</summary>
    public CoordinatesFrom[] Take(out int used)
    {
        used = _used;
        if (_changes.Count > 1)
            return [.. _changes];
        // Most parts of a run meet the same and change nothing.
        if (_entry.Length == 0 || !ReferenceEquals(_entry[0].Coordinates, Now))
            _entry = [.. _changes];
        return _entry;
    }

    void Change(int block, in ControlState state)
    {
        var now = Now.In(state);
        if (_changes.Count > 0 && ReferenceEquals(now, Now))
            return;
        (Now, _isUsed) = (now, false);
        _changes.Add(new CoordinatesFrom(block, now));
    }

    /// <summary>Whether a step works under the coordinates in force: it cuts, or goes somewhere under a work offset that the program has set itself. What goes to places
    /// of the machine, as a program does before it sets one, does not.</summary>
    static bool Works(Step step)
    {
        if ((step.Events & (StepEvents.Holes | StepEvents.Cut)) != 0)
            return true;
        if (!step.After.HasSet(Slot.WorkOffset))
            return false;
        foreach (ref readonly var move in step.Moves.Items)
            if (move.IsMotion && move.Role != MoveRole.Machine)
                return true;
        return false;
    }
}
