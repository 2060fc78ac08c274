using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>The parts of a tool that a contact is told apart by.</summary>
public enum ToolPart
{
    Cutting,
    Shank,
    Holder,
}

/// <summary>One cylinder of the tool, about its axis: radius in mm, heights in mm above the tip.
/// <paramref name="Top"/> may be positive infinity.</summary>
public readonly record struct ToolCylinder(double Radius, double Bottom, double Top, ToolPart Part);

/// <summary>A tool as a stack of upright cylinders, from the tip up. The stack always reaches up without end, because
/// above what is known stands the spindle.</summary>
public sealed class ToolShape
{
    private readonly ToolCylinder[] _cylinders;

    private ToolShape(ToolCylinder[] cylinders, double radius)
    {
        _cylinders = cylinders;
        Radius = radius;
    }

    /// <summary>A tool of which nothing is known: the axis line alone. What it touches, any tool would touch.</summary>
    public static ToolShape AxisOnly { get; } = new([new(0, 0, double.PositiveInfinity, ToolPart.Cutting)], 0);

    /// <summary>The cylinders from the tip up, without gaps.</summary>
    public ReadOnlySpan<ToolCylinder> Cylinders => _cylinders;

    /// <summary>Radius of the cutting part in mm; 0 when it is not known.</summary>
    public double Radius { get; }

    /// <summary>
    /// The shape of a row of the tool list. The cutting part is a cylinder of the cutting diameter over the flute length
    /// (all the way up when that is not known), the shank one of the same diameter up to the holder. The holder starts at
    /// length − holderGauge and goes up without end. What the row does not say is left out, never guessed: without a diameter
    /// the axis line stands for the tool, without a length, a gauge or a holder diameter there is no holder.
    /// </summary>
    public static ToolShape From(Tool? tool)
    {
        if (tool is null)
            return AxisOnly;
        var radius = tool.Diameter is > 0 ? tool.Diameter.Value / 2 : 0;
        var stickOut = tool.Length - tool.HolderGauge is { } reach and > 0 && tool.HolderDiameter is > 0
            ? reach
            : double.PositiveInfinity;
        var flutes = tool.FluteLength is > 0 ? Math.Min(tool.FluteLength.Value, stickOut) : stickOut;

        var hasShank = flutes < stickOut;
        var hasHolder = !double.IsPositiveInfinity(stickOut);
        var cylinders = new ToolCylinder[1 + (hasShank ? 1 : 0) + (hasHolder ? 1 : 0)];
        cylinders[0] = new(radius, 0, flutes, ToolPart.Cutting);
        if (hasShank)
            cylinders[1] = new(radius, flutes, stickOut, ToolPart.Shank);
        if (hasHolder)
            cylinders[^1] = new(tool.HolderDiameter!.Value / 2, stickOut, double.PositiveInfinity, ToolPart.Holder);
        return new(cylinders, radius);
    }
}
