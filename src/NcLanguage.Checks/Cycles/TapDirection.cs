using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A tapping cycle starts with the spindle turning the wrong way.</summary>
public sealed class TapDirection : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3051",
        Name = "tap-direction",
        Severity = Severity.Error,
        Title = "The spindle turns the wrong way for the tapping cycle",
        Finds = "G84 with the spindle turning counterclockwise (M4), G74 with it turning clockwise (M3). Once for each run of holes.",
        AtTheMachine = "The tap turns backwards on the hole while the spindle pushes it down: it breaks, or the control stops.",
        Example = CycleExample.Program("""
            M5
            M4
            G98 G84 X12 Y20 Z-12 R5 S400 F500
            ~   ^^^
            X40
            """),
        Instead = CycleExample.Program("""
            M5
            M3
            G98 G84 X12 Y20 Z-12 R5 S400 F500
            X40
            """),
        Setup = CycleExample.Tap,
        FixSafety = FixSafety.Choice,
        Fix = "Turns the spindle's code round, or takes the other of the two cycles, as the tap is right-hand or left-hand.",
        NotFound = "A spindle that stands (spindle-off), and a tap that is itself left-hand under G84.",
        Source = "NISTIR 6556 §3.5.16.5: the spindle must turn clockwise before G84. G74 as its mirror image is common practice.",
    };

    public override StepEvents Interest => StepEvents.HolesDiffer;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var state = ref step.Step.After;
        if (!TurnsBackwards(step.Step) || (step.Step.Before.StandsAtHole && (step.Step.Sets & (Slot.Cycle | Slot.Spindle)) == 0))
            return;
        var wrong = WrongFor(state.Cycle);
        var (turns, hand) = wrong == SpindleState.Clockwise ? ("clockwise", "left-hand") : ("counterclockwise", "right-hand");
        CycleRuns.Report(
            this, step, '\0', $"G{state.Cycle} cuts a {hand} thread, but the spindle turns {turns} (M{(wrong == SpindleState.Clockwise ? 3 : 4)}): the tap goes in backwards.",
            Slot.Spindle, "The spindle was switched on here.", text: state.Cycle.ToString());
    }

    /// <summary>Whether a tapping cycle goes in with the spindle turning the way of the other one: which of the two is meant, and so the thread's hand, is then open.</summary>
    internal static bool TurnsBackwards(Step step)
    {
        ref readonly var state = ref step.After;
        // Coupled by M29, the cycle has stopped the spindle by the end of the block.
        var spindle = state.RigidTapping ? step.Before.Spindle : state.Spindle;
        return spindle != SpindleState.Unknown && spindle == WrongFor(state.Cycle);
    }

    static SpindleState WrongFor(int cycle) => cycle switch { 84 => SpindleState.Counterclockwise, 74 => SpindleState.Clockwise, _ => SpindleState.Unknown };

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        var isRightHand = finding.Text == "84";
        if (SpindleTurn.Fix(analysis, finding.Line, toClockwise: isRightHand) is { } turn)
            yield return turn;
        var own = analysis.Main.BlockAt(finding.Line);
        var cycle = WordEdits.IndexOfCycle(own);
        if (cycle >= 0)
        {
            var other = isRightHand ? "G74" : "G84";
            yield return new Fix($"Take the other tapping cycle ({other})", FixSafety.Choice, [WordEdits.Replace(finding.Line, own, cycle, other)]);
        }
    }
}
