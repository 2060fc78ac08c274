using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>Runs a text, or the rest of one, with two threads: one lexes the blocks and lets the control carry them out, the other, a few chunks behind, holds the rules against what
/// came of it. The results are those of one thread.</summary>
sealed class TwoHands(TextsOfChunks texts, PartScan scan) : IDisposable
{
    /// <summary>Chunks that may be carried out before they are looked at.</summary>
    const int MostAhead = 4;

    readonly Bench[] _benches = [.. Enumerable.Range(0, MostAhead).Select(_ => new Bench())];
    readonly SemaphoreSlim _free = new(MostAhead);
    readonly SemaphoreSlim _ready = new(0);
    volatile bool _isOver;
    volatile int _end;

    /// <summary>Fills in the parts from one on.</summary>
    /// <param name="first">The first of them.</param>
    /// <param name="state">The state that it meets.</param>
    /// <param name="rejoins">Whether all from a chunk on is known already where it meets this state.</param>
    /// <returns>The first part that is known already, the number of parts where none is; −1 where a block leads elsewhere, so that the parts are of no use.</returns>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public int Run(PartResult[] parts, int first, ControlState state, Func<int, ControlState, bool> rejoins, CancellationToken cancel)
    {
        _end = parts.Length;
        // A thread of its own: while all those of the pool wait like this one, none would be left to carry anything out.
        var carryingOut = Task.Factory.StartNew(
            () => CarryOut(first, state, rejoins, cancel), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        try
        {
            for (var i = first; i < _end; i++)
            {
                _ready.Wait(cancel);
                if (carryingOut.IsFaulted || i == _end)
                    break;
                var bench = _benches[i % MostAhead];
                if (texts.Told(i, bench.Blocks).Marks.Steers)
                    return -1;
                parts[i] = LookAt(bench);
                _free.Release();
            }
            return _end;
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

    void CarryOut(int first, ControlState state, Func<int, ControlState, bool> rejoins, CancellationToken cancel)
    {
        var text = texts.Text;
        var ahead = new TextAhead(text);
        try
        {
            for (var i = first; i < text.Chunks.Length && !cancel.IsCancellationRequested; i++)
            {
                _free.Wait(cancel);
                if (_isOver)
                    return;
                if (rejoins(i, state))
                {
                    _end = i;
                    return;
                }
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
