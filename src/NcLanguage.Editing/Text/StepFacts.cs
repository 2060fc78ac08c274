using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>Questions about a step that several hovers ask.</summary>
static class StepFacts
{
    /// <summary>The number of the cycle that the block drills by or leaves in force; 0 for none.</summary>
    public static int CycleOf(Step step) => step.Holes.Count > 0 ? step.Holes[0].Cycle : Math.Max(step.After.Cycle, 0);

    /// <summary>The letter of the axis that cycles go down along.</summary>
    public static char DepthLetter(in ControlState state) => (char)('X' + Arcs.Axes(state.Plane).Third);

    /// <summary>Whether the spindle is known to turn.</summary>
    public static bool Turns(in ControlState state) => state.Spindle is SpindleState.Clockwise or SpindleState.Counterclockwise;

    /// <summary>Seconds of all moves; NaN where one is not known.</summary>
    public static double Seconds(Step step)
    {
        var seconds = 0.0;
        foreach (ref readonly var move in step.Moves.Items)
            seconds += move.Seconds;
        return seconds;
    }
}
