using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Drawing;

/// <summary>When the rules on the drawing speak, and when they had better not. Plates and programs are our own; point lengths are (D/2)·cot(α/2) (engineering reference): 8 mm at
/// 118 degrees 2.403 mm.</summary>
public sealed class DrawingRuleTests
{
    const string Row = """{ "x": 20, "y": 30, "diameter": 8, "depth": 10 }, { "x": 40, "y": 30, "diameter": 8, "depth": 10 }, { "x": 60, "y": 30, "diameter": 8, "depth": 10 }""";

    const string Head = "G21 G90 G17 G54\nG0 G53 Z0\nT3 M6\nS1500 M3\nG0 X20 Y30\nG43 H3 Z40 M8\n";
    const string Tail = "\nG80\nG0 G53 Z0 M9\nM5\nM30\n";

    static ProgramAnalysis Analyse(string blocks, string holes = Row, string setupName = "x.setup.json", string head = Head, string tail = Tail, string obstacles = "")
    {
        var json = $$"""
            { "stock": { "min": [0, 0, -30], "max": [100, 60, 0] }, "obstacles": [ {{obstacles}} ],
              "workOffsets": { "G54": [-300, -200, -400], "G55": [-200, -200, -400] },
              "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118, "fluteLength": 60, "length": 120 },
                         { "number": 4, "kind": "spot-drill", "diameter": 10, "pointAngle": 90, "fluteLength": 20, "length": 100 },
                         { "number": 5, "kind": "end-mill", "diameter": 10, "flutes": 2, "fluteLength": 30, "length": 100 },
                         { "number": 6, "kind": "drill", "diameter": 6.8, "pointAngle": 118, "fluteLength": 60, "length": 120 },
                         { "number": 7, "kind": "tap", "diameter": 8, "pitch": 1.25, "fluteLength": 30, "length": 110 }, { "number": 8, "kind": "tap", "diameter": 8, "fluteLength": 30, "length": 110 } ],
              "holes": [ {{holes}} ] }
            """;
        var setup = SetupFile.Read(setupName, Encoding.UTF8.GetBytes(json));
        Assert.Empty(setup.Problems);
        return ProgramAnalysis.Create(SourceText.From(head + blocks + tail), setup.Setup, MachineProfile.IsoMill with { IsChosen = true });
    }

    static string[] Drawn(ProgramAnalysis analysis) =>
        [.. analysis.Findings.Where(finding => finding.Id.StartsWith("NC7", StringComparison.Ordinal)).Select(finding => $"{finding.Name} {finding.Line + 1}")];

    const string Made = "G99 G81 X20 Y30 R2 Z-13 F150\nX40\nX60";

    /// <summary>Cells in which places are looked up cannot be counted as far as that.</summary>
    [Theory]
    [InlineData("99999999999999999999999999")]
    [InlineData("-99999999999999999999999999")]
    [InlineData("3689348814741910323")]
    public void A_place_out_of_all_bounds_comes_to_an_end(string x) =>
        Assert.NotEmpty(Drawn(Analyse($"G99 G81 X20 Y30 R2 Z-13 F150\nX{x}\nX{x}", Row, head: "G21 G90 G17 G54\nT3 M6\nS1500 M3\n")));

    [Fact]
    public void Nothing_is_said_of_a_part_that_is_as_drawn() => Assert.Empty(Drawn(Analyse(Made)));

    [Fact]
    public void A_missing_hole_is_told_at_the_programs_end()
    {
        var finding = Assert.Single(Analyse("G99 G81 X20 Y30 R2 Z-13 F150\nX40").Findings);
        Assert.Equal(("hole-missing", 11, Severity.Error), (finding.Name, finding.Line, finding.Severity));
        Assert.Equal("The drawing's hole at X60 Y30 is not made: 8 mm, 10 mm deep, in line 8 of x.setup.json.", finding.Message);
    }

    /// <summary>NISTIR 6556 §3.5.16.5: the spindle turns clockwise before G84; G74 as its mirror image is common practice. One wrong code of two that go together is one slip.</summary>
    [Theory]
    [InlineData("M3", "G84", "hole-wrong-size")]
    [InlineData("M4", "G84", "tap-direction")]
    [InlineData("M3", "G74", "tap-direction")]
    [InlineData("M4", "G74", "")]
    public void A_tapping_cycle_against_its_spindle_is_told_once(string spindle, string cycle, string told)
    {
        var tapped = $"T6 M6\nS1500 M3\nG43 H6 Z40\nG99 G81 X20 Y30 R2 Z-16 F150\nG80\nG0 Z40\nG0 G53 Z0 M5\nT7 M6\nS300 {spindle}\nG43 H7 Z40\nG0 X20 Y30\nG98 {cycle} X20 Y30 R5 Z-12 F375";
        var findings = Analyse(tapped, "{ \"x\": 20, \"y\": 30, \"diameter\": 6.8, \"depth\": 10, \"thread\": \"M8 LH\" }").Findings;
        Assert.Equal(told.Length == 0 ? [] : [told], findings.Where(finding => finding.Name is "hole-wrong-size" or "tap-direction").Select(finding => finding.Name));
    }

    /// <summary>A drawing that leaves the depth open asks for a hole of that width all the same: the point of 8 mm at 118 degrees is 2.403 mm long.</summary>
    [Theory]
    [InlineData("Z-1.3", true)]
    [InlineData("Z-2.4", true)]
    [InlineData("Z-2.5", false)]
    [InlineData("Z-13", false)]
    public void A_hole_that_only_the_point_goes_into_is_nowhere_as_wide_as_drawn(string bottom, bool found)
    {
        var told = Analyse($"G99 G81 X20 Y30 R2 {bottom} F150\nX40", "{ \"x\": 20, \"y\": 30, \"diameter\": 8 }, { \"x\": 40, \"y\": 30, \"diameter\": 8 }").Findings;
        if (found)
            Assert.Equal("The 2 holes at X20 Y30, X40 Y30 are nowhere as wide as the drawing asks: T3 goes in by its point alone, and cuts its 8 mm from Z-2.403 down.", Assert.Single(told, finding => finding.Name == "hole-shallow").Message);
        else
            Assert.Empty(told);
    }

    [Fact]
    public void A_hole_whose_bottom_lies_above_the_stock_is_not_made()
    {
        var finding = Assert.Single(Analyse("G99 G81 X20 Y30 R20 Z-13 F150\nX40 Z13\nX60 Z-13").Findings, finding => finding.Id.StartsWith("NC7", StringComparison.Ordinal));
        Assert.Equal(("hole-missing", 7, Severity.Error), (finding.Name, finding.Line, finding.Severity));
        Assert.Equal("The drawing's hole at X40 Y30 is not made, because T3 goes down to Z13 only, and its mouth is at Z0: 8 mm, 10 mm deep, in line 8 of x.setup.json.", finding.Message);
    }

    [Fact]
    public void Holes_of_one_kind_that_are_missing_are_told_once() =>
        Assert.Contains("The drawing's 2 holes at X40 Y30, X60 Y30 are not made", Assert.Single(Analyse("G99 G81 X20 Y30 R2 Z-13 F150").Findings).Message, StringComparison.Ordinal);

    [Fact]
    public void A_slip_of_the_keyboard_is_one_finding_at_its_block()
    {
        var finding = Assert.Single(Analyse("G99 G81 X20 Y30 R2 Z-13 F150\nX46\nX60").Findings);
        Assert.Equal(("hole-missing", 7), (finding.Name, finding.Line));
        Assert.Contains("Instead one is made where the drawing has none, at X46 Y30.", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_depth_wanted_is_told_in_the_programs_levels() =>
        Assert.Equal(
            "The 3 holes at X20 Y30, X40 Y30, X60 Y30 are at full diameter 7.597 mm deep, and the drawing asks for 10 mm: T3 has to go 2.403 mm deeper, to Z-12.403.",
            Assert.Single(Analyse("G99 G81 X20 Y30 R2 Z-10 F150\nX40\nX60").Findings).Message);

    // At 118 degrees Z-10 is 7.597 deep at full width: too little. What the tool meets on its way, and a spindle that stands, leave the hole as it is.
    [Theory]
    [InlineData("", """{ "name": "clamp", "min": [28, 0, 0], "max": [32, 60, 20] }""", "X40 Z-10", "hop-hits-obstacle 8, hole-shallow 8")]
    [InlineData("M5\n", "", "X40 Z-10", "spindle-off 9, hole-shallow 9")]
    [InlineData("M5\n", "", "X43", "spindle-off 9, hole-missing 9")]
    // A word that stands twice makes it another.
    [InlineData("", "", "X40 Z-13 Z-10", "address-repeated 8")]
    public void Only_an_error_that_changes_the_hole_hides_what_is_wrong_with_it(string before, string obstacles, string block, string expected) =>
        Assert.Equal(expected, string.Join(", ", Analyse($"G99 G81 X20 Y30 R2 Z-13 F150\n{before}{block}\nX60 Z-13", obstacles: obstacles).Findings
            .Where(finding => finding.Severity == Severity.Error).Select(finding => $"{finding.Name} {finding.Line + 1}")));

    const string Thread = """{ "x": 20, "y": 30, "diameter": 6.8, "depth": 18, "thread": "M8" }""";

    static ProgramAnalysis Tapped(string drilled, string tapped, string holes = Thread) => Analyse(
        $"T6 M6\nS1500 M3\nG0 X20 Y30\nG43 H6 Z40 M8\nG99 G81 X20 Y30 R2 {drilled} F150\nG80\nG0 G53 Z0 M9\nM5\nT7 M6\nS500 M3\nG0 X20 Y30\nG43 H7 Z40 M8\nG99 G84 X20 Y30 R5 {tapped} F625", holes, head: "G21 G90 G17 G54\nG0 G53 Z0\n");

    // 6.8 mm at 118 degrees: a point of 2.043 mm.
    [Theory]
    [InlineData("Z-21", "Z-18", "")]
    [InlineData("Z-21", "Z-10", "hole-shallow 15")]
    [InlineData("Z-18", "Z-10", "hole-shallow 7, hole-shallow 15")]
    public void A_hole_and_its_thread_are_told_each_by_itself(string drilled, string tapped, string expected) =>
        Assert.Equal(expected, string.Join(", ", Drawn(Tapped(drilled, tapped))));

    [Fact]
    public void How_much_a_thread_is_short_is_told_of_the_tap() =>
        Assert.Contains(
            "The hole at X20 Y30 is threaded to 10 mm deep, and the drawing asks for 18 mm: T7 has to go 8 mm deeper, to Z-18.", Tapped("Z-18", "Z-10").Findings.Select(finding => finding.Message));

    // NISTIR 6556 §3.5.16.5: speed = feed · threads per length, so 625 at 500 is a pitch of 1.25.
    [Fact]
    public void The_pitch_of_a_tap_that_the_setup_does_not_give_is_what_the_program_feeds()
    {
        string[] Told(string thread, string feed) => [.. Analyse(
            $"T6 M6\nS1500 M3\nG0 X20 Y30\nG43 H6 Z40 M8\nG99 G81 X20 Y30 R2 Z-21 F150\nG80\nG0 G53 Z0 M9\nM5\nT8 M6\nS500 M3\nG0 X20 Y30\nG43 H8 Z40 M8\nG99 G84 X20 Y30 R5 Z-18 {feed}",
            Thread.Replace("M8", thread, StringComparison.Ordinal), head: "G21 G90 G17 G54\nG0 G53 Z0\n").Findings.Where(finding => finding.Severity == Severity.Error).Select(finding => finding.Message)];
        Assert.Empty(Told("M8", "F625"));
        Assert.Empty(Told("M8x1", "F500"));
        Assert.Equal(["The hole at X20 Y30 is threaded by T8 with 8 mm by a pitch of 1.25 mm, which is what the program feeds for each turn, and the drawing asks for M8x1."], Told("M8x1", "F625"));
    }

    [Fact]
    public void A_thread_in_a_plain_hole_is_told()
    {
        const string Plain = """{ "x": 20, "y": 30, "diameter": 6.8, "depth": 15 }""";
        var finding = Assert.Single(Tapped("Z-18", "Z-15", Plain).Findings);
        Assert.Equal(("hole-wrong-size", 14, Severity.Error), (finding.Name, finding.Line, finding.Severity));
        Assert.Equal("The hole at X20 Y30 is threaded by T7 with 8 mm by a pitch of 1.25 mm, and the drawing asks for a plain hole of 6.8 mm.", finding.Message);
        // A counterbore and the thread under it are two of the list; places alone leave open what the holes are.
        Assert.Empty(Drawn(Tapped("Z-21", "Z-18", Thread + """, { "x": 20, "y": 30, "diameter": 6.8 }""")));
        Assert.Empty(Drawn(Tapped("Z-18", "Z-15", """{ "x": 20, "y": 30 }""")));
    }

    [Fact]
    public void A_shallow_hole_that_is_not_tapped_is_both() =>
        Assert.Equal(["hole-not-finished 7", "hole-shallow 7"], Drawn(Analyse(
            "T6 M6\nS1500 M3\nG0 X20 Y30\nG43 H6 Z40 M8\nG99 G81 X20 Y30 R2 Z-18 F150", Thread, head: "G21 G90 G17 G54\nG0 G53 Z0\n")).Order());

    // Round on 3 with a mill of 10: 16 wide. 5 mm a turn: the last whole turn of a helix to Z-10 begins at Z-5 (elementary geometry).
    [Fact]
    public void A_helix_without_a_circle_at_its_bottom_is_told_what_it_lacks()
    {
        const string Helix = "G0 Z1\nG0 X23\nG1 Z0 F150\nG3 I-3 Z-5\nG3 I-3 Z-10\n";
        const string Hole = """{ "x": 20, "y": 30, "diameter": 16, "depth": 10 }""";
        var head = Head.Replace("T3", "T5", StringComparison.Ordinal).Replace("H3", "H5", StringComparison.Ordinal);
        Assert.Contains("a full circle at Z-10", Analyse(Helix + "G1 X20\nG0 Z40", Hole, head: head).Findings.Single(finding => finding.Name == "hole-shallow").Message, StringComparison.Ordinal);
        Assert.Empty(Drawn(Analyse(Helix + "G3 I-3\nG1 X20\nG0 Z40", Hole, head: head)));
    }

    // Half a tenth is within the finest general tolerance; 0.08 mm is not, and seldom seen in the numbers.
    [Fact]
    public void How_far_a_hole_is_off_is_told_where_it_is_little()
    {
        Assert.Empty(Drawn(Analyse("G99 G81 X20 Y30 R2 Z-13 F150\nX40.05\nX60")));
        Assert.EndsWith("at X40.08 Y30, 0.08 mm off.", Assert.Single(Analyse("G99 G81 X20 Y30 R2 Z-13 F150\nX40.08\nX60").Findings).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("G99 G81 X20 Y30 R2 Z-13 F150\nX40", "hole-missing 12")]
    [InlineData("G99 G81 X20 Y30 R2 Z-13 F150\nX46\nX60", "hole-missing 8")]
    [InlineData("", "")]
    public void In_a_shared_setup_only_what_the_program_does_elsewhere_counts(string blocks, string expected) =>
        Assert.Equal(expected, string.Join(", ", Drawn(Analyse(blocks, setupName: "plates/nc.setup.json"))));

    // Line 12 is the end of the program with two blocks, 11 of one with one.
    [Fact]
    public void In_a_shared_setup_holes_of_another_size_are_anothers() =>
        Assert.Empty(Drawn(Analyse(Made, Row + """, { "x": 80, "y": 30, "diameter": 12 }""", "nc.setup.json")));

    [Fact]
    public void In_its_own_setup_they_are_the_programs() =>
        Assert.Equal(["hole-missing 13"], Drawn(Analyse(Made, Row + """, { "x": 80, "y": 30, "diameter": 12 }""")));

    [Fact]
    public void Where_a_place_is_not_known_nothing_is_said() => Assert.Empty(Drawn(Analyse("G99 G81 X20 Y30 R2 Z-13 F150\nX[#140]")));

    [Fact]
    public void A_program_that_others_call_makes_a_part_of_the_part() =>
        Assert.Empty(Drawn(Analyse("G99 G81 X20 Y30 R2 Z-13 F150", head: "O100\n", tail: "\nG80\nM99\n")));

    [Fact]
    public void A_loop_without_end_says_nothing_of_the_drawing() =>
        Assert.Empty(Drawn(Analyse("G99 G81 X20 Y30 R2 Z-13 F150\nN7 X40\nGOTO 7")));

    [Fact]
    public void What_is_drilled_at_another_datum_outside_the_stock_is_another_part() =>
        Assert.Empty(Drawn(Analyse(Made + "\nG80\nG55 G0 X20 Y30\nG99 G81 X20 Y30 R2 Z-13 F150\nX40")));

    /// <summary>Holes of another part stand in nobody's stead, unless none is made as drawn and they have the numbers of those that are missing: then the offset was forgotten.</summary>
    [Theory]
    [InlineData("G99 G81 X20 Y30 R2 Z-13 F150\nX40\nG80\nG55 G0 X20 Y30\nG99 G81 X20 Y30 R2 Z-13 F150\nX40\nX60", "The drawing's hole at X60 Y30 (G54) is not made: 8 mm, 10 mm deep, in line 8 of x.setup.json.")]
    [InlineData("G55 G0 X20 Y30\nG99 G81 X20 Y30 R2 Z-13 F150\nX40\nX60", "The drawing's 3 holes at X20 Y30, X40 Y30, X60 Y30 (G54) are not made: 8 mm, the first in line 8 of x.setup.json. Instead as many are made where the drawing has none, at X20 Y30, X40 Y30, X60 Y30 (G55).")]
    public void A_hole_of_another_part_is_not_taken_for_a_missing_one(string blocks, string message) =>
        Assert.Equal(message, Assert.Single(Analyse(blocks).Findings, finding => finding.Name == "hole-missing").Message);

    [Fact]
    public void A_hole_of_a_loop_is_told_once()
    {
        var analysis = Analyse("#1 = 0\nWHILE [#1 LT 4] DO 1\nG99 G81 X[20 + 20 * #1] Y30 R2 Z-13 F150\n#1 = #1 + 1\nEND 1");
        Assert.Equal(["hole-extra 9"], Drawn(analysis));
    }

    [Fact]
    public void Spots_that_nothing_drills_are_told_once_with_their_number()
    {
        var finding = Assert.Single(Analyse("G99 G81 X20 Y30 R2 Z-4 F150\nX40\nX60", head: Head.Replace('3', '4').Replace("Y40", "Y30").Replace("M4\n", "M3\n")).Findings,
            finding => finding.Id.StartsWith("NC7", StringComparison.Ordinal));
        Assert.Equal(("hole-not-finished", 6), (finding.Name, finding.Line));
        Assert.StartsWith("The 3 holes at X20 Y30, X40 Y30, X60 Y30 are spotted, but never drilled", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"diameter\": 18, \"thread\": \"M20\"", "-4", "hole-not-finished", "The hole at X50 Y30 is milled, but never tapped: the drawing asks for M20.")]
    [InlineData("\"diameter\": 18", "-31", "hole-too-deep", "The hole at X50 Y30 is milled through: T5 goes to Z-31,")]
    public void What_a_mill_makes_is_not_called_drilled(string hole, string depth, string name, string message)
    {
        var holes = $$"""{ "x": 50, "y": 30, {{hole}}, "depth": 3 }, { "x": 90, "y": 30, "diameter": 18, "depth": 3 }""";
        var analysis = Analyse($"G0 X54 Y30 Z2\nG1 Z{depth} F200\nG3 X54 Y30 I-4\nG1 X50", holes, head: Head.Replace("T3 M6", "T5 M6", StringComparison.Ordinal).Replace("H3", "H5", StringComparison.Ordinal));
        Assert.StartsWith(message, Assert.Single(analysis.Findings, finding => finding.Name == name).Message, StringComparison.Ordinal);
    }
}
