using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Clearance.Sampling;

/// <summary>
/// The distance of a tool to an obstacle, worked out apart from the code under test: in the upright plane through the tool's axis and the nearest
/// edge of the footprint the two are polygons. Apart, their distance is the least between corners and edges (elementary geometry); overlapping, the
/// least way out is along the normal of an edge (separating axes).
/// </summary>
static class SampledDistance
{
    /// <summary>mm; negative: the shortest way out of the deepest part of the tool.</summary>
    public static double Of(Point3 tip, SampledTool tool, Obstacle obstacle)
    {
        var axis = Beside(obstacle, tip.X, tip.Y);
        var least = double.PositiveInfinity;
        foreach (var part in tool.Parts)
            least = Math.Min(least, Part(axis, tip.Z, part, obstacle.Bottom, obstacle.Top));
        return least;
    }

    /// <summary>Least distance to any of them, mm.</summary>
    public static double Of(Point3 tip, SampledTool tool, List<Obstacle> obstacles)
    {
        var least = double.PositiveInfinity;
        foreach (var obstacle in obstacles)
            least = Math.Min(least, Of(tip, tool, obstacle));
        return least;
    }

    static double Beside(Obstacle obstacle, double x, double y)
    {
        if (obstacle is CylinderObstacle round)
            return Math.Sqrt((x - round.CenterX) * (x - round.CenterX) + (y - round.CenterY) * (y - round.CenterY)) - round.Diameter / 2;
        var box = ((BoxObstacle)obstacle).Box;
        // Nearest place of the rectangle; inside, the nearest of its four sides.
        double nearX = Math.Clamp(x, box.Min.X, box.Max.X), nearY = Math.Clamp(y, box.Min.Y, box.Max.Y);
        if (nearX != x || nearY != y)
            return Math.Sqrt((x - nearX) * (x - nearX) + (y - nearY) * (y - nearY));
        return -Math.Min(Math.Min(x - box.Min.X, box.Max.X - x), Math.Min(y - box.Min.Y, box.Max.Y - y));
    }

    /// <summary>The obstacle is the plane's quarter strip from <paramref name="axis"/> outwards, between two heights; the part lies about 0.</summary>
    static double Part(double axis, double tip, Outline part, double bottom, double top)
    {
        double low = tip + part.Low, shoulder = tip + part.Shoulder, high = tip + part.High;
        var up = shoulder - low;
        var separation = Math.Max(axis - part.Radius, Math.Max(low - top, bottom - high));
        // The flank rises by `up` over the radius; its normal points out and down. The strip's upper corner lies farthest against it.
        if (up > 0)
            separation = Math.Max(separation, (axis * up - (top - low) * part.Radius) / Math.Sqrt(Square(up) + Square(part.Radius)));
        if (separation <= 0)
            return separation;
        var beside = Math.Max(axis - part.Radius, 0);
        var cylinder = Math.Sqrt(Square(beside) + Square(Math.Max(Math.Max(shoulder - top, bottom - high), 0)));
        return up > 0 ? Math.Min(cylinder, Cone(axis, part.Radius, low, shoulder, bottom, top)) : cylinder;
    }

    static double Cone(double axis, double radius, double low, double shoulder, double bottom, double top)
    {
        // Where the axis stands over or under the strip only heights count.
        if (axis <= 0)
            return Math.Max(low - top, bottom - shoulder);
        var least = Math.Min(ToSegment(axis, top, 0, low, radius, shoulder), ToSegment(axis, bottom, 0, low, radius, shoulder));
        least = Math.Min(least, ToSegment(axis, bottom, 0, shoulder, radius, shoulder));
        return Math.Min(least, Math.Min(ToStrip(0, low, axis, bottom, top), ToStrip(radius, shoulder, axis, bottom, top)));
    }

    static double ToStrip(double x, double height, double axis, double bottom, double top) =>
        Math.Sqrt(Square(Math.Max(axis - x, 0)) + Square(Math.Max(Math.Max(bottom - height, height - top), 0)));

    static double Square(double value) => value * value;

    static double ToSegment(double x, double y, double x0, double y0, double x1, double y1)
    {
        double dx = x1 - x0, dy = y1 - y0;
        var square = dx * dx + dy * dy;
        var t = square == 0 ? 0 : Math.Clamp(((x - x0) * dx + (y - y0) * dy) / square, 0, 1);
        return Math.Sqrt(Square(x - x0 - t * dx) + Square(y - y0 - t * dy));
    }
}
