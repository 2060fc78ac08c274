using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A tool that cuts by the feed of the tool before it.</summary>
public sealed class FeedFromOtherTool : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2016",
        Name = "feed-from-other-tool",
        Severity = Severity.Warning,
        Title = "A tool cuts by the feed of the tool before",
        Finds =
            "The first cut after a tool change, when no F has come since the last cut of the tool before. A tapping cycle whose pitch the setup gives is "
            + "left to tap-feed, and a probe is left out.",
        AtTheMachine = "F stays in force through a tool change: a small drill is driven by the feed of a large one, and breaks.",
        Example = """
            G21 G90 G17 G54
            T1 M6
            M3 S1500
            G0 X10 Y10
            G43 H1 Z5
            G1 Z-2 F300
            G0 Z50
            G91 G28 Z0
            G90 T2 M6
            M3 S4000
            G0 X30 Y10
            G43 H2 Z5
            G1 Z-2
            ~^^^^^
            G0 Z50
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T1 M6
            M3 S1500
            G0 X10 Y10
            G43 H1 Z5
            G1 Z-2 F300
            G0 Z50
            G91 G28 Z0
            G90 T2 M6
            M3 S4000
            G0 X30 Y10
            G43 H2 Z5
            G1 Z-2 F60
            G0 Z50
            M5
            M30
            """,
        NotFound = "A feed that is given between the last cut of the tool before and the tool change counts as meant for the tool after it. Cuts in the block of the tool change itself. Feeds straight up, "
            + "and feeds at or above the top of the setup's stock, are no first cut here.",
        Source = "NISTIR 6556 §3.5.2 and §3.6.3 (a tool change leaves the feed as it is); a feed for each tool is common practice.",
    };

    public override StepEvents Interest => StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        var isEnded = (step.Step.Before.Happened & ~after.Happened & Happened.FeedOfOtherTool) != 0;
        if (!isEnded || (step.Step.Sets & (Slot.Feed | Slot.FeedMode | Slot.Tool)) != 0 || after.IsCalled || !(after.Feed > 0))
            return;
        if (FirstCut.IsLeftOut(step))
            return;
        step.ReportBlock(this, $"The first cut of {FirstCut.ToolOf(step)} runs at the feed of the tool before, {Feed(step)}: no F has come since the tool change.", Slot.Feed, "This feed was given here.");
    }

    static string Feed(in StepContext step) => step.Step.After.FeedMode == FeedMode.PerTurn
        ? "F" + step.Say.Number(step.Step.After.Feed)
        : "F" + step.Say.FeedNumber(step.Step.After.Feed);
}
