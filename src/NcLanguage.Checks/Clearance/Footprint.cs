using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>Obstacles and stock seen from above.</summary>
public static class Footprint
{
    /// <summary>Horizontal distance in mm of a place to an obstacle; negative: how far inside it lies. NaN where the place is not known.</summary>
    public static double Distance(Obstacle obstacle, double x, double y) => obstacle is CylinderObstacle round
        ? double.Hypot(x - round.CenterX, y - round.CenterY) - round.Diameter / 2
        : Distance(obstacle.Bounds, x, y);

    /// <summary>The same for a box.</summary>
    public static double Distance(in Box3 box, double x, double y)
    {
        var beside = Math.Max(box.Min.X - x, x - box.Max.X);
        var before = Math.Max(box.Min.Y - y, y - box.Max.Y);
        return beside > 0 && before > 0 ? double.Hypot(beside, before) : Math.Max(beside, before);
    }

    /// <summary>Distance of a place from a straight path as seen from above, mm; NaN where one of them is not known.</summary>
    public static double Distance(in Point3 from, in Point3 to, double x, double y)
    {
        var (dx, dy) = (to.X - from.X, to.Y - from.Y);
        var square = dx * dx + dy * dy;
        var t = square == 0 ? 0 : Math.Clamp(((x - from.X) * dx + (y - from.Y) * dy) / square, 0, 1);
        return double.Hypot(x - from.X - t * dx, y - from.Y - t * dy);
    }
}
