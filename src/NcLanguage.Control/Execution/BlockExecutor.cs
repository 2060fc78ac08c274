using System.Runtime.CompilerServices;
using NcLanguage.Control.Codes;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Execution;

/// <summary>The model of one control at one machine with one setup: takes a block and a state, gives the moves and the next state.</summary>
/// <param name="machine">How this control reads programs, and what the machine can do.</param>
/// <param name="setup">What is on the table; offsets and tool lengths come from it.</param>
/// <param name="skipBlocks">Whether blocks with / are passed over.</param>
public sealed class BlockExecutor(MachineProfile machine, Setup setup, bool skipBlocks = false)
{
    /// <summary>Lines behind a block that its move may depend on, at most; blank lines and comments among them.</summary>
    public const int LinesAhead = 50;

    /// <summary>How far a probe must stand from its end point, mm (NISTIR 6556 §3.5.9: 0.254 mm or 0.01 in).</summary>
    public const double LeastProbeWay = 0.254;

    /// <summary>How far above the last bottom a peck goes back in by rapid, mm. The published specification leaves the amount open.</summary>
    public const double PeckGap = 1;

    readonly int _longest = machine.Readings.ProgramMarks.LongestBlock;

    public MachineProfile Machine { get; } = machine;

    public Setup Setup { get; } = setup;

    /// <summary>The codes that the machine has of its own; null where it has none.</summary>
    internal OwnCodes? OwnCodes { get; } = OwnCodes.Of(machine);

    /// <summary>Whether blocks with / are passed over.</summary>
    public bool SkipBlocks { get; } = skipBlocks;

    /// <summary>The state before a program's first block. Until the program says a unit itself its lengths are taken in that of the setup.</summary>
    public ControlState Start() => ControlState.AtStart(Setup.Frame == Setup.UnknownFrame ? 54 : Setup.Frame) with
    {
        Variables = StartVariables(),
        Units = Setup.IsInch ? LengthUnit.Inch : LengthUnit.Millimetre,
    };

    /// <summary>The state before the first line of a text: for one that is there to be called one of which nothing is known.</summary>
    /// <param name="hasLeader">Whether other text stands before the program.</param>
    public ControlState StartOf(bool isCalled, bool hasLeader) => (isCalled ? ControlState.Unknown : Start()) with { InLeader = hasLeader };

    /// <summary>Runs one block. <paramref name="state"/> becomes the state after it; <paramref name="step"/> tells what happened.</summary>
    public void Run(in Block block, ref ControlState state, Step step)
    {
        step.Begin(state);
        if (block.Tokens.Length > 0)
            RunTokens(block, ref state, step);
        step.Leave(state);
    }

    /// <summary>Runs the next block: it meets the state that the step left.</summary>
    public void RunNext(in Block block, Step step)
    {
        ArgumentNullException.ThrowIfNull(step);
        step.Go();
        RunOn(block, step);
    }

    /// <summary>Runs the block behind the one that another step ran, which has to stay as it is for as long as this one is looked at.</summary>
    /// <remarks>Nothing but the state behind it need be known yet: <see cref="Told"/> has to be asked before anything else of the step is looked at.</remarks>
    public void RunBehind(Step before, in Block block, Step step)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(step);
        step.Follow(before);
        RunAhead(block, step);
    }

    /// <summary>The same for a step that may run its next block while this one is looked at.</summary>
    public void RunApartBehind(Step before, in Block block, Step step)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(step);
        step.FollowApart(before);
        RunAhead(block, step);
    }

    /// <summary>Runs blocks whose words are known, one after the other, for as long as they go on like the one that another step ran; of each no more is made than its trace.</summary>
    /// <param name="before">That step, which has to stay as it is as long as the other is looked at.</param>
    /// <param name="blocks">The words of the chunk's blocks.</param>
    /// <param name="line">The line, from 0 in the chunk, to begin at.</param>
    /// <param name="traces">One for each line of the chunk.</param>
    /// <param name="step">Becomes that of the last of them, but for its words.</param>
    /// <returns>The line behind the last that went on; where none did, that to begin at.</returns>
    public int GoOn(Step before, PlainBlocks blocks, int line, Span<PlainTrace> traces, Step step)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(blocks);
        ArgumentNullException.ThrowIfNull(step);
        // Blocks longer than the control takes are told one by one, and what a number means may hang on how it is written.
        if (!before.LeadsOn || blocks.LongestLine > _longest || Machine.Readings.Integers == IntegerReading.Increments || !blocks.IsKnownFrom(line))
            return line;
        step.Follow(before);
        var run = new BlockRun(this, default, ref step.AfterMoreOfTheSame(), step);
        var next = run.GoOn(blocks, line, traces);
        if (next > line)
            step.GoneOn(step.Sets);
        return next;
    }

    /// <summary>All of a block that went on like the one before it, from what has been kept of it.</summary>
    /// <param name="before">The step of the block before.</param>
    /// <param name="words">Its words.</param>
    /// <param name="step">Becomes the block's.</param>
    public void TellAgain(Step before, in Block block, in PlainTrace trace, BlockWords words, Step step)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(step);
        step.GoAgain(before, trace, words);
        Tell(block, step);
    }

    /// <summary>What a block does that goes on as a step did which has been told.</summary>
    public Continuation ContinuationOf(Step step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return new Continuation(this, step);
    }

    /// <summary>Passes over a block that went on like the one before it, of which nothing has to be told.</summary>
    /// <param name="before">The step of the block before.</param>
    /// <param name="step">Becomes the block's, but for what is told of it.</param>
    public static void Pass(Step before, in PlainTrace trace, Step step)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(step);
        step.GoAgain(before, trace, step.Words);
    }

    /// <summary>All of a step whose block has been run.</summary>
    /// <param name="room">A step that may take up what of it is told only now.</param>
    /// <returns>One of the two.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Step Told(in Block block, Step step, Step room)
    {
        ArgumentNullException.ThrowIfNull(step);
        ArgumentNullException.ThrowIfNull(room);
        if (!step.IsLikeTheLast)
            return step;
        room.Show(step);
        Tell(block, room);
        return room;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    void Tell(in Block block, Step step)
    {
        if (!step.IsLikeTheLast)
            return;
        ref var state = ref step.AfterTold;
        var run = new BlockRun(this, block, ref state, step);
        if (step.RepeatsHole)
            run.TellHole(step.HoleBefore!);
        else
            run.TellMove();
        TellEvents(step, state);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    void RunOn(in Block block, Step step)
    {
        RunAhead(block, step);
        Tell(block, step);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    void RunAhead(in Block block, Step step)
    {
        if ((step.PlainBefore != PlainMoves.None || step.HoleBefore is not null) && RunLikeTheLast(block, step))
            return;
        ref var state = ref step.AfterAnything();
        if (block.Tokens.Length > 0)
            RunTokens(block, ref state, step);
    }

    /// <summary>Runs a block that does at another place what the block before did, and leaves what else it does to be told; false, with nothing done, where it is not plain that it does.</summary>
    bool RunLikeTheLast(in Block block, Step step)
    {
        if (block.Tokens.Length > 0 && !IsOddLine(block) && step.Words.TryReadPlain(block))
        {
            var run = new BlockRun(this, block, ref step.AfterMoreOfTheSame(), step);
            if (run.GoesOn() is var sets && sets != Slot.None)
            {
                step.GoneOn(sets);
                return true;
            }
        }
        step.Words.Clear();
        return false;
    }

    bool IsOddLine(in Block block) => block.Line.Length > _longest || block.Line.StartsWith(BlockLexer.ByteOrderMark);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    void RunTokens(in Block block, ref ControlState state, Step step)
    {
        var run = new BlockRun(this, block, ref state, step);
        switch (Programs.Enter(block, ref state, this))
        {
            case BlockFate.NotRun:
                step.Events |= StepEvents.NotRun;
                return;
            case BlockFate.Skipped:
                step.Events |= StepEvents.Skipped;
                return;
        }
        run.Execute();
        if (step.Faults.Count > 0)
            step.Events |= StepEvents.Faults;
        if (!step.Words.HasNoCodeBesideMotion)
            step.Events |= StepEvents.Codes;
        if (IsOddLine(block))
            step.Events |= StepEvents.OddText;
        TellEvents(step, state);
    }

    /// <summary>Tells of a block that has run what shows in its state and its moves.</summary>
    static void TellEvents(Step step, in ControlState state)
    {
        ref readonly var before = ref step.Before;
        if ((step.Sets & (~(Slot.Doings | Slot.Motion | Slot.Cycle | Slot.Feed) | ~before.Set)) != 0 || state.Happened != before.Happened || state.Cycle != before.Cycle
            || state.IncrementalUse != before.IncrementalUse || state.WorkOffset != before.WorkOffset)
            step.Events |= StepEvents.News;
        if (state.FeedMode == FeedMode.InverseTime || !(state.Feed > 0))
            step.Events |= StepEvents.FeedWanted;
        if ((step.Sets & Slot.Feed) != 0)
            step.Events |= StepEvents.FeedGiven;
        if (step.Holes.Count > 0)
            step.Events |= before.StandsAtHole && (step.Sets & ~Slot.Doings) == 0 && (step.Events & StepEvents.News) == 0
                ? StepEvents.Holes
                : StepEvents.Holes | StepEvents.HolesDiffer;
        else if ((step.Events & StepEvents.Cut) != 0)
            step.Events |= StepEvents.Path;
    }

    Variables? StartVariables()
    {
        if (Setup.Variables.IsEmpty)
            return null;
        Variables? variables = null;
        foreach (var (name, value) in Setup.Variables)
            variables = int.TryParse(name.AsSpan().TrimStart('#'), out var number)
                ? (variables ?? Variables.None).With(number, value)
                : (variables ?? Variables.None).With(name.TrimStart('#').Trim('<', '>', ' ').ToLowerInvariant(), value);
        return variables;
    }
}
