using NcLanguage.Control.Codes;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Execution;

// Motion proper: which code the axis words belong to, straight moves, arcs.
ref partial struct BlockRun
{
    /// <summary>Largest difference of start and end radius of an arc (NISTIR 6556 §3.5.3.2): 0.002 mm or 0.0002 in.</summary>
    readonly double ArcTolerance => _state.Units == LengthUnit.Inch ? 0.0002 * MmPerInch : 0.002;

    /// <summary>What sums of lengths in double precision may be off by, mm.</summary>
    const double Rounding = 1e-9;

    readonly bool HasAxisWords => _words.HasAny(BlockWords.Axes);

    readonly void MoveAsTold()
    {
        var motion = _words.Find(ModalGroup.Motion);
        var cycle = _words.Find(ModalGroup.Cycle);
        var claimed = ClaimAxisWords(motion ?? cycle);
        SetMotion(motion, cycle);
        if (claimed)
            return;
        if (_state.Cycle > 0)
            DrillIfTold(cycle);
        else if (_state.Cycle < 0 && HasAxisWords && !_words.HasCode('G', 530))
            MoveOrDrill();
        else if (HasAxisWords || _state.Motion is MotionMode.ArcClockwise or MotionMode.ArcCounterclockwise && _words.HasAny(CentreWords))
            MoveByMode(motion);
        else if (motion is { Code.Tenths: 20 or 30 } arc && _words.Has('R'))
        {
            // NISTIR 6556 §3.5.3.1: one axis word of the plane is needed, since the way back to the same point is no arc.
            _words.Use('R');
            AddFault(FaultKind.WordMissing, arc.Token, 'X');
        }
    }

    /// <summary>Where it is not known whether a cycle is on, nothing is known of where axis words lead.</summary>
    readonly void MoveOrDrill()
    {
        foreach (var letter in "XYZRPQLKIJ")
            _words.Use(letter);
        NoteWorkMove(cuts: false);
        Lose(AllAxes);
    }

    const uint CentreWords = 1u << ('I' - 'A') | 1u << ('J' - 'A') | 1u << ('K' - 'A');

    readonly void SetMotion(CodeWord? motion, CodeWord? cycle)
    {
        if (motion is not null || cycle is not (null or { Code.Tenths: 800 }))
            _state.Happened &= ~Happened.MotionMissing;
        if (motion is null && cycle is null && _words.HasUnreadCode('G'))
            ForgetMotion();
        if (motion is { } word)
        {
            _state.Motion = word.Code.Tenths switch
            {
                0 => MotionMode.Rapid,
                10 => MotionMode.Linear,
                20 => MotionMode.ArcClockwise,
                30 => MotionMode.ArcCounterclockwise,
                330 => MotionMode.Thread,
                _ => MotionMode.Probe,
            };
            _step.Sets |= Slot.Motion;
            if (_state.Motion == MotionMode.Thread)
            {
                AddFault(FaultKind.NotFollowed, word.Token);
                _words.Use('K');
            }
            if (_state.Cycle != 0 && (Readings.RapidsEndCycle || cycle is { Code.Tenths: 800 }))
                EndCycle();
        }
        if (cycle is { } cycleWord)
            StartOrEndCycle(cycleWord, motion is not null);
    }

    /// <summary>Behind a G that could not be read it is not known how axis words move, nor whether a cycle is on.</summary>
    readonly void ForgetMotion()
    {
        var wasInCycle = _state.Cycle != 0;
        ForgetCycle();
        if (wasInCycle)
            _state.Cycle = -1;
        _state.Motion = MotionMode.Unknown;
    }

    readonly bool HasFault(FaultKind kind)
    {
        foreach (ref readonly var fault in _step.Faults.Items)
            if (fault.Kind == kind)
                return true;
        return false;
    }

    readonly void EndCycle()
    {
        ForgetCycle();
        _step.Sets |= Slot.Cycle;
    }

    readonly void ForgetCycle()
    {
        _state.Cycle = 0;
        _state.CycleLeftOn = false;
        _state.StandsAtHole = false;
        _state.RGiven = false;
        _state.BottomGiven = false;
        _state.RLevel = double.NaN;
        _state.Bottom = double.NaN;
        _state.DwellNumber = double.NaN;
        _state.DwellHasPoint = false;
        _state.Peck = double.NaN;
        _state.BoreShift = default;
        _state.BoreShiftGiven = false;
        _state.BoreTop = double.NaN;
        _state.InitialLevel = double.NaN;
    }

    readonly void StartOrEndCycle(CodeWord word, bool withMotion)
    {
        var number = word.Code.Tenths / 10;
        if (number == 80)
        {
            EndCycle();
            // NISTIR 6556 §3.5.15: after G80 axis words need a motion code again.
            if (!withMotion)
                _state.Motion = MotionMode.None;
            return;
        }
        if (_state.Cycle <= 0)
            _state.InitialLevel = _state.Cycle < 0 || _state.Plane == WorkPlane.Unknown ? double.NaN : StandsAt(DepthAxis);
        if (_state.Cycle != number)
        {
            _state.RGiven = false;
            _state.BottomGiven = false;
        }
        _state.Cycle = number;
        _step.Sets |= Slot.Cycle;
    }

    readonly void MoveByMode(CodeWord? motion)
    {
        if (_words.HasCode('G', 530))
        {
            MoveInMachineCoordinates(_words.TokenOfCode('G', 530));
            return;
        }
        UseAxisWords();
        NoteWorkMove(cuts: _state.Motion is not (MotionMode.Rapid or MotionMode.Unknown or MotionMode.None));
        switch (_state.Motion)
        {
            case MotionMode.Rapid or MotionMode.Linear or MotionMode.Thread:
                GoStraight();
                break;
            case MotionMode.ArcClockwise or MotionMode.ArcCounterclockwise:
                Arc();
                break;
            case MotionMode.Probe:
                AddFault(FaultKind.NotFollowed, FirstAxisToken());
                Lose(TargetAxes());
                break;
            default:
                if (!_state.IsCalled && !_words.HasUnreadCode('G') && !HasFault(FaultKind.CodesConflict))
                    AddFault(FaultKind.MotionNotSet, FirstAxisToken());
                _state.Happened |= Happened.MotionMissing;
                Stand(Target(), TargetAxes());
                break;
        }
    }

    readonly void GoStraight()
    {
        var kind = _state.Motion == MotionMode.Rapid ? MoveKind.Rapid : MoveKind.Feed;
        var (to, axes) = (Target(), TargetAxes());
        if (OffsetStraight(kind, ref to, ref axes))
            return;
        if (kind == MoveKind.Rapid)
            Rapid(to, axes, MoveRole.Plain);
        else
            Feed(to, axes, MoveRole.Plain);
    }

    readonly int FirstAxisToken()
    {
        var first = int.MaxValue;
        foreach (var axis in "XYZ")
            if (_words.Has(axis))
                first = Math.Min(first, _words.TokenOf(axis));
        return first;
    }

    /// <summary>Where the axis words lead, in work coordinates.</summary>
    readonly Point3 Target()
    {
        var axes = TargetAxes();
        return new(Target(axes, 0), Target(axes, 1), Target(axes, 2));
    }

    readonly double Target(int axes, int axis)
    {
        if ((axes & Bit(axis)) == 0)
            return _state.Position[axis];
        if (IsBent(axis))
            return double.NaN;
        var here = _state.ProgrammedPosition[axis];
        if (!_words.Has((char)('X' + axis)))
            return here;
        var length = Length((char)('X' + axis));
        return _state.Distance switch
        {
            DistanceMode.Absolute => length,
            DistanceMode.Incremental => here + length,
            _ => double.NaN,
        };
    }

    /// <summary>The axes that the axis words move, as bits; a distance of 0 moves none.</summary>
    readonly int TargetAxes()
    {
        var axes = 0;
        for (var axis = 0; axis < 3; axis++)
        {
            var letter = (char)('X' + axis);
            if (!_words.Has(letter) || (_state.Distance == DistanceMode.Incremental && _words[letter] == 0))
                continue;
            axes |= Bit(axis);
            // What turns the path moves both axes of the plane for a word of either.
            if (IsTurned && IsBent(axis))
                axes |= _state.Plane == WorkPlane.Unknown ? AllAxes : AllAxes & ~Bit(DepthAxis);
        }
        return BackOnPath(axes);
    }

    readonly bool IsTurned => (_state.NotFollowed & (NotFollowed.Rotation | NotFollowed.Polar)) != 0;

    /// <summary>True for an axis whose words lead elsewhere than they say, by scaling, rotation or polar words, which are not followed.</summary>
    readonly bool IsBent(int axis) =>
        (_state.NotFollowed & NotFollowed.Scaling) != 0 || (IsTurned && (_state.Plane == WorkPlane.Unknown || axis != DepthAxis));

    readonly void Arc()
    {
        var clockwise = _state.Motion == MotionMode.ArcClockwise;
        var (first, second, _) = Arcs.Axes(_state.Plane);
        // The programmed arc; its start is not where the tool stands while compensation keeps it off the path.
        var from = _state.ProgrammedPosition;
        var axes = TargetAxes();
        var to = Target();
        for (var axis = 0; axis < 3; axis++)
            if ((axes & Bit(axis)) == 0)
                to = to.With(axis, from[axis]);
        var token = _words.Find(ModalGroup.Motion)?.Token ?? FirstAxisOrCentreToken();
        var centre = _state.Plane == WorkPlane.Unknown ? CentreNotKnown()
            : _words.Has('R') ? CentreByRadius(from, to, clockwise, first, second, token) : CentreByWords(from, to, first, second, token);
        if (OffsetArc(from, to, centre, clockwise, axes, token))
            return;
        AddArc(new Move(MoveKind.Arc, MoveRole.Plain, from, to, centre, clockwise, _state.Plane, 0, double.NaN, double.NaN), axes);
    }

    /// <summary>Cuts along an arc whose feed and time are still to be found.</summary>
    /// <param name="wayAtFeed">Length of the way that the block's feed is for, mm; the arc's own where NaN.</param>
    readonly void AddArc(in Move arc, int axes, double wayAtFeed = double.NaN)
    {
        var (from, to, third) = (arc.From, arc.To, Arcs.Axes(arc.Plane).Third);
        // An axis across the plane that stands still adds nothing, even where it is not known where it stands.
        var length = (axes & Bit(third)) != 0 ? arc.Length : (arc with { From = from.With(third, 0), To = to.With(third, 0) }).Length;
        var feed = PathFeed(double.IsNaN(wayAtFeed) ? length : wayAtFeed);
        _step.Moves.Add(arc with { Feed = feed, Seconds = length / feed * 60 });
        Cut();
        Stand(to, axes);
    }

    readonly Point3 CentreNotKnown()
    {
        foreach (var letter in "IJKR")
            _words.Use(letter);
        return Point3.Unknown;
    }

    readonly int FirstAxisOrCentreToken()
    {
        if (HasAxisWords)
            return FirstAxisToken();
        foreach (var letter in "IJK")
            if (_words.Has(letter))
                return _words.TokenOf(letter);
        return 0;
    }

    readonly Point3 CentreByRadius(Point3 from, Point3 to, bool clockwise, int first, int second, int token)
    {
        _words.Use('R');
        var radius = Length('R');
        if (double.IsNaN(from[first] + from[second] + to[first] + to[second] + radius))
            return Point3.Unknown;
        if (Arcs.CentreFromRadius(from[first], from[second], to[first], to[second], radius, clockwise, ArcTolerance) is { } centre)
            return from.With(first, centre.A).With(second, centre.B);
        var chord = Math.Sqrt(Math.Pow(to[first] - from[first], 2) + Math.Pow(to[second] - from[second], 2));
        AddFault(FaultKind.ArcImpossible, token, 'R', chord, radius);
        return Point3.Unknown;
    }

    readonly Point3 CentreByWords(Point3 from, Point3 to, int first, int second, int token)
    {
        var (firstLetter, secondLetter) = ((char)('I' + first), (char)('I' + second));
        if (!_words.Has(firstLetter) && !_words.Has(secondLetter))
        {
            AddFault(FaultKind.WordMissing, token, firstLetter);
            return Point3.Unknown;
        }
        _words.Use(firstLetter);
        _words.Use(secondLetter);
        if (Readings.ArcCentre == ArcCentreReading.Absolute && !(_words.Has(firstLetter) && _words.Has(secondLetter)))
        {
            // A distance left out is 0; a coordinate left out is nowhere.
            AddFault(FaultKind.WordMissing, token, _words.Has(firstLetter) ? secondLetter : firstLetter);
            return Point3.Unknown;
        }
        var centre = from.With(first, Centre(firstLetter, from[first])).With(second, Centre(secondLetter, from[second]));
        var start = Radius(from, centre, first, second);
        var end = Radius(to, centre, first, second);
        if (Math.Abs(start - end) > ArcTolerance + Rounding)
            AddFault(FaultKind.ArcRadiusMismatch, token, 'I', start, end);
        else if (start == 0)
            AddFault(FaultKind.ArcImpossible, token, 'I', 0, 0);
        return centre;
    }

    readonly double Centre(char letter, double from)
    {
        if (Readings.ArcCentre == ArcCentreReading.Absolute)
            return Length(letter);
        return _words.Has(letter) ? from + Length(letter) : from;
    }

    static double Radius(Point3 at, Point3 centre, int first, int second) =>
        Math.Sqrt(Math.Pow(at[first] - centre[first], 2) + Math.Pow(at[second] - centre[second], 2));
}
