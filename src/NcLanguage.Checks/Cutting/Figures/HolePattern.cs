using System.Collections.Immutable;

namespace NcLanguage.Checks.Cutting;

/// <summary>A hole's place in work coordinates, mm.</summary>
public readonly record struct PatternHole(double X, double Y);

/// <summary>Holes on circles, arcs and in grids. Lengths in mm; angles in degrees from X, counterclockwise as ISO 841 turns about Z.</summary>
public static class HolePattern
{
    /// <summary>The most holes of a pattern: a slip of the keyboard must not fill the memory.</summary>
    public const int Most = 10_000;

    /// <summary>Holes spread evenly over a circle: X = Xc + R·cos, Y = Yc + R·sin.</summary>
    /// <param name="diameter">Of the circle through the holes' axes.</param>
    /// <param name="start">Angle of the first hole.</param>
    public static ImmutableArray<PatternHole> Circle(PatternHole centre, double diameter, int holes, double start) =>
        Arc(centre, diameter, holes, start, 360.0 / holes);

    /// <summary>Holes on an arc, each <paramref name="step"/> further round; a negative step goes clockwise.</summary>
    /// <param name="diameter">Of the circle through the holes' axes.</param>
    /// <param name="start">Angle of the first hole.</param>
    public static ImmutableArray<PatternHole> Arc(PatternHole centre, double diameter, int holes, double start, double step)
    {
        var places = ImmutableArray.CreateBuilder<PatternHole>(holes);
        for (var hole = 0; hole < holes; hole++)
        {
            var (sin, cos) = SinCos(start + hole * step);
            places.Add(new PatternHole(centre.X + diameter / 2 * cos, centre.Y + diameter / 2 * sin));
        }
        return places.MoveToImmutable();
    }

    /// <summary>Holes in rows along X and columns along Y, turned about the first hole. Every second row runs back, so that the way between rows is short.</summary>
    /// <param name="first">The first hole.</param>
    /// <param name="turn">Angle of the rows to X.</param>
    public static ImmutableArray<PatternHole> Grid(PatternHole first, int columns, int rows, double stepX, double stepY, double turn)
    {
        var (sin, cos) = SinCos(turn);
        var places = ImmutableArray.CreateBuilder<PatternHole>(columns * rows);
        for (var row = 0; row < rows; row++)
        {
            for (var i = 0; i < columns; i++)
            {
                var x = stepX * (row % 2 == 0 ? i : columns - 1 - i);
                var y = stepY * row;
                places.Add(new PatternHole(first.X + x * cos - y * sin, first.Y + x * sin + y * cos));
            }
        }
        return places.MoveToImmutable();
    }

    /// <summary>Straight distance between neighbours on a circle, mm: D·sin(step/2).</summary>
    /// <param name="step">Angle between them.</param>
    public static double Chord(double diameter, double step) => diameter * Math.Abs(Math.Sin(double.DegreesToRadians(step / 2)));

    /// <summary>Quarter turns come out whole.</summary>
    static (double Sin, double Cos) SinCos(double angle)
    {
        var turned = Math.IEEERemainder(angle, 360);
        return turned switch
        {
            0 => (0, 1),
            90 => (1, 0),
            -90 => (-1, 0),
            180 or -180 => (0, -1),
            _ => Math.SinCos(double.DegreesToRadians(turned)),
        };
    }
}
