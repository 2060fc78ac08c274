using System.Collections.Immutable;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;

namespace NcLanguage.Checks.Operations;

/// <summary>The nearest place to each obstacle over a number of moves.</summary>
sealed class PassTally(Job job)
{
    /// <summary>Places nearer together than this in distance, mm, are as near: the first counts.</summary>
    const double AsNear = 1e-6;

    readonly NearestPass?[] _nearest = new NearestPass?[job.Obstacles.Length];
    WorkCoordinates? _coordinates;

    /// <summary>Moves whose distance to the obstacles is not known.</summary>
    public int Unknown { get; private set; }

    public void Add(Step step, int move, int line, string? file)
    {
        if (_nearest.Length == 0 || !step.Moves[move].IsMotion)
            return;
        var isToolKnown = job.ShapeOf(step.After.Tool).Radius > 0;
        var isKnown = true;
        for (var i = 0; i < _nearest.Length; i++)
        {
            var best = _nearest[i]?.Distance ?? double.PositiveInfinity;
            var approach = job.ApproachOf(step.Moves[move], step.ToFrame, step.After.Tool, best, i);
            if (double.IsNaN(approach.Distance) || !(isToolKnown || approach.IsContact))
                isKnown = false;
            else if (approach.Distance < best - AsNear)
            {
                _coordinates = _coordinates?.In(step.After) ?? WorkCoordinates.Of(step.After);
                _nearest[i] = new NearestPass(
                    i, approach.Distance, line, file, step.After.Tool, approach.Part, approach.Tip - step.ToFrame, step.Moves[move].Kind == MoveKind.Rapid)
                {
                    Coordinates = _coordinates,
                    IsAxisOnly = !isToolKnown,
                };
            }
        }
        if (!isKnown)
            Unknown++;
    }

    public void Add(PassTally later)
    {
        for (var i = 0; i < _nearest.Length; i++)
            if (later._nearest[i] is { } pass && !(_nearest[i]?.Distance <= pass.Distance + AsNear))
                _nearest[i] = pass;
        Unknown += later.Unknown;
    }

    public void Clear()
    {
        Array.Clear(_nearest);
        Unknown = 0;
    }

    /// <summary>Nearest first.</summary>
    public ImmutableArray<NearestPass> Collect() => [.. _nearest.OfType<NearestPass>().OrderBy(pass => pass.Distance)];
}
