using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Editing;

/// <summary>How well the block at the cursor goes with a hole of the drawing.</summary>
enum HoleFitRank
{
    Fits,

    /// <summary>It can be drilled so, but something asks for a second look: another depth, an obstacle nearer than the setup's clearance.</summary>
    Doubtful,

    /// <summary>The tool would meet an obstacle.</summary>
    Obstructed,
}

/// <param name="Why">One clause; null where it fits.</param>
readonly record struct HoleFit(HoleFitRank Rank, string? Why)
{
    /// <summary>How much deeper than drawn a hole may be, mm: ISO 2768-1 class m for lengths of 6 to 30 mm without a tolerance of their own (from memory).</summary>
    const double DeeperAllowed = 0.2;

    /// <summary>How much shallower, mm: as where holes are held against the drawing.</summary>
    const double ShallowerAllowed = 0.01;

    /// <summary>The tool straight down at a hole, and the depth of the cycle in force, as far as both are known.</summary>
    public static HoleFit Of(Spot spot, WantedHole hole)
    {
        var wanted = DepthValues.Bottom(spot, hole, spot.Cycle);
        var inForce = spot.Cycle > 0 && spot.After.BottomGiven ? spot.After.Bottom : double.NaN;
        var way = WayDown(spot, hole, double.IsNaN(inForce) ? wanted : inForce);
        if (way.Distance < spot.Setup.Clearance - Sweep.ClearanceTolerance)
        {
            var obstacle = spot.Setup.Obstacles[way.ObstacleIndex];
            if (!way.IsContact)
                return new(HoleFitRank.Doubtful, $"{spot.Say.Length(way.Distance)} from {obstacle.Name}");
            return new(HoleFitRank.Obstructed, Footprint.Distance(obstacle, hole.Hole.X, hole.Hole.Y) < 0 ? $"under {obstacle.Name}" : $"the {(way.Part == ToolPart.Holder ? "holder" : "tool")} meets {obstacle.Name}");
        }
        return double.IsNaN(wanted) || double.IsNaN(inForce) || inForce <= wanted + ShallowerAllowed && !IsTooDeep(spot, hole, wanted, inForce)
            ? new(HoleFitRank.Fits, null)
            : new(HoleFitRank.Doubtful, $"asks for {spot.Style.Length('Z', -spot.Say.Upward(-wanted))}, the cycle goes to {spot.Style.Length('Z', inForce)}");
    }

    static Approach WayDown(Spot spot, WantedHole hole, double bottom)
    {
        if (spot.Setup.Obstacles.IsEmpty)
            return Approach.None;
        var top = spot.Setup.Obstacles.Max(obstacle => obstacle.Top);
        var from = spot.Cycle > 0 && !double.IsNaN(spot.After.InitialLevel) ? spot.After.InitialLevel + spot.ToFrame.Z : top + spot.Setup.Clearance;
        // As deep as is known.
        var to = !double.IsNaN(bottom) ? bottom + spot.ToFrame.Z : spot.Setup.Stock?.Max.Z ?? from;
        return Sweep.Line(
            new Point3(hole.Hole.X, hole.Hole.Y, from), new Point3(hole.Hole.X, hole.Hole.Y, to), ToolShape.From(spot.Tool), spot.Setup.Obstacles.AsSpan(), spot.Setup.Clearance);
    }

    /// <summary>A drill goes deeper than a thread, and a hole that is drawn through may end anywhere below.</summary>
    static bool IsTooDeep(Spot spot, WantedHole hole, double wanted, double bottom) =>
        bottom < wanted - DeeperAllowed && (hole.Hole.Thread is null || spot.Tool?.Kind == ToolKind.Tap) && !(spot.Setup.Stock is { } stock && wanted + spot.ToFrame.Z <= stock.Min.Z + ShallowerAllowed);
}
