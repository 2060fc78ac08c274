using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>The depth of a peck makes no sense.</summary>
public sealed class PeckStep : Rule
{
    /// <summary>A peck deeper than this many diameters is none.</summary>
    const double DeepInDiameters = 3;

    const double LeastPeck = 0.05;

    const int MostPecks = 100;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3041",
        Name = "peck-step",
        Severity = Severity.Warning,
        Title = "The depth of a peck makes no sense",
        Finds = "Q in G73 or G83 deeper than the hole from R to the bottom, deeper than three times the diameter of the drill, less than 0.05 mm, or so small that a hole takes more than 100 pecks.",
        AtTheMachine = "With too deep a peck the chips jam as if there were none; with too small a one the drill rubs and the hole takes for ever. Often the number is in another unit.",
        Example = CycleExample.Program("""
            G98 G83 X12 Y20 Z-30 R2 Q50 F120
            ~                       ^^^
            X40
            """),
        Instead = CycleExample.Program("""
            G98 G83 X12 Y20 Z-30 R2 Q5 F120
            X40
            """),
        Setup = CycleExample.Drill,
        NotFound = "Pecks that are merely too deep or too small for the material.",
        Source = "Common practice: pecks of half a diameter to one, at most three; strokes = (R − Z) / Q, rounded up. The limits are our own.",
    };

    public override StepEvents Interest => StepEvents.HolesDiffer;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var state = ref step.Step.After;
        if (state.Cycle is not (73 or 83) || (step.Step.Sets & (Slot.Cycle | Slot.CyclePeck | Slot.CycleBottom | Slot.CycleR)) == 0)
            return;
        // A Q of the block's own that is refused: value-not-allowed.
        if (step.Step.Words.Has('Q') && (step.Step.Sets & Slot.CyclePeck) == 0)
            return;
        var depth = state.RLevel - state.Bottom;
        if (depth > 0 && What(step, state.Peck, depth) is { } what)
            CycleRuns.Report(this, step, 'Q', $"A peck of {step.Say.Length(state.Peck)} {what}.", Slot.CyclePeck, "The peck was set here.");
    }

    static string? What(in StepContext step, double peck, double depth)
    {
        const double Rounding = 1e-6;
        if (peck > depth + Rounding)
            return $"is deeper than the whole way of {step.Say.Length(depth)} from R to the bottom: the hole is drilled in one stroke";
        if (step.Job.Setup.FindTool(step.Step.After.Tool) is { Kind: ToolKind.Drill, Diameter: { } diameter } && peck > DeepInDiameters * diameter + Rounding)
            return $"is {Say.Number(peck / diameter, 1)} times the drill's {step.Say.Length(diameter)}: the chips jam";
        var strokes = Math.Ceiling(depth / peck - Rounding);
        if (strokes > MostPecks)
            return $"takes {Say.Number(strokes)} strokes for each hole";
        return peck < LeastPeck - Rounding ? "is so small that the drill rubs" : null;
    }
}
