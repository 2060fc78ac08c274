using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>A program run from its first block to its last under one way of reading: an immutable row of chunk results.
/// After an edit only the chunks that changed run again, and those whose entry state differs from before.</summary>
public sealed class ProgramRun
{
    readonly ChunkResult[] _results;

    ProgramRun(Job job, SourceText text, ChunkResult[] results, int blocksRun)
    {
        Job = job;
        Text = text;
        _results = results;
        BlocksRun = blocksRun;
    }

    public Job Job { get; }

    public SourceText Text { get; }

    /// <summary>Results in the order of the text's chunks.</summary>
    public ReadOnlySpan<ChunkResult> Results => _results;

    /// <summary>Blocks that had to be run to make this from what it was made from.</summary>
    public int BlocksRun { get; }

    /// <summary>The state behind the last block.</summary>
    public ControlState Exit => _results[^1].Exit;

    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static ProgramRun Create(SourceText text, Job job, Rule[] stepRules, Rule[] textRules, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(job);
        return Run(text, job, [], new ChunkScan(job, stepRules, textRules), cancel);
    }

    /// <summary>The same for a new version of the text, with every result reused that still holds.</summary>
    public ProgramRun WithText(SourceText text, Rule[] stepRules, Rule[] textRules, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Run(text, Job, _results, new ChunkScan(Job, stepRules, textRules), cancel);
    }

    static ProgramRun Run(SourceText text, Job job, ChunkResult[] old, ChunkScan scan, CancellationToken cancel)
    {
        var chunks = text.Chunks;
        var results = new ChunkResult[chunks.Length];
        var most = Math.Min(old.Length, chunks.Length);
        var same = 0;
        while (same < most && ReferenceEquals(old[same].Chunk, chunks[same]))
        {
            results[same] = old[same];
            same++;
        }
        var sameAtEnd = 0;
        while (sameAtEnd < most - same && ReferenceEquals(old[^(sameAtEnd + 1)].Chunk, chunks[^(sameAtEnd + 1)]))
            sameAtEnd++;

        var state = same > 0 ? results[same - 1].Exit : job.Executor.Start();
        for (var i = same; i < chunks.Length; i++)
        {
            cancel.ThrowIfCancellationRequested();
            var fromEnd = chunks.Length - i;
            if (fromEnd <= sameAtEnd && old[^fromEnd].Entry == state)
            {
                Array.Copy(old, old.Length - fromEnd, results, i, fromEnd);
                break;
            }
            results[i] = scan.Run(chunks[i], state);
            state = results[i].Exit;
        }
        return new ProgramRun(job, text, results, scan.BlocksRun);
    }

    /// <summary>The block on a line (0-based).</summary>
    public Block BlockAt(int line)
    {
        var chunk = Text.ChunkOfLine(line);
        return Text.Chunks[chunk].Blocks[line - Text.FirstLineOf(chunk)];
    }

    /// <summary>The state that the block on a line (0-based) meets.</summary>
    public ControlState StateBefore(int line)
    {
        var chunk = Text.ChunkOfLine(line);
        var state = _results[chunk].Entry;
        var step = new Step();
        var blocks = Text.Chunks[chunk].Blocks;
        for (var i = 0; i < line - Text.FirstLineOf(chunk); i++)
            Job.Executor.Run(blocks[i], ref state, step);
        return state;
    }

    /// <summary>Runs the block on a line (0-based) and tells what it does.</summary>
    public Step StepAt(int line)
    {
        var state = StateBefore(line);
        var step = new Step();
        Job.Executor.Run(BlockAt(line), ref state, step);
        return step;
    }

    /// <summary>The last line (0-based), up to and with <paramref name="line"/>, whose block set any of these parts of the state; −1 where none did.</summary>
    public int LastSetter(Slot slots, int line)
    {
        if (line < 0)
            return -1;
        for (var chunk = Text.ChunkOfLine(line); chunk >= 0; chunk--)
        {
            var result = _results[chunk];
            if ((result.AllSets & slots) == 0)
                continue;
            for (var i = Math.Min(line - Text.FirstLineOf(chunk), result.Sets.Length - 1); i >= 0; i--)
                if ((result.Sets[i] & slots) != 0)
                    return Text.FirstLineOf(chunk) + i;
        }
        return -1;
    }
}
