using NcLanguage.Control.Codes;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Execution;

// The words that set modes, feeds, speeds, tools and offsets: everything before the motion of a block.
ref partial struct BlockRun
{
    readonly void RefuseOtherUnitCodes()
    {
        var units = _words.Find(ModalGroup.Units);
        if (units is not { } word)
            return;
        var isSeventy = word.Code.Tenths is 700 or 710;
        if (isSeventy != (Readings.Units == UnitReading.G70G71))
            AddFault(FaultKind.CodeNotInReading, word.Token, 'G', word.Code.Tenths / 10.0);
    }

    readonly void SetFeedMode()
    {
        if (_words.Find(ModalGroup.FeedMode) is not { } word)
            return;
        _state.FeedMode = word.Code.Tenths switch { 930 => FeedMode.InverseTime, 950 => FeedMode.PerTurn, _ => FeedMode.PerMinute };
        _step.Sets |= Slot.FeedMode;
    }

    readonly void SetFeed()
    {
        if (!TakeNotNegative('F', out var value))
            return;
        _state.Feed = _state.FeedMode == FeedMode.InverseTime ? value : value * UnitLength;
        _step.Sets |= Slot.Feed;
    }

    readonly void SetSpeed()
    {
        if (!TakeNotNegative('S', out var value))
            return;
        _state.Happened &= ~Happened.CutStanding;
        _state.Speed = (_state.NotFollowed & NotFollowed.SurfaceSpeed) != 0 ? double.NaN : value;
        _step.Sets |= Slot.Speed;
    }

    readonly void SelectTool()
    {
        if (!_words.Has('T'))
            return;
        if (!TakeWhole('T', out var number))
        {
            _state.SelectedTool = -1;
            return;
        }
        _state.SelectedTool = number;
        _step.Sets |= Slot.SelectedTool;
        if (Readings.ToolChange == ToolChangeReading.T)
            TakeTool();
    }

    readonly void ChangeTool()
    {
        if (_words.Find(ModalGroup.ToolChange) is null)
            return;
        if (Readings.ToolChange == ToolChangeReading.M6 || !_words.Has('T'))
            TakeTool();
    }

    readonly void TakeTool()
    {
        _state.Tool = _state.SelectedTool;
        // NISTIR 6556 §3.6.3: the spindle is stopped, the coolant is as it was, the axes end where they were.
        _state.Spindle = SpindleState.Off;
        _state.HasCut = false;
        _state.Happened &= ~(Happened.CutStanding | Happened.UsedWithoutOffset);
        if (_state.IncrementalUse == IncrementalUse.Moved)
            NoteTakenAway();
        _state.Set &= ~(Slot.LengthOffset | Slot.Feed | Slot.Speed | Slot.Coolant);
        _step.Sets |= Slot.Tool | Slot.Spindle;
        _step.Events |= StepEvents.ToolChange;
        if (Readings.LengthOffset == LengthOffsetReading.WithTool)
        {
            var before = _state;
            _state.LengthOffset = LengthOffsetMode.Plus;
            _state.H = Math.Max(0, _state.Tool);
            Offsets.Changed(ref _state, before, Setup);
            _step.Sets |= Slot.LengthOffset;
        }
        Act(MoveKind.ToolChange, Machine.ToolChangeSeconds);
    }

    readonly void TurnSpindle()
    {
        if (_words.HasCode('M', 190))
            _words.Use('R');
        if (_words.HasCode('M', 30))
            Spin(SpindleState.Clockwise);
        else if (_words.HasCode('M', 40))
            Spin(SpindleState.Counterclockwise);
        else if (_words.HasCode('M', 190) || (_words.HasCode('M', 50) && Readings.StopsAct == StopReading.BeforeMotion))
            Spin(SpindleState.Off);
    }

    readonly void Spin(SpindleState spindle)
    {
        _state.Spindle = spindle;
        if (spindle != SpindleState.Off)
            _state.Happened &= ~Happened.CutStanding;
        _step.Sets |= Slot.Spindle;
        Act(MoveKind.Spindle, 0);
    }

    readonly void SwitchCoolant()
    {
        if (_words.HasCode('M', 90) && Readings.StopsAct == StopReading.BeforeMotion)
            Cool(CoolantState.Off);
        var on = (_words.HasCode('M', 70) ? CoolantState.Mist : 0) | (_words.HasCode('M', 80) ? CoolantState.Flood : 0);
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

    readonly void SetPlane()
    {
        if (_words.Find(ModalGroup.Plane) is not { } word)
            return;
        _state.Plane = word.Code.Tenths switch { 180 => WorkPlane.ZX, 190 => WorkPlane.YZ, _ => WorkPlane.XY };
        _step.Sets |= Slot.Plane;
    }

    readonly void SetUnits()
    {
        if (_words.Find(ModalGroup.Units) is not { } word)
            return;
        _state.Units = word.Code.Tenths is 200 or 700 ? LengthUnit.Inch : LengthUnit.Millimetre;
        _step.Sets |= Slot.Units;
    }

    readonly void SetCompensation()
    {
        if (_words.Find(ModalGroup.RadiusCompensation) is not { } word)
            return;
        var side = word.Code.Tenths switch { 410 => CompensationSide.Left, 420 => CompensationSide.Right, _ => CompensationSide.Off };
        if (side != CompensationSide.Off)
        {
            if (_state.Compensation is CompensationSide.Left or CompensationSide.Right)
                AddFault(FaultKind.NotAllowedHere, word.Token, 'G', word.Code.Tenths / 10.0);
            TakeWhole('D', out _);
        }
        _state.Compensation = side;
        Follow(NotFollowed.Compensation, side == CompensationSide.Off, word.Token);
        _step.Sets |= Slot.Compensation;
    }

    readonly void SetLengthOffset()
    {
        if (_words.Find(ModalGroup.LengthOffset) is not { } word)
            return;
        var before = _state;
        _state.LengthOffset = word.Code.Tenths switch { 430 => LengthOffsetMode.Plus, 440 => LengthOffsetMode.Minus, _ => LengthOffsetMode.Off };
        if (_state.LengthOffset == LengthOffsetMode.Off)
            _state.H = 0;
        else if (!_words.Has('H'))
            AddFault(FaultKind.WordMissing, word.Token, 'H');
        else
            _state.H = TakeWhole('H', out var h) ? h : -1;
        Offsets.Changed(ref _state, before, Setup);
        _step.Sets |= Slot.LengthOffset;
    }

    readonly void SetWorkOffset()
    {
        if (_words.Find(ModalGroup.WorkOffset) is not { } word)
            return;
        if (_state.Compensation is CompensationSide.Left or CompensationSide.Right)
            AddFault(FaultKind.NotAllowedHere, word.Token, 'G', word.Code.Tenths / 10.0);
        var before = _state;
        if (word.Code.Tenths == 541)
        {
            // Further offsets by number are not in the setup: the datum is not known.
            TakeWhole('P', out _);
            _state.WorkOffset = -1;
        }
        else
            _state.WorkOffset = word.Code.Tenths % 10 == 0 ? word.Code.Tenths / 10 : word.Code.Tenths;
        if (before.WorkOffset != _state.WorkOffset)
        {
            Offsets.Changed(ref _state, before, Setup);
            _state.StandsAtHole = false;
        }
        _step.Sets |= Slot.WorkOffset;
    }

    readonly void NotePathControl()
    {
        if (_words.Find(ModalGroup.PathControl) is { Code.Tenths: 640 })
            _words.Use('P');
    }

    readonly void SetDistanceMode()
    {
        if (_words.Find(ModalGroup.Distance) is not { } word)
            return;
        _state.Distance = word.Code.Tenths == 900 ? DistanceMode.Absolute : DistanceMode.Incremental;
        _state.IncrementalUse = _state.Distance == DistanceMode.Incremental ? IncrementalUse.Fresh : IncrementalUse.None;
        if (_state.Distance == DistanceMode.Absolute)
            _state.Happened |= Happened.WasAbsolute;
        _step.Sets |= Slot.Distance;
    }

    readonly void SetReturnLevel()
    {
        if (_words.Find(ModalGroup.ReturnLevel) is not { } word)
            return;
        _state.ReturnLevel = word.Code.Tenths == 980 ? ReturnLevel.Initial : ReturnLevel.RLevel;
        _step.Sets |= Slot.ReturnLevel;
    }

    readonly void EndProgram()
    {
        if (_words.HasCode('M', 0) || _words.HasCode('M', 10) || _words.HasCode('M', 600))
            Act(MoveKind.Stop, 0);
        if (_words.HasCode('M', 990))
        {
            _words.Use('P');
            _words.Use('L');
            _state.Ended = true;
            _step.Events |= StepEvents.ProgramEnd;
        }
        if (!_words.HasCode('M', 20) && !_words.HasCode('M', 300))
            return;
        Act(MoveKind.Stop, 0);
        _step.Events |= StepEvents.ProgramEnd;
        // NISTIR 6556 §3.6.1: what the end of a program resets.
        var before = _state;
        _state.Ended = true;
        _state.Shift = default;
        _state.WorkOffset = 54;
        Offsets.Changed(ref _state, before, Setup);
        _state.Plane = WorkPlane.XY;
        _state.Distance = DistanceMode.Absolute;
        _state.FeedMode = FeedMode.PerMinute;
        _state.Compensation = CompensationSide.Off;
        _state.NotFollowed = NotFollowed.None;
        _state.Spindle = SpindleState.Off;
        _state.Coolant = CoolantState.Off;
        _state.Motion = MotionMode.Linear;
        _state.Cycle = 0;
    }

    /// <summary>A cycle that a tool change, a stop or the end of the program meets while it is on.</summary>
    readonly void NoteCycleLeftOn()
    {
        if (_state.Cycle <= 0)
            return;
        if ((_step.Events & (StepEvents.ToolChange | StepEvents.ProgramEnd)) != 0 || _words.Find(ModalGroup.Stop) is not null)
            _state.CycleLeftOn = true;
    }
}
