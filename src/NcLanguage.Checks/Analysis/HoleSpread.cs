namespace NcLanguage.Checks.Analysis;

/// <summary>The least rectangle about some places of holes, in whole steps of <see cref="HolePlace.Step"/>.</summary>
readonly record struct HoleBox(long MinX, long MaxX, long MinY, long MaxY)
{
    /// <summary>About no place.</summary>
    public static HoleBox Empty { get; } = new(long.MaxValue, long.MinValue, long.MaxValue, long.MinValue);

    public bool Holds(long x, long y) => x >= MinX && x <= MaxX && y >= MinY && y <= MaxY;

    /// <summary>Whether a place may lie in both.</summary>
    public bool Meets(in HoleBox other) => MinX <= other.MaxX && other.MinX <= MaxX && MinY <= other.MaxY && other.MinY <= MaxY;

    public HoleBox With(long x, long y) => new(Math.Min(MinX, x), Math.Max(MaxX, x), Math.Min(MinY, y), Math.Max(MaxY, y));

    public HoleBox With(in HoleBox other) =>
        new(Math.Min(MinX, other.MinX), Math.Max(MaxX, other.MaxX), Math.Min(MinY, other.MinY), Math.Max(MaxY, other.MaxY));
}

/// <summary>Some holes of a run, one after the other, and the least rectangle about them.</summary>
/// <param name="First">The first of them among the holes of the part.</param>
readonly record struct HoleGroup(int First, HoleBox Box);

/// <summary>How the holes of a part lie: told when they have just been drilled, so that whoever looks for holes that are drilled twice need not look at each in most parts.</summary>
/// <param name="Groups">The holes in groups of a few, none of which belongs to two runs: rows and slanting lines of holes lie far more apart than the rectangles about all of them.</param>
/// <param name="Head">About the holes up to where a run begins behind the first of them.</param>
/// <param name="EndOfHead">The first hole of that run; the number of holes where none begins.</param>
/// <param name="Tail">About those of the last run.</param>
/// <param name="FirstOfLast">The first hole of the last run; 0 where none begins behind the first hole.</param>
/// <param name="MayRepeat">Whether one run of them may come to a place twice; where not, it does not.</param>
sealed record HoleSpread(HoleGroup[] Groups, HoleBox Head, int EndOfHead, HoleBox Tail, int FirstOfLast, bool MayRepeat)
{
    /// <summary>Holes in one group.</summary>
    public const int MostInGroup = 16;

    /// <summary>Holes that are held against each other; of more it is not said that none repeats unless each lies outside all before it.</summary>
    const int MostHoles = 512;

    const int Seats = 4 * MostHoles;

    /// <summary>Takes up the holes of a part one by one.</summary>
    public sealed class Gatherer
    {
        readonly List<HoleGroup> _groups = [];
        HoleBox _head, _run, _group;
        int _count, _firstOfGroup, _firstOfLast, _endOfHead;
        bool _comesInto;

        public void Begin()
        {
            _groups.Clear();
            (_head, _run, _group) = (HoleBox.Empty, HoleBox.Empty, HoleBox.Empty);
            (_count, _firstOfGroup, _firstOfLast, _endOfHead, _comesInto) = (0, 0, 0, 0, false);
        }

        /// <summary>Notes that the hole which comes next, and is not the first of the part, begins a run.</summary>
        public void BeginRun()
        {
            if (_firstOfLast == 0)
                (_head, _endOfHead) = (_run, _count);
            EndGroup();
            (_firstOfLast, _run) = (_count, HoleBox.Empty);
        }

        /// <summary>Takes up a hole whose place is known.</summary>
        public void Add(long x, long y)
        {
            _comesInto |= _run.Holds(x, y);
            (_run, _group) = (_run.With(x, y), _group.With(x, y));
            Pass();
        }

        /// <summary>Takes up a hole whose place is not known.</summary>
        public void Pass()
        {
            if (++_count - _firstOfGroup == MostInGroup)
                EndGroup();
        }

        /// <param name="mixed">For each hole the number that its place is mixed to; 0 where it is not known.</param>
        public HoleSpread Take(HoleLog holes, ReadOnlySpan<uint> mixed)
        {
            EndGroup();
            var hasHead = _firstOfLast > 0;
            return new([.. _groups], hasHead ? _head : _run, hasHead ? _endOfHead : _count, _run, _firstOfLast, _comesInto && (_count > MostHoles || ComesBack(holes, mixed)));
        }

        void EndGroup()
        {
            if (_count > _firstOfGroup)
                _groups.Add(new HoleGroup(_firstOfGroup, _group));
            (_firstOfGroup, _group) = (_count, HoleBox.Empty);
        }
    }

    /// <summary>Whether two holes of one run lie at one place, whatever their depths; two places whose numbers happen to mix alike count as one.</summary>
    static bool ComesBack(HoleLog holes, ReadOnlySpan<uint> mixed)
    {
        // Open addressing, at most a quarter full.
        Span<uint> seats = stackalloc uint[Seats];
        seats.Clear();
        for (var i = 0; i < mixed.Length; i++)
        {
            if (i > 0 && !holes.GoesOn(i))
                seats.Clear();
            if (mixed[i] == 0)
                continue;
            var at = (int)mixed[i] & (Seats - 1);
            while (seats[at] != 0 && seats[at] != mixed[i])
                at = (at + 1) & (Seats - 1);
            if (seats[at] == mixed[i])
                return true;
            seats[at] = mixed[i];
        }
        return false;
    }
}
