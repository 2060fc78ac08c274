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
/// <remarks>
/// Exact for flat ends. Every other end, the cone of a drill, spot drill, countersink or chamfer mill as well as the round of a ball mill, counts as flat over the whole
/// cutting diameter: on the large side, by no more than the corner that is not there (radius × cosine of half the point angle, measured square to a cone's flank). Holder and shank count
/// as one cylinder each, of the diameter given. So a contact may be told that is none, by that corner; none is passed over for it.
/// </remarks>
public sealed class ToolShape
{
    readonly ToolCylinder[] _cylinders;

    ToolShape(ToolCylinder[] cylinders, double radius)
    {
        _cylinders = cylinders;
        Radius = radius;
        foreach (var cylinder in cylinders)
            GreatestRadius = Math.Max(GreatestRadius, cylinder.Radius);
    }

    /// <summary>A tool of which nothing is known: the axis line alone. What it touches, any tool would touch.</summary>
    public static ToolShape AxisOnly { get; } = new([new(0, 0, double.PositiveInfinity, ToolPart.Cutting)], 0);

    /// <summary>The cylinders from the tip up, without gaps. Those inside an end reach up together.</summary>
    public ReadOnlySpan<ToolCylinder> Cylinders => _cylinders;

    /// <summary>Radius of the cutting part in mm; 0 when it is not known.</summary>
    public double Radius { get; }

    /// <summary>Radius of the thickest part, mm.</summary>
    public double GreatestRadius { get; }

    /// <summary>
    /// The shape of a row of the tool list. The cutting part is a cylinder of the cutting diameter over the flute length
    /// (all the way up when that is not known), the shank one of the shank's diameter, or else of the same, up to the holder. The
    /// holder starts at length − holderGauge and goes up without end. What the row does not say is left out, never guessed: without a
    /// diameter the axis line stands for the tool, without a flute length there is no shank, without a length, a gauge or a holder
    /// diameter no holder.
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
            cylinders[1] = new(tool.ShankDiameter / 2 ?? radius, flutes, stickOut, ToolPart.Shank);
        if (hasHolder)
            cylinders[^1] = new(tool.HolderDiameter!.Value / 2, stickOut, double.PositiveInfinity, ToolPart.Holder);
        return new(cylinders, radius);
    }

    /// <summary>Cylinders that a cone or a round is taken for by <see cref="Within"/>.</summary>
    const int Steps = 16;

    /// <summary>
    /// What a tool certainly fills, for obstacles that it may come close to on purpose: as <see cref="From"/>, but with a stack of cylinders inside its end where that is a cone or
    /// a round. The axis line alone where the row leaves open what the end is like, and for taps and centre drills, whose ends are thinner than their rows say.
    /// </summary>
    public static ToolShape Within(Tool? tool)
    {
        var shape = From(tool);
        if (!EndForm.IsGiven(tool) || tool!.Kind is ToolKind.Tap or ToolKind.CentreDrill)
            return AxisOnly;
        var end = EndForm.Of(tool);
        if (end.IsFlat)
            return shape;
        var top = shape._cylinders[0].Top;
        var cylinders = new List<ToolCylinder>();
        for (var step = 0; step <= Steps; step++)
        {
            var radius = end.FlatRadius + (end.Radius - end.FlatRadius) * step / Steps;
            var bottom = end.HeightAt(radius);
            if (bottom < top)
                cylinders.Add(new(radius, bottom, top, ToolPart.Cutting));
        }
        return new([.. cylinders, .. shape._cylinders[1..]], shape.Radius);
    }
}
