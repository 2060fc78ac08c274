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
/// <param name="IsManual">True where a cycle waits for the tool to be taken out by hand.</param>
sealed record SheetStop(int Line, string? File, string Block, string? Comment, int Tool, bool IsManual)
{
    /// <summary>How often the run comes to it.</summary>
    public int Times { get; set; } = 1;
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
        (Operations, Totals) = OperationRun.Of(analysis.Main, Note, cancel);

    public OperationList Operations { get; }

    public TraceTotals Totals { get; }

    /// <summary>In the order in which the run first comes to them.</summary>
    public IReadOnlyCollection<SheetStop> Stops => _stops.Values;

    /// <summary>The work offsets that moves are made under.</summary>
    public IReadOnlySet<int> WorkOffsets => _workOffsets;

    /// <summary>What the tip reaches while the tool cuts, in the setup's frame.</summary>
    public CutReach Reach { get; } = new();

    /// <summary>The unit that the program's last length words were in.</summary>
    public LengthUnit Units { get; private set; }

    /// <summary>Whether the program writes offsets over those of the setup, or shifts the datum.</summary>
    public bool WritesOffsets { get; private set; }

    /// <summary>The H numbers in force while a tool travels; empty for none.</summary>
    public IEnumerable<int> LengthOffsetsOf(int tool) => _offsets.TryGetValue(tool, out var offsets) ? offsets.Lengths : [];

    /// <summary>The D numbers in force while a tool travels compensated; empty for none.</summary>
    public IEnumerable<int> RadiusOffsetsOf(int tool) => _offsets.TryGetValue(tool, out var offsets) ? offsets.Radii : [];

    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static SheetRun Of(ProgramAnalysis analysis, CancellationToken cancel) => new(analysis, cancel);

    void Note(in Block block, in TracedStep traced)
    {
        var step = traced.Step;
        var travels = false;
        foreach (ref readonly var move in step.Moves.Items)
        {
            travels |= move.IsMotion;
            // The way out of a hole at feed leads back through air.
            if (move.IsCut && move.Role != MoveRole.Return)
                Reach.Add(move, step.ToFrame);
            if (move.Kind == MoveKind.Stop && (step.Events & StepEvents.ProgramEnd) == 0)
                NoteStop(block, traced, move.Role == MoveRole.InHole);
        }
        _above = CommentText.StandsAlone(block) ? CommentText.In(block, Longest) : null;
        ref readonly var state = ref step.After;
        if (state.Units != LengthUnit.Unknown)
            Units = state.Units;
        WritesOffsets |= state.OffsetData is not null || state.Shift != default || state.LocalShift != default;
        if (travels)
            NoteOffsets(state);
    }

    void NoteStop(in Block block, in TracedStep traced, bool isManual)
    {
        if (_stops.TryGetValue((traced.File, traced.Line), out var known))
            known.Times++;
        else
            _stops.Add((traced.File, traced.Line), new SheetStop(
                traced.Line, traced.File, Findings.Excerpt.Of(block.Line, 0, 0).Text.Trim(), CommentText.In(block, Longest) ?? _above, traced.Step.After.Tool, isManual));
    }

    void NoteOffsets(in ControlState state)
    {
        if (state.WorkOffset > 0)
            _workOffsets.Add(state.WorkOffset);
        if (!_offsets.TryGetValue(state.Tool, out var offsets))
            _offsets.Add(state.Tool, offsets = ([], []));
        if (state.LengthOffset != LengthOffsetMode.Off && state.H > 0)
            offsets.Lengths.Add(state.H);
        if (state.Compensation is CompensationSide.Left or CompensationSide.Right && state.D >= 0)
            offsets.Radii.Add(state.D);
    }
}
