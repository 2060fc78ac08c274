namespace NcLanguage.Control.Compensation;

/// <summary>Where a piece of the offset path ends.</summary>
/// <param name="At">The tool's centre there, mm.</param>
/// <param name="Fits">False where an inside corner leaves the tool no room: then the place is square to the end of the programmed piece.</param>
public readonly record struct PieceEnd(Point2 At, bool Fits);

/// <summary>How a piece of the offset path begins, seen from where the tool stands.</summary>
public enum PieceStart : byte
{
    /// <summary>The tool stands on it.</summary>
    Here,

    /// <summary>An outside corner: the tool goes round it on an arc of its radius.</summary>
    Round,

    /// <summary>The tool stands elsewhere and goes there straight.</summary>
    Aside,
}

/// <summary>The path of a tool's centre that keeps a distance from the programmed path: to its left for a distance above 0, to its right
/// below (NISTIR 6556 §3.5.10 and appendix B). Lengths in mm.</summary>
public static class OffsetPath
{
    /// <summary>Ends of two offset pieces nearer than this are one, mm: a tangent corner whose numbers are rounded.</summary>
    public const double Tangent = 0.001;

    /// <summary>Where the first move under compensation ends: the straight way from where the tool stands that touches the circle of the tool's
    /// radius about the programmed end (NISTIR 6556 appendix B). Null when the way is shorter than the radius.</summary>
    public static Point2? Entry(Point2 from, Point2 to, double toLeft)
    {
        var radius = Math.Abs(toLeft);
        var back = from - to;
        if (radius == 0)
            return to;
        if (back.Length < radius - PathPiece.Same)
            return null;
        var turn = Math.Acos(Math.Min(1, radius / back.Length)) * -Math.Sign(toLeft);
        var (sin, cos) = Math.SinCos(turn);
        return to + new Point2(back.X * cos - back.Y * sin, back.X * sin + back.Y * cos).Unit * radius;
    }

    /// <summary>Where the first move ends when the piece that follows is known: on the touching way where it bends away from the tool; square
    /// to the start of the piece where it bends towards the tool, which would else cut into it (common practice; the published specification refuses it).</summary>
    public static Point2? Entry(Point2 from, Point2 to, double toLeft, in PathPiece next)
    {
        if (Entry(from, to, toLeft) is not { } touch)
            return null;
        var square = to + next.StartDirection.Left * toLeft;
        var direction = (to - touch).Left * Math.Sign(toLeft);
        return Point2.Cross(direction, next.StartDirection) * toLeft > 0 && square.IsKnown ? square : touch;
    }

    /// <summary>Where an offset piece ends for the piece that follows: square to the programmed end at a tangent or an outside corner, where the two
    /// offset pieces cross at an inside one.</summary>
    /// <param name="piece">The programmed piece.</param>
    /// <param name="offset">Its offset.</param>
    /// <param name="from">Where on the offset the tool starts, mm of its length.</param>
    /// <param name="next">The programmed piece that follows.</param>
    public static PieceEnd End(in PathPiece piece, in PathPiece offset, double from, in PathPiece next, double toLeft)
    {
        var (here, there) = (piece.EndDirection, next.StartDirection);
        var turn = Point2.Cross(here, there) * toLeft;
        var gap = (there.Left - here.Left).Length * Math.Abs(toLeft);
        var isBack = Point2.Dot(here, there) < 0 && Math.Abs(turn) < PathPiece.Same * Math.Abs(toLeft);
        // Straight back on itself is the end of a wall: the tool goes round it. An arc too small for the tool is told at its own block.
        if (gap <= Tangent || turn < 0 || isBack || next.Offset(toLeft) is not { } following)
            return new(offset.To, true);
        return Crossings.Nearest(offset, from, following, piece.To) is { } crossing ? new(crossing, true) : new(offset.To, false);
    }

    /// <summary>How the tool comes onto an offset piece.</summary>
    /// <param name="tool">Where its centre stands.</param>
    /// <param name="corner">The programmed place that the piece starts from.</param>
    /// <param name="from">Where on the offset the tool then is, mm of its length.</param>
    public static PieceStart Start(Point2 tool, Point2 corner, in PathPiece offset, double toLeft, out double from)
    {
        from = 0;
        if ((tool - offset.From).Length <= Tangent)
            return PieceStart.Here;
        if (offset.Holds(tool))
        {
            from = offset.Along(tool);
            return PieceStart.Here;
        }
        var (here, there) = (tool - corner, offset.From - corner);
        // Round the corner the tool turns away from the side it keeps to, by half a turn at most.
        var isSquare = Math.Abs(here.Length - Math.Abs(toLeft)) < Tangent;
        var isAway = Point2.Cross(here, there) * Math.Sign(toLeft) < PathPiece.Same * toLeft * toLeft;
        return isSquare && isAway ? PieceStart.Round : PieceStart.Aside;
    }
}
