using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A cut without a feed.</summary>
public sealed class FeedMissing : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2015",
        Name = "feed-missing",
        Severity = Severity.Error,
        Title = "A cut has no feed",
        Finds = "The first cut, or probe moves before it, of a program before any F; the first behind a change of the feed mode (G93, G94, G95) without "
            + "a new F; F0; and under inverse time feed (G93) a cut without an F of its own.",
        AtTheMachine = "The control stops with an alarm, or cuts at the feed the program before has left.",
        Example = """
            G21 G90 G17 G54
            M3 S1500
            G0 X10 Y10 Z5
            G1 Z-2
            ~^^^^^
            G0 Z50
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            M3 S1500
            G0 X10 Y10 Z5
            G1 Z-2 F100
            G0 Z50
            M5
            M30
            """,
        NotFound = "A feed that belongs to the tool before.",
        Source = "NISTIR 6556 §3.5.2, §3.5.19 and §3.7.1.",
    };

    public override StepEvents Interest => StepEvents.News | StepEvents.FeedWanted;

    public override void CheckStep(in StepContext step)
    {
        if (!step.IsRun)
            return;
        ref readonly var after = ref step.Step.After;
        if ((step.Step.Sets & Slot.Feed) != 0 && after.Feed == 0)
        {
            step.Report(this, step.Step.Words.TokenOf('F'), "At F0 no cut ever moves: the control stops with an alarm or stands still.");
            return;
        }
        if (((step.Step.Events & StepEvents.Cut) == 0 && !Probes(step.Step)) || after.IsCalled || step.Step.Words.Has('F'))
            return;
        // The feed of a thread is its lead for each turn.
        if (after.Motion == MotionMode.Thread && !after.InCycle)
            return;
        // A cycle under G93 is not-allowed-here, with or without F.
        if (after.FeedMode == FeedMode.InverseTime && after.InCycle)
            return;
        if (after.FeedMode == FeedMode.InverseTime)
            step.ReportBlock(this, "Under G93 every cut needs an F of its own: the control stops here with an alarm.", Slot.FeedMode, "Inverse time feed is set here.");
        else if (!double.IsNaN(after.OtherFeed))
        {
            if (step.HasHappened(Happened.CutWithoutFeed))
                step.ReportBlock(this, OfOtherMode(step), Slot.FeedMode, "The feed mode changes here.");
        }
        else if (double.IsNaN(after.Feed) && !after.HasSet(Slot.Feed) && !step.Step.Before.HasSet(Slot.Cut))
            step.ReportBlock(this, $"No feed (F) has been given before this {((step.Step.Events & StepEvents.Cut) == 0 ? "probe move" : "cut")}: the control stops, or cuts at the feed the program before has left.");
    }

    static string OfOtherMode(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        var number = after.OtherFeedMode == FeedMode.InverseTime ? Say.Number(after.OtherFeed) : step.Say.FeedNumber(after.OtherFeed);
        return $"F{number} was {Meaning(after.OtherFeedMode)}; in {(after.FeedMode == FeedMode.PerTurn ? "G95" : "G94")} no feed has been given: "
            + $"the control stops with an alarm, or reads {number} as {Meaning(after.FeedMode)}.";
    }

    static string Meaning(FeedMode mode) => mode switch
    {
        FeedMode.InverseTime => "for inverse time",
        FeedMode.PerTurn => "per turn",
        _ => "per minute",
    };

    static bool Probes(Step step)
    {
        foreach (ref readonly var move in step.Moves.Items)
            if (move.Role == MoveRole.Probe)
                return true;
        return false;
    }
}
