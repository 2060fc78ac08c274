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
        public PlaceSet() => Clear();

        readonly record struct Place(long X, long Y, long Z, int Part, int Line);

        // Apart from the places, and small: they are looked through at each hole.
        readonly record struct Seat(uint Mixed, int Run, int Place);

        Seat[] _seats = new Seat[64];
        readonly List<Place> _places = [];
        int _run = 1;
        long _minX, _maxX, _minY, _maxY;

        public void Clear()
        {
            _run++;
            _places.Clear();
            (_minX, _maxX, _minY, _maxY) = (long.MaxValue, long.MinValue, long.MaxValue, long.MinValue);
        }

        /// <summary>The block that drilled this place and depth before; null where none did.</summary>
        public (int Part, int Line)? Add(in HolePlace place, int part)
        {
            // Of a long run that goes on where it has not been yet.
            if (_places.Count == MostHoles && (place.X < _minX || place.X > _maxX || place.Y < _minY || place.Y > _maxY))
                return null;
            if (2 * _places.Count >= _seats.Length)
                Grow();
            var mixed = (uint)(place.Mixed >> 32);
            var at = IndexOf(mixed, place);
            if (_seats[at].Run == _run)
                return (_places[_seats[at].Place].Part, _places[_seats[at].Place].Line);
            if (_places.Count < MostHoles)
            {
                _seats[at] = new Seat(mixed, _run, _places.Count);
                _places.Add(new Place(place.X, place.Y, place.Bottom, part, place.Line));
                (_minX, _maxX) = (Math.Min(_minX, place.X), Math.Max(_maxX, place.X));
                (_minY, _maxY) = (Math.Min(_minY, place.Y), Math.Max(_maxY, place.Y));
            }
            return null;
        }

        /// <summary>The seat of this place, or a free one for it.</summary>
        int IndexOf(uint mixed, in HolePlace place)
        {
            var at = (int)mixed & (_seats.Length - 1);
            while (_seats[at] is var seat && seat.Run == _run && (seat.Mixed != mixed || !IsAt(_places[seat.Place], place)))
                at = (at + 1) & (_seats.Length - 1);
            return at;
        }

        static bool IsAt(in Place known, in HolePlace place) => known.X == place.X && known.Y == place.Y && known.Z == place.Bottom;

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
    }
}
