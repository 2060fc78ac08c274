namespace NcLanguage.Control.Compensation;

/// <summary>Where the end of one offset piece and the start of the next cross.</summary>
static class Crossings
{
    /// <summary>The crossing nearest to a corner that lies on both pieces, the first from <paramref name="from"/> mm of its length on; null where
    /// there is none.</summary>
    public static Point2? Nearest(in PathPiece first, double from, in PathPiece second, Point2 corner)
    {
        Point2? nearest = null;
        var (a, b) = Of(first, second);
        foreach (var place in (ReadOnlySpan<Point2>)[a, b])
        {
            if (!place.IsKnown || !Lies(first, place, from) || !Lies(second, place, 0))
                continue;
            if (nearest is not { } other || (place - corner).Length < (other - corner).Length)
                nearest = place;
        }
        return nearest;
    }

    static bool Lies(in PathPiece piece, Point2 place, double from)
    {
        var along = piece.Along(place);
        return along > from - PathPiece.Same && along < piece.Length + PathPiece.Same;
    }

    // The lines and circles the pieces lie on cross in two places at most; NaN where they do not. Circles have the radius that their arc has at
    // the corner, so that numbers rounded in the program do not move the crossing.
    static (Point2 A, Point2 B) Of(in PathPiece first, in PathPiece second)
    {
        if (first.IsArc && second.IsArc)
            return OfCircles(first.Centre, first.EndRadius, second.Centre, second.StartRadius);
        if (first.IsArc)
            return OfLineAndCircle(second.From, second.StartDirection, first.Centre, first.EndRadius);
        if (second.IsArc)
            return OfLineAndCircle(first.From, first.StartDirection, second.Centre, second.StartRadius);
        var (d, e) = (first.StartDirection, second.StartDirection);
        var place = first.From + d * (Point2.Cross(second.From - first.From, e) / Point2.Cross(d, e));
        return (place, place);
    }

    static (Point2 A, Point2 B) OfLineAndCircle(Point2 on, Point2 direction, Point2 centre, double radius)
    {
        var foot = on + direction * Point2.Dot(centre - on, direction);
        var half = Math.Sqrt(radius * radius - Point2.Dot(foot - centre, foot - centre));
        return (foot - direction * half, foot + direction * half);
    }

    static (Point2 A, Point2 B) OfCircles(Point2 a, double radiusA, Point2 b, double radiusB)
    {
        var between = b - a;
        var distance = between.Length;
        var along = (distance * distance + radiusA * radiusA - radiusB * radiusB) / (2 * distance);
        var half = Math.Sqrt(radiusA * radiusA - along * along);
        var foot = a + between.Unit * along;
        return (foot - between.Left.Unit * half, foot + between.Left.Unit * half);
    }
}
