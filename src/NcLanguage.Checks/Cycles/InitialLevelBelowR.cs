using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A cycle starts with the tool below its R level.</summary>
public sealed class InitialLevelBelowR : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3023",
        Name = "initial-level-below-r",
        Severity = Severity.Warning,
        Title = "A cycle starts with the tool below its R level",
        Finds = "The first hole of a run whose initial level, where the tool stood before the cycle, is lower than R.",
        AtTheMachine = "The tool first goes up to R where it stands, and under G98 it then returns no higher than R: whoever counts on the initial level between the clamps does not get it.",
        Example = CycleExample.Program("""
            G0 Z1
            G98 G81 X12 Y20 Z-8 R5 F120
            ~                   ^^
            X40
            """),
        Instead = CycleExample.Program("""
            G0 Z20
            G98 G81 X12 Y20 Z-8 R5 F120
            X40
            """),
        NotFound = "Levels that are not known.",
        Source = "NISTIR 6556 §3.5.16 (the tool goes up to R first) and §3.5.20 (G98 returns to R where the old level is lower).",
    };

    public override StepEvents Interest => StepEvents.HolesDiffer;

    public override void CheckStep(in StepContext step)
    {
        // Levels that a forgotten G91 makes: incremental-left-on.
        if (IncrementalLeftOn.HasMoved(step.Step.After))
            return;
        ref readonly var hole = ref step.Step.Holes[0];
        if (hole.IsHop || !(hole.RLevel - hole.InitialLevel > 1e-6))
            return;
        var axis = CycleRuns.DepthAxis(step.Step.After.Plane);
        var byDistance = CycleRuns.IsRDistance(step.Step) ? $" Under G91 {Quote.Word(step.Block, step.Block.Tokens[step.Step.Words.TokenOf('R')])} is a distance from there, and a minus sign leads down." : "";
        var (initial, level) = (step.Say.Level(hole.InitialLevel, axis), step.Say.Level(hole.RLevel, axis));
        var then = step.Step.After.ReturnLevel == ReturnLevel.Initial ? "G98 returns no higher than R" : $"the tool first goes up to {level} where it stands";
        CycleRuns.Report(
            this, step, 'R', $"The cycle starts at {initial}, {step.Say.Length(hole.RLevel - hole.InitialLevel)} below its R level {level}: {then}.{byDistance}",
            axis switch { 'X' => Slot.X, 'Y' => Slot.Y, _ => Slot.Z }, "The tool was brought to this level here.");
    }
}
