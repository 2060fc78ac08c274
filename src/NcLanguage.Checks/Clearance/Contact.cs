using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>What a move comes too near to: each contact is of one kind, so that it gives one finding.</summary>
enum ContactKind
{
    /// <summary>Nearer than the setup's clearance, but not touching.</summary>
    Near,

    /// <summary>A rapid touches.</summary>
    Rapid,

    /// <summary>A feed or an arc touches.</summary>
    Cut,

    /// <summary>The holder touches before anything else of the tool.</summary>
    Holder,
}

/// <summary>A move of a step, apart from the traverses between holes, that comes too near to an obstacle.</summary>
/// <param name="Move">Index of the move.</param>
/// <param name="Obstacle">What it comes near to.</param>
/// <param name="Distance">Least distance, mm; negative: how deep.</param>
/// <param name="Tip">Where the tip then is, in work coordinates, mm.</param>
/// <param name="Part">The part of the tool that comes nearest.</param>
readonly record struct Contact(ContactKind Kind, int Move, Obstacle Obstacle, double Distance, Point3 Tip, ToolPart Part)
{
    /// <summary>The first contact of this kind in a step, in the order of its moves; null where there is none.</summary>
    public static Contact? FirstOf(ContactKind kind, in StepContext step)
    {
        if (step.Job.Obstacles.IsEmpty || !step.ComesNear)
            return null;
        var moves = step.Step.Moves;
        for (var i = 0; i < moves.Count; i++)
            if (moves[i].IsMotion && IsConcerned(moves[i], kind) && Of(i, step) is { } contact && contact.Kind == kind)
                return contact;
        return null;
    }

    // Hops have findings of their own.
    static bool IsConcerned(in Move move, ContactKind kind) => move.Role != MoveRole.Hop
        && kind switch { ContactKind.Rapid => !move.IsFeed, ContactKind.Cut => move.IsFeed, _ => true };

    static Contact? Of(int index, in StepContext step)
    {
        ref readonly var move = ref step.Step.Moves[index];
        var approach = step.ApproachOf(index);
        // Where only the way is not known, the place it ends at still is.
        if (double.IsNaN(approach.Distance))
            approach = At(move.To, step, step.Job.Obstacles);
        if (!IsTooNear(approach, step))
            return null;
        if (IsNew(index, approach, step))
            return Describe(index, approach, step);
        // What is nearest has been told of already; the move may meet something else besides.
        var nearest = Approach.None;
        for (var i = 0; i < step.Job.Obstacles.Length; i++)
        {
            if (i == approach.ObstacleIndex)
                continue;
            var other = step.Job.ApproachOf(move, step.Step.ToFrame, step.Step.After.Tool, step.Job.Setup.Clearance, i);
            if (other.Distance < nearest.Distance && IsTooNear(other, step) && IsNew(index, other, step))
                nearest = other;
        }
        return nearest.ObstacleIndex < 0 ? null : Describe(index, nearest, step);
    }

    static bool IsTooNear(in Approach approach, in StepContext step) =>
        approach.Distance < Math.Max(step.Job.Setup.Clearance - Sweep.ClearanceTolerance, 0) || approach.IsContact;

    /// <summary>False for what another block, move or rule tells.</summary>
    static bool IsNew(int index, in Approach approach, in StepContext step)
    {
        ref readonly var move = ref step.Step.Moves[index];
        if (IsOfHole(move.Role) && BelongsElsewhere(index, approach, step))
            return false;
        // A tool that is there already has been reported at the block that took it there.
        var there = At(move.From, step, step.Job.Obstacles.Slice(approach.ObstacleIndex, 1));
        return !(approach.IsContact ? there.IsContact : there.Distance < step.Job.Setup.Clearance - Sweep.ClearanceTolerance);
    }

    static Contact Describe(int index, in Approach approach, in StepContext step) =>
        new(KindOf(approach, step.Step.Moves[index]), index, step.Job.Obstacles[approach.ObstacleIndex], approach.Distance, approach.Tip - step.Step.ToFrame, approach.Part);

    static ContactKind KindOf(in Approach approach, in Move move) =>
        !approach.IsContact ? ContactKind.Near
        : approach.Part == ToolPart.Holder ? ContactKind.Holder
        : move.IsFeed ? ContactKind.Cut
        : ContactKind.Rapid;

    static Approach At(Point3 place, in StepContext step, ReadOnlySpan<Obstacle> obstacles)
    {
        var inFrame = place + step.Step.ToFrame;
        return Sweep.Line(inFrame, inFrame, step.Job.ShapeOf(step.Step.After.Tool), obstacles, step.Job.Setup.Clearance);
    }

    static bool IsOfHole(MoveRole role) => role is MoveRole.Lift or MoveRole.FirstTraverse or MoveRole.Approach or MoveRole.InHole or MoveRole.Return;

    /// <summary>True for a hole that lies under the obstacle, which has a finding of its own, and for the way back where the way there met it.</summary>
    static bool BelongsElsewhere(int index, in Approach approach, in StepContext step)
    {
        var holes = step.Step.Holes.Items;
        for (var i = holes.Length - 1; i >= 0; i--)
        {
            ref readonly var hole = ref holes[i];
            if (hole.FirstMove > index)
                continue;
            return HoleCover.IsOver(step.Job.Obstacles[approach.ObstacleIndex], hole, step)
                || (GoesBack(step.Step.Moves[index]) && HasMet(hole.FirstMove, index, approach, step));
        }
        return false;
    }

    static bool GoesBack(in Move move) => move.Role == MoveRole.Return || (move.Role == MoveRole.InHole && move.Kind == MoveKind.Rapid);

    /// <summary>True when a move of the hole before this one came too near to the same obstacle, so that it was told.</summary>
    static bool HasMet(int first, int index, in Approach approach, in StepContext step)
    {
        for (var i = first; i < index; i++)
            if (step.Step.Moves[i].Role != MoveRole.Hop && step.ApproachOf(i) is var before && before.ObstacleIndex == approach.ObstacleIndex
                && (approach.IsContact ? before.IsContact : IsTooNear(before, step)) && IsNew(i, before, step))
                return true;
        return false;
    }
}
