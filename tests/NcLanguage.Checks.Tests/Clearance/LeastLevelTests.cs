using CsCheck;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Clearance;

public class LeastLevelTests
{
    static readonly BoxObstacle Clamp = new("clamp", new(new(20, -10, 0), new(45, 20, 30)));
    static readonly ToolShape Ten = ToolShape.From(new Tool { Number = 1, Diameter = 10 });

    [Theory] // Closed form: over the footprint it is top + clearance, beside it Pythagoras.
    [InlineData(0, 0, 100, 0, 32)] // across
    [InlineData(0, 0, 13, 0, 2)] // ends exactly the clearance short of the face
    [InlineData(0, 0, 15, 0, 32)] // ends with its rim over the edge
    [InlineData(14, -40, 14, 40, 31.732050807568877)] // 1 beside: 30 + √(2² − 1²)
    [InlineData(0, 60, 100, 60, 2)] // far away: the floor
    public void Level_follows_from_the_gap_beside(double x0, double y0, double x1, double y1, double expected) =>
        Assert.Equal(expected, Sweep.LeastLevel(new(x0, y0, 999), new(x1, y1, double.NaN), Ten, [Clamp], 2, 2), 1e-9);

    [Fact]
    public void The_holder_raises_the_level_where_it_would_touch()
    {
        var tool = ToolShape.From(new Tool { Number = 1, Diameter = 6, Length = 70, HolderGauge = 60, HolderDiameter = 40 });
        // 12 beside the clamp: the cutting part passes 9 beside; the holder, 10 above the tip, is over it and must be at 32.
        Assert.Equal(22, Sweep.LeastLevel(new(8, -40, 0), new(8, 40, 0), tool, [Clamp], 2, 2), 1e-9);
    }

    [Fact]
    public void The_tool_never_passes_underneath()
    {
        var bridge = new BoxObstacle("bridge", new(new(20, -10, 100), new(45, 20, 110)));
        Assert.Equal(112, Sweep.LeastLevel(new(0, 0, 0), new(100, 0, 0), Ten, [bridge], 2, 2), 1e-9);
    }

    [Fact]
    public void What_is_not_known_or_has_no_end_gives_no_level()
    {
        Assert.True(double.IsNaN(Sweep.LeastLevel(new(double.NaN, 0, 0), new(1, 0, 0), Ten, [Clamp], 2, 0)));
        var column = new BoxObstacle("column", new(new(20, -10, 0), new(45, 20, double.PositiveInfinity)));
        Assert.Equal(double.PositiveInfinity, Sweep.LeastLevel(new(0, 0, 0), new(100, 0, 0), Ten, [column], 2, 0));
        Assert.Equal(0, Sweep.LeastLevel(new(0, 0, 0), new(10, 0, 0), Ten, [column], 2, 0));
    }

    // Reference: the sweep, itself checked against NetTopologySuite and sampling. At the level the whole traverse keeps the
    // clearance and something is exactly that far; a hundredth lower it does not. Bodies reach down without end here, since going
    // underneath is not looked for.
    [Fact]
    public void At_the_level_it_is_clear_and_lower_it_is_not() =>
        Gen.Select(Reference.Obstacles.Array[1, 6], Reference.Place, Reference.Place, Reference.Tools, Gen.Double[0, 5], Gen.Double[-20, 60]).Sample((obstacles, from, to, tool, clearance, floor) =>
        {
            var grounded = Array.ConvertAll(obstacles, o => o switch
            {
                BoxObstacle b => b with { Box = new(b.Box.Min with { Z = -1000 }, b.Box.Max) },
                CylinderObstacle c => new CylinderObstacle(c.Name, c.CenterX, c.CenterY, c.Diameter, -1000, c.Top),
                _ => o,
            });
            var level = Sweep.LeastLevel(from, to, tool, obstacles, clearance, floor);
            Assert.True(level >= floor);
            var atLevel = Sweep.Line(from.With(2, level), to.With(2, level), tool, grounded);
            Assert.True(atLevel.Clears(clearance), $"{atLevel} at {level}");
            if (level == floor)
                return;
            Assert.Equal(clearance, atLevel.Distance, 1e-6);
            var lower = Sweep.Line(from.With(2, level - 0.01), to.With(2, level - 0.01), tool, grounded);
            Assert.False(lower.Clears(clearance), $"{lower} at {level - 0.01}");
        }, iter: 5000);
}
