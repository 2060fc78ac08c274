using System.Collections.Immutable;
using NcLanguage.Checks;
using NcLanguage.Checks.Cutting;

namespace NcLanguage.Reports.Figures;

/// <summary>Holes on circles, arcs and in grids, as places and as blocks.</summary>
public static class PatternFigures
{
    const string Circle = "X = Xc + R·cos, Y = Yc + R·sin";

    /// <summary>Holes on a circle or an arc.</summary>
    /// <param name="name">circle or arc.</param>
    /// <param name="step">Degrees from hole to hole.</param>
    /// <param name="incremental">Blocks as distances; null for none.</param>
    /// <param name="inBlocks">The unit the blocks are written in.</param>
    public static FigureReport Round(
        string name, PatternHole centre, double diameter, int holes, double start, double step, FigureUnit unit, bool? incremental, FigureUnit inBlocks)
    {
        var places = HolePattern.Arc(centre, diameter, holes, start, step);
        ImmutableArray<FigureRow> rows = [new("angle from hole to hole", step, "°", name == "circle" ? "360° / holes" : "as given, or the arc by the gaps", "geometry of the circle", 4)];
        if (holes > 1)
            rows = rows.Add(unit.Length("straight distance between neighbours", HolePattern.Chord(diameter, step), "D·sin(angle/2)", "geometry of the circle"));
        return Report(name, places, [.. rows, .. Rows(places, Circle, unit)], centre, unit, incremental, inBlocks);
    }

    /// <summary>Holes in rows and columns.</summary>
    /// <param name="incremental">Blocks as distances; null for none.</param>
    /// <param name="inBlocks">The unit the blocks are written in.</param>
    public static FigureReport Grid(
        PatternHole first, int columns, int rows, double stepX, double stepY, double turn, FigureUnit unit, bool? incremental, FigureUnit inBlocks)
    {
        var places = HolePattern.Grid(first, columns, rows, stepX, stepY, turn);
        var formula = turn == 0 ? "X = X1 + i·step, Y = Y1 + j·step" : "X = X1 + x·cos − y·sin, Y = Y1 + x·sin + y·cos";
        return Report("grid", places, [.. Rows(places, formula, unit)], first, unit, incremental, inBlocks);
    }

    static IEnumerable<FigureRow> Rows(ImmutableArray<PatternHole> places, string formula, FigureUnit unit)
    {
        for (var i = 0; i < places.Length; i++)
        {
            yield return unit.Length($"hole {i + 1} X", places[i].X, formula, "plane geometry");
            yield return unit.Length($"hole {i + 1} Y", places[i].Y, formula, "plane geometry");
        }
    }

    static FigureReport Report(
        string name, ImmutableArray<PatternHole> places, ImmutableArray<FigureRow> rows, PatternHole from, FigureUnit unit, bool? incremental, FigureUnit inBlocks) =>
        new(name, rows)
        {
            Holes = [.. places.Select(place => (unit.Of(place.X), unit.Of(place.Y)))],
            Blocks = incremental is { } distances ? Blocks(places, from, distances, inBlocks) : [],
            BlocksAreDistances = incremental == true,
        };

    /// <summary>One block for each hole. Distances are between places as they are written, so that what is rounded off does not add up; the first
    /// one counts from <paramref name="from"/>.</summary>
    static ImmutableArray<string> Blocks(ImmutableArray<PatternHole> places, PatternHole from, bool distances, FigureUnit unit)
    {
        var blocks = ImmutableArray.CreateBuilder<string>(places.Length);
        var (lastX, lastY) = (Written(from.X, unit), Written(from.Y, unit));
        foreach (var place in places)
        {
            var (x, y) = (Written(place.X, unit), Written(place.Y, unit));
            blocks.Add($"X{Number(distances ? x - lastX : x, unit)} Y{Number(distances ? y - lastY : y, unit)}");
            (lastX, lastY) = (x, y);
        }
        return blocks.ToImmutable();
    }

    static double Written(double mm, FigureUnit unit) => Math.Round(unit.Of(mm), unit.Decimals, MidpointRounding.AwayFromZero);

    // With a point always: a control that counts whole numbers in its smallest step reads the same.
    static string Number(double value, FigureUnit unit) => Say.WithPoint(Say.Number(value, unit.Decimals));
}
