using NcLanguage.Control.Codes;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Execution;

// The words of a cycle: which it takes, what they carry over to the holes that follow, and which it cannot do without.
ref partial struct BlockRun
{
    /// <summary>Takes the words beside place and level that this cycle knows (the code table says which) and that no other code has taken.</summary>
    readonly void TakeCycleNumbers()
    {
        if (TakesWord('P') && TakeNotNegative('P', out var dwell))
        {
            _state.DwellNumber = dwell;
            _state.DwellHasPoint = IsReal('P');
            _step.Sets |= Slot.CycleDwell;
        }
        if (TakesWord('Q'))
        {
            _words.Use('Q');
            if (_words['Q'] <= 0)
                AddFault(FaultKind.ValueNotAllowed, _words.TokenOf('Q'), 'Q', _words['Q']);
            else
            {
                _state.Peck = Length('Q');
                _step.Sets |= Slot.CyclePeck;
            }
        }
        if (_state.Cycle is 76 or 87)
            TakeShift();
    }

    readonly bool TakesWord(char letter) => _words.IsFree(letter) && CodeTable.Find('G', _state.Cycle * 10)!.Takes(letter);

    /// <summary>The words along the plane's axes shift the tool off the wall, always as distances (NISTIR 6556 §3.5.16.8).</summary>
    readonly void TakeShift()
    {
        for (var axis = 0; axis < 3; axis++)
        {
            var letter = (char)('I' + axis);
            if (axis == DepthAxis || !_words.IsFree(letter) || (letter == 'K' && Readings.Repeats == RepeatReading.K && _state.Cycle == 76))
                continue;
            _words.Use(letter);
            _state.BoreShift = _state.BoreShift.With(axis, Length(letter));
            _state.BoreShiftGiven = true;
        }
    }

    /// <summary>The levels of a cycle lie along another axis once the plane has changed: they are to be given again.</summary>
    readonly void TurnCycle(WorkPlane plane)
    {
        // Where the plane was not known, it may be the same as before.
        var isOther = _state.Plane != WorkPlane.Unknown;
        _state.InitialLevel = isOther ? StandsAt(Arcs.Axes(plane).Third) : double.NaN;
        _state.RGiven &= !isOther;
        _state.BottomGiven &= !isOther;
        _state.RLevel = double.NaN;
        _state.Bottom = double.NaN;
        _state.BoreShift = default;
        _state.BoreShiftGiven = false;
        _state.BoreTop = double.NaN;
        _state.StandsAtHole = false;
    }

    /// <summary>R and bottom as places: what a block leaves out keeps its place, not its number.</summary>
    readonly void TakeLevels()
    {
        var incremental = _state.Distance == DistanceMode.Incremental;
        var unknown = _state.Distance == DistanceMode.Unknown || _state.Plane == WorkPlane.Unknown;
        if (BoresFromR)
        {
            TakeLevelsFromBelow(incremental, unknown);
            return;
        }
        if (_words.IsFree('R'))
        {
            _words.Use('R');
            var from = Readings.IncrementalR == IncrementalRReading.InitialLevel ? _state.InitialLevel : _state.Position[DepthAxis];
            _state.RLevel = unknown ? double.NaN : incremental ? from + Length('R') : Length('R');
            _state.RGiven = true;
            _step.Sets |= Slot.CycleR;
        }
        var depthLetter = (char)('X' + DepthAxis);
        if (_words.Has(depthLetter))
        {
            _words.Use(depthLetter);
            _state.Bottom = unknown ? double.NaN : incremental ? _state.RLevel + Length(depthLetter) : Length(depthLetter);
            _state.BottomGiven = true;
            _step.Sets |= Slot.CycleBottom;
        }
        var topLetter = (char)('I' + DepthAxis);
        if (_state.Cycle == 87 && _words.IsFree(topLetter))
        {
            _words.Use(topLetter);
            _state.BoreTop = unknown ? double.NaN : incremental ? _state.Bottom + Length(topLetter) : Length(topLetter);
        }
    }

    /// <summary>Whether back boring is in force whose R lies below the part (common practice, by the reading).</summary>
    readonly bool BoresFromR => _state.Cycle == 87 && Readings.BackBoring == BackBoringReading.FromRToZ;

    /// <summary>R as the level where the bar begins, the depth word as the one that it bores up to: above the part there is the initial level alone.</summary>
    readonly void TakeLevelsFromBelow(bool incremental, bool unknown)
    {
        if (_words.Find(ModalGroup.Cycle) is not null)
            (_state.Bottom, _state.BoreTop) = (double.NaN, double.NaN);
        (_state.RLevel, _state.RGiven, _state.BottomGiven) = (_state.InitialLevel, false, false);
        if (_words.IsFree('R'))
        {
            _words.Use('R');
            _state.Bottom = unknown ? double.NaN : incremental ? _state.InitialLevel + Length('R') : Length('R');
            _step.Sets |= Slot.CycleBottom;
        }
        var depthLetter = (char)('X' + DepthAxis);
        if (!_words.Has(depthLetter))
            return;
        _words.Use(depthLetter);
        _state.BoreTop = unknown ? double.NaN : incremental ? _state.Bottom + Length(depthLetter) : Length(depthLetter);
        _step.Sets |= Slot.CycleBottom;
    }

    readonly void RefuseMissing(int token)
    {
        var depthLetter = (char)('X' + DepthAxis);
        if (BoresFromR ? double.IsNaN(_state.Bottom) && !_words.Has('R') : !_state.RGiven)
            AddFault(FaultKind.WordMissing, token, 'R');
        if (!BoresFromR && !_state.BottomGiven && _state.Plane != WorkPlane.Unknown)
            AddFault(FaultKind.WordMissing, token, depthLetter);
        var wantsPeck = _state.Cycle is 83 or 73 || (_state.Cycle is 76 or 87 && !_state.BoreShiftGiven);
        // A Q that was read while the unit was not known has no length, and is there all the same.
        var mayHavePeck = _state.Units == LengthUnit.Unknown && _state.HasSet(Slot.CyclePeck);
        if (wantsPeck && double.IsNaN(_state.Peck) && !mayHavePeck && !_words.Has('Q'))
            AddFault(FaultKind.WordMissing, token, 'Q');
        RefuseBoreTop(token, BoresFromR ? depthLetter : (char)('I' + DepthAxis));
        if (_state.RLevel < _state.Bottom && _state.Cycle != 87)
        {
            var at = _words.Has('R') ? _words.TokenOf('R') : _words.Has(depthLetter) ? _words.TokenOf(depthLetter) : token;
            AddFault(FaultKind.RBelowBottom, at, 'R', _state.RLevel, _state.Bottom);
        }
    }

    /// <summary>Back boring needs the level that it reaches up to (NISTIR 6556 §3.5.16.8); that it lies above the bottom, and below the R level over the part, is common practice.</summary>
    readonly void RefuseBoreTop(int token, char letter)
    {
        if (_state.Cycle != 87 || _state.Plane == WorkPlane.Unknown)
            return;
        var at = _words.Has(letter) ? _words.TokenOf(letter) : token;
        if (double.IsNaN(_state.BoreTop) && !_words.Has(letter))
            AddFault(FaultKind.WordMissing, token, letter);
        else if (_state.BoreTop <= _state.Bottom)
            AddFault(FaultKind.BoreTopOutside, at, letter, _state.BoreTop, _state.Bottom);
        else if (_state.BoreTop >= _state.RLevel && _state.RLevel > _state.Bottom)
            AddFault(FaultKind.BoreTopOutside, at, letter, _state.BoreTop, _state.RLevel);
    }
}
