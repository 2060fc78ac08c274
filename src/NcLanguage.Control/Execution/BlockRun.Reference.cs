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
        if (_words.HasCode('G', 40) && !HasAxisWords)
            return false;
        // The axis words of rotation and scaling are their fixed point, those of a call its arguments.
        if (_words.HasCode('G', 680) || _words.HasCode('G', 510) || _words.HasCode('G', 650))
            return true;
        CodeWord? claimant = null;
        foreach (var word in _words.Codes)
        {
            if (word.Code.Letter != 'G' || !ClaimsAxes(word.Code.Tenths))
                continue;
            if (claimant is not null || (motion is { Code.Tenths: not 800 } && HasAxisWords && word.Code.Tenths != 40))
                AddFault(FaultKind.AxisWordsClaimedTwice, word.Token, 'G', word.Code.Tenths / 10.0);
            claimant ??= word;
        }
        if (claimant is not { } claim)
            return false;
        switch (claim.Code.Tenths)
        {
            case 40:
                break;
            case 280 or 300:
                GoHome(claim.Code.Tenths);
                break;
            case 920:
                Preload(claim.Token);
                break;
            case 921 or 922 or 923:
                SwitchShift(claim.Code.Tenths);
                return false;
            case 520:
                ShiftLocally();
                break;
            default:
                SetOffsetData(claim.Token);
                break;
        }
        foreach (var axis in "XYZ")
            _words.Use(axis);
        return true;
    }

    static bool ClaimsAxes(int tenths) => tenths is 40 or 100 or 280 or 300 or 520 or 920 or 921 or 922 or 923
        // Moves until contact end nowhere known; their axis words are theirs.
        or 310 or 382 or 383 or 384 or 385;

    readonly void Dwell()
    {
        var token = _words.TokenOfCode('G', 40);
        if (token < 0)
            return;
        if (_words.Has('P'))
        {
            var negative = !TakeNotNegative('P', out var number);
            Act(MoveKind.Dwell, negative ? double.NaN : DwellSeconds(number, _block.Tokens[_words.TokenOf('P')].HasPoint));
        }
        else if (_words.Has('X'))
        {
            // X in a dwell block is seconds on every control that takes it (common practice).
            _words.Use('X');
            if (_words['X'] < 0)
                AddFault(FaultKind.ValueNotAllowed, _words.TokenOf('X'), 'X', _words['X']);
            Act(MoveKind.Dwell, _words['X']);
        }
        else
            AddFault(FaultKind.WordMissing, token, 'P');
    }

    readonly double DwellSeconds(double number, bool hasPoint) => DwellReadings.Seconds(number, hasPoint, Readings.Dwell);

    readonly void GoHome(int tenths)
    {
        if (HasAxisWords)
            Rapid(Target(), MoveRole.Machine);
        // The second reference point of G30 is not part of the profile: where the axes end is not known.
        var home = tenths == 280 ? Machine.Home : Point3.Unknown;
        var all = !HasAxisWords;
        var machine = new Point3(
            all || _words.Has('X') ? home.X : _state.MachinePosition.X,
            all || _words.Has('Y') ? home.Y : _state.MachinePosition.Y,
            all || _words.Has('Z') ? home.Z : _state.MachinePosition.Z);
        RapidInMachine(machine, all || _words.Has('X'), all || _words.Has('Y'), all || _words.Has('Z'));
        _step.Sets |= Slot.Home;
        NoteTakenAway();
        if (tenths == 300)
            _words.Use('P');
    }

    readonly void MoveInMachineCoordinates(int token)
    {
        if (_state.Motion is not (MotionMode.Rapid or MotionMode.Linear))
            AddFault(FaultKind.MachineMoveMode, token);
        if (_state.Compensation is CompensationSide.Left or CompensationSide.Right)
            AddFault(FaultKind.NotAllowedHere, token, 'G', 53);
        foreach (var axis in "XYZ")
            _words.Use(axis);
        var machine = new Point3(
            _words.Has('X') ? Length('X') : _state.MachinePosition.X,
            _words.Has('Y') ? Length('Y') : _state.MachinePosition.Y,
            _words.Has('Z') ? Length('Z') : _state.MachinePosition.Z);
        RapidInMachine(machine, _words.Has('X'), _words.Has('Y'), _words.Has('Z'));
        NoteTakenAway();
        _step.Sets |= Slot.Home;
    }

    readonly void RapidInMachine(Point3 machine, bool x, bool y, bool z)
    {
        var inWork = machine - Offsets.ToMachine(_state, Setup);
        var to = new Point3(
            x ? inWork.X : _state.Position.X,
            y ? inWork.Y : _state.Position.Y,
            z ? inWork.Z : _state.Position.Z);
        var seconds = MoveTime.Rapid(_state.Position, to, Machine);
        var kind = _state.Motion == MotionMode.Linear && _words.HasCode('G', 530) ? MoveKind.Feed : MoveKind.Rapid;
        var feed = kind == MoveKind.Feed ? PathFeed(Point3.Distance(_state.Position, to)) : double.NaN;
        _step.Moves.Add(new Move(kind, MoveRole.Machine, _state.Position, to, Point3.Unknown, false, _state.Plane, 0, feed, seconds));
        Stand(to);
        _state.MachinePosition = machine;
    }

    /// <summary>G92: the place where the tool stands gets the numbers written (NISTIR 6556 §3.5.18).</summary>
    readonly void Preload(int token)
    {
        if (!HasAxisWords)
            AddFault(FaultKind.WordMissing, token, 'X');
        var before = _state;
        for (var axis = 0; axis < 3; axis++)
        {
            var letter = (char)('X' + axis);
            if (_words.Has(letter))
                _state.Shift = _state.Shift.With(axis, _state.Shift[axis] + _state.Position[axis] - Length(letter));
        }
        for (var axis = 0; axis < 3; axis++)
        {
            var letter = (char)('X' + axis);
            if (_words.Has(letter))
                _state.Position = _state.Position.With(axis, Length(letter));
        }
        _state.MachinePosition = before.MachinePosition;
        _state.StandsAtHole = false;
        _step.Sets |= Slot.Shift;
    }

    readonly void SwitchShift(int tenths)
    {
        var before = _state;
        if (tenths == 923)
            _state.Shift = _state.StoredShift;
        else
        {
            _state.StoredShift = tenths == 922 ? _state.Shift : default;
            _state.Shift = default;
        }
        Offsets.Changed(ref _state, before, Setup);
        _step.Sets |= Slot.Shift;
    }

    readonly void ShiftLocally()
    {
        var before = _state;
        for (var axis = 0; axis < 3; axis++)
        {
            var letter = (char)('X' + axis);
            if (_words.Has(letter))
                _state.Shift = _state.Shift.With(axis, Length(letter));
        }
        Offsets.Changed(ref _state, before, Setup);
        _step.Sets |= Slot.Shift;
    }

    /// <summary>G10 and moves until contact: what they leave behind is not known.</summary>
    readonly void SetOffsetData(int token)
    {
        foreach (var letter in "LPRQ")
            _words.Use(letter);
        AddFault(FaultKind.NotFollowed, token);
        if (_words.HasCode('G', 100))
        {
            // NISTIR 6556 §3.5.5: systems 1 to 9.
            if (_words['L'] == 2 && _words.Has('P') && !(_words['P'] >= 1 && _words['P'] <= 9))
                AddFault(FaultKind.ValueNotAllowed, _words.TokenOf('P'), 'P', _words['P']);
            _state.Shift = Point3.Unknown;
        }
        Stand(Point3.Unknown);
        _state.MachinePosition = Point3.Unknown;
    }
}
