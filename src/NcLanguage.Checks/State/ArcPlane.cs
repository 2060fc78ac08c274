using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>An arc whose words were written for another plane.</summary>
public sealed class ArcPlane : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2026",
        Name = "arc-plane",
        Severity = Severity.Warning,
        Title = "The arc's words belong to another plane",
        Finds =
            "An arc with a centre word across the plane in force and, apart from it, words for at most one axis of the plane: K under G17, J under G18, I "
            + "under G19. Under G18 and G19 an end word across the plane counts too. An error where the arc does not exist in the plane in force. A block that "
            + "sets the plane itself is not reported. Once for each setting of the plane, with the number of what else may come of it.",
        AtTheMachine = "The arc runs in the plane in force: under a G18 that was left on it goes down into the work by its radius. Or the control stops with an alarm.",
        Example = """
            G21 G90 G17 G54
            M3 S1500
            G0 X0 Y0 Z5
            G18 G2 X10 Z5 I5 K0 F100
            G0 Z2
            G2 X0 Y0 I-5 J0
            ~            ^^
            G17 G0 Z50
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            M3 S1500
            G0 X0 Y0 Z5
            G18 G2 X10 Z5 I5 K0 F100
            G0 Z2
            G17 G2 X0 Y0 I-5 J0
            G0 Z50
            M5
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Where the words fit one other plane only: adds its code to the block; none while radius compensation is on, which allows no other plane than G17, nor where rotation or scaling make no arc of it in that plane.",
        NotFound =
            "Arcs whose words fit both planes (X and I alone). An arc with words for all three axes is taken as a helix. Controls that take K under G17 as the lead of a helix.",
        Source = "NISTIR 6556 §3.5.3.2 (I and J in XY, I and K in XZ, J and K in YZ) and §3.5.6; common practice.",
    };

    public override StepEvents Interest => StepEvents.OddArc;

    public override void CheckStep(in StepContext step)
    {
        var token = ArcWords.OfOtherPlane(step);
        if (token < 0)
            return;
        var plane = step.Step.After.Plane;
        var isRefused = IsRefused(step.Step);
        var word = Quote.Word(step.Block, step.Block.Tokens[token]);
        var planes = ArcWords.PlanesThatFit(step);
        var what = isRefused ? "there is no such arc in its plane, and the control stops with an alarm" : $"the arc runs in the {Name(plane)} plane";
        step.Report(
            this, token, $"{word} does not fit {ArcWords.Code(plane)}, which is in force; the words of this arc fit {planes}: {what}.",
            Slot.Plane, "The plane is set here.", text: planes.Contains(' ', StringComparison.Ordinal) ? "" : planes, severity: isRefused ? Severity.Error : null);
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        // Radius compensation works in the XY plane, and has to be ended first.
        var isForbidden = finding.Text != ArcWords.Code(WorkPlane.XY) && analysis.Main.StepAt(finding.Line).After.IsCompensationOn;
        return finding.Text.Length == 0 || isForbidden ? [] : ArcWords.FixOfPlane(finding.Text, finding, analysis);
    }

    static bool IsRefused(Step step)
    {
        foreach (ref readonly var fault in step.Faults.Items)
            if (fault.Kind is FaultKind.WordMissing or FaultKind.ArcRadiusMismatch or FaultKind.ArcImpossible)
                return true;
        return false;
    }

    static string Name(WorkPlane plane) => plane switch { WorkPlane.ZX => "XZ", WorkPlane.YZ => "YZ", _ => "XY" };
}
