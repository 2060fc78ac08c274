using System.Collections;
using System.Runtime.InteropServices;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Analysis;

/// <summary>The holes of a part in the order drilled, in a quarter of the room: what one hole has in common with the one before is held once.</summary>
public sealed class HoleLog : IReadOnlyList<HoleResult>
{
    readonly Place[] _places;
    readonly int[] _lines;
    readonly uint[] _mixed;
    readonly Likeness[] _likenesses;

    // Of most parts there is nothing to hold of these: then they are empty.
    readonly int[] _cutsBefore;
    readonly int[] _nearOf;
    readonly Approach[] _near;

    HoleLog(ReadOnlySpan<Spot> spots, Likeness[] likenesses, Approach[] near, HoleSpread.Gatherer spread, Rows rows)
    {
        _places = spots.IsEmpty ? [] : GC.AllocateUninitializedArray<Place>(spots.Length);
        _mixed = spots.IsEmpty ? [] : GC.AllocateUninitializedArray<uint>(spots.Length);
        var cuts = 0;
        for (var i = 0; i < spots.Length; i++)
        {
            ref readonly var spot = ref spots[i];
            _places[i] = spot.Place;
            cuts |= spot.CutsBefore;
        }
        _likenesses = likenesses;
        _near = near;
        _lines = rows.LinesOf(spots);
        (_cutsBefore, _nearOf) = (cuts == 0 ? [] : rows.CutsOf(spots), near.Length == 0 ? [] : rows.NearOf(spots));
        (LowestR, LowestBottom, HighestBottom) = (double.PositiveInfinity, double.PositiveInfinity, double.NegativeInfinity);
        foreach (ref readonly var likeness in likenesses.AsSpan())
        {
            BeginsRun |= !likeness.IsHop;
            if (likeness.RLevel + likeness.ToFrame.Z < LowestR)
                LowestR = likeness.RLevel + likeness.ToFrame.Z;
            if (likeness.Bottom + likeness.ToFrame.Z < LowestBottom)
                LowestBottom = likeness.Bottom + likeness.ToFrame.Z;
            if (likeness.Bottom + likeness.ToFrame.Z > HighestBottom)
                HighestBottom = likeness.Bottom + likeness.ToFrame.Z;
        }
        Lay(spread);
        Spread = spread.Take(this, _mixed);
    }

    public static HoleLog Empty { get; } = new([], [], [], new(), new());

    /// <summary>How the holes lie.</summary>
    internal HoleSpread Spread { get; }

    public int Length => _places.Length;

    /// <summary>Whether one of the holes is the first of a run.</summary>
    internal bool BeginsRun { get; }

    /// <summary>The lowest known R level in the setup's frame, mm; infinite where none is known.</summary>
    internal double LowestR { get; }

    /// <summary>The lowest known bottom in the setup's frame, mm; infinite where none is known.</summary>
    internal double LowestBottom { get; }

    /// <summary>The highest known bottom in the setup's frame, mm; −infinite where none is known.</summary>
    internal double HighestBottom { get; }

    public HoleResult this[int index]
    {
        get
        {
            ref readonly var place = ref _places[index];
            ref readonly var all = ref LikenessOf(index);
            return new HoleResult(
                new Hole(all.Cycle, all.Tool, place.X, place.Y, all.RLevel, all.Bottom, all.InitialLevel, all.ArriveAt, all.ReturnTo, all.DwellSeconds,
                    all.Feed, all.Speed, all.Peck, all.IsHop)
                {
                    ProgrammedFeed = all.ProgrammedFeed,
                },
                _lines[index], _nearOf.Length == 0 || _nearOf[index] < 0 ? Approach.None : _near[_nearOf[index]], all.ToFrame, all.Plane, all.Return,
                _cutsBefore.Length == 0 ? 0 : _cutsBefore[index]);
        }
    }

    /// <summary>The block (counted from 0 within the part) that drilled a hole.</summary>
    public int LineOf(int index) => _lines[index];

    /// <summary>Whether a tool of one of these kinds drilled one of the holes.</summary>
    internal bool IsDrilledBy(Setup setup, ReadOnlySpan<ToolKind?> kinds)
    {
        foreach (ref readonly var likeness in _likenesses.AsSpan())
            if (setup.FindTool(likeness.Tool) is { } tool && kinds.Contains(tool.Kind))
                return true;
        return false;
    }

    /// <summary>Whether a hole is drilled otherwise than the program says because of the machine's limits.</summary>
    internal bool MeetsLimits(MachineProfile machine)
    {
        foreach (ref readonly var likeness in _likenesses.AsSpan())
            if (new DrillingRate(likeness.ProgrammedFeed, likeness.Feed).IsLimited || new DrillingRate(likeness.Speed, machine.SpeedOf(likeness.Speed)).IsLimited)
                return true;
        return false;
    }

    /// <summary>The cycle that drilled a hole: 81 for G81.</summary>
    public int CycleOf(int index) => LikenessOf(index).Cycle;

    /// <summary>Whether a hole was reached from another of the same run.</summary>
    public bool IsHop(int index) => LikenessOf(index).IsHop;

    /// <summary>A hole's place in whole steps, and what tells one operation from another.</summary>
    internal HolePlace PlaceOf(int index)
    {
        ref readonly var all = ref LikenessOf(index);
        var bottom = new Point3(_places[index].X, _places[index].Y, all.Bottom) + all.ToFrame;
        return all.Plane == WorkPlane.XY && bottom.IsKnown
            ? new HolePlace(HolePlace.Steps(bottom.X), HolePlace.Steps(bottom.Y), HolePlace.Steps(bottom.Z), all.Tool, all.Cycle, true)
            : new HolePlace(0, 0, 0, all.Tool, all.Cycle, false);
    }

    int IReadOnlyCollection<HoleResult>.Count => Length;

    public Enumerator GetEnumerator() => new(this);

    IEnumerator<HoleResult> IEnumerable<HoleResult>.GetEnumerator()
    {
        for (var i = 0; i < Length; i++)
            yield return this[i];
    }

    IEnumerator IEnumerable.GetEnumerator() => ((IEnumerable<HoleResult>)this).GetEnumerator();

    /// <summary>What a hole has in common with those beside it.</summary>
    ref readonly Likeness LikenessOf(int index)
    {
        var (low, high) = (0, _likenesses.Length - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high) = _likenesses[middle].First <= index ? (middle, high) : (low, middle - 1);
        }
        return ref _likenesses[low];
    }

    /// <summary>Gathers where the holes lie.</summary>
    void Lay(HoleSpread.Gatherer spread)
    {
        spread.Begin();
        for (var like = 0; like < _likenesses.Length; like++)
        {
            ref readonly var all = ref _likenesses[like];
            var end = like + 1 < _likenesses.Length ? _likenesses[like + 1].First : Length;
            var isPlaced = all.Plane == WorkPlane.XY && !double.IsNaN(all.Bottom);
            for (var i = all.First; i < end; i++)
            {
                if (i > 0 && !all.Continues(i > all.First ? all : _likenesses[like - 1]))
                    spread.BeginRun();
                var place = new Point3(_places[i].X, _places[i].Y, 0) + all.ToFrame;
                if (!isPlaced || !place.IsKnown)
                {
                    _mixed[i] = 0;
                    spread.Pass();
                    continue;
                }
                var (x, y) = (HolePlace.Steps(place.X), HolePlace.Steps(place.Y));
                _mixed[i] = HolePlace.Mix(x, y);
                spread.Add(x, y);
            }
        }
    }

    /// <summary>What a hole's place is mixed to; 0 where it is not known, or not in the XY plane.</summary>
    internal uint MixedOf(int index) => _mixed[index];

    /// <summary>Whether a hole in the head of this part may lie where one of another part does, from one of its runs on.</summary>
    /// <param name="looks">How many groups may still be held against each other, hole by hole; where there are more, they may.</param>
    internal bool HeadMeets(HoleLog other, int first, ref int looks)
    {
        foreach (ref readonly var group in Spread.Groups.AsSpan())
        {
            if (group.First >= Spread.EndOfHead)
                return false;
            foreach (ref readonly var earlier in other.Spread.Groups.AsSpan())
                if (earlier.First >= first && group.Box.Meets(earlier.Box) && (--looks < 0 || MixedIn(group).ContainsAny(other.MixedIn(earlier))))
                    return true;
        }
        return false;
    }

    // More holes than the group's would be looked at where the next begins a run: that they may be the same does no harm.
    ReadOnlySpan<uint> MixedIn(in HoleGroup group) => _mixed.AsSpan(group.First, Math.Min(HoleSpread.MostInGroup, _mixed.Length - group.First));

    /// <summary>Whether a hole belongs to the same run as the one before it in the part.</summary>
    internal bool GoesOn(int index) => LikenessOf(index).Continues(LikenessOf(index - 1));

    /// <summary>Whether the first hole belongs to the same run as the last one of the part before; both have holes.</summary>
    internal bool GoesOnBehind(HoleLog before) => _likenesses[0].Continues(before._likenesses[^1]);

    public struct Enumerator(HoleLog log)
    {
        int _at = -1;

        public readonly HoleResult Current => log[_at];

        public bool MoveNext() => ++_at < log.Length;
    }

    readonly record struct Place(double X, double Y);

    struct Spot
    {
        public Place Place;
        public int Line, CutsBefore, Near;
    }

    /// <summary>Picks one number of each spot. In parts that go on alike most rows of them are alike.</summary>
    sealed class Rows
    {
        readonly RowKept<int> _lines = new(), _cuts = new(), _near = new();
        int[] _made = [];

        public int[] LinesOf(ReadOnlySpan<Spot> spots)
        {
            var made = Begin(spots.Length);
            for (var i = 0; i < spots.Length; i++)
                made[i] = spots[i].Line;
            return _lines.Of(made);
        }

        public int[] CutsOf(ReadOnlySpan<Spot> spots)
        {
            var made = Begin(spots.Length);
            for (var i = 0; i < spots.Length; i++)
                made[i] = spots[i].CutsBefore;
            return _cuts.Of(made);
        }

        public int[] NearOf(ReadOnlySpan<Spot> spots)
        {
            var made = Begin(spots.Length);
            for (var i = 0; i < spots.Length; i++)
                made[i] = spots[i].Near;
            return _near.Of(made);
        }

        Span<int> Begin(int count)
        {
            if (_made.Length < count)
                _made = new int[count];
            return _made.AsSpan(0, count);
        }
    }

    /// <param name="First">The first of the holes that it is true of.</param>
    readonly record struct Likeness(
        int First, int Cycle, int Tool, double RLevel, double Bottom, double InitialLevel, double ArriveAt, double ReturnTo, double DwellSeconds, double Feed, double Speed, double Peck,
        bool IsHop, Point3 ToFrame, WorkPlane Plane, ReturnLevel Return, double ProgrammedFeed)
    {
        /// <summary>Whether a hole belongs to the same run as the one before it.</summary>
        public bool Continues(in Likeness before) => IsHop && Cycle == before.Cycle && Tool == before.Tool;
    }

    /// <summary>Gathers the holes of one part after the other.</summary>
    internal sealed class Gatherer
    {
        readonly List<Spot> _spots = [];
        readonly List<Likeness> _likenesses = [];
        readonly List<Approach> _near = [];
        readonly HoleSpread.Gatherer _spread = new();
        readonly Rows _rows = new();

        /// <summary>Adds a hole whose traverse nothing comes near to.</summary>
        public void Add(in Hole hole, Step step, int line, int cutsBefore) => Add(hole, step, line, cutsBefore, -1);

        public void Add(in Hole hole, Step step, int line, int cutsBefore, in Approach traverse)
        {
            var isNear = traverse != Approach.None;
            if (isNear && (_near.Count == 0 || !AreSame(_near[^1], traverse)))
                _near.Add(traverse);
            Add(hole, step, line, cutsBefore, isNear ? _near.Count - 1 : -1);
        }

        // Where places are not known that is so of one hole after the other.
        static bool AreSame(in Approach a, in Approach b) => (double.IsNaN(a.Distance) && double.IsNaN(b.Distance) && a.ObstacleIndex == b.ObstacleIndex) || a == b;

        void Add(in Hole hole, Step step, int line, int cutsBefore, int near)
        {
            if (!step.RepeatsHole || _likenesses.Count == 0)
                AddLikeness(hole, step);
            AddNext(hole.X, hole.Y, line, cutsBefore, near);
        }

        /// <summary>Adds a hole that differs from the last one, which is there, in its place alone.</summary>
        /// <param name="isNear">Whether the way to it is as near as the last one that was; otherwise nothing comes near to it.</param>
        public void AddNext(double x, double y, int line, int cutsBefore, bool isNear) => AddNext(x, y, line, cutsBefore, isNear ? _near.Count - 1 : -1);

        void AddNext(double x, double y, int line, int cutsBefore, int near)
        {
            ref var spot = ref _spots.Next();
            (spot.Place, spot.Line, spot.CutsBefore, spot.Near) = (new Place(x, y), line, cutsBefore, near);
        }

        void AddLikeness(in Hole hole, Step step)
        {
            var likeness = new Likeness(
                _likenesses.Count == 0 ? 0 : _likenesses[^1].First, hole.Cycle, hole.Tool, hole.RLevel, hole.Bottom, hole.InitialLevel, hole.ArriveAt, hole.ReturnTo, hole.DwellSeconds, hole.Feed, hole.Speed, hole.Peck,
                hole.IsHop, step.ToFrame, step.After.Plane, step.After.ReturnLevel, hole.ProgrammedFeed);
            if (_likenesses.Count == 0 || _likenesses[^1] != likeness)
                _likenesses.Add(likeness with { First = _spots.Count });
        }

        /// <summary>What was gathered, and begins anew.</summary>
        public HoleLog Take()
        {
            if (_spots.Count == 0)
                return Empty;
            var log = new HoleLog(CollectionsMarshal.AsSpan(_spots), [.. _likenesses], _near.Count == 0 ? [] : [.. _near], _spread, _rows);
            _spots.Clear();
            _likenesses.Clear();
            _near.Clear();
            return log;
        }
    }
}

/// <summary>A hole's place in the setup's frame in whole steps of <see cref="Step"/>, and what tells one operation from another.</summary>
/// <param name="IsPlaced">Whether the place is known and lies in the XY plane.</param>
readonly record struct HolePlace(long X, long Y, long Bottom, int Tool, int Cycle, bool IsPlaced)
{
    /// <summary>Places nearer than this are one place, mm.</summary>
    public const double Step = 1 / StepsPerMm;

    const double StepsPerMm = 1000;

    /// <summary>2⁶⁴ by the golden ratio: numbers that lie close together are spread by it (Fibonacci hashing).</summary>
    public const ulong Spread = 11400714819323198485;

    /// <summary>A number that X and Y are mixed to, as good as never the same for two places.</summary>
    public ulong Mixed => MixOf(X, Y);

    /// <summary>A short number of the same kind, that is not 0: seldom the same for two places.</summary>
    public static uint Mix(long x, long y) => Math.Max(1, (uint)(MixOf(x, y) >> 32));

    static ulong MixOf(long x, long y) => (((ulong)x * Spread) ^ (ulong)y) * Spread;

    public static long Steps(double mm) => (long)Math.Round(mm * StepsPerMm);
}
