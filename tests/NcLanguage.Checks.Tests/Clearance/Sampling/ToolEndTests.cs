using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Clearance.Sampling;

/// <summary>Pointed ends count as flat: on the large side, and by how much. Outside reference: sampling of <see cref="SampledDistance"/>, with the cone.</summary>
public sealed class ToolEndTests
{
    /// <summary>Never farther than the cone is, nearer by at most the corner that is missing of it.</summary>
    [Fact]
    public void No_contact_of_a_pointed_tool_is_missed()
    {
        for (var seed = 0; seed < 300; seed++)
        {
            var random = new Random(seed);
            ToolKind[] kinds = [ToolKind.Drill, ToolKind.SpotDrill, ToolKind.Countersink, ToolKind.ChamferMill];
            var row = new Tool { Number = 1, Kind = kinds[random.Next(kinds.Length)], PointAngle = Fixture.Between(random, 60, 150), Diameter = Fixture.Between(random, 4, 20) };
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

    /// <summary>What a tool certainly fills is never nearer than the cone is, and farther by no more than one of its sixteen steps.</summary>
    [Fact]
    public void What_is_inside_a_pointed_tool_meets_nothing_that_it_does_not()
    {
        for (var seed = 0; seed < 300; seed++)
        {
            var random = new Random(seed);
            ToolKind[] kinds = [ToolKind.Drill, ToolKind.SpotDrill, ToolKind.Countersink, ToolKind.ChamferMill];
            var row = new Tool { Number = 1, Kind = kinds[random.Next(kinds.Length)], PointAngle = Fixture.Between(random, 60, 150), Diameter = Fixture.Between(random, 4, 20) };
            var fixture = new Fixture(random);
            Point3 from = new(Fixture.Between(random, -60, 60), Fixture.Between(random, -60, 60), Fixture.Between(random, -10, 40)), to = new(Fixture.Between(random, -60, 60), Fixture.Between(random, -60, 60), Fixture.Between(random, -10, 40));
            var found = Sweep.Line(from, to, ToolShape.Within(row), [.. fixture.Obstacles]).Distance;
            var tool = new SampledTool(row, cones: true);
            var real = Path(from, to).Least(place => SampledDistance.Of(place, tool, fixture.Obstacles));
            Assert.InRange(found, real - SampledPath.Error, Math.Max(real, 0) + row.Diameter!.Value / 32 + 1e-9);
        }
    }

    static SampledPath Path(Point3 from, Point3 to) => new(
        new Move(MoveKind.Feed, MoveRole.Plain, from, to, Point3.Unknown, false, WorkPlane.XY, 0, double.NaN, double.NaN), default, MachineProfile.IsoMill);
}
