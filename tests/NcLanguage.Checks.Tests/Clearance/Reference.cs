using CsCheck;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Distance;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>Distances worked out apart from the code under test: horizontally by NetTopologySuite on polygons, in space by
/// Pythagoras on that and the gap in height.</summary>
static class Reference
{
    static readonly GeometryFactory Factory = new();

    /// <summary>The footprint as a polygon. A circle becomes a polygon of 2048 corners on it, at most 1.2e-6 of the radius inside it.</summary>
    public static Polygon Footprint(Obstacle obstacle) => obstacle switch
    {
        BoxObstacle b => (Polygon)Factory.ToGeometry(new Envelope(b.Box.Min.X, b.Box.Max.X, b.Box.Min.Y, b.Box.Max.Y)),
        CylinderObstacle c => (Polygon)Factory.CreatePoint(new Coordinate(c.CenterX, c.CenterY)).Buffer(c.Diameter / 2, 512),
        _ => throw new ArgumentException("unknown kind", nameof(obstacle)),
    };

    /// <summary>Signed horizontal distance of a place to a polygon, mm.</summary>
    public static double Horizontal(double x, double y, Polygon footprint)
    {
        var point = Factory.CreatePoint(new Coordinate(x, y));
        var outside = DistanceOp.Distance(point, footprint);
        return outside > 0 ? outside : -DistanceOp.Distance(point, footprint.ExteriorRing);
    }

    /// <summary>Distance of the segment to the polygon, mm; 0 where they meet.</summary>
    public static double Horizontal(Point3 from, Point3 to, Polygon footprint)
    {
        Geometry path = from.X == to.X && from.Y == to.Y
            ? Factory.CreatePoint(new Coordinate(from.X, from.Y))
            : Factory.CreateLineString([new(from.X, from.Y), new(to.X, to.Y)]);
        return DistanceOp.Distance(path, footprint);
    }

    /// <summary>Signed distance in space of the whole tool, its tip at a place, to one obstacle, mm.</summary>
    public static double InSpace(Point3 tip, ToolShape tool, Obstacle obstacle, Polygon footprint)
    {
        var toAxis = Horizontal(tip.X, tip.Y, footprint);
        var least = double.PositiveInfinity;
        foreach (var cylinder in tool.Cylinders)
        {
            var beside = toAxis - cylinder.Radius;
            var over = tip.Z + cylinder.Bottom - obstacle.Top;
            var under = obstacle.Bottom - tip.Z - cylinder.Top;
            var apart = Math.Max(over, under);
            var distance = beside > 0 || apart > 0
                ? double.Hypot(Math.Max(beside, 0), Math.Max(apart, 0))
                : Math.Max(beside, apart);
            least = Math.Min(least, distance);
        }
        return least;
    }

    static Gen<double> Between(double low, double high) => Gen.Double[low, high];

    /// <summary>Tip places around the obstacles, mm; a third of them on whole millimetres, where faces and moves line up.</summary>
    public static readonly Gen<Point3> Place = Gen.OneOf(
        Gen.Select(Between(-60, 60), Between(-60, 60), Between(-25, 45), (x, y, z) => new Point3(x, y, z)),
        Gen.Select(Between(-60, 60), Between(-60, 60), Between(-25, 45), (x, y, z) => new Point3(x, y, z)),
        Gen.Select(Gen.Int[-30, 30], Gen.Int[-30, 30], Gen.Int[-20, 30], (x, y, z) => new Point3(x, y, z)));

    public static readonly Gen<Obstacle> Box = Gen.Select(
        Gen.Int[-40, 20], Gen.Int[-40, 20], Gen.Int[-20, 10], Between(1, 40), Between(1, 40), Between(1, 30),
        (x, y, z, width, depth, height) => (Obstacle)new BoxObstacle("box", new(new(x, y, z), new(x + width, y + depth, z + height))));

    public static readonly Gen<Obstacle> Cylinder = Gen.Select(
        Gen.Int[-40, 40], Gen.Int[-40, 40], Between(2, 40), Gen.Int[-20, 10], Between(1, 30),
        (x, y, diameter, z, height) => (Obstacle)new CylinderObstacle("stud", x, y, diameter, z, z + height));

    public static readonly Gen<Obstacle> Obstacles = Gen.OneOf(Box, Cylinder);

    public static readonly Gen<ToolShape> Tools = Gen.OneOf(
        Gen.Const(ToolShape.AxisOnly),
        Between(1, 20).Select(diameter => ToolShape.From(new Tool { Number = 1, Diameter = diameter })),
        Gen.Select(Between(1, 20), Between(2, 15), Between(10, 40), Between(10, 60), (diameter, flutes, reach, holder) => ToolShape.From(new Tool
        {
            Number = 1,
            Diameter = diameter,
            FluteLength = flutes,
            Length = reach + 50,
            HolderGauge = 50,
            HolderDiameter = holder,
        })));
}
