using System.Runtime.CompilerServices;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Execution;

// Adding moves to the step, and where the tool stands after them. Places are handed on by reference: to copy one that has just been written the processor waits until it has settled.
ref partial struct BlockRun
{
    const int AllAxes = 7;

    /// <summary>One axis (0, 1 or 2) as a bit: moves name the axes they move, since a place not known equals no other.</summary>
    static int Bit(int axis) => 1 << axis;

    readonly void Rapid(in Point3 to, int axes, MoveRole role)
    {
        axes = Moving(to, axes);
        if (axes == 0)
            return;
        Move(MoveKind.Rapid, to, role, double.NaN, MoveTime.Rapid(Way(to, axes), Machine));
        Stand(to, axes);
    }

    /// <param name="wayAtFeed">Length of the way that the block's feed is for, mm; this move's own where NaN.</param>
    readonly void Feed(in Point3 to, int axes, MoveRole role, double wayAtFeed = double.NaN)
    {
        axes = Moving(to, axes);
        if (axes == 0)
            return;
        var length = Way(to, axes).Length;
        var feed = _state.Motion == MotionMode.Thread && role == MoveRole.Plain ? ThreadFeed() : PathFeed(double.IsNaN(wayAtFeed) ? length : wayAtFeed);
        Move(MoveKind.Feed, to, role, feed, role == MoveRole.Plain ? SecondsOfPath(length, feed) : length / feed * 60);
        Cut(role == MoveRole.Plain && IsInAir(_state.Position, to, axes));
        Stand(to, axes);
    }

    readonly void Move(MoveKind kind, in Point3 to, MoveRole role, double feed, double seconds) =>
        _step.Moves.Next().Become(kind, role, _state.Position, to, Point3.Unknown, false, _state.Plane, 0, feed, seconds);

    /// <summary>Those of the axes named that do not stand where they are to go.</summary>
    readonly int Moving(in Point3 to, int axes)
    {
        if (to.X == _state.Position.X)
            axes &= ~1;
        if (to.Y == _state.Position.Y)
            axes &= ~2;
        if (to.Z == _state.Position.Z)
            axes &= ~4;
        return axes;
    }

    /// <summary>The way from here, 0 along the axes that stand still.</summary>
    readonly Point3 Way(in Point3 to, int axes) => Way(_state.Position, to, axes);

    static Point3 Way(in Point3 from, in Point3 to, int axes) => new(
        (axes & 1) == 0 ? 0 : to.X - from.X,
        (axes & 2) == 0 ? 0 : to.Y - from.Y,
        (axes & 4) == 0 ? 0 : to.Z - from.Z);

    /// <summary>True for a way straight up, and for one that is known not to go below the stock's top.</summary>
    readonly bool IsInAir(in Point3 from, in Point3 to, int axes)
    {
        if (axes == Bit(2) && to.Z > from.Z)
            return true;
        return Setup.Stock is { } stock && Math.Min(from.Z, to.Z) + _step.ToFrame.Z >= stock.Max.Z;
    }

    readonly void Cut(bool isInAir = false)
    {
        _state.HasCut = true;
        _state.Happened |= Happened.CutSinceFeed | Happened.CutSinceSpeed;
        if (!isInAir && (_state.Spindle == SpindleState.Off || _state.Speed == 0))
            _state.Happened |= Happened.CutStanding;
        if (!isInAir)
            NoteToolCuts();
        // The feed of a thread is its lead for each turn.
        if (_state.Motion != MotionMode.Thread || _state.InCycle)
            NoteFeedUsed();
        _step.Events |= StepEvents.Cut;
        _step.Sets |= Slot.Cut;
    }

    readonly void NoteFeedUsed()
    {
        if (double.IsNaN(_state.Feed))
            _state.Happened |= Happened.CutWithoutFeed;
    }

    /// <summary>Notes what the tool in the spindle cuts with, for the first cut of the next tool.</summary>
    readonly void NoteToolCuts()
    {
        _state.Happened &= ~(Happened.FeedOfOtherTool | Happened.SpeedOfOtherTool);
        NoteTurning();
        if (_state.Spindle == SpindleState.Counterclockwise && _state.Cycle is not (74 or 84))
            _state.Happened |= Happened.CutReversed;
        if ((_state.Coolant & (CoolantState.Mist | CoolantState.Flood)) != 0)
            _state.Happened |= Happened.CutWet;
        else if (_state.Coolant == CoolantState.Off && (_state.Happened & Happened.CutWet) != 0 && ((_state.Set | _step.Sets) & Slot.Coolant) == 0)
            _state.Happened |= Happened.CutDry;
    }

    readonly void NoteTurning()
    {
        if (_state.Spindle is SpindleState.Clockwise or SpindleState.Counterclockwise && _state.Speed != 0)
            _state.Happened |= Happened.UsedTurning;
    }

    readonly void Act(MoveKind kind, double seconds, MoveRole role = MoveRole.Plain) =>
        _step.Moves.Next().Become(kind, role, _state.Position, _state.Position, Point3.Unknown, false, _state.Plane, 0, double.NaN, seconds);

    /// <summary>Notes that the block moves the tool in work coordinates, whatever comes of it.</summary>
    readonly void NoteWorkMove(bool cuts)
    {
        _state.Happened |= Happened.WorkMove | Happened.PlaceRead;
        _state.IncrementalUse = _state.IncrementalUse switch
        {
            IncrementalUse.Fresh => IncrementalUse.Moved,
            IncrementalUse.Homed => IncrementalUse.MovedFromHome,
            IncrementalUse.LeftByCall => IncrementalUse.MovedBehindCall,
            var use => use,
        };
        if (LacksLengthOffset && (cuts || _words.Has('Z')))
            _state.Happened |= Happened.UsedWithoutOffset;
    }

    /// <summary>True while the tool that was changed in has no length offset.</summary>
    readonly bool LacksLengthOffset
    {
        get
        {
            var set = _state.Set | _step.Sets;
            // H0 is no length (NISTIR 6556 §3.5.11).
            var isOffset = _state.LengthOffset != LengthOffsetMode.Off && _state.H != 0 && (set & Slot.LengthOffset) != 0;
            var isChanged = (set & Slot.Tool) != 0 && _state.Tool != 0 && Readings.LengthOffset == LengthOffsetReading.G43;
            return isChanged && !isOffset;
        }
    }

    /// <summary>Notes moves among what the setup lists that cannot be held against it, because the setup leaves the place or the tool's size out.</summary>
    readonly void NoteNotDescribed()
    {
        var lost = _state.LostAxes;
        for (var axis = 0; axis < 3; axis++)
            if (!double.IsNaN(_state.Position[axis]))
                _state.LostAxes &= ~Bit(axis);
        var hasSolids = !Setup.Obstacles.IsEmpty || !Setup.Supports.IsEmpty;
        if (_step.Moves.Count == 0 || _state.IsCalled || !(hasSolids || Setup.Stock is not null || Setup.ClampHeight is not null))
            return;
        if ((_state.Happened & Happened.MovedOffFrame) == 0 && !Offsets.IsPlaced(_state, Setup) && Travels(false))
        {
            _state.Happened |= Happened.MovedOffFrame;
            _state.LostAxes = 0;
        }
        else if ((_state.Happened & Happened.MovedLost) == 0 && lost != 0 && Offsets.IsPlaced(_state, Setup) && TravelsFrom(lost))
            _state.Happened |= Happened.MovedLost;
        if ((_state.Happened & Happened.MovedWithoutSize) == 0 && hasSolids && _state.Tool != 0 && !(Setup.FindTool(_state.Tool)?.Diameter > 0)
            && Travels(_state.Tool < 0))
            _state.Happened |= Happened.MovedWithoutSize;
    }

    /// <summary>Notes a rapid that goes low among what the setup lists before the program has said where the tool stands in X and Y: nothing can be held against it. What is not known later
    /// has been told where it was lost, or lies, behind a probe, on the way there.</summary>
    readonly void NoteWayUnseen()
    {
        if ((_state.Happened & Happened.WasPlaced) != 0)
            return;
        if (!double.IsNaN(_state.Position.X + _state.Position.Y))
            _state.Happened |= Happened.WasPlaced;
        if (_step.Moves.Count == 0 || _state.IsCalled || _state.LostAxes != 0 || (_state.Happened & Happened.MovedOffFrame) != 0)
            return;
        foreach (ref readonly var move in _step.Moves.Items)
            if (WayUnseen.Of(move, _step.ToFrame, Setup) is { } way)
                _state.Happened |= way.Marks;
    }

    /// <summary>True when the block moves the tool in work coordinates; or, where only work counts, cuts with it or takes it from hole to hole.</summary>
    readonly bool Travels(bool atWork)
    {
        foreach (ref readonly var move in _step.Moves.Items)
            if (move.IsMotion && move.Role != MoveRole.Machine && (!atWork || move.IsCut || move.Role == MoveRole.Hop))
                return true;
        return false;
    }

    /// <summary>True when the block moves the tool across in work coordinates and where it does is not known along one of these axes. Straight up or
    /// down to a level is how a new length offset is taken on.</summary>
    readonly bool TravelsFrom(int lost)
    {
        foreach (ref readonly var move in _step.Moves.Items)
        {
            if (!move.IsMotion || move.Role == MoveRole.Machine || (move.From.X.Equals(move.To.X) && move.From.Y.Equals(move.To.Y)))
                continue;
            for (var axis = 0; axis < 3; axis++)
                if ((lost & Bit(axis)) != 0 && double.IsNaN(move.From[axis] + move.To[axis]))
                    return true;
        }
        return false;
    }

    /// <summary>Notes that the tool is taken out of the work: distances programmed after it are hardly meant from there.</summary>
    readonly void NoteTakenAway()
    {
        // A program in distances throughout says so once at its beginning; a G91 beside G28, or after a G90, is for the way home.
        var isForHome = (_state.Happened & Happened.WasAbsolute) != 0
            || (_state.IncrementalUse == IncrementalUse.Fresh && (_step.Sets & Slot.Distance) != 0);
        if (isForHome && _state.IncrementalUse is (IncrementalUse.Fresh or IncrementalUse.Moved))
            _state.IncrementalUse = IncrementalUse.Homed;
    }

    /// <summary>Puts the tool at a place in work coordinates, to which the axes named have moved.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    readonly void Stand(in Point3 at, int axes)
    {
        StandIn(at, axes, _step.Offsets.ToMachine(_state, Setup));
        _step.Sets |= SlotsOf(axes);
        LeavePath(axes);
        FollowInProgram();
    }

    /// <summary>Puts the tool at a place in work coordinates and at the one in machine coordinates that belongs to it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    readonly void StandIn(in Point3 at, int axes, in Point3 toMachine)
    {
        var machine = at + toMachine;
        if (!machine.IsKnown && _state.MachinePosition.IsKnownAlongAny)
            machine = ByTheWay(machine, at);
        _state.MachinePosition = Along(axes, machine, _state.MachinePosition);
        _state.Position = Along(axes, at, _state.Position);
    }

    /// <summary>Where the datum is not known, the machine still moves by as much as the work coordinates.</summary>
    readonly Point3 ByTheWay(Point3 machine, Point3 at)
    {
        for (var axis = 0; axis < 3; axis++)
            if (double.IsNaN(machine[axis]) && Offsets.RunsStraight(_state, axis))
                machine = machine.With(axis, _state.MachinePosition[axis] + at[axis] - _state.Position[axis]);
        return machine;
    }

    /// <summary>The first place along the axes named, the second along the others.</summary>
    static Point3 Along(int axes, in Point3 named, in Point3 others) =>
        new((axes & 1) != 0 ? named.X : others.X, (axes & 2) != 0 ? named.Y : others.Y, (axes & 4) != 0 ? named.Z : others.Z);

    static Slot SlotsOf(int axes) =>
        ((axes & 1) != 0 ? Slot.X : Slot.None) | ((axes & 2) != 0 ? Slot.Y : Slot.None) | ((axes & 4) != 0 ? Slot.Z : Slot.None);

    static int AxesOf(Slot sets) => ((sets & Slot.X) != 0 ? 1 : 0) | ((sets & Slot.Y) != 0 ? 2 : 0) | ((sets & Slot.Z) != 0 ? 4 : 0);

    /// <summary>Says in the program's own places where the tool stands.</summary>
    readonly void FollowInProgram()
    {
        if (_state.ProgramFrame is { } frame)
            _state.Programmed = frame.ToProgram(_state.ProgrammedPosition);
    }

    /// <summary>The place along these axes is no longer known in work coordinates, unless machine coordinates still tell it; nothing has moved.</summary>
    readonly void Forget(int axes)
    {
        var fromMachine = _state.MachinePosition - Offsets.ToMachine(_state, Setup);
        for (var axis = 0; axis < 3; axis++)
            if ((axes & Bit(axis)) != 0)
                _state.Position = _state.Position.With(axis, fromMachine[axis]);
        FollowInProgram();
        _state.StandsAtHole = false;
    }

    /// <summary>The axes named have moved to where is not known.</summary>
    readonly void Lose(int axes)
    {
        _state.Position = Along(axes, Point3.Unknown, _state.Position);
        _state.MachinePosition = Along(axes, Point3.Unknown, _state.MachinePosition);
        _step.Sets |= SlotsOf(axes);
        LeavePath(axes);
        FollowInProgram();
    }

    /// <summary>Feed along a path of <paramref name="length"/> mm in mm/min, within what the machine can do.</summary>
    readonly double PathFeed(double length) => WithinMachine(ProgrammedFeed(length, turnsAsProgrammed: false));

    /// <summary>The speed that the spindle turns at, within what the machine can do, 1/min.</summary>
    readonly double MachineSpeed => Machine.SpeedOf(_state.Speed);

    /// <summary>Feed along a path of <paramref name="length"/> mm in mm/min, as the program says it.</summary>
    /// <param name="turnsAsProgrammed">Whether a feed per revolution counts the turns that the program asks for, or those that the spindle makes.</param>
    readonly double ProgrammedFeed(double length, bool turnsAsProgrammed) =>
        _state.FeedMode switch
        {
            FeedMode.PerMinute => _state.Feed,
            // A standing spindle makes no way at all.
            FeedMode.PerTurn when _state.Spindle == SpindleState.Off => double.NaN,
            FeedMode.PerTurn => _state.Feed * (turnsAsProgrammed ? _state.Speed : MachineSpeed),
            // NISTIR 6556 §3.5.19: F is needed in every block that cuts; none is carried over.
            FeedMode.InverseTime => _words['F'] * length,
            _ => double.NaN,
        };

    readonly double WithinMachine(double feed) =>
        !(feed > 0) ? double.NaN : Machine.MaxFeed is { } most && feed > most ? most : feed;

    /// <summary>A thread's feed: its lead each turn of the spindle, written as K or, on some controls, as F (common practice).</summary>
    readonly double ThreadFeed()
    {
        var lead = _words.Has('K') ? Length('K') : Length('F');
        return WithinMachine(_state.Spindle == SpindleState.Off ? double.NaN : lead * MachineSpeed);
    }

    /// <summary>Time along a programmed path of <paramref name="length"/> mm; from rest to rest under exact stop.</summary>
    readonly double SecondsOfPath(double length, double feed)
    {
        var stops = _state.PathControl == PathControl.ExactStop || _words.HasCode('G', 90);
        return stops && feed > 0 ? MoveTime.Trapezoid(length, feed, Machine.Acceleration) : length / feed * 60;
    }
}
