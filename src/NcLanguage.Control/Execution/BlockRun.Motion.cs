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
        else if (HasAxisWords || _state.Motion is MotionMode.ArcClockwise or MotionMode.ArcCounterclockwise && _words.HasAny(CentreWords))
            MoveByMode(motion);
    }

    const uint CentreWords = 1u << ('I' - 'A') | 1u << ('J' - 'A') | 1u << ('K' - 'A');

    readonly void SetMotion(CodeWord? motion, CodeWord? cycle)
    {
        if (motion is not null || cycle is not (null or { Code.Tenths: 800 }))
            _state.Happened &= ~Happened.MotionMissing;
        if (motion is { } word)
        {
            _state.Motion = word.Code.Tenths switch
            {
                0 => MotionMode.Rapid,
                10 => MotionMode.Linear,
                20 => MotionMode.ArcClockwise,
                30 => MotionMode.ArcCounterclockwise,
                _ => MotionMode.Thread,
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

    readonly void EndCycle()
    {
        _state.Cycle = 0;
        _state.CycleLeftOn = false;
        _state.StandsAtHole = false;
        _state.RGiven = false;
        _state.BottomGiven = false;
        _state.RLevel = double.NaN;
        _state.Bottom = double.NaN;
        _state.DwellNumber = double.NaN;
        _state.Peck = double.NaN;
        _state.InitialLevel = double.NaN;
        _step.Sets |= Slot.Cycle;
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
            _state.InitialLevel = _state.Position[Arcs.Axes(_state.Plane).Third];
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
        foreach (var axis in "XYZ")
            _words.Use(axis);
        NoteWorkMove(cuts: _state.Motion is not (MotionMode.Rapid or MotionMode.Unknown or MotionMode.None));
        switch (_state.Motion)
        {
            case MotionMode.Rapid:
                Rapid(Target(), MoveRole.Plain);
                break;
            case MotionMode.Linear:
                Feed(Target(), MoveRole.Plain);
                break;
            case MotionMode.ArcClockwise or MotionMode.ArcCounterclockwise:
                Arc();
                break;
            case MotionMode.Thread:
                Feed(Target(), MoveRole.Plain);
                break;
            default:
                if (!_state.IsCalled)
                    AddFault(FaultKind.MotionNotSet, FirstAxisToken());
                _state.Happened |= Happened.MotionMissing;
                Stand(Target());
                break;
        }
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
    readonly Point3 Target() => new(Target('X', 0), Target('Y', 1), Target('Z', 2));

    readonly double Target(char letter, int axis)
    {
        var here = _state.Position[axis];
        if (!_words.Has(letter))
            return here;
        return _state.Distance switch
        {
            DistanceMode.Absolute => Length(letter),
            DistanceMode.Incremental => here + Length(letter),
            _ => double.NaN,
        };
    }

    readonly void Arc()
    {
        var clockwise = _state.Motion == MotionMode.ArcClockwise;
        var (first, second, _) = Arcs.Axes(_state.Plane);
        var from = _state.Position;
        var to = Target();
        var token = _words.Find(ModalGroup.Motion)?.Token ?? FirstAxisOrCentreToken();
        var centre = _words.Has('R') ? CentreByRadius(from, to, clockwise, first, second, token) : CentreByWords(from, to, first, second, token);
        var arc = new Move(MoveKind.Arc, MoveRole.Plain, from, to, centre, clockwise, _state.Plane, 0, double.NaN, double.NaN);
        var length = arc.Length;
        var feed = PathFeed(length);
        _step.Moves.Add(arc with { Feed = feed, Seconds = length / feed * 60 });
        Cut();
        Stand(to);
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
        if (Arcs.CentreFromRadius(from[first], from[second], to[first], to[second], radius, clockwise) is { } centre)
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
        var centre = from.With(first, Centre(firstLetter, from[first])).With(second, Centre(secondLetter, from[second]));
        var start = Radius(from, centre, first, second);
        var end = Radius(to, centre, first, second);
        if (Math.Abs(start - end) > ArcTolerance)
            AddFault(FaultKind.ArcRadiusMismatch, token, 'I', start, end);
        else if (start == 0)
            AddFault(FaultKind.ArcImpossible, token, 'I', 0, 0);
        return centre;
    }

    readonly double Centre(char letter, double from)
    {
        if (Readings.ArcCentre == ArcCentreReading.Absolute)
            return _words.Has(letter) ? Length(letter) : from;
        return _words.Has(letter) ? from + Length(letter) : from;
    }

    static double Radius(Point3 at, Point3 centre, int first, int second) =>
        Math.Sqrt(Math.Pow(at[first] - centre[first], 2) + Math.Pow(at[second] - centre[second], 2));
}
