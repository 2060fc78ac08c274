using System.Diagnostics.CodeAnalysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Checks.Rules;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>A program run from its first block to its last under one way of reading: an immutable row of results in the order in which the blocks ran.
/// Where that is the order of the text there is one part a chunk, and after an edit only the chunks that changed run again, and those whose entry state
/// differs from before. A program with jumps, loops or calls is followed from its beginning.</summary>
public sealed partial class ProgramRun
{
    readonly PartResult[] _parts;
    readonly ChunkText[] _texts;
    readonly FactRow<PartResult, PartFacts> _partFacts;
    readonly FactRow<ChunkText, TextFacts> _textFacts;
    StockReplay? _stockBefore;
    StockReplay? _stock;
    BlockFindings? _findingsBefore;
    BlockFindings? _findings;
    FreeNumbers? _freeNumbers;
    HoleTable? _holeTable;

    ProgramRun(Job job, SourceText text, ChunkText[] texts, PartResult[] parts, FlowRun? flow, int blocksRun, ProgramRun? old)
    {
        Job = job;
        Text = text;
        _texts = texts;
        _parts = parts;
        Flow = flow;
        BlocksRun = blocksRun;
        _stockBefore = old?.LastStock;
        _findingsBefore = old?._findings ?? old?._findingsBefore;
        _partFacts = new(parts, old?._partFacts, Analysis.PartFacts.Of);
        _textFacts = new(texts, old?._textFacts, Analysis.TextFacts.Of);
    }

    public Job Job { get; }

    public SourceText Text { get; }

    /// <summary>Results in the order in which the blocks ran.</summary>
    public ReadOnlySpan<PartResult> Results => _parts;

    /// <summary>What the text alone tells, in the order of the text's chunks.</summary>
    public ReadOnlySpan<ChunkText> Texts => _texts;

    /// <summary>What each of the results is asked most.</summary>
    internal FactRow<PartResult, PartFacts> PartFacts => _partFacts;

    /// <summary>What each of the chunks' texts is asked most.</summary>
    internal FactRow<ChunkText, TextFacts> TextFacts => _textFacts;

    /// <summary>What rules tell of its blocks. Gathered when first asked for, from those of the version before where there is one.</summary>
    internal BlockFindings BlockFindings
    {
        get
        {
            if (_findings is { } made)
                return made;
            made = _findings = new BlockFindings(this, _texts, Flow is null ? _parts : null, _findingsBefore);
            _findingsBefore = null;
            return made;
        }
    }

    /// <summary>The holes it drills. Gathered when first asked for.</summary>
    internal HoleTable HoleTable => _holeTable ??= new HoleTable(this);

    /// <summary>How the run left the order of the text; null where it kept to it.</summary>
    public FlowRun? Flow { get; }

    /// <summary>Blocks that had to be run to make this from what it was made from, for tests that count work.</summary>
    public int BlocksRun { get; }

    /// <summary>Blocks that the whole run comes to, each as often as it was followed.</summary>
    public int Blocks
    {
        get
        {
            if (Flow is { } flow)
                return flow.BlocksRun;
            var blocks = 0;
            foreach (var part in _parts)
                blocks += part.Blocks;
            return blocks;
        }
    }

    /// <summary>What its cuts and rapids meet of the stock. Worked out when first asked for, from that of the version before where there is one.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    internal StockReplay StockOf(CancellationToken cancel)
    {
        if (_stock is { } made)
            return made;
        made = _stock = StockReplay.Of(this, _stockBefore, cancel);
        // It holds the parts of a version long past.
        _stockBefore = null;
        return made;
    }

    /// <summary>Whether places have to be told with their coordinates: the run works under more than one work offset, shifts one, or works under another than the setup is meant in.</summary>
    public bool NamesCoordinates => CoordinatesUsed == CoordinatesLog.Several;

    /// <summary>The name of the coordinates that go without saying: those of the only work offset that the run works under; empty where it works under none, so that no name is told; null where none go without.</summary>
    internal string? PlainCoordinates => CoordinatesUsed switch
    {
        CoordinatesLog.Several => null,
        CoordinatesLog.None => "",
        var workOffset => WorkOffsetName.Format(workOffset),
    };

    // Beside places of the setup, which are meant in its own frame, those of another do not go without saying.
    int CoordinatesUsed => _partFacts.All.CoordinatesUsed is var used && Job.IsOutsideFrame(used) ? CoordinatesLog.Several : used;

    /// <summary>Block numbers not used yet. Gathered when first asked for.</summary>
    internal FreeNumbers FreeNumbers => _freeNumbers ??= FreeNumbers.Of(this);

    StockReplay? LastStock => _stock ?? _stockBefore;

    /// <summary>Cuts that had to be followed through the stock to make this from what it was made from.</summary>
    public int CutsFollowed => StockOf(CancellationToken.None).CutsFollowed;

    /// <summary>Lines before the % that begins the program; 0 where nothing stands there.</summary>
    public int LeaderLines => Leader.LinesOf(Text);

    /// <summary>The state behind the last block that ran.</summary>
    public ControlState Exit => _parts.Length == 0 ? Job.Executor.Start() : _parts[^1].Exit;

    /// <summary>The unit that the run's lengths were written in last. Of a further program of the file, which others call, nobody knows it before its own G20 or G21.</summary>
    public LengthUnit Units =>
        Exit.Units is LengthUnit.Unknown && LastSetter(Slot.Units, Text.LineCount - 1) is >= 0 and var line ? StepAt(line).After.Units : Exit.Units;

    /// <summary>Chunks still to be run from which on a second thread is worth its while.</summary>
    const int ChunksForTwoHands = 16;

    /// <summary>Blocks that run again before a first look is given: more than an editor has in view, and done in a few milliseconds.</summary>
    public const int BlocksOfAFirstLook = 4_000;

    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static ProgramRun Create(SourceText text, Job job, Rule[] stepRules, Rule[] textRules, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(job);
        return Run(text, job, null, null, stepRules, textRules, null, cancel);
    }

    /// <summary>The run of a text that was run under another reading.</summary>
    internal static ProgramRun Create(SourceText text, Job job, RunBeside beside, Rule[] stepRules, CancellationToken cancel) => Run(text, job, null, beside, stepRules, [], null, cancel);

    /// <summary>The same for a new version of the text, with every result reused that still holds.</summary>
    /// <param name="onTheWay">Called once where more than <see cref="BlocksOfAFirstLook"/> blocks have to run again, with a run whose rest is that of the version before.</param>
    public ProgramRun WithText(SourceText text, Rule[] stepRules, Rule[] textRules, CancellationToken cancel, Action<ProgramRun>? onTheWay = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Run(text, Job, this, null, stepRules, textRules, onTheWay, cancel);
    }

    /// <summary>The same where the new version was run under another reading.</summary>
    internal ProgramRun WithText(SourceText text, RunBeside beside, Rule[] stepRules, CancellationToken cancel) => Run(text, Job, this, beside, stepRules, [], null, cancel);

    static ProgramRun Run(
        SourceText text, Job job, ProgramRun? old, RunBeside? beside, Rule[] stepRules, Rule[] textRules, Action<ProgramRun>? onTheWay, CancellationToken cancel)
    {
        var (same, sameAtEnd) = old is null ? (0, 0) : SharedEnds.Of(old.Text.Chunks, text.Chunks);
        var texts = new TextsOfChunks(text, job, textRules, cancel);
        if (beside is not null)
            texts.Take(beside.Texts, text.Chunks.Length, 0);
        else if (old is not null)
            texts.Take(old._texts, same, sameAtEnd);
        // A run that kept to the order of the text has none that leads elsewhere.
        var steers = old?.Flow is not null && texts.Steer();
        if (steers || !RunInOrder(texts, old, beside, same, sameAtEnd, stepRules, onTheWay, cancel, out var run))
        {
            var flow = FlowScan.Run(text, texts.All(), job, stepRules, cancel);
            return new ProgramRun(job, text, texts.All(), flow.Parts, flow, flow.BlocksRun, old);
        }
        return run;
    }

    /// <summary>Runs the blocks in the order of the text; false where one of them leads elsewhere.</summary>
    static bool RunInOrder(
        TextsOfChunks texts, ProgramRun? version, RunBeside? beside, int same, int sameAtEnd, Rule[] stepRules, Action<ProgramRun>? onTheWay, CancellationToken cancel,
        [NotNullWhen(true)] out ProgramRun? run)
    {
        run = null;
        var (text, job, old) = (texts.Text, texts.Job, version);
        var start = job.Executor.StartOf(ChunkMarks.IsCalled(texts.Marks()), Leader.LinesOf(text) > 0);
        // Parts of a run that left the order of the text, or began otherwise, are no parts of one that does not.
        if (old?.Flow is not null || (same > 0 && old!._parts[0].Entry != start))
            (old, same, sameAtEnd) = (null, 0, 0);
        if (same < text.Chunks.Length)
            same = WithoutWhatLookedAhead(old, same);
        var scan = new PartScan(job, stepRules);
        var ahead = new TextAhead(text);
        var parts = new PartResult[text.Chunks.Length];
        if (same > 0)
            Array.Copy(old!._parts, parts, same);
        var state = same > 0 ? parts[same - 1].Exit : start;
        for (var i = same; i < parts.Length; i++)
        {
            cancel.ThrowIfCancellationRequested();
            var fromEnd = parts.Length - i;
            if (Rejoins(i, state))
            {
                TakeRest(i);
                break;
            }
            if (beside?.At(i, state) is { } alike)
            {
                (parts[i], state) = (alike, alike.Exit);
                continue;
            }
            if (onTheWay is not null && scan.BlocksRun > BlocksOfAFirstLook && fromEnd <= sameAtEnd)
            {
                TakeRest(i);
                onTheWay(new ProgramRun(job, text, texts.All(), [.. parts], null, scan.BlocksRun, version));
                onTheWay = null;
            }
            if (job.WithTwoHands && parts.Length - i >= ChunksForTwoHands && (old is null || (onTheWay is null && scan.BlocksRun > BlocksOfAFirstLook)))
            {
                var end = new TwoHands(texts, scan, parts, beside, cancel).Run(i, state, Rejoins);
                if (end < 0)
                    return false;
                TakeRest(end);
                break;
            }
            var blocks = texts.Read(i, out var chunk);
            if (chunk.Marks.Steers)
                return false;
            parts[i] = RunChunk(blocks, text.FirstLineOf(i), job, scan, ahead, ref state);
        }
        run = new ProgramRun(job, text, texts.All(), parts, null, scan.BlocksRun, version);
        return true;

        // Whether all from a chunk on runs as it did in the version before.
        bool Rejoins(int chunk, ControlState entry) => parts.Length - chunk is var fromEnd && fromEnd <= sameAtEnd && old!._parts[^fromEnd].Entry == entry;

        void TakeRest(int chunk)
        {
            if (chunk < parts.Length)
                Array.Copy(old!._parts, old._parts.Length - (parts.Length - chunk), parts, chunk, parts.Length - chunk);
        }
    }

    static PartResult RunChunk(BlockList blocks, int firstLine, Job job, PartScan scan, TextAhead ahead, ref ControlState state)
    {
        scan.Step.Ahead = ahead;
        ahead.Farthest = 0;
        scan.Begin(state, blocks.Count);
        var step = scan.Step;
        step.Leave(state);
        for (var line = 0; line < blocks.Count; line++)
        {
            var block = blocks[line];
            if (block.Tokens.Length == 0)
            {
                scan.NoteBlank();
                continue;
            }
            ahead.Line = firstLine + line;
            job.Executor.RunNext(block, step);
            scan.Note(block, step);
        }
        state = step.After;
        return scan.End(state) with { LinesAhead = Math.Max(0, ahead.Farthest - (firstLine + blocks.Count - 1)) };
    }

    /// <summary>How many of the unchanged chunks at the beginning gave their results without a look at what comes behind them all.</summary>
    static int WithoutWhatLookedAhead(ProgramRun? old, int same)
    {
        var (kept, behind) = (same, 0);
        for (var i = same - 1; i >= 0 && behind < BlockExecutor.LinesAhead; behind += old!._parts[i].Sets.Length, i--)
            if (old!._parts[i].LinesAhead > behind)
                kept = i;
        return kept;
    }
}
