using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>G91 still in force where positions were meant.</summary>
public sealed class IncrementalLeftOn : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2022",
        Name = "incremental-left-on",
        Severity = Severity.Warning,
        Title = "G91 is still on",
        Finds =
            "The first move in work coordinates after the tool was taken home (G28, G30, G53) or changed while G91 stayed in force; and M2 or M30 under a "
            + "G91 that moved the tool, in a program that has also used G90. The first move under a G91 that a called program has left on, where the call was in G90.",
        AtTheMachine = "The numbers are taken as distances from the reference point: the axis runs into the end of its travel or down into the work.",
        Example = """
            G21 G90 G17 G54
            G0 X10 Y10
            G91 G28 Z0
            G0 X50 Y50
            ~^^^^^^^^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X10 Y10
            G91 G28 Z0
            G90 G0 X50 Y50
            M30
            """,
        FixSafety = FixSafety.Safe,
        Fix = "Adds G90 to the block, so that its numbers are positions again; behind a call as a choice.",
        NotFound = "Programs that are written in distances throughout are left alone as far as they can be told.",
        Source = "Common practice; NISTIR 6556 §3.5.17 and §3.6.1 (the end of a program sets G90; not every control does).",
    };

    public override StepEvents Interest => StepEvents.Codes | StepEvents.News;

    /// <summary>Whether the tool has been moved by distances of a G91 that was left on: that is told where it happens, and what comes of it is not told by itself.</summary>
    internal static bool HasMoved(in ControlState state) => state.IncrementalUse is IncrementalUse.MovedFromHome or IncrementalUse.MovedBehindCall;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var before = ref step.Step.Before;
        ref readonly var after = ref step.Step.After;
        if (before.IncrementalUse <= IncrementalUse.Fresh || before.IsCalled || !step.IsRun || (step.Step.Sets & Slot.Distance) != 0)
            return;
        if (before.IncrementalUse == IncrementalUse.Homed && after.IncrementalUse == IncrementalUse.MovedFromHome)
            step.ReportBlock(this, "G91 is still on since the tool was taken away: these numbers are distances from there, not positions.", Slot.Distance, "G91 is set here.");
        else if (before.IncrementalUse == IncrementalUse.LeftByCall && after.IncrementalUse == IncrementalUse.MovedBehindCall)
            step.ReportBlock(this, "The program called before has left G91 on: these numbers are distances, and the call was in G90.", Slot.Distance, "G91 is set here.", text: ByCall);
        else if (before.IncrementalUse == IncrementalUse.Moved && EndsProgram(step.Step.Words) && (before.Happened & Happened.WasAbsolute) != 0)
            step.ReportBlock(this, "The program ends with G91 on: where the control does not take up G90 by itself, the next program reads positions as distances.", Slot.Distance, "G91 is set here.");
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis) =>
        [new Fix("Add G90 to this block", finding.Text == ByCall ? FixSafety.Choice : FixSafety.Safe, [Inserts.Before(analysis, finding.Line, "G90")])];

    const string ByCall = "M98";

    static bool EndsProgram(BlockWords words) => words.HasCode('M', 20) || words.HasCode('M', 300);
}
