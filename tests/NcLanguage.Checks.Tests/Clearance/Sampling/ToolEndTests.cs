using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Clearance.Sampling;

/// <summary>The ends of tools: exact for drills, on the large side for others, and by how much. Outside reference: sampling of <see cref="SampledDistance"/>.</summary>
public sealed class ToolEndTests
{
    static readonly BoxObstacle Block = new("block", new(new(20, -50, -100), new(60, 50, 10)));
    static readonly Tool SpotDrill = new() { Number = 1, Kind = ToolKind.SpotDrill, PointAngle = 90, Diameter = 10 };

    // Closed form: a point of 90 degrees rises 45 degrees, so that its flank passes an edge at (beside + above)/√2; its shoulder is 5 up, at radius 5.
    [Theory]
    [InlineData(18, 10, 1.4142135623730951)] // 2 beside, level with the edge: the flank
    [InlineData(16, 10, 2.8284271247461903)] // 4 beside
    [InlineData(18, 9, 0.7071067811865476)]
    [InlineData(18, 8, 0)] // 2 beside, 2 deep: the flank touches
    [InlineData(18, 6, -1.4142135623730951)]
    [InlineData(20, 10, 0)] // the tip on the edge
    [InlineData(20, 12, 2)] // over the edge
    [InlineData(40, 8, -2)] // 2 deep in the middle
    [InlineData(12, -20, 3)] // the side, past the shoulder
    [InlineData(12, 9, 4.949747468305833)] // 8 beside, 1 deep: the flank
    [InlineData(12, 5, 3)] // the shoulder level with the edge
    [InlineData(12, 7, 3.605551275463989)] // past the shoulder: 3 beside, 2 below it
    [InlineData(18, 14, 4.47213595499958)] // the tip: 2 beside, 4 above
    public void A_drill_point_is_a_cone(double x, double z, double expected)
    {
        var near = Sweep.Line(new(x, 0, z), new(x, 0, z), ToolShape.From(SpotDrill), [Block]);
        Assert.Equal(expected, near.Distance, 1e-9);
    }

    // Closed form, to a round: 3 beside with the tip at its top's height is √(…) along the flank of 59 degrees from the axis: 3·cos 59°.
    [Fact]
    public void The_flank_of_118_degrees_passes_a_stud()
    {
        var drill = ToolShape.From(new Tool { Number = 1, Kind = ToolKind.Drill, PointAngle = 118, Diameter = 16 });
        var near = Sweep.Line(new(-50, 13, 20), new(50, 13, 20), drill, [new CylinderObstacle("stud", 0, 0, 20, 0, 20)]);
        Assert.Equal(3 * Math.Cos(59 * Math.PI / 180), near.Distance, 1e-9);
        Assert.Equal(0, near.Tip.X, 1e-6);
    }

    /// <summary>At the least level the clearance is kept, and two hundredths lower it is not.</summary>
    [Fact]
    public void The_least_level_of_a_pointed_tool_is_the_least()
    {
        const double Clearance = 2;
        var needed = 0;
        for (var seed = 0; seed < 400; seed++)
        {
            var random = new Random(seed);
            var row = new Tool { Number = 1, Kind = ToolKind.Drill, PointAngle = Fixture.Between(random, 60, 150), Diameter = Fixture.Between(random, 4, 30) };
            // Obstacles that stand on the ground: nothing passes underneath.
            var obstacles = new Fixture(random).Obstacles.ConvertAll<Obstacle>(obstacle => obstacle is CylinderObstacle stud
                ? new CylinderObstacle(stud.Name, stud.CenterX, stud.CenterY, stud.Diameter, -500, stud.Top)
                : new BoxObstacle(obstacle.Name, new(obstacle.Bounds.Min.With(2, -500), obstacle.Bounds.Max)));
            Point3 from = new(Fixture.Between(random, -60, 60), Fixture.Between(random, -60, 60), 0), to = new(Fixture.Between(random, -60, 60), Fixture.Between(random, -60, 60), 0);
            var level = Sweep.LeastLevel(from, to, ToolShape.From(row), [.. obstacles], Clearance, -30);

            var tool = new SampledTool(row);
            double At(double z) => Path(from.With(2, z), to.With(2, z)).Least(place => SampledDistance.Of(place, tool, obstacles));
            Assert.True(At(level) >= Clearance - 1e-9, $"seed {seed}: {At(level)} at {level}");
            if (level == -30)
                continue;
            needed++;
            Assert.True(At(level - 0.02) < Clearance, $"seed {seed}: {At(level - 0.02)} below {level}");
        }
        Assert.InRange(needed, 100, 399);
    }

    /// <summary>Countersinks and chamfer mills count as flat: never farther than their cone is, nearer by at most what is missing of it at the corner.</summary>
    [Fact]
    public void Other_pointed_tools_count_as_flat_and_no_contact_is_missed()
    {
        for (var seed = 0; seed < 300; seed++)
        {
            var random = new Random(seed);
            var kind = random.Next(2) == 0 ? ToolKind.Countersink : ToolKind.ChamferMill;
            var row = new Tool { Number = 1, Kind = kind, PointAngle = random.Next(2) == 0 ? 90 : 60, Diameter = Fixture.Between(random, 4, 20) };
            var fixture = new Fixture(random);
            Point3 from = new(Fixture.Between(random, -60, 60), Fixture.Between(random, -60, 60), Fixture.Between(random, -10, 40)), to = new(Fixture.Between(random, -60, 60), Fixture.Between(random, -60, 60), Fixture.Between(random, -10, 40));
            var found = Sweep.Line(from, to, ToolShape.From(row), [.. fixture.Obstacles]).Distance;
            var tool = new SampledTool(row, cones: true);
            var real = Path(from, to).Least(place => SampledDistance.Of(place, tool, fixture.Obstacles));
            // The corner of the cylinder lies this far off the cone's flank.
            var corner = row.Diameter!.Value / 2 * Math.Cos(row.PointAngle!.Value * Math.PI / 360);
            Assert.InRange(found, real - corner - SampledPath.Error, real + 1e-9);
        }
    }

    static SampledPath Path(Point3 from, Point3 to) => new(
        new Move(MoveKind.Feed, MoveRole.Plain, from, to, Point3.Unknown, false, WorkPlane.XY, 0, double.NaN, double.NaN), default, MachineProfile.IsoMill);
}
