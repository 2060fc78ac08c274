using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Rules;

/// <summary>A move that leaves the machine's travel.</summary>
public sealed class TravelExceeded : Rule
{
    const double Rounding = 1e-6;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC4011",
        Name = "travel-exceeded",
        Severity = Severity.Error,
        Title = "A move leaves the machine's travel",
        Finds = "A move that takes an axis, whose machine coordinate is known, out of the travel that the machine profile gives.",
        AtTheMachine = "The control stops with an alarm, or the axis runs onto its limit switch in the middle of the cut.",
        Machine = """{ "name": "bench mill", "travel": { "x": [-400, 0], "y": [-250, 0], "z": [-450, 0] } }""",
        Setup = """
            { "workOffsets": { "G54": [-60, -210, -400] },
              "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118, "fluteLength": 60, "length": 140 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-10 F150
            X75
            ~^^
            G80
            G0 Z60 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-10 F150
            X57
            G80
            G0 Z60 M9
            M5
            M30
            """,
        NotFound = "Axes whose machine coordinate is not known: the setup gives no workOffsets, or under G43 no tool length. An axis that is outside already "
            + "is reported at the block that took it there, and a level of holes at the first of them.",
        Source = "Common practice: travel is counted in machine coordinates of the spindle's gauge point.",
    };

    public override StepEvents Interest => PartScan.NearTravel;

    public override bool Concerns(Job job) => job.Machine.HasTravel;

    public override void CheckStep(in StepContext step)
    {
        var machine = step.Job.Machine;
        if (machine.TravelX is null && machine.TravelY is null && machine.TravelZ is null)
            return;
        // What a forgotten G91 does to the way down is told of it: incremental-left-on.
        if (IncrementalLeftOn.HasMoved(step.Step.After))
            return;
        var (message, known) = ("", GoesOn(step.Step) ? Arcs.Axes(step.Step.After.Plane).Third : -1);
        for (var axis = 0; axis < 3; axis++)
            if (axis != known && Travel(machine, axis) is { } limits && FirstOutside(axis, limits, step) is { } reached && !IsBackAt(axis, reached, step.Step))
                message += (message.Length == 0 ? "" : "; ") + Describe(axis, reached, limits, step.Say);
        if (message.Length > 0)
            step.ReportBlock(this, $"This takes the machine out of its travel: {message}.", Slot.WorkOffset, "This block chooses the work offset.");
    }

    /// <summary>Whether a block drills on between the levels of the holes before it: how far they lead up and down is told there.</summary>
    static bool GoesOn(Step step) =>
        step.Holes.Count > 0 && step.Before.StandsAtHole && (step.Sets & (Slot.Cycle | Slot.CycleR | Slot.CycleBottom)) == 0;

    /// <summary>Whether a hole only leads back to the level where the tool stood before it, of which the block that took it there tells.</summary>
    static bool IsBackAt(int axis, double reached, Step step) =>
        step.Holes.Count > 0 && Math.Abs(step.Before.Position[axis] + step.ToMachine[axis] - reached) <= Rounding;

    static Limits? Travel(MachineProfile machine, int axis) => axis switch { 0 => machine.TravelX, 1 => machine.TravelY, _ => machine.TravelZ };

    /// <summary>The first machine coordinate on the way that is beyond a limit which the move did not begin beyond, or nobody knows where; null where there is none.</summary>
    static double? FirstOutside(int axis, Limits limits, in StepContext step)
    {
        var toMachine = step.Step.ToMachine[axis];
        foreach (ref readonly var move in step.Step.Moves.Items)
        {
            if (!move.IsMotion)
                continue;
            var from = move.From[axis] + toMachine;
            var (low, high) = Reach(move, axis);
            if (IsAbove(high + toMachine, limits) && !IsAbove(from, limits))
                return high + toMachine;
            if (IsBelow(low + toMachine, limits) && !IsBelow(from, limits))
                return low + toMachine;
        }
        // Where the work coordinate is not known the machine coordinate may be, after a move in machine coordinates.
        var (before, after) = (step.Step.Before.MachinePosition[axis], step.Step.After.MachinePosition[axis]);
        return double.IsNaN(toMachine) && after != before && IsOutside(after, limits) && !IsOutside(before, limits) ? after : null;
    }

    static bool IsOutside(double coordinate, Limits limits) => IsBelow(coordinate, limits) || IsAbove(coordinate, limits);

    static bool IsBelow(double coordinate, Limits limits) => coordinate < limits.Min - Rounding;

    static bool IsAbove(double coordinate, Limits limits) => coordinate > limits.Max + Rounding;

    /// <summary>Least and greatest coordinate of an axis on a move, in work coordinates, mm.</summary>
    static (double Low, double High) Reach(in Move move, int axis)
    {
        var (low, high) = (Math.Min(move.From[axis], move.To[axis]), Math.Max(move.From[axis], move.To[axis]));
        if (double.IsNaN(low))
            return (move.To[axis], move.To[axis]);
        var (first, second, third) = Arcs.Axes(move.Plane);
        if (move.Kind != MoveKind.Arc || axis == third)
            return (low, high);
        var radius = double.Hypot(move.From[first] - move.Center[first], move.From[second] - move.Center[second]);
        // The extremes of an axis lie at quarter turns from the centre: those the arc passes count.
        var quarter = axis == first ? 0 : Math.PI / 2;
        if (Passes(move, first, second, quarter))
            high = Math.Max(high, move.Center[axis] + radius);
        if (Passes(move, first, second, quarter + Math.PI))
            low = Math.Min(low, move.Center[axis] - radius);
        return (low, high);
    }

    static bool Passes(in Move arc, int first, int second, double angle)
    {
        var start = Math.Atan2(arc.From[second] - arc.Center[second], arc.From[first] - arc.Center[first]);
        var turned = arc.Clockwise ? start - angle : angle - start;
        turned -= Math.Tau * Math.Floor(turned / Math.Tau);
        return turned <= Arcs.Sweep(arc);
    }

    static string Describe(int axis, double reached, Limits limits, LengthText say)
    {
        var letter = "XYZ"[axis];
        var limit = reached > limits.Max ? limits.Max : limits.Min;
        return $"{letter} would go to {say.Length(reached)} in machine coordinates, {say.Length(Math.Abs(reached - limit))} beyond its limit of {say.Length(limit)}";
    }
}
