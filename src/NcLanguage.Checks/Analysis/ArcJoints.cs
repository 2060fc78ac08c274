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
public readonly record struct TurnedArc(int Line, bool IsG2, bool IsWholeTurn, bool TurnsBack, int Tenfold = 0);

/// <summary>Looks at how the programmed moves of contours in the XY plane meet, and picks the arcs that turn the wrong way. Under radius compensation too it is the programmed path that is looked at.</summary>
sealed class ArcJoints
{
    /// <summary>Directions that differ by less go on smoothly, tangent of 3°: half a degree for rounded numbers on small radii, and more for contours that are not quite tangent.</summary>
    const double Smooth = 0.0524;

    /// <summary>A corner that is meant is no smaller, tangent of 30°.</summary>
    const double Corner = 0.5774;

    /// <summary>So near to its reverse a move goes back where the one before came from, tangent of 15°.</summary>
    const double Back = 0.2679;

    /// <summary>Centres and radii that differ by less are one, mm.</summary>
    const double Same = 0.01;

    /// <summary>How far a radius may be off that was written for places rounded to a hundredth, as a part of it.</summary>
    const double RoundedBy = 0.01;

    /// <summary>How many arcs of the same radius have to run smoothly in the same contour, for one that does not to be a slip: a corner may well be cut out round.</summary>
    const int LeastSmooth = 2;

    readonly List<TurnedArc> _found = [];
    readonly List<(TurnedArc Arc, double Radius)> _corners = [];
    readonly List<double> _smooth = [];
    Piece _before, _last;

    /// <summary>Begins a part: of what comes before it nothing is known.</summary>
    public void Begin() => EndContour();

    public void Note(Step step, int line)
    {
        if ((step.Events & StepEvents.Moves) == 0)
            return;
        if ((step.Events & StepEvents.Path) == 0 || !TryRead(step, line, out var piece) || (_last.IsThere && !_last.EndsAt(piece.From)))
        {
            EndContour();
            return;
        }
        if (_last.IsArc && _before.IsThere)
            Look(_before, _last, piece);
        (_before, _last) = (_last, piece);
    }

    /// <summary>Ends the part; an arc whose neighbour stands behind it is not known to be anything.</summary>
    public List<TurnedArc> Take()
    {
        EndContour();
        return _found;
    }

    void EndContour()
    {
        (_before, _last) = (default, default);
        if (_corners.Count == 1 && _smooth.Count(radius => Math.Abs(radius - _corners[0].Radius) <= Same) >= LeastSmooth)
            _found.Add(_corners[0].Arc);
        _corners.Clear();
        _smooth.Clear();
    }

    static bool TryRead(Step step, int line, out Piece piece)
    {
        piece = default;
        ref readonly var after = ref step.After;
        var (from, to) = (step.Before.ProgrammedPosition, after.ProgrammedPosition);
        if (after.Plane != WorkPlane.XY || !(from.IsKnown && to.IsKnown))
            return false;
        var (start, end) = (new Point2(from.X, from.Y), new Point2(to.X, to.Y));
        if (after.Motion == MotionMode.Linear)
        {
            piece = new Piece(start, end, default, 0, false, false, false, line);
            return !AreSame(start, end);
        }
        if (after.Motion is not (MotionMode.ArcClockwise or MotionMode.ArcCounterclockwise))
            return false;
        foreach (ref readonly var move in step.Moves.Items)
        {
            if (move.Kind != MoveKind.Arc || move.Plane != WorkPlane.XY || !move.Center.IsKnown)
                continue;
            // Arcs about a corner of the path are the control's own: their centre is an end.
            var center = new Point2(move.Center.X, move.Center.Y);
            var radius = (start - center).Length;
            if (radius <= Same || Math.Abs(radius - (end - center).Length) > Same)
                continue;
            piece = new Piece(start, end, center, radius, move.Clockwise, step.Words.Has('R'), after.Motion == MotionMode.ArcClockwise, line);
            return true;
        }
        return false;
    }

    void Look(in Piece before, in Piece arc, in Piece behind)
    {
        var (first, last) = (new Joint(before.DirectionAtEnd, arc.DirectionAtStart), new Joint(arc.DirectionAtEnd, behind.DirectionAtStart));
        if (first.IsWithin(Smooth) && last.IsWithin(Smooth))
        {
            _smooth.Add(arc.Radius);
            return;
        }
        if (arc.Tenfold(before.DirectionAtEnd, behind.DirectionAtStart) is > 0 and var tenfold)
        {
            _found.Add(new TurnedArc(arc.Line, arc.IsG2, IsWholeTurn: false, TurnsBack: false, tenfold));
            return;
        }
        if (first.IsWithin(Corner) || last.IsWithin(Corner) || arc.IsOn(before) || arc.IsOn(behind))
            return;
        var turned = arc.Turned();
        if (!new Joint(before.DirectionAtEnd, turned.DirectionAtStart).IsWithin(Smooth) || !new Joint(turned.DirectionAtEnd, behind.DirectionAtStart).IsWithin(Smooth))
            return;
        var turnsBack = first.Reversed.IsWithin(Back) && last.Reversed.IsWithin(Back);
        // A row of scallops: each comes back where the one before has ended.
        if (turnsBack && !arc.IsWholeTurn && (before.TurnsAs(arc) || behind.TurnsAs(arc)))
            return;
        var found = new TurnedArc(arc.Line, arc.IsG2, arc.IsWholeTurn, turnsBack);
        if (turnsBack)
            _found.Add(found);
        else
            _corners.Add((found, arc.Radius));
    }

    // Asked at every move: the square spares a root.
    static bool AreSame(Point2 a, Point2 b) => Point2.Dot(a - b, a - b) <= Same * Same;

    /// <summary>How two directions meet.</summary>
    /// <param name="Across">Their cross product.</param>
    /// <param name="Along">Their dot product.</param>
    readonly record struct Joint(double Across, double Along)
    {
        public Joint(Point2 a, Point2 b)
            : this(Point2.Cross(a, b), Point2.Dot(a, b))
        {
        }

        public Joint Reversed => new(Across, -Along);

        /// <summary>Whether they differ by no more than the angle of this tangent, below a right angle.</summary>
        public bool IsWithin(double tangent) => Along > 0 && Math.Abs(Across) <= tangent * Along;
    }

    /// <summary>A programmed move, seen from above.</summary>
    /// <param name="Radius">mm; 0 for a straight line.</param>
    /// <param name="IsByRadius">Whether R and not I, J gives the circle.</param>
    readonly record struct Piece(Point2 From, Point2 To, Point2 Center, double Radius, bool Clockwise, bool IsByRadius, bool IsG2, int Line)
    {
        public bool IsThere => From != To || IsArc;

        public bool IsArc => Radius > 0;

        public bool IsWholeTurn => IsArc && AreSame(From, To);

        public Point2 DirectionAtStart => IsArc ? Along(From) : To - From;

        public Point2 DirectionAtEnd => IsArc ? Along(To) : To - From;

        public bool EndsAt(Point2 place) => AreSame(place, To);

        /// <summary>Whether both are arcs of one circle: one goes back over the other.</summary>
        public bool IsOn(in Piece other) => IsArc && other.IsArc && AreSame(Center, other.Center) && Math.Abs(Radius - other.Radius) <= Same;

        public bool TurnsAs(in Piece arc) => IsArc && Clockwise == arc.Clockwise;

        /// <summary>The same with the other code: by R the centre lies on the other side, by I and J it stays.</summary>
        public Piece Turned()
        {
            if (!IsByRadius || IsWholeTurn)
                return this with { Clockwise = !Clockwise };
            var middle = (From + To) * 0.5;
            return this with { Clockwise = !Clockwise, Center = middle * 2 - Center };
        }

        /// <summary>How many times as large R is as the radius of the arc between the same ends that goes on smoothly from one direction to another, where that is 10, 100 or 1000; otherwise 0.</summary>
        public int Tenfold(Point2 start, Point2 end)
        {
            var chord = To - From;
            // No radius is shorter than half its chord: a tenth of this one would have to be as long. Most arcs are done with by that.
            if (!IsByRadius || IsWholeTurn || Radius < 10 * (1 - RoundedBy) * chord.Length / 2)
                return 0;
            // A tangent arc leaves its chord at both ends by the same angle.
            var (atStart, atEnd) = (Math.Atan2(Point2.Cross(start, chord), Point2.Dot(start, chord)), Math.Atan2(Point2.Cross(chord, end), Point2.Dot(chord, end)));
            if (Math.Abs(atStart - atEnd) > Smooth || Clockwise != atStart < 0)
                return 0;
            var times = Radius * 2 * Math.Abs(Math.Sin(atStart)) / chord.Length;
            var nearest = times < 5 ? 1 : times < 50 ? 10 : times < 500 ? 100 : 1000;
            return nearest > 1 && Math.Abs(times - nearest) <= RoundedBy * nearest ? nearest : 0;
        }

        Point2 Along(Point2 place) => (place - Center).Left * (Clockwise ? -1 : 1);
    }
}
