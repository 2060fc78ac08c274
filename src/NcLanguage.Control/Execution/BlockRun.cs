using System.Runtime.CompilerServices;
using NcLanguage.Control.Codes;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Expressions;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Execution;

/// <summary>One block on its way through the control, in the fixed order of NISTIR 6556 table 8, which is not the order typed.</summary>
ref partial struct BlockRun
{
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

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Execute()
    {
        var reader = new VariableReader(_state, Setup, Machine);
        _words.Read(_block, ref reader, _step, _executor.OwnCodes);
        if (reader.ReadsPlace)
            _step.Events |= StepEvents.ReadsPlace;
        var readsVacant = reader.FirstVacant >= 0 || reader.FirstVacantName is not null;
        if (IsSteeredElsewhere())
            return;
        if (readsVacant)
            NoteVacantWords();
        var onlyMoves = _words.HasNoCodeBesideMotion;
        if (onlyMoves)
            TakeNumbers();
        else
            SetModes();
        TellFrames();
        MoveAsTold();
        CountLongBlock();
        NoteNotDescribed();
        NoteWayUnseen();
        NoteRefused();
        if (!onlyMoves)
        {
            StopAfterMotion();
            EndProgram();
        }
        NoteCycleLeftOn();
        NoteCompensationLeftOn();

        if ((_step.Events & StepEvents.OddText) != 0)
            Assign();
        if (!onlyMoves)
            CallSubprogram();
        FlagUnusedWords();
        if (_step.Moves.Count > 0)
            _step.Events |= StepEvents.Moves;
        _state.Set |= _step.Sets;
        if (!_step.IsFollowed)
            return;
        if (_step.Holes.Count == 1)
            LearnHole();
        else if (onlyMoves && _step.Moves.Count == 1)
            LearnMove();
    }

    readonly void SetModes()
    {
        RefuseOtherUnitCodes();
        SetFeedMode();
        SetFeed();
        SetSpeedMode();
        SetSpeed();
        SelectTool();
        ChangeTool();
        TurnSpindle();
        SwitchCoolant();
        SwitchOverrides();
        Dwell();
        SetPlane();
        SetUnits();
        SetCompensation();
        SetLengthOffset();
        SetWorkOffset();
        SetPathControl();
        TakeCallWords();
        SetDistanceMode();
        SetReturnLevel();
        SetProgramFrame();
        SwitchShift();
    }

    /// <summary>What is left of <see cref="SetModes"/> for a block without codes for it: most blocks are of this kind.</summary>
    readonly void TakeNumbers()
    {
        SetFeed();
        SetSpeed();
        SelectTool();
        SetCompensation();
    }

    /// <summary>Tells where the work coordinates in force lie.</summary>
    readonly void TellFrames()
    {
        _step.ToFrame = _step.Offsets.ToFrame(_state, Setup);
        _step.ToMachine = _step.Offsets.ToMachine(_state, Setup);
    }

    readonly void AddFault(FaultKind kind, int token, char letter = '\0', double a = double.NaN, double b = double.NaN) =>
        _step.Faults.Add(new Fault(kind, token, letter, 0, a, b));

    /// <summary>Millimetres in one programmed unit of length.</summary>
    readonly double MmPerUnit => UnitLength.Of(_state.Units);

    /// <summary>A length word in mm; NaN where missing or not known.</summary>
    readonly double Length(char letter)
    {
        var value = _words[letter];
        if (value == 0 || double.IsNaN(value))
            return value;
        _state.Happened |= Happened.LengthRead;
        // How a number is written is looked up only where that matters.
        return Readings.Integers != IntegerReading.Increments ? value * MmPerUnit : value * MmPerUnit * UnitLength.OfOne(_block.Tokens[_words.TokenOf(letter)], _state.Units, Readings);
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
        if (Math.Abs(number - value) <= Expression.WholeTolerance + Rounding && number <= int.MaxValue)
            return true;
        AddFault(FaultKind.ValueNotAllowed, _words.TokenOf(letter), letter, number);
        value = 0;
        return false;
    }
}
