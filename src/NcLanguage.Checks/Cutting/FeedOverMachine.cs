using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A feed that the machine does not reach.</summary>
public sealed class FeedOverMachine : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5002",
        Name = "feed-over-machine",
        Severity = Severity.Warning,
        Title = "A feed the machine does not reach",
        Finds = "An F word above the greatest feed of the machine profile; in feed per revolution, where the speed is known, the feed it comes to.",
        AtTheMachine = "The control cuts at its greatest feed, or stops with an alarm.",
        Machine = """{ "name": "bench mill", "maxFeed": 4000 }""",
        Example = """
            G21 G90 G17 G54
            T5 M6
            S3000 M3
            G0 X-10 Y30
            G43 H5 Z5 M8
            G1 X80 F6000
            ~      ^^^^^
            G0 Z50 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T5 M6
            S3000 M3
            G0 X-10 Y30
            G43 H5 Z5 M8
            G1 X80 F600
            G0 Z50 M9
            M5
            M30
            """,
        NotFound = "Inverse-time feeds (G93), a feed per revolution whose speed is changed afterwards, and machines whose profile gives no greatest feed.",
        Source = "Common practice; feed per minute and per revolution as NISTIR 6556 §3.5.19 and ISO 6983-1 have them (the latter from memory).",
    };

    public override StepEvents Interest => StepEvents.FeedGiven;

    public override bool Concerns(Job job) => job.Machine.MaxFeed is not null;

    public override void CheckStep(in StepContext step)
    {
        if (step.Job.Machine.MaxFeed is not { } most || (step.Step.Sets & Slot.Feed) == 0)
            return;
        ref readonly var state = ref step.Step.After;
        var feed = state.FeedMode switch
        {
            FeedMode.PerMinute => state.Feed,
            FeedMode.PerTurn => state.Feed * state.Speed,
            _ => double.NaN,
        };
        if (!(feed > most * (1 + 1e-9)))
            return;
        var said = state.FeedMode == FeedMode.PerTurn
            ? $"{step.Say.Length(state.Feed)} per rev at {Say.Number(state.Speed)} rev/min comes to {step.Say.Feed(feed)}, which"
            : $"A feed of {step.Say.Feed(feed)}";
        step.Report(this, step.Step.Words.TokenOf('F'), $"{said} is more than this machine's greatest feed of {step.Say.Feed(most)}.");
    }
}
