using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Clearance;

/// <summary>The nearest approach of a move to what stands on the table.</summary>
/// <param name="Distance">Least distance in space, mm. Negative: how deep the tool and the obstacle overlap (the shortest
/// way out). Positive infinity: nothing near. NaN: the move is not known.</param>
/// <param name="ObstacleIndex">Place of the obstacle in the list that was given; −1 where there is none.</param>
/// <param name="Tip">Where the tip first is at that distance, mm.</param>
/// <param name="Part">The part of the tool that comes nearest.</param>
public readonly record struct Approach(double Distance, int ObstacleIndex, Point3 Tip, ToolPart Part)
{
    /// <summary>Nothing comes near.</summary>
    public static Approach None { get; } = new(double.PositiveInfinity, -1, Point3.Unknown, ToolPart.Cutting);

    /// <summary>The move is not known, so neither is its distance.</summary>
    public static Approach Unknown { get; } = new(double.NaN, -1, Point3.Unknown, ToolPart.Cutting);

    /// <summary>True when the tool touches: the distance is known and 0 or less, to within <see cref="Sweep.ClearanceTolerance"/>.</summary>
    public bool IsContact => Distance <= Sweep.ClearanceTolerance;

    /// <summary>True when the distance is known and at least <paramref name="clearance"/> mm; equal counts as clear, to within
    /// <see cref="Sweep.ClearanceTolerance"/>.</summary>
    public bool Clears(double clearance) => Distance >= clearance - Sweep.ClearanceTolerance;
}
