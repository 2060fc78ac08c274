using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A tool change while the tool is down at the work.</summary>
public sealed class ToolChangeLow : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2020",
        Name = "tool-change-low",
        Severity = Severity.Error,
        Title = "The tool is changed away from the change position",
        Finds =
            "A tool change when Z in machine coordinates is known and lies below the profile's change position; or, where it is not known, when the last "
            + "move along Z was one in work coordinates. A change before any move, and one after G28, G30 or G53 with Z, is not reported.",
        AtTheMachine =
            "The changer swings while the tool stands between the clamps, or the control stops with an alarm; a machine that lifts by itself does so from "
            + "wherever the tool is.",
        Example = """
            G21 G90 G17 G54
            T1 M6
            G0 X10 Y10
            G43 H1 Z5
            T2 M6
            ~  ^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T1 M6
            G0 X10 Y10
            G43 H1 Z5
            G28 Z5
            T2 M6
            M30
            """,
        NotFound = "Machines that go to the change position by themselves with M6: say so with a comment that silences this.",
        Source = "Common practice; NISTIR 6556 §3.6.3 leaves the moves of a change to the machine.",
    };

    const double Tolerance = 0.01;

    public override StepEvents Interest => StepEvents.ToolChange;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var before = ref step.Step.Before;
        if (before.IsCalled || !before.HasSet(Slot.Z) || (before.Tool >= 0 && before.Tool == step.Step.After.Tool))
            return;
        foreach (ref readonly var fault in step.Step.Faults.Items)
            if (fault is { Kind: FaultKind.ValueNotAllowed, Letter: 'T' })
                return;
        var token = Math.Max(step.Step.Words.TokenOfCode('M', 60), 0);
        if (token == 0 && step.Step.Words.Has('T'))
            token = step.Step.Words.TokenOf('T');
        var (machine, work, change) = (before.MachinePosition.Z, before.Position.Z, step.Job.Machine.ToolChange.Z);
        if (double.IsNaN(machine))
        {
            if (!double.IsNaN(work))
                step.Report(this, token, $"The tool is changed at {(step.Say with { Coordinates = WorkCoordinates.Of(before) }).Level(work)} above the work, not at the change position: go home with G28 or G53 first.", Slot.Z, "The last move along Z is here.");
            return;
        }
        // Without offsets in the setup a place known in machine coordinates alone comes from G28 or G53; only a profile of
        // the user's own then says where the change position is.
        if (machine >= change - Tolerance || (double.IsNaN(work) && step.Job.Machine.Path is null))
            return;
        step.Report(this, token, $"The tool is changed at machine {step.Say.Unnamed.Level(machine)}, {step.Say.Length(change - machine)} below the change position.", Slot.Z, "The last move along Z is here.");
    }
}
