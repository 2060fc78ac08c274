using NcLanguage.Control.Codes;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Execution;

/// <summary>One block on its way through the control, in the fixed order of NISTIR 6556 table 8, which is not the order typed.</summary>
ref partial struct BlockRun
{
    const double MmPerInch = 25.4;

    readonly BlockExecutor _executor;
    readonly Block _block;
    readonly Step _step;
    readonly BlockWords _words;
    ref ControlState _state;

    public BlockRun(BlockExecutor executor, in Block block, ref ControlState state, Step step)
    {
        _executor = executor;
        _block = block;
        _state = ref state;
        _step = step;
        _words = step.Words;
    }

    readonly MachineProfile Machine => _executor.Machine;

    readonly Setup Setup => _executor.Setup;

    readonly Readings Readings => _executor.Machine.Readings;

    public void Execute()
    {
        _words.Read(_block, _state.Variables, _step);
        RefuseOtherUnitCodes();
        RunStatements();

        SetFeedMode();
        SetFeed();
        SetSpeed();
        SelectTool();
        ChangeTool();
        TurnSpindle();
        SwitchCoolant();
        Dwell();
        SetPlane();
        SetUnits();
        SetCompensation();
        SetLengthOffset();
        SetWorkOffset();
        NotePathControl();
        NoteNotFollowed();
        SetDistanceMode();
        SetReturnLevel();
        _step.ToFrame = Offsets.ToFrame(_state, Setup);
        _step.ToMachine = Offsets.ToMachine(_state, Setup);
        MoveAsTold();
        StopAfterMotion();
        EndProgram();
        NoteCycleLeftOn();

        Assign();
        FlagUnusedWords();
        if (_step.Moves.Count > 0)
            _step.Events |= StepEvents.Moves;
        _state.Set |= _step.Sets;
    }

    readonly void AddFault(FaultKind kind, int token, char letter = '\0', double a = double.NaN, double b = double.NaN) =>
        _step.Faults.Add(new Fault(kind, token, letter, 0, a, b));

    // ---- values -------------------------------------------------------------------------------------------

    /// <summary>Millimetres in one programmed unit of length.</summary>
    readonly double UnitLength => _state.Units switch
    {
        LengthUnit.Millimetre => 1,
        LengthUnit.Inch => MmPerInch,
        _ => double.NaN,
    };

    /// <summary>A length word in mm; NaN where missing or not known.</summary>
    readonly double Length(char letter)
    {
        var value = _words[letter];
        if (value == 0 || double.IsNaN(value))
            return value;
        _state.Happened |= Happened.LengthRead;
        return value * UnitLength * IncrementFactor(_block.Tokens[_words.TokenOf(letter)]);
    }

    readonly double IncrementFactor(in Token token)
    {
        if (Readings.Integers != IntegerReading.Increments || token.HasPoint || token.IsExpression)
            return 1;
        return _state.Units == LengthUnit.Inch ? 0.0001 : 0.001;
    }

    /// <summary>Marks a word as used and refuses it below zero; false where it is missing or refused.</summary>
    readonly bool TakeNotNegative(char letter, out double value)
    {
        value = _words[letter];
        if (!_words.Has(letter))
            return false;
        _words.Use(letter);
        if (value < 0)
        {
            AddFault(FaultKind.ValueNotAllowed, _words.TokenOf(letter), letter, value);
            return false;
        }
        return true;
    }

    readonly bool TakeWhole(char letter, out int value)
    {
        value = 0;
        if (!TakeNotNegative(letter, out var number) || double.IsNaN(number))
            return false;
        value = (int)Math.Round(number);
        // A whole number may be off by this much (NISTIR 6556 §3.3.2.1).
        if (Math.Abs(number - value) <= 0.0001 && number < 100_000_000)
            return true;
        AddFault(FaultKind.ValueNotAllowed, _words.TokenOf(letter), letter, number);
        return false;
    }

    // ---- moves --------------------------------------------------------------------------------------------

    readonly void Rapid(Point3 to, MoveRole role)
    {
        if (to == _state.Position)
            return;
        var seconds = MoveTime.Rapid(_state.Position, to, Machine);
        _step.Moves.Add(new Move(MoveKind.Rapid, role, _state.Position, to, Point3.Unknown, false, _state.Plane, 0, double.NaN, seconds));
        Stand(to);
    }

    readonly void Feed(Point3 to, MoveRole role)
    {
        if (to == _state.Position && !TellsUnknownAxis(to))
            return;
        var length = Point3.Distance(_state.Position, to);
        var feed = PathFeed(length);
        _step.Moves.Add(new Move(MoveKind.Feed, role, _state.Position, to, Point3.Unknown, false, _state.Plane, 0, feed, length / feed * 60));
        Cut();
        Stand(to);
    }

    /// <summary>True when a word of the block moves an axis whose place is not known: a distance from somewhere.</summary>
    readonly bool TellsUnknownAxis(Point3 to)
    {
        for (var axis = 0; axis < 3; axis++)
            if (double.IsNaN(to[axis]) && _words.Has((char)('X' + axis)))
                return true;
        return false;
    }

    readonly void Cut()
    {
        _state.HasCut = true;
        if (_state.Spindle == SpindleState.Off || _state.Speed == 0)
            _state.Happened |= Happened.CutStanding;
        _step.Events |= StepEvents.Cut;
        _step.Sets |= Slot.Cut;
    }

    readonly void Act(MoveKind kind, double seconds, MoveRole role = MoveRole.Plain) =>
        _step.Moves.Add(new Move(kind, role, _state.Position, _state.Position, Point3.Unknown, false, _state.Plane, 0, double.NaN, seconds));

    /// <summary>Notes that the block moves the tool in work coordinates, whatever comes of it.</summary>
    readonly void NoteWorkMove(bool cuts)
    {
        _state.Happened |= Happened.WorkMove;
        _state.IncrementalUse = _state.IncrementalUse switch
        {
            IncrementalUse.Fresh => IncrementalUse.Moved,
            IncrementalUse.Homed => IncrementalUse.MovedFromHome,
            var use => use,
        };
        var set = _state.Set | _step.Sets;
        var isOffset = _state.LengthOffset != LengthOffsetMode.Off && (set & Slot.LengthOffset) != 0;
        var isChanged = (set & Slot.Tool) != 0 && _state.Tool != 0 && Readings.LengthOffset == LengthOffsetReading.G43;
        if (isChanged && !isOffset && (cuts || _words.Has('Z')))
            _state.Happened |= Happened.UsedWithoutOffset;
    }

    /// <summary>Notes that the tool is taken out of the work: distances programmed after it are hardly meant from there.</summary>
    readonly void NoteTakenAway()
    {
        // A program in distances throughout says so once at its beginning; a G91 beside G28, or after a G90, is for the way home.
        var isForHome = (_state.Happened & Happened.WasAbsolute) != 0
            || (_state.IncrementalUse == IncrementalUse.Fresh && (_step.Sets & Slot.Distance) != 0);
        if (isForHome && _state.IncrementalUse is (IncrementalUse.Fresh or IncrementalUse.Moved))
            _state.IncrementalUse = IncrementalUse.Homed;
    }

    /// <summary>Puts the tool at a place in work coordinates.</summary>
    readonly void Stand(Point3 at)
    {
        for (var axis = 0; axis < 3; axis++)
        {
            // An axis not known before and after has moved only when a word of the block says so.
            if (at[axis].Equals(_state.Position[axis]) && !(double.IsNaN(at[axis]) && _words.Has((char)('X' + axis))))
                continue;
            _state.MachinePosition = _state.MachinePosition.With(axis, double.NaN);
            _step.Sets |= axis switch { 0 => Slot.X, 1 => Slot.Y, _ => Slot.Z };
        }
        _state.Position = at;
        _state.StandsAtHole = false;
        Offsets.CompleteMachine(ref _state, Setup);
    }

    /// <summary>Feed along a path of <paramref name="length"/> mm in mm/min, within what the machine can do.</summary>
    readonly double PathFeed(double length)
    {
        var feed = _state.FeedMode switch
        {
            FeedMode.PerMinute => _state.Feed,
            FeedMode.PerTurn => _state.Feed * _state.Speed,
            FeedMode.InverseTime => _state.Feed * length,
            _ => double.NaN,
        };
        if (feed == 0)
            return double.NaN;
        return Machine.MaxFeed is { } most && feed > most ? most : feed;
    }
}
