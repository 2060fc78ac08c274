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
        if (IsOtherUnitCode(word))
            AddFault(FaultKind.CodeNotInReading, word.Token, 'G', word.Code.Tenths / 10.0);
    }

    /// <summary>True for the code of a control that selects its units by the other pair.</summary>
    readonly bool IsOtherUnitCode(CodeWord word) => (word.Code.Tenths is 700 or 710) != (Readings.Units == UnitReading.G70G71);

    readonly void SetFeedMode()
    {
        if (_words.Find(ModalGroup.FeedMode) is not { } word)
            return;
        var mode = word.Code.Tenths switch { 930 => FeedMode.InverseTime, 950 => FeedMode.PerTurn, _ => FeedMode.PerMinute };
        if (mode != _state.FeedMode)
            LeaveFeed(mode);
        _state.FeedMode = mode;
        _step.Sets |= Slot.FeedMode;
    }

    /// <summary>A number meant per minute is none per turn, and no source says that a control turns one into the other. Back in the mode it was
    /// given for, it means what it meant.</summary>
    readonly void LeaveFeed(FeedMode mode)
    {
        var (feed, of) = double.IsNaN(_state.Feed) ? (_state.OtherFeed, _state.OtherFeedMode) : (_state.Feed, _state.FeedMode);
        var isBack = of == mode && !double.IsNaN(feed);
        (_state.Feed, _state.OtherFeed, _state.OtherFeedMode) = isBack ? (feed, double.NaN, FeedMode.Unknown) : (double.NaN, feed, of);
        _state.Set = isBack ? _state.Set | Slot.Feed : _state.Set & ~Slot.Feed;
        _state.Happened &= ~(Happened.FeedOfOtherTool | Happened.CutWithoutFeed);
    }

    /// <summary>G96 and G97 come before S: the S of their block is already read as they say. What G96 makes of the speed depends on the
    /// diameter a lathe turns at, which a mill does not have: the speed is not known.</summary>
    readonly void SetSpeedMode()
    {
        if (_words.Find(ModalGroup.SpeedMode) is not { } word)
            return;
        _state.SurfaceSpeed = word.Code.Tenths == 960;
        if (_state.SurfaceSpeed)
            _state.Speed = double.NaN;
        _step.Sets |= Slot.SpeedMode;
    }

    readonly void SetFeed()
    {
        if (!TakeNotNegative('F', out var value))
            return;
        _state.Feed = _state.FeedMode == FeedMode.InverseTime ? value : value * MmPerUnit;
        _state.OtherFeed = double.NaN;
        _state.Happened &= ~(Happened.FeedOfOtherTool | Happened.CutWithoutFeed | Happened.CutSinceFeed);
        _step.Sets |= Slot.Feed;
    }

    readonly void SetSpeed()
    {
        if (!TakeNotNegative('S', out var value))
            return;
        _state.Happened &= ~(Happened.CutStanding | Happened.SpeedOfOtherTool | Happened.CutSinceSpeed);
        _state.Speed = _state.SurfaceSpeed ? double.NaN : value;
        _step.Sets |= Slot.Speed;
    }

    readonly void SetPlane()
    {
        if (_words.Find(ModalGroup.Plane) is not { } word)
            return;
        var plane = word.Code.Tenths switch { 180 => WorkPlane.ZX, 190 => WorkPlane.YZ, _ => WorkPlane.XY };
        if (plane != _state.Plane && _state.Cycle > 0)
            TurnCycle(plane);
        _state.Plane = plane;
        _step.Sets |= Slot.Plane;
    }

    readonly void SetUnits()
    {
        if (_words.Find(ModalGroup.Units) is not { } word)
            return;
        var (before, was) = (MmPerUnit, _state.Units);
        _state.Units = IsOtherUnitCode(word) ? LengthUnit.Unknown
            : word.Code.Tenths is 200 or 700 ? LengthUnit.Inch
            : LengthUnit.Millimetre;
        // NISTIR 6556 appendix B.5.
        if (_state.IsCompensationOn && MmPerUnit != before && !_words.HasCode('G', 400))
            AddFault(FaultKind.NotAllowedHere, word.Token, 'G', word.Code.Tenths / 10.0);
        _step.Sets |= Slot.Units;
        var isOther = _state.HasSet(Slot.Units) && was != _state.Units && was != LengthUnit.Unknown && _state.Units != LengthUnit.Unknown;
        if (isOther && (_state.Happened & Happened.LengthRead) != 0)
            _state.Happened |= Happened.UnitsMixed;
        // NISTIR 6556 §4.3.3.3: the feed keeps its number, so that F16 inches a minute becomes F16 mm a minute.
        if (MmPerUnit != before && _state.OtherFeedMode != FeedMode.InverseTime)
            _state.OtherFeed *= MmPerUnit / before;
        if (_state.FeedMode == FeedMode.InverseTime)
            return;
        if ((_step.Sets & Slot.Feed) != 0)
            _state.Feed = _words['F'] * MmPerUnit;
        else if (MmPerUnit != before)
            _state.Feed *= MmPerUnit / before;
    }

    readonly void SetLengthOffset()
    {
        if (_words.Find(ModalGroup.LengthOffset) is not { } word)
            return;
        var before = _state;
        _state.LengthOffset = word.Code.Tenths switch { 430 => LengthOffsetMode.Plus, 440 => LengthOffsetMode.Minus, _ => LengthOffsetMode.Off };
        if (_state.LengthOffset == LengthOffsetMode.Off)
            _state.H = 0;
        else
        {
            if (!_words.Has('H'))
                AddFault(FaultKind.WordMissing, word.Token, 'H');
            _state.H = TakeWhole('H', out var h) ? h : -1;
        }
        Offsets.Changed(ref _state, before, Setup, Slot.LengthOffset);
        _step.Sets |= Slot.LengthOffset;
    }

    readonly void SetWorkOffset()
    {
        if (_words.Find(ModalGroup.WorkOffset) is not { } word)
            return;
        if (_state.IsCompensationOn)
            AddFault(FaultKind.NotAllowedHere, word.Token, 'G', word.Code.Tenths / 10.0);
        var before = _state;
        if (word.Code.Tenths == 541)
            _state.WorkOffset = FurtherWorkOffset(word.Token);
        else
            _state.WorkOffset = word.Code.Tenths % 10 == 0 ? word.Code.Tenths / 10 : word.Code.Tenths;
        if (before.WorkOffset != _state.WorkOffset || _state.WorkOffset < 0)
        {
            Offsets.Changed(ref _state, before, Setup, Slot.WorkOffset);
            // That the setup lacks the place of the offset left behind has been told under it.
            if ((before.Happened & Happened.MovedOffFrame) != 0)
                _state.LostAxes = before.LostAxes;
        }
        if (before.WorkOffset != _state.WorkOffset)
            _state.Happened &= ~Happened.MovedOffFrame;
        _step.Sets |= Slot.WorkOffset;
    }

    /// <summary>The work offset that P of G54.1 names; −1 where it names none.</summary>
    readonly int FurtherWorkOffset(int token)
    {
        if (!_words.Has('P'))
            AddFault(FaultKind.WordMissing, token, 'P');
        if (!TakeWhole('P', out var number))
            return -1;
        if (number is >= 1 and <= WorkOffsetName.MostFurther)
            return WorkOffsetName.Further(number);
        AddFault(FaultKind.ValueNotAllowed, _words.TokenOf('P'), 'P', number);
        return -1;
    }

    readonly void SetPathControl()
    {
        if (_words.Find(ModalGroup.PathControl) is not { } word)
            return;
        if (word.Code.Tenths == 640)
            _words.Use('P');
        _state.PathControl = word.Code.Tenths switch { 610 => PathControl.ExactPath, 620 => PathControl.SlowerInCorners, 640 => PathControl.Continuous, _ => PathControl.ExactStop };
        _step.Sets |= Slot.PathControl;
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
}
