using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;

namespace NcLanguage.Editing;

/// <summary>How close a move comes to what the setup lists.</summary>
static class ClearanceText
{
    public static string Of(ProgramAnalysis analysis, Step step, in Move move)
    {
        var job = analysis.Main.Job;
        if (!move.IsMotion || job.Obstacles.IsEmpty)
            return "";
        var nearest = job.ApproachOf(move, step.ToFrame, step.After.Tool, double.PositiveInfinity);
        if (double.IsNaN(nearest.Distance))
            return "; clearance not known here";
        if (nearest.ObstacleIndex < 0)
            return "";
        var name = job.Obstacles[nearest.ObstacleIndex].Name;
        return nearest.Distance <= 0
            ? $"; **meets {name}, {Say.Mm(-nearest.Distance)} deep**"
            : $"; {Say.Mm(nearest.Distance)} from {name}";
    }
}
