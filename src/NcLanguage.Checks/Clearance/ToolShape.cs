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
/// <paramref name="Top"/> may be positive infinity. Over the lowest <paramref name="Point"/> mm it is a cone that comes to a point; 0 for a flat end.</summary>
public readonly record struct ToolCylinder(double Radius, double Bottom, double Top, ToolPart Part, double Point = 0)
{
    /// <summary>Length of the cone's flank, mm.</summary>
    public double Flank { get; } = Math.Sqrt(Radius * Radius + Point * Point);

    /// <summary>How high the lower end must stay over the top of something to keep a distance in space, mm.</summary>
    /// <param name="axis">Horizontal distance of the axis to it, mm; 0 or less over it.</param>
    /// <param name="distance">To keep, mm; more than axis − radius.</param>
    public double HeightOver(double axis, double distance)
    {
        if (Point == 0)
            return axis > Radius ? Math.Sqrt((distance - axis + Radius) * (distance + axis - Radius)) : distance;
        var (sine, cosine) = (Radius / Flank, Point / Flank);
        if (axis <= 0)
            return distance;
        if (axis <= distance * cosine)
            return Math.Sqrt((distance - axis) * (distance + axis));
        return axis <= Radius + distance * cosine
            ? (distance - axis * cosine) / sine
            : Math.Sqrt((distance - axis + Radius) * (distance + axis - Radius)) - Point;
    }
}

/// <summary>A tool as a stack of upright cylinders, from the tip up. The stack always reaches up without end, because
/// above what is known stands the spindle.</summary>
/// <remarks>
/// What is exact and what is counted too large. The end of a drill or spot drill whose point angle is given is the cone it is. Every other end is
/// counted as flat over the whole cutting diameter: exact for end mills, reamers and the like; for countersinks, chamfer mills, centre drills and taps, whose
/// ends differ from a plain cone, and for ball and bull ends, too large by at most the cutting radius sideways and by at most the height of the end
/// downwards, in the corner that is not there. A holder or shank with steps or tapers counts as one cylinder of the diameter given. So a contact may be told that
/// is none; none is passed over for it.
/// </remarks>
public sealed class ToolShape
{
    private readonly ToolCylinder[] _cylinders;

    private ToolShape(ToolCylinder[] cylinders, double radius)
    {
        _cylinders = cylinders;
        Radius = radius;
        foreach (var cylinder in cylinders)
            GreatestRadius = Math.Max(GreatestRadius, cylinder.Radius);
    }

    /// <summary>A tool of which nothing is known: the axis line alone. What it touches, any tool would touch.</summary>
    public static ToolShape AxisOnly { get; } = new([new(0, 0, double.PositiveInfinity, ToolPart.Cutting)], 0);

    /// <summary>The cylinders from the tip up, without gaps.</summary>
    public ReadOnlySpan<ToolCylinder> Cylinders => _cylinders;

    /// <summary>Radius of the cutting part in mm; 0 when it is not known.</summary>
    public double Radius { get; }

    /// <summary>Radius of the thickest part, mm.</summary>
    public double GreatestRadius { get; }

    /// <summary>Radius in mm that the cutting part has <paramref name="height"/> mm above the tip.</summary>
    public double RadiusAt(double height) =>
        _cylinders[0].Point > height ? Math.Max(0, Radius * height / _cylinders[0].Point) : Radius;

    /// <summary>
    /// The shape of a row of the tool list. The cutting part is a cylinder of the cutting diameter over the flute length
    /// (all the way up when that is not known), with the cone of its point where it is a drill's; the shank one of the shank's diameter, or else of the same,
    /// up to the holder. The holder starts at length − holderGauge and goes up without end. What the row does not say is left out, never guessed: without a
    /// diameter the axis line stands for the tool, without a flute length there is no shank, without a length, a gauge or a holder diameter no holder.
    /// </summary>
    public static ToolShape From(Tool? tool)
    {
        if (tool is null)
            return AxisOnly;
        var radius = tool.Diameter is > 0 ? tool.Diameter.Value / 2 : 0;
        var point = tool is { Kind: ToolKind.Drill or ToolKind.SpotDrill, PointAngle: > 0 and < 180 }
            ? radius / Math.Tan(tool.PointAngle.Value * Math.PI / 360)
            : 0;
        var stickOut = tool.Length - tool.HolderGauge is { } reach and > 0 && tool.HolderDiameter is > 0
            ? reach
            : double.PositiveInfinity;
        // Flutes shorter than the point cannot be: the point is taken to be all there.
        var flutes = tool.FluteLength is > 0 ? Math.Min(Math.Max(tool.FluteLength.Value, point), stickOut) : stickOut;

        var hasShank = flutes < stickOut;
        var hasHolder = !double.IsPositiveInfinity(stickOut);
        var cylinders = new ToolCylinder[1 + (hasShank ? 1 : 0) + (hasHolder ? 1 : 0)];
        cylinders[0] = new(radius, 0, flutes, ToolPart.Cutting, point <= flutes ? point : 0);
        if (hasShank)
            cylinders[1] = new(tool.ShankDiameter / 2 ?? radius, flutes, stickOut, ToolPart.Shank);
        if (hasHolder)
            cylinders[^1] = new(tool.HolderDiameter!.Value / 2, stickOut, double.PositiveInfinity, ToolPart.Holder);
        return new(cylinders, radius);
    }
}
