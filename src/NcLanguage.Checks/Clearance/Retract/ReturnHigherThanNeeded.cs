using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Rules;

/// <summary>A traverse between two holes runs at the initial level though it would clear at R.</summary>
public sealed class ReturnHigherThanNeeded : Rule
{
    /// <summary>Less than this is not worth a note, seconds.</summary>
    const double LeastSaving = 0.1;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3060",
        Name = "return-higher-than-needed",
        Severity = Severity.Note,
        Title = "The tool returns higher between two holes than it needs to",
        Finds = "A traverse from one hole of a cycle to the next at the initial level where the R level clears all that the setup lists, the stock's top included, "
            + "and that costs 0.1 s or more. The first of a run of holes is told, with what all of them cost together.",
        AtTheMachine = "Nothing goes wrong: the tool goes up and down for nothing, and the program takes longer.",
        Example = """
            G21 G90 G17 G54
            T3 M6
            G43 H3
            S1800 M3
            G0 X12 Y20 Z40
            M8
            G98 G81 X12 Y20 Z-8 R2 F180
            X12 Y40
            ~^^^^^^
            X60
            G80 G0 Z40
            M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T3 M6
            G43 H3
            S1800 M3
            G0 X12 Y20 Z40
            M8
            G99 G81 X12 Y20 Z-8 R2 F180
            G98 X12 Y40
            X60
            G80 G0 Z40
            M9
            M5
            M30
            """,
        Setup = HopExample.Setup,
        FixSafety = FixSafety.Choice,
        Fix = "Writes G99 where R clears, for the whole run of holes, and G98 where the initial level is still needed. To be looked at first: what the setup does not list is not seen.",
        NotFound = "Tools whose diameter, and setups whose obstacles, are not known: then no level is called clear. Bosses and walls of the part, which the setup does not list.",
        Source = "NISTIR 6556 §3.5.20 (return level); times by the machine's rapid rates and acceleration.",
    };

    public override StepEvents Interest => PartScan.HopsAboveR;

    public override void CheckStep(in StepContext step)
    {
        if (step.Step.After.Plane != WorkPlane.XY || !HopClearance.CanJudge(step.Job))
            return;
        var holes = step.Step.Holes;
        var saved = 0.0;
        var (hop, low) = (-1, double.NaN);
        for (var i = 0; i < holes.Count; i++)
        {
            if (!holes[i].IsHop)
                continue;
            var lower = Math.Max(holes[i].RLevel, i == 0 ? step.Step.Before.RLevel : holes[i - 1].RLevel);
            if (!(holes[i].ArriveAt > lower) || TraverseTo(step, i) is not (>= 0 and var move))
                continue;
            var (from, to) = (step.Step.Moves[move].From + step.Step.ToFrame, step.Step.Moves[move].To + step.Step.ToFrame);
            if (!HopClearance.CanGoAt(step.Job, from, to, lower + step.Step.ToFrame.Z, holes[i].Tool))
            {
                // A block with repeats counts as one: where its own word rules these traverses, one that needs the level needs it for all.
                if (i > 0 || step.Job.Readings.ReturnLevel == ReturnLevelReading.BeforeMove)
                    return;
                continue;
            }
            saved += ReturnSaving.Of(step, i, lower);
            (hop, low) = (move, lower);
        }
        if (hop < 0 || !(saved >= LeastSaving))
            return;
        var level = step.Step.Moves[hop].From;
        step.ReportBlock(
            this, $"The traverse from {step.Say.Place(level.X, level.Y)} at {step.Say.Level(level.Z)} would clear at {step.Say.Level(low)} too, as far as the setup shows; the way up costs {Say.Seconds(saved)}.",
            value: saved, text: HoleFindings.SecondsMark);
    }

    static int TraverseTo(in StepContext step, int hole)
    {
        for (var i = step.Step.Holes[hole].FirstMove; i < step.Step.Moves.Count; i++)
        {
            if (step.Step.Moves[i].Role == MoveRole.Hop)
                return i;
            if (step.Step.Moves[i].Role != MoveRole.Lift)
                break;
        }
        return -1;
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis) => HopFixes.Fast(finding, analysis);
}
