using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>Which feeds are told as cutting air. Expected outcomes are closed-form: where the tool is, and length over feed for the time.</summary>
public sealed class CutInAirTests
{
    const string Plate = """
        { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] },
          "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118 }, { "number": 5, "kind": "end-mill", "diameter": 10 }, { "number": 6, "kind": "ball-mill", "diameter": 8 } ] }
        """;
    const string Start = "G21 G90 G17 G54\nT5 M6\nG0 X-10 Y30 Z5\n";

    static List<Finding> Of(string moves, string setup = Plate) => Programs.Of("cut-in-air", Start + moves, setup);

    [Theory]
    [InlineData("G1 X110 F300\nG0 Z50\nM30", new[] { 4 })] // 24 s, 5 above the plate, and nothing else
    [InlineData("Z-2\nG1 X110 F300\nG0 Z50\nM30", new int[0])]
    [InlineData("Z0.5\nG1 X110 F300\nG0 Z50\nM30", new int[0])] // half a millimetre above: the stock may be a little larger than the setup says
    [InlineData("Z2\nG1 X110 F300\nG0 Z50\nM30", new[] { 5 })]
    [InlineData("G0 Z-5 Y-4\nG1 X110 F300\nG0 Z50\nM30", new int[0])] // along the side, 1 mm into it
    [InlineData("G0 Z-5 Y-15\nG1 X110 F300\nG0 Z50\nM30", new[] { 5 })] // beside it, 10 mm off
    [InlineData("G0 X50\nG1 Z3 F5\nG0 Z50\nM30", new int[0])] // straight down: an approach, however slow
    [InlineData("G1 Z-3 F20\nX110 F300\nZ5 F20\nG0 Z50\nM30", new int[0])] // 24 s down and 24 s up at feed
    [InlineData("Z-3\nG1 X110 F300\nX-10\nX110\nG0 Z50\nM30", new int[0])] // the same slot thrice: a finishing pass gone again
    [InlineData("Z-3\nG1 X110 F300\nG0 Z4\nG1 X100 F200\nG0 Z50\nM30", new int[0])] // 3 s at 4 mm between cuts
    [InlineData("Z-3\nG1 X110 F300\nG0 Z4\nG1 X-10\nG0 Z50\nM30", new[] { 7 })] // 24 s back at feed above the part
    [InlineData("G1 X0 F300\nX10\nX15 Y35\nG3 X15 Y15 I0 J-10\nG0 Z9\nG1 X40\nG0 Z50\nM30", new[] { 4 })] // a row over a rapid: one finding
    [InlineData("G1 X-5 F100\nG0 Z50\nT6 M6\nG0 Z-3\nG1 X50\nM30", new[] { 4 })] // 3 s, but all that the tool does
    [InlineData("G0 X-20 Z-3\nG3 Y-10 I0 J-20 F300\nG0 Z50\nM30", new[] { 5 })] // half a circle away from the side
    [InlineData("G0 X-20 Z-3\nG2 Y-10 I0 J-20 F300\nG0 Z50\nM30", new int[0])] // the other half, which goes into it
    [InlineData("G0 X-6 Z-3\nG3 X-6 Y10 I0 J-10 F300\nG0 Z50\nM30", new int[0])] // away from it, but from 1 mm beside it
    [InlineData("G0 X-60 Z-3\nT9 M6\nG0 X50 Z5\nG1 Z-1 F99\nG0 Z5\nT5 M6\nG0 X-60 Y30 Z-3\nG3 Y-30 I0 J-30 F300\nG0 Z50\nM30", new int[0])] // what T9 left is not known
    [InlineData("G38.2 Z1 F5\nG38.2 X110 F20\nM30", new int[0])] // probe moves cut nothing by design
    public void A_row_of_feeds_in_air_is_told_at_its_first_block(string moves, int[] lines) => Assert.Equal(lines, Of(moves).Select(finding => finding.Line + 1));

    /// <summary>What a cut to a place that is not known has left nobody knows, wherever the stretches of a text begin that are run by themselves.</summary>
    [Fact]
    public void Behind_a_cut_of_unknown_place_nothing_is_told()
    {
        const string air = "G0 Z30\nX0 Y0\nG1 X49 Y59 F200\nX50\nY60\nX0 Y0\nG0 Z50\nM30\n";
        Assert.Single(Of("G1 Z-1 F100\nX50\n" + air));
        for (var lines = 0; lines < 130; lines += lines < 110 ? 37 : 1)
            Assert.Empty(Programs.Of("cut-in-air", string.Concat(Enumerable.Repeat("(plate)\n", lines)) + Start + "G1 Z-1 F100\nX#500\n" + air, Plate));
    }

    /// <summary>Under G91 from an unknown place X and Y are not known, and the level is: 5 mm by F30 take 10 s each.</summary>
    [Fact]
    public void Where_the_place_is_not_known_the_time_alone_is_told()
    {
        const string setup = """{ "stock": { "min": [0, 0, -15], "max": [100, 60, 0] }, "tools": [ { "number": 5, "kind": "spot-drill", "diameter": 6, "pointAngle": 90 } ] }""";
        var found = Programs.Of("cut-in-air", "G21 G90 G17 G54\nT5 M6\nG0 Z50\nG91 X10 Y10\nG98 G81 X5 Y5 Z-5 R-40 F30\nX5\nG80\nM30", setup);
        Assert.Equal("From here on 2 feeds and arcs meet nothing of the stock: 20 s through air; tool 5 cuts nothing at all.", Assert.Single(found).Message);
    }

    /// <summary>An engraving whose minus was forgotten keeps just above the plate: a pointed tool has nothing to do there. On the plate's top, and with a mill that may leave what is to be
    /// finished, it stays silent.</summary>
    [Theory]
    [InlineData("chamfer-mill", "0.2", new[] { 4 })]
    [InlineData("spot-drill", "0.2", new[] { 4 })]
    [InlineData("chamfer-mill", "-0.2", new int[0])]
    [InlineData("chamfer-mill", "0", new int[0])]
    [InlineData("end-mill", "0.2", new int[0])]
    [InlineData("face-mill", "0.2", new int[0])]
    public void A_pointed_tool_just_above_the_stock_cuts_air(string kind, string level, int[] lines)
    {
        var setup = $$"""{ "stock": { "min": [0, 0, -15], "max": [100, 60, 0] }, "tools": [ { "number": 5, "kind": "{{kind}}", "diameter": 6, "pointAngle": 60 } ] }""";
        Assert.Equal(lines, Of($"G1 X20 Z{level} F300\nX40\nY40\nG3 X40 Y30 I0 J-5\nG0 Z50\nM30", setup).Select(finding => finding.Line + 1));
    }

    /// <summary>A part turned over has its second side under a datum of its own: one that the setup leaves out is not held against what the first side has left of the stock. The mill is as wide as the plate.</summary>
    [Theory]
    [InlineData("G54", new[] { 8 })]
    [InlineData("G55", new int[0])]
    public void A_second_side_under_a_datum_that_is_not_listed_is_not_counted_into_the_first(string second, int[] lines)
    {
        const string setup = """
            { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] }, "workOffsets": { "G54": [-300, -200, -400] }, "tools": [ { "number": 5, "kind": "end-mill", "diameter": 100 } ] }
            """;
        Assert.Equal(lines, Of($"G1 Z-3 F900\nX110 F300\nG0 Z50\n{second} X-10 Y30\nG1 X110 Z-1 F300\nG0 Z50\nM30", setup).Select(finding => finding.Line + 1));
    }

    /// <summary>What works standing does it by strokes down: 4 of 18 mm at F1000 take 4.3 s. How far a broach's edge stands off the axis is not known, so that in the bore none is told.</summary>
    [Theory]
    [InlineData("\"turns\": false", "2", new[] { 6 })]
    [InlineData("\"turns\": false", "-16", new int[0])]
    [InlineData("\"turns\": false, \"kind\": \"slot-mill\"", "-16", new int[0])]
    [InlineData("\"kind\": \"probe\"", "2", new int[0])]
    [InlineData("\"kind\": \"end-mill\"", "2", new int[0])]
    public void Strokes_that_end_above_the_stock_are_in_air(string tool, string bottom, int[] lines)
    {
        var setup = $$"""{ "stock": { "min": [0, 0, -15], "max": [100, 60, 0], "hollows": [ { "center": [50, 30], "diameter": 20 } ] }, "tools": [ { "number": 5, "diameter": 6, {{tool}} } ] }""";
        var strokes = string.Concat(Enumerable.Range(0, 4).Select(stroke => $"X{52.2 + stroke * 0.05:0.00}\nG1 Z{bottom} F1000\nG0 Z20\n"));
        Assert.Equal(lines, Of($"G0 X52 Z20\n{strokes}G0 Z50\nM30", setup).Select(finding => finding.Line + 1));
    }

    /// <summary>A cone of 90 degrees is as wide as twice its depth: 4 mm at the top of the plate where it is 2 mm deep, and it goes round in a bore of 28 mm. The cells of the field, of 1 mm here, hide what is a little short.</summary>
    [Theory]
    [InlineData("10", "-2", new[] { 6 })] // 2 mm short of the edge
    [InlineData("11.5", "-2", new int[0])] // 0.5 mm short
    [InlineData("12.5", "-2", new int[0])]
    [InlineData("11.8", "-0.2", new[] { 6 })] // 2 mm short
    public void A_cone_that_goes_round_within_the_edge_cuts_air(string radius, string level, int[] lines)
    {
        var setup = """{ "stock": { "min": [0, 0, -15], "max": [100, 60, 0], "hollows": [ { "center": [50, 30], "diameter": 28 } ] }, "tools": [ { "number": 5, "kind": "chamfer-mill", "diameter": 12, "pointAngle": 90 } ] }""";
        Assert.Equal(lines, Of($"G0 X50 Y30\nG1 Z{level} F500\nG1 X[50 + {radius}]\nG3 I-{radius}\nG1 X50\nG0 Z50\nM30", setup).Select(finding => finding.Line + 1));
    }

    /// <summary>Under radius compensation the control's table holds the radius at which the cone is to cut, which the setup does not know: 5 mm beside the edge a cone that is 6 mm wide at the top misses it by 2 mm.
    /// Where the program writes the offset it is known.</summary>
    [Theory]
    [InlineData("Z-3|G41 D5 G1 X0 F600", new int[0])]
    [InlineData("Z2|G41 D5 G1 X0 F600", new[] { 6 })]
    [InlineData("Z-3|G10 L12 P5 R5|G41 D5 G1 X0 F600", new[] { 7 })]
    [InlineData("Z-3|G10 L12 P5 R2|G41 D5 G1 X0 F600", new int[0])]
    public void A_cone_under_compensation_is_told_where_its_offset_is_known(string begin, int[] lines)
    {
        var setup = """{ "stock": { "min": [0, 0, -15], "max": [100, 60, 0] }, "tools": [ { "number": 5, "kind": "chamfer-mill", "diameter": 10, "pointAngle": 90, "radiusOffset": 5 } ] }""";
        Assert.Equal(lines, Of($"G0 X-15 Y-15\n{begin.Replace('|', '\n')}\nY60\nX100\nY0\nX-15\nG40 Y-15\nG0 Z50\nM30", setup).Select(finding => finding.Line + 1));
    }

    /// <summary>Beside the stock another part may stand, which the setup does not tell of.</summary>
    [Theory]
    [InlineData("G55", "-300", new int[0])]
    [InlineData("G54", "-300", new[] { 5 })]
    // Over the stock itself it is this part.
    [InlineData("G55", "-480", new[] { 5 })]
    public void Under_another_work_offset_it_is_told_over_the_stock(string workOffset, string datum, int[] lines)
    {
        var setup = Plate.Replace("{ \"stock\"", $"{{ \"workOffsets\": {{ \"G54\": [-500, -200, -400], \"G55\": [{datum}, -200, -400] }}, \"stock\"", StringComparison.Ordinal);
        Assert.Equal(lines, Of($"{workOffset} G0 X0 Y{(workOffset == "G54" ? "-40" : "20")} Z5\nG1 X80 F300\nG0 Z50\nM30", setup).Select(finding => finding.Line + 1));
    }

    [Fact]
    public void It_says_how_long_the_way_is_and_how_long_it_takes()
    {
        // 15 + 10 + half a circle of radius 10 + 25 = 81.4 mm, at 300 mm/min 16.3 s.
        Assert.Equal("From here on 4 feeds and arcs meet nothing of the stock: 81.4 mm through air in 16.3 s; tool 5 cuts nothing at all.",
            Assert.Single(Of("G1 X5 F300\nX15\nG3 X15 Y10 I0 J-10\nG1 X40\nG0 Z50\nM30")).Message);
    }

    [Fact]
    public void A_ball_that_follows_what_it_left_is_not_in_air()
    {
        // Rows 0.5 mm apart up and down over a ridge: each lies a little higher or lower than what the row before has left beside it.
        var program = new System.Text.StringBuilder(Start + "T6 M6\nG0 X-10 Y20 Z5\n");
        for (var i = 0; i < 40; i++)
        {
            program.Append($"G0 Z5\nG0 X0 Y{20 + i * 0.5:0.0}\nG1 Z-6 F300\n");
            for (var x = 0; x <= 100; x += 5)
                program.Append($"X{x} Z{-6 + 5 * Math.Sin(x * Math.PI / 100) * Math.Sin(i * Math.PI / 40):0.000}\n");
        }
        Assert.Empty(Programs.Of("cut-in-air", program + "G0 Z50\nM30", Plate));
    }

    [Theory]
    [InlineData("""{ "tools": [ { "number": 5, "kind": "end-mill", "diameter": 10 } ] }""")] // no stock
    [InlineData("""{ "stock": { "min": [0, 0, -15], "max": [100, 60, 0] }, "tools": [ { "number": 5, "kind": "end-mill" } ] }""")] // no diameter
    [InlineData("""{ "stock": { "min": [0, 0, -15], "max": [100, 60, 0] }, "tools": [ { "number": 5, "kind": "probe", "diameter": 10 } ] }""")]
    public void Where_what_it_needs_is_not_known_it_is_silent(string setup) => Assert.Empty(Of("G1 X110 F300\nG0 Z50\nM30", setup));
}
