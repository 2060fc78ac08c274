using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A tool that is used without its length offset.</summary>
public sealed class LengthOffsetMissing : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2007",
        Name = "length-offset-missing",
        Severity = Severity.Error,
        Title = "A tool is used without its length offset",
        Finds =
            "After a tool change the first cut, or the first move along Z in work coordinates, without G43 (or G44) H since the change, or with H0, which is no length. Reported once for "
            + "each tool.",
        AtTheMachine =
            "Z counts with the length of the tool before, or with none: the tool stops too high, or goes down into the work, the clamp or the table at "
            + "rapid.",
        Example = """
            G21 G90 G17 G54
            T1 M6
            M3 S1500
            G0 X10 Y10
            G0 Z5
            ~^^^^
            G1 Z-2 F100
            G0 Z50
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T1 M6
            M3 S1500
            G0 X10 Y10
            G0 Z5 G43 H1
            G1 Z-2 F100
            G0 Z50
            M5
            M30
            """,
        FixSafety = FixSafety.Safe,
        Fix =
            "Adds G43 and the tool's H to the block that first uses the tool, or writes the tool's H in place of H0. A choice where the setup does not list the tool: by custom H has the tool's "
            + "number, but shops number it differently too.",
        NotFound = "Programs without a tool change; shops that keep each tool's length in a work offset of its own.",
        Source = "NISTIR 6556 §3.5.11; common practice.",
    };

    public override StepEvents Interest => StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        if (!step.HasHappened(Happened.UsedWithoutOffset) || after.IsCalled)
            return;
        var tool = after.Tool > 0 ? $"Tool {after.Tool}" : "This tool";
        var counts = after.LengthOffset != LengthOffsetMode.Off && after.H > 0 ? $"Z still counts with H{after.H}" : "Z counts without any tool length";
        step.ReportBlock(this, $"{tool} is used without its length offset (G43 H): {counts}, and the tip is not where the program says.", Slot.Tool, "The tool is changed here.");
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        var step = analysis.Main.StepAt(finding.Line);
        if (step.After.Tool <= 0)
            return [];
        var number = $"H{LengthOffsets.Of(step.After.Tool, analysis.Setup)}";
        var isListed = analysis.Setup.FindTool(step.After.Tool)?.LengthOffset is not null;
        var (safety, custom) = isListed ? (FixSafety.Safe, "") : (FixSafety.Choice, " (by custom H has the tool's number)");
        if (step.Words.HasCode('G', 430) && step.Words.Has('H') && step.Words['H'] == 0)
        {
            var none = analysis.Main.BlockAt(finding.Line).Tokens[step.Words.TokenOf('H')];
            return [new Fix($"Write {number}{custom}", safety, [new Edit(finding.Line, none.Start, none.End, number)])];
        }
        if (step.Words.Find(ModalGroup.LengthOffset) is not null || step.Words.Has('H'))
            return [];
        return [new Fix($"Add G43 {number}{custom}", safety, [Inserts.Behind(analysis, finding.Line, $"G43 {number}")])];
    }
}
