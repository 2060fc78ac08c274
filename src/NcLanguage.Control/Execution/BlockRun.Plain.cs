using System.Runtime.CompilerServices;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Compensation;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Execution;

// One more plain move: most blocks of a contour say no more than where to go on and how, behind others that did. What such a block changes is known from the one before it, so that
// the order of the control's steps need not be gone through.
ref partial struct BlockRun
{
    /// <summary>What has happened by the time a move changes no more of it.</summary>
    const Happened Settled = Happened.LengthRead | Happened.WorkMove | Happened.PlaceRead;

    /// <summary>Puts the tool where the block takes it by going on like the one before; what its words set, none, with nothing done, where it has to be worked out.</summary>
    public readonly Slot GoesOn()
    {
        var letters = _words.PlainLetters;
        var says = new PlainBlock(letters, _words.PlainMotion, PlainLength('X'), PlainLength('Y'), PlainLength('Z'), _words['F'] * MmPerUnit);
        return GoesOn(says);
    }

    /// <summary>The same with one block after the other from a line of their chunk on, for as long as that goes, with no more made of each than its trace.</summary>
    /// <param name="traces">One for each line of the chunk.</param>
    /// <returns>The line behind the last that went on.</returns>
    public readonly int GoOn(PlainBlocks blocks, int line, Span<PlainTrace> traces)
    {
        var (next, unit) = (line, MmPerUnit);
        for (; line < blocks.Count; line++)
        {
            if (blocks.IsBlank(line))
                continue;
            var words = blocks[line];
            if (!words.AreKnown || GoesOn(words.Say(unit)) is var sets && sets == Slot.None)
                break;
            traces[line] = new PlainTrace(_state, sets);
            _step.Sets = sets;
            next = line + 1;
        }
        return next;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    readonly Slot GoesOn(in PlainBlock says) => _step.HoleBefore is null ? GoesOn(_step.PlainBefore, says) : GoesToNextHole(says);

    /// <param name="known">The kinds of moves that are known to be plain.</param>
    readonly Slot GoesOn(PlainMoves known, in PlainBlock says)
    {
        var motion = says.Motion ?? _state.Motion;
        var kind = motion == MotionMode.Rapid ? PlainMoves.Rapid : PlainMoves.Cut;
        if ((known & kind) == 0 || (says.Has(PlainLetters.F) && (kind == PlainMoves.Rapid || says.Feed < 0)))
            return Slot.None;
        var to = EndOf(says, _state.Distance == DistanceMode.Incremental, out var axes);
        if (motion is MotionMode.ArcClockwise or MotionMode.ArcCounterclockwise ? !SaysCentre(says.Letters) : !says.HasOnly(PlainLetters.Straight) || (axes = Moving(to, axes)) == 0)
            return Slot.None;
        var sets = SlotsOf(axes);
        if (kind == PlainMoves.Cut)
            sets |= Slot.Cut;
        if (says.Motion is not null)
            sets |= Slot.Motion;
        if (says.Has(PlainLetters.F))
        {
            sets |= Slot.Feed;
            _state.Feed = says.Feed;
        }
        _state.Motion = motion;
        _state.Set |= sets;
        StandIn(to, axes, _step.ToMachine);
        return sets;
    }

    /// <summary>Tells the move that has taken the tool from the place before the block to where it stands.</summary>
    public readonly void TellMove()
    {
        ref readonly var from = ref _step.Before.Position;
        ref readonly var to = ref _state.Position;
        var way = Way(from, to, AxesOf(_step.Sets));
        _step.Events = _state.Motion == MotionMode.Rapid ? StepEvents.Moves : StepEvents.Moves | StepEvents.Cut;
        if (_state.Motion == MotionMode.Rapid)
            _step.Moves.Next().Become(MoveKind.Rapid, MoveRole.Plain, from, to, Point3.Unknown, false, WorkPlane.XY, 0, double.NaN, MoveTime.Rapid(way, Machine));
        else if (_state.Motion == MotionMode.Linear)
        {
            var length = way.Length;
            var feed = PathFeed(length);
            _step.Moves.Next().Become(MoveKind.Feed, MoveRole.Plain, from, to, Point3.Unknown, false, WorkPlane.XY, 0, feed, SecondsOfPath(length, feed));
        }
        else
            TellPlainArc(from, to);
    }

    /// <summary>Seconds that another block takes which goes on as this one did, without the moves of which that is not known.</summary>
    /// <param name="pattern">What this one drilled; null where both are straight cuts.</param>
    /// <param name="from">Where the tool comes from.</param>
    /// <param name="untimed">How many moves those are.</param>
    public readonly double SecondsOfAnother(HolePattern? pattern, in Point3 from, in PlainTrace trace, out int untimed)
    {
        var way = Way(from, trace.Position, AxesOf(trace.Sets));
        if (pattern is not null)
            return pattern.SecondsWith(MoveTime.Rapid(way, Machine), out untimed);
        var length = way.Length;
        var seconds = SecondsOfPath(length, WithinMachine(trace.Feed));
        untimed = double.IsNaN(seconds) ? 1 : 0;
        return untimed == 0 ? seconds : 0;
    }

    /// <summary>Tells an arc that another block cuts along which goes on as this one did; false where something is amiss with it or out of the ordinary, so that the block itself has to be told.</summary>
    /// <param name="says">What it says of the centre.</param>
    /// <param name="from">Where the tool comes from.</param>
    /// <param name="arc">Becomes the arc.</param>
    public readonly bool TryTellArc(in PlainCentre says, in Point3 from, in PlainTrace trace, ref Move arc)
    {
        var (to, clockwise) = (trace.Position, trace.Motion == MotionMode.ArcClockwise);
        if (Readings.Integers == IntegerReading.Increments || !TryCentre(says, from, to, clockwise, out var centre))
            return false;
        arc.Become(MoveKind.Arc, MoveRole.Plain, from, to, centre, clockwise, WorkPlane.XY, 0, double.NaN, double.NaN);
        var sweep = Arcs.Sweep(arc);
        var feed = WithinMachine(trace.Feed);
        arc.Take(feed, SecondsOfPath(LengthOf(arc, AxesOf(trace.Sets), sweep), feed), sweep);
        return !Arcs.IsTooLarge(arc);
    }

    /// <summary>The centre of an arc in the XY plane, in work coordinates, as far as it is known; false where the words give none that fits the ends.</summary>
    readonly bool TryCentre(in PlainCentre says, in Point3 from, in Point3 to, bool clockwise, out Point3 centre)
    {
        centre = Point3.Unknown;
        var unit = MmPerUnit;
        if (says.IsByRadius)
        {
            if (double.IsNaN(from.X + from.Y + to.X + to.Y))
                return true;
            if (Arcs.CentreFromRadius(from.X, from.Y, to.X, to.Y, says.R * unit, clockwise, ArcTolerance) is not { } at)
                return false;
            centre = new Point3(at.A, at.B, from.Z);
            return true;
        }
        var isPlace = Readings.ArcCentre == ArcCentreReading.Absolute;
        if (isPlace && !says.HasBoth)
            return false;
        centre = new Point3(isPlace ? says.I * unit : from.X + says.I * unit, isPlace ? says.J * unit : from.Y + says.J * unit, from.Z);
        var start = Arcs.Square(from, centre, 0, 1);
        return start != 0 && !AreUnlike(start, Arcs.Square(to, centre, 0, 1));
    }

    readonly void TellPlainArc(in Point3 from, in Point3 to)
    {
        var clockwise = _state.Motion == MotionMode.ArcClockwise;
        var token = _words.Codes is [var code] ? code.Token : FirstAxisOrCentreToken();
        var centre = _words.Has('R') ? CentreByRadius(from, to, clockwise, 0, 1, token) : CentreByWords(from, to, 0, 1, token);
        ref var arc = ref _step.Moves.Next();
        arc.Become(MoveKind.Arc, MoveRole.Plain, from, to, centre, clockwise, WorkPlane.XY, 0, double.NaN, double.NaN);
        TellArc(ref arc, AxesOf(_step.Sets));
        if (_step.Faults.Count > 0)
            _step.Events |= StepEvents.Faults;
    }

    /// <summary>A length word in mm, without meaning where it is missing.</summary>
    readonly double PlainLength(char letter) => Readings.Integers == IntegerReading.Increments ? Length(letter) : _words[letter] * MmPerUnit;

    /// <summary>Where axis words lead that nothing stands between, and that are not the first lengths of the program.</summary>
    /// <param name="distances">Whether they are distances; otherwise they are places.</param>
    /// <param name="axes">Those that they move, as bits.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    readonly Point3 EndOf(in PlainBlock says, bool distances, out int axes)
    {
        axes = 0;
        ref readonly var here = ref _state.Position;
        var x = EndAlong(says.Has(PlainLetters.X), says.X, 1, distances, here.X, ref axes);
        var y = EndAlong(says.Has(PlainLetters.Y), says.Y, 2, distances, here.Y, ref axes);
        var z = EndAlong(says.Has(PlainLetters.Z), says.Z, 4, distances, here.Z, ref axes);
        return new Point3(x, y, z);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static double EndAlong(bool isSaid, double length, int axis, bool distances, double here, ref int axes)
    {
        // A distance of 0 moves nothing.
        if (!isSaid || (distances && length == 0))
            return here;
        axes |= axis;
        return distances ? here + length : length;
    }

    /// <summary>True for a block that says a centre, or a radius, and an end as an arc in the XY plane wants it, whether there is such an arc or not.</summary>
    static bool SaysCentre(PlainLetters letters) => (letters & PlainLetters.R) != 0
        ? (letters & PlainLetters.Axes) != 0 && (letters & (PlainLetters.I | PlainLetters.J)) == 0
        : (letters & (PlainLetters.I | PlainLetters.J)) != 0;

    /// <summary>Notes whether all in the state is as it was before the move, but for what plain moves change: then another of its kind does no more either.</summary>
    readonly void LearnMove()
    {
        if (!MovesPlainly)
            return;
        var same = _step.Before;
        same.GoOnFrom(_state);
        if (same != _state)
            return;
        _step.Plain = _step.PlainBefore | LearntFrom(_step.Moves[0]);
        _step.KeepAlike();
    }

    /// <summary>What a move that has left everything as it was shows of others.</summary>
    readonly PlainMoves LearntFrom(in Move move) =>
        move.Role != MoveRole.Plain || !move.IsMotion ? PlainMoves.None
        : move.Kind == MoveKind.Rapid ? LacksLengthOffset || !WasPlaced ? PlainMoves.None : PlainMoves.Rapid
        : double.IsNaN(_state.Feed) || (move.Kind == MoveKind.Feed && IsInAir(move.From, move.To, AxesOf(_step.Sets))) ? PlainMoves.None
        : PlainMoves.Cut;

    /// <summary>True where words in X, Y and Z lead where they say, at the feed that F says.</summary>
    readonly bool MovesPlainly =>
        _state is
        {
            Cycle: 0, Plane: WorkPlane.XY, ProgramFrame: null, FeedMode: FeedMode.PerMinute, Compensation: CompensationSide.Off, NotFollowed: NotFollowed.None, LostAxes: 0,
            IsOnOffsetPath: false, Ended: false,
            Motion: MotionMode.Rapid or MotionMode.Linear or MotionMode.ArcClockwise or MotionMode.ArcCounterclockwise,
        }
        && _state.OffPath == default && _state.Distance != DistanceMode.Unknown && _state.Units != LengthUnit.Unknown && double.IsNaN(_state.OtherFeed)
        && (_state.Happened & (Settled | Happened.MotionMissing | Happened.RefusedInModes)) == Settled
        // Distances from a place not known lead to none that is.
        && (WasPlaced || _state.Distance == DistanceMode.Incremental);

    readonly bool WasPlaced => (_state.Happened & Happened.WasPlaced) != 0;
}
