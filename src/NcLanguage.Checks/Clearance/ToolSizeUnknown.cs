using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A tool whose diameter is not known travels among obstacles.</summary>
public sealed class ToolSizeUnknown : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC4013",
        Name = "tool-size-unknown",
        Severity = Severity.Note,
        Title = "The tool's diameter is not known",
        Finds = "The first move of a tool for which the setup gives no diameter, where the setup lists obstacles or supports; without a tool change the first cut.",
        AtTheMachine = "The tool is as thick as it is: it can hit what its axis passes. Only a contact of the axis itself is found.",
        Setup = """
            { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] },
              "obstacles": [ { "name": "clamp A", "min": [40, -20, 0], "max": [60, 12, 25] } ],
              "tools": [ { "number": 5, "kind": "end-mill", "fluteLength": 60, "length": 110 },
                         { "number": 6, "kind": "end-mill", "diameter": 10, "fluteLength": 60, "length": 110 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T5 M6
            S3000 M3
            G0 X-20 Y30
            ~^^^^^^^^^^
            G43 H5 Z50 M8
            Z-2
            G1 X80 F300
            G0 Z50 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T6 M6
            S3000 M3
            G0 X-20 Y30
            G43 H6 Z50 M8
            Z-2
            G1 X80 F300
            G0 Z50 M9
            M5
            M30
            """,
        NotFound = "Whatever the tool's thickness would touch: clearance-small is silent for this tool, and no distance is told.",
        Source = "Common practice.",
    };

    public override StepEvents Interest => StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        if ((after.Happened & Happened.MovedWithoutSize) == 0
            || ((step.Step.Before.Happened & Happened.MovedWithoutSize) != 0 && (step.Step.Events & StepEvents.ToolChange) == 0))
            return;
        step.ReportBlock(this, $"{Why(step.Job, after.Tool)}: clearance is checked for its axis only.", Slot.Tool, "The tool was changed in here.", value: after.Tool);
    }

    static string Why(Job job, int tool) =>
        tool < 0 ? "Which tool is in the spindle is not known, nor its diameter"
        : job.Setup.FindTool(tool) is null ? $"T{tool} is not in the setup's list, so that its diameter is not known"
        : $"T{tool} has no diameter in the setup";
}
