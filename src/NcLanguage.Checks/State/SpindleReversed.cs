using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A drill, mill or the like that cuts while the spindle turns counterclockwise.</summary>
public sealed class SpindleReversed : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2034",
        Name = "spindle-reversed",
        Severity = Severity.Warning,
        Title = "A tool cuts with the spindle turning backwards",
        Finds =
            "The first cut of a drill, reamer, countersink, counterbore or mill (setup) with the spindle turning counterclockwise (M4), once for each time that the tool is changed in. Such tools are right-hand: their edges cut "
            + "when the spindle turns clockwise (M3). Counterbores and countersinks are told in cycles that make a hole.",
        AtTheMachine = "The backs of the edges rub on the work and nothing is cut: a drill or reamer jams in the hole, inserts chip, and the tool breaks or pushes the work out of the clamps.",
        Setup = CycleExample.Drill,
        Example = CycleExample.Program("""
            M5
            M4
            G98 G81 X12 Y20 Z-12 R5 F150
            ~^^^^^^^^^^^^^^^^^^^^^^^^^^^
            X40
            """),
        Instead = CycleExample.Program("""
            M5
            M3
            G98 G81 X12 Y20 Z-12 R5 F150
            X40
            """),
        FixSafety = FixSafety.Choice,
        Fix = "Writes M3 where the M4 stands. A choice, since the tool may be a left-hand one.",
        NotFound =
            "Tools whose kind the setup does not tell, and those of which it says that they do not turn. Taps (tap-direction), boring bars, thread mills and probes; face mills, counterbores and countersinks with one edge, which may be set or ground to cut backwards; "
            + "back boring (G87); feeds of counterbores and countersinks, some of which fold for the way through a hole when the spindle turns backwards. Feeds straight up, and feeds at or above the top of the setup's stock. "
            + "A setup cannot say that a tool is left-hand: a comment (nc-allow spindle-reversed: left-hand drill) in the block does.",
        Source = "NISTIR 6556 §3.6.2 for M3 and M4; that tools are right-hand unless they are ordered otherwise is common practice.",
    };

    public override StepEvents Interest => StepEvents.News;

    public override bool Concerns(Job job) => job.Setup.Tools.Any(IsRightHand);

    public override void CheckStep(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        if (!step.HasHappened(Happened.CutReversed) || after.Cycle == 87 || step.Job.Setup.FindTool(after.Tool) is not { Kind: { } kind } tool || !IsRightHand(tool))
            return;
        if (MayFold(kind) && step.Step.Holes.Count == 0)
            return;
        step.ReportBlock(
            this, $"T{tool.Number}, {NameOf(kind)}, cuts with the spindle turning counterclockwise (M4): the edges of a right-hand tool only rub.",
            Slot.Spindle, "The spindle was switched on here.");
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        return SpindleTurn.Fix(analysis, finding.Line, toClockwise: true) is { } turn ? [turn] : [];
    }

    /// <summary>Whether a tool of its kind is right-hand unless it was ordered otherwise.</summary>
    static bool IsRightHand(Tool tool) => !tool.Stands && tool.Kind switch
    {
        null or ToolKind.Tap or ToolKind.BoringBar or ToolKind.ThreadMill or ToolKind.Probe => false,
        // One edge is ground or turned round in its holder at will.
        ToolKind.FaceMill or ToolKind.Counterbore or ToolKind.Countersink => tool.Flutes != 1,
        _ => true,
    };

    /// <summary>Whether there are tools of that kind that go through a hole folded, with the spindle turning backwards, and cut on the way back.</summary>
    static bool MayFold(ToolKind kind) => kind is ToolKind.Counterbore or ToolKind.Countersink;

    static string NameOf(ToolKind kind) => (kind is ToolKind.EndMill ? "an " : "a ") + ToolKindName.Words(kind);
}
