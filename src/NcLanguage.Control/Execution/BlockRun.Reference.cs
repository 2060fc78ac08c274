using NcLanguage.Control.Codes;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Execution;

// Codes that act in their own block and may claim its axis words: dwell, reference point, machine coordinates, offsets.
ref partial struct BlockRun
{
    /// <summary>Runs the code that claims the axis words, if there is one; true when the axis words are taken.</summary>
    readonly bool ClaimAxisWords(CodeWord? motion)
    {
        CodeWord? claimant = null;
        foreach (var word in _words.Codes)
        {
            if (word.Code.Letter != 'G' || !ClaimsAxes(word.Code.Tenths))
                continue;
            var isRefused = motion is { Code.Tenths: not 800 } other && other.Token != word.Token && HasAxisWords && !IsFrame(word.Code.Tenths);
            if ((claimant is not null || isRefused) && !IsInConflict(word.Token))
                AddFault(FaultKind.AxisWordsClaimedTwice, word.Token, 'G', word.Code.Tenths / 10.0);
            claimant ??= word;
        }
        if (claimant is not { } claim)
            return false;
        switch (claim.Code.Tenths)
        {
            case 40:
                return true;
            case 280 or 300:
                GoHome(claim.Code.Tenths);
                break;
            case 920:
                Preload(claim.Token);
                break;
            case 520:
                ShiftLocally(claim.Token);
                break;
            case 100:
                SetOffsetData(claim.Token);
                break;
            case 310 or 382 or 383 or 384 or 385:
                Probe(claim.Token, claim.Code.Tenths / 10.0);
                break;
            default:
                // The point that scaling and rotation are about.
                break;
        }
        UseAxisWords();
        return true;
    }

    /// <summary>True for a code refused already beside another of its group.</summary>
    readonly bool IsInConflict(int token)
    {
        foreach (ref readonly var fault in _step.Faults.Items)
            if (fault.Kind == FaultKind.CodesConflict && fault.Token == token)
                return true;
        return false;
    }

    readonly bool ClaimsAxes(int tenths) => tenths is 100 or 280 or 300 or 520 or 920
        // Moves until contact end nowhere known; their axis words are theirs.
        or 310 or 382 or 383 or 384 or 385
        // A dwell wants X only where P does not give its time; with P the axis words are the motion's (NISTIR 6556 table 8).
        || (tenths == 40 && !_words.Has('P') && _words.Has('X'))
        || IsFrame(tenths);

    /// <summary>Scaling, rotation and mirror, whose axis words are the point they are about.</summary>
    static bool IsFrame(int tenths) => tenths is 501 or 510 or 511 or 680;

    readonly void Dwell()
    {
        var token = _words.TokenOfCode('G', 40);
        if (token < 0)
            return;
        if (_words.Has('P'))
        {
            var negative = !TakeNotNegative('P', out var number);
            Act(MoveKind.Dwell, negative ? double.NaN : DwellReadings.Seconds('P', number, IsReal('P'), Readings));
        }
        else if (_words.Has('X'))
        {
            var negative = !TakeNotNegative('X', out var number);
            Act(MoveKind.Dwell, negative ? double.NaN : DwellReadings.Seconds('X', number, IsReal('X'), Readings));
        }
        else
            AddFault(FaultKind.WordMissing, token, 'P');
    }

    /// <summary>True for a word with a decimal point, and for an expression, which has its value as it stands.</summary>
    readonly bool IsReal(char letter)
    {
        ref readonly var token = ref _block.Tokens[_words.TokenOf(letter)];
        return token.HasPoint || token.IsExpression;
    }

    readonly double DwellSeconds(double number, bool hasPoint) => DwellReadings.Seconds('P', number, hasPoint, Readings);

    readonly void GoHome(int tenths)
    {
        RefuseUnderCompensation(_words.TokenOfCode('G', tenths), tenths);
        if (HasAxisWords)
        {
            _state.Happened |= Happened.PlaceRead;
            Rapid(TakeAim(), MoveRole.Machine);
        }
        // The second reference point of G30 is not part of the profile: where the axes end is not known.
        RapidInMachine(tenths == 280 ? Machine.Home : Point3.Unknown, HasAxisWords ? WordAxes() : AllAxes);
        NoteTakenAway();
        if (tenths == 300)
            _words.Use('P');
    }

    readonly void MoveInMachineCoordinates(int token)
    {
        if (_state.Motion is not (MotionMode.Rapid or MotionMode.Linear))
            AddFault(FaultKind.MachineMoveMode, token);
        RefuseUnderCompensation(token, 530);
        UseAxisWords();
        RapidInMachine(new Point3(Length('X'), Length('Y'), Length('Z')), WordAxes());
        NoteTakenAway();
    }

    /// <summary>The axes whose words the block has, as bits.</summary>
    readonly int WordAxes() => (_words.Has('X') ? 1 : 0) | (_words.Has('Y') ? 2 : 0) | (_words.Has('Z') ? 4 : 0);

    /// <summary>Moves the axes named to a place in machine coordinates: at rapid, or at the feed under G53 with G1.</summary>
    readonly void RapidInMachine(Point3 machine, int axes)
    {
        _step.Sets |= Slot.Home;
        var way = default(Point3);
        var inWork = machine - Offsets.ToMachine(_state, Setup);
        var to = _state.Position;
        for (var axis = 0; axis < 3; axis++)
        {
            if ((axes & Bit(axis)) == 0)
                continue;
            if (machine[axis] == _state.MachinePosition[axis])
            {
                axes &= ~Bit(axis);
                continue;
            }
            to = to.With(axis, inWork[axis]);
            var inMachine = machine[axis] - _state.MachinePosition[axis];
            way = way.With(axis, double.IsNaN(inMachine) ? to[axis] - _state.Position[axis] : inMachine);
        }
        if (axes == 0)
            return;
        if (_state.Motion == MotionMode.Linear && _words.HasCode('G', 530))
        {
            var feed = PathFeed(way.Length);
            Move(MoveKind.Feed, to, MoveRole.Machine, feed, way.Length / feed * 60);
            Cut();
        }
        else
            Move(MoveKind.Rapid, to, MoveRole.Machine, double.NaN, MoveTime.Rapid(way, Machine));
        Stand(to, axes);
        for (var axis = 0; axis < 3; axis++)
            if ((axes & Bit(axis)) != 0)
                _state.MachinePosition = _state.MachinePosition.With(axis, machine[axis]);
    }

    /// <summary>G92: the place where the tool stands gets the numbers written (NISTIR 6556 §3.5.18).</summary>
    readonly void Preload(int token)
    {
        RefuseUnderCompensation(token, 920);
        if (!HasAxisWords)
            AddFault(FaultKind.WordMissing, token, 'X');
        var numbers = _state.Position;
        for (var axis = 0; axis < 3; axis++)
        {
            var letter = (char)('X' + axis);
            if (!_words.Has(letter))
                continue;
            numbers = numbers.With(axis, Length(letter));
            _state.Shift = _state.Shift.With(axis, _state.Shift[axis] + StandsAt(axis) - numbers[axis]);
        }
        LeavePath(WordAxes());
        _state.StoredShift = _state.Shift;
        var along = _words.Has((char)('X' + DepthAxis)) ? numbers[DepthAxis] - _state.Position[DepthAxis] : 0;
        Offsets.Renumber(ref _state, numbers, along);
        _step.Sets |= Slot.Shift;
    }

    /// <summary>G92.1, G92.2 and G92.3 take the shift out, with or without forgetting it, or bring it back. They want no axis words.</summary>
    readonly void SwitchShift()
    {
        foreach (var word in _words.Codes)
        {
            if (word.Code.Letter != 'G' || word.Code.Tenths is not (921 or 922 or 923))
                continue;
            RefuseUnderCompensation(word.Token, word.Code.Tenths);
            var before = _state;
            if (word.Code.Tenths == 921)
                _state.StoredShift = default;
            _state.Shift = word.Code.Tenths == 923 ? _state.StoredShift : default;
            Offsets.Changed(ref _state, before, Setup, Slot.Shift);
            _step.Sets |= Slot.Shift;
            return;
        }
    }

    /// <summary>G52 shifts every work offset, beside the shift of G92; 0 takes it back (common practice).</summary>
    readonly void ShiftLocally(int token)
    {
        if (!HasAxisWords)
            AddFault(FaultKind.WordMissing, token, 'X');
        RefuseUnderCompensation(token, 520);
        var before = _state;
        for (var axis = 0; axis < 3; axis++)
        {
            var letter = (char)('X' + axis);
            if (_words.Has(letter))
                _state.LocalShift = _state.LocalShift.With(axis, Length(letter));
        }
        Offsets.Changed(ref _state, before, Setup, Slot.LocalShift, WordAxes());
        _step.Sets |= Slot.LocalShift;
    }

    /// <summary>Refuses what the published specification does not allow while radius compensation is on (NISTIR 6556 §B.5).</summary>
    readonly void RefuseUnderCompensation(int token, int tenths)
    {
        if (!_state.IsCompensationOn)
            return;
        AddFault(FaultKind.NotAllowedHere, token, 'G', tenths / 10.0);
        // On the way home it is told here, and not once more at what comes behind.
        if (tenths is 280 or 300 or 530)
            _state.Happened |= Happened.CompensationLeftOn;
    }

    /// <summary>Moves until contact end somewhere on the way to their end point: where, and when, is not known. They are no cut, and the
    /// spindle may stand. The specification's refusals are of G38.2 (NISTIR 6556 §3.5.9).</summary>
    readonly void Probe(int token, double code)
    {
        if (!HasAxisWords)
            AddFault(FaultKind.WordMissing, token, 'X');
        foreach (var letter in "PQ")
            _words.Use(letter);
        RefuseUnderCompensation(token, (int)Math.Round(code * 10));
        if (_state.FeedMode == FeedMode.InverseTime)
            AddFault(FaultKind.NotAllowedHere, token, 'G', code);
        NoteWorkMove(cuts: false);
        var aim = TakeAim();
        var length = Way(aim.Work, aim.Axes).Length;
        if (code > 31 && HasAxisWords && length + Rounding < BlockExecutor.LeastProbeWay)
            AddFault(FaultKind.NotAllowedHere, token, 'G', code, length);
        if (Moving(aim.Work, aim.Axes) != 0)
        {
            NoteFeedUsed();
            NoteTurning();
            Move(MoveKind.Feed, aim.Work, MoveRole.Probe, PathFeed(length), double.NaN);
        }
        Lose(aim.Axes);
    }
}
