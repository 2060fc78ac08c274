namespace NcLanguage.Reports.Drawing;

/// <summary>Dimension lines: extension lines that begin a little off the object and go a little past, a line with arrows, the text upon it
/// (ISO 129-1, from memory). All places in mm of paper.</summary>
public static class Dimensions
{
    const double Off = 1;
    const double Past = 1.5;
    const double Arrow = 2.5;

    // Closed arrows of about 15 degrees.
    const double HalfArrow = Arrow * 0.13;

    /// <summary>A distance across the paper.</summary>
    /// <param name="x1">One end.</param>
    /// <param name="x2">The other.</param>
    /// <param name="y1">Where the object ends at <paramref name="x1"/>: its extension line begins off it.</param>
    /// <param name="y2">The same at <paramref name="x2"/>.</param>
    /// <param name="yLine">Level of the dimension line.</param>
    /// <param name="text">With its unit, unless the drawing says once for all which that is.</param>
    public static void Across(SvgWriter svg, double x1, double x2, double y1, double y2, double yLine, string text)
    {
        ArgumentNullException.ThrowIfNull(svg);
        ArgumentNullException.ThrowIfNull(text);
        Extension(svg, x1, y1, x1, yLine);
        Extension(svg, x2, y2, x2, yLine);
        var (left, right) = (Math.Min(x1, x2), Math.Max(x1, x2));
        var room = right - left;
        var width = WidthOf(text);
        // Where there is no room between, the arrows point from outside.
        var isInside = room >= 2 * Arrow + 1;
        svg.Line(isInside ? left : left - 2 * Arrow, yLine, isInside ? right : right + 2 * Arrow, yLine, LineKind.Thin);
        Head(svg, left, yLine, isInside ? 1 : -1, 0);
        Head(svg, right, yLine, isInside ? -1 : 1, 0);
        if (room >= width + 1)
            svg.Text((left + right) / 2, yLine - 0.8, text, anchor: TextAnchor.Middle);
        else
            svg.Text(right + (isInside ? 1 : 2 * Arrow + 1), yLine - 0.8, text);
    }

    /// <summary>A distance up the paper; the text reads from below to above, left of the line.</summary>
    /// <param name="y1">One end.</param>
    /// <param name="y2">The other.</param>
    /// <param name="x1">Where the object ends at <paramref name="y1"/>: its extension line begins off it.</param>
    /// <param name="x2">The same at <paramref name="y2"/>.</param>
    /// <param name="xLine">Where the dimension line stands.</param>
    /// <param name="text">With its unit, unless the drawing says once for all which that is.</param>
    public static void Upward(SvgWriter svg, double y1, double y2, double x1, double x2, double xLine, string text)
    {
        ArgumentNullException.ThrowIfNull(svg);
        ArgumentNullException.ThrowIfNull(text);
        Extension(svg, x1, y1, xLine, y1);
        Extension(svg, x2, y2, xLine, y2);
        var (top, bottom) = (Math.Min(y1, y2), Math.Max(y1, y2));
        var room = bottom - top;
        var isInside = room >= 2 * Arrow + 1;
        svg.Line(xLine, isInside ? top : top - 2 * Arrow, xLine, isInside ? bottom : bottom + 2 * Arrow, LineKind.Thin);
        Head(svg, xLine, top, 0, isInside ? 1 : -1);
        Head(svg, xLine, bottom, 0, isInside ? -1 : 1);
        if (room >= WidthOf(text) + 1)
            svg.Text(xLine - 0.8, (top + bottom) / 2, text, anchor: TextAnchor.Middle, degrees: 90);
        else
            svg.Text(xLine - 0.8, top - (isInside ? 1 : 2 * Arrow + 1), text, degrees: 90);
    }

    /// <summary>About how wide a text is.</summary>
    public static double WidthOf(string text, double height = DrawingStyle.SmallText)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length * height * DrawingStyle.LetterWidth;
    }

    /// <summary>The filled head of an arrow: its point, and the way from there to its base (one of the axes of the paper).</summary>
    public static void Head(SvgWriter svg, double x, double y, int backX, int backY)
    {
        ArgumentNullException.ThrowIfNull(svg);
        var (baseX, baseY) = (x + backX * Arrow, y + backY * Arrow);
        svg.Solid((x, y), (baseX + backY * HalfArrow, baseY + backX * HalfArrow), (baseX - backY * HalfArrow, baseY - backX * HalfArrow));
    }

    static void Extension(SvgWriter svg, double x, double y, double toX, double toY)
    {
        var (wayX, wayY) = (Math.Sign(toX - x), Math.Sign(toY - y));
        if (Math.Abs(toX - x) + Math.Abs(toY - y) > Off)
            svg.Line(x + wayX * Off, y + wayY * Off, toX + wayX * Past, toY + wayY * Past, LineKind.Thin);
    }
}
