using CsCheck;
using MathNet.Numerics.Optimization;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Clearance;

public class LineSweepTests
{
    static readonly BoxObstacle Clamp = new("clamp", new(new(20, -10, 0), new(45, 20, 30)));
    static readonly CylinderObstacle Stud = new("stud", 60, 30, 16, 0, 38);
    static readonly ToolShape Ten = ToolShape.From(new Tool { Number = 1, Diameter = 10 });

    // Closed form: sums and Pythagoras on whole numbers.
    [Theory]
    [InlineData(0, 0, 32, 100, 0, 32, 2)] // over the clamp, 2 above its top
    [InlineData(0, 0, 30, 100, 0, 30, 0)] // sliding over its top
    [InlineData(0, 0, 25, 100, 0, 25, -5)] // 5 deep into it
    [InlineData(0, 0, 10, 10, 0, 10, 5)] // ends with its rim 5 short of the face
    [InlineData(0, 0, 10, 15, 0, 10, 0)] // ends with its rim on the face
    [InlineData(12, -50, 10, 12, 50, 10, 3)] // along the face
    [InlineData(12, -50, 34, 12, 50, 34, 5)] // along the edge: 3 beside, 4 above
    [InlineData(10, -22, 10, 10, -22, 80, 10.620499351813308)] // up past the corner: √(10² + 12²) − 5
    [InlineData(32, 5, 50, 32, 5, 20, -10)] // straight down into it
    [InlineData(32, 5, 20, 32, 5, 50, -10)] // and out again
    [InlineData(0, 5, 40, 40, 5, 40, 10)]
    [InlineData(11, 5, 34, 11, 5, 34, 5.656854249492381)] // standing still: 4 beside, 4 above
    public void Distance_to_a_box_follows_from_sums_and_Pythagoras(double x0, double y0, double z0, double x1, double y1, double z1, double expected)
    {
        var near = Sweep.Line(new(x0, y0, z0), new(x1, y1, z1), Ten, [Clamp]);
        Assert.Equal(expected, near.Distance, 1e-9);
        Assert.Equal(0, near.ObstacleIndex);
    }

    [Fact]
    public void A_slanted_move_passes_an_edge_at_the_perpendicular()
    {
        // Closed form: the foremost point of the lower rim starts at X5 Z31 and goes along (1, 1); the upper edge, at X20 Z30, is
        // (15, −1) from there and so |15·1 − (−1)·1|/√2 off the line.
        var near = Sweep.Line(new(0, 0, 31), new(100, 0, 131), Ten, [Clamp]);
        Assert.Equal(16 / Math.Sqrt(2), near.Distance, 1e-9);
        Assert.Equal(7, near.Tip.X, 1e-6);
    }

    [Theory] // Closed form: distance of the axis to the stud's axis, less both radii.
    [InlineData(0, 30, 10, 100, 30, 10, -13)]
    [InlineData(0, 50, 10, 100, 50, 10, 7)]
    [InlineData(0, 43, 10, 100, 43, 10, 0)]
    [InlineData(0, 46, 42, 100, 46, 42, 5)] // 3 beside, 4 above
    public void Distance_to_a_stud_follows_from_the_axes(double x0, double y0, double z0, double x1, double y1, double z1, double expected) =>
        Assert.Equal(expected, Sweep.Line(new(x0, y0, z0), new(x1, y1, z1), Ten, [Stud]).Distance, 1e-9);

    [Fact]
    public void The_place_is_the_first_on_the_way_with_the_least_distance()
    {
        // At 2 above, all places with the rim over the clamp are alike; the rim is over it from X15 on.
        var near = Sweep.Line(new(0, 0, 32), new(100, 0, 32), Ten, [Clamp]);
        Assert.Equal(15, near.Tip.X, 1e-9);
        var back = Sweep.Line(new(100, 0, 32), new(0, 0, 32), Ten, [Clamp]);
        Assert.Equal(50, back.Tip.X, 1e-9);
    }

    [Fact]
    public void The_holder_is_told_apart_from_the_cutting_part()
    {
        var tool = ToolShape.From(new Tool { Number = 1, Diameter = 6, FluteLength = 12, Length = 90, HolderGauge = 60, HolderDiameter = 40 });
        // Tip at Z10, 12 beside the clamp: cutting part 9 away, holder (from Z40 up) 10 above and over it.
        var high = Sweep.Line(new(8, 0, 10), new(8, 10, 10), tool, [Clamp]);
        Assert.Equal((9, ToolPart.Cutting), (Math.Round(high.Distance, 9), high.Part));
        // Tip at Z2: the holder starts at Z32.
        var low = Sweep.Line(new(8, 0, 2), new(8, 10, 2), tool, [Clamp]);
        Assert.Equal((2, ToolPart.Holder), (Math.Round(low.Distance, 9), low.Part));
        // Tip at Z−10: the holder starts at Z20; it overlaps the clamp 8 sideways, 10 in height.
        var deep = Sweep.Line(new(8, 0, -10), new(8, 10, -10), tool, [Clamp]);
        Assert.Equal((-8, ToolPart.Holder), (Math.Round(deep.Distance, 9), deep.Part));
        // The clamp from Z0 up is met by the shank alone where it starts above the flutes.
        var raised = new BoxObstacle("bar", new(new(20, -10, 24), new(45, 20, 28)));
        var shank = Sweep.Line(new(16, 0, 5), new(16, 10, 5), tool, [raised]);
        Assert.Equal((1, ToolPart.Shank), (Math.Round(shank.Distance, 9), shank.Part));
    }

    [Fact]
    public void Unknown_places_give_an_unknown_distance()
    {
        var near = Sweep.Line(new(0, double.NaN, 5), new(1, 2, 3), Ten, [Clamp]);
        Assert.True(double.IsNaN(near.Distance));
        Assert.Equal(-1, near.ObstacleIndex);
        Assert.False(near.Clears(0));
        Assert.True(double.IsNaN(Sweep.Line(new(0, 0, 5), new(1, 2, double.PositiveInfinity), Ten, [Clamp]).Distance));
    }

    [Fact]
    public void Nothing_there_is_no_approach() => Assert.Equal(Approach.None, Sweep.Line(new(0, 0, 0), new(1, 0, 0), Ten, []));

    [Fact]
    public void An_obstacle_without_end_upward_is_only_passed_beside()
    {
        var column = new BoxObstacle("column", new(new(20, -10, 0), new(45, 20, double.PositiveInfinity)));
        Assert.Equal(5, Sweep.Line(new(10, 0, 500), new(10, 5, 900), Ten, [column]).Distance, 1e-9);
        Assert.Equal(-5, Sweep.Line(new(0, 0, 500), new(20, 0, 500), Ten, [column]).Distance, 1e-9);
    }

    // Outside reference: NetTopologySuite, distance of a segment to a polygon; at a level between bottom and top of the obstacle
    // and with a plain tool the distance in space is that less the radius.
    [Fact]
    public void Beside_an_obstacle_it_agrees_with_NetTopologySuite() =>
        Gen.Select(Reference.Obstacles, Reference.Place, Reference.Place, Gen.Double[0, 12]).Sample((obstacle, from, to, radius) =>
        {
            var level = (obstacle.Bottom + obstacle.Top) / 2;
            (from, to) = (from.With(2, level), to.With(2, level));
            var tool = ToolShape.From(new Tool { Number = 1, Diameter = 2 * radius });
            var expected = Reference.Horizontal(from, to, Reference.Footprint(obstacle)) - radius;
            var actual = Sweep.Line(from, to, tool, [obstacle]).Distance;
            if (expected > 0)
                Assert.Equal(expected, actual, obstacle is BoxObstacle ? 1e-9 : 1e-4);
            else
                Assert.True(actual <= 1e-9, $"{actual} where the footprints meet");
        }, iter: 3000);

    // Outside reference: dense sampling of NetTopologySuite distances, in 3-D.
    [Fact]
    public void In_space_it_agrees_with_dense_sampling() =>
        Gen.Select(Reference.Obstacles, Reference.Place, Reference.Place, Reference.Tools).Sample((obstacle, from, to, tool) =>
        {
            var footprint = Reference.Footprint(obstacle);
            const int Steps = 400;
            var sampled = Enumerable.Range(0, Steps + 1).Min(i => Reference.InSpace(Point3.Lerp(from, to, (double)i / Steps), tool, obstacle, footprint));
            var near = Sweep.Line(from, to, tool, [obstacle]);
            // The distance changes by no more than the tip moves, so the samples are off by at most half their spacing.
            var spacing = Point3.Distance(from, to) / Steps;
            Assert.InRange(near.Distance, sampled - spacing / 2 - 1e-4, sampled + 1e-4);
            // And the place given has the distance given.
            Assert.Equal(near.Distance, Reference.InSpace(near.Tip, tool, obstacle, footprint), 1e-4);
        }, iter: 400);

    // Outside reference: MathNet.Numerics' golden-section minimiser on the plain distance function.
    [Fact]
    public void The_minimum_agrees_with_the_minimiser_of_MathNet() =>
        Gen.Select(Reference.Box, Reference.Place, Reference.Place, Gen.Double[0, 12]).Sample((obstacle, from, to, radius) =>
        {
            var tool = ToolShape.From(new Tool { Number = 1, Diameter = 2 * radius });
            var footprint = Reference.Footprint(obstacle);
            // The minimiser looks beyond its bounds; the added slope keeps it on the move.
            double At(double t) => Reference.InSpace(Point3.Lerp(from, to, Math.Clamp(t, 0, 1)), tool, obstacle, footprint) + 1000 * Math.Abs(t - Math.Clamp(t, 0, 1));
            var found = GoldenSectionMinimizer.Minimum(ObjectiveFunction.ScalarValue(At), 0, 1, 1e-13, 200);
            var expected = Math.Min(found.FunctionInfoAtMinimum.Value, Math.Min(At(0), At(1)));
            Assert.Equal(expected, Sweep.Line(from, to, tool, [obstacle]).Distance, 1e-9);
        }, iter: 2000);

    [Fact]
    public void Leaving_out_what_is_far_changes_nothing_within_the_limit() =>
        Gen.Select(Reference.Obstacles.Array[0, 8], Reference.Place, Reference.Place, Reference.Tools, Gen.Double[-5, 30]).Sample((obstacles, from, to, tool, within) =>
        {
            var all = Sweep.Line(from, to, tool, obstacles);
            var each = obstacles.Select(o => Sweep.Line(from, to, tool, [o]).Distance).DefaultIfEmpty(double.PositiveInfinity).Min();
            Assert.Equal(each, all.Distance);
            var limited = Sweep.Line(from, to, tool, obstacles, within);
            if (all.Distance <= within)
                Assert.Equal(all, limited);
            else
                Assert.True(limited.Distance > within);
        }, iter: 3000);

    [Fact]
    public void Nothing_is_allocated()
    {
        Obstacle[] obstacles = [Clamp, Stud];
        Sweep.Line(new(0, 0, 40), new(90, 40, 20), Ten, obstacles);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 100; i++)
            Sweep.Line(new(0, 0, 40), new(90, 40, i), Ten, obstacles);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }
}
