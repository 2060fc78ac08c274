using System.Runtime.CompilerServices;
using NcLanguage.Control.Flow;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Execution;

/// <summary>What happened in a step, for those who only care about some of it.</summary>
[Flags]
public enum StepEvents
{
    None = 0, Faults = 1, Moves = 2, Holes = 4, ToolChange = 8, ProgramEnd = 16, Skipped = 32, Words = 64, Cut = 128,

    /// <summary>The block did not run because the program has ended.</summary>
    NotRun = 256,

    /// <summary>The block read a variable that hangs on where the tool stands.</summary>
    ReadsPlace = 512,

    /// <summary>The block makes the control stop with an alarm.</summary>
    Alarm = 1024,

    /// <summary>The block writes a variable that holds a datum.</summary>
    WritesDatum = 2048,

    /// <summary>M99 at the end of a program that nothing calls: the control begins it again.</summary>
    StartsAgain = 4096,

    /// <summary>The block holds something that is no word, a word that cannot be read or a block number of an odd form, or is longer than the control takes, or begins with a byte order mark.</summary>
    OddText = 8192,

    /// <summary>The block set something beside a motion, a cycle or a feed, or for the first time, ended a cycle or began another, or something happened that had not happened before: true of few blocks.</summary>
    News = 16384,

    /// <summary>The block drills and is more than the next place of a run of holes: it begins the run, or sets something as well.</summary>
    HolesDiffer = 32768,

    /// <summary>The block holds a code beside that of its motion, or one that cannot be read.</summary>
    Codes = 65536,

    /// <summary>The block moves along an arc out of the ordinary: in another plane than XY, with a centre along Z in that, or larger than <see cref="Moves.Arcs.GreatestRadius"/>.</summary>
    OddArc = 131072,

    /// <summary>The block cuts, and not in the holes of a cycle.</summary>
    Path = 262144,

    /// <summary>No feed is known, or it is 0, or the feed mode in force wants one in each block that cuts.</summary>
    FeedWanted = 524288,

    /// <summary>The block gives a feed.</summary>
    FeedGiven = 1048576,
}

/// <summary>One executed block. One object serves a whole run: what is to outlive the next block must be copied.</summary>
public sealed class Step
{
    readonly Place _one = new();
    readonly Place _other = new();
    Place _before;
    Place _after;

    // States that are alike but for what plain moves change bear the same number, whichever step holds them.
    static long _steps;
    readonly long _numbers = Interlocked.Increment(ref _steps) << 32;
    uint _states;

    public Step() => (_before, _after) = (_one, _other);

    /// <summary>The state the block met.</summary>
    public ref readonly ControlState Before => ref _before.State;

    /// <summary>The state it left.</summary>
    public ref readonly ControlState After => ref _after.State;

    /// <summary>What the block's words set.</summary>
    public Slot Sets;

    public StepEvents Events;

    /// <summary>What to add to work coordinates to stand in the setup's frame, mm; NaN where not known.</summary>
    public Point3 ToFrame;

    /// <summary>What to add to work coordinates for machine coordinates of the gauge point, mm; NaN where not known.</summary>
    public Point3 ToMachine;

    public Batch<Move> Moves { get; } = new();

    public Batch<Hole> Holes { get; } = new();

    public Batch<Fault> Faults { get; } = new();

    /// <summary>The blocks behind the one that runs, for what depends on them; null where none is known. Whoever runs the block sets it.</summary>
    public IBlocksAhead? Ahead { get; set; }

    /// <summary>Whether the block stands in a program or subroutine that the run has called. Whoever runs the block sets it.</summary>
    public bool IsInCall { get; set; }

    /// <summary>Of a block with faults the line, from 0, whose G65 has given its local variables; −1 where none is known to have. Whoever runs the block sets it.</summary>
    public int LineOfArguments { get; set; } = -1;

    /// <summary>Where the block sends the run.</summary>
    public Transfer Transfer { get; internal set; }

    /// <summary>The local variables that a call gives, by number.</summary>
    internal List<(int Number, double Value)> Arguments => _arguments ??= [];

    List<(int Number, double Value)>? _arguments;

    /// <summary>The words of the block, by letter. What is to outlive the next block may be given a place of its own before that is run.</summary>
    public BlockWords Words { get; set; } = new();

    /// <summary>The offsets in force, which seldom change from one block to the next.</summary>
    internal OffsetMemo Offsets { get; } = new();

    /// <summary>What the block before did, where the next hole of its run does the same at another place; null where that is not so.</summary>
    internal HolePattern? HoleBefore { get; private set; }

    /// <summary>What this block did, for the next hole of its run; null where it drilled none, or more.</summary>
    internal HolePattern? Hole { private get; set; }

    /// <summary>Storage for <see cref="Hole"/>.</summary>
    internal HolePattern OwnHole => _ownHole ??= new HolePattern();

    HolePattern? _ownHole;

    /// <summary>Whether a block behind this one may go on like it.</summary>
    internal bool LeadsOn => Plain != PlainMoves.None || Hole is not null;

    /// <summary>Whether the next block may go on from this one, so that it is worth its while to know what both do alike.</summary>
    internal bool IsFollowed { get; private set; }

    /// <summary>The plain moves of which the block before showed that they change nothing but where the tool stands, and the motion and feed that they name themselves.</summary>
    internal PlainMoves PlainBefore { get; private set; }

    /// <summary>The same of this block, for the next.</summary>
    internal PlainMoves Plain { private get; set; }

    /// <summary>True when the block made one more plain move like those before it.</summary>
    public bool IsPlainMove { get; internal set; }

    /// <summary>True when only the state has been made and the rest follows from that of the block before.</summary>
    public bool IsLikeTheLast => IsPlainMove || RepeatsHole;

    /// <summary>The state behind a block of this kind.</summary>
    internal ref ControlState AfterTold => ref _after.State;

    /// <summary>True when the block drilled one hole as the block before it drilled its last: they differ in X, in Y and in time alone.</summary>
    public bool RepeatsHole { get; internal set; }

    /// <summary>A step to look ahead with.</summary>
    internal Step Preview => _preview ??= new Step();

    Step? _preview;

    /// <summary>Begins with a state from elsewhere.</summary>
    internal void Begin(in ControlState before)
    {
        _before = ReferenceEquals(_after, _one) ? _other : _one;
        _before.Become(before, NewNumber());
        (HoleBefore, PlainBefore, IsFollowed) = (null, PlainMoves.None, false);
        Clear();
        ForgetFrames();
    }

    /// <summary>Begins behind the block that it ran last.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void Go()
    {
        (_before, _after) = (_after, ReferenceEquals(_after, _one) ? _other : _one);
        (HoleBefore, PlainBefore, IsFollowed) = (Hole, Plain, true);
        Clear();
    }

    /// <summary>Begins behind the block of another step, whose state it looks at where that stands.</summary>
    internal void Follow(Step step)
    {
        _before = step._after;
        GoOnAs(step);
    }

    /// <summary>The same with a copy of all that is looked at: the other step may go on meanwhile, on another processor.</summary>
    internal void FollowApart(Step step)
    {
        _before = ReferenceEquals(_after, _one) ? _other : _one;
        _before.Become(step._after.State, step._after.Number);
        GoOnAs(step);
        if (HoleBefore is { } hole)
            HoleBefore = OwnHole.CopiedFrom(hole);
    }

    /// <summary>What has to be kept of a block that went on like the one before it, for <see cref="GoAgain"/>.</summary>
    public void Keep(out PlainTrace trace) => trace = new PlainTrace(After, Sets);

    /// <summary>Begins behind the block of another step and becomes what one that went on like it was, but for what is told of that.</summary>
    internal void GoAgain(Step before, in PlainTrace trace, BlockWords words)
    {
        // The collector notes each reference that is written, and of two steps that take turns all stay as they are.
        if (!ReferenceEquals(_before, before._after))
            _before = before._after;
        if (!ReferenceEquals(Words, words))
            Words = words;
        if (_after.Number != _before.Number || !ReferenceEquals(HoleBefore, before.Hole))
        {
            (HoleBefore, ToFrame, ToMachine) = (before.Hole, before.ToFrame, before.ToMachine);
            _after.Become(_before.State, _before.Number);
        }
        (PlainBefore, IsFollowed) = (before.Plain, true);
        trace.GoOn(ref _after.State);
        GoneOn(trace.Sets);
        Events = StepEvents.None;
        Moves.Clear();
        Holes.Clear();
        Faults.Clear();
    }

    /// <summary>Becomes what another step is of which only the state has been made: what is told of it need not be kept by that one.</summary>
    internal void Show(Step step)
    {
        (_before, _after, Words) = (step._before, step._after, step.Words);
        (Sets, ToFrame, ToMachine) = (step.Sets, step.ToFrame, step.ToMachine);
        (HoleBefore, RepeatsHole, IsPlainMove) = (step.HoleBefore, step.RepeatsHole, step.IsPlainMove);
        Events = StepEvents.None;
        Moves.Clear();
        Holes.Clear();
        Faults.Clear();
    }

    /// <summary>Notes that the block went on like the one before it, so that the states before and behind it are alike but for what <see cref="ControlState.GoOnFrom"/> takes over.</summary>
    /// <param name="sets">What its words set.</param>
    internal void GoneOn(Slot sets)
    {
        KeepAlike();
        Sets = sets;
        if (!ReferenceEquals(Hole, HoleBefore))
            Hole = HoleBefore;
        Plain = PlainBefore;
        (RepeatsHole, IsPlainMove) = (HoleBefore is not null, HoleBefore is null);
    }

    void GoOnAs(Step step)
    {
        (HoleBefore, PlainBefore, IsFollowed) = (step.Hole, step.Plain, true);
        (ToFrame, ToMachine) = (step.ToFrame, step.ToMachine);
        Clear();
    }

    /// <summary>Leaves this state behind, for the block that is run next to go on from.</summary>
    public void Leave(in ControlState state)
    {
        _after.Become(state, NewNumber());
        (Hole, Plain) = (null, PlainMoves.None);
    }

    /// <summary>The state that is to become the one behind a block which may do anything.</summary>
    internal ref ControlState AfterAnything()
    {
        ForgetFrames();
        _after.Become(_before.State, NewNumber());
        return ref _after.State;
    }

    /// <summary>The same behind a block that goes on as those before it: the frames are theirs.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal ref ControlState AfterMoreOfTheSame()
    {
        if (_after.Number == _before.Number)
            _after.State.GoOnFrom(_before.State);
        else
            _after.Become(_before.State, _before.Number);
        return ref _after.State;
    }

    /// <summary>Notes that the states before and behind this block are alike but for what <see cref="ControlState.GoOnFrom"/> takes over.</summary>
    internal void KeepAlike() => _after.Number = _before.Number;

    long NewNumber() => _numbers + ++_states;

    void ForgetFrames() => (ToFrame, ToMachine) = (Point3.Unknown, Point3.Unknown);

    internal void Clear()
    {
        Sets = Slot.None;
        Events = StepEvents.None;
        (Hole, Plain) = (null, PlainMoves.None);
        (RepeatsHole, IsPlainMove) = (false, false);
        Transfer = default;
        _arguments?.Clear();
        Words.Clear();
        Moves.Clear();
        Holes.Clear();
        Faults.Clear();
    }

    /// <summary>Where a state lies: large enough that two steps had better share it than copy it.</summary>
    sealed class Place
    {
        public ControlState State;
        public long Number;

        // Not as a pair, for which the state would be copied twice.
        [MethodImpl(MethodImplOptions.NoInlining)]
        public void Become(in ControlState state, long number)
        {
            State = state;
            Number = number;
        }
    }
}

/// <summary>The blocks that follow the one that runs.</summary>
public interface IBlocksAhead
{
    /// <summary>Begins behind the block that runs.</summary>
    void Begin();

    /// <summary>The next block; false where the text ends.</summary>
    bool TryNext(out Block block);

    /// <summary>Goes on where a block sends the run; false where that is not plain from the text.</summary>
    bool TryFollow(in Transfer transfer);
}

/// <summary>A list that keeps its storage from one block to the next. It has none until it holds something: many steps are in the work at once, and what they never hold would
/// keep the rest apart in memory.</summary>
public sealed class Batch<T> where T : struct
{
    const int Fewest = 4;

    T[] _items = [];

    public int Count { get; private set; }

    public ReadOnlySpan<T> Items
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => _items.AsSpan(0, Count);
    }

    public ref readonly T this[int index]
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => ref _items.AsSpan(0, Count)[index];
    }

    internal void Add(in T item) => Next() = item;

    /// <summary>Makes room for one more, whose contents are left from before.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal ref T Next()
    {
        if (Count == _items.Length)
            Array.Resize(ref _items, Math.Max(Fewest, Count * 2));
        return ref _items[Count++];
    }

    internal void Clear() => Count = 0;
}
