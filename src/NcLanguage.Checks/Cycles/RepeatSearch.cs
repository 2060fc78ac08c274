using NcLanguage.Checks.Analysis;

namespace NcLanguage.Checks.Rules;

/// <summary>A hole that its run has drilled before.</summary>
/// <param name="Hole">Its place among the part's holes.</param>
/// <param name="Line">Its block, counted from 0 within its part.</param>
/// <param name="EarlierPart">The part that drilled it first; the same or an earlier one.</param>
/// <param name="EarlierLine">The block there.</param>
/// <param name="Finding">What is told of it; null where that has not been asked for.</param>
record struct HoleRepeat(int Hole, int Line, PartResult EarlierPart, int EarlierLine, Finding? Finding);

/// <summary>A run of holes that is not at its end when a part is: the holes of this part that belong to it, and those before.</summary>
/// <param name="Before">Its holes in earlier parts; null where it begins in this one.</param>
/// <param name="First">The first of the part's holes that belongs to it.</param>
/// <param name="Parts">How many parts have holes of it.</param>
/// <param name="Box">About all of them.</param>
sealed record RunOfHoles(RunOfHoles? Before, PartResult Part, int First, int Parts, HoleBox Box)
{
    /// <summary>Parts that a run may have for it to be asked of each whether a hole lies in it: of a longer one each hole is looked for among those that are remembered.</summary>
    const int MostParts = 8;

    /// <summary>Groups of holes that are held against each other before all holes are.</summary>
    const int MostLooks = 16;

    /// <summary>Whether a hole of a part that goes on with it may lie where one of its own does.</summary>
    public bool MayMeet(HoleLog head)
    {
        if (!Box.Meets(head.Spread.Head))
            return false;
        if (Parts > MostParts)
            return true;
        var looks = MostLooks;
        for (var run = this; run is not null; run = run.Before)
            if (head.HeadMeets(run.Part.Holes, run.First, ref looks))
                return true;
        return false;
    }

    /// <summary>Whether another is made of the same holes of the same parts.</summary>
    public bool IsSameAs(RunOfHoles other) => ReferenceEquals(Before, other.Before) && ReferenceEquals(Part, other.Part) && First == other.First;
}

/// <summary>The repeats in a part, and the runs of holes that it met and left: they hold for as long as it meets the same run.</summary>
sealed record PartRepeats(RunOfHoles? Before, RunOfHoles After, HoleRepeat[] Items);

/// <summary>Looks for holes that one run drills twice, part by part in the order of the run.</summary>
sealed class RepeatSearch
{
    /// <summary>Places of one run that are remembered; holes behind them are compared with those.</summary>
    public const int MostHoles = 5_000;

    readonly List<PartResult> _parts = [];
    readonly List<Drilled> _drilled = [];
    readonly List<HoleRepeat> _repeats = [];
    Seat[] _seats = new Seat[64];
    int _run = 1;
    RunOfHoles? _seenOf;

    /// <param name="part">A part with holes.</param>
    /// <param name="met">The run of holes that is not at its end before it; null where none is.</param>
    public PartRepeats Look(PartResult part, RunOfHoles? met)
    {
        var goesOn = met is not null && part.Holes.GoesOnBehind(met.Part.Holes) ? met : null;
        var after = Left(part, goesOn);
        var spread = part.Holes.Spread;
        if (!spread.MayRepeat && (goesOn is null || !goesOn.MayMeet(part.Holes)))
            return new PartRepeats(met, after, []);
        Recall(goesOn);
        _repeats.Clear();
        var lastLine = -1;
        _parts.Add(part);
        for (var i = 0; i < part.Holes.Length; i++)
        {
            if (i > 0 && !part.Holes.GoesOn(i))
            {
                Forget();
                _parts.Add(part);
            }
            if (Add(part.Holes, i) is not { } earlier || part.Holes.LineOf(i) == lastLine)
                continue;
            lastLine = part.Holes.LineOf(i);
            _repeats.Add(new HoleRepeat(i, lastLine, _parts[earlier.Part], _parts[earlier.Part].Holes.LineOf(earlier.Hole), null));
        }
        _seenOf = after;
        return new PartRepeats(met, after, [.. _repeats]);
    }

    /// <summary>The run of holes that is not at its end when a part is.</summary>
    /// <param name="goesOn">The one that the part's first hole belongs to; null where that begins another.</param>
    static RunOfHoles Left(PartResult part, RunOfHoles? goesOn)
    {
        var spread = part.Holes.Spread;
        return spread.FirstOfLast > 0 || goesOn is null
            ? new RunOfHoles(null, part, spread.FirstOfLast, 1, spread.Tail)
            : new RunOfHoles(goesOn, part, 0, goesOn.Parts + 1, goesOn.Box.With(spread.Tail));
    }

    /// <summary>Sees to it that the places of a run are remembered, and no others: of one that goes on from what is remembered, what is missing.</summary>
    void Recall(RunOfHoles? run)
    {
        var stretches = new Stack<RunOfHoles>();
        for (; run is not null && !ReferenceEquals(run, _seenOf); run = run.Before)
            stretches.Push(run);
        if (run is null)
            Forget();
        foreach (var stretch in stretches)
        {
            _parts.Add(stretch.Part);
            for (var i = stretch.First; i < stretch.Part.Holes.Length; i++)
                Add(stretch.Part.Holes, i);
        }
    }

    /// <summary>Remembers a hole of the last of the parts; the one at its place and depth that is remembered already, or null.</summary>
    Drilled? Add(HoleLog holes, int hole)
    {
        if (holes.MixedOf(hole) is not (> 0 and var mixed))
            return null;
        if (2 * _drilled.Count >= _seats.Length)
            Grow();
        var at = (int)mixed & (_seats.Length - 1);
        for (; _seats[at] is var seat && seat.Run == _run; at = (at + 1) & (_seats.Length - 1))
            if (seat.Mixed == mixed && _drilled[seat.Hole] is var earlier && AreOne(_parts[earlier.Part].Holes.PlaceOf(earlier.Hole), holes.PlaceOf(hole)))
                return earlier;
        if (_drilled.Count < MostHoles)
        {
            _seats[at] = new Seat(mixed, _run, _drilled.Count);
            _drilled.Add(new Drilled(_parts.Count - 1, hole));
        }
        return null;
    }

    static bool AreOne(in HolePlace a, in HolePlace b) => a.X == b.X && a.Y == b.Y && a.Bottom == b.Bottom;

    // Nothing has to be cleared: seats of another run count as free.
    void Forget()
    {
        _run++;
        _drilled.Clear();
        _parts.Clear();
    }

    void Grow()
    {
        var old = _seats;
        _seats = new Seat[old.Length * 2];
        foreach (ref readonly var seat in old.AsSpan())
        {
            if (seat.Run != _run)
                continue;
            var at = (int)seat.Mixed & (_seats.Length - 1);
            while (_seats[at].Run == _run)
                at = (at + 1) & (_seats.Length - 1);
            _seats[at] = seat;
        }
    }

    /// <summary>A hole of one of the parts of the run.</summary>
    readonly record struct Drilled(int Part, int Hole);

    /// <summary>A seat of a table with open addressing: a hole that is remembered, by what its place is mixed to.</summary>
    /// <param name="Run">The run that it belongs to.</param>
    /// <param name="Hole">Its place among <see cref="_drilled"/>.</param>
    readonly record struct Seat(uint Mixed, int Run, int Hole);
}
