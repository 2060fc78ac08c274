using System.Text;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Tests.Loading;

public class SetupFileTests
{
    const string Whole = """
        {
          // a bearing plate on parallels
          "$schema": "setup.schema.json",
          "units": "mm", "frame": "G55", "machine": "shop.machine.json", "material": "aluminium",
          "stock": { "min": [0, 0, -12], "max": [140, 60, 0], "hollows": [ { "name": "bore", "center": [100, 30], "diameter": 24 }, { "min": [60, 40], "max": [80, 70], "cornerRadius": 5, "bottom": -4 } ] },
          "clearance": 1.5, "clampHeight": 30,
          "obstacles": [
            { "name": "clamp A", "min": [20, -10, 0], "max": [45, 20, 30] },
            { "name": "stud", "center": [60, 30], "diameter": 16, "bottom": 0, "top": 38 },
          ],
          "supports": [ { "min": [0, 0, -30], "max": [140, 8, -12] } ],
          "workOffsets": { "G54": [-320, -210, -400], "G59.3": [1, 2, 3] },
          "tools": [
            { "number": 4, "kind": "spot-drill", "diameter": 10, "pointAngle": 90, "fluteLength": 25, "flutes": 2,
              "length": 95, "holderDiameter": 40, "holderGauge": 60, "material": "HSS", "lengthOffset": 14, "radiusOffset": 24, "pitch": null },
            { "number": 5, "kind": "tap", "pitch": 1.25 },
          ],
          "holes": [ { "x": 20, "y": 12, "diameter": 6.8, "depth": 15, "thread": "M8" } ],
          "variables": { "#500": 3.2, "#<depth>": -4 } /* the probe writes #500 */
        }
        """;

    static SetupReadResult Read(string text) => SetupFile.Read("part.setup.json", Encoding.UTF8.GetBytes(text));

    [Fact]
    public void Every_member_is_read()
    {
        var (setup, problems) = Read(Whole);

        Assert.Empty(problems);
        Assert.True(setup.IsPresent);
        Assert.True(setup.ObstaclesAreKnown);
        Assert.Equal(("part.setup.json", 55, "shop.machine.json", "aluminium"), (setup.Path, setup.Frame, setup.Machine, setup.Material));
        Assert.Equal(new Box3(new(0, 0, -12), new(140, 60, 0)), setup.Stock);
        Assert.Equal<Hollow>(
            [new Hollow("bore", 88, 18, 112, 42, 12, -12) { IsRound = true, Line = 5 }, new Hollow("hollow 2", 60, 40, 80, 70, 5, -4) { Line = 5 }], setup.Hollows);
        Assert.Equal((1.5, 30), (setup.Clearance, setup.ClampHeight!.Value));
        Assert.Equal(new BoxObstacle("clamp A", new(new(20, -10, 0), new(45, 20, 30))) { Line = 8 }, setup.Obstacles[0]);
        Assert.Equal(new CylinderObstacle("stud", 60, 30, 16, 0, 38) { Line = 9 }, setup.Obstacles[1]);
        Assert.Equal("support 1", setup.Supports.Single().Name);
        Assert.Equal(new Point3(-320, -210, -400), setup.WorkOffsets[54]);
        Assert.Equal(new Point3(1, 2, 3), setup.WorkOffsets[593]);
        var spot = new Tool
        {
            Number = 4,
            Kind = ToolKind.SpotDrill,
            Diameter = 10,
            PointAngle = 90,
            FluteLength = 25,
            Flutes = 2,
            Length = 95,
            HolderDiameter = 40,
            HolderGauge = 60,
            Material = "HSS",
            LengthOffset = 14,
            RadiusOffset = 24,
            Pitch = null,
            Line = 14,
        };
        Assert.Equal<Tool>([spot, new Tool { Number = 5, Kind = ToolKind.Tap, Pitch = 1.25, Line = 16 }], setup.Tools);
        Assert.Equal<DrawingHole>([new DrawingHole(20, 12, 6.8, 15, "M8") { Line = 18 }], setup.Holes);
        Assert.Equal((3.2, -4.0), (setup.Variables["#500"], setup.Variables["#<depth>"]));
    }

    // The international inch is 25.4 mm exactly (international yard and pound agreement, 1959).
    [Fact]
    public void Every_length_of_an_inch_file_is_converted_and_nothing_else()
    {
        var (setup, problems) = Read("""
            {
              "stock": { "min": [0, 0, -1], "max": [4, 2, 0], "hollows": [ { "min": [1, 0], "max": [3, 1], "cornerRadius": 0.25, "bottom": -0.5 } ] }, "clearance": 0.1, "clampHeight": 1,
              "obstacles": [ { "center": [1, 2], "diameter": 0.5, "bottom": 0, "top": 2 } ],
              "supports": [ { "min": [0, 0, -2], "max": [4, 1, -1] } ],
              "workOffsets": { "G54": [-10, -5, -20] },
              "tools": [ { "number": 1, "diameter": 0.25, "pointAngle": 118, "fluteLength": 2, "flutes": 2, "length": 4, "shankDiameter": 0.5, "holderDiameter": 1.5,
                           "holderGauge": 3, "lengthOffset": 1, "pitch": 0.05 } ],
              "holes": [ { "x": 1, "y": 2, "diameter": 0.25, "depth": 0.5 } ],
              "variables": { "#1": 10 },
              "units": "inch"
            }
            """);

        Assert.Empty(problems);
        Assert.Equal(new Box3(new(0, 0, -25.4), new(101.6, 50.8, 0)), setup.Stock);
        var hollow = setup.Hollows.Single();
        Assert.Equal((25.4, 0.0, 76.2, 25.4, 6.35, -12.7), (hollow.MinX, hollow.MinY, Math.Round(hollow.MaxX, 9), hollow.MaxY, hollow.CornerRadius, hollow.Bottom));
        Assert.Equal((2.54, 25.4), (setup.Clearance, setup.ClampHeight!.Value));
        Assert.Equal(new CylinderObstacle("obstacle 1", 25.4, 50.8, 12.7, 0, 50.8) { Line = 3 }, setup.Obstacles.Single());
        Assert.Equal(-25.4, setup.Supports.Single().Top);
        Assert.Equal(new Point3(-254, -127, -508), setup.WorkOffsets[54]);
        var tool = setup.Tools.Single();
        Assert.Equal((6.35, 118.0, 50.8, 2, 101.6, 1), (tool.Diameter, tool.PointAngle, tool.FluteLength, tool.Flutes, tool.Length, tool.LengthOffset));
        Assert.Equal(12.7, tool.ShankDiameter!.Value, 9);
        Assert.Equal(38.1, tool.HolderDiameter!.Value, 9);
        Assert.Equal(76.2, tool.HolderGauge!.Value, 9);
        Assert.Equal(1.27, tool.Pitch!.Value, 9);
        Assert.Equal(new DrawingHole(25.4, 50.8, 6.35, 12.7, null) { Line = 8 }, setup.Holes.Single());
        Assert.Equal(10, setup.Variables["#1"]);
    }

    [Fact]
    public void An_empty_object_is_a_setup_that_says_nothing()
    {
        var (setup, problems) = Read("{}");

        Assert.Empty(problems);
        Assert.Equal(new Setup { IsPresent = true, Path = "part.setup.json" }, setup);
    }

    /// <summary>Further work offsets are named as programs write them, each with a number of its own.</summary>
    [Fact]
    public void Further_work_offsets()
    {
        var (setup, problems) = Read("""{ "units": "inch", "workOffsets": { "G54.1 P2": [1, 0, 0], "G54.1 P300": [0, 0, -1], "G54": [0, 0, 0] } }""");
        Assert.Empty(problems);
        Assert.Equal(3, setup.WorkOffsets.Count);
        Assert.Equal(new Point3(25.4, 0, 0), setup.WorkOffsets[WorkOffsetName.Further(2)]);
        Assert.Equal(new Point3(0, 0, -25.4), setup.WorkOffsets[WorkOffsetName.Parse("G54.1 P300")!.Value]);
        Assert.Equal("G54.1 P300", WorkOffsetName.Format(WorkOffsetName.Further(300)));
    }

    [Fact]
    public void An_empty_list_of_obstacles_is_a_list()
    {
        Assert.True(Read("""{ "obstacles": [] }""").Setup.ObstaclesAreListed);
        Assert.False(Read("""{ "obstacles": null }""").Setup.ObstaclesAreListed);
        Assert.False(Read("{}").Setup.ObstaclesAreListed);
    }

    [Theory]
    [InlineData("""{ "workOffsets": { "G53": [0, 0, 0] } }""", "so it is ignored: G53 is machine coordinates, which have no offset.")]
    [InlineData("""{ "workOffsets": { "g54.1p3": [0, 0, 0] } }""", "so it is ignored: a further work offset is written \"G54.1 P3\", with a whole number from 1 to 999.")]
    [InlineData("""{ "workOffsets": { "G54.1 P2": [0, 0, 0], "G54.1 P2": [1, 0, 0] } }""", "\"G54.1 P2\" is given 2 times, first on line 1; none of them is used.")]
    [InlineData("""{ "clearance": 1e999 }""", "\"clearance\" is a number too large to be read; it must be at most 100000;")]
    public void A_mistake_reads(string file, string part)
    {
        var problem = Assert.Single(Read(file).Problems);
        Assert.Contains(part, problem.Message, StringComparison.Ordinal);
        Assert.Null(problem.Replacement);
    }

    [Fact]
    public void Null_stands_for_not_known()
    {
        var (setup, problems) = Read("""{ "stock": null, "tools": [ { "number": 1, "kind": null, "diameter": null } ], "holes": null, "units": null }""");

        Assert.Empty(problems);
        Assert.Null(setup.Stock);
        Assert.Equal(new Tool { Number = 1, Line = 1 }, setup.Tools.Single());
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void A_byte_order_mark_and_any_line_end_are_read(string lineEnd)
    {
        var text = "\uFEFF{ \"clearance\": 3,\n \"clampHeihgt\": 4 }".Replace("\n", lineEnd, StringComparison.Ordinal);

        var (setup, problems) = Read(text);

        Assert.Equal(3, setup.Clearance);
        var problem = Assert.Single(problems);
        Assert.Equal(("setup-unknown-key", 2, 2, 15), (problem.Name, problem.Line, problem.Column, problem.EndColumn));
    }

    [Fact]
    public void Columns_count_characters_as_editors_do_also_behind_a_byte_order_mark()
    {
        var problem = Assert.Single(Read("\uFEFF{ \"material\": \"Stahl für Wellen 🙂\", \"frame\": 5 }").Problems);

        Assert.Equal((1, 47, 48), (problem.Line, problem.Column, problem.EndColumn));
    }
}
