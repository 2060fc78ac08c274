using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>Runs a text, or the rest of one, with two threads: one lets the control carry out the blocks, the other, a few chunks behind, holds the rules against what came of it,
/// and lexes ahead where nothing waits for it. Where it is too far ahead, the first helps the other. The results are those of one thread.</summary>
sealed class TwoHands(TextsOfChunks texts, PartScan scan, PartResult[] parts, CancellationToken cancel)
{
    /// <summary>Chunks in the work at once.</summary>
    const int Benches = 10;

    /// <summary>Chunks that may wait to be carried out.</summary>
    const int MostLexed = 5;

    readonly PartScan _second = scan.ForAnotherHand();
    readonly object _gate = new();

    // The bench that was used last lies nearest in the processor's memory.
    readonly Stack<Bench> _free = new(Enumerable.Range(0, Benches).Select(_ => new Bench()));
    readonly Queue<Bench> _lexed = new();
    readonly Queue<Bench> _carriedOut = new();
    int _toLex;
    bool _isLexing;
    volatile bool _isOver;
    volatile bool _steers;
    int _end = parts.Length;

    /// <summary>Fills in the parts from one on.</summary>
    /// <param name="first">The first of them.</param>
    /// <param name="state">The state that it meets.</param>
    /// <param name="rejoins">Whether all from a chunk on is known already where it meets this state.</param>
    /// <returns>The first part that is known already, the number of parts where none is; −1 where a block leads elsewhere, so that the parts are of no use.</returns>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public int Run(int first, ControlState state, Func<int, ControlState, bool> rejoins)
    {
        _toLex = first;
        // A thread of its own: while all those of the pool wait like this one, none would be left to carry anything out.
        var carryingOut = Task.Factory.StartNew(
            () => CarryOut(first, state, rejoins), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        try
        {
            while (!_isOver)
                if (!TryLookAtNext(scan) && !TryLexNext())
                    Wait();
            while (!_steers && TryLookAtNext(scan))
            {
            }
        }
        finally
        {
            _isOver = true;
            carryingOut.GetAwaiter().GetResult();
        }
        cancel.ThrowIfCancellationRequested();
        scan.Count(_second);
        return _steers ? -1 : _end;
    }

    void CarryOut(int first, ControlState state, Func<int, ControlState, bool> rejoins)
    {
        var ahead = new TextAhead(texts.Text);
        try
        {
            for (var i = first; i < parts.Length && !_isOver && !cancel.IsCancellationRequested; i++)
            {
                if (rejoins(i, state))
                {
                    _end = i;
                    break;
                }
                if (Lexed(i) is not { } bench)
                    break;
                bench.CarryOut(texts.Text.FirstLineOf(i), texts.Job.Executor, ahead, ref state);
                lock (_gate)
                {
                    _carriedOut.Enqueue(bench);
                    Monitor.Pulse(_gate);
                }
            }
            while (!_isOver && TryLookAtNext(_second))
            {
            }
        }
        finally
        {
            lock (_gate)
            {
                _isOver = true;
                Monitor.Pulse(_gate);
            }
        }
    }

    /// <summary>Waits until a chunk has been carried out, or all have.</summary>
    void Wait()
    {
        lock (_gate)
            while (!_isOver && _carriedOut.Count == 0)
                Monitor.Wait(_gate);
    }

    /// <summary>A chunk ready to be carried out; null where the other hand has given up.</summary>
    Bench? Lexed(int chunk)
    {
        for (var wait = new SpinWait(); !_isOver; wait.SpinOnce(sleep1Threshold: -1))
        {
            Bench? free = null;
            lock (_gate)
            {
                if (_lexed.TryDequeue(out var lexed))
                    return lexed;
                if (!_isLexing && _free.TryPop(out free))
                    _toLex++;
            }
            if (free is not null)
            {
                free.Lex(chunk, texts.Text.Chunks[chunk]);
                return free;
            }
            TryLookAtNext(_second);
        }
        return null;
    }

    bool TryLexNext()
    {
        Bench? bench;
        int chunk;
        lock (_gate)
        {
            // One is left for the other hand, which would otherwise wait for this one.
            if (_lexed.Count >= MostLexed || _toLex >= parts.Length || _free.Count < 2)
                return false;
            bench = _free.Pop();
            chunk = _toLex++;
            _isLexing = true;
        }
        bench.Lex(chunk, texts.Text.Chunks[chunk]);
        lock (_gate)
        {
            _lexed.Enqueue(bench);
            _isLexing = false;
        }
        return true;
    }

    /// <summary>Looks at the next chunk that has been carried out; false where none waits.</summary>
    bool TryLookAtNext(PartScan scan)
    {
        Bench? bench;
        lock (_gate)
            if (!_carriedOut.TryDequeue(out bench))
                return false;
        if (texts.Told(bench.Chunk, bench.Blocks).Marks.Steers)
            _steers = _isOver = true;
        else
            parts[bench.Chunk] = bench.LookAt(scan);
        lock (_gate)
            _free.Push(bench);
        return true;
    }

    /// <summary>One chunk on its way.</summary>
    sealed class Bench
    {
        readonly BlockBuffer _buffer = new();
        readonly List<Step> _steps = [];
        ControlState _entry;
        ControlState _exit;
        int _linesAhead;

        /// <summary>The index of the chunk.</summary>
        public int Chunk { get; private set; }

        public BlockList Blocks { get; private set; } = null!;

        public void Lex(int index, Chunk chunk) => (Chunk, Blocks) = (index, _buffer.Read(chunk));

        public void CarryOut(int firstLine, BlockExecutor executor, TextAhead ahead, ref ControlState state)
        {
            _entry = state;
            ahead.Farthest = 0;
            Step? before = null;
            for (var line = 0; line < Blocks.Count; line++)
            {
                if (_steps.Count == line)
                    _steps.Add(new Step { Ahead = ahead });
                var block = Blocks[line];
                if (block.Tokens.Length == 0)
                    continue;
                ahead.Line = firstLine + line;
                var step = _steps[line];
                if (before is null)
                    executor.Run(block, ref state, step);
                else
                    executor.RunBehind(before, block, step);
                before = step;
            }
            if (before is not null)
                state = before.After;
            _exit = state;
            _linesAhead = Math.Max(0, ahead.Farthest - (firstLine + Blocks.Count - 1));
        }

        public PartResult LookAt(PartScan scan)
        {
            scan.Begin(_entry, Blocks.Count);
            for (var line = 0; line < Blocks.Count; line++)
            {
                var block = Blocks[line];
                if (block.Tokens.Length == 0)
                    scan.NoteBlank();
                else
                    scan.Note(block, _steps[line]);
            }
            return scan.End(_exit) with { LinesAhead = _linesAhead };
        }
    }
}
