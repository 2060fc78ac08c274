using NcLanguage.Machine.Geometry;

namespace NcLanguage.Machine.Setups;

/// <summary>Something the tool must keep clear of: a clamp, a stud, a stop. In the setup's frame, in mm.</summary>
public abstract record Obstacle(string Name)
{
    /// <summary>The lowest Z of the obstacle, mm.</summary>
    public abstract double Bottom { get; }

    /// <summary>The highest Z of the obstacle, mm.</summary>
    public abstract double Top { get; }

    /// <summary>The least box along the axes that holds the obstacle.</summary>
    public abstract Box3 Bounds { get; }

    /// <summary>1-based line of the obstacle in the setup file.</summary>
    public int Line { get; init; }
}

/// <summary>An obstacle that is a box along the axes.</summary>
public sealed record BoxObstacle(string Name, Box3 Box) : Obstacle(Name)
{
    public override double Bottom => Box.Min.Z;

    public override double Top => Box.Max.Z;

    public override Box3 Bounds => Box;
}

/// <summary>An obstacle that is an upright cylinder about (<see cref="CenterX"/>, <see cref="CenterY"/>), mm.</summary>
public sealed record CylinderObstacle(string Name, double CenterX, double CenterY, double Diameter, double Bottom, double Top) : Obstacle(Name)
{
    public override double Bottom { get; } = Bottom;

    public override double Top { get; } = Top;

    public override Box3 Bounds => new(
        new Point3(CenterX - Diameter / 2, CenterY - Diameter / 2, Bottom),
        new Point3(CenterX + Diameter / 2, CenterY + Diameter / 2, Top));
}
