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
    const uint StraightWords = BlockWords.Axes | 1u << ('F' - 'A');
    const uint RadiusWords = StraightWords | 1u << ('R' - 'A');
    const uint CentreInPlane = 1u << ('I' - 'A') | 1u << ('J' - 'A');

    /// <summary>What has happened by the time a move changes no more of it.</summary>
    const Happened Settled = Happened.LengthRead | Happened.WorkMove | Happened.PlaceRead;

    /// <summary>Puts the tool where one more move of the kinds that are known to be plain takes it; false, with nothing done, where the block has to be worked out.</summary>
    public readonly bool GoesOn(PlainMoves known)
    {
        var motion = _words.PlainMotion ?? _state.Motion;
        var kind = motion == MotionMode.Rapid ? PlainMoves.Rapid : PlainMoves.Cut;
        if ((known & kind) == 0 || (_words.Has('F') && (kind == PlainMoves.Rapid || _words['F'] < 0)))
            return false;
        var to = EndOfPlainWords(_state.Distance == DistanceMode.Incremental, out var axes);
        if (motion is MotionMode.ArcClockwise or MotionMode.ArcCounterclockwise ? !SaysCentre : !_words.HasOnly(StraightWords) || (axes = Moving(to, axes)) == 0)
            return false;
        _step.Sets = SlotsOf(axes) | TakePlainWords(motion) | (kind == PlainMoves.Cut ? Slot.Cut : Slot.None);
        StandIn(to, axes, _step.ToMachine);
        _state.Set |= _step.Sets;
        _step.Plain = known;
        _step.IsPlainMove = true;
        _step.KeepAlike();
        return true;
    }

    /// <summary>Takes the motion and the feed that the block names.</summary>
    readonly Slot TakePlainWords(MotionMode motion)
    {
        _state.Motion = motion;
        var sets = _words.Codes.Length > 0 ? Slot.Motion : Slot.None;
        if (!_words.Has('F'))
            return sets;
        _state.Feed = _words['F'] * MmPerUnit;
        return sets | Slot.Feed;
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

    readonly void TellPlainArc(in Point3 from, in Point3 to)
    {
        var clockwise = _state.Motion == MotionMode.ArcClockwise;
        var token = _words.Codes is [var code] ? code.Token : FirstAxisOrCentreToken();
        var centre = _words.Has('R') ? CentreByRadius(from, to, clockwise, 0, 1, token) : CentreByWords(from, to, 0, 1, token);
        TellArc(new Move(MoveKind.Arc, MoveRole.Plain, from, to, centre, clockwise, WorkPlane.XY, 0, double.NaN, double.NaN), AxesOf(_step.Sets));
        if (_step.Faults.Count > 0)
            _step.Events |= StepEvents.Faults;
    }

    /// <summary>Where axis words lead that nothing but the unit stands between, and that are not the first lengths of the program.</summary>
    /// <param name="distances">Whether they are distances; otherwise they are places.</param>
    /// <param name="axes">Those that they move, as bits.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    readonly Point3 EndOfPlainWords(bool distances, out int axes)
    {
        axes = 0;
        var unit = Readings.Integers == IntegerReading.Increments ? double.NaN : MmPerUnit;
        ref readonly var here = ref _state.Position;
        var x = EndAlong('X', 1, distances, unit, here.X, ref axes);
        var y = EndAlong('Y', 2, distances, unit, here.Y, ref axes);
        var z = EndAlong('Z', 4, distances, unit, here.Z, ref axes);
        return new Point3(x, y, z);
    }

    /// <param name="unit">Millimetres in one of the word's number; NaN where that hangs on how it is written.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    readonly double EndAlong(char letter, int axis, bool distances, double unit, double here, ref int axes)
    {
        if (!_words.Has(letter))
            return here;
        var length = double.IsNaN(unit) ? Length(letter) : _words[letter] * unit;
        // A distance of 0 moves nothing.
        if (distances && length == 0)
            return here;
        axes |= axis;
        return distances ? here + length : length;
    }

    /// <summary>True for a block that says a centre, or a radius, and an end as an arc in the XY plane wants it, whether there is such an arc or not.</summary>
    readonly bool SaysCentre =>
        _words.Has('R') ? HasAxisWords && _words.HasOnly(RadiusWords) : _words.HasAny(CentreInPlane) && _words.HasOnly(StraightWords | CentreInPlane);

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
