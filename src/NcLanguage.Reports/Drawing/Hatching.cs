namespace NcLanguage.Reports.Drawing;

/// <summary>Lines at 45 degrees, cut to the outline: drawn one by one, so that they print as they are seen.</summary>
public static class Hatching
{
    /// <summary>More lines than this are too fine to be told apart.</summary>
    const int MostLines = 400;

    /// <param name="gap">Between two lines, mm of paper.</param>
    public static void Box(SvgWriter svg, Rectangle place, double gap)
    {
        ArgumentNullException.ThrowIfNull(svg);
        var path = new SvgPath(place);
        // Lines x + y = c; neighbours are gap apart across their way.
        var (first, last) = (place.Left + place.Top, place.Right + place.Bottom);
        var step = Step(gap, last - first);
        foreach (var c in Places(first, last, step))
            path.Line((c - place.Top, place.Top), (c - place.Bottom, place.Bottom));
        svg.Path(path, LineKind.Thin);
    }

    /// <inheritdoc cref="Box"/>
    public static void Disc(SvgWriter svg, double x, double y, double radius, double gap)
    {
        ArgumentNullException.ThrowIfNull(svg);
        var path = new SvgPath(new Rectangle(x - radius, y - radius, 2 * radius, 2 * radius));
        var reach = radius * Math.Sqrt(2);
        var step = Step(gap, 2 * reach);
        foreach (var c in Places(x + y - reach, x + y + reach, step))
        {
            // Distance of the line from the middle, and half the chord along it.
            var off = (c - x - y) / Math.Sqrt(2);
            var half = Math.Sqrt(Math.Max(0, radius * radius - off * off)) / Math.Sqrt(2);
            var (middleX, middleY) = (x + off / Math.Sqrt(2), y + off / Math.Sqrt(2));
            path.Line((middleX + half, middleY - half), (middleX - half, middleY + half));
        }
        svg.Path(path, LineKind.Thin);
    }

    /// <summary>The multiples of a step between two numbers: counted, for far from zero a step may be too small to lead on.</summary>
    static IEnumerable<double> Places(double first, double last, double step)
    {
        var start = Math.Ceiling(first / step) * step;
        for (var i = 0; i <= MostLines && start + i * step < last; i++)
            yield return start + i * step;
    }

    static double Step(double gap, double across) => Math.Max(gap * Math.Sqrt(2), across / MostLines);
}
