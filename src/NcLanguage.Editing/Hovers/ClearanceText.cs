using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>How close moves come to what the setup lists.</summary>
static class ClearanceText
{
    /// <summary>Strokes of one hole looked at: they go up and down the same way.</summary>
    const int MostLookedAt = 16;

    /// <summary>The nearest approach of the step's moves from <paramref name="first"/> up to <paramref name="end"/>; empty where nothing is near.</summary>
    public static string Of(ProgramAnalysis analysis, Step step, int first, int end)
    {
        var job = analysis.Main.Job;
        if (!step.Moves[first].IsMotion)
            return "";
        return job.Obstacles.IsEmpty ? OverClampHeight(job, step, step.Moves[first]) : FromObstacles(job, step, first, end);
    }

    /// <summary>What is to be said once of a block that moves: why clearance is not known, or less than it seems. Empty where all is known.</summary>
    public static string Note(ProgramAnalysis analysis, Step step)
    {
        var job = analysis.Main.Job;
        if ((step.Events & StepEvents.Moves) == 0 || !MovesTool(step))
            return "";
        if (!job.Setup.IsPresent)
            return "No setup file: clearance is not known.";
        if (!HopClearance.CanJudge(job))
            return job.Setup.ObstaclesAreKnown ? "The setup lists no clamps: clearance is not known." : "The clamps of the setup could not be read: clearance is not known.";
        if (!job.Setup.ObstaclesAreKnown)
            return "A clamp of the setup could not be read: it is not looked at here.";
        if (!job.Obstacles.IsEmpty && job.ShapeOf(step.After.Tool).Radius == 0)
            return step.After.Tool <= 0
                ? "The tool is not known here: distances are from its axis."
                : $"The setup has no diameter for T{step.After.Tool}: distances are from its axis.";
        return "";
    }

    static bool MovesTool(Step step)
    {
        foreach (ref readonly var move in step.Moves.Items)
            if (move.IsMotion)
                return true;
        return false;
    }

    static string OverClampHeight(Job job, Step step, in Move move)
    {
        if (job.Setup.ClampHeight is not { } top || move.Role is not (MoveRole.Hop or MoveRole.FirstTraverse) || step.After.Plane != WorkPlane.XY)
            return "";
        var over = move.To.Z + step.ToFrame.Z - top;
        var lengths = Lengths.Of(step.After);
        return double.IsNaN(over) ? " · clearance " + Lengths.NotKnown
            : over < -Sweep.ClearanceTolerance ? $" · **{lengths.Length(-over)} below the clamp height**"
            : $" · {lengths.Length(over)} over the clamp height";
    }

    static string FromObstacles(Job job, Step step, int first, int end)
    {
        var nearest = Approach.None;
        for (var i = first; i < Math.Min(end, first + MostLookedAt); i++)
        {
            var approach = job.ApproachOf(step.Moves[i], step.ToFrame, step.After.Tool, double.PositiveInfinity);
            if (double.IsNaN(approach.Distance) || approach.Distance < nearest.Distance)
                nearest = approach;
        }
        if (double.IsNaN(nearest.Distance))
            return step.Moves[first].Role is MoveRole.InHole or MoveRole.Return ? "" : " · clearance " + Lengths.NotKnown;
        if (nearest.ObstacleIndex < 0)
            return "";
        var lengths = Lengths.Of(step.After);
        var name = Markdown.Plain(job.Obstacles[nearest.ObstacleIndex].Name);
        if (nearest.Distance <= Sweep.ClearanceTolerance)
            return nearest.Distance < -Sweep.ClearanceTolerance ? $" · **hits {name}, {lengths.Length(-nearest.Distance)} deep**" : $" · **touches {name}**";
        if (!nearest.Clears(job.Setup.Clearance))
            return $" · **only {lengths.Length(nearest.Distance)} from {name}**";
        // Up and down at the hole the traverse before has told the distance already.
        return step.Moves[first].Role is MoveRole.Approach or MoveRole.InHole or MoveRole.Return or MoveRole.Lift
            ? ""
            : $" · {lengths.Length(Rounded(nearest.Distance))} from {name}";
    }

    // What is clear is told to a tenth of a millimetre.
    static double Rounded(double mm) => Math.Round(mm, 1);
}
