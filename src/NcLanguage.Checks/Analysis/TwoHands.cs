using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>Runs a text, or the rest of one, with two threads that take its chunks in turns: while one holds the rules against what came of the blocks of its chunk, the other lets the
/// control carry out those of the next. The results are those of one thread.</summary>
/// <remarks>Each does all of its chunks, so that nothing but the control's state goes from one processor to the other: a step fetched from the other's memory takes as long as
/// running the block again.</remarks>
sealed class TwoHands(TextsOfChunks texts, PartScan scan, PartResult[] parts, RunBeside? beside, CancellationToken cancel)
{
    readonly PartScan _second = scan.ForAnotherHand();
    int _next;
    ControlState _state;

    /// <summary>The last step of the chunk before, which its hand does not use before the next chunk has been carried out; null where that was not run.</summary>
    Step? _last;
    volatile int _turn;
    volatile bool _isOver;
    volatile bool _steers;
    int _end = parts.Length;

    /// <summary>What came of a chunk in the version before; null where it is new.</summary>
    public required Func<int, PartResult?> PartBefore { get; init; }

    /// <summary>Fills in the parts from one on.</summary>
    /// <param name="first">The first of them.</param>
    /// <param name="state">The state that it meets.</param>
    /// <param name="rejoins">Whether all from a chunk on is known already where it meets this state.</param>
    /// <returns>The first part that is known already, the number of parts where none is; −1 where a block leads elsewhere, so that the parts are of no use.</returns>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public int Run(int first, ControlState state, Func<int, ControlState, bool> rejoins)
    {
        (_next, _turn, _state) = (first, first, state);
        // A thread of its own: while all those of the pool wait like this one, none would be left to take the other turns.
        var other = Task.Factory.StartNew(() => TakeTurns(_second, rejoins), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        try
        {
            TakeTurns(scan, rejoins);
        }
        finally
        {
            other.GetAwaiter().GetResult();
        }
        cancel.ThrowIfCancellationRequested();
        scan.Count(_second);
        return _steers ? -1 : _end;
    }

    void TakeTurns(PartScan scan, Func<int, ControlState, bool> rejoins)
    {
        var bench = new Bench();
        var ahead = new TextAhead(texts.Text);
        var isDone = false;
        try
        {
            while (Interlocked.Increment(ref _next) - 1 is var chunk && chunk < parts.Length)
            {
                var mayServe = beside is not null && beside.MayServe(chunk);
                if (!mayServe)
                    bench.Lex(texts.Text.Chunks[chunk]);
                if (!IsTurnOf(chunk) || cancel.IsCancellationRequested)
                    return;
                if (rejoins(chunk, _state))
                {
                    _end = chunk;
                    return;
                }
                if (mayServe && beside!.At(chunk, _state) is { } alike)
                {
                    (parts[chunk], _state, _last) = (alike, alike.Exit, null);
                    _turn = chunk + 1;
                    continue;
                }
                if (mayServe)
                    bench.Lex(texts.Text.Chunks[chunk]);
                bench.CarryOut(texts.Text.FirstLineOf(chunk), texts.Job.Executor, ahead, ref _state, ref _last);
                _turn = chunk + 1;
                if (texts.Told(chunk, bench.Blocks).Marks.Steers)
                {
                    _steers = true;
                    return;
                }
                parts[chunk] = bench.LookAt(scan, texts.Job.Executor, PartBefore(chunk));
            }
            isDone = true;
        }
        finally
        {
            // Whoever ends before the last chunk ends it for both; the other still looks at what it has carried out.
            if (!isDone)
                _isOver = true;
        }
    }

    /// <summary>Waits until all chunks before one have been carried out; false where the work is over.</summary>
    bool IsTurnOf(int chunk)
    {
        for (var wait = new SpinWait(); _turn != chunk; wait.SpinOnce(sleep1Threshold: -1))
            if (_isOver)
                return false;
        return true;
    }

    /// <summary>What one hand works with.</summary>
    sealed class Bench
    {
        readonly BlockBuffer _buffer = new();
        readonly List<Step> _steps = [];

        // One for all blocks that do what those before them did: what is told of each is gone when the next is looked at, and stays near the processor.
        readonly Step _told = new();
        ControlState _entry;
        ControlState _exit;
        int _linesAhead;

        public BlockList Blocks { get; private set; } = null!;

        public void Lex(Chunk chunk) => Blocks = _buffer.Read(chunk);

        public void CarryOut(int firstLine, BlockExecutor executor, TextAhead ahead, ref ControlState state, ref Step? last)
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
                if (before is not null)
                    executor.RunBehind(before, block, step);
                else if (last is not null)
                    executor.RunApartBehind(last, block, step);
                else
                    executor.Run(block, ref state, step);
                before = step;
            }
            if (before is not null)
                (state, last) = (before.After, before);
            _exit = state;
            _linesAhead = Math.Max(0, ahead.Farthest - (firstLine + Blocks.Count - 1));
        }

        public PartResult LookAt(PartScan scan, BlockExecutor executor, PartResult? before)
        {
            scan.Begin(_entry, Blocks.Count);
            for (var line = 0; line < Blocks.Count; line++)
            {
                var block = Blocks[line];
                if (block.Tokens.Length == 0)
                {
                    scan.NoteBlank();
                    continue;
                }
                scan.Note(block, executor.Told(block, _steps[line], _told));
            }
            return scan.End(_exit, _linesAhead, before);
        }
    }
}
