using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>The lower end of a turning tool: flat about the axis, then a cone or a round corner out to the rim. All lengths in mm.</summary>
public readonly record struct EndForm
{
    /// <summary>Radius of the tool.</summary>
    public double Radius { get; private init; }

    /// <summary>Radius of the flat part about the axis; the whole radius for a flat end.</summary>
    public double FlatRadius { get; private init; }

    /// <summary>Radius of the corner between the flat part and the rim; 0 where there is none.</summary>
    public double CornerRadius { get; private init; }

    /// <summary>How far a cone rises for each mm away from the flat part; 0 where there is none.</summary>
    public double Steepness { get; private init; }

    /// <summary>How far below the tip a grown ball reaches.</summary>
    internal double Drop { get; private init; }

    public bool IsFlat => FlatRadius >= Radius;

    /// <summary>A flat end.</summary>
    public static EndForm Flat(double radius) => new() { Radius = radius, FlatRadius = radius };

    /// <summary>A point.</summary>
    /// <param name="pointAngle">Included angle, degrees; 180 for a flat end.</param>
    public static EndForm Cone(double radius, double pointAngle) => pointAngle is > 0 and < 180
        ? new() { Radius = radius, Steepness = 1 / Math.Tan(pointAngle * Math.PI / 360) }
        : Flat(radius);

    /// <summary>A round corner; a ball where the corner takes the whole radius.</summary>
    public static EndForm Round(double radius, double corner) => corner > 0
        ? new() { Radius = radius, FlatRadius = Math.Max(0, radius - corner), CornerRadius = Math.Min(corner, radius) }
        : Flat(radius);

    /// <summary>The end of a row of the tool list; flat where the row leaves open what it is like (<see cref="IsGiven"/>).</summary>
    public static EndForm Of(Tool? tool)
    {
        var radius = tool?.Diameter / 2 ?? 0;
        if (tool?.PointAngle is { } angle)
            return Cone(radius, angle);
        return tool?.Kind == ToolKind.BallMill ? Round(radius, radius) : Round(radius, tool?.CornerRadius ?? 0);
    }

    /// <summary>Whether a row of the tool list tells what the end is like.</summary>
    public static bool IsGiven(Tool? tool) =>
        tool is not null && (tool.PointAngle is not null || tool.CornerRadius is not null || tool.Kind is ToolKind.BallMill or ToolKind.Tap || ToolEnd.IsFlat(tool));

    /// <summary>How far the end lies above the tip at a distance from the axis, mm.</summary>
    public double HeightAt(double off)
    {
        var beyond = Math.Max(0, off - FlatRadius);
        return CornerRadius > 0
            ? CornerRadius - Math.Sqrt(Math.Max(0, CornerRadius * CornerRadius - beyond * beyond)) - Drop
            : Steepness * beyond;
    }

    /// <summary>The same at the square of a distance, mm².</summary>
    internal double HeightAtSquare(double square) => CornerRadius > 0 && FlatRadius == 0
        ? CornerRadius - Math.Sqrt(Math.Max(0, CornerRadius * CornerRadius - square)) - Drop
        : IsFlat ? 0 : HeightAt(Math.Sqrt(square));

    /// <summary>An end that holds all places within <paramref name="by"/> mm sideways of this one.</summary>
    public EndForm Grown(double by)
    {
        if (by == 0)
            return this;
        // A ball is left one, of a larger radius about the same centre: that is a little more, and quick to reckon with along slopes.
        return CornerRadius > 0 && FlatRadius == 0
            ? this with { Radius = Radius + by, CornerRadius = CornerRadius + by, Drop = Drop + by }
            : this with { Radius = Radius + by, FlatRadius = FlatRadius + by };
    }
}
