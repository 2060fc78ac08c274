using CsCheck;
using MathNet.Numerics.Integration;
using NcLanguage.Control.Compensation;
using NcLanguage.Control.Moves;
using NcLanguage.Control.Tests.Execution;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Buffer;

namespace NcLanguage.Control.Tests.Compensation;

/// <summary>The tool's centre path of random contours, against the buffers of NetTopologySuite and the integrals of Math.NET Numerics.</summary>
public sealed class OffsetPathTests
{
    /// <summary>What chords in place of arcs, more so where they cross at a flat angle, and the buffer's own corners may be off by, mm.</summary>
    const double Tolerance = 0.01;

    static readonly BufferParameters Fine = new() { QuadrantSegments = 48, SimplifyFactor = 0.0001 };

    static Session Cut(PathPiece[] contour, double toLeft)
    {
        var setup = Setup.None with { Tools = [new Tool { Number = 1, Diameter = 2 * Math.Abs(toLeft) }] };
        var (leadIn, round, leadOut) = Contours.Program(contour, toLeft);
        var session = new Session(setup: setup, start: default(Point3)).Run([.. leadIn, .. round, .. leadOut]);
        Assert.Empty(session.Faults);
        // The rapid there, the way in, and the way out are none of the contour's.
        session.Moves.RemoveAt(session.Moves.Count - 1);
        session.Moves.RemoveRange(0, 2);
        return session;
    }

    static PathPiece Piece(Move move)
    {
        var (from, to) = (new Point2(move.From.X, move.From.Y), new Point2(move.To.X, move.To.Y));
        return move.Kind == MoveKind.Arc ? PathPiece.Arc(from, to, new Point2(move.Center.X, move.Center.Y), move.Clockwise) : PathPiece.Line(from, to);
    }

    static void RunsAlongTheBuffer(PathPiece[] contour, double toLeft)
    {
        var outline = ((Polygon)Contours.ToPolygon(contour).Buffer(-toLeft, Fine)).ExteriorRing;
        var centre = Cut(contour, toLeft).Moves.Select(Piece).ToList();
        foreach (var place in centre.SelectMany(piece => Contours.Sample(piece, 5)))
            Assert.True(outline.Distance(new Point(place.X, place.Y)) < Tolerance, $"{place} is {outline.Distance(new Point(place.X, place.Y))} off");
        // All of the outline and nothing twice.
        Assert.Equal(outline.Length, centre.Sum(piece => piece.Length), outline.Length / 2000);
    }

    [Fact]
    public void Outside_of_convex_contours() =>
        Gen.Select(Contours.Convex, Gen.Double[0.5, 12]).Sample((contour, radius) => RunsAlongTheBuffer(contour, -radius), iter: 400);

    [Fact]
    public void Inside_of_convex_contours() =>
        Gen.Select(Contours.Convex, Gen.Double[0.2, 1]).Sample((contour, radius) => RunsAlongTheBuffer(contour, radius), iter: 300);

    [Fact]
    public void Outside_of_star_shaped_contours() =>
        Gen.Select(Contours.Star, Gen.Double[0.5, 5]).Sample((contour, radius) => RunsAlongTheBuffer(contour, -radius), iter: 400);

    [Fact]
    public void Inside_of_star_shaped_contours() =>
        Gen.Select(Contours.Star, Gen.Double[0.5, 5]).Sample((contour, radius) => RunsAlongTheBuffer(contour, radius), iter: 400);

    /// <summary>Tangent corners whose numbers are rounded to 0.001 mm are refused on neither side, and make no way that shows: tools up to a tenth smaller than
    /// the inside corners. Lengths of the path from the rectangle's own: 2 (w + h) − 8 R + 2 π (R ± r).</summary>
    [Fact]
    public void Rounded_numbers_are_no_corners() => Gen.Select(Contours.Rounded, Gen.Double[0.1, 0.9], Gen.Bool).Sample((rounded, share, isInside) =>
    {
        var (contour, corner) = rounded;
        var radius = corner * share;
        var straight = contour.Where(piece => !piece.IsArc).Sum(piece => piece.Length);
        var (_, length) = Measure(Cut(contour, isInside ? radius : -radius).Moves.Select(Piece));

        Assert.Equal(straight + 2 * Math.PI * (isInside ? corner - radius : corner + radius), length, 0.02);
    }, iter: 2000);

    /// <summary>Steiner's formula: a convex figure of area A and outline L grows by r to the area A + r L + π r², its outline to L + 2 π r. Areas by Green's
    /// theorem, integrated numerically.</summary>
    [Fact]
    public void Convex_contours_grow_as_Steiner_says() => Gen.Select(Contours.Convex, Gen.Double[0.5, 12]).Sample((contour, radius) =>
    {
        var (area, length) = Measure(contour);
        var (grown, outline) = Measure(Cut(contour, -radius).Moves.Select(Piece));

        Assert.Equal(area + radius * length + Math.PI * radius * radius, grown, 1e-6 * grown);
        Assert.Equal(length + 2 * Math.PI * radius, outline, 1e-6 * outline);
    }, iter: 500);

    /// <summary>Round the outside of a contour to the right is round the inside of the same contour run backwards to the left.</summary>
    [Fact]
    public void Backwards_and_to_the_other_side_is_the_same_path() => Gen.Select(Contours.Star, Gen.Double[0.5, 5]).Sample((contour, radius) =>
    {
        var backwards = contour.Reverse().Select(piece => piece with { From = piece.To, To = piece.From, Bend = (Bend)(-(int)piece.Bend) }).ToArray();

        var (area, length) = Measure(Cut(contour, -radius).Moves.Select(Piece));
        var (other, otherLength) = Measure(Cut(backwards, radius).Moves.Select(Piece));

        Assert.Equal(area, -other, 1e-6 * area);
        Assert.Equal(length, otherLength, 1e-6 * length);
    }, iter: 300);

    static (double Area, double Length) Measure(IEnumerable<PathPiece> pieces)
    {
        var (area, length) = (0.0, 0.0);
        foreach (var piece in pieces)
        {
            if (!piece.IsArc)
            {
                area += Point2.Cross(piece.From, piece.To) / 2;
                length += (piece.To - piece.From).Length;
                continue;
            }
            var arm = piece.From - piece.Centre;
            var back = piece.To - piece.Centre;
            var (start, end) = (Math.Atan2(arm.Y, arm.X), Math.Atan2(back.Y, back.X));
            if (piece.Bend == Bend.Counterclockwise && end < start)
                end += 2 * Math.PI;
            if (piece.Bend == Bend.Clockwise && end > start)
                end -= 2 * Math.PI;
            var (centre, radius) = (piece.Centre, arm.Length);
            // ½ ∮ (x dy − y dx), and the length of the way.
            area += GaussLegendreRule.Integrate(
                t => (centre.X + radius * Math.Cos(t)) * radius * Math.Cos(t) / 2 + (centre.Y + radius * Math.Sin(t)) * radius * Math.Sin(t) / 2, start, end, 32);
            length += GaussLegendreRule.Integrate(_ => radius, Math.Min(start, end), Math.Max(start, end), 8);
        }
        return (area, length);
    }
}
