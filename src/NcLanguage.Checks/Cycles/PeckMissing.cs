using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A deep hole is drilled in one stroke.</summary>
public sealed class PeckMissing : Rule
{
    /// <summary>Depth in diameters from which a hole wants pecking.</summary>
    const double DeepInDiameters = 4;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3040",
        Name = "peck-missing",
        Severity = Severity.Warning,
        Title = "A deep hole is drilled in one stroke",
        Finds = "G81 or G82 with a drill whose hole, within the stock (without stock: from the clearance below R), is deeper than four times its diameter; and a drill that a feed without a cycle takes as deep into full material of the stock at one stroke.",
        AtTheMachine = "The chips jam in the flutes: the drill runs hot, drifts and breaks in the hole.",
        Example = CycleExample.Program("""
            G98 G81 X12 Y20 Z-30 R2 F120
            ~   ^^^
            X40
            """),
        Instead = CycleExample.Program("""
            G98 G83 X12 Y20 Z-30 R2 Q5 F120
            X40
            """),
        Setup = CycleExample.Drill,
        FixSafety = FixSafety.Choice,
        Fix = "Writes G83 with a peck of one diameter in place of the cycle. How deep a peck may be depends on the material and the coolant.",
        NotFound = "Tools the setup does not call a drill or gives no diameter for; holes that a smaller drill has opened before; feeds without a cycle where the setup gives no stock. Drills of which the setup says \"throughCoolant\": true, which need no pecks; of others that have it the setup has to say so.",
        Source = "A hole is deep from 3 diameters on (drill reference sheet); pecking from 3 to 4 diameters on is the usual handbook rule (from memory); that drills with coolant through them need none is common practice.",
    };

    public override StepEvents Interest => StepEvents.HolesDiffer;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var state = ref step.Step.After;
        if (state.Cycle is not (81 or 82) || (step.Step.Sets & (Slot.Cycle | Slot.CycleBottom | Slot.CycleR)) == 0)
            return;
        if (step.Job.Setup.FindTool(state.Tool) is not { Kind: ToolKind.Drill, Diameter: { } diameter, ThroughCoolant: not true } || !(diameter > 0))
            return;
        var depth = DepthOf(step, step.Step.Holes[0]);
        if (!(depth > DeepInDiameters * diameter + 1e-6))
            return;
        CycleRuns.Report(
            this, step, '\0', $"The hole is {step.Say.Length(depth)} deep, {Say.Number(depth / diameter, 1)} times the drill's {step.Say.Length(diameter)}, and G{state.Cycle} drills it in one stroke: the chips jam.",
            value: diameter);
    }

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        foreach (var (line, tool, depth, others) in DeepFeed.Of(file, DeepInDiameters))
        {
            var say = file.SayAt(line, null);
            file.ReportBlock(this, line, $"This feed takes the drill {say.Length(depth)} deep into full material at once, {Say.Number(depth / tool.Diameter!.Value, 1)} times its {say.Length(tool.Diameter.Value)}: the chips jam."
                + (others == 0 ? "" : $" The same goes for {Say.Count(others, "more hole")}."));
        }
    }

    /// <summary>How deep the hole goes into material, mm: over the stock no farther than through it.</summary>
    static double DepthOf(in StepContext step, in Hole hole)
    {
        if (step.Job.Setup.Stock is not { } stock || step.Step.After.Plane != WorkPlane.XY)
            return hole.RLevel - step.Job.Setup.Clearance - hole.Bottom;
        var toFrame = step.Step.ToFrame;
        var bottom = hole.Bottom + toFrame.Z;
        if (Footprint.Distance(stock, hole.X + toFrame.X, hole.Y + toFrame.Y) <= 0)
            bottom = Math.Max(bottom, stock.Min.Z);
        return Math.Min(stock.Max.Z, hole.RLevel + toFrame.Z) - bottom;
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        var block = analysis.Main.BlockAt(finding.Line);
        var cycle = WordEdits.IndexOfCycle(block);
        var units = analysis.Main.StepAt(finding.Line).After.Units;
        // Without the cycle's code in the block another cycle would need its levels anew; a feed with one beside it has none.
        if (cycle < 0 || double.IsNaN(finding.Value) || units == LengthUnit.Unknown)
            yield break;
        var peck = "Q" + WordEdits.Length(finding.Value, units, analysis.Machine.Readings);
        var given = block.IndexOf('Q');
        yield return new Fix(
            $"Drill with pecks (G83 {peck})", FixSafety.Choice,
            [WordEdits.Replace(finding.Line, block, cycle, "G83"), given < 0 ? CycleWords.AfterLevels(analysis.Main, finding.Line, peck) : WordEdits.Replace(finding.Line, block, given, peck)]);
    }
}
