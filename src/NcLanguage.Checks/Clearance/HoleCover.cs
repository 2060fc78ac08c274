using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>Whether a hole lies under an obstacle, so that the tool would have to go through the obstacle to drill it.</summary>
static class HoleCover
{
    /// <summary>True when the obstacle stands higher than the hole's bottom and reaches into the tool's circle. False where the place is
    /// not known, and for holes that are not drilled along Z.</summary>
    public static bool IsOver(Obstacle obstacle, in Hole hole, in StepContext step)
    {
        if (step.Step.After.Plane != WorkPlane.XY)
            return false;
        var toFrame = step.Step.ToFrame;
        return obstacle.Top > hole.Bottom + toFrame.Z + Sweep.ClearanceTolerance
            && Footprint.Distance(obstacle, hole.X + toFrame.X, hole.Y + toFrame.Y) <= step.Job.ShapeOf(hole.Tool).Radius + Sweep.ClearanceTolerance;
    }
}
