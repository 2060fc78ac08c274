using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>Obstacles and stock seen from above.</summary>
static class Footprint
{
    /// <summary>Horizontal distance in mm of a place to an obstacle; negative: how far inside it lies. NaN where the place is not known.</summary>
    public static double Distance(Obstacle obstacle, double x, double y) => obstacle is CylinderObstacle round
        ? double.Hypot(x - round.CenterX, y - round.CenterY) - round.Diameter / 2
        : Distance(obstacle.Bounds, x, y);

    /// <summary>The same for a box.</summary>
    public static double Distance(Box3 box, double x, double y)
    {
        var beside = Math.Max(box.Min.X - x, x - box.Max.X);
        var before = Math.Max(box.Min.Y - y, y - box.Max.Y);
        return beside > 0 && before > 0 ? double.Hypot(beside, before) : Math.Max(beside, before);
    }
}
