using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A lone Z while a cycle is on, meant as a lift: it drills again.</summary>
public sealed class DepthChangedInCycle : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3024",
        Name = "depth-changed-in-cycle",
        Severity = Severity.Error,
        Title = "A lone Z in a cycle is a new depth and drills again",
        Finds = "A block that gives only a Z while a cycle is on, higher than the depth so far: meant as a lift.",
        AtTheMachine = "The tool does not lift: the control takes Z as the depth of one more hole at the same place. With a Z above R it stops, or feeds upwards; the moves that "
            + "follow run at a level nobody meant.",
        Example = CycleExample.Program("""
            G98 G81 X12 Y20 Z-8 R2 F120
            X40
            Z60
            ~^^
            """),
        Instead = CycleExample.Program("""
            G98 G81 X12 Y20 Z-8 R2 F120
            X40
            G80 G0 Z60
            """),
        FixSafety = FixSafety.Safe,
        Fix = "Writes G80 G0 before the Z. Where further holes of the cycle follow without its code it is a choice to be looked at: they need the cycle again.",
        NotFound = "A lone Z that is deeper than before, which drills the same hole deeper.",
        Source = "NISTIR 6556 §3.5.16: with a cycle on, a block with an axis word drills.",
    };

    public override StepEvents Interest => StepEvents.HolesDiffer;

    public override void CheckStep(in StepContext step)
    {
        if (!CycleRuns.IsLoneRise(step))
            return;
        var axis = CycleRuns.DepthAxis(step.Step.After.Plane);
        var word = Quote.Word(step.Block, step.Block.Tokens[step.Step.Words.TokenOf(axis)]);
        step.ReportBlock(
            this, $"{word} does not lift the tool: G{step.Step.After.Cycle} is on, so {step.Say.Level(step.Step.After.Bottom, axis)} becomes its depth and it drills here again.",
            Slot.Cycle, $"G{step.Step.After.Cycle} was started here.", text: axis.ToString());
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        var step = analysis.Main.StepAt(finding.Line);
        var block = analysis.Main.BlockAt(finding.Line);
        var edit = step.Words.Find(ModalGroup.Motion) is { } motion
            ? WordEdits.Before(finding.Line, block, motion.Token, "G80")
            : WordEdits.Before(finding.Line, block, block.IndexOf(finding.Text[0]), "G80 G0");
        yield return new Fix(
            "End the cycle and lift (G80 G0)", CycleRuns.GoesOnAfter(analysis.Main, finding.Line) ? FixSafety.Choice : FixSafety.Safe, [edit]);
    }
}
