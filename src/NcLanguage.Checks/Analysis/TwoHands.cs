using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>Runs a whole text with two threads: one lexes the blocks and lets the control carry them out, the other, a few chunks behind, holds the rules against what
/// came of it. The results are those of one thread.</summary>
sealed class TwoHands(TextsOfChunks texts, PartScan scan) : IDisposable
{
    /// <summary>Chunks that may be carried out before they are looked at.</summary>
    const int MostAhead = 4;

    readonly Bench[] _benches = [.. Enumerable.Range(0, MostAhead).Select(_ => new Bench())];
    readonly SemaphoreSlim _free = new(MostAhead);
    readonly SemaphoreSlim _ready = new(0);
    volatile bool _isOver;

    /// <summary>Fills in the parts; false where a block leads elsewhere, so that they are of no use.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public bool Run(PartResult[] parts, ControlState start, CancellationToken cancel)
    {
        // A thread of its own: while all those of the pool wait like this one, none would be left to carry anything out.
        var carryingOut = Task.Factory.StartNew(
            () => CarryOut(parts.Length, start, cancel), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        try
        {
            for (var i = 0; i < parts.Length; i++)
            {
                _ready.Wait(cancel);
                if (carryingOut.IsFaulted)
                    break;
                var bench = _benches[i % MostAhead];
                if (texts.Told(i, bench.Blocks).Marks.Steers)
                    return false;
                parts[i] = LookAt(bench);
                _free.Release();
            }
            return true;
        }
        finally
        {
            _isOver = true;
            _free.Release();
            carryingOut.GetAwaiter().GetResult();
        }
    }

    public void Dispose()
    {
        _free.Dispose();
        _ready.Dispose();
    }

    void CarryOut(int chunks, ControlState state, CancellationToken cancel)
    {
        var text = texts.Text;
        var ahead = new TextAhead(text);
        try
        {
            for (var i = 0; i < chunks && !cancel.IsCancellationRequested; i++)
            {
                _free.Wait(cancel);
                if (_isOver)
                    return;
                _benches[i % MostAhead].CarryOut(text.Chunks[i], text.FirstLineOf(i), texts.Job.Executor, ahead, ref state);
                _ready.Release();
            }
        }
        catch (OperationCanceledException)
        {
            // The one who waits is told by the same token.
        }
        finally
        {
            _ready.Release();
        }
    }

    PartResult LookAt(Bench bench)
    {
        scan.Begin(bench.Entry, bench.Blocks.Count);
        for (var line = 0; line < bench.Blocks.Count; line++)
        {
            var block = bench.Blocks[line];
            if (block.Tokens.Length == 0)
                scan.NoteBlank();
            else
                scan.Note(block, bench.Steps[line]);
        }
        return scan.End(bench.Exit) with { LinesAhead = bench.LinesAhead };
    }

    /// <summary>One chunk that has been carried out, block by block.</summary>
    sealed class Bench
    {
        readonly BlockBuffer _buffer = new();

        public BlockList Blocks { get; private set; } = null!;

        public List<Step> Steps { get; } = [];

        public ControlState Entry { get; private set; }

        public ControlState Exit { get; private set; }

        public int LinesAhead { get; private set; }

        public void CarryOut(Chunk chunk, int firstLine, BlockExecutor executor, TextAhead ahead, ref ControlState state)
        {
            Blocks = _buffer.Read(chunk);
            Entry = state;
            ahead.Farthest = 0;
            for (var line = 0; line < Blocks.Count; line++)
            {
                if (Steps.Count == line)
                    Steps.Add(new Step { Ahead = ahead });
                var block = Blocks[line];
                if (block.Tokens.Length == 0)
                    continue;
                ahead.Line = firstLine + line;
                executor.Run(block, ref state, Steps[line]);
            }
            Exit = state;
            LinesAhead = Math.Max(0, ahead.Farthest - (firstLine + Blocks.Count - 1));
        }
    }
}
