using NcLanguage.Checks.Clearance;
using NcLanguage.Checks.Rules;
using NcLanguage.Control.Flow;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>A program run from its first block to its last under one way of reading: an immutable row of results in the order in which the blocks ran.
/// Where that is the order of the text there is one part a chunk, and after an edit only the chunks that changed run again, and those whose entry state
/// differs from before. A program with jumps or loops is followed from its beginning; one that only calls from the edit on, until it comes to known blocks in a known state.</summary>
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
    NumberSurvey? _numberSurvey;
    HoleTable? _holeTable;
    (int Line, TurnedArc Arc)[]? _turnedArcs;

    internal ProgramRun(Job job, SourceText text, ChunkText[] texts, PartResult[] parts, FlowRun? flow, int blocksRun, ProgramRun? old)
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
    public ReadOnlySpan<PartResult> Results => IsWhole ? _parts : throw new NotYetRunException();

    /// <summary>What the text alone tells, in the order of the text's chunks.</summary>
    public ReadOnlySpan<ChunkText> Texts => _texts;

    /// <summary>What each of the results is asked most.</summary>
    internal FactRow<PartResult, PartFacts> PartFacts => OfWhole(_partFacts);

    /// <summary>What each of the chunks' texts is asked most.</summary>
    internal FactRow<ChunkText, TextFacts> TextFacts => _textFacts;

    /// <summary>What rules tell of its blocks. Gathered when first asked for, from those of the version before where there is one.</summary>
    internal BlockFindings BlockFindings
    {
        get
        {
            if (OfWhole(_findings) is { } made)
                return made;
            made = _findings = new BlockFindings(this, _texts, Flow is null ? _parts : null, _findingsBefore);
            _findingsBefore = null;
            return made;
        }
    }

    /// <summary>The holes it drills. Gathered when first asked for.</summary>
    internal HoleTable HoleTable => _holeTable ??= new HoleTable(this);

    /// <summary>Its arcs that seem to turn the wrong way or to have a wrong radius, each with the line of its block. Gathered when first asked for.</summary>
    internal ReadOnlySpan<(int Line, TurnedArc Arc)> TurnedArcs => _turnedArcs ??= Analysis.TurnedArcs.Of(this);

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
                return flow.Blocks;
            var blocks = 0;
            foreach (var part in Results)
                blocks += part.Blocks;
            return blocks;
        }
    }

    /// <summary>What its cuts and rapids meet of the stock. Worked out when first asked for, from that of the version before where there is one.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    internal StockReplay StockOf(CancellationToken cancel)
    {
        if (OfWhole(_stock) is { } made)
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
    int CoordinatesUsed => CoordinatesOfAll() is var used && Job.IsOutsideFrame(used) ? CoordinatesLog.Several : used;

    /// <summary>Block numbers not used yet. Gathered when first asked for.</summary>
    internal FreeNumbers FreeNumbers => _freeNumbers ??= FreeNumbers.Of(this);

    /// <summary>Where block numbers repeat and fall. Looked up when first asked for.</summary>
    internal NumberSurvey NumberSurvey => _numberSurvey ??= NumberSurvey.Of(this);

    StockReplay? LastStock => _stock ?? _stockBefore;

    /// <summary>Cuts that had to be followed through the stock to make this from what it was made from.</summary>
    public int CutsFollowed => StockOf(CancellationToken.None).CutsFollowed;

    /// <summary>Lines before the % that begins the program; 0 where nothing stands there.</summary>
    public int LeaderLines => Leader.LinesOf(Text);

    /// <summary>The state behind the last block that ran.</summary>
    public ControlState Exit => _parts.Length == 0 ? Job.Executor.Start() : Part(_parts.Length - 1).Exit;

    /// <summary>The unit that the run's lengths were written in last. Of a further program of the file, which others call, nobody knows it before its own G20 or G21.</summary>
    public LengthUnit Units =>
        Exit.Units is LengthUnit.Unknown && LastSetter(Slot.Units, Text.LineCount - 1) is >= 0 and var line ? StepAt(line).After.Units : Exit.Units;

    /// <summary>Blocks that run again before a first look is given: more than an editor has in view, and done in a few milliseconds.</summary>
    public const int BlocksOfAFirstLook = 1_000;

    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static ProgramRun Create(SourceText text, Job job, Rule[] stepRules, Rule[] textRules, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(job);
        return new ProgramRunner(text, job, stepRules, cancel) { TextRules = textRules }.Run();
    }

    /// <summary>The run of a text that was run under another reading.</summary>
    internal static ProgramRun Create(SourceText text, Job job, RunBeside beside, Rule[] stepRules, CancellationToken cancel) =>
        new ProgramRunner(text, job, stepRules, cancel) { Beside = beside }.Run();

    /// <summary>The same for a new version of the text, with every result reused that still holds.</summary>
    /// <param name="onTheWay">Called once where more than <see cref="BlocksOfAFirstLook"/> blocks have to run again, with a run whose rest is that of the version before.</param>
    public ProgramRun WithText(SourceText text, Rule[] stepRules, Rule[] textRules, CancellationToken cancel, Action<ProgramRun>? onTheWay = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        return new ProgramRunner(text, Job, stepRules, cancel) { TextRules = textRules, Before = this, OnTheWay = onTheWay }.Run();
    }

    /// <summary>The same where the new version was run under another reading.</summary>
    internal ProgramRun WithText(SourceText text, RunBeside beside, Rule[] stepRules, CancellationToken cancel) =>
        new ProgramRunner(text, Job, stepRules, cancel) { Before = this, Beside = beside }.Run();
}
