using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Analysis;

/// <summary>Where the block of a line ran first.</summary>
/// <param name="Part">Index of the part; −1 where it holds no block.</param>
/// <param name="At">Which block of the part.</param>
/// <param name="IsReached">False where the run did not come to it: the part is then one of <see cref="FlowRun.NotReached"/>.</param>
public readonly record struct FirstRun(int Part, int At, bool IsReached)
{
    public static FirstRun None { get; } = new(-1, 0, false);
}

/// <summary>Where a call or a return led.</summary>
/// <param name="File">The name of the other file; null for the program itself.</param>
/// <param name="Line">The line (0-based) of the block that ran next.</param>
public readonly record struct Passage(string? File, int Line);

/// <summary>A run that leaves the order of the text: what ran, in that order, and what the run did not come to.</summary>
public sealed class FlowRun : ICallsAhead
{
    /// <summary>The program with the places that its run can go to.</summary>
    public required FlowText Text { get; init; }

    /// <summary>What ran, in that order.</summary>
    public required PartResult[] Parts { get; init; }

    /// <summary>What each of the parts brought beside its results.</summary>
    internal FlowStretch[] Stretches { get; init; } = [];

    /// <summary>Whether the run of a new version of the text may go on behind stretches of this one: it came to an end, knew its way everywhere, called no other file, and went nowhere but where
    /// calls and returns lead.</summary>
    internal bool MayServe { get; init; }

    /// <summary>The blocks that the run did not come to, looked at with nothing known.</summary>
    public required PartResult[] NotReached { get; init; }

    /// <summary>Where the block of each line ran first.</summary>
    public required FirstRun[] First { get; init; }

    /// <summary>How many times the block of each line ran.</summary>
    public required int[] Runs { get; init; }

    /// <summary>Where the calls and returns led, the first time each was carried out, by their lines (0-based).</summary>
    public required IReadOnlyDictionary<int, Passage> Passages { get; init; }

    /// <summary>The files with called programs, by the numbers of these.</summary>
    public required IReadOnlyDictionary<int, FlowText?> Files { get; init; }

    /// <summary>Findings of steps, with lines of the whole text, each place once.</summary>
    public required Finding[] Findings { get; init; }

    /// <summary>How the run has ended.</summary>
    public required FlowEnd End { get; init; }

    /// <summary>The line (0-based) that went back most often, and how often; −1 where nothing went back.</summary>
    public required (int Line, long Count) Busiest { get; init; }

    /// <summary>Blocks of the run.</summary>
    public required int BlocksFollowed { get; init; }

    /// <summary>Blocks of the run and those that it did not come to.</summary>
    public required int Blocks { get; init; }

    /// <summary>Blocks that had to be run to make this from the run of the version before, those included that the run did not come to.</summary>
    public required int BlocksRun { get; init; }

    /// <summary>How many times the block on a line (0-based) runs.</summary>
    public int RunsOf(int line) => Runs[line];

    /// <summary>When the block on a line (0-based) runs first, as a number that grows with the run; −1 where it does not.</summary>
    public int OrderOf(int line) => First[line] is { IsReached: true } first ? first.Part * 1024 + first.At : -1;

    FlowText? ICallsAhead.FileOf(int number) => Files.GetValueOrDefault(number);

    /// <summary>Where a return led the first time.</summary>
    (FlowText Text, int Line)? ICallsAhead.BehindReturn(FlowText text, int line, int left) =>
        text.Name is null && Passages.TryGetValue(line, out var passage) && passage.File is null ? (Text, passage.Line) : null;

    /// <summary>The part in which the block on a line (0-based) runs first, and how many blocks of the part run before it; null for a line before all blocks.</summary>
    internal (PartResult? Part, int Blocks) PlaceOf(int line)
    {
        var (at, behind) = (line, 0);
        // A line without a block stands behind the block above it.
        while (at >= 0 && First[at].Part < 0)
            (at, behind) = (at - 1, 1);
        if (at < 0)
            return (null, 0);
        var first = First[at];
        return ((first.IsReached ? Parts : NotReached)[first.Part], first.At + behind);
    }

    /// <summary>Runs the block on a line (0-based) again as often as it ran, and shows each step.</summary>
    /// <param name="mostRuns">Runs that are shown at most.</param>
    public void ForEachRun(ProgramRun run, int line, int mostRuns, Action<Step> onStep)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(onStep);
        var (step, ahead) = run.StepWithAhead();
        foreach (var part in Parts)
        {
            if (part.IsElsewhere || Array.IndexOf(part.Lines!, line) < 0)
                continue;
            var state = part.Entry;
            foreach (var at in part.Lines!)
            {
                ahead.Line = at;
                run.Job.Executor.Run(run.Text.BlockAmong(at), ref state, step);
                if (at != line)
                    continue;
                onStep(step);
                if (--mostRuns <= 0)
                    return;
            }
        }
    }

    internal int LastSetter(Slot slots, int line, bool withIt)
    {
        while (line >= 0 && First[line].Part < 0)
            (line, withIt) = (line - 1, true);
        if (line < 0)
            return -1;
        var first = First[line];
        var at = withIt ? first.At : first.At - 1;
        // What the run did not come to is known only from its own stretch.
        return first.IsReached ? LastSetter(slots, Parts, first.Part, at, 0) : LastSetter(slots, NotReached, first.Part, at, first.Part);
    }

    /// <summary>The last line (0-based) whose block set any of these parts of the state before a run of a block; −1 where none did.</summary>
    /// <param name="slots">The parts of the state.</param>
    /// <param name="line">The block's line.</param>
    /// <param name="run">Which of its runs, from 0.</param>
    internal int LastSetterBefore(Slot slots, int line, int run)
    {
        for (var part = 0; part < Parts.Length; part++)
            if (!Parts[part].IsElsewhere)
                for (var at = Array.IndexOf(Parts[part].Lines!, line); at >= 0; at = Array.IndexOf(Parts[part].Lines!, line, at + 1))
                    if (run-- == 0)
                        return LastSetter(slots, Parts, part, at - 1, 0);
        return -1;
    }

    static int LastSetter(Slot slots, PartResult[] parts, int part, int at, int least)
    {
        for (; part >= least; part--)
        {
            if ((parts[part].AllSets & slots) != 0)
                for (var i = Math.Min(at, parts[part].Sets.Length - 1); i >= 0; i--)
                    if ((parts[part].Sets[i] & slots) != 0)
                        return parts[part].Lines![i];
            at = int.MaxValue;
        }
        return -1;
    }
}
