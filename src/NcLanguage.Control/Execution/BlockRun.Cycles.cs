using NcLanguage.Control.Codes;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Execution;

// Drilling and boring cycles: the words, the levels, the traverse and the return. What happens inside the hole is in BlockRun.InHole.cs.
ref partial struct BlockRun
{
    /// <summary>Repeats one block may ask for; more is refused rather than run.</summary>
    const int MostRepeats = 9999;

    /// <summary>Moves of one block after which no further repeat is followed.</summary>
    const int MostMoves = 100_000;

    readonly int DepthAxis => Arcs.Axes(_state.Plane).Third;

    /// <summary>Takes the cycle's words and drills when the block names a place, a depth or a level.</summary>
    readonly void DrillIfTold(CodeWord? cycle)
    {
        var starts = cycle is { Code.Tenths: not 800 };
        var told = HasAxisWords || _words.Has('R');
        if (!told && !starts)
        {
            TakeCycleNumbers();
            return;
        }
        RefuseWhereNotAllowed(cycle);
        TakeCycleNumbers();
        TakeLevels();
        var at = cycle?.Token ?? FirstCycleToken();
        if (!HasAxisWords)
            AddFault(FaultKind.WordMissing, at, 'X');
        if (!told)
            return;
        RefuseMissing(at);
        NoteWorkMove(cuts: true);
        var repeats = TakeRepeats();
        for (var i = 0; i < repeats; i++)
        {
            DrillOne();
            if (_step.Moves.Count > MostMoves && i + 1 < repeats)
            {
                // Pecks times repeats can ask for millions of moves: they are not followed further, and where the tool ends is not known.
                var letter = Readings.Repeats == RepeatReading.K ? 'K' : 'L';
                AddFault(FaultKind.ValueNotAllowed, _words.TokenOf(letter), letter, repeats);
                Stand(Point3.Unknown);
                return;
            }
        }
    }

    readonly int FirstCycleToken() => HasAxisWords ? FirstAxisToken() : _words.TokenOf('R');

    readonly void RefuseWhereNotAllowed(CodeWord? cycle)
    {
        var token = cycle?.Token ?? FirstCycleToken();
        // NISTIR 6556 §3.5.16.
        if (_state.FeedMode == FeedMode.InverseTime || _state.Compensation is CompensationSide.Left or CompensationSide.Right)
            AddFault(FaultKind.NotAllowedHere, token, 'G', _state.Cycle);
        if (_words.HasCode('G', 530))
            AddFault(FaultKind.MachineMoveMode, _words.TokenOfCode('G', 530));
    }

    readonly void TakeCycleNumbers()
    {
        if (TakeNotNegative('P', out var dwell))
        {
            _state.DwellNumber = dwell;
            _state.DwellHasPoint = _block.Tokens[_words.TokenOf('P')].HasPoint;
            _step.Sets |= Slot.CycleDwell;
        }
        if (_words.Has('Q'))
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
        foreach (var letter in "IJK")
            if (_state.Cycle is 76 or 87)
                _words.Use(letter);
    }

    /// <summary>R and bottom as places: what a block leaves out keeps its place, not its number.</summary>
    readonly void TakeLevels()
    {
        var incremental = _state.Distance == DistanceMode.Incremental;
        var unknown = _state.Distance == DistanceMode.Unknown;
        if (_words.Has('R'))
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
    }

    readonly void RefuseMissing(int token)
    {
        if (!_state.RGiven)
            AddFault(FaultKind.WordMissing, token, 'R');
        if (!_state.BottomGiven)
            AddFault(FaultKind.WordMissing, token, (char)('X' + DepthAxis));
        if (_state.Cycle is 83 or 73 && double.IsNaN(_state.Peck) && !_words.Has('Q'))
            AddFault(FaultKind.WordMissing, token, 'Q');
        if (_state.RLevel < _state.Bottom && _state.Cycle != 87)
        {
            var at = _words.Has('R') ? _words.TokenOf('R') : _words.Has((char)('X' + DepthAxis)) ? _words.TokenOf((char)('X' + DepthAxis)) : token;
            AddFault(FaultKind.RBelowBottom, at, 'R', _state.RLevel, _state.Bottom);
        }
    }

    readonly int TakeRepeats()
    {
        var letter = Readings.Repeats == RepeatReading.K ? 'K' : 'L';
        if (!_words.Has(letter) || (letter == 'K' && _state.Cycle == 87))
            return 1;
        if (!TakeWhole(letter, out var repeats))
            return 1;
        if (repeats is >= 1 and <= MostRepeats)
            return repeats;
        AddFault(FaultKind.ValueNotAllowed, _words.TokenOf(letter), letter, repeats);
        return 1;
    }

    /// <summary>Where the block's place words lead, the cycle's own axis left as it is.</summary>
    readonly Point3 NextPlace()
    {
        var place = _state.Position;
        for (var axis = 0; axis < 3; axis++)
        {
            var letter = (char)('X' + axis);
            if (axis == DepthAxis || !_words.Has(letter))
                continue;
            _words.Use(letter);
            var incremental = Readings.HolePositions == HolePositionReading.Incremental || _state.Distance == DistanceMode.Incremental;
            var value = Length(letter);
            place = place.With(axis, incremental ? place[axis] + value : _state.Distance == DistanceMode.Unknown ? double.NaN : value);
        }
        return place;
    }

    readonly void DrillOne()
    {
        var depth = DepthAxis;
        var isHop = _state.StandsAtHole;
        var firstMove = _step.Moves.Count;
        var place = NextPlace();
        LiftBeforeTraverse();
        var arriveAt = _state.Position[depth];
        Rapid(place.With(depth, arriveAt), isHop ? MoveRole.Hop : MoveRole.FirstTraverse);
        Rapid(_state.Position.With(depth, _state.RLevel), MoveRole.Approach);
        var spindle = _state.Spindle;
        DrillInHole(place);
        var returnTo = ReturnLevelOfHole();
        if (Arcs.Axes(_state.Plane).Third == depth && _state.Position[depth] != returnTo)
            LeaveHole(returnTo);
        _state.Spindle = spindle;
        _state.StandsAtHole = true;
        _state.CycleLeftOn = false;
        _step.Sets |= Slot.Hole;
        _step.Holes.Add(new Hole(
            _state.Cycle, _state.Tool, place.X, place.Y, _state.RLevel, _state.Bottom, _state.InitialLevel, arriveAt, returnTo,
            HasDwell(_state.Cycle) ? DwellSeconds(_state.DwellNumber, _state.DwellHasPoint) : double.NaN,
            PathFeed(1), _state.Speed, _state.Cycle is 73 or 83 ? _state.Peck : double.NaN, isHop, firstMove, SecondsSince(firstMove)));
    }

    /// <summary>Up to R where the tool is below it; under the reading that lifts before the move, up to the initial level for G98.</summary>
    readonly void LiftBeforeTraverse()
    {
        var depth = DepthAxis;
        var here = _state.Position[depth];
        var level = here;
        if (Readings.ReturnLevel == ReturnLevelReading.BeforeMove && _state.StandsAtHole)
        {
            level = _state.ReturnLevel switch
            {
                ReturnLevel.Initial => Math.Max(here, _state.InitialLevel),
                ReturnLevel.RLevel => here,
                _ => double.NaN,
            };
        }
        if (level < _state.RLevel)
            level = _state.RLevel;
        Rapid(_state.Position.With(depth, level), MoveRole.Lift);
    }

    /// <summary>The level at which this hole is left.</summary>
    readonly double ReturnLevelOfHole()
    {
        if (Readings.ReturnLevel == ReturnLevelReading.BeforeMove)
            return _state.RLevel;
        return _state.ReturnLevel switch
        {
            ReturnLevel.Initial => Math.Max(_state.InitialLevel, _state.RLevel),
            ReturnLevel.RLevel => _state.RLevel,
            _ => _state.InitialLevel <= _state.RLevel ? _state.RLevel : double.NaN,
        };
    }

    readonly double SecondsSince(int firstMove)
    {
        var seconds = 0.0;
        for (var i = firstMove; i < _step.Moves.Count; i++)
            seconds += _step.Moves[i].Seconds;
        return seconds;
    }

    static bool HasDwell(int cycle) => cycle is 82 or 86 or 88 or 89 or 76 or 84 or 74;
}
