using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>An arc that does not exist.</summary>
public sealed class ArcImpossible : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2025",
        Name = "arc-impossible",
        Severity = Severity.Error,
        Title = "There is no such arc",
        Finds =
            "An arc by its radius (R) that is shorter than half the way to the end point, or that ends where it starts; and an arc whose centre is its "
            + "start.",
        AtTheMachine = "The control stops with an alarm.",
        Example = """
            G21 G90 G17 G54
            M3 S1500
            G0 X0 Y0 Z5
            G1 Z-1 F100
            G2 X10 Y0 R4
            ~^
            G0 Z50
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            M3 S1500
            G0 X0 Y0 Z5
            G1 Z-1 F100
            G2 X10 Y0 R5
            G0 Z50
            M5
            M30
            """,
        NotFound = "Radii shorter by up to 0.002 mm, which are read as half circles.",
        Source = "NISTIR 6556 §3.5.3.1 and §3.5.3.2.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
            if (fault.Kind == FaultKind.ArcImpossible && ArcWords.OfOtherPlane(step) < 0)
                step.Report(this, fault.Token, Message(fault, step.Say));
    }

    static string Message(in Fault fault, LengthText say)
    {
        if (fault.Letter != 'R')
            return "The arc's centre is where it starts, so that it has no radius: the control stops with an alarm.";
        return fault.A == 0
            ? "The arc ends where it starts, and R does not say which circle is meant: a full circle is written with I and J; the control stops with an alarm."
            : $"The end lies {say.Length(fault.A)} away and R is {say.Length(Math.Abs(fault.B))}, less than half of it: no such arc exists, and the control stops with an alarm.";
    }
}
