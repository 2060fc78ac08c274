using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>A way to the reference point that goes sideways down at the work.</summary>
public sealed class HomeThroughWork : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2027",
        Name = "home-through-work",
        Severity = Severity.Error,
        Title = "The way home goes sideways down at the work",
        Finds =
            "G28, G30 or G53 with X or Y that starts, or whose point on the way lies, lower than the clearance above the setup's clamp height; where obstacles are "
            + "listed and it is not known where the way leads, lower than the clearance above the highest that may stand in it; and from inside the stock.",
        AtTheMachine = "All axes start together at full rapid: the tool is dragged through the part or into a clamp before Z has lifted it clear.",
        Setup = HopExample.ClampHeightSetup,
        Example = """
            G21 G90 G17 G54
            T3 M6
            G43 H3
            S1800 M3
            G0 X12 Y20 Z40
            G1 Z-8 F180 M8
            G0 Z2
            G91 G28 X0 Y0 Z0 M9
            ~^^^^^^^^^^^^^^^^^^
            G90 M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T3 M6
            G43 H3
            S1800 M3
            G0 X12 Y20 Z40
            G1 Z-8 F180 M8
            G0 Z2
            G91 G28 Z0 M9
            G28 X0 Y0
            G90 M5
            M30
            """,
        NotFound =
            "Levels that are not known, and setups that give neither clamp height, obstacles nor stock. Where the way is known and obstacles are listed, it is held "
            + "against each of them: rapid-hits-obstacle, rapid-into-stock. A way that keeps clear of every clamp sideways is reported where only the clamp height is known.",
        Source = "NISTIR 6556 §3.5.8 and §3.5.12 (the axes move together); Z first on the way home is common practice.",
    };

    public override StepEvents Interest => StepEvents.Codes;

    public override void CheckStep(in StepContext step)
    {
        if (LowWayHome.FirstOf(step) is not { } way || Contact.FirstOf(ContactKind.Rapid, step) is not null)
            return;
        step.ReportBlock(this, Message(way, step), step.LevelOf(way.Move, way.Level), "This block sets the level.");
    }

    /// <summary>"G28 moves in X and Y at Z2, 28 mm below the clamps' top at Z30: lift Z alone first; it clears from Z32 up."</summary>
    static string Message(in LowWayHome way, in StepContext step)
    {
        var words = step.Step.Words;
        var code = words.HasCode('G', 280) ? "G28" : words.HasCode('G', 300) ? "G30" : "G53";
        var axes = way is { AlongX: true, AlongY: true } ? "X and Y" : way.AlongX ? "X" : "Y";
        var distance = way.Level - way.Top;
        var where = distance > Sweep.ClearanceTolerance ? $"only {step.Say.Length(distance)} above"
            : distance < -Sweep.ClearanceTolerance ? $"{step.Say.Length(-distance)} below"
            : "level with";
        return $"{code} moves in {axes} at {step.Say.Level(way.Level)}, {where} {way.Above} at {step.Say.Level(way.Top)}: lift Z alone first; it clears from {step.Say.Level(step.Say.Upward(way.Clears))} up.";
    }
}
