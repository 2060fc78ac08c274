namespace NcLanguage.Reports.Drawing;

/// <summary>What a line of a drawing stands for. The first six are lines of ISO 128-2 (numbers, widths and dashes from memory), the rest are
/// our own. Each is told apart by width and dash, never by colour alone.</summary>
public enum LineKind
{
    /// <summary>Visible edges and outlines: continuous, wide (01.2).</summary>
    Edge,

    /// <summary>Dimension and extension lines, hatching, leaders: continuous, narrow (01.1).</summary>
    Thin,

    /// <summary>Hidden edges: dashed, narrow (02.1).</summary>
    Hidden,

    /// <summary>Axes and centre lines: long dash, dot, narrow (04.1).</summary>
    Axis,

    /// <summary>Outlines of what is no part of the work, such as clamps: long dash, two dots, narrow (05.1).</summary>
    Adjacent,

    /// <summary>Outlines of what is cut or hatched: continuous, wide, as <see cref="Edge"/>, without a filling of its own.</summary>
    Outline,

    /// <summary>The way of a rapid: short dashes, narrow.</summary>
    Rapid,

    /// <summary>The way of a feed or an arc: continuous, between narrow and wide.</summary>
    Feed,

    /// <summary>The mark of a contact: continuous, wide.</summary>
    Contact,
}
