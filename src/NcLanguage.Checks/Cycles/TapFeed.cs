using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>The feed of a tapping cycle does not go with the tap's pitch.</summary>
public sealed class TapFeed : Rule
{
    /// <summary>How far the feed may be off: a hundredth.</summary>
    const double Tolerance = 0.01;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3050",
        Name = "tap-feed",
        Severity = Severity.Error,
        Title = "The tapping feed does not go with the tap's pitch",
        Finds = "G84 or G74 whose feed differs by more than 1 % from pitch · speed (G94) or from the pitch (G95), where the setup gives the tap's pitch.",
        AtTheMachine = "The tap cuts its own pitch while the spindle moves at another: the thread is torn out or the tap breaks.",
        Example = CycleExample.Program("""
            G98 G84 X12 Y20 Z-12 R5 S400 F400
            ~                            ^^^^
            X40
            """),
        Instead = CycleExample.Program("""
            G98 G84 X12 Y20 Z-12 R5 S400 F500
            X40
            """),
        Setup = CycleExample.Tap,
        FixSafety = FixSafety.Safe,
        Fix = "Writes the feed that pitch and speed give, in place of the block's F or at its end; as a choice where the F is the pitch itself, as it would be under G95.",
        NotFound = "Taps whose pitch the setup does not give (tap-pitch-unknown), speeds that are not known, inverse-time feed.",
        Source = "NISTIR 6556 §3.5.16.5: speed = feed · threads per length. ISO 261 for the pitches.",
    };

    /// <summary>The text of a finding whose feed would be right by the turn.</summary>
    const string PerTurn = "G95";

    public override StepEvents Interest => StepEvents.HolesDiffer;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var state = ref step.Step.After;
        if (state.Cycle is not (84 or 74)
            || (step.Step.Before.StandsAtHole && (step.Step.Sets & (Slot.Cycle | Slot.Feed | Slot.Speed | Slot.FeedMode)) == 0)
            || step.Job.Setup.FindTool(state.Tool) is not { Pitch: { } pitch })
            return;
        // A spindle that stands since the tool was changed, without an S of its own, has no speed to go with: spindle-off.
        if (state.Spindle == SpindleState.Off && !state.RigidTapping && !state.HasSet(Slot.Speed))
            return;
        var right = state.FeedMode switch { FeedMode.PerMinute => pitch * state.Speed, FeedMode.PerTurn => pitch, _ => double.NaN };
        if (!(right > 0) || !(Math.Abs(state.Feed - right) > Tolerance * right))
            return;
        var perTurn = state.FeedMode == FeedMode.PerMinute ? state.Feed / state.Speed : state.Feed;
        var isPitch = state.FeedMode == FeedMode.PerMinute && Math.Abs(state.Feed - pitch) <= Tolerance * pitch;
        var feed = state.FeedMode == FeedMode.PerMinute ? $"F{step.Say.FeedNumber(state.Feed)} at S{Say.Number(state.Speed)}" : $"F{step.Say.Number(state.Feed)}";
        CycleRuns.Report(
            this, step, 'F', $"{feed} moves {step.Say.Length(perTurn)} for each turn, and the pitch of T{state.Tool} is {step.Say.Length(pitch)}: the feed has to be "
                + $"{(state.FeedMode == FeedMode.PerMinute ? step.Say.Feed(right) : step.Say.Length(right))}.{(isPitch ? " It is the pitch itself: is G95 meant, the feed per turn?" : "")}",
            Slot.Feed, "The feed was set here.", value: right, text: isPitch ? PerTurn : "");
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        var after = analysis.Main.StepAt(finding.Line).After;
        if (after.Units == LengthUnit.Unknown)
            yield break;
        // Four decimals of an inch are as fine as a place is written; a lead adds up over the turns, and has one more.
        var word = "F" + (after.Units == LengthUnit.Inch ? Say.Number(finding.Value / UnitLength.MmPerInch, after.FeedMode == FeedMode.PerTurn ? 5 : 4) : Say.Number(finding.Value));
        yield return new Fix($"Feed by the pitch ({word})", finding.Text == PerTurn ? FixSafety.Choice : FixSafety.Safe, [CycleWords.Set(analysis.Main, finding.Line, word)]);
    }
}
