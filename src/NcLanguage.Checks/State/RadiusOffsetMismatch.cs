using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A radius offset that belongs to another tool.</summary>
public sealed class RadiusOffsetMismatch : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2009",
        Name = "radius-offset-mismatch",
        Severity = Severity.Warning,
        Title = "The radius offset is another tool's",
        Finds = "G41 or G42 with a D that is not the one of the tool in the spindle: the radiusOffset of the setup's tool list, else the tool's number. D0 is none. Where the list has the tool in the spindle, only a D that is another tool's of the list, or a tool's number.",
        AtTheMachine = "The tool keeps another tool's radius off the path: the part comes out too large or too small by the difference on every side.",
        Setup = """
            { "tools": [ { "number": 2, "diameter": 10, "length": 90 }, { "number": 6, "diameter": 16, "length": 110, "radiusOffset": 36 } ] }
            """,
        Example = """
            G21 G90 G17 G54 G40 G49 G80
            T6 M6
            M3 S1500
            G0 X-30 Y-10
            G43 H6 Z5
            G1 Z-2 F200
            G41 D2 X0 Y0
            ~   ^^
            Y60
            G40 X-30
            G0 Z50
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54 G40 G49 G80
            T6 M6
            M3 S1500
            G0 X-30 Y-10
            G43 H6 Z5
            G1 Z-2 F200
            G41 D36 X0 Y0
            Y60
            G40 X-30
            G0 Z50
            M5
            M30
            """,
        FixSafety = FixSafety.Safe,
        Fix =
            "Writes the D of the tool in the spindle. Where the setup lists its radiusOffset, it can be trusted; where only the tool's number speaks for it, the wrong "
            + "word may as well be the T. Where the H before it is the same other tool's, the T is: as choices, writes that, or the D.",
        NotFound = "A D that no tool of the setup's list has, where that has the tool in the spindle: it may well be a second one of this tool, for roughing with an allowance. Its radius is known where G10 writes it, else path-not-known tells. Shops that number D differently from T say so with radiusOffset in the setup's tool list.",
        Source = "NISTIR 6556 §3.5.10; D equal to T, and a D of its own for an allowance, are common practice.",
    };

    public override StepEvents Interest => StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        if ((step.Step.Sets & Slot.Compensation) == 0 || after.Tool <= 0 || after.D <= 0 || !step.IsRun)
            return;
        var tool = step.Job.Setup.FindTool(after.Tool);
        var listed = tool?.RadiusOffset;
        var expected = listed ?? after.Tool;
        if (after.D == expected || (tool is not null && step.Job.Setup.FindRadiusOffset(after.D) is null && step.Job.Setup.FindTool(after.D) is null))
            return;
        var message = listed is not null
            ? $"D{after.D} is applied to tool {after.Tool}, whose radius stands in D{expected}: every side is off by the difference of the two radii."
            : $"D{after.D} is applied to tool {after.Tool}, whose radius by custom stands in D{expected}: if it does here, every side is off by the difference of the two radii.";
        step.Report(this, step.Step.Words.TokenOf('D'), message, Slot.Tool, $"Tool {after.Tool} is changed in here.", expected);
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        var tool = analysis.Main.StepAt(finding.Line).After.Tool;
        var isListed = analysis.Setup.FindTool(tool)?.RadiusOffset is not null;
        var word = "D" + Say.Number(finding.Value);
        if (ToolMeant.At(finding.Line, analysis) is { } meant)
            return [.. ToolMeant.Fixes(meant, finding.Line, analysis), new Fix($"Write {word}", FixSafety.Choice, [new Edit(finding.Line, finding.StartColumn, finding.EndColumn, word)])];
        return [new Fix($"Write {word}", isListed ? FixSafety.Safe : FixSafety.Choice, [new Edit(finding.Line, finding.StartColumn, finding.EndColumn, word)])];
    }
}
