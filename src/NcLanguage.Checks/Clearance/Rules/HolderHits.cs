using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A move on which the tool's holder runs into an obstacle.</summary>
public sealed class HolderHits : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC4009",
        Name = "holder-hits",
        Severity = Severity.Error,
        Title = "The tool's holder runs into an obstacle",
        Finds = "A rapid or a cut on which the holder goes deepest into an obstacle of the setup, deeper than the cutting part and the shank. "
            + "Where it does at more holes of a run it is told at the first, with their number; what goes into another obstacle, or much deeper, is told by itself.",
        AtTheMachine = "The tool passes beside the clamp, but its holder, which is thicker, hits it.",
        Setup = """
            { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] },
              "obstacles": [ { "name": "clamp A", "min": [40, -20, 0], "max": [60, 12, 25] } ],
              "tools": [ { "number": 5, "kind": "end-mill", "diameter": 10, "fluteLength": 20, "length": 60, "holderDiameter": 40, "holderGauge": 35 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T5 M6
            S3000 M3
            G0 X-10 Y30
            G43 H5 Z60 M8
            Z-2
            G1 X80 F300
            ~^^^^^^^^^^
            G0 Z60 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T5 M6
            S3000 M3
            G0 X-10 Y40
            G43 H5 Z60 M8
            Z-2
            G1 X80 F300
            G0 Z60 M9
            M5
            M30
            """,
        NotFound = "Holders of tools for which the setup gives no holderDiameter, holderGauge or length. The traverse between two holes is hop-hits-obstacle, "
            + "with the holder taken into account.",
        Source = "Common practice.",
    };

    public override StepEvents Interest => PartScan.Near;

    public override bool Concerns(Job job) => !job.Obstacles.IsEmpty;

    public override void CheckStep(in StepContext step)
    {
        if (Contact.FirstOf(ContactKind.Holder, step) is not { } contact)
            return;
        var tool = step.Job.Setup.FindTool(step.Step.After.Tool);
        var message = $"{ContactWords.Move(step.Step.Moves[contact.Move], step)} brings the holder of tool {step.Step.After.Tool} into {contact.Obstacle.Name} "
            + $"when the tip is at {ContactWords.At(contact.Tip, step)}, {ContactWords.Depth(contact, step)}: {Start(tool, step.Say)}{ContactWords.Top(contact, step)}.";
        var isOfHole = step.Step.Moves[contact.Move].Role is MoveRole.Approach or MoveRole.InHole;
        step.ReportBlock(this, message, step.LevelOf(contact.Move, contact.Tip.Z), "This block sets the level.", value: 1, text: isOfHole ? HoleFindings.MarkOf(contact.Obstacle, step.Job.Obstacles, -contact.Distance) : "");
    }

    static string Start(Tool? tool, LengthText say) => tool is { Length: { } length, HolderGauge: { } gauge }
        ? $"the holder begins {say.Length(length - gauge)} above the tip, and "
        : "";
}
