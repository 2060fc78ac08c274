using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A tapping cycle with a tap whose pitch the setup does not give.</summary>
public sealed class TapPitchUnknown : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3052",
        Name = "tap-pitch-unknown",
        Severity = Severity.Note,
        Title = "The setup does not give the pitch of the tap",
        Finds = "G84 or G74 with a tool of the setup that has no pitch: the feed is not checked. Once for each run of holes.",
        AtTheMachine = "Nothing by itself: but a wrong tapping feed, which breaks the tap, would not be found.",
        Example = CycleExample.Program("""
            G98 G84 X12 Y20 Z-12 R5 S400 F500
            ~   ^^^
            X40
            """),
        Instead = CycleExample.Program("""
            (WITH A HEAD THAT TURNS THE TAP BACK BY ITSELF)
            G98 G85 X12 Y20 Z-12 R5 S400 F500
            X40
            """),
        Setup = CycleExample.Setup("\"kind\": \"tap\", \"diameter\": 8"),
        NotFound = "Tools that are not in the setup (tool-not-in-setup), or are listed as something else than a tap (cycle-wrong-tool).",
        Source = "NISTIR 6556 §3.5.16.5: the feed follows from the pitch.",
    };

    public override StepEvents Interest => StepEvents.HolesDiffer;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var state = ref step.Step.After;
        if (state.Cycle is not (84 or 74) || !CycleRuns.Begins(step.Step) || step.Job.Setup.FindTool(state.Tool) is not { Pitch: null, Kind: null or ToolKind.Tap })
            return;
        var perTurn = state.FeedMode switch { FeedMode.PerMinute => state.Feed / state.Speed, FeedMode.PerTurn => state.Feed, _ => double.NaN };
        var said = double.IsFinite(perTurn) ? $"; the program feeds {step.Say.Length(perTurn)} for each turn" : "";
        CycleRuns.Report(this, step, '\0', $"{(step.Job.Setup.IsPresent ? "The setup gives no pitch" : "There is no setup file that gives a pitch")} for T{state.Tool}, so the tapping feed is not checked{said}.");
    }
}
