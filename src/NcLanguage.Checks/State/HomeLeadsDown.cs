using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A way to the reference point that first leads down, because its words count as coordinates.</summary>
public sealed class HomeLeadsDown : Rule
{
    /// <summary>A rapid down by less, mm, is rounding.</summary>
    const double Rounding = 0.02;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2033",
        Name = "home-leads-down",
        Severity = Severity.Warning,
        Title = "The way home leads down first",
        Finds = "G28 or G30 with a Z under G90 whose place on the way lies below where the tool stands, or, while it is not known how high that is, no higher than the top of the stock and below the machine's home.",
        AtTheMachine = "The tool goes down at full rapid, onto the work with Z0, before it turns round and goes home.",
        Example = """
            G21 G90 G17 G54
            T3 M6
            G43 H3
            S1800 M3
            G0 X12 Y20 Z40
            G1 Z2 F180 M8
            G0 Z40 M9
            G28 Z0
            ~   ^^
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T3 M6
            G43 H3
            S1800 M3
            G0 X12 Y20 Z40
            G1 Z2 F180 M8
            G0 Z40 M9
            G91 G28 Z0
            G90 M5
            M30
            """,
        NotFound = "From a height that is not known, a way to a place above the work, or any where the setup gives no stock or no work offset: with lengths that reach from home to the work, Z0 is home while G49 is on. One that goes sideways low at the work or hits a clamp: home-through-work, rapid-hits-obstacle.",
        Source = "NISTIR 6556 §3.5.8: the words of G28 and G30 are a place that is gone to first. That a way home leads up is common practice.",
    };

    public override StepEvents Interest => StepEvents.Codes;

    public override void CheckStep(in StepContext step)
    {
        var words = step.Step.Words;
        if (step.Step.After.Distance != DistanceMode.Absolute || !words.Has('Z') || !(words.HasCode('G', 280) || words.HasCode('G', 300)))
            return;
        foreach (ref readonly var move in step.Step.Moves.Items)
        {
            if (move is not { Kind: MoveKind.Rapid, Role: MoveRole.Machine })
                continue;
            if (double.IsNaN(move.From.Z) && IsAtTheWork(move.To.Z, step))
                step.Report(this, words.TokenOf('Z'), $"G90 is in force: this way home leads to {step.Say.Level(move.To.Z)} first, and how high the tool stands is not known. Is G91 missing, with which Z0 leads straight home?",
                    Slot.Distance, "This block sets G90.");
            else if (move.To.Z < move.From.Z - Rounding && LowWayHome.FirstOf(step) is null && Contact.FirstOf(ContactKind.Rapid, step) is null)
                step.Report(this, words.TokenOf('Z'), $"G90 is in force: this way home leads down from {step.Say.Level(move.From.Z)} to {step.Say.Level(move.To.Z)} first. Is G91 missing, with which Z0 leads straight home?",
                    Slot.Distance, "This block sets G90.");
            return;
        }
    }

    /// <summary>Whether a level in work coordinates is known to be no higher than the stock's top, and below home.</summary>
    static bool IsAtTheWork(double level, in StepContext step) =>
        step.Job.Setup.Stock is { } stock && level + step.Step.ToFrame.Z <= stock.Max.Z + Rounding && level + step.Step.ToMachine.Z < step.Job.Machine.Home.Z - Rounding;
}
