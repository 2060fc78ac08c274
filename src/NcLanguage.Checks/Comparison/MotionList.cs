using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Cutting;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Comparison;

/// <summary>All that a program makes the machine do, in order. What only says it again in other words, and moves of no length, leave no trace in it.</summary>
public sealed class MotionList
{
    /// <summary>Blocks between two looks at whether the list is still wanted.</summary>
    const int BlocksBetweenLooks = 1024;

    /// <summary>Ways shorter than this are none, mm.</summary>
    const double NoWay = 1e-9;

    readonly List<Motion> _motions = [];

    double _cuttingSpeed = double.NaN;

    MotionList(FlowEnd end) => End = end;

    public IReadOnlyList<Motion> Motions => _motions;

    /// <summary>How the run has ended.</summary>
    public FlowEnd End { get; private set; }

    /// <summary>Motions of which some place is not known.</summary>
    public int NotKnown { get; private set; }

    /// <summary>The first line (0-based) behind which it is not known which way the run goes, so that blocks may run again, or otherwise, than they did here; null where
    /// there is none.</summary>
    public int? LineOfLostWay { get; private set; }

    /// <summary>The first line (0-based) that turns an axis of rotation, which is not followed; null where none does.</summary>
    public int? LineOfRotation { get; private set; }

    static readonly uint Rotations = BlockWords.Bit('A') | BlockWords.Bit('B') | BlockWords.Bit('C');

    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static MotionList Of(SourceText text, Job job, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(job);
        var list = new MotionList(FlowEnd.None);
        var runner = new FlowRunner(job.Executor, FlowText.Of(text, null), job.Programs, job.MostBlocks);
        while (runner.MoveNext())
        {
            if (runner.Blocks % BlocksBetweenLooks == 0)
                cancel.ThrowIfCancellationRequested();
            list.Add(runner.Step, runner.OwnLine);
        }
        list.End = runner.End;
        return list;
    }

    void Add(Step step, int line)
    {
        foreach (ref readonly var fault in step.Faults.Items)
            if (fault.LosesWay)
                LineOfLostWay ??= line;
        if (step.Words.HasAny(Rotations))
            LineOfRotation ??= line;
        if (step.Words.Has('S'))
            _cuttingSpeed = step.Words['S'] * (step.After.Units == LengthUnit.Inch ? CuttingSpeed.MetresPerFoot : 1);
        foreach (ref readonly var move in step.Moves.Items)
        {
            // Spindle and coolant count by what they are while the machine does something.
            if (move.Kind is MoveKind.Spindle or MoveKind.Coolant || (move.IsMotion && move.Kind != MoveKind.Arc && move.Length < NoWay))
                continue;
            ref readonly var state = ref step.After;
            var isTurning = state.Spindle is SpindleState.Clockwise or SpindleState.Counterclockwise;
            var motion = new Motion(
                line, move.Kind, move.Role, move.From, move.To, move.Center, move.Clockwise, move.FullTurns,
                move.IsCut ? move.Feed : 0, isTurning ? state.Speed : state.Spindle == SpindleState.Off ? 0 : double.NaN, state.Spindle, state.Coolant,
                state.Tool, state.WorkOffset, move.Kind == MoveKind.Dwell ? move.Seconds : 0)
            { Modes = ModesOf(step, move.Kind) };
            _motions.Add(motion);
            if (move.IsMotion && !motion.IsKnown)
                NotKnown++;
        }
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
