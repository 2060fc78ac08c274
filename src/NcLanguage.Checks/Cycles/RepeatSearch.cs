using NcLanguage.Checks.Analysis;

namespace NcLanguage.Checks.Rules;

/// <summary>A hole that its run has drilled before.</summary>
/// <param name="Hole">Its place among the part's holes.</param>
/// <param name="Line">Its block, counted from 0 within its part.</param>
/// <param name="EarlierPart">The part that drilled it first; the same or an earlier one.</param>
/// <param name="EarlierLine">The block there.</param>
/// <param name="Finding">What is told of it; null where nothing is.</param>
readonly record struct HoleRepeat(int Hole, int Line, PartResult EarlierPart, int EarlierLine, Finding? Finding);

/// <summary>A run of holes that is not at its end when a part is: the holes of this part that belong to it, and those before.</summary>
/// <param name="Before">Its holes in earlier parts; null where it begins in this one.</param>
/// <param name="First">The first of the part's holes that belongs to it.</param>
sealed record RunOfHoles(RunOfHoles? Before, PartResult Part, int First)
{
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

    readonly PlaceSet _seen = new();
    readonly List<PartResult> _parts = [];
    RunOfHoles? _seenOf;

    /// <param name="part">A part with holes.</param>
    /// <param name="met">The run of holes that is not at its end before it; null where none is.</param>
    public PartRepeats Look(PartResult part, RunOfHoles? met)
    {
        if (!ReferenceEquals(met, _seenOf))
            Recall(met);
        List<HoleRepeat>? repeats = null;
        var (run, first, lastLine) = (met, 0, -1);
        var previous = met is null ? default : met.Part.Holes.PlaceOf(met.Part.Holes.Length - 1);
        _parts.Add(part);
        for (var i = 0; i < part.Holes.Length; i++)
        {
            var place = part.Holes.PlaceOf(i);
            if (!place.IsHop || place.Cycle != previous.Cycle || place.Tool != previous.Tool)
            {
                (run, first) = (null, i);
                Forget();
                _parts.Add(part);
            }
            previous = place;
            if (!place.IsPlaced || _seen.Add(place, _parts.Count - 1) is not { } earlier || place.Line == lastLine)
                continue;
            lastLine = place.Line;
            (repeats ??= []).Add(new HoleRepeat(i, place.Line, _parts[earlier.Part], earlier.Line, null));
        }
        _seenOf = new RunOfHoles(run, part, first);
        return new PartRepeats(met, _seenOf, repeats is null ? [] : [.. repeats]);
    }

    void Recall(RunOfHoles? run)
    {
        Forget();
        var stretches = new Stack<RunOfHoles>();
        for (; run is not null; run = run.Before)
            stretches.Push(run);
        foreach (var stretch in stretches)
        {
            _parts.Add(stretch.Part);
            for (var i = stretch.First; i < stretch.Part.Holes.Length; i++)
                if (stretch.Part.Holes.PlaceOf(i) is { IsPlaced: true } place)
                    _seen.Add(place, _parts.Count - 1);
        }
    }

    void Forget()
    {
        _seen.Clear();
        _parts.Clear();
    }

    /// <summary>Places of holes with the blocks that drilled them; clearing costs nothing.</summary>
    sealed class PlaceSet
    {
        readonly record struct Entry(long X, long Y, long Z, int Part, int Line, int Run);

        Entry[] _entries = new Entry[64];
        int _count;
        int _run = 1;

        public void Clear() => (_run, _count) = (_run + 1, 0);

        /// <summary>The block that drilled this place and depth before; null where none did.</summary>
        public (int Part, int Line)? Add(in HolePlace place, int part)
        {
            if (2 * _count >= _entries.Length)
                Grow();
            var at = IndexOf(place.X, place.Y, place.Bottom);
            if (_entries[at].Run == _run)
                return (_entries[at].Part, _entries[at].Line);
            if (_count < MostHoles)
            {
                _entries[at] = new Entry(place.X, place.Y, place.Bottom, part, place.Line, _run);
                _count++;
            }
            return null;
        }

        /// <summary>Where this place stands, or would.</summary>
        int IndexOf(long x, long y, long z)
        {
            var at = HashCode.Combine(x, y) & (_entries.Length - 1);
            while (_entries[at].Run == _run && (_entries[at].X != x || _entries[at].Y != y || _entries[at].Z != z))
                at = (at + 1) & (_entries.Length - 1);
            return at;
        }

        void Grow()
        {
            var old = _entries;
            _entries = new Entry[old.Length * 2];
            foreach (ref readonly var entry in old.AsSpan())
                if (entry.Run == _run)
                    _entries[IndexOf(entry.X, entry.Y, entry.Z)] = entry;
        }
    }
}
