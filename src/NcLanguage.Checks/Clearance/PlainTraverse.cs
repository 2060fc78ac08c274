using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Clearance;

/// <summary>The rapid of a step, apart from the traverses between holes and the way home, that moves in X or Y at the lowest level, held against the clamp height.</summary>
/// <param name="Move">Index of the move.</param>
/// <param name="Distance">Its lowest level less the clamp height, mm.</param>
readonly record struct PlainTraverse(int Move, double Distance)
{
    /// <summary>Null where obstacles are listed, no clamp height is given, or no level is known.</summary>
    public static PlainTraverse? LowestOf(in StepContext step)
    {
        if (!step.Job.Obstacles.IsEmpty || step.Job.Setup.ClampHeight is not { } clamps)
            return null;
        PlainTraverse? lowest = null;
        for (var i = 0; i < step.Step.Moves.Count; i++)
        {
            ref readonly var move = ref step.Step.Moves[i];
            if (move.Kind != MoveKind.Rapid || move.Role is not (MoveRole.Plain or MoveRole.FirstTraverse) || !MovesAcross(move))
                continue;
            var distance = Math.Min(move.From.Z, move.To.Z) + step.Step.ToFrame.Z - clamps;
            if (distance < (lowest?.Distance ?? double.PositiveInfinity))
                lowest = new PlainTraverse(i, distance);
        }
        return lowest;
    }

    static bool MovesAcross(in Move move) => !move.From.X.Equals(move.To.X) || !move.From.Y.Equals(move.To.Y);

    /// <summary>What set its level.</summary>
    public Slot LevelIn(in StepContext step)
    {
        ref readonly var move = ref step.Step.Moves[Move];
        return step.LevelOf(Move, Math.Min(move.From.Z, move.To.Z));
    }

    /// <summary>"The rapid to X45 Y15 runs at Z2, 28 mm below the clamps' top at Z30; it clears from Z32 up."</summary>
    public string Message(in StepContext step)
    {
        ref readonly var move = ref step.Step.Moves[Move];
        var level = Math.Min(move.From.Z, move.To.Z);
        var top = level - Distance;
        var where = Distance > Sweep.ClearanceTolerance ? $"only {step.Say.Length(Distance)} above"
            : Distance < -Sweep.ClearanceTolerance ? $"{step.Say.Length(-Distance)} below"
            : "level with";
        var what = move.Role == MoveRole.FirstTraverse ? "The traverse to the first hole" : "The rapid";
        return $"{what}{(move.Role == MoveRole.FirstTraverse ? " at" : " to")} {step.Say.Place(move.To.X, move.To.Y)} runs at {step.Say.Level(level)}, {where} the clamps' top at {step.Say.Level(top)}; "
            + $"it clears from {step.Say.Level(step.Say.Upward(top + step.Job.Setup.Clearance))} up.";
    }
}
