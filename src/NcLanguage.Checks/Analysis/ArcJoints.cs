using NcLanguage.Control.Compensation;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Analysis;

/// <summary>An arc of a contour that meets both its neighbours at corners, and would run smoothly into both if it turned the other way, or had another radius.</summary>
/// <param name="Line">Its block, counted from 0 within its part.</param>
/// <param name="IsG2">Whether G2 and not G3 is in force; where the path is mirrored it does not run clockwise.</param>
/// <param name="IsWholeTurn">A full circle or a turn of a helix.</param>
/// <param name="TurnsBack">It starts back along the move before it, and ends against the one behind it.</param>
/// <param name="Tenfold">How many times as large its R is as the radius that would be tangent to both, a power of ten; 0 where it is the way it turns.</param>
public readonly record struct TurnedArc(int Line, bool IsG2, bool IsWholeTurn, bool TurnsBack, int Tenfold = 0)
{
    /// <summary>Whether it is not the other of G2 and G3 that would run smoothly, but the same about the other centre of its radius.</summary>
    public bool IsAboutOtherCentre { get; init; }

    /// <summary>Whether R and not I, J gives the circle; told of an arc that would run smoothly about the other centre.</summary>
    public bool IsByRadius { get; init; }
}

/// <summary>Looks at how the programmed moves of contours in the XY plane meet, and picks the arcs that turn the wrong way. Under radius compensation too it is the programmed path that is looked at.</summary>
sealed class ArcJoints
{
    static readonly ContourEnds NothingOpen = new(null, IsEnded: true, null);

    readonly List<TurnedArc> _found = [];
    readonly ContourJoints _joints = new();

    /// <summary>The last three moves: each is made where it stands, and none is copied when the next one comes.</summary>
    readonly ContourMove[] _moves = new ContourMove[3];
    int _next;

    /// <summary>Moves of the contour so far; three stand for more.</summary>
    int _count;
    ContourMove _first, _second;
    ContourStretch? _head;
    bool _isHeadEnded;

    /// <summary>Begins a part: of what comes before it nothing is known.</summary>
    public void Begin()
    {
        Forget();
        (_head, _isHeadEnded) = (null, false);
    }

    public void Note(Step step, int line)
    {
        if ((step.Events & StepEvents.Moves) == 0)
            return;
        ref var piece = ref _moves[_next];
        if ((step.Events & StepEvents.Path) != 0 && TryRead(step, line, ref piece))
            Add(ref piece);
        else
            EndContour();
    }

    /// <summary>Notes a straight cut that no compensation is in force at.</summary>
    public void NoteLine(in Point3 from, in Point3 to, int line)
    {
        var (start, end) = (new Point2(from.X, from.Y), new Point2(to.X, to.Y));
        if (!from.IsKnown || !to.IsKnown || ContourMove.AreSame(start, end))
        {
            EndContour();
            return;
        }
        ref var piece = ref _moves[_next];
        piece.BecomeLine(start, end, line);
        Add(ref piece);
    }

    /// <summary>Notes an arc in the XY plane that no compensation is in force at.</summary>
    /// <param name="isByRadius">Whether R and not I, J gives its circle.</param>
    /// <param name="isG2">Whether G2 and not G3 is in force.</param>
    public void NoteArc(in Move arc, bool isByRadius, bool isG2, int line)
    {
        ref var piece = ref _moves[_next];
        if (arc.From.IsKnown && arc.To.IsKnown && TryReadArc(arc, new(arc.From.X, arc.From.Y), new(arc.To.X, arc.To.Y), isByRadius, isG2, line, ref piece))
            Add(ref piece);
        else
            EndContour();
    }

    /// <summary>Adds the move that stands where the next one belongs.</summary>
    void Add(ref ContourMove piece)
    {
        if (_count > 0 && !Last.EndsAt(piece.From))
            EndContour();
        if (_count > 1 && Last.IsArc && _joints.Look(Before, Last, piece, part: 0) is { } found)
            _found.Add(found);
        if (_count == 0)
            _first = piece;
        else if (_count == 1)
            _second = piece;
        _count = Math.Min(_count + 1, _moves.Length);
        _next = Behind(_next, 1);
    }

    ref readonly ContourMove Last => ref _moves[Behind(_next, 2)];

    ref readonly ContourMove Before => ref _moves[Behind(_next, 1)];

    int Behind(int move, int by) => move + by is var at && at < _moves.Length ? at : at - _moves.Length;

    /// <summary>Ends the part. Contours that it begins or ends amid are not judged yet.</summary>
    public List<TurnedArc> Take(out ContourEnds? ends)
    {
        var open = Stretch();
        ends = _isHeadEnded ? _head is null && open is null ? NothingOpen : new ContourEnds(_head, IsEnded: true, open) : open is null ? null : new ContourEnds(open, IsEnded: false, null);
        Forget();
        return _found;
    }

    void EndContour()
    {
        if (_count == 0 && _isHeadEnded)
            return;
        if (!_isHeadEnded)
            (_head, _isHeadEnded) = (Stretch(), true);
        else if (_joints.Judge() is { } odd)
            _found.Add(odd.Arc);
        Forget();
    }

    ContourStretch? Stretch() =>
        _count == 0 ? null : new ContourStretch(_first, _count > 1 ? _second : default, _count > 1 ? Before : default, Last, _joints.Taken());

    void Forget()
    {
        _joints.Clear();
        _count = 0;
    }

    static Point2 Programmed(in ControlState state) => new(state.Position.X - state.OffPath.X, state.Position.Y - state.OffPath.Y);

    /// <summary>The programmed move of a block, seen from above; false where it is none in the XY plane between known places.</summary>
    /// <param name="piece">Becomes the move where there is one.</param>
    internal static bool TryRead(Step step, int line, ref ContourMove piece)
    {
        ref readonly var before = ref step.Before;
        ref readonly var after = ref step.After;
        var (start, end) = (Programmed(before), Programmed(after));
        if (after.Plane != WorkPlane.XY || double.IsNaN(start.X + start.Y + end.X + end.Y + before.Position.Z + after.Position.Z))
            return false;
        if (after.Motion == MotionMode.Linear)
        {
            if (ContourMove.AreSame(start, end))
                return false;
            piece.BecomeLine(start, end, line);
            return true;
        }
        if (after.Motion is not (MotionMode.ArcClockwise or MotionMode.ArcCounterclockwise))
            return false;
        foreach (ref readonly var move in step.Moves.Items)
            if (move.Kind == MoveKind.Arc && move.Plane == WorkPlane.XY && TryReadArc(move, start, end, step.Words.Has('R'), after.Motion == MotionMode.ArcClockwise, line, ref piece))
                return true;
        return false;
    }

    static bool TryReadArc(in Move arc, Point2 start, Point2 end, bool isByRadius, bool isG2, int line, ref ContourMove piece)
    {
        if (!arc.Center.IsKnown)
            return false;
        // Arcs about a corner of the path are the control's own: their centre is an end.
        var center = new Point2(arc.Center.X, arc.Center.Y);
        var (toStart, toEnd) = (start - center, end - center);
        var square = Point2.Dot(toStart, toStart);
        if (square <= ContourMove.Same * ContourMove.Same || Arcs.Differ(square, Point2.Dot(toEnd, toEnd), ContourMove.Same))
            return false;
        piece.BecomeArc(start, end, center, square, arc.Clockwise, isByRadius, isG2, line);
        return true;
    }
}
