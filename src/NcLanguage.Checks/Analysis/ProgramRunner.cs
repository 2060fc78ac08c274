using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>Runs a text once, with every result taken over that still holds: of the version before, or of a run under another reading.</summary>
sealed class ProgramRunner(SourceText text, Job job, Rule[] stepRules, CancellationToken cancel)
{
    /// <summary>Chunks still to be run from which on a second thread is worth its while.</summary>
    const int ChunksForTwoHands = 16;

    readonly PartScan _scan = new(job, stepRules);
    readonly PartResult[] _parts = new PartResult[text.Chunks.Length];
    TextsOfChunks _texts = null!;

    /// <summary>The run whose results hold where they are the same; null where none does.</summary>
    ProgramRun? _old;

    /// <summary>Chunks at the end that are those of <see cref="_old"/>.</summary>
    int _sameAtEnd;

    /// <summary>The rules on text; none where <see cref="Beside"/> tells what the text tells.</summary>
    public Rule[] TextRules { get; init; } = [];

    /// <summary>The run of the version before under the same reading; null where there is none.</summary>
    public ProgramRun? Before { get; init; }

    /// <summary>The run of the same text under another reading; null where there is none.</summary>
    public RunBeside? Beside { get; init; }

    /// <summary>Called once where more than <see cref="ProgramRun.BlocksOfAFirstLook"/> blocks have to run again, with a run whose rest is that of the version before.</summary>
    public Action<ProgramRun>? OnTheWay { get; init; }

    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public ProgramRun Run()
    {
        var (same, sameAtEnd) = Before is null ? (0, 0) : SharedEnds.Of(Before.Text.Chunks, text.Chunks);
        _texts = new TextsOfChunks(text, job, TextRules, cancel);
        if (Beside is not null)
            _texts.Take(Beside.Texts, text.Chunks.Length, 0);
        else if (Before is not null)
            _texts.Take(Before.Texts, same, sameAtEnd);
        // A run that kept to the order of the text has none that leads elsewhere.
        var steers = Before?.Flow is not null && _texts.Steer();
        if (!steers && RunInOrder(same, sameAtEnd))
            return Made(_parts);
        var flow = FlowScan.Run(text, _texts.All(), job, stepRules, Before?.Flow, cancel);
        return new ProgramRun(job, text, _texts.All(), flow.Parts, flow, flow.BlocksRun, Before);
    }

    ProgramRun Made(PartResult[] parts, int run = int.MaxValue) => new(job, text, _texts.All(), parts, null, _scan.BlocksRun, Before) { PartsRun = run };

    /// <summary>Runs the blocks in the order of the text; false where one of them leads elsewhere.</summary>
    /// <param name="same">Chunks at the beginning that are those of the version before.</param>
    /// <param name="sameAtEnd">Of the others, those at the end.</param>
    bool RunInOrder(int same, int sameAtEnd)
    {
        (_old, _sameAtEnd) = (Before, sameAtEnd);
        var start = job.Executor.StartOf(ChunkMarks.IsCalled(_texts.Marks()), Leader.LinesOf(text) > 0);
        // Parts of a run that left the order of the text, or began otherwise, are no parts of one that does not.
        if (_old?.Flow is not null || (same > 0 && _old!.Results[0].Entry != start))
            (_old, same, _sameAtEnd) = (null, 0, 0);
        if (same < _parts.Length)
            same = WithoutWhatLookedAhead(same);
        if (same > 0)
            _old!.Results[..same].CopyTo(_parts);
        return RunFrom(same, same > 0 ? _parts[same - 1].Exit : start);
    }

    bool RunFrom(int first, ControlState state)
    {
        var (ahead, onTheWay) = (new TextAhead(text), OnTheWay);
        for (var i = first; i < _parts.Length; i++)
        {
            cancel.ThrowIfCancellationRequested();
            if (Rejoins(i, state))
            {
                TakeRest(i);
                return true;
            }
            if (Beside?.At(i, state) is { } alike)
            {
                (_parts[i], state) = (alike, alike.Exit);
                continue;
            }
            var isLong = _scan.BlocksRun > ProgramRun.BlocksOfAFirstLook;
            if (onTheWay is not null && isLong && _parts.Length - i <= _sameAtEnd)
            {
                TakeRest(i);
                onTheWay(Made([.. _parts], i));
                onTheWay = null;
            }
            if (job.WithTwoHands && _parts.Length - i >= ChunksForTwoHands && (_old is null || (onTheWay is null && isLong)))
                return RunWithTwoHands(i, state);
            var blocks = _texts.Read(i, out var chunk);
            if (chunk.Marks.Steers)
                return false;
            _parts[i] = RunChunk(blocks, text.FirstLineOf(i), ahead, PartBefore(i), ref state);
        }
        return true;
    }

    bool RunWithTwoHands(int first, in ControlState entry)
    {
        var state = entry;
        while (true)
        {
            var hands = new TwoHands(_texts, _scan, _parts, Beside, cancel) { PartBefore = PartBefore };
            var end = hands.Run(first, state, Rejoins);
            if (end < 0)
                return false;
            if (hands.StoppedAt is not var (chunk, atChunk))
            {
                TakeRest(end);
                return true;
            }
            var blocks = _texts.Read(chunk, out var told);
            if (told.Marks.Steers)
                return false;
            state = atChunk;
            _parts[chunk] = RunChunk(blocks, text.FirstLineOf(chunk), new TextAhead(text), PartBefore(chunk), ref state);
            first = chunk + 1;
        }
    }

    PartResult RunChunk(BlockList blocks, int firstLine, TextAhead ahead, PartResult? before, ref ControlState state)
    {
        var step = _scan.Step;
        step.Ahead = ahead;
        ahead.Farthest = 0;
        _scan.Begin(state, blocks.Count);
        step.Leave(state);
        for (var line = 0; line < blocks.Count; line++)
        {
            var block = blocks[line];
            if (block.Tokens.Length == 0)
            {
                _scan.NoteBlank();
                continue;
            }
            ahead.Line = firstLine + line;
            job.Executor.RunNext(block, step);
            _scan.Note(block, step);
        }
        state = step.After;
        return _scan.End(state, Math.Max(0, ahead.Farthest - (firstLine + blocks.Count - 1)), before);
    }

    /// <summary>Whether all from a chunk on runs as it did in the version before.</summary>
    bool Rejoins(int chunk, ControlState entry) => PartBefore(chunk) is { } before && before.Entry == entry;

    /// <summary>What came of a chunk in the version before; null where it is new.</summary>
    PartResult? PartBefore(int chunk) => _parts.Length - chunk is var fromEnd && fromEnd <= _sameAtEnd ? _old!.Results[^fromEnd] : null;

    void TakeRest(int chunk)
    {
        if (chunk < _parts.Length)
            _old!.Results[^(_parts.Length - chunk)..].CopyTo(_parts.AsSpan(chunk));
    }

    /// <summary>How many of the unchanged chunks at the beginning gave their results without a look at what comes behind them all.</summary>
    int WithoutWhatLookedAhead(int same)
    {
        var (kept, behind) = (same, 0);
        for (var i = same - 1; i >= 0 && behind < BlockExecutor.LinesAhead; behind += _old!.Results[i].Sets.Length, i--)
            if (_old!.Results[i].LinesAhead > behind)
                kept = i;
        return kept;
    }
}
