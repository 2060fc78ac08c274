using NcLanguage.Checks;

namespace NcLanguage.Reports.Drawing;

/// <summary>Signs on drawings, each at a place in mm of paper.</summary>
public static class Marks
{
    /// <summary>The datum: a circle with two opposite quarters filled, its axes crossing it (common practice in the trade).</summary>
    public static void Datum(SvgWriter svg, double x, double y, string name, double radius = 2.5)
    {
        ArgumentNullException.ThrowIfNull(svg);
        svg.Circle(x, y, radius, LineKind.Thin, "d-paper");
        svg.Sector(x, y, radius, 0, 90);
        svg.Sector(x, y, radius, 180, 270);
        svg.Circle(x, y, radius, LineKind.Thin);
        svg.Line(x - 2 * radius, y, x + 2 * radius, y, LineKind.Thin);
        svg.Line(x, y - 2 * radius, x, y + 2 * radius, LineKind.Thin);
        if (name.Length > 0)
            svg.Text(x - radius - 0.5, y + radius + DrawingStyle.SmallText, name, anchor: TextAnchor.End);
    }

    /// <summary>A hole in the plan: its circle, its axes, and its number where there is room for one.</summary>
    /// <param name="radius">Radius on the paper; not above 0 where the diameter is not known: then the axes alone stand for it.</param>
    /// <param name="number">Empty for none.</param>
    public static void Hole(SvgWriter svg, double x, double y, double radius, string number = "")
    {
        ArgumentNullException.ThrowIfNull(svg);
        ArgumentNullException.ThrowIfNull(number);
        if (radius > 0)
            svg.Circle(x, y, radius, LineKind.Outline);
        var reach = Math.Max(radius, 0.5) + 1;
        svg.Line(x - reach, y, x + reach, y, LineKind.Thin);
        svg.Line(x, y - reach, x, y + reach, LineKind.Thin);
        if (number.Length > 0)
            svg.Text(x + reach * 0.6, y - reach * 0.6, number);
    }

    /// <summary>A hole in front or side view: its axis from its R level to its bottom.</summary>
    public static void HoleAxis(SvgWriter svg, double x, double top, double bottom)
    {
        ArgumentNullException.ThrowIfNull(svg);
        svg.Line(x, Math.Min(top, bottom) - 1, x, Math.Max(top, bottom) + 1, LineKind.Axis);
    }

    /// <summary>A contact: a ring with a cross.</summary>
    public static void Contact(SvgWriter svg, double x, double y, double radius = 2.2)
    {
        ArgumentNullException.ThrowIfNull(svg);
        svg.Circle(x, y, radius, LineKind.Contact);
        var arm = radius * Math.Sqrt(0.5);
        svg.Line(x - arm, y - arm, x + arm, y + arm, LineKind.Contact);
        svg.Line(x - arm, y + arm, x + arm, y - arm, LineKind.Contact);
    }

    /// <summary>Two arrows with the letters of the axes of a view.</summary>
    /// <param name="sign">−1 where the axis across grows to the left.</param>
    public static void Axes(SvgWriter svg, double x, double y, char across, char up, int sign)
    {
        ArgumentNullException.ThrowIfNull(svg);
        const double Length = 7;
        svg.Line(x, y, x + sign * Length, y, LineKind.Thin);
        svg.Line(x, y, x, y - Length, LineKind.Thin);
        Dimensions.Head(svg, x + sign * Length, y, -sign, 0);
        Dimensions.Head(svg, x, y - Length, 0, 1);
        svg.Text(x + sign * (Length + 1.2), y + 0.9, across.ToString(), anchor: sign > 0 ? TextAnchor.Start : TextAnchor.End);
        svg.Text(x, y - Length - 0.8, up.ToString(), anchor: TextAnchor.Middle);
    }

    /// <summary>A bar of a round length with its length written, no longer than asked for.</summary>
    /// <param name="scale">Mm of paper for 1 mm.</param>
    /// <param name="longest">Mm of paper.</param>
    /// <param name="lengths">The unit that the length is round in.</param>
    public static void ScaleBar(SvgWriter svg, double x, double y, double scale, double longest, LengthText lengths = default)
    {
        ArgumentNullException.ThrowIfNull(svg);
        var length = RoundLength(lengths.Of(longest / scale));
        var width = length / lengths.Of(1) * scale;
        const double Height = 1.2;
        svg.Rectangle(new Rectangle(x, y, width, Height), LineKind.Thin);
        svg.Rectangle(new Rectangle(x, y, width / 2, Height), LineKind.Thin, "d-solid");
        svg.Text(x, y - 0.8, "0");
        svg.Text(x + width, y - 0.8, $"{Say.Number(length, 6)} {lengths.Unit}", anchor: TextAnchor.Middle);
    }

    /// <summary>The longest of 1, 2, 5 and their tens that is not above a length.</summary>
    public static double RoundLength(double length)
    {
        if (!(length > 0) || double.IsInfinity(length))
            return 1;
        var ten = Math.Pow(10, Math.Floor(Math.Log10(length)));
        return length >= 5 * ten ? 5 * ten : length >= 2 * ten ? 2 * ten : ten;
    }

    /// <summary>The symbol of the projection: a frustum and the two circles that it is seen as from its small end (ISO 5456-2, from memory).</summary>
    public static void Projection(SvgWriter svg, double x, double y, ProjectionMethod method, double height = 6)
    {
        ArgumentNullException.ThrowIfNull(svg);
        var (half, small, length) = (height / 2, height / 4, height);
        var isFirst = method == ProjectionMethod.FirstAngle;
        var (cone, circles) = isFirst ? (x, x + length + 1.5 * height) : (x + 1.5 * height + half, x + half);
        var middle = y + half;
        svg.Line(cone, middle - small, cone, middle + small, LineKind.Outline);
        svg.Line(cone + length, middle - half, cone + length, middle + half, LineKind.Outline);
        svg.Line(cone, middle - small, cone + length, middle - half, LineKind.Outline);
        svg.Line(cone, middle + small, cone + length, middle + half, LineKind.Outline);
        svg.Line(cone - 1.5, middle, cone + length + 1.5, middle, LineKind.Axis);
        svg.Circle(circles, middle, half, LineKind.Outline);
        svg.Circle(circles, middle, small, LineKind.Outline);
        svg.Line(circles - half - 1.5, middle, circles + half + 1.5, middle, LineKind.Axis);
        svg.Line(circles, y - 1.5, circles, y + height + 1.5, LineKind.Axis);
    }
}
