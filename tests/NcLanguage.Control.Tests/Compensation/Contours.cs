using System.Globalization;
using CsCheck;
using NcLanguage.Control.Compensation;
using NetTopologySuite.Geometries;

namespace NcLanguage.Control.Tests.Compensation;

/// <summary>Random closed contours of straight lines and arcs, counterclockwise, and the programs that cut along them.</summary>
static class Contours
{
    /// <summary>Convex: corners on a circle; an arc between two of them is the circle's own.</summary>
    public static Gen<PathPiece[]> Convex { get; } = Gen.Select(Gen.Int[3, 10], Gen.Double[20, 80], Gen.Double[0.2, 1].Array[10], Gen.Bool.Array[10])
        .Select((corners, radius, steps, isArc) =>
        {
            var (whole, angle) = (steps.Take(corners).Sum(), 0.3);
            var places = new List<Point2>();
            foreach (var step in steps.Take(corners))
            {
                places.Add(new Point2(radius * Math.Cos(angle), radius * Math.Sin(angle)));
                angle += step / whole * 2 * Math.PI;
            }
            return Close(places, (from, to, i) => isArc[i] ? PathPiece.Arc(from, to, new Point2(0, 0), clockwise: false) : PathPiece.Line(from, to));
        })
        // A chord next to a half circle would not close round the centre.
        .Where(pieces => pieces.All(piece => (piece.To - piece.From).Length > 6 && Point2.Cross(piece.From, piece.To) > 0));

    /// <summary>Star-shaped, with inside and outside corners; arcs bulge in or out by up to a seventh of their chord.</summary>
    public static Gen<PathPiece[]> Star { get; } = Gen.Select(Gen.Int[5, 10], Gen.Double[60, 100].Array[10], Gen.Double[-1, 1].Array[10])
        .Select((corners, radii, bulges) =>
        {
            var places = Enumerable.Range(0, corners)
                .Select(i => new Point2(radii[i] * Math.Cos(2 * Math.PI * i / corners), radii[i] * Math.Sin(2 * Math.PI * i / corners))).ToList();
            return Close(places, (from, to, i) => Math.Abs(bulges[i]) < 0.3 ? PathPiece.Line(from, to) : Bulge(from, to, bulges[i] / 7));
        });

    /// <summary>A rectangle with rounded corners, turned by any angle, its numbers rounded to 0.001 mm as a program gives them.</summary>
    public static Gen<(PathPiece[] Contour, double CornerRadius)> Rounded { get; } =
        Gen.Select(Gen.Double[30, 120], Gen.Double[30, 120], Gen.Double[1, 14], Gen.Double[0, 2 * Math.PI]).Select((width, height, radius, angle) =>
        {
            radius = Math.Round(radius, 1);
            var (sin, cos) = Math.SinCos(angle);
            Point2 At(double x, double y) => new(Math.Round(x * cos - y * sin, 3), Math.Round(x * sin + y * cos, 3));
            Point2[] places =
            [
                At(radius, 0), At(width - radius, 0), At(width, radius), At(width, height - radius), At(width - radius, height), At(radius, height),
                At(0, height - radius), At(0, radius),
            ];
            Point2[] centres = [At(width - radius, radius), At(width - radius, height - radius), At(radius, height - radius), At(radius, radius)];
            return (places.Select((place, i) => i % 2 == 0
                ? PathPiece.Line(place, places[i + 1])
                : PathPiece.Arc(place, places[(i + 1) % 8], centres[i / 2], clockwise: false)).ToArray(), radius);
        });

    static PathPiece[] Close(List<Point2> places, Func<Point2, Point2, int, PathPiece> piece) =>
        [.. places.Select((place, i) => piece(place, places[(i + 1) % places.Count], i))];

    // An arc as high as this share of its chord, to the right of its way where above 0.
    static PathPiece Bulge(Point2 from, Point2 to, double share)
    {
        var chord = to - from;
        var height = Math.Abs(share) * chord.Length;
        var radius = chord.Length * chord.Length / (8 * height) + height / 2;
        var side = Math.Sign(share);
        return PathPiece.Arc(from, to, from + chord * 0.5 + chord.Left.Unit * (side * (radius - height)), clockwise: side < 0);
    }

    /// <summary>A program once round a contour, from the middle of its first piece; in along the tangent from beside it, so that nothing but the
    /// contour is cut.</summary>
    /// <param name="toLeft">The tool's radius: to the left above 0, to the right below.</param>
    public static (string[] LeadIn, string[] Round, string[] LeadOut) Program(PathPiece[] contour, double toLeft)
    {
        var start = Sample(contour[0], 2).Last();
        var (firstHalf, secondHalf) = (contour[0] with { To = start }, contour[0] with { From = start });
        var direction = secondHalf.StartDirection;
        var before = start - direction * (2 * Math.Abs(toLeft)) + direction.Left * toLeft;
        return (
            ["G0 G90 G17" + Words(before), $"G1 {(toLeft > 0 ? "G41" : "G42")} D1 F100" + Words(start)],
            [Block(secondHalf), .. contour.Skip(1).Select(Block), Block(firstHalf)],
            ["G40 G0" + Words(start + direction * 10)]);
    }

    static string Block(PathPiece piece) => piece.Bend switch
    {
        Bend.Straight => "G1" + Words(piece.To),
        var bend => (bend == Bend.Clockwise ? "G2" : "G3") + Words(piece.To) + Words(piece.Centre - piece.From, 'I', 'J'),
    };

    static string Words(Point2 place, char x = 'X', char y = 'Y') => $" {x}{Number(place.X)} {y}{Number(place.Y)}";

    static string Number(double value) => Math.Round(value, 9).ToString("0.#########", CultureInfo.InvariantCulture);

    /// <summary>The contour as a polygon, arcs as chords that lie within 0.0001 mm of them.</summary>
    public static Polygon ToPolygon(PathPiece[] contour)
    {
        List<Coordinate> places = [];
        foreach (var piece in contour)
            places.AddRange(Sample(piece, piece.IsArc ? 2 + (int)(piece.Length / Math.Sqrt(8 * 0.0001 * piece.StartRadius)) : 1).Select(place => new Coordinate(place.X, place.Y)));
        places.Add(places[0].Copy());
        return new Polygon(new LinearRing([.. places]));
    }

    /// <summary>Places along a piece at even steps, its end left out.</summary>
    public static IEnumerable<Point2> Sample(PathPiece piece, int steps)
    {
        var turn = piece.IsArc ? piece.Length / ((piece.StartRadius + piece.EndRadius) / 2) * (int)piece.Bend : 0;
        for (var i = 0; i < steps; i++)
        {
            var share = (double)i / steps;
            if (!piece.IsArc)
                yield return piece.From + (piece.To - piece.From) * share;
            else
            {
                var (arm, (sin, cos)) = (piece.From - piece.Centre, Math.SinCos(turn * share));
                yield return piece.Centre + new Point2(arm.X * cos - arm.Y * sin, arm.X * sin + arm.Y * cos);
            }
        }
    }
}
