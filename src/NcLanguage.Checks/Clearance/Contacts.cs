using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>What the moves of one step come too near to, found in one pass for all rules. It keeps its storage from step to step.</summary>
sealed class Contacts
{
    /// <summary>Among more obstacles none is looked for beside the one of a contact, which may come at every block.</summary>
    const int MostBesides = 100;

    readonly Contact?[] _first = new Contact?[4];
    bool[] _touched = [];
    bool[] _passedNear = [];

    /// <summary>The first contact of a kind, in the order of the moves; null where there is none.</summary>
    public Contact? FirstOf(ContactKind kind) => _first[(int)kind];

    /// <summary>Goes through the moves of a step.</summary>
    public void Find(in StepContext step)
    {
        Array.Clear(_first);
        if (_touched.Length != step.Job.Obstacles.Length)
            (_touched, _passedNear) = (new bool[step.Job.Obstacles.Length], new bool[step.Job.Obstacles.Length]);
        Forget();
        var (moves, holes) = (step.Step.Moves, step.Step.Holes);
        var hole = -1;
        for (var i = 0; i < moves.Count; i++)
        {
            for (; hole + 1 < holes.Count && holes[hole + 1].FirstMove <= i; hole++)
                Forget();
            // Hops have findings of their own.
            if (!moves[i].IsMotion || moves[i].Role == MoveRole.Hop)
                continue;
            if (Of(i, hole, step) is { } contact && _first[(int)contact.Kind] is null)
                _first[(int)contact.Kind] = contact;
            Remember(step.ApproachOf(i), i, hole, step);
        }
    }

    /// <summary>The names of what else the move of a contact runs into, in the order of the setup: the contact's finding tells them too.</summary>
    public List<string> AlsoMet(in Contact contact, in StepContext step)
    {
        var names = new List<string>();
        for (var i = 0; step.Job.Obstacles.Length <= MostBesides && i < step.Job.Obstacles.Length; i++)
        {
            var other = step.Job.ApproachOf(step.Step.Moves[contact.Move], step.Step.ToFrame, step.Step.After.Tool, step.Job.Setup.Clearance, i);
            if (!ReferenceEquals(step.Job.Obstacles[i], contact.Obstacle) && other.IsContact && IsNew(contact.Move, hole: -1, other, step))
                names.Add(step.Job.Obstacles[i].Name);
        }
        return names;
    }

    void Forget()
    {
        Array.Clear(_touched);
        Array.Clear(_passedNear);
    }

    /// <summary>Notes for the moves of the same hole behind this one what it came too near to, where that is told of it.</summary>
    void Remember(in Approach approach, int index, int hole, in StepContext step)
    {
        if (approach.ObstacleIndex < 0 || !IsTooNear(approach, step) || !IsNew(index, hole, approach, step))
            return;
        _passedNear[approach.ObstacleIndex] = true;
        _touched[approach.ObstacleIndex] |= approach.IsContact;
    }

    Contact? Of(int index, int hole, in StepContext step)
    {
        ref readonly var move = ref step.Step.Moves[index];
        var approach = step.ApproachOf(index);
        // Where only the way is not known, the place it ends at still is.
        if (double.IsNaN(approach.Distance))
            approach = At(move.To, step, step.Job.Obstacles);
        if (!IsTooNear(approach, step))
            return null;
        if (IsNew(index, hole, approach, step))
            return Describe(index, approach, step);
        // What is nearest has been told of already; the move may meet something else besides.
        var nearest = Approach.None;
        for (var i = 0; i < step.Job.Obstacles.Length; i++)
        {
            if (i == approach.ObstacleIndex)
                continue;
            var other = step.Job.ApproachOf(move, step.Step.ToFrame, step.Step.After.Tool, step.Job.Setup.Clearance, i);
            if (other.Distance < nearest.Distance && IsTooNear(other, step) && IsNew(index, hole, other, step))
                nearest = other;
        }
        return nearest.ObstacleIndex < 0 ? null : Describe(index, nearest, step);
    }

    static bool IsTooNear(in Approach approach, in StepContext step) =>
        approach.Distance < Math.Max(step.Job.Setup.Clearance - Sweep.ClearanceTolerance, 0) || approach.IsContact;

    /// <summary>False for what another block, move or rule tells.</summary>
    bool IsNew(int index, int hole, in Approach approach, in StepContext step)
    {
        ref readonly var move = ref step.Step.Moves[index];
        if (hole >= 0 && IsOfHole(move.Role) && BelongsElsewhere(move, hole, approach, step))
            return false;
        // A tool that is there already has been reported at the block that took it there.
        var there = At(move.From, step, step.Job.Obstacles.Slice(approach.ObstacleIndex, 1));
        return !(approach.IsContact ? there.IsContact : there.Distance < step.Job.Setup.Clearance - Sweep.ClearanceTolerance);
    }

    /// <summary>True for a hole that lies under the obstacle, which has a finding of its own, and for the way back where the way there met it.</summary>
    bool BelongsElsewhere(in Move move, int hole, in Approach approach, in StepContext step) =>
        HoleCover.IsOver(step.Job.Obstacles[approach.ObstacleIndex], step.Step.Holes[hole], step)
        || (GoesBack(move) && (approach.IsContact ? _touched : _passedNear)[approach.ObstacleIndex]);

    static bool GoesBack(in Move move) => move.Role == MoveRole.Return || (move.Role == MoveRole.InHole && move.Kind == MoveKind.Rapid);

    static bool IsOfHole(MoveRole role) => role is MoveRole.Lift or MoveRole.FirstTraverse or MoveRole.Approach or MoveRole.InHole or MoveRole.Return;

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
}
