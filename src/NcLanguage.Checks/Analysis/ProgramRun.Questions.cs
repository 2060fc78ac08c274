using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Analysis;

// What features ask of a run: where a block ran, what it met and did, and who set what was in force.
public sealed partial class ProgramRun
{
    volatile StateMark? _asked;

    /// <summary>The line in the whole text (0-based) of a block of a part.</summary>
    public int LineOf(int part, int at) => Part(part).Lines is { } lines ? lines[at] : Text.FirstLineOf(part) + at;

    /// <summary>The index of a part that ran at or before another.</summary>
    internal int PartOf(PartResult part, int from)
    {
        while (!ReferenceEquals(Part(from), part))
            from--;
        return from;
    }

    /// <summary>The part in which the block on a line (0-based) ran first, and which of its blocks it is; −1 where it did not run.</summary>
    internal (int Part, int At) FirstRunOf(int line)
    {
        if (Flow is { } flow)
            return flow.First[line] is { IsReached: true } first ? (first.Part, first.At) : (-1, 0);
        var chunk = Text.ChunkOfLine(line);
        return (chunk, line - Text.FirstLineOf(chunk));
    }

    /// <summary>Whether the run comes to the block on a line (0-based).</summary>
    public bool IsReached(int line) => Flow is not { } flow || flow.First[line].IsReached;

    /// <summary>What the block on a line (0-based) set and did when it ran first; nothing where it did not run.</summary>
    public Slot SetsOf(int line)
    {
        var (part, at) = FirstRunOf(line);
        return part < 0 || at >= Part(part).Sets.Length ? Slot.None : _parts[part].Sets[at];
    }

    /// <summary>The block on a line (0-based).</summary>
    public Block BlockAt(int line) => Text.BlockAt(line);

    /// <summary>The state that the block on a line (0-based) meets, the first time where it runs more than once.</summary>
    public ControlState StateBefore(int line)
    {
        var (step, ahead) = StepWithAhead();
        return StateBefore(line, step, ahead, out _, out _);
    }

    /// <summary>Runs the block on a line (0-based) and tells what it does, the first time where it runs more than once.</summary>
    public Step StepAt(int line)
    {
        var (step, ahead) = StepWithAhead();
        var state = StateBefore(line, step, ahead, out var part, out var blocks);
        ahead.Line = line;
        var block = BlockAt(line);
        Job.Executor.Run(block, ref state, step);
        // A line without a block is none of the blocks of a run that leaves the order of the text.
        if (part is not null && block.Tokens.Length > 0)
            _asked = new StateMark(part, blocks + 1, state);
        return step;
    }

    /// <param name="part">The part in which the block runs; null for a line before all blocks.</param>
    /// <param name="blocks">How many blocks of the part run before it.</param>
    ControlState StateBefore(int line, Step step, TextAhead ahead, out PartResult? part, out int blocks)
    {
        if (Flow is { } flow)
        {
            (part, blocks) = flow.PlaceOf(line);
        }
        else
        {
            var chunk = Text.ChunkOfLine(line);
            (part, blocks) = (Part(chunk), line - Text.FirstLineOf(chunk));
        }
        return part is null ? Job.Executor.StartOf(Flow!.Text.IsCalled, Flow.Text.LeaderLines > 0) : StateWithin(part, blocks, line - blocks, step, ahead);
    }

    /// <summary>The state behind the first blocks of a part.</summary>
    /// <param name="firstLine">The line (0-based) of the part's first block, where they stand one below the other.</param>
    ControlState StateWithin(PartResult part, int blocks, int firstLine, Step step, TextAhead ahead)
    {
        var (done, state) = _asked is { } asked && asked.IsOnTheWayTo(part, blocks) ? (asked.Blocks, asked.State) : (0, part.Entry);
        if (done == blocks)
            return state;
        part.Replay(ref state, done, blocks, firstLine, Job.Executor, Text, step, ahead);
        _asked = new StateMark(part, blocks, state);
        return state;
    }

    /// <summary>A step that sees what follows in the text, and how it is told which line runs.</summary>
    public (Step Step, TextAhead Ahead) StepWithAhead()
    {
        var ahead = new TextAhead(Text, Flow?.Text, Flow);
        return (new Step { Ahead = ahead }, ahead);
    }

    /// <summary>The last line (0-based), up to and with <paramref name="line"/>, whose block set any of these parts of the state; −1 where none did.
    /// Where blocks run more than once: as the run came to the line first.</summary>
    public int LastSetter(Slot slots, int line) => Flow is { } flow ? flow.LastSetter(slots, line, withIt: true) : LastInText(slots, line, 0);

    /// <summary>The same for the blocks that ran before the one on a line (0-based).</summary>
    public int LastSetterBefore(Slot slots, int line) => Flow is { } flow ? flow.LastSetter(slots, line, withIt: false) : LastInText(slots, line - 1, 0);

    /// <summary>The same before one of the runs of a block, from 0.</summary>
    public int LastSetterBefore(Slot slots, int line, int run) => run > 0 && Flow is { } flow ? flow.LastSetterBefore(slots, line, run) : LastSetterBefore(slots, line);

    /// <summary>The first line (0-based) whose block sets any of these parts of the state, in the order of the run; −1 where none does.</summary>
    /// <param name="behind">The line of a block; only what runs behind its first run is looked at. −1 for the whole run.</param>
    public int FirstSetter(Slot slots, int behind = -1)
    {
        var (part, at) = behind < 0 ? (0, -1) : FirstRunOf(behind);
        if (part < 0)
            return -1;
        for (at++; part < _parts.Length; part++, at = 0)
        {
            if ((FactsOf(part).Sets & slots) == 0)
                continue;
            for (; at < Part(part).Sets.Length; at++)
                if ((_parts[part].Sets[at] & slots) != 0)
                    return LineOf(part, at);
        }
        return -1;
    }

    /// <summary>When the block on a line (0-based) runs first, as a number that grows with the run; −1 where it does not run.</summary>
    public int OrderOf(int line) => Flow is { } flow ? flow.OrderOf(line) : line;

    /// <summary>The last line that sets any of these parts, of those between two, both included, in the order of the text; −1 where none does.</summary>
    internal int LastInText(Slot slots, int line, int from)
    {
        if (line < from)
            return -1;
        var chunk = Text.ChunkOfLine(line);
        Demand(chunk, chunk < PartsKnown);
        for (var first = Text.ChunkOfLine(from); (chunk = _partFacts.LastOf(chunk, slots, static (facts, slots) => (facts.Sets & slots) != 0)) >= first; chunk--)
        {
            var result = Part(chunk);
            var least = Math.Max(0, from - Text.FirstLineOf(chunk));
            for (var i = Math.Min(line - Text.FirstLineOf(chunk), result.Sets.Length - 1); i >= least; i--)
                if ((result.Sets[i] & slots) != 0)
                    return Text.FirstLineOf(chunk) + i;
        }
        return -1;
    }
}
