using NcLanguage.Checks.Cutting;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Comparison;

/// <summary>What one run makes the machine do, motion after motion, while it is followed: nothing of it is kept. What only says it again in other words, and moves
/// of no length, leave no trace in it.</summary>
/// <param name="runner">A run at its beginning.</param>
/// <param name="unreached">The lines with which those of the further programs of the text begin that no run has come to yet; those that this one comes to are taken out.</param>
sealed class MotionReader(FlowRunner runner, HashSet<int> unreached, CancellationToken cancel)
{
    /// <summary>Blocks and moves between two looks at whether the answer is still wanted.</summary>
    const int WorkBetweenLooks = 4096;

    /// <summary>Ways shorter than this are none, mm.</summary>
    const double NoWay = 1e-9;

    static readonly uint Rotations = BlockWords.Bit('A') | BlockWords.Bit('B') | BlockWords.Bit('C');

    double _cuttingSpeed = double.NaN;
    WorkCoordinates _coordinates = WorkCoordinates.Of(ControlState.Unknown);
    Motion _current;
    int _move;
    int _work;

    public FlowRunner Runner => runner;

    /// <summary>The motion that <see cref="MoveNext"/> has come to.</summary>
    public ref readonly Motion Current => ref _current;

    /// <summary>Motions so far of which some place is not known.</summary>
    public int NotKnown { get; private set; }

    /// <inheritdoc cref="MotionList.LineOfLostWay"/>
    public int? LineOfLostWay { get; private set; }

    /// <inheritdoc cref="MotionList.LineOfRotation"/>
    public int? LineOfRotation { get; private set; }

    /// <summary>Goes on to the next motion; false where the run has none left and <see cref="FlowRunner.End"/> tells how it ended.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public bool MoveNext()
    {
        while (true)
        {
            // Of the steps before the first nothing is there yet.
            for (var moves = runner.Step.Moves; _move < moves.Count; )
                if (Take(moves[_move++]))
                    return true;
            if (!runner.MoveNext())
                return false;
            _work += 1 + runner.Step.Moves.Count;
            if (_work >= WorkBetweenLooks)
            {
                cancel.ThrowIfCancellationRequested();
                _work = 0;
            }
            if (unreached.Count > 0 && runner.Text.Name is null)
                unreached.Remove(runner.Line);
            Note(runner.Step);
            _move = 0;
        }
    }

    /// <summary>Follows the run to its end, for what is known then.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public void Finish()
    {
        while (MoveNext())
        {
        }
    }

    void Note(Step step)
    {
        foreach (ref readonly var fault in step.Faults.Items)
            if (fault.LosesWay)
                LineOfLostWay ??= runner.OwnLine;
        if (step.Words.HasAny(Rotations))
            LineOfRotation ??= runner.OwnLine;
        if (step.Words.Has('S'))
            _cuttingSpeed = step.Words['S'] * (step.After.Units == LengthUnit.Inch ? CuttingSpeed.MetresPerFoot : 1);
    }

    bool Take(in Move move)
    {
        // Spindle and coolant count by what they are while the machine does something.
        if (move.Kind is MoveKind.Spindle or MoveKind.Coolant || (move.IsMotion && move.Kind != MoveKind.Arc && move.Length < NoWay))
            return false;
        ref readonly var state = ref runner.Step.After;
        _coordinates = _coordinates.In(state);
        var isTurning = state.Spindle is SpindleState.Clockwise or SpindleState.Counterclockwise;
        _current = new Motion(
            runner.OwnLine, move.Kind, move.Role, move.From, move.To, move.Center, move.Clockwise, move.FullTurns,
            move.IsCut ? move.Feed : 0, isTurning ? state.Speed : state.Spindle == SpindleState.Off ? 0 : double.NaN, state.Spindle, state.Coolant,
            state.Tool, _coordinates, move.Kind == MoveKind.Dwell ? move.Seconds : 0)
        { Modes = ModesOf(runner.Step, move.Kind) };
        if (move.IsMotion && !_current.IsKnown)
            NotKnown++;
        return true;
    }

    MotionModes ModesOf(Step step, MoveKind kind)
    {
        ref readonly var state = ref step.After;
        var isBeside = kind <= MoveKind.Arc && (state.NotFollowed & NotFollowed.Compensation) != 0 && state.Compensation != CompensationSide.Off;
        var length = kind <= MoveKind.Arc ? state.LengthOffset : LengthOffsetMode.Off;
        return new MotionModes(
            isBeside ? state.Compensation : CompensationSide.Off, isBeside ? state.D : 0, length, length == LengthOffsetMode.Off ? 0 : state.H, state.SurfaceSpeed ? _cuttingSpeed : 0, state.PathControl, state.OverridesOff,
            kind == MoveKind.Stop ? StopOf(step) : 0);
    }

    /// <summary>The end of the program is one, by whatever code.</summary>
    static int StopOf(Step step) => step.Words.Find(ModalGroup.Stop) is { } stop && (step.Events & StepEvents.ProgramEnd) == 0 ? stop.Code.Tenths : -1;
}
