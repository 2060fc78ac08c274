using NcLanguage.Control.State;

namespace NcLanguage.Control.Flow;

/// <summary>Where a run can go on: at a line, and there, before all that comes from above, at a branch whose condition is still to be looked at.</summary>
readonly record struct Place(int Line, bool IsBranch) : IComparable<Place>
{
    public int CompareTo(Place other) => Line != other.Line ? Line.CompareTo(other.Line) : other.IsBranch.CompareTo(IsBranch);
}

/// <summary>The program at the bottom of a run, or one call within it.</summary>
sealed class CallFrame(FlowText text, Region region, int number)
{
    readonly SortedDictionary<Place, ControlState> _waiting = [];

    /// <summary>Of those that wait, the ones of whose state something may be known.</summary>
    readonly HashSet<Place> _known = [];

    public FlowText Text { get; } = text;

    public Region Region { get; } = region;

    /// <summary>Number of the program or subroutine; −1 for the program itself.</summary>
    public int Number { get; } = number;

    /// <summary>Line in the caller behind which the run goes on.</summary>
    public int CallLine { get; init; }

    /// <summary>How the caller's numbers were read at the call.</summary>
    public DistanceMode CallersDistance { get; init; }

    /// <summary>The caller's variables, where the call has local ones of its own.</summary>
    public Variables? CallersVariables { get; init; }

    /// <summary>The variables that each pass begins with, where the call hands over arguments.</summary>
    public IReadOnlyList<(int Number, double Value)>? Arguments { get; init; }

    /// <summary>Whether the arguments stand in the call under letters (G65).</summary>
    public bool IsByLetters { get; init; }

    /// <summary>Passes still to come behind this one.</summary>
    public double PassesLeft { get; set; }

    /// <summary>Whether it is not known how many passes there are.</summary>
    public bool PassesAreUnknown { get; init; }

    /// <summary>What all returns so far have brought; null before the first.</summary>
    public ControlState? Returned { get; set; }

    /// <summary>Loops whose condition is not known and whose body runs, by the line of their beginning.</summary>
    public HashSet<int> UncertainLoops { get; } = [];

    /// <summary>Passes still to come of counted loops, by the line of their beginning.</summary>
    public Dictionary<int, double> Counts { get; } = [];

    /// <summary>The first place to which the run also goes, from a jump that may have been taken; null where there is none.</summary>
    public Place? FirstWaiting
    {
        get
        {
            // Asked before each block of a run, and hardly ever is there one.
            if (_waiting.Count == 0)
                return null;
            foreach (var (place, _) in _waiting)
                return place;
            return null;
        }
    }

    /// <summary>Notes that the run may also go on at a place with this state.</summary>
    public void Wait(Place place, in ControlState state)
    {
        _waiting[place] = _waiting.TryGetValue(place, out var other) ? StateJoin.Join(other, state) : state;
        _known.Add(place);
    }

    /// <summary>Whether another way through the program called may be taken than the one that runs.</summary>
    public bool HasOtherWays => Returned is not null || _waiting.Count > 0;

    /// <summary>Takes the state that waits at a place.</summary>
    public ControlState Take(Place place)
    {
        _waiting.Remove(place, out var state);
        _known.Remove(place);
        return state;
    }

    /// <summary>What waits, and what was returned, was reached from a loop that may run any number of times, or from a way that is lost: nothing is known there.</summary>
    public void LoseWays()
    {
        if (Returned is { } returned)
            Returned = ControlState.Unknown with { Started = true, Set = returned.Set };
        // What was lost before has nothing to lose: a program may lose its way as often as it has lines, and as many ways may wait.
        foreach (var place in _known)
            _waiting[place] = _waiting[place].Forgotten() with { Started = true };
        _known.Clear();
    }
}
