using NcLanguage.Checks.Clearance;
using NcLanguage.Checks.Drawing;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Analysis;

/// <summary>A block as text, for rules on syntax.</summary>
public readonly ref struct BlockContext
{
    readonly List<Finding> _findings;
    readonly int _line;

    internal BlockContext(Job job, List<Finding> findings, in Block block, int line)
    {
        _findings = findings;
        _line = line;
        Block = block;
        Readings = job.Readings;
    }

    public Block Block { get; }

    public Readings Readings { get; }

    /// <summary>Reports bytes of the block's line.</summary>
    public void Report(Rule rule, int start, int end, string message, double value = double.NaN, string text = "") =>
        _findings.Add(new Finding
        {
            Rule = rule,
            Severity = rule.Info.Severity,
            Line = _line,
            StartColumn = start,
            EndColumn = end,
            Message = message,
            Value = value,
            Text = text,
        });

    /// <summary>Reports a token.</summary>
    public void Report(Rule rule, in Token token, string message, double value = double.NaN, string text = "") =>
        Report(rule, token.Start, token.End, message, value, text);
}

/// <summary>An executed block, for rules on what the control does.</summary>
public readonly ref struct StepContext
{
    readonly PartScan _scan;
    readonly int _line;

    internal StepContext(PartScan scan, in Block block, Step step, int line)
    {
        _scan = scan;
        _line = line;
        Block = block;
        Step = step;
    }

    public Block Block { get; }

    public Step Step { get; }

    public Job Job => _scan.Job;

    /// <summary>Lengths and feeds in the unit in force, places in its work coordinates.</summary>
    public LengthText Say => new(Step.After.Units) { Coordinates = _scan.Coordinates };

    /// <summary>Whether the block ran: false behind the program's end and where it was skipped.</summary>
    public bool IsRun => (Step.Events & (StepEvents.NotRun | StepEvents.Skipped)) == 0;

    /// <summary>Whether this happened in this step and not before.</summary>
    public bool HasHappened(Happened what) => (Step.After.Happened & ~Step.Before.Happened & what) != 0;

    /// <summary>The nearest approach of a move of this step to the obstacles, looked for within the setup's clearance:
    /// what is farther comes back as infinite; NaN where the place is not known.</summary>
    public Approach ApproachOf(int move) => _scan.ApproachOf(move);

    /// <summary>Whether a move of this step comes nearer to an obstacle than the setup's clearance; true where that is not known.</summary>
    public bool ComesNear => _scan.Nearness == Nearness.Near;

    /// <summary>What the moves of this step come too near to.</summary>
    internal Contacts Contacts => _scan.ContactsOf(this);

    /// <summary>Whether the tool stays where it is plain that no obstacle stands within the setup's clearance, beside or below it.</summary>
    public bool IsFree => _scan.Nearness == Nearness.Free;

    /// <summary>Reports a token of the block, by its index.</summary>
    /// <param name="concerns">The part of the state concerned; the block that set it last before this one becomes the related place.</param>
    /// <param name="concernsMessage">What the related place says.</param>
    /// <param name="value">What the rule's fix needs to know.</param>
    /// <param name="asMet">True where it is the state that the block met: then the related place stands whatever the block's own words set.</param>
    public void Report(
        Rule rule, int token, string message, Slot concerns = Slot.None, string concernsMessage = "",
        double value = double.NaN, string text = "", Severity? severity = null, bool asMet = false) =>
        Report(rule, (Block.Tokens[token].Start, Block.Tokens[token].End), message, Earlier(concerns, asMet), concernsMessage, value, text, severity);

    /// <summary>Reports from one token of the block to another, by their indices.</summary>
    public void Report(Rule rule, int firstToken, int lastToken, string message) =>
        Report(rule, (Block.Tokens[firstToken].Start, Block.Tokens[lastToken].End), message);

    /// <summary>Reports bytes of the block's line.</summary>
    public void Report(Rule rule, (int Start, int End) bytes, string message, double value = double.NaN, string text = "") =>
        Report(rule, bytes, message, Slot.None, "", value, text, null);

    /// <summary>Reports the whole block: its words from the first to the last, comments, skip mark and block number left out where others stand.</summary>
    public void ReportBlock(
        Rule rule, string message, Slot concerns = Slot.None, string concernsMessage = "",
        double value = double.NaN, string text = "", Severity? severity = null, bool asMet = false) =>
        Report(rule, WordsOf(Block), message, Earlier(concerns, asMet), concernsMessage, value, text, severity);

    /// <summary>What set the level of a place on a move of this step, so that the block that did is shown: the level that the block met, or that of its cycle. None where its own move takes the tool there.</summary>
    /// <param name="level">In work coordinates, mm.</param>
    public Slot LevelOf(int move, double level)
    {
        var role = Step.Moves[move].Role;
        if (role is MoveRole.Approach or MoveRole.InHole && Step.After.Plane == WorkPlane.XY)
            return role == MoveRole.Approach ? Slot.CycleR : Slot.CycleBottom;
        return Math.Abs(level - Step.Moves[0].From.Z) <= Sweep.ClearanceTolerance ? Slot.Z : Slot.None;
    }

    /// <summary>From the first to the last word of a block that is neither comment, skip mark nor block number; the whole line where there is none.</summary>
    public static (int Start, int End) WordsOf(in Block block)
    {
        var (start, end) = (-1, 0);
        foreach (ref readonly var token in block.Tokens)
        {
            if (token.IsComment || token.Kind == TokenKind.Skip || token.IsWord('N'))
                continue;
            if (start < 0)
                start = token.Start;
            end = token.End;
        }
        if (start >= 0)
            return (start, end);
        return block.Tokens.Length == 0 ? (0, block.Line.Length) : (block.Tokens[0].Start, block.Tokens[^1].End);
    }

    // What a block sets by its own words no other block has set for it. What its moves do comes after what they set out from.
    Slot Earlier(Slot concerns, bool asMet) => asMet || (Step.Sets & concerns & ~Slot.Doings) == 0 ? concerns : Slot.None;

    void Report(
        Rule rule, (int Start, int End) bytes, string message, Slot concerns, string concernsMessage, double value, string text, Severity? severity) =>
        _scan.Add(new Finding
        {
            Rule = rule,
            Severity = severity ?? rule.Info.Severity,
            Line = _line,
            StartColumn = bytes.Start,
            EndColumn = bytes.End,
            Message = message,
            Concerns = concerns,
            ConcernsMessage = concerns == Slot.None ? "" : concernsMessage,
            Value = value,
            Text = text,
        });
}

/// <summary>A whole file, for rules that compare distant places.</summary>
public readonly ref struct FileContext
{
    readonly Finding[] _ofBlocks;
    readonly List<Finding> _findings;
    readonly LastUnit _lastUnit = new();
    readonly HolesMade _holesMade = new();

    /// <param name="ofBlocks">What rules have found in blocks.</param>
    /// <param name="findings">Where what rules find in the file goes.</param>
    internal FileContext(AnalysisRuns runs, AnalysisOptions options, Finding[] ofBlocks, List<Finding> findings, CancellationToken cancel)
    {
        _ofBlocks = ofBlocks;
        Cancel = cancel;
        Runs = runs;
        Options = options;
        _findings = findings;
    }

    /// <summary>Cancelled where nobody waits for the findings any more; rules that look long ask it now and then.</summary>
    public CancellationToken Cancel { get; }

    /// <summary>What the run's cuts and rapids meet of the stock.</summary>
    internal StockReplay Stock => Run.StockOf(Cancel);

    /// <summary>The runs under all readings looked at.</summary>
    public AnalysisRuns Runs { get; }

    public AnalysisOptions Options { get; }

    /// <summary>The run under the reading in force.</summary>
    public ProgramRun Run => Runs.Main;

    /// <summary>Lengths and feeds in the unit in force at a line (0-based).</summary>
    /// <param name="coordinates">The coordinates that the places to be told are meant in; null where none are told.</param>
    public LengthText SayAt(int line, WorkCoordinates? coordinates) => SayAt(line) with { Coordinates = coordinates };

    LengthText SayAt(int line)
    {
        var (part, _) = Run.FirstRunOf(line);
        if (part >= 0 && Run.Results[part] is var result && (result.AllSets & Slot.Units) == 0 && result.Entry.Units != LengthUnit.Unknown)
            return new(result.Entry.Units);
        var setter = Run.LastSetter(Slot.Units, line);
        if (setter < 0)
            return new(LengthUnit.Millimetre);
        // Most findings of a file stand under one G20 or G21: its block is run once for all of them.
        if (_lastUnit.SetAt != setter)
            (_lastUnit.SetAt, _lastUnit.Say) = (setter, new(Run.StepAt(setter).After.Units));
        return _lastUnit.Say;
    }

    /// <summary>The places where the run makes holes; worked out when first asked for. Only for runs with <see cref="HasFewHoles"/>.</summary>
    internal WorkedPlaces Places => _holesMade.Places ??= WorkedPlaces.Of(Run);

    /// <summary>Whether the run makes few enough holes to look at each place.</summary>
    internal bool HasFewHoles => _holesMade.AreFew ??= DrawingFindings.IsFewEnough(Run);

    /// <summary>The run's holes held against the drawing's; worked out when first asked for.</summary>
    internal DrawingFindings Drawing
    {
        get
        {
            var made = _holesMade;
            var run = Run;
            return made.Drawing ??= DrawingFindings.Of(run, _ofBlocks.Concat(_findings), () => made.Places ??= WorkedPlaces.Of(run));
        }
    }

    sealed class HolesMade
    {
        public bool? AreFew;
        public WorkedPlaces? Places;
        public DrawingFindings? Drawing;
    }

    sealed class LastUnit
    {
        public int SetAt = -1;
        public LengthText Say;
    }

    /// <summary>Reports bytes of a line, counted from 0 in the whole text.</summary>
    public void Report(
        Rule rule, int line, int start, int end, string message, double value = double.NaN, string text = "", Severity? severity = null,
        RelatedPlace? related = null) =>
        _findings.Add(new Finding
        {
            Rule = rule,
            Severity = severity ?? rule.Info.Severity,
            Line = line,
            StartColumn = start,
            EndColumn = end,
            Message = message,
            Value = value,
            Text = text,
            Related = related,
        });

    /// <summary>Reports what was found before and stands as it is.</summary>
    internal void Add(Finding finding) => _findings.Add(finding);

    /// <summary>Reports the words of a line's block.</summary>
    public void ReportBlock(Rule rule, int line, string message, double value = double.NaN, string text = "", Severity? severity = null)
    {
        var (start, end) = StepContext.WordsOf(Run.BlockAt(line));
        Report(rule, line, start, end, message, value, text, severity);
    }
}
