using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace NcLanguage.Reports.Drawing;

/// <summary>Widths, dashes, colours and heights of letters of all drawings, in mm of paper.</summary>
/// <remarks>Wide lines are twice as wide as narrow ones and dashes grow with the width d: dash 12d, gap 3d, long dash 24d, dot 0.5d (ISO 128-2,
/// from memory). The colours are three of the palette of Okabe and Ito, made to be told apart by the colour-blind (from memory), the green darkened to stand out
/// from the stock.</remarks>
public static class DrawingStyle
{
    public const double Narrow = 0.25;

    public const double Wide = 0.5;

    /// <summary>Height of letters beside lines and marks.</summary>
    public const double SmallText = 2.5;

    /// <summary>Height of other letters.</summary>
    public const double Text = 3.5;

    /// <summary>Height of the letters of a title.</summary>
    public const double LargeText = 5;

    /// <summary>How wide a letter is on the average, as a part of its height: for finding room, not for measuring.</summary>
    public const double LetterWidth = 0.56;

    static readonly ImmutableArray<(LineKind Kind, string Name, double Width, string Dashes, string Colour)> Lines =
    [
        (LineKind.Edge, "d-edge", Wide, "", "currentColor"),
        (LineKind.Thin, "d-thin", Narrow, "", "currentColor"),
        (LineKind.Hidden, "d-hidden", Narrow, "12 3", "currentColor"),
        (LineKind.Axis, "d-axis", Narrow, "24 3 0.5 3", "currentColor"),
        (LineKind.Adjacent, "d-adjacent", Narrow, "24 3 0.5 3 0.5 3", "currentColor"),
        (LineKind.Outline, "d-outline", Wide, "", "currentColor"),
        (LineKind.Rapid, "d-rapid", Narrow, "6 4", "#008a64"),
        (LineKind.Feed, "d-feed", 0.35, "", "#0072b2"),
        (LineKind.Contact, "d-contact", 0.7, "", "#d55e00"),
    ];

    /// <summary>The style sheet of the classes that <see cref="SvgWriter"/> uses: into a file of its own it is written with the drawing, a page that
    /// holds drawings has it once. Lines without a colour of their own have that of the text around them.</summary>
    public static string Css { get; } = MakeCss();

    /// <summary>The class of a line.</summary>
    public static string ClassOf(LineKind kind) => Lines[(int)kind].Name;

    static string MakeCss()
    {
        var css = new StringBuilder(".drawing { color: #000000; background: #ffffff; }\n");
        css.Append(".drawing path, .drawing line, .drawing circle, .drawing rect { fill: none; stroke-linejoin: round; }\n");
        foreach (var (_, name, width, dashes, colour) in Lines)
        {
            css.Append(CultureInfo.InvariantCulture, $".drawing .{name} {{ stroke: {colour}; stroke-width: {width};");
            if (dashes.Length > 0)
                css.Append(" stroke-dasharray: ").AppendJoin(' ', dashes.Split(' ').Select(part => (double.Parse(part, CultureInfo.InvariantCulture) * width).ToString("0.###", CultureInfo.InvariantCulture))).Append(';');
            css.Append(" }\n");
        }
        css.Append(".drawing .d-solid { fill: currentColor; stroke: none; }\n");
        css.Append(".drawing .d-paper { fill: #ffffff; stroke: none; }\n");
        css.Append(".drawing .d-stock { fill: #f1ede2; }\n");
        css.Append(".drawing .d-contact-text { fill: #8a3c00; font-weight: bold; }\n");
        css.Append(".drawing text { fill: currentColor; stroke: none; font-family: sans-serif; }\n");
        css.Append(".drawing .d-rimmed { paint-order: stroke; stroke: #ffffff; stroke-width: 0.9; stroke-linejoin: round; }\n");
        return css.ToString();
    }
}
