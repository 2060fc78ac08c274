using System.Numerics;
using CsCheck;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Clearance;

public class ArcSweepTests
{
    static readonly BoxObstacle Clamp = new("clamp", new(new(20, -10, 0), new(45, 20, 30)));
    static readonly CylinderObstacle Stud = new("stud", 60, 30, 16, 0, 38);
    static readonly ToolShape Ten = ToolShape.From(new Tool { Number = 1, Diameter = 10 });

    [Fact] // Closed form: the rim reaches centre + radius + tool radius.
    public void A_full_circle_reaches_its_radius_every_way()
    {
        var near = Sweep.Arc(new(-12, 5, 10), new(-12, 5, 10), new(0, 5, 0), true, 17, 0, Ten, [Clamp]);
        Assert.Equal(20 - 12 - 5, near.Distance, 1e-9);
        Assert.Equal(12, near.Tip.X, 1e-6);
    }

    [Fact] // Closed form: a half circle the one way round bulges to X12, the other way to X−12.
    public void The_turn_decides_the_side()
    {
        Assert.Equal(3, Sweep.Arc(new(0, 17, 10), new(0, -7, 10), new(0, 5, 0), true, 17, 0, Ten, [Clamp]).Distance, 1e-9);
        Assert.Equal(15, Sweep.Arc(new(0, 17, 10), new(0, -7, 10), new(0, 5, 0), false, 17, 0, Ten, [Clamp]).Distance, 1e-9);
    }

    [Theory] // Closed form: a half circle of radius 12 in a standing plane dips 12 below its ends (Z46) or rises above them; the clamp's top is Z30.
    [InlineData(18, true, 4)] // ZX, clockwise seen from +Y: from −X to +X underneath
    [InlineData(18, false, 16)]
    [InlineData(19, true, 16)] // YZ, clockwise seen from +X: from −Y to +Y over the top
    [InlineData(19, false, 4)]
    public void Standing_planes_turn_as_seen_from_the_positive_axis(int plane, bool clockwise, double expected)
    {
        var half = plane == 18 ? new Point3(12, 0, 0) : new Point3(0, 12, 0);
        var center = new Point3(32, 5, 46);
        var near = Sweep.Arc(center - half, center + half, center, clockwise, plane, 0, Ten, [Clamp]);
        Assert.Equal(expected, near.Distance, 1e-9);
    }

    [Fact] // Closed form: round a stud at an even distance, from above its top to below it; the gap beside is 20 − 8 − 5.
    public void A_helix_round_a_stud_keeps_its_distance()
    {
        var near = Sweep.Arc(new(80, 30, 60), new(80, 30, 10), new(60, 30, 0), false, 17, 4, Ten, [Stud]);
        Assert.Equal(7, near.Distance, 1e-9);
        Assert.True(near.Tip.Z <= 38 + 1e-6);
    }

    [Fact] // Closed form: Pythagoras on the gap beside and the gap above at the end.
    public void Extra_turns_do_not_change_where_a_helix_ends() =>
        Assert.Equal(double.Hypot(7, 2), Sweep.Arc(new(80, 30, 60), new(80, 30, 40), new(60, 30, 0), false, 17, 3, Ten, [Stud]).Distance, 1e-9);

    [Fact]
    public void Many_turns_at_one_level_are_one_turn()
    {
        var one = Sweep.Arc(new(80, 30, 10), new(80, 30, 10), new(60, 30, 0), false, 17, 0, Ten, [Clamp, Stud]);
        var many = Sweep.Arc(new(80, 30, 10), new(80, 30, 10), new(60, 30, 0), false, 17, int.MaxValue, Ten, [Clamp, Stud]);
        Assert.Equal((Math.Round(one.Distance, 9), one.ObstacleIndex), (Math.Round(many.Distance, 9), many.ObstacleIndex));
        // A quarter and a turn more has been all the way round.
        var quarter = Sweep.Arc(new(0, 17, 10), new(-12, 5, 10), new(0, 5, 0), false, 17, 1, Ten, [Clamp]);
        Assert.Equal(3, quarter.Distance, 1e-9);
    }

    [Fact]
    public void Unknown_places_give_an_unknown_distance()
    {
        Assert.True(double.IsNaN(Sweep.Arc(new(double.NaN, 30, 60), new(80, 30, 40), new(60, 30, 0), false, 17, 0, Ten, [Stud]).Distance));
        Assert.True(double.IsNaN(Sweep.Arc(new(80, 30, 60), new(80, 30, 40), new(double.NaN, 30, 0), false, 17, 0, Ten, [Stud]).Distance));
        Assert.False(double.IsNaN(Sweep.Arc(new(80, 30, 60), new(80, 30, 40), new(60, 30, double.NaN), false, 17, 0, Ten, [Stud]).Distance));
    }

    // Outside reference: dense sampling of NetTopologySuite distances; the arc's places from a turning complex number. No contact
    // deeper than 0.01 mm is missed and distances agree to 0.01 mm.
    [Fact]
    public void In_space_it_agrees_with_dense_sampling() =>
        Gen.Select(Reference.Obstacles, Reference.Tools, Reference.Place, Gen.Double[0.05, 30], Gen.Double[-3, 3], Gen.Select(Gen.Double[-20, 20], Gen.Bool, Gen.Int[17, 19], Gen.Int[0, 2])).Sample(
            (obstacle, tool, center, radius, startAngle, rest) =>
            {
                var (rise, flat, plane, turns) = rest;
                var end = (startAngle * 7919) % Math.Tau; // any angle, and its sign the direction
                if (Math.Abs(end) < 0.01)
                    return;
                if (flat)
                    rise = 0;
                var angle = end + Math.Sign(end) * turns * Math.Tau;
                Point3 At(double t)
                {
                    var turned = radius * Complex.Exp(Complex.ImaginaryOne * (startAngle + angle * t));
                    var third = rise * t;
                    return center + plane switch
                    {
                        17 => new Point3(turned.Real, turned.Imaginary, third),
                        18 => new Point3(turned.Imaginary, third, turned.Real),
                        _ => new Point3(third, turned.Real, turned.Imaginary),
                    };
                }

                var footprint = Reference.Footprint(obstacle);
                var best = 0.0;
                var sampled = double.PositiveInfinity;
                void Sample(double t)
                {
                    if (t is < 0 or > 1)
                        return;
                    var distance = Reference.InSpace(At(t), tool, obstacle, footprint);
                    if (distance < sampled)
                        (sampled, best) = (distance, t);
                }
                const int Steps = 1500;
                for (var i = 0; i <= Steps; i++)
                    Sample((double)i / Steps);
                var around = best;
                for (var i = -200; i <= 200; i++)
                    Sample(around + i / 200.0 / Steps);

                var near = Sweep.Arc(At(0), At(1), center, angle < 0, plane, turns, tool, [obstacle]);
                // A turn may climb past a thin obstacle between samples of the other turns: those are off by at most half a step.
                var spacing = double.Hypot(radius * angle, rise) / Steps;
                // The reference's circles are polygons that lie up to this far inside them.
                const double Polygon = 1e-4;
                Assert.InRange(near.Distance, sampled - Math.Min(spacing, 0.3) - Polygon, sampled + 0.01);
                Assert.Equal(near.Distance, Reference.InSpace(near.Tip, tool, obstacle, footprint), 1e-4);
                if (spacing < 0.02)
                    Assert.Equal(sampled, near.Distance, 0.01);
            }, iter: 250);

    [Fact]
    public void Nothing_is_allocated()
    {
        Obstacle[] obstacles = [Clamp, Stud];
        Sweep.Arc(new(80, 30, 60), new(80, 30, 10), new(60, 30, 0), false, 17, 4, Ten, obstacles);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 10; i++)
            Sweep.Arc(new(80, 30, 60), new(80, 30, i), new(60, 30, 0), false, 17, 0, Ten, obstacles);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }
}
