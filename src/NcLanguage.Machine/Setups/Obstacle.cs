using NcLanguage.Machine.Geometry;

namespace NcLanguage.Machine.Setups;

/// <summary>Something the tool must keep clear of: a clamp, a stud, a stop. In the setup's frame, in mm.</summary>
public abstract record Obstacle(string Name)
{
    /// <summary>The lowest Z of the obstacle, mm.</summary>
    public abstract double Bottom { get; }

    /// <summary>The highest Z of the obstacle, mm.</summary>
    public abstract double Top { get; }
}

/// <summary>An obstacle that is a box along the axes.</summary>
public sealed record BoxObstacle(string Name, Box3 Box) : Obstacle(Name)
{
    public override double Bottom => Box.Min.Z;

    public override double Top => Box.Max.Z;
}

/// <summary>An obstacle that is an upright cylinder about (<see cref="CenterX"/>, <see cref="CenterY"/>), mm.</summary>
public sealed record CylinderObstacle(string Name, double CenterX, double CenterY, double Diameter, double Bottom, double Top) : Obstacle(Name)
{
    public override double Bottom { get; } = Bottom;

    public override double Top { get; } = Top;
}
