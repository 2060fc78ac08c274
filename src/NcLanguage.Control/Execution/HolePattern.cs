using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.Execution;

/// <summary>What a block does that drills the next hole of a run in the XY plane. Nothing of it but X and Y, and the time of the traverse, hangs on where the hole is.</summary>
sealed class HolePattern
{
    /// <summary>Strokes beyond it are not kept: such a hole takes its time anyway.</summary>
    const int MostMoves = 64;

    const Slot Across = Slot.X | Slot.Y;

    Move[] _moves = new Move[8];
    int _count;
    Hole _hole;
    Slot _sets;
    StepEvents _events;
    Point3 _toFrame;
    Point3 _toMachine;

    /// <summary>Becomes the same as another.</summary>
    public HolePattern CopiedFrom(HolePattern other)
    {
        Take(other._moves.AsSpan(0, other._count));
        (_hole, _sets, _events, _toFrame, _toMachine) = (other._hole, other._sets, other._events, other._toFrame, other._toMachine);
        return this;
    }

    void Take(ReadOnlySpan<Move> moves)
    {
        _count = moves.Length;
        if (_moves.Length < _count)
            _moves = new Move[MostMoves];
        moves.CopyTo(_moves);
    }

    /// <summary>Takes up what a step did; false where it is too much.</summary>
    public bool Learn(Step step)
    {
        if (step.Moves.Count > MostMoves)
            return false;
        Take(step.Moves.Items);
        (_hole, _sets, _events, _toFrame, _toMachine) = (step.Holes[0], step.Sets & ~Across, step.Events, step.ToFrame, step.ToMachine);
        return true;
    }

    /// <summary>What such a block sets, but for X and Y.</summary>
    public Slot Sets => _sets;

    /// <summary>Seconds that such a block takes, without the moves of which that is not known.</summary>
    /// <param name="traverse">What the traverse takes, s.</param>
    /// <param name="untimed">How many those are.</param>
    public double SecondsWith(double traverse, out int untimed)
    {
        var sum = 0.0;
        untimed = 0;
        foreach (ref readonly var move in _moves.AsSpan(0, _count))
        {
            var seconds = move.Role == MoveRole.Hop ? traverse : move.Seconds;
            if (double.IsNaN(seconds))
                untimed++;
            else
                sum += seconds;
        }
        return sum;
    }

    /// <summary>Does the same at another place.</summary>
    /// <param name="step">What is to tell of it; it says already which axes the traverse moves.</param>
    /// <param name="from">Where the tool stands.</param>
    /// <param name="to">Where the hole is.</param>
    /// <param name="traverse">What the traverse takes, s.</param>
    public void Repeat(Step step, in Point3 from, in Point3 to, double traverse)
    {
        step.Sets |= _sets;
        step.Events = _events;
        (step.ToFrame, step.ToMachine) = (_toFrame, _toMachine);
        var (start, end) = (from, to);
        foreach (ref readonly var move in _moves.AsSpan(0, _count))
        {
            var isTraverse = move.Role == MoveRole.Hop;
            var takes = isTraverse ? traverse : move.Seconds;
            (start, end) = move.Role == MoveRole.Lift ? (from, from) : isTraverse ? (from, to) : (to, to);
            step.Moves.Next().Become(
                move.Kind, move.Role, new Point3(start.X, start.Y, move.From.Z), new Point3(end.X, end.Y, move.To.Z), move.Center, move.Clockwise, move.Plane, move.FullTurns, move.Feed, takes);
        }
        step.Holes.Next() = _hole with { X = to.X, Y = to.Y };
    }
}
