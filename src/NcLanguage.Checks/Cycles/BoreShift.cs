using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A fine boring cycle that moves the bar so far off the wall that its back meets the other side.</summary>
public sealed class BoreShift : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3070",
        Name = "bore-shift",
        Severity = Severity.Error,
        Title = "The bar is shifted into the wall behind it",
        Finds = "G76 whose shift, by Q or by I and J, is larger than the room between the bar's shank (setup: shankDiameter) and the wall of the bore.",
        AtTheMachine = "At the bottom, with the spindle stopped, the back of the bar is pressed against the wall: the bar bends, its edge chips, and the bore is marked when it comes out.",
        Setup = """
            { "tools": [ { "number": 6, "kind": "boring-bar", "diameter": 30, "shankDiameter": 24 } ] }
            """,
        Example = """
            G21 G90 G17 G54 G94
            T6 M6
            S800 M3
            G0 X20 Y30
            G43 H6 Z50 M8
            G98 G76 X20 Y30 R3 Z-20 Q4 F60
            ~                       ^^
            G80
            G0 Z50 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54 G94
            T6 M6
            S800 M3
            G0 X20 Y30
            G43 H6 Z50 M8
            G98 G76 X20 Y30 R3 Z-20 Q0.4 F60
            G80
            G0 Z50 M9
            M5
            M30
            """,
        NotFound = "Bars of which the setup gives no shankDiameter; back boring (G87), whose bar goes through a bore that the program does not tell; bars that do not stand in the middle of the spindle.",
        Source = "Room = (bore − shank) / 2 (plane geometry); what G76 does is common practice.",
    };

    public override StepEvents Interest => StepEvents.HolesDiffer;

    public override bool Concerns(Job job) => job.Setup.Tools.Any(tool => tool is { Kind: ToolKind.BoringBar, Diameter: not null, ShankDiameter: not null });

    public override void CheckStep(in StepContext step)
    {
        ref readonly var state = ref step.Step.After;
        if (state.Cycle != 76 || (step.Step.Sets & (Slot.Cycle | Slot.CyclePeck)) == 0
            || step.Job.Setup.FindTool(state.Tool) is not { Kind: ToolKind.BoringBar, Diameter: { } bore, ShankDiameter: { } shank } || !(shank < bore))
            return;
        var (shift, letter) = CycleRuns.BoreShiftOf(state);
        var room = (bore - shank) / 2;
        if (!(shift > room + Rounding))
            return;
        CycleRuns.Report(this, step, letter,
            $"G76 moves the bar {step.Say.Length(shift)} off the wall at the bottom, and its shank of {step.Say.Length(shank)} has only {step.Say.Length(room)} to the wall behind it, in a bore of {step.Say.Length(bore)}.");
    }

    /// <summary>Lengths that differ by less are one, mm.</summary>
    const double Rounding = 0.001;
}
