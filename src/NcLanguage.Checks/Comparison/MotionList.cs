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
    WorkCoordinates _coordinates = WorkCoordinates.Of(ControlState.Unknown);

    FurtherProgram[] _further = [];

    /// <summary>What the run of the text's first program does.</summary>
    public IReadOnlyList<Motion> Motions => _motions;

    /// <summary>How the run has ended; where that of a further program was broken off, how that one has.</summary>
    public FlowEnd End { get; private set; }

    /// <summary>How the run of the text's first program has ended.</summary>
    public FlowEnd OwnEnd { get; private set; }

    /// <summary>How many further programs no run before has come to.</summary>
    public int ProgramsByThemselves => _further.Count(program => !program.IsReached);

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
        var flow = FlowText.Of(text, null);
        var further = flow.FurtherPrograms();
        var unreached = further.Select(program => program.First).ToHashSet();
        var list = new MotionList();
        var left = job.MostBlocks;
        var runner = new FlowRunner(job.Executor, flow, job.Programs, left);
        list.Follow(runner, unreached, ref left, cancel);
        list.OwnEnd = list.End;
        list.FollowFurther(flow, further, unreached, job, runner, left, cancel);
        return list;
    }

    /// <summary>Follows the further programs that no run before has come to: somebody begins or calls them.</summary>
    void FollowFurther(FlowText flow, IReadOnlyList<(int Number, int First, int End)> programs, HashSet<int> unreached, Job job, FlowRunner before, int left, CancellationToken cancel)
    {
        _further = new FurtherProgram[programs.Count];
        var last = before;
        for (var i = 0; i < programs.Count; i++)
        {
            var (number, first, end) = programs[i];
            if (!unreached.Contains(first))
            {
                (_further[i], last) = (new FurtherProgram(number, flow, first, end, job), null);
                continue;
            }
            var list = new MotionList();
            last = FlowRunner.OfFurther(job.Executor, flow, first, end, last, job.Programs, left);
            list.Follow(last, unreached, ref left, cancel);
            Take(list);
            _further[i] = new FurtherProgram(number, list);
        }
    }

    /// <summary>What a further program does that is begun by itself.</summary>
    internal static MotionList OfFurther(FlowText flow, int first, int end, Job job, CancellationToken cancel)
    {
        var list = new MotionList();
        var left = job.MostBlocks;
        list.Follow(FlowRunner.OfFurther(job.Executor, flow, first, end, null, job.Programs, left), [], ref left, cancel);
        return list;
    }

    /// <summary>All that has to be held against another list: what the run does, and behind it the further programs of the text that it does not come to, or that of the other text does not.</summary>
    /// <param name="most">Motions of the run of the first program that are held against the other at most.</param>
    public IReadOnlyList<Motion> Against(MotionList other, int most, CancellationToken cancel)
    {
        if (_further.Length == 0 && most >= _motions.Count)
            return _motions;
        var all = new List<Motion>(_motions.Take(most));
        var byThemselves = other._further.Where(program => !program.IsReached).Select(program => program.Number).ToHashSet();
        foreach (var program in _further)
            if (!program.IsReached || byThemselves.Contains(program.Number))
                all.AddRange(program.Followed(cancel)._motions);
        return all;
    }

    /// <summary>What is not known of a further program is not known of the text.</summary>
    void Take(MotionList further)
    {
        NotKnown += further.NotKnown;
        LineOfLostWay ??= further.LineOfLostWay;
        LineOfRotation ??= further.LineOfRotation;
        if (further.End is FlowEnd.TooLong or FlowEnd.Endless)
            End = further.End;
    }

    /// <summary>Follows a run to its end.</summary>
    /// <param name="unreached">The lines with which those of the further programs begin that no run has come to yet.</param>
    /// <param name="left">Blocks that all runs together may still repeat.</param>
    void Follow(FlowRunner runner, HashSet<int> unreached, ref int left, CancellationToken cancel)
    {
        while (runner.MoveNext())
        {
            if (runner.Blocks % BlocksBetweenLooks == 0)
                cancel.ThrowIfCancellationRequested();
            if (unreached.Count > 0 && runner.Text.Name is null)
                unreached.Remove(runner.Line);
            Add(runner.Step, runner.OwnLine);
        }
        // What runs but once is no more than the lines of the text.
        left = Math.Clamp(left - (runner.Blocks - runner.Text.Text.LineCount), 0, left);
        End = runner.End;
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
            _coordinates = _coordinates.In(state);
            var isTurning = state.Spindle is SpindleState.Clockwise or SpindleState.Counterclockwise;
            var motion = new Motion(
                line, move.Kind, move.Role, move.From, move.To, move.Center, move.Clockwise, move.FullTurns,
                move.IsCut ? move.Feed : 0, isTurning ? state.Speed : state.Spindle == SpindleState.Off ? 0 : double.NaN, state.Spindle, state.Coolant,
                state.Tool, _coordinates, move.Kind == MoveKind.Dwell ? move.Seconds : 0)
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
