using NcLanguage.Control.Codes;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Execution;

// Motion proper: which code the axis words belong to, and straight moves.
ref partial struct BlockRun
{
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
            if (_state.Motion == MotionMode.Thread && HasAxisWords && !_words.Has('K') && !_words.Has('F'))
                AddFault(FaultKind.WordMissing, word.Token, 'K');
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

    /// <summary>Notes a motion or cycle that the modes forbid: carried over, it is told at the first block only.</summary>
    readonly void NoteRefused()
    {
        if ((_step.Sets & Fault.ModesThatForbid) != 0)
            _state.Happened &= ~Happened.RefusedInModes;
        foreach (ref readonly var fault in _step.Faults.Items)
            if (fault.IsRefusedMotion)
                _state.Happened |= Happened.RefusedInModes;
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
        _state.RigidTapping = false;
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
        _state.CycleLeftOn = false;
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
                Probe(FirstAxisToken(), 38.2);
                break;
            default:
                if (!_state.IsCalled && !_words.HasUnreadCode('G') && !HasFault(FaultKind.CodesConflict))
                    AddFault(FaultKind.MotionNotSet, FirstAxisToken(), (char)_block.Tokens[FirstAxisToken()].Letter);
                _state.Happened |= Happened.MotionMissing;
                var aim = TakeAim();
                Stand(aim.Work, aim.Axes);
                Arrive(aim);
                break;
        }
    }

    readonly void GoStraight()
    {
        var kind = _state.Motion == MotionMode.Rapid ? MoveKind.Rapid : MoveKind.Feed;
        if (_state.Motion == MotionMode.Thread)
            TakeLead();
        var aim = TakeAim();
        var (to, axes) = (aim.Work, aim.Axes);
        // What stands behind the block and may be looked at goes on from where its words lead.
        Arrive(aim);
        if (!OffsetStraight(kind, ref to, ref axes))
        {
            if (kind == MoveKind.Rapid)
                Rapid(to, axes, MoveRole.Plain);
            else
                Feed(to, axes, MoveRole.Plain);
        }
        Arrive(aim);
    }

    /// <summary>A lead is a length on the way in one turn: the sign of the way is that of the axis words (common practice).</summary>
    readonly void TakeLead()
    {
        _words.Use('K');
        if (_words['K'] <= 0)
            AddFault(FaultKind.ValueNotAllowed, _words.TokenOf('K'), 'K', _words['K']);
    }

    readonly int FirstAxisToken()
    {
        var first = int.MaxValue;
        foreach (var axis in "XYZ")
            if (_words.Has(axis))
                first = Math.Min(first, _words.TokenOf(axis));
        return first;
    }

    readonly void Rapid(in Aim aim, MoveRole role)
    {
        Rapid(aim.Work, aim.Axes, role);
        Arrive(aim);
    }
}
