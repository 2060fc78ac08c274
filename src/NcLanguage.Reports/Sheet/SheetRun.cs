using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Operations;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Reports.Trace;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Reports.Sheet;

/// <summary>A block at which the machine waits for somebody.</summary>
/// <param name="Line">From 0, in the file named.</param>
/// <param name="Comment">The comment of its block or of the line above; null where there is none.</param>
/// <param name="Kind">Why it waits.</param>
sealed record SheetStop(int Line, string? File, string Block, string? Comment, int Tool, StopKind Kind)
{
    /// <summary>How often the run comes to it.</summary>
    public int Times { get; set; } = 1;
}

/// <summary>Why the machine waits.</summary>
enum StopKind
{
    /// <summary>M0, M60: always.</summary>
    Always,

    /// <summary>M1: only with the switch for it on.</summary>
    Optional,

    /// <summary>A cycle waits for the tool to be taken out by hand.</summary>
    ByHand,
}

/// <summary>What one run through the program tells a setup sheet: each step is looked at once.</summary>
sealed class SheetRun
{
    /// <summary>Characters of a comment or a block that are shown.</summary>
    const int Longest = 100;

    readonly Dictionary<(string? File, int Line), SheetStop> _stops = [];
    readonly SortedSet<int> _workOffsets = [];
    readonly Dictionary<int, (SortedSet<int> Lengths, SortedSet<int> Radii)> _offsets = [];
    string? _above;

    SheetRun(ProgramAnalysis analysis, CancellationToken cancel) =>
        ((Operations, Totals), Units) = (OperationRun.Of(analysis.Main, Note, cancel), analysis.Main.Units);

    public OperationList Operations { get; }

    public TraceTotals Totals { get; }

    /// <summary>In the order in which the run first comes to them.</summary>
    public IReadOnlyCollection<SheetStop> Stops => _stops.Values;

    /// <summary>The work offsets that moves are made under.</summary>
    public IReadOnlySet<int> WorkOffsets => _workOffsets;

    /// <summary>What the tip reaches while the tool cuts, in the setup's frame.</summary>
    public CutReach Reach { get; } = new();

    /// <summary>The unit that the program's last length words were in.</summary>
    public LengthUnit Units { get; }

    /// <summary>How the sheet says lengths and feeds.</summary>
    public SheetSay Say => new(new LengthText(Units));

    /// <summary>Whether the program writes offsets over those of the setup, or shifts the datum.</summary>
    public bool WritesOffsets { get; private set; }

    /// <summary>The H numbers that a tool is called or cuts with; empty for none.</summary>
    public IEnumerable<int> LengthOffsetsOf(int tool) => _offsets.TryGetValue(tool, out var offsets) ? offsets.Lengths : [];

    /// <summary>The D numbers that a tool is called or cuts with while compensated; empty for none.</summary>
    public IEnumerable<int> RadiusOffsetsOf(int tool) => _offsets.TryGetValue(tool, out var offsets) ? offsets.Radii : [];

    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static SheetRun Of(ProgramAnalysis analysis, CancellationToken cancel) => new(analysis, cancel);

    void Note(in Block block, in TracedStep traced)
    {
        var step = traced.Step;
        var (travels, cuts) = (false, false);
        foreach (ref readonly var move in step.Moves.Items)
        {
            travels |= move.IsMotion;
            cuts |= move.IsCut;
            // The way out of a hole at feed leads back through air.
            if (move.IsCut && move.Role != MoveRole.Return)
                Reach.Add(move, step.ToFrame);
            if (move.Kind == MoveKind.Stop && (step.Events & StepEvents.ProgramEnd) == 0)
                NoteStop(block, traced, move.Role == MoveRole.InHole ? StopKind.ByHand : IsOptional(step.Words) ? StopKind.Optional : StopKind.Always);
        }
        _above = CommentText.StandsAlone(block) ? CommentText.In(block, Longest) : null;
        ref readonly var state = ref step.After;
        WritesOffsets |= state.OffsetData is not null || state.Shift != default || state.LocalShift != default;
        if (travels && state.WorkOffset > 0)
            _workOffsets.Add(state.WorkOffset);
        // On its way from the tool change a tool still has the offsets of the one before: those say nothing of it.
        NoteOffsets(state, cuts || (step.Sets & Slot.LengthOffset) != 0, cuts || (step.Sets & Slot.Compensation) != 0);
    }

    static bool IsOptional(BlockWords words) => words.HasCode('M', 10) && !words.HasCode('M', 0) && !words.HasCode('M', 600);

    void NoteStop(in Block block, in TracedStep traced, StopKind kind)
    {
        if (_stops.TryGetValue((traced.File, traced.Line), out var known))
            known.Times++;
        else
            _stops.Add((traced.File, traced.Line), new SheetStop(
                traced.Line, traced.File, Findings.Excerpt.Of(block.Line, 0, 0).Text.Trim(), CommentText.In(block, Longest) ?? _above, traced.Step.After.Tool, kind));
    }

    void NoteOffsets(in ControlState state, bool isLength, bool isRadius)
    {
        if (!isLength && !isRadius)
            return;
        if (!_offsets.TryGetValue(state.Tool, out var offsets))
            _offsets.Add(state.Tool, offsets = ([], []));
        if (isLength && state.LengthOffset != LengthOffsetMode.Off && state.H > 0)
            offsets.Lengths.Add(state.H);
        if (isRadius && state.IsCompensationOn && state.D >= 0)
            offsets.Radii.Add(state.D);
    }
}
