using System.Globalization;
using CsCheck;
using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>Contacts of plain moves and of the way to a hole. Where no other source is named the expected outcome is closed-form: sums of lengths.</summary>
public sealed class ContactTests
{
    const string Tools = """ "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118 }, { "number": 5, "kind": "end-mill", "diameter": 10 } ] """;
    const string Clamp = """{ "obstacles": [ { "name": "clamp A", "min": [40, -20, 0], "max": [60, 12, 25] } ], """ + Tools + "}";
    /// <summary>One rapid past three clamps in its way is one finding that names them all.</summary>
    [Fact]
    public void What_else_the_move_runs_into_is_named()
    {
        const string Clamps = """
            { "clearance": 2, "stock": { "min": [0, 0, -20], "max": [200, 60, 0] },
              "obstacles": [ { "name": "left", "min": [20, 20, 0], "max": [40, 40, 20] }, { "name": "middle", "min": [80, 20, 0], "max": [100, 40, 30] },
                             { "name": "right", "min": [160, 20, 0], "max": [180, 40, 20] }, { "name": "far", "min": [80, 50, 0], "max": [100, 60, 30] } ],
              "tools": [ { "number": 5, "kind": "end-mill", "diameter": 10, "length": 90 } ] }
            """;
        var finding = Assert.Single(Programs.Of("rapid-hits-obstacle", "G21 G90 G54\nT5 M6\nG0 X0 Y30 Z5\nX200\nM30", Clamps));
        Assert.Contains(" runs into middle at ", finding.Message, StringComparison.Ordinal);
        Assert.EndsWith(" It runs into left and right too.", finding.Message, StringComparison.Ordinal);
        Assert.EndsWith(
            " It runs into left and right too.",
            Assert.Single(Programs.Of("cut-hits-obstacle", "G21 G90 G54\nT5 M6\nG0 X0 Y30 Z5\nG1 X200 F100\nM30", Clamps)).Message, StringComparison.Ordinal);
    }

    static readonly string[] All = ["rapid-hits-obstacle", "cut-hits-obstacle", "holder-hits", "hole-under-obstacle"];

    static string[] Found(string program, string setup = Clamp, string readings = "", string? machine = null) =>
        [.. Programs.Analyse(program, setup, machine, readings).Findings.Where(f => All.Contains(f.Name)).Select(f => $"{f.Line + 1} {f.Name}")];

    [Theory] // Reach of the tool: Y12 + 5 is touching, and touching is contact.
    [InlineData("17", true)]
    [InlineData("17.001", false)]
    [InlineData("-25", true)]
    [InlineData("-25.001", false)]
    public void Touching_is_contact(string y, bool touches) =>
        Assert.Equal(touches ? ["4 rapid-hits-obstacle"] : [], Found($"G21 G90 G54\nT5 M6\nG0 X0 Y{y} Z5\nX100\nM30"));

    [Fact]
    public void The_message_names_the_obstacle_the_place_and_the_depth()
    {
        var finding = Assert.Single(Programs.Of("rapid-hits-obstacle", "G21 G90 G54\nT5 M6\nG0 X0 Y14 Z5\nX100\nM30", Clamp));
        Assert.Contains("clamp A", finding.Message, StringComparison.Ordinal);
        Assert.Contains("3 mm deep", finding.Message, StringComparison.Ordinal);
        Assert.Contains("Z25", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>Each stroke comes as near to the clamp as the others, and each way back is looked at once: a search that asked all moves before a move, and those before them, would not end.</summary>
    [Theory]
    [InlineData("G83", 4_000)]
    [InlineData("G73", 4_000)]
    public void A_hole_of_many_strokes_beside_a_clamp_is_told_once(string cycle, int strokes)
    {
        var program = $"G21 G90 G17 G54\nT3 M6\nG43 H3 Z40\nG98 {cycle} X50 Y16.5 R2 Z-{strokes / 100} Q0.01 F100\nG80\nM30";
        var finding = Assert.Single(Programs.Analyse(program, Clamp).Findings, finding => finding.Name == "clearance-small");
        Assert.Equal(3, finding.Line);
        Assert.Contains("0.5 mm", finding.Message, StringComparison.Ordinal);
    }

    // At equal rates a per-axis rapid from X0 Y0 to X100 Y50 runs to X50 Y50 first; straight it passes X50 at Y25.
    const string Diagonal = "G21 G90 G54\nT5 M6\nG0 X0 Y0 Z5\nX100 Y50\nM30";

    [Theory]
    [InlineData("rapidPath=straight", 45, 20, 55, 30, true)]
    [InlineData("rapidPath=perAxis", 45, 20, 55, 30, false)]
    [InlineData("rapidPath=straight", 45, 45, 55, 55, false)]
    [InlineData("rapidPath=perAxis", 45, 45, 55, 55, true)]
    public void A_bent_rapid_hits_what_the_straight_one_clears_and_the_reverse(string reading, int x0, int y0, int x1, int y1, bool hits) =>
        Assert.Equal(
            hits ? ["4 rapid-hits-obstacle"] : [],
            Found(Diagonal, $$"""{ "obstacles": [ { "name": "stop", "min": [{{x0}}, {{y0}}, 0], "max": [{{x1}}, {{y1}}, 25] } ], {{Tools}} }""", reading));

    [Fact] // 1 in is 25.4 mm: X2 is X50.8, Y0.3 is Y7.62.
    public void A_program_in_inches_is_held_against_a_setup_in_mm()
    {
        var finding = Assert.Single(Programs.Of("rapid-hits-obstacle", "G20 G90 G54\nT5 M6\nG0 X0 Y0.3 Z0.2\nX2\nM30", Clamp));
        Assert.Equal(3, finding.Line);
        Assert.Contains("X2 Y0.3 Z0.2", finding.Message, StringComparison.Ordinal);
        Assert.Empty(Found("G20 G90 G54\nT5 M6\nG0 X0 Y0.3 Z1\nX2\nM30"));
    }

    [Fact] // G55 lies 100 mm to the right of G54: X-50 there is X50 here.
    public void Another_work_offset_is_converted_where_the_setup_gives_both_and_silent_where_not()
    {
        const string program = "G21 G90 G55\nT5 M6\nG0 X-100 Y0 Z5\nX-50\nM30";
        const string offsets = """{ "workOffsets": { "G54": [-300, -200, -400], "G55": [-200, -200, -400] },""";
        Assert.Empty(Found(program));
        Assert.Equal(["4 rapid-hits-obstacle"], Found(program, offsets + Clamp[1..]));
        Assert.Empty(Found(program.Replace("X-50", "X-80", StringComparison.Ordinal), offsets + Clamp[1..]));
    }

    [Fact] // The axis at Y13 passes beside the clamp, which ends at Y12; any tool of more than 2 mm would touch, but none is known.
    public void A_tool_that_is_not_known_counts_as_its_axis()
    {
        Assert.Empty(Found("G21 G90 G54\nT9 M6\nG0 X0 Y13 Z5\nX100\nM30"));
        Assert.Equal(["4 rapid-hits-obstacle"], Found("G21 G90 G54\nT9 M6\nG0 X0 Y11 Z5\nX100\nM30"));
        Assert.Contains("not known", Programs.Of("rapid-hits-obstacle", "G21 G90 G54\nT9 M6\nG0 X0 Y11 Z5\nX100\nM30", Clamp)[0].Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("G21 G90 G54\nG0 X0 Y0\nX100\nM30")] // the level is not known
    [InlineData("G21 G90 G54\nG0 X0 Y0 Z5\nG68 X0 Y0 R#9\nX100\nM30")] // an angle nobody knows
    [InlineData("G21 G90 G54.1 P2\nG0 X0 Y0 Z5\nX100\nM30")] // a datum nobody knows
    [InlineData("G21 G90 G54\nG0 X0 Y0 Z5\nG30 X0\nM30")] // where X ends is not known
    public void What_is_not_known_is_silent(string program) => Assert.Empty(Found(program));

    [Theory] // Along X the axis runs through the clamp; turned by 30° it passes X40 at Y23.1, 11.1 mm beside it; turned by -10° it runs through at Y-7 to Y-10.6.
    [InlineData("", true)]
    [InlineData("G68 X0 Y0 R30", false)]
    [InlineData("G68 X0 Y0 R-10", true)]
    [InlineData("G51 X0 Y0 I0.3 J1", false)] // only to X30
    [InlineData("G52 Y30", false)]
    [InlineData("G51.1 X0", false)]
    public void A_way_is_checked_where_it_is_turned_to(string frame, bool hits) =>
        Assert.Equal(hits ? ["6 rapid-hits-obstacle"] : [], Found($"G21 G90 G54\nT5 M6\nG0 X0 Y0 Z50\n{frame}\nX0 Y0 Z5\nX100 Y0\nM30"));

    [Fact] // The probe feeds; what it meets on its way is an obstacle all the same.
    public void The_way_of_a_probe_move_is_checked()
    {
        const string program = "G21 G90 G54\nT5 M6\nG0 X0 Y0 Z5\nG38.2 X100 F50\nM30";
        Assert.Equal(["4 cut-hits-obstacle"], Found(program));
        Assert.StartsWith("The probe move towards X100 Y0 Z5", Programs.Of("cut-hits-obstacle", program, Clamp)[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_known_end_is_checked_though_the_way_there_is_not_known() =>
        Assert.Equal(["3 rapid-hits-obstacle"], Found("G21 G90 G54\nG0 X50 Y0\nZ5\nZ50\nM30"));

    [Fact]
    public void One_contact_gives_one_finding() =>
        Assert.Equal(["4 rapid-hits-obstacle"], Found("G21 G90 G54\nT5 M6\nG0 X50 Y0 Z50\nZ5\nG1 X55 F200\nX45\nG0 X50\nZ50\nM30"));

    [Fact]
    public void Going_in_again_is_a_second_contact() =>
        Assert.Equal(["4 rapid-hits-obstacle", "6 cut-hits-obstacle"], Found("G21 G90 G54\nT5 M6\nG0 X50 Y0 Z50\nZ5\nZ50\nG1 Z20 F200\nG0 Z50\nM30"));

    [Fact] // A half circle of radius 30 about X50 Y40 dips to Y10: 5 mm of the tool reach Y5.
    public void An_arc_is_followed_round() =>
        Assert.Equal(["4 cut-hits-obstacle"], Found("G21 G90 G17 G54\nT5 M6\nG0 X20 Y40 Z5\nG3 X80 Y40 I30 J0 F200\nG2 X20 I-30\nM30").Take(1));

    [Fact]
    public void A_move_in_machine_coordinates_is_checked_where_its_place_is_known()
    {
        const string program = "G21 G90 G54\nT5 M6\nG0 X0 Y0 Z5\nG53 X-250\nM30";
        Assert.Empty(Found(program));
        Assert.Equal(["4 rapid-hits-obstacle"], Found(program, """{ "workOffsets": { "G54": [-300, -200, -400] },""" + Clamp[1..]));
    }

    [Fact]
    public void The_first_traverse_and_the_way_to_R_count_and_hops_do_not()
    {
        // The traverse to the first hole runs at Z5 through the clamp.
        Assert.Equal(["4 rapid-hits-obstacle"], Found("G21 G90 G17 G54\nT3 M6\nG0 X0 Y0 Z5\nG99 G81 X90 Y0 R2 Z-5 F100\nG80\nM30"));
        // The hop back does too: that is hop-hits-obstacle.
        Assert.Empty(Found("G21 G90 G17 G54\nT3 M6\nG0 X90 Y0 Z5\nG99 G81 X90 Y0 R2 Z-5 F100\nX0\nG80\nM30"));
    }

    [Theory] // The hole's circle of 4 mm reaches the clamp, which ends at X60, up to X64.
    [InlineData("50", true)]
    [InlineData("63.9", true)]
    [InlineData("64.1", false)]
    public void A_hole_under_a_clamp_is_one_finding(string x, bool covered) =>
        Assert.Equal(
            covered ? ["4 hole-under-obstacle"] : [],
            Found($"G21 G90 G17 G54\nT3 M6\nG0 X{x} Y0 Z50\nG99 G81 X{x} Y0 R2 Z-5 F100\nG80 G0 Z50\nM30"));

    [Fact]
    public void A_hole_whose_bottom_lies_above_the_obstacle_is_none() =>
        Assert.Empty(Found("G21 G90 G17 G54\nT3 M6\nG0 X50 Y0 Z50\nG99 G81 X50 Y0 R40 Z26 F100\nG80 G0 Z50\nM30"));

    [Fact] // The holder begins 25 above the tip: at Z-2 it is at Z23, 2 below the clamp's top; it reaches from Y22 to Y2.
    public void The_holder_is_named_in_the_place_of_the_cut()
    {
        const string setup = """
            { "obstacles": [ { "name": "clamp A", "min": [40, -20, 0], "max": [60, 12, 25] } ],
              "tools": [ { "number": 5, "diameter": 10, "length": 60, "holderDiameter": 40, "holderGauge": 35 } ] }
            """;
        Assert.Equal(["5 holder-hits"], Found("G21 G90 G54\nT5 M6\nG0 X0 Y22 Z50\nZ-2\nG1 X100 F200\nG0 Z50\nM30", setup));
        Assert.Empty(Found("G21 G90 G54\nT5 M6\nG0 X0 Y22 Z50\nZ0\nG1 Z0.001 X100 F200\nG0 Z50\nM30", setup));
    }

    [Fact] // The shank of 16 mm begins 10 above the tip, at Z24, and reaches from Y18 to Y10: 2 past the bar's side at Y12. The cutting part ends below the bar.
    public void The_shank_is_named_where_it_is_what_hits()
    {
        const string setup = """
            { "obstacles": [ { "name": "bar", "min": [40, -20, 26], "max": [60, 12, 32] } ],
              "tools": [ { "number": 5, "kind": "end-mill", "diameter": 10, "fluteLength": 10, "shankDiameter": 16 } ] }
            """;
        var finding = Assert.Single(Programs.Of("rapid-hits-obstacle", "G21 G90 G54\nT5 M6\nG0 X0 Y18 Z14\nX100\nM30", setup));
        Assert.Contains("runs into bar with the shank", finding.Message, StringComparison.Ordinal);
        Assert.Contains("2 mm deep", finding.Message, StringComparison.Ordinal);
    }

    [Fact] // Two clamps: the tool stands in the first, which is told, and goes on into the second.
    public void Going_from_one_obstacle_into_another_is_a_second_contact()
    {
        const string setup = """
            { "obstacles": [ { "name": "clamp A", "min": [0, -20, 0], "max": [20, 20, 25] }, { "name": "clamp B", "min": [60, -20, 0], "max": [80, 20, 10] } ],
              "tools": [ { "number": 5, "kind": "end-mill", "diameter": 10 } ] }
            """;
        const string program = "G21 G90 G54\nT5 M6\nG0 X10 Y0 Z50\nZ5\nX100\nM30";
        Assert.Equal(["4 rapid-hits-obstacle", "5 rapid-hits-obstacle"], Found(program, setup));
        Assert.Contains("clamp B", Programs.Of("rapid-hits-obstacle", program, setup)[1].Message, StringComparison.Ordinal);
    }

    [Fact] // Back boring goes down 6 mm beside the hole, at X36: 10 wide it reaches X41, the hole itself only X35.
    public void The_way_beside_a_back_bored_hole_is_checked()
    {
        const string program = "G21 G90 G17 G54\nT5 M6\nG0 X30 Y0 Z50\nG98 G87 X30 Y0 Z-8 R30 K-4 I6 J0 F60\nG80\nM30";
        Assert.Equal(["4 rapid-hits-obstacle"], Found(program));
        Assert.Empty(Found(program.Replace("I6", "I-6", StringComparison.Ordinal)));
    }

    [Theory] // Y12 + 5 of tool + 2 of clearance is Y19; the top of the clamp is Z25.
    [InlineData("19", "5", false)]
    [InlineData("18.9", "5", true)]
    [InlineData("0", "27", false)]
    [InlineData("0", "26.9", true)]
    [InlineData("18.4", "26.3", true)] // beside and above: √(1.4² + 1.3²) = 1.91
    [InlineData("18.5", "26.4", false)] // √(1.5² + 1.4²) = 2.05
    public void Nearer_than_the_clearance_is_a_warning(string y, string z, bool near)
    {
        foreach (var motion in new[] { "G0", "G1 F200" })
            Assert.Equal(near ? [4] : [], Programs.Lines("clearance-small", $"G21 G90 G54\nT5 M6\nG0 X0 Y{y} Z{z}\n{motion} X100\nX0\nM30", Clamp).Take(1));
    }

    [Fact] // 64 + 1.5: the drill passes the clamp at 1.5 mm on its way down; the way out and the next hole's traverse add nothing.
    public void A_hole_beside_a_clamp_is_one_warning_and_no_other_finding()
    {
        const string program = "G21 G90 G17 G54\nT3 M6\nG0 X65.5 Y0 Z50\nG99 G81 X65.5 Y0 R2 Z-5 F100\nX90\nG80 G0 Z50\nM30";
        Assert.Empty(Found(program));
        Assert.Equal([4], Programs.Lines("clearance-small", program, Clamp));
    }

    const string Height = """{ "clampHeight": 30, "clearance": 2 }""";

    [Theory] // Clear at or above clampHeight + clearance = Z32; equal counts as clear.
    [InlineData("G0 X0 Y0 Z32\nX50", "")]
    [InlineData("G0 X0 Y0 Z31.9\nX50", "3 clearance-small")]
    [InlineData("G0 X0 Y0 Z30\nX50", "3 retract-below-clamp")]
    [InlineData("G0 X0 Y0 Z50\nX50 Z5", "3 retract-below-clamp")]
    [InlineData("G0 X0 Y0 Z50\nZ5\nG1 X50 F200\nG0 Z50", "")]
    [InlineData("G0 X0 Y0 Z5\nG99 G81 X50 Z-5 R2 F100", "3 retract-below-clamp")]
    [InlineData("G0 X0 Y0\nX50", "")]
    public void Where_only_the_clamp_height_is_known_no_traverse_runs_below_it(string moves, string expected)
    {
        string[] names = ["clearance-small", "retract-below-clamp", .. All];
        var findings = Programs.Analyse($"G21 G90 G17 G54\n{moves}\nG80\nM30", Height).Findings.Where(f => names.Contains(f.Name)).ToList();
        Assert.Equal(expected, string.Join(", ", findings.Select(f => $"{f.Line + 1} {f.Name}")));
    }

    [Fact]
    public void Listed_obstacles_take_the_place_of_the_clamp_height() =>
        Assert.Empty(Programs.Lines("retract-below-clamp", "G21 G90 G54\nT5 M6\nG0 X0 Y40 Z5\nX100\nM30", """{ "clampHeight": 30, """ + Clamp[1..]));

    /// <summary>Outside reference: NetTopologySuite's distance of the path to the footprint, less the tool's radius, at levels above and below the top.</summary>
    [Fact]
    public void Random_level_moves_agree_with_NetTopologySuite()
    {
        var coordinate = Gen.Int[-60_000, 60_000].Select(thousandths => thousandths / 1000.0);
        var box = Gen.Select(coordinate, coordinate, Gen.Double[1, 40], Gen.Double[1, 40])
            .Select(Obstacle (x, y, w, d) => new BoxObstacle("block", new Box3(new(x, y, 0), new(x + Math.Round(w, 3), y + Math.Round(d, 3), 25))));
        var stud = Gen.Select(coordinate, coordinate, Gen.Double[1, 40])
            .Select(Obstacle (x, y, d) => new CylinderObstacle("stud", x, y, Math.Round(d, 3), 0, 25));
        Gen.Select(Gen.OneOf(box, stud), coordinate, coordinate, coordinate, coordinate, Gen.Bool, Gen.Bool).Sample((obstacle, x0, y0, x1, y1, low, cut) =>
        {
            var level = low ? 24 : 26;
            var beside = Reference.Horizontal(new Point3(x0, y0, level), new Point3(x1, y1, level), Reference.Footprint(obstacle)) - 5;
            var startsIn = Reference.Horizontal(x0, y0, Reference.Footprint(obstacle)) - 5;
            if (Math.Abs(beside) < 0.001 || startsIn < 0.001)
                return;
            var program = string.Create(CultureInfo.InvariantCulture, $"G21 G90 G54\nT5 M6\nG0 X{x0} Y{y0} Z{level}\n{(cut ? "G1 F200" : "G0")} X{x1} Y{y1}\nM30");
            var expected = beside < 0 && low ? new[] { cut ? "4 cut-hits-obstacle" : "4 rapid-hits-obstacle" } : [];
            Assert.Equal(expected, Found(program, SetupWith(obstacle)));
        }, iter: 1000);
    }

    static string SetupWith(Obstacle obstacle) => obstacle switch
    {
        CylinderObstacle stud => string.Create(CultureInfo.InvariantCulture,
            $$"""{ "obstacles": [ { "center": [{{stud.CenterX}}, {{stud.CenterY}}], "diameter": {{stud.Diameter}}, "bottom": 0, "top": 25 } ], {{Tools}} }"""),
        { Bounds: var box } => string.Create(CultureInfo.InvariantCulture,
            $$"""{ "obstacles": [ { "min": [{{box.Min.X}}, {{box.Min.Y}}, 0], "max": [{{box.Max.X}}, {{box.Max.Y}}, 25] } ], {{Tools}} }"""),
    };
}
