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
        ref var state = ref step.Go();
        if (block.Tokens.Length > 0)
            RunTokens(block, ref state, step);
    }

    /// <summary>Runs the block behind the one that another step ran, which has to stay as it is for as long as this one is looked at.</summary>
    public void RunBehind(Step before, in Block block, Step step)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(step);
        ref var state = ref step.Follow(before);
        if (block.Tokens.Length > 0)
            RunTokens(block, ref state, step);
    }

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
        ref readonly var before = ref step.Before;
        if ((step.Sets & (~(Slot.Doings | Slot.Motion | Slot.Cycle) | ~before.Set)) != 0 || state.Happened != before.Happened || state.Cycle != before.Cycle
            || state.IncrementalUse != before.IncrementalUse || state.WorkOffset != before.WorkOffset)
            step.Events |= StepEvents.News;
        if (!step.Words.HasNoCodeBesideMotion)
            step.Events |= StepEvents.Codes;
        if (state.FeedMode == FeedMode.InverseTime || double.IsNaN(state.Feed))
            step.Events |= StepEvents.FeedWanted;
        if (block.Line.Length > Machine.Readings.ProgramMarks.LongestBlock || block.Line.StartsWith(BlockLexer.ByteOrderMark))
            step.Events |= StepEvents.OddText;
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
