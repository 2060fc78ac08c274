using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>Runs a text, or the rest of one, with two threads that take its chunks in turns: while one holds the rules against what came of the blocks of its chunk, the other lets the
/// control carry out those of the next. The results are those of one thread.</summary>
/// <remarks>Each does all of its chunks (<see cref="Bench"/>), so that nothing but the control's state goes from one processor to the other: a step fetched from the other's memory takes as long as
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
    int _long = -1;
    int _end = parts.Length;

    /// <summary>What came of a chunk in the version before; null where it is new.</summary>
    public required Func<int, PartResult?> PartBefore { get; init; }

    /// <summary>The chunk before which they stopped, whose blocks make so many moves that one hand has to look at each as it is carried out, and the state that it meets; null where they came to the end.</summary>
    public (int Chunk, ControlState Entry)? StoppedAt => _long < 0 ? null : (_long, _state);

    /// <summary>Fills in the parts from one on, as far as <see cref="StoppedAt"/>.</summary>
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
        var words = texts.KeepsWords ? new PlainBlocks.Reader() : null;
        var ahead = new TextAhead(texts.Text);
        var isDone = false;
        try
        {
            while (Interlocked.Increment(ref _next) - 1 is var chunk && chunk < parts.Length)
            {
                var mayServe = beside is not null && beside.MayServe(chunk);
                if (!mayServe)
                    bench.Read(texts.Text.Chunks[chunk], texts.WordsOf(chunk));
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
                    bench.Read(texts.Text.Chunks[chunk], texts.WordsOf(chunk));
                bench.CarryOut(texts.Text.FirstLineOf(chunk), texts.Job.Executor, ahead, ref _state, ref _last);
                if (bench.IsTooMuch)
                {
                    _long = chunk;
                    return;
                }
                _turn = chunk + 1;
                if (texts.Told(chunk, bench.Blocks, words).Marks.Steers)
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
}
