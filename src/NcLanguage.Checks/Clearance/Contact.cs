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
/// <param name="WithHolder">The holder comes nearest.</param>
readonly record struct Contact(ContactKind Kind, int Move, Obstacle Obstacle, double Distance, Point3 Tip, bool WithHolder)
{
    /// <summary>The first contact of this kind in a step, in the order of its moves; null where there is none.</summary>
    public static Contact? FirstOf(ContactKind kind, in StepContext step)
    {
        if (step.Job.Obstacles.IsEmpty)
            return null;
        var moves = step.Step.Moves;
        for (var i = 0; i < moves.Count; i++)
            if (moves[i].IsMotion && IsConcerned(moves[i], kind) && Of(i, step) is { } contact && contact.Kind == kind)
                return contact;
        return null;
    }

    // The way out of a hole is the way in; hops and the lifts before them have findings of their own.
    static bool IsConcerned(in Move move, ContactKind kind) => move.Role switch
    {
        MoveRole.Hop or MoveRole.Return => false,
        MoveRole.InHole when move.Kind == MoveKind.Rapid => false,
        _ => kind switch { ContactKind.Rapid => !move.IsFeed, ContactKind.Cut => move.IsFeed, _ => true },
    };

    static Contact? Of(int index, in StepContext step)
    {
        ref readonly var move = ref step.Step.Moves[index];
        var approach = step.ApproachOf(index);
        // Where only the way is not known, the place it ends at still is.
        if (double.IsNaN(approach.Distance))
            approach = At(move.To, step, step.Job.Obstacles);
        var clearance = step.Job.Setup.Clearance;
        if (!(approach.Distance < Math.Max(clearance - Sweep.ClearanceTolerance, 0) || approach.IsContact))
            return null;
        if (IsOfHole(move.Role) && BelongsElsewhere(index, approach, step))
            return null;
        // A tool that is there already has been reported at the block that took it there.
        var there = At(move.From, step, step.Job.Obstacles.Slice(approach.ObstacleIndex, 1));
        if (approach.IsContact ? there.IsContact : there.Distance < clearance - Sweep.ClearanceTolerance)
            return null;
        return new Contact(KindOf(approach, move), index, step.Job.Obstacles[approach.ObstacleIndex], approach.Distance, approach.Tip - step.Step.ToFrame,
            approach.Part == ToolPart.Holder);
    }

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

    static bool IsOfHole(MoveRole role) => role is MoveRole.Lift or MoveRole.FirstTraverse or MoveRole.Approach or MoveRole.InHole;

    /// <summary>True for the lift before a hop, and for a hole that lies under the obstacle: both have findings of their own.</summary>
    static bool BelongsElsewhere(int index, in Approach approach, in StepContext step)
    {
        var holes = step.Step.Holes.Items;
        for (var i = holes.Length - 1; i >= 0; i--)
        {
            ref readonly var hole = ref holes[i];
            if (hole.FirstMove > index)
                continue;
            if (step.Step.Moves[index].Role == MoveRole.Lift && hole.IsHop)
                return true;
            return HoleCover.IsOver(step.Job.Obstacles[approach.ObstacleIndex], hole, step);
        }
        return false;
    }
}
