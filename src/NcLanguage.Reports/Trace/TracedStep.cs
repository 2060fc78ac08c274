using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Checks.Operations;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Control.Moves;

namespace NcLanguage.Reports.Trace;

/// <summary>One executed block on its way past: valid until the next one.</summary>
/// <param name="Line">From 0.</param>
/// <param name="File">The name of the file that the block stands in, where it is another than the program's own.</param>
public readonly record struct TracedStep(int Line, Step Step, Job Job, string? File = null)
{
    /// <summary>The exact least distance of a move to the obstacles; null where none are set or the move does not travel. Not known where the
    /// tool's diameter is not, unless its axis already is in contact.</summary>
    public Approach? ApproachOf(int move)
    {
        if (Job.Obstacles.IsEmpty || !Step.Moves[move].IsMotion)
            return null;
        var approach = Job.ApproachOf(Step.Moves[move], Step.ToFrame, Step.After.Tool, double.PositiveInfinity);
        return IsToolKnown || approach.IsContact ? approach : Approach.Unknown;
    }

    /// <summary>The same to one of the obstacles, by its place in the setup; distances beyond <paramref name="within"/> mm may come back as infinite.</summary>
    public Approach ApproachOf(int move, int obstacle, double within)
    {
        var approach = Job.ApproachOf(Step.Moves[move], Step.ToFrame, Step.After.Tool, within, obstacle);
        return IsToolKnown || approach.IsContact ? approach : Approach.Unknown;
    }

    /// <summary>Whether the setup gives the tool's diameter.</summary>
    public bool IsToolKnown => Job.ShapeOf(Step.After.Tool).Radius > 0;

    /// <summary>Name of the obstacle of an approach, or null.</summary>
    public string? NameOf(Approach approach) => approach.ObstacleIndex < 0 ? null : Job.Obstacles[approach.ObstacleIndex].Name;
}
