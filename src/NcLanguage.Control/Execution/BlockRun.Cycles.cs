using NcLanguage.Control.Codes;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Execution;

// Drilling and boring cycles: when they drill, the traverse and the return. Their words are in BlockRun.CycleWords.cs, what happens
// inside the hole in BlockRun.InHole.cs.
ref partial struct BlockRun
{
    readonly int MovesAllowed => MoveBudget.Allowed(_state.MovesOfLongBlocks);

    readonly void CountLongBlock()
    {
        if (_step.Moves.Count <= MoveBudget.FewMoves)
            return;
        var allowed = MovesAllowed;
        if (allowed == MoveBudget.OfBlock ? _step.Moves.Count > MoveBudget.ManyMoves : allowed == MoveBudget.ManyMoves && HasFault(FaultKind.TooManyMoves))
            _state.MovesOfLongBlocks += _step.Moves.Count;
    }

    readonly int DepthAxis => Arcs.Axes(_state.Plane).Third;

    /// <summary>Takes the cycle's words and drills when the block names a place, a depth or a level.</summary>
    readonly void DrillIfTold(CodeWord? cycle)
    {
        var starts = cycle is { Code.Tenths: not 800 };
        var told = HasAxisWords || _words.IsFree('R');
        if (!told && !starts)
        {
            TakeCycleNumbers();
            return;
        }
        if (_words.HasCode('G', 530))
        {
            // NISTIR 6556 §3.5.12: refused while a cycle is on. What it names is no hole.
            AddFault(FaultKind.MachineMoveMode, _words.TokenOfCode('G', 530));
            UseAxisWords();
            Lose(WordAxes());
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
        DrillRepeatedly(at);
    }

    readonly void DrillRepeatedly(int token)
    {
        var letter = Readings.Repeats == RepeatReading.K ? 'K' : 'L';
        var repeats = 1;
        // The K of back boring has been taken as its level.
        if (_words.IsFree(letter) && !TakeWhole(letter, out repeats) && double.IsNaN(_words[letter]))
        {
            // How often is not known: once at least, and the last of them may be anywhere on the way.
            DrillOne();
            LoseNextHole();
            return;
        }
        if (repeats < 1)
        {
            // A control that refuses the block drills nothing; one that takes 0 keeps the cycle for later.
            if (_words[letter] == 0 && Readings.ZeroRepeats == ZeroRepeatsReading.Alarm)
                AddFault(FaultKind.ValueNotAllowed, _words.TokenOf(letter), letter, 0);
            UseAxisWords();
            return;
        }
        for (var i = 0; i < repeats; i++)
        {
            if (_step.Moves.Count + _step.Holes.Count >= MovesAllowed)
            {
                RefuseMoves(token, letter);
                LoseNextHole();
                return;
            }
            DrillOne();
        }
    }

    /// <summary>Says once for a block that not all its moves are followed.</summary>
    readonly void RefuseMoves(int token, char letter)
    {
        if (!HasFault(FaultKind.TooManyMoves))
            AddFault(FaultKind.TooManyMoves, token, letter, MovesAllowed);
    }

    readonly void UseAxisWords() => _words.UseAxes();

    readonly int FirstCycleToken() => HasAxisWords ? FirstAxisToken() : _words.TokenOf('R');

    readonly void RefuseWhereNotAllowed(CodeWord? cycle)
    {
        var token = cycle?.Token ?? FirstCycleToken();
        // NISTIR 6556 §3.5.16.
        if (_state.FeedMode == FeedMode.InverseTime || _state.IsCompensationOn)
            AddFault(FaultKind.NotAllowedHere, token, 'G', _state.Cycle);
    }

    /// <summary>After M29 the tapping cycle starts the standing spindle itself, and stops it when the hole is done, also one that turned before (common practice).</summary>
    readonly void StartCoupledSpindle()
    {
        if (_state.RigidTapping && _state.Spindle == SpindleState.Off && _state.Cycle is 84 or 74)
            _state.Spindle = _state.Cycle == 84 ? SpindleState.Clockwise : SpindleState.Counterclockwise;
    }

    /// <summary>Whether the words for a hole's place are distances.</summary>
    readonly bool AreHolesDistances => Readings.HolePositions == HolePositionReading.Incremental || _state.Distance == DistanceMode.Incremental;

    /// <summary>Where the block's place words lead, the cycle's own axis left as it is.</summary>
    readonly Aim NextHole()
    {
        UseAxisWords();
        if (_state.Plane == WorkPlane.Unknown)
            return new Aim(Point3.Unknown, Point3.Unknown, _state.ProgramFrame, AllAxes);
        var aim = TakeAim(AreHolesDistances, Bit(DepthAxis));
        return aim with { Work = aim.Work.With(DepthAxis, _state.Position[DepthAxis]), Axes = aim.Axes & ~Bit(DepthAxis) };
    }

    /// <summary>The tool may have gone on to the next hole, and it is not known whether it has.</summary>
    readonly void LoseNextHole()
    {
        var next = NextHole();
        if (next.Work != _state.Position)
            Lose(next.Axes);
    }

    readonly void DrillOne()
    {
        var depth = DepthAxis;
        var isHop = _state.StandsAtHole;
        var firstMove = _step.Moves.Count;
        var aim = NextHole();
        var place = aim.Work;
        LiftBeforeTraverse();
        var arriveAt = _state.Position[depth];
        Rapid(place.With(depth, arriveAt), aim.Axes, isHop ? MoveRole.Hop : MoveRole.FirstTraverse);
        Rapid(_state.Position.With(depth, _state.RLevel), Bit(depth), MoveRole.Approach);
        var spindle = _state.Spindle;
        StartCoupledSpindle();
        DrillInHole(place);
        var returnTo = ReturnLevelOfHole();
        LeaveHole(place, returnTo);
        _state.Spindle = spindle;
        if (_state.RigidTapping && _state.Cycle is (84 or 74))
        {
            _state.Spindle = SpindleState.Off;
            _step.Sets |= Slot.Spindle;
        }
        // The cycle's own axis is not scaled: R and bottom are levels of the work (common practice).
        if (aim.Frame is { } frame)
            Arrive(aim with { Programmed = frame.Led(aim.Programmed, depth, _state.Position) });
        _state.StandsAtHole = true;
        _state.CycleLeftOn = false;
        _step.Sets |= Slot.Hole;
        _step.Holes.Add(new Hole(
            _state.Cycle, _state.Tool, place.X, place.Y, _state.RLevel, _state.Bottom, _state.InitialLevel, arriveAt, returnTo,
            Dwells ? DwellSeconds(_state.DwellNumber, _state.DwellHasPoint) : 0,
            PathFeed(1), _state.Speed, _state.Cycle is 73 or 83 ? _state.Peck : double.NaN, isHop)
        {
            FirstMove = firstMove,
            ProgrammedFeed = ProgrammedFeed(1, turnsAsProgrammed: true),
        });
    }

    /// <summary>Up to R where the tool is below it; under the reading that lifts before the move, up to the initial level for G98.</summary>
    readonly void LiftBeforeTraverse()
    {
        var depth = DepthAxis;
        var here = _state.Position[depth];
        var level = here;
        if (Readings.ReturnLevel == ReturnLevelReading.BeforeMove)
        {
            level = _state.ReturnLevel switch
            {
                ReturnLevel.Initial => Math.Max(here, _state.InitialLevel),
                ReturnLevel.RLevel => here,
                _ => _state.InitialLevel <= here ? here : double.NaN,
            };
        }
        // Not known where R is not: then it may lift or not.
        level = Math.Max(level, _state.RLevel);
        // From where it is not known, whether there is a lift is not known either.
        if (!double.IsNaN(here))
            Rapid(_state.Position.With(depth, level), Bit(depth), MoveRole.Lift);
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

    /// <summary>Cycles that wait at the bottom: those of the published specification, tapping and fine boring (common practice).</summary>
    /// <summary>Whether the cycle in force waits at its end.</summary>
    readonly bool Dwells => _state.Cycle is 82 or 86 or 88 or 89 or 76 or 84 or 74 || BoresFromR;
}
