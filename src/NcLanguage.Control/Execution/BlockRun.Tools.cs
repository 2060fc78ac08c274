using NcLanguage.Control.Codes;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Execution;

// Tool, spindle, coolant, and the codes that stop or end the program.
ref partial struct BlockRun
{
    readonly void SelectTool()
    {
        if (!_words.Has('T'))
            return;
        _state.SelectedTool = TakeWhole('T', out var number) && HasPlace(number) ? number : -1;
        _step.Sets |= Slot.SelectedTool;
        if (Readings.ToolChange == ToolChangeReading.T)
            TakeTool();
    }

    /// <summary>NISTIR 6556 §3.7.3: a tool number above that of the last place in the changer is refused.</summary>
    readonly bool HasPlace(int number)
    {
        if (!(number > Machine.Tools))
            return true;
        AddFault(FaultKind.ValueNotAllowed, _words.TokenOf('T'), 'T', number);
        return false;
    }

    readonly void ChangeTool()
    {
        // Where the T word changes the tool, it is in the spindle by the time an M6 is met.
        if (_words.Find(ModalGroup.ToolChange) is not { } change || Readings.ToolChange != ToolChangeReading.M6)
            return;
        // Before any T of the program, which tool comes is left to the program before.
        if (!_state.IsCalled && ((_state.Set | _step.Sets) & Slot.SelectedTool) == 0)
            AddFault(FaultKind.WordMissing, change.Token, 'T');
        TakeTool();
    }

    readonly void TakeTool()
    {
        NoteNumbersOfOtherTool();
        _state.Tool = _state.SelectedTool;
        // NISTIR 6556 §3.6.3: the spindle is stopped, the coolant is as it was, the axes end where they were.
        _state.Spindle = SpindleState.Off;
        _state.HasCut = false;
        _state.RigidTapping = false;
        _state.Happened &= ~(Happened.CutStanding | Happened.UsedWithoutOffset | Happened.MovedWithoutSize | Happened.CutDry | Happened.CutReversed | Happened.UsedTurning);
        if (_state.IncrementalUse == IncrementalUse.Moved)
            NoteTakenAway();
        _state.Set &= ~(Slot.LengthOffset | Slot.Feed | Slot.Speed | Slot.Coolant);
        _step.Sets |= Slot.Tool | Slot.Spindle;
        _step.Events |= StepEvents.ToolChange;
        if (Readings.LengthOffset == LengthOffsetReading.WithTool)
        {
            var before = _state;
            _state.LengthOffset = LengthOffsetMode.Plus;
            _state.H = Setup.FindTool(_state.Tool)?.LengthOffset ?? _state.Tool;
            Offsets.Changed(ref _state, before, Setup, Slot.LengthOffset);
            _step.Sets |= Slot.LengthOffset;
        }
        Act(MoveKind.ToolChange, Machine.ToolChangeSeconds);
    }

    /// <summary>A feed and a speed that have served for cuts stay in force when the tool is changed. One given behind the last cut, or in the block of the change, is meant for the tool that comes.</summary>
    readonly void NoteNumbersOfOtherTool()
    {
        if (_state.Tool >= 0 && _state.Tool == _state.SelectedTool)
            return;
        if ((_state.Happened & Happened.CutSinceFeed) != 0 && _state.Feed > 0 && _state.FeedMode != FeedMode.InverseTime)
            _state.Happened |= Happened.FeedOfOtherTool;
        if ((_state.Happened & Happened.CutSinceSpeed) != 0 && _state.Speed > 0 && _state.HasSet(Slot.Speed))
            _state.Happened |= Happened.SpeedOfOtherTool;
    }

    readonly void TurnSpindle()
    {
        if (_words.HasCode('M', 190))
            _words.Use('R');
        if (_words.HasCode('M', 290))
        {
            _state.RigidTapping = true;
            _step.Sets |= Slot.RigidTapping;
        }
        if (_words.HasCode('M', 30))
            Spin(SpindleState.Clockwise);
        else if (_words.HasCode('M', 40))
            Spin(SpindleState.Counterclockwise);
        else if (_words.HasCode('M', 190) || (_words.HasCode('M', 50) && Readings.StopsAct == StopReading.BeforeMotion))
            Spin(SpindleState.Off);
        else if (_words.HasUnreadCode('M') && !_words.HasCode('M', 50))
            _state.Spindle = SpindleState.Unknown;
    }

    readonly void Spin(SpindleState spindle)
    {
        _state.Spindle = spindle;
        if (spindle != SpindleState.Off)
            _state.Happened &= ~Happened.CutStanding;
        else
            _state.Happened &= ~Happened.UsedTurning;
        _step.Sets |= Slot.Spindle;
        Act(MoveKind.Spindle, 0);
    }

    /// <summary>M48 and M49: whether the operator's switches for feed and speed count.</summary>
    readonly void SwitchOverrides()
    {
        if (_words.Find(ModalGroup.Override) is not { } word)
            return;
        _state.OverridesOff = word.Code.Tenths == 490;
        _step.Sets |= Slot.Override;
    }

    readonly void SwitchCoolant()
    {
        if (_words.HasCode('M', 90) && Readings.StopsAct == StopReading.BeforeMotion)
            Cool(CoolantState.Off);
        var on = (_words.HasCode('M', 70) ? CoolantState.Mist : 0) | (_words.HasCode('M', 80) ? CoolantState.Flood : 0);
        if (on == 0 && _words.HasUnreadCode('M') && !_words.HasCode('M', 90))
            _state.Coolant = CoolantState.Unknown;
        if (on != 0)
            Cool((_state.Coolant & ~CoolantState.Off) | on);
    }

    readonly void Cool(CoolantState coolant)
    {
        _state.Coolant = coolant;
        _step.Sets |= Slot.Coolant;
        Act(MoveKind.Coolant, 0);
    }

    /// <summary>M5 and M9 where they act when the block's motion is done.</summary>
    readonly void StopAfterMotion()
    {
        if (Readings.StopsAct != StopReading.AfterMotion)
            return;
        if (_words.HasCode('M', 50))
            Spin(SpindleState.Off);
        if (_words.HasCode('M', 90))
            Cool(CoolantState.Off);
    }

    readonly void EndProgram()
    {
        if (_words.HasCode('M', 0) || _words.HasCode('M', 10) || _words.HasCode('M', 600))
            Act(MoveKind.Stop, 0);
        if (_words.HasCode('M', 990))
        {
            _words.Use('P');
            _words.Use('L');
            // Where it returns to a caller, what is on is the caller's matter.
            if (!_step.IsInCall && !_state.IsCalled && !_words.Has('P'))
                _step.Events |= StepEvents.StartsAgain;
            _state.Ended = true;
        }
        if (!_words.HasCode('M', 20) && !_words.HasCode('M', 300))
            return;
        Act(MoveKind.Stop, 0);
        _step.Events |= StepEvents.ProgramEnd;
        // NISTIR 6556 §3.6.1: what the end of a program resets.
        var before = _state;
        _state.Ended = true;
        // Shifts by G52, polar words, scaling and rotation likewise (common practice).
        _state.Shift = default;
        _state.LocalShift = default;
        _state.WorkOffset = 54;
        Offsets.Changed(ref _state, before, Setup, Slot.Shift | Slot.WorkOffset);
        LeaveProgramFrame();
        _state.Plane = WorkPlane.XY;
        _state.Distance = DistanceMode.Absolute;
        _state.FeedMode = FeedMode.PerMinute;
        _state.NotFollowed = NotFollowed.None;
        EndCompensation(wasNotFollowed: false);
        _state.OverridesOff = false;
        _state.Spindle = SpindleState.Off;
        _state.Coolant = CoolantState.Off;
        _state.Motion = MotionMode.Linear;
        ForgetCycle();
    }

    /// <summary>What a cycle or radius compensation is not meant to outlive.</summary>
    const StepEvents LeavesOn = StepEvents.ToolChange | StepEvents.ProgramEnd | StepEvents.StartsAgain;

    /// <summary>A cycle that a tool change or the end of the program meets while it is on.</summary>
    readonly void NoteCycleLeftOn()
    {
        if (_state.Cycle > 0 && (_step.Events & LeavesOn) != 0)
            _state.CycleLeftOn = true;
    }
}
