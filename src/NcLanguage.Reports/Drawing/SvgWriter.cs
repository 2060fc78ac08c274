using System.Globalization;
using System.Text;

namespace NcLanguage.Reports.Drawing;

/// <summary>Where a text is held: by its beginning, its middle or its end.</summary>
public enum TextAnchor { Start, Middle, End }

/// <summary>
/// Writes one drawing as SVG 1.1: lengths are mm of paper, x to the right and y down from the upper left corner. Texts are escaped, numbers have two
/// decimals at most and a point as decimal sign, whatever the culture.
/// </summary>
/// <remarks>
/// How to draw: make a writer; fit a world into it with <see cref="ThreeViews.Fit"/>, or one view with <see cref="ViewFrame.Fit"/>;
/// <see cref="ViewFrame.At"/> turns places in mm of the machine into places on the paper; <see cref="Solids"/> draws stock, clamps and supports,
/// <see cref="Dimensions"/> dimension lines, <see cref="Marks"/> datum, holes, contacts, axes, scale bar and the symbol of the projection; then
/// <see cref="End"/>. A page that holds the drawing includes <see cref="DrawingStyle.Css"/> once; a file of its own has it inside.
/// </remarks>
public sealed class SvgWriter
{
    readonly StringBuilder _svg = new();

    /// <param name="width">Width of the paper, mm.</param>
    /// <param name="height">Height of the paper, mm.</param>
    /// <param name="title">What the drawing shows, for those who cannot see it.</param>
    /// <param name="description">The same at more length; may be empty.</param>
    /// <param name="isFile">True for a file of its own, false for a part of a page.</param>
    public SvgWriter(double width, double height, string title, string description = "", bool isFile = false)
    {
        (Width, Height) = (width, height);
        if (isFile)
            _svg.Append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        _svg.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"drawing\" role=\"img\"");
        Attribute("width", Number(width) + "mm");
        Attribute("height", Number(height) + "mm");
        Attribute("viewBox", $"0 0 {Number(width)} {Number(height)}");
        Attribute("aria-label", description.Length == 0 ? title : $"{title}. {description}");
        _svg.Append(">\n<title>");
        Escape(title);
        _svg.Append("</title>\n");
        if (isFile)
            _svg.Append("<style>\n").Append(DrawingStyle.Css).Append("</style>\n");
        if (isFile)
            _svg.Append(CultureInfo.InvariantCulture, $"<rect class=\"d-paper\" width=\"{Number(width)}\" height=\"{Number(height)}\"/>\n");
    }

    public double Width { get; }

    public double Height { get; }

    /// <summary>Begins a group whose class is g- and a name, for those who read the file or style it.</summary>
    public void Open(string name)
    {
        _svg.Append("<g");
        Attribute("class", "g-" + name);
        _svg.Append(">\n");
    }

    public void Close() => _svg.Append("</g>\n");

    public void Line(double x1, double y1, double x2, double y2, LineKind kind)
    {
        _svg.Append("<line");
        Class(kind);
        Attribute("x1", x1);
        Attribute("y1", y1);
        Attribute("x2", x2);
        Attribute("y2", y2);
        _svg.Append("/>\n");
    }

    /// <summary>A rectangle along the axes of the paper.</summary>
    /// <param name="fill">A class for its filling, such as d-stock or d-solid; null for none.</param>
    public void Rectangle(Rectangle place, LineKind kind, string? fill = null)
    {
        _svg.Append("<rect");
        Class(kind, fill);
        Attribute("x", place.Left);
        Attribute("y", place.Top);
        Attribute("width", place.Width);
        Attribute("height", place.Height);
        _svg.Append("/>\n");
    }

    /// <inheritdoc cref="Rectangle"/>
    public void Circle(double x, double y, double radius, LineKind kind, string? fill = null)
    {
        _svg.Append("<circle");
        Class(kind, fill);
        Attribute("cx", x);
        Attribute("cy", y);
        Attribute("r", radius);
        _svg.Append("/>\n");
    }

    /// <summary>A way made with <see cref="SvgPath"/>; nothing where that is empty.</summary>
    public void Path(SvgPath path, LineKind kind)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (path.IsEmpty)
            return;
        _svg.Append("<path");
        Class(kind);
        _svg.Append(" d=\"").Append(path.Data).Append("\"/>\n");
    }

    /// <summary>A filled polygon, such as the head of an arrow.</summary>
    public void Solid(params ReadOnlySpan<(double X, double Y)> corners)
    {
        _svg.Append("<polygon class=\"d-solid\" points=\"");
        foreach (var (x, y) in corners)
            _svg.Append(Number(x)).Append(',').Append(Number(y)).Append(' ');
        _svg.Length--;
        _svg.Append("\"/>\n");
    }

    /// <summary>A filled sector of a circle, its angles in degrees counterclockwise from the right.</summary>
    public void Sector(double x, double y, double radius, double from, double to)
    {
        var (x1, y1) = (x + radius * Math.Cos(from * Math.PI / 180), y - radius * Math.Sin(from * Math.PI / 180));
        var (x2, y2) = (x + radius * Math.Cos(to * Math.PI / 180), y - radius * Math.Sin(to * Math.PI / 180));
        _svg.Append(CultureInfo.InvariantCulture, $"<path class=\"d-solid\" d=\"M{Number(x)} {Number(y)}L{Number(x1)} {Number(y1)}A{Number(radius)} {Number(radius)} 0 0 0 {Number(x2)} {Number(y2)}Z\"/>\n");
    }

    /// <summary>A text whose letters stand on y.</summary>
    /// <param name="degrees">Turned counterclockwise about its place.</param>
    /// <param name="cssClass">A further class, or null.</param>
    public void Text(double x, double y, string text, double height = DrawingStyle.SmallText, TextAnchor anchor = TextAnchor.Start, double degrees = 0, string? cssClass = null)
    {
        _svg.Append("<text");
        Attribute("x", x);
        Attribute("y", y);
        Attribute("font-size", height);
        if (cssClass is not null)
            Attribute("class", cssClass);
        if (anchor != TextAnchor.Start)
            Attribute("text-anchor", anchor == TextAnchor.Middle ? "middle" : "end");
        if (degrees != 0)
            Attribute("transform", $"rotate({Number(-degrees)} {Number(x)} {Number(y)})");
        _svg.Append('>');
        Escape(text);
        _svg.Append("</text>\n");
    }

    /// <summary>The whole drawing; nothing may be drawn behind it.</summary>
    public string End() => _svg.Append("</svg>\n").ToString();

    /// <summary>A number with two decimals at most.</summary>
    internal static string Number(double value) => (Math.Round(value, 2) + 0.0).ToString("0.##", CultureInfo.InvariantCulture);

    void Class(LineKind kind, string? more = null) => Attribute("class", more is null ? DrawingStyle.ClassOf(kind) : $"{DrawingStyle.ClassOf(kind)} {more}");

    void Attribute(string name, double value) => _svg.Append(' ').Append(name).Append("=\"").Append(Number(value)).Append('"');

    void Attribute(string name, string value)
    {
        _svg.Append(' ').Append(name).Append("=\"");
        Escape(value);
        _svg.Append('"');
    }

    /// <summary>Also drops what XML 1.0 cannot hold: control characters, and halves of characters.</summary>
    void Escape(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            var letter = text[i];
            if (char.IsHighSurrogate(letter) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
                _svg.Append(letter).Append(text[++i]);
            else
                _ = letter switch
                {
                    '<' => _svg.Append("&lt;"),
                    '>' => _svg.Append("&gt;"),
                    '&' => _svg.Append("&amp;"),
                    '"' => _svg.Append("&quot;"),
                    _ when letter < ' ' => _svg.Append(' '),
                    _ when char.IsSurrogate(letter) || letter >= '\uFFFE' => _svg.Append('\uFFFD'),
                    _ => _svg.Append(letter),
                };
        }
    }
}
