using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>The contract's words: length runs from the gauge line to the tip, holderGauge is the part of it that the holder takes.</summary>
public class ToolShapeTests
{
    const double Endless = double.PositiveInfinity;

    static ToolCylinder[] Stack(Tool? tool) => ToolShape.From(tool).Cylinders.ToArray();

    [Fact]
    public void A_full_row_gives_cutting_part_shank_and_holder() =>
        Assert.Equal(
            [new(5, 0, 25, ToolPart.Cutting), new(5, 25, 35, ToolPart.Shank), new(20, 35, Endless, ToolPart.Holder)],
            Stack(new() { Number = 4, Diameter = 10, FluteLength = 25, Length = 95, HolderGauge = 60, HolderDiameter = 40 }));

    [Fact]
    public void Flutes_do_not_reach_into_the_holder() =>
        Assert.Equal(
            [new(5, 0, 35, ToolPart.Cutting), new(20, 35, Endless, ToolPart.Holder)],
            Stack(new() { Number = 4, Diameter = 10, FluteLength = 50, Length = 95, HolderGauge = 60, HolderDiameter = 40 }));

    [Fact]
    public void Without_flutes_the_cutting_part_reaches_to_the_holder() =>
        Assert.Equal(
            [new(5, 0, 35, ToolPart.Cutting), new(20, 35, Endless, ToolPart.Holder)],
            Stack(new() { Number = 4, Diameter = 10, Length = 95, HolderGauge = 60, HolderDiameter = 40 }));

    [Fact]
    public void A_shank_has_its_own_diameter()
    {
        var tool = new Tool { Number = 4, Diameter = 10, FluteLength = 25, ShankDiameter = 6, Length = 95, HolderGauge = 60, HolderDiameter = 40 };
        Assert.Equal([new(5, 0, 25, ToolPart.Cutting), new(3, 25, 35, ToolPart.Shank), new(20, 35, Endless, ToolPart.Holder)], Stack(tool));
        // Where the flutes end is not known: nor where the shank begins.
        Assert.Equal([new(5, 0, 35, ToolPart.Cutting), new(20, 35, Endless, ToolPart.Holder)], Stack(tool with { FluteLength = null }));
    }

    [Fact]
    public void What_the_row_does_not_say_is_left_out()
    {
        Assert.Equal([new(0, 0, Endless, ToolPart.Cutting)], Stack(null));
        Assert.Equal([new(0, 0, Endless, ToolPart.Cutting)], Stack(new() { Number = 4 }));
        Assert.Equal([new(5, 0, Endless, ToolPart.Cutting)], Stack(new() { Number = 4, Diameter = 10, Length = 95, HolderDiameter = 40 }));
        Assert.Equal([new(5, 0, 25, ToolPart.Cutting), new(5, 25, Endless, ToolPart.Shank)], Stack(new() { Number = 4, Diameter = 10, FluteLength = 25, HolderGauge = 60, Length = 95 }));
        Assert.Equal([new(0, 0, 35, ToolPart.Cutting), new(20, 35, Endless, ToolPart.Holder)], Stack(new() { Number = 4, Length = 95, HolderGauge = 60, HolderDiameter = 40 }));
        Assert.Equal(0, ToolShape.From(null).Radius);
    }

    /// <summary>A round of 2 mm about a flat of 3 mm: halfway out in radius it has risen by 2 − sqrt(2² − 1²) mm (geometry of the circle).</summary>
    [Fact]
    public void What_it_certainly_fills_lies_inside_its_end()
    {
        var tool = new Tool { Number = 4, Kind = ToolKind.BullMill, Diameter = 10, CornerRadius = 2, FluteLength = 25, Length = 95, HolderGauge = 60, HolderDiameter = 40 };
        var within = ToolShape.Within(tool).Cylinders.ToArray();
        Assert.Equal(new(3, 0, 25, ToolPart.Cutting), within[0]);
        Assert.Equal(4, within[8].Radius, 9);
        Assert.Equal(2 - Math.Sqrt(3), within[8].Bottom, 9);
        Assert.Equal([new(5, 2, 25, ToolPart.Cutting), new(5, 25, 35, ToolPart.Shank), new(20, 35, Endless, ToolPart.Holder)], within[^3..]);
        Assert.Equal(Stack(tool with { Kind = ToolKind.EndMill, CornerRadius = null }), ToolShape.Within(tool with { Kind = ToolKind.EndMill, CornerRadius = null }).Cylinders.ToArray());
        // Nobody knows its end, or it is thinner than its row says.
        foreach (var open in (Tool[])[tool with { Kind = ToolKind.Drill, CornerRadius = null }, tool with { Kind = ToolKind.Tap, CornerRadius = null }, tool with { Kind = ToolKind.CentreDrill, CornerRadius = null, PointAngle = 60 }])
            Assert.Same(ToolShape.AxisOnly, ToolShape.Within(open));
    }
}
