using System.Globalization;
using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Cutting;
using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Cutting;

/// <summary>Rules on what one tool leaves the next: tap drills, reaming stock, points, spots, and mills that go straight down.</summary>
public sealed class HoleToolRuleTests
{
    const string Head = "G21 G90 G17 G54\nG0 G53 Z0\n";
    const string Spot = """{ "number": 1, "kind": "spot-drill", "diameter": 12, "pointAngle": 90 }""";

    static List<Finding> Findings(string rule, string tools, string operations, double bottom = -30, string holes = "")
    {
        var json = string.Create(CultureInfo.InvariantCulture, $$"""{ "stock": { "min": [0, 0, {{bottom}}], "max": [100, 60, 0] }, "tools": [ {{tools}} ], "holes": [ {{holes}} ] }""");
        var setup = SetupFile.Read("x.setup.json", Encoding.UTF8.GetBytes(json));
        Assert.Empty(setup.Problems);
        var text = SourceText.From((Head + operations + "G0 G53 Z0\nM30\n").ReplaceLineEndings("\n"));
        return [.. ProgramAnalysis.Create(text, setup.Setup, MachineProfile.IsoMill with { IsChosen = true }).Findings.Where(finding => finding.Name == rule)];
    }

    static string Tool(int number, string kind, double diameter, string more = "") =>
        string.Create(CultureInfo.InvariantCulture, $$"""{ "number": {{number}}, "kind": "{{kind}}", "diameter": {{diameter}}{{more}} }""");

    static string Cycle(int tool, string code, double bottom) =>
        string.Create(CultureInfo.InvariantCulture, $"T{tool} M6\nS500 M3\nG0 X50 Y30\nG43 H{tool} Z20\nG99 {code} X50 Y30 Z{bottom} R2 F100\nG80\nG0 G53 Z0\nM5\n");

    static List<Finding> Tapped(double drill, double major, double pitch) => Findings(
        "tap-drill-size", Tool(2, "drill", drill) + "," + Tool(3, "tap", major, string.Create(CultureInfo.InvariantCulture, $", \"pitch\": {pitch}")), Cycle(2, "G81", -20) + Cycle(3, "G84", -12));

    // Three sixty-fourths of a mm to either side: a distance that has no rounding.
    [Theory]
    [InlineData(-20, -5, 0)]
    [InlineData(-5, -20, 1)]
    public void What_lies_just_between_two_holes_belongs_to_the_one_made_first(double first, double second, int findings)
    {
        var drilled = string.Create(CultureInfo.InvariantCulture,
            $"T2 M6\nS500 M3\nG0 X50 Y30\nG43 H2 Z20\nG99 G81 X50 Y30 Z{first} R2 F100\nX50.09375 Z{second}\nG80\nG0 G53 Z0\nM5\n");
        const string Tapped = "T3 M6\nS500 M3\nG0 X50 Y30\nG43 H3 Z20\nG99 G84 X50.046875 Y30 Z-10 R2 F500\nG80\nG0 G53 Z0\nM5\n";
        Assert.Equal(findings, Findings("hole-too-short-for-tool", Tool(2, "drill", 5) + "," + Tool(3, "tap", 6, ", \"pitch\": 1"), drilled + Tapped).Count);
    }

    public static TheoryData<string> Charted => [.. Threads.Coarse.Concat(Threads.InchSeries).Select(thread => thread.Name)];

    // Each thread of the charts (ISO 2306 from memory, published charts of unified threads) with the drill printed for it.
    [Theory]
    [MemberData(nameof(Charted))]
    public void The_drills_of_the_charts_are_in_order(string name)
    {
        var thread = Threads.Find(name)!;
        Assert.Empty(Tapped(thread.TapDrill!.Value, thread.Major, thread.Pitch));
    }

    // 100·(D − d)/(1.299038·P): Machinery's Handbook 31, Table 2. M8: 6.8 gives 73.9, 6.0 gives 123.2, 7.1 gives 55.4 per cent.
    [Theory]
    [InlineData(6, "123 per cent")]
    [InlineData(7.1, "55 per cent")]
    [InlineData(8.5, "no thread at all")]
    public void A_hole_out_of_range_is_told_with_the_thread_it_makes(double drill, string words) =>
        Assert.Contains(words, Assert.Single(Tapped(drill, 8, 1.25)).Message, StringComparison.Ordinal);

    // 6.61 gives 85.6 per cent, 6.615 gives 85.3, 7.03 gives 59.7, 7.04 gives 59.1: what is told as 60 or 85 is in the range of 60 to 85.
    [Theory]
    [InlineData(6.61, "is 86 per cent deep")]
    [InlineData(6.615, null)]
    [InlineData(7.03, null)]
    [InlineData(7.04, "is 59 per cent deep")]
    public void A_thread_is_judged_by_the_number_that_is_told(double drill, string? words)
    {
        var found = Tapped(drill, 8, 1.25);
        Assert.Equal(words is not null, found.Count == 1 && found[0].Message.Contains(words!, StringComparison.Ordinal));
        Assert.Equal(words is null, found.Count == 0);
    }

    // Half a pitch below the diameter, 7.4 for M8: common practice for taps that form their thread.
    [Fact]
    public void A_hole_for_forming_is_in_order() => Assert.Empty(Tapped(7.4, 8, 1.25));

    [Fact]
    public void A_counterbore_above_the_core_hole_is_not_its_size() =>
        Assert.Empty(Findings("tap-drill-size", Tool(2, "drill", 6.8) + "," + Tool(3, "tap", 8, ", \"pitch\": 1.25") + "," + Tool(4, "counterbore", 14),
            Cycle(2, "G81", -20) + Cycle(4, "G82", -5) + Cycle(3, "G84", -15)));

    // Published shop table of reaming stock: hole .281 to .880 in .010 to .016 in, so 0.254 to 0.406 mm for 8 and 20 mm; .171 to .280 in .008 to .012 in for 6 mm.
    [Theory]
    [InlineData(8, 7.7, false)]
    [InlineData(8, 7.8, false)]
    [InlineData(20, 19.6, false)]
    [InlineData(6, 5.75, false)]
    [InlineData(8, 8, true)]
    [InlineData(8, 7.95, true)]
    [InlineData(8, 7, true)]
    [InlineData(6, 5, true)]
    public void A_reamer_wants_its_stock(double reamer, double drill, bool told) =>
        Assert.Equal(told ? 1 : 0, Findings("hole-size", Tool(2, "drill", drill) + "," + Tool(3, "reamer", reamer), Cycle(2, "G81", -25) + Cycle(3, "G85", -18)).Count);

    [Fact]
    public void A_boring_bar_in_a_hole_as_wide_as_itself_cuts_nothing()
    {
        const string Operations = "T2 M6\nS500 M3\nG0 X50 Y30\nG43 H2 Z20\nG99 G81 X50 Y30 Z-25 R2 F100\nG80\nG0 G53 Z0\nT3 M6\nG0 X50 Y30\nG43 H3 Z20\nG99 G85 X50 Y30 Z-18 R2 F100\nG80\n";
        Assert.Single(Findings("hole-size", Tool(2, "drill", 20) + "," + Tool(3, "boring-bar", 20), Operations));
        Assert.Empty(Findings("hole-size", Tool(2, "drill", 16) + "," + Tool(3, "boring-bar", 20), Operations));
    }

    // 7/8 in at 118 degrees: a point of 0.2629 in = 6.678 mm (trade mathematics course): through 15 mm of stock the tip goes to Z-21.678.
    [Theory]
    [InlineData(-14.9, 0)]
    [InlineData(-15, 1)]
    [InlineData(-21.6, 1)]
    [InlineData(-21.7, 0)]
    public void A_through_hole_wants_the_length_of_the_point(double bottom, int told) =>
        Assert.Equal(told, Findings("point-not-through", Tool(2, "drill", 22.225, ", \"pointAngle\": 118"), Cycle(2, "G81", bottom), -15).Count);

    // A point of 5 mm at 118 degrees is 2.5·cot 59° = 1.502 mm long (engineering reference). What is drawn blind is not to be drilled through.
    [Theory]
    [InlineData(-20.5, "", 1, 0)] // nothing is drawn
    [InlineData(-20.5, "\"diameter\": 5", 1, 0)] // no depth: through, perhaps
    [InlineData(-20.5, "\"diameter\": 5, \"depth\": 10", 0, 1)]
    [InlineData(-20, "\"diameter\": 5, \"depth\": 18.4", 0, 0)] // as deep as drawn
    [InlineData(-20.5, "\"diameter\": 5, \"depth\": 18.4", 0, 1)] // deeper, and it comes out
    [InlineData(-20.1, "\"diameter\": 5, \"depth\": 18.6", 0, 0)] // the tip comes out, but the hole is as deep as drawn
    [InlineData(-20.5, "\"diameter\": 5, \"depth\": 19", 0, 0)] // as deep as drawn
    [InlineData(-20.7, "\"diameter\": 5, \"depth\": 19", 0, 0)] // so it comes out as drawn too
    [InlineData(-20.5, "\"diameter\": 5, \"depth\": 20", 0, 0)] // hole-shallow
    [InlineData(-20.5, "\"thread\": \"M6\", \"depth\": 10", 0, 1)]
    [InlineData(-20, "\"thread\": \"M6\", \"depth\": 10", 0, 0)]
    [InlineData(-20.5, "\"thread\": \"M6\", \"depth\": 15", 1, 0)] // with the lead of the tap and the point it reaches the bottom
    public void A_hole_that_is_drawn_blind_is_not_asked_to_come_through(double bottom, string drawn, int point, int deep)
    {
        var holes = drawn.Length == 0 ? "" : $$""", "holes": [ { "x": 50, "y": 30, {{drawn}} } ]""";
        var setup = $$"""{ "stock": { "min": [0, 0, -20], "max": [100, 60, 0] }, "tools": [ {{Tool(2, "drill", 5, ", \"pointAngle\": 118")}} ]{{holes}} }""";
        var program = Head + Cycle(2, "G81", bottom) + "M30\n";
        Assert.Equal(point, Programs.Lines("point-not-through", program, setup).Length);
        Assert.Equal(deep, Programs.Lines("hole-too-deep", program, setup).Length);
    }

    // As drawn nothing is told; what is deeper and opens the bottom, which it would not as drawn, is told once and by the drawing.
    [Theory]
    [InlineData(3.3, 10)]
    [InlineData(8, 15)]
    [InlineData(20, 30)]
    public void One_fault_of_depth_is_told_once(double diameter, double thickness)
    {
        var point = diameter / 2 / Math.Tan(59 * Math.PI / 180);
        foreach (var wall in (double[])[0.3, 0.9, 1.6, 3, 7])
        {
            foreach (var deeper in (double[])[0, 0.05, 0.3, 0.9, 1.5, 3, 8])
            {
                var (depth, tip) = (Math.Round(thickness - wall, 3), Math.Round(thickness - wall + point + deeper + 5e-4, 3));
                var hole = string.Create(CultureInfo.InvariantCulture, $$"""{ "x": 50, "y": 30, "diameter": {{diameter}}, "depth": {{depth}} }""");
                int Told(string rule) => Findings(rule, Tool(2, "drill", diameter, ", \"pointAngle\": 118"), Cycle(2, "G81", -tip), -thickness, hole).Count;
                var (opens, wouldOpen) = (tip > thickness + 0.01, depth + point > thickness + 0.01);
                var isTold = deeper > 0.01 && ((opens && !wouldOpen) || deeper > (depth > 6 ? 1 : 0.5));
                Assert.Equal((wall, deeper, 0, isTold ? 1 : 0, 0), (wall, deeper, Told("point-not-through"), Told("hole-too-deep"), Told("hole-shallow")));
            }
        }
    }

    [Fact]
    public void A_tip_at_the_bottom_is_not_told_as_0_mm_below() =>
        Assert.StartsWith("The tip of T2 ends at the stock's bottom at X50 Y30, and its point is 1.502 mm long",
            Assert.Single(Findings("point-not-through", Tool(2, "drill", 5, ", \"pointAngle\": 118"), Cycle(2, "G81", -20), -20)).Message, StringComparison.Ordinal);

    [Fact]
    public void What_a_wider_tool_opens_is_through() =>
        Assert.Empty(Findings("point-not-through", Tool(2, "drill", 8, ", \"pointAngle\": 118") + "," + Tool(3, "drill", 10, ", \"pointAngle\": 118"), Cycle(2, "G81", -16) + Cycle(3, "G81", -19), -15));

    // A cone of 90 degrees is twice as wide as deep (engineering reference: factor 0.5), the tool of 12 mm has one of 6 mm.
    [Theory]
    [InlineData(-3.9, "7.8 mm wide")]
    [InlineData(-4, null)]
    [InlineData(-6, null)]
    [InlineData(-6.5, "only 6 mm long")]
    public void A_spot_leaves_a_chamfer(double bottom, string? words)
    {
        var found = Findings("spot-depth", Spot + "," + Tool(2, "drill", 8), Cycle(1, "G81", bottom) + Cycle(2, "G81", -20));
        Assert.Equal(words is null ? 0 : 1, found.Count);
        Assert.All(found, finding => Assert.Contains(words!, finding.Message, StringComparison.Ordinal));
    }

    // The mouth of a cone is no wider than the tool (engineering reference): a narrower spot drill only guides. What a countersink, a counterbore or a chamfer mill makes of the mouth comes after it (common practice).
    [Theory]
    [InlineData(6, 8, -2, "", 0)] // no depth of it makes 8 mm
    [InlineData(8, 8, -2, "", 0)]
    [InlineData(8.5, 8, -2, "", 1)]
    [InlineData(6, 8, -4, "", 0)] // its straight wall is drilled away
    [InlineData(12, 8, -2, "countersink", 0)]
    [InlineData(12, 8, -2, "counterbore", 0)]
    [InlineData(12, 8, -2, "chamfer-mill", 0)]
    [InlineData(12, 8, -2, "reamer", 1)]
    [InlineData(12, 8, -6.5, "", 1)]
    [InlineData(12, 8, -6.5, "counterbore", 0)]
    [InlineData(12, 8, -6.5, "drill", 0)] // 14 mm wide
    public void A_spot_is_asked_for_no_more_than_its_drill_can_make(double spot, double drill, double bottom, string then, int told)
    {
        var tools = Tool(1, "spot-drill", spot, ", \"pointAngle\": 90") + "," + Tool(2, "drill", drill) + (then.Length == 0 ? "" : "," + Tool(3, then, then == "reamer" ? 8.2 : 14));
        var operations = Cycle(1, "G81", bottom) + Cycle(2, "G81", -20) + (then.Length == 0 ? "" : Cycle(3, then == "reamer" ? "G85" : "G82", -5));
        Assert.Equal(told, Findings("spot-depth", tools, operations).Count);
    }

    [Theory]
    [InlineData("G1 Z-3 F100\nG0 Z20\n", 0)] // straight down
    [InlineData("G0 X51\nG1 Z-3 F100\nG3 I-1\nG0 Z20\n", 0)] // around
    [InlineData("G0 X20\nG1 Z-3 F100\nG0 Z20\n", 1)] // at another place
    public void A_chamfer_that_no_cycle_makes_is_seen(string cuts, int told) =>
        Assert.Equal(told, Findings("spot-depth", Spot + "," + Tool(2, "drill", 8) + "," + Tool(3, "chamfer-mill", 12), Cycle(1, "G81", -2) + Cycle(2, "G81", -20) + "T3 M6\nS500 M3\nG0 X50 Y30\nG43 H3 Z20\nG0 Z2\n" + cuts).Count);

    // A bar of 30 mm wants two thirds of itself, and room for its shank (common practice, from memory). What mills have opened is wide enough.
    [Theory]
    [InlineData(12, "", "", "T3 bores 30 mm at X50 Y30 in a hole of 12 mm: it has 18 mm to take, too much.")]
    [InlineData(19.9, "", "", "T3 bores 30 mm at X50 Y30 in a hole of 19.9 mm: it has 10.1 mm to take, too much.")]
    [InlineData(20, "", "", null)]
    [InlineData(29, "", "", null)]
    [InlineData(22, ", \"shankDiameter\": 24", "", "T3 bores 30 mm at X50 Y30 in a hole of 22 mm: its shank of 24 mm does not go in.")]
    [InlineData(26, ", \"shankDiameter\": 24", "", null)]
    [InlineData(26, ", \"shankDiameter\": 40", "", null)] // the shank stands above the bar
    [InlineData(12, "", "T4 M6\nS500 M3\nG0 X57 Y30\nG43 H4 Z20\nG0 Z0\nG3 I-7 Z-20 F100\nI-7\nG0 Z20\nG0 G53 Z0\nM5\n", null)]
    [InlineData(12, "", "T4 M6\nS500 M3\nG0 X40 Y25\nG43 H4 Z20\nG0 Z0\nG1 X60 Z-20 F100\nX40\nY30\nX60\nY35\nX40\nG0 Z20\nG0 G53 Z0\nM5\n", null)] // a pocket
    public void A_boring_bar_wants_a_hole_that_it_goes_into(double drill, string more, string milled, string? message)
    {
        var found = Findings("hole-size", Tool(2, "drill", drill) + "," + Tool(3, "boring-bar", 30, more) + "," + Tool(4, "end-mill", 12), Cycle(2, "G81", -25) + milled + Cycle(3, "G85", -18));
        Assert.Equal(message is null ? [] : [message], found.Select(finding => finding.Message));
    }

    // A drill of 20 mm at 118 degrees has a point of 6.009 mm: to Z-4 it is nowhere 20 mm wide.
    [Fact]
    public void A_hole_that_ends_within_the_point_has_no_level_of_its_full_width()
    {
        var finding = Assert.Single(Findings("hole-too-short-for-tool", Tool(2, "drill", 20, ", \"pointAngle\": 118") + "," + Tool(3, "boring-bar", 22), Cycle(2, "G81", -4) + Cycle(3, "G85", -15)));
        Assert.Equal("T3 bores at X50 Y30 to Z-15, and the hole that T2 makes there goes to Z-4 only and is nowhere as wide as its tool: it has to go to Z-21.009, or T3 less deep.", finding.Message);
    }

    // A drill of 8 mm at 118 degrees is full width 2.403 mm above its tip: (D/2)·cot(α/2), engineering reference. A tenth of the diameter into the cone is common practice.
    const string DrillAndReamer = """{ "number": 2, "kind": "drill", "diameter": 8, "pointAngle": 118 }, { "number": 3, "kind": "reamer", "diameter": 8.2 }""";

    [Theory]
    [InlineData(-20, -17.5, 0)]
    [InlineData(-20, -18.4, 0)]
    [InlineData(-20, -18.5, 1)]
    [InlineData(-20, -25, 1)]
    // Through the stock, by its point at least.
    [InlineData(-33, -32, 0)]
    [InlineData(-30.5, -32, 0)]
    public void A_reamer_keeps_within_the_full_width_of_its_hole(double drilled, double reamed, int told) =>
        Assert.Equal(told, Findings("hole-too-short-for-tool", DrillAndReamer, Cycle(2, "G81", drilled) + Cycle(3, "G85", reamed)).Count);

    [Fact]
    public void Where_nothing_makes_a_hole_the_tool_meets_full_material()
    {
        var elsewhere = Cycle(2, "G81", -20).Replace("X50", "X20", StringComparison.Ordinal);
        Assert.Equal(Severity.Warning, Assert.Single(Findings("hole-too-short-for-tool", DrillAndReamer, elsewhere + Cycle(3, "G85", -10))).Severity);
        // A program that drills nothing finishes what was drilled before (common practice).
        Assert.Empty(Findings("hole-too-short-for-tool", DrillAndReamer, Cycle(3, "G85", -10)));
        // Milled away down to there it does not.
        Assert.Empty(Findings("hole-too-short-for-tool", DrillAndReamer + "," + Tool(4, "end-mill", 20), "T4 M6\nS500 M3\nG0 X-20 Y30\nG43 H4 Z20\nG0 Z-10\nG1 X140 F300\nG0 G53 Z0\nM5\n" + elsewhere + Cycle(3, "G85", -10)));
    }

    // Common practice: these tools open a hole and make none. Whether the drawing has the hole says nothing of the order.
    [Theory]
    [InlineData("tap", "G84", "")]
    [InlineData("reamer", "G85", "")]
    [InlineData("boring-bar", "G85", "")]
    [InlineData("tap", "G84", "{ \"x\": 50, \"y\": 30, \"diameter\": 7 }")]
    public void A_tool_that_comes_before_the_drill_of_its_hole_is_an_error(string kind, string cycle, string holes)
    {
        var tools = Spot + "," + Tool(2, "drill", 7) + "," + Tool(3, kind, 8);
        var finding = Assert.Single(Findings("hole-too-short-for-tool", tools, Cycle(1, "G81", -3) + Cycle(3, cycle, -15) + Cycle(2, "G81", -20), holes: holes));
        Assert.Equal((Severity.Error, 14), (finding.Severity, finding.Line));
        Assert.Contains("at X50 Y30 to Z-15 before T2 makes the hole there", finding.Message, StringComparison.Ordinal);
        Assert.Equal(22, finding.Related!.Line);
        Assert.Empty(Findings("hole-too-short-for-tool", tools, Cycle(1, "G81", -3) + Cycle(2, "G81", -20) + Cycle(3, cycle, -15), holes: holes));
    }

    [Fact] // A full circle is told at its place in the run, whatever is done next.
    public void What_was_milled_before_is_not_milled_later()
    {
        var elsewhere = Cycle(2, "G81", -25).Replace("X50", "X20", StringComparison.Ordinal);
        const string Milled = "T4 M6\nS500 M3\nG0 X57 Y30\nG43 H4 Z20\nG0 Z0\nG3 I-7 Z-20 F100\nI-7\nG0 Z20\nG0 G53 Z0\nM5\n";
        var tools = Tool(2, "drill", 8) + "," + Tool(3, "boring-bar", 30) + "," + Tool(4, "end-mill", 12);
        Assert.Empty(Findings("hole-too-short-for-tool", tools, elsewhere + Milled + Cycle(3, "G85", -18)));
        Assert.Contains("before T4 makes the hole there", Assert.Single(Findings("hole-too-short-for-tool", tools, elsewhere + Cycle(3, "G85", -18) + Milled)).Message, StringComparison.Ordinal);
    }

    static string Under(string offset, int tool, string code, double bottom) => Cycle(tool, code, bottom).Replace("G0 X50", offset + " G0 X50", StringComparison.Ordinal);

    // Where G55 lies is not known: a tap under it is at a wrong place where nothing is drilled under it, and what is drilled at its X and Y under G54 is left without a thread.
    [Theory]
    [InlineData("G54", "G55", "", "T3 taps at X50 Y30 (G55) to Z-12, and nothing in this program makes a hole under G55; the one that T2 makes at the same X and Y under G54 is not tapped: is G54 meant?")]
    [InlineData("G54", "G54", "", null)]
    [InlineData("G55", "G55", "", null)]
    [InlineData("G54", "G55", "G55", null)] // drilled under both
    public void A_tap_under_another_work_offset_than_its_drill_is_told(string drilled, string tapped, string also, string? message)
    {
        var found = Findings("hole-too-short-for-tool", Tool(2, "drill", 6.8) + "," + Tool(3, "tap", 8, ", \"pitch\": 1.25"),
            Under(drilled, 2, "G81", -20) + (also.Length > 0 ? Under(also, 2, "G81", -20) : "") + Under(tapped, 3, "G84", -12));
        Assert.Equal(message is null ? [] : [message], found.Select(finding => finding.Message));
    }

    [Fact] // Both are tapped: what is under G55 was drilled in another program.
    public void A_tap_under_both_work_offsets_is_none_of_it() => Assert.Empty(Findings("hole-too-short-for-tool", Tool(2, "drill", 6.8) + "," + Tool(3, "tap", 8, ", \"pitch\": 1.25"),
        Under("G54", 2, "G81", -20) + Under("G54", 3, "G84", -12) + Under("G55", 3, "G84", -12)));

    // A hole that was there before may get a step at its bottom, a wider mouth or a finer bore after it was reamed; a drill in between made the hole.
    [Theory]
    [InlineData("drill", 5, "G81", "")]
    [InlineData("counterbore", 14, "G82", "")]
    [InlineData("boring-bar", 7.9, "G85", "")]
    [InlineData("drill", 7, "G81", "R-12")]
    public void What_is_no_hole_for_the_tool_says_nothing_of_the_order(string kind, double diameter, string cycle, string level)
    {
        var after = Cycle(4, cycle, -20);
        after = level.Length == 0 ? after : after.Replace("R2", level, StringComparison.Ordinal);
        Assert.DoesNotContain(Findings("hole-too-short-for-tool", Tool(3, "reamer", 8) + "," + Tool(4, kind, diameter), Cycle(3, "G85", -15) + after), finding => finding.Severity == Severity.Error);
        Assert.Empty(Findings("hole-too-short-for-tool", Tool(2, "drill", 7.8) + "," + Tool(3, "reamer", 8) + "," + Tool(4, kind, diameter), Cycle(2, "G81", -20) + Cycle(3, "G85", -15) + after));
    }

    // Common practice: these tools open a hole and make none; a spot is none.
    [Theory]
    [InlineData("reamer", "G85", true, 1)]
    [InlineData("boring-bar", "G85", true, 1)]
    // Of a tap hole-missing says that nothing drills before it; of a place that the drawing does not have hole-extra.
    [InlineData("tap", "G84", true, 0)]
    [InlineData("reamer", "G85", false, 0)]
    public void That_the_drawing_has_the_hole_makes_none_for_the_reamer(string kind, string cycle, bool isDrawn, int told)
    {
        var holes = "{ \"x\": 20, \"y\": 30 }" + (isDrawn ? ", { \"x\": 50, \"y\": 30 }" : "");
        var elsewhere = Cycle(2, "G81", -20).Replace("X50", "X20", StringComparison.Ordinal);
        Assert.Equal(told, Findings("hole-too-short-for-tool", Spot + "," + Tool(2, "drill", 7.8) + "," + Tool(3, kind, 8), elsewhere + Cycle(1, "G81", -3) + Cycle(3, cycle, -15), holes: holes).Count);
    }

    // Both go through a plate of 20 mm; below it neither cuts.
    [Theory]
    [InlineData("drill", 8, 1)]
    [InlineData("drill", 7.8, 0)]
    public void In_a_through_hole_as_wide_as_itself_a_reamer_has_nothing_to_cut(string kind, double drill, int told) =>
        Assert.Equal(told, Findings("hole-size", Tool(2, kind, drill, ", \"pointAngle\": 118") + "," + Tool(3, "reamer", 8), Cycle(2, "G81", -24) + Cycle(3, "G85", -22), -20).Count);

    // An earlier cut counts as deep as it went: faced by 1, spotted by 3, drilled by 10.
    [Theory]
    [InlineData("", "goes straight down 8 mm")]
    [InlineData("T4 M6\nS500 M3\nG0 X-40 Y30\nG43 H4 Z20\nG0 Z-1\nG1 X140 F300\nG0 G53 Z0\nM5\n", "goes straight down 7 mm")]
    [InlineData("T1 M6\nS500 M3\nG0 X50 Y30\nG43 H1 Z20\nG99 G81 X50 Y30 Z-3 R2 F100\nG80\nG0 G53 Z0\nM5\n", "goes straight down 5 mm")]
    [InlineData("T2 M6\nS500 M3\nG0 X50 Y30\nG43 H2 Z20\nG99 G81 X50 Y30 Z-10 R2 F100\nG80\nG0 G53 Z0\nM5\n", null)]
    [InlineData("T3 M6\nS500 M3\nG0 X55 Y30\nG43 H3 Z20\nG0 Z0\nG3 I-5 Z-8 F100\nG0 Z20\n", null)]
    public void Earlier_cuts_leave_a_mill_what_they_did_not_reach(string before, string? words)
    {
        var found = Findings("plunge-with-end-mill", Tool(3, "end-mill", 10, ", \"flutes\": 4") + "," + Spot + "," + Tool(2, "drill", 10) + "," + Tool(4, "face-mill", 50), before + Down.Replace("Z-4", "Z-8", StringComparison.Ordinal));
        Assert.Equal(words is null ? 0 : 1, found.Count);
        Assert.All(found, finding => Assert.Contains(words!, finding.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void In_a_face_that_is_milled_the_surface_is_not_known() =>
        Assert.Empty(Findings("spot-depth", Spot + "," + Tool(2, "drill", 8) + "," + Tool(3, "face-mill", 50),
            "T3 M6\nS500 M3\nG0 X-40 Y30\nG43 H3 Z20\nG0 Z-1\nG1 X140 F300\nG0 G53 Z0\nM5\n" + Cycle(1, "G81", -3) + Cycle(2, "G81", -20)));

    const string Down = "T3 M6\nS500 M3\nG0 X50 Y30\nG43 H3 Z20\nG0 Z2\nG1 Z-4 F60\nX60\nG0 Z20\n";

    // Common practice: end mills of two flutes and slot mills go down, more need to be known to; face mills, mills with a thin neck behind their edges and thread mills do not.
    [Theory]
    [InlineData("end-mill", ", \"flutes\": 4", 1)]
    [InlineData("end-mill", ", \"flutes\": 2", 0)]
    [InlineData("end-mill", ", \"flutes\": 4, \"centreCutting\": true", 0)]
    [InlineData("end-mill", "", 0)]
    [InlineData("slot-mill", ", \"flutes\": 3", 0)]
    [InlineData("slot-mill", ", \"flutes\": 6", 0)]
    [InlineData("slot-mill", ", \"flutes\": 6, \"centreCutting\": false", 1)]
    [InlineData("slot-mill", ", \"flutes\": 2, \"shankDiameter\": 9.6", 0)] // relieved above its edges
    [InlineData("slot-mill", ", \"shankDiameter\": 5", 1)]
    [InlineData("slot-mill", ", \"shankDiameter\": 5, \"centreCutting\": true", 0)]
    [InlineData("ball-mill", ", \"flutes\": 4", 0)]
    [InlineData("ball-mill", ", \"flutes\": 4, \"centreCutting\": false", 1)]
    [InlineData("end-mill", ", \"flutes\": 2, \"centreCutting\": false", 1)]
    [InlineData("end-mill", ", \"centreCutting\": false", 1)]
    [InlineData("chamfer-mill", ", \"flutes\": 4", 0)]
    [InlineData("face-mill", "", 1)]
    [InlineData("face-mill", ", \"flutes\": 2", 1)]
    [InlineData("face-mill", ", \"centreCutting\": true", 0)]
    [InlineData("drill", ", \"flutes\": 3", 0)]
    public void A_mill_with_more_than_two_flutes_may_not_cut_in_the_middle(string kind, string more, int told) =>
        Assert.Equal(told, Findings("plunge-with-end-mill", Tool(3, kind, 10, more), Down).Count);

    [Theory]
    [InlineData("face-mill", ", \"flutes\": 5", "T3, a face mill, goes straight down 4 mm into full material: its middle does not cut. Come in from beside the stock, or go down on a ramp.")]
    [InlineData("slot-mill", ", \"shankDiameter\": 5", "T3, a slot mill with a thin shank, goes straight down 4 mm into full material: its end does not cut. Come in from beside the stock.")]
    [InlineData("slot-mill", ", \"flutes\": 6, \"centreCutting\": false", "T3, a mill with 6 flutes, goes straight down 4 mm into full material: its end does not cut in the middle. Drill first, or go down on a ramp or a helix.")]
    [InlineData("end-mill", ", \"centreCutting\": false", "T3, a mill, goes straight down 4 mm into full material: its end does not cut in the middle. Drill first, or go down on a ramp or a helix.")]
    public void What_such_a_mill_lacks_is_told(string kind, string more, string message) =>
        Assert.Equal(message, Assert.Single(Findings("plunge-with-end-mill", Tool(3, kind, 10, more), Down)).Message);

    // Common practice: a face mill comes in from beside the stock; in a bore or a pocket as wide as itself it may go down.
    [Theory]
    [InlineData("T3 M6\nS500 M3\nG0 X-30 Y30\nG43 H3 Z20\nG0 Z2\nG1 Z-4 F60\nX130\nG0 Z20\n")] // beside
    [InlineData("T3 M6\nS500 M3\nG0 X10 Y30\nG43 H3 Z20\nG0 Z2\nG1 Z-1 F60\nX130\nG0 Z20\n")] // over the edge
    [InlineData("T3 M6\nS500 M3\nG0 X50 Y30\nG43 H3 Z20\nG0 Z1\nG1 Z0 F60\nX130\nG0 Z20\n")] // down to the top only
    [InlineData("T4 M6\nS500 M3\nG0 X50 Y30\nG43 H4 Z20\nG0 Z0\nG3 I-20 Z-4 F100\nG3 I-20\nG0 Z20\nG0 G53 Z0\nT3 M6\nS500 M3\nG0 X30 Y30\nG43 H3 Z20\nG0 Z2\nG1 Z-4 F60\nG0 Z20\n")] // into a pocket
    public void A_face_mill_may_go_down_beside_the_stock_and_in_a_pocket(string operations) =>
        Assert.Empty(Findings("plunge-with-end-mill", Tool(3, "face-mill", 40, ", \"flutes\": 5") + "," + Tool(4, "end-mill", 12, ", \"flutes\": 2"), operations));

    // Common practice: a thread mill goes down in its core hole, which another program may have made.
    [Theory]
    [InlineData(null, "", 0)]
    [InlineData(50.0, "", 0)]
    [InlineData(20.0, "", 1)]
    [InlineData(20.0, "{ \"x\": 50, \"y\": 30, \"thread\": \"M12\" }", 0)] // hole-missing tells it
    public void A_thread_mill_wants_its_core_hole(double? drilledAt, string holes, int told)
    {
        var before = drilledAt is { } x ? Cycle(2, "G81", -20).Replace("X50", $"X{x}", StringComparison.Ordinal) : "";
        var found = Findings("plunge-with-end-mill", Tool(3, "thread-mill", 9, ", \"pitch\": 1.75") + "," + Tool(2, "drill", 10.2), before + Down, holes: holes);
        Assert.Equal(told, found.Count);
        Assert.All(found, finding => Assert.Equal("T3, a thread mill, goes straight down 4 mm into full material: its end does not cut. The hole has to be there before.", finding.Message));
    }

    // A thread mill of 9 mm goes down 4 mm where a hole was drilled before: its end does not cut (common practice). The point of 118 degrees is 3.06 mm long on 10.2 mm, and as wide as the mill 2.70 mm above the tip.
    [Theory]
    [InlineData(10.2, 50.0, -20, 0)]
    [InlineData(9, 50.0, -20, 0)]
    [InlineData(8.5, 50.0, -20, 4)] // narrower than the mill
    [InlineData(10.2, 50.5, -20, 0)] // an approach beside the middle
    [InlineData(10.2, 51.5, -20, 4)] // the wrong place, half beside the hole
    [InlineData(10.2, 50.0, -7, 0)]
    [InlineData(10.2, 50.0, -5, 1.67)] // into the drill's cone
    public void A_thread_mill_wants_a_hole_as_wide_as_itself(double drill, double at, double to, double depth)
    {
        foreach (var holes in new[] { "", "{ \"x\": 50, \"y\": 30, \"thread\": \"M12\" }" })
        {
            var found = Findings("plunge-with-end-mill", Tool(3, "thread-mill", 9, ", \"pitch\": 1.75") + "," + Tool(2, "drill", drill, ", \"pointAngle\": 118"), Cycle(2, "G81", to).Replace("X50", string.Create(CultureInfo.InvariantCulture, $"X{at}"), StringComparison.Ordinal) + Down, holes: holes);
            Assert.Equal(depth > 0 ? 1 : 0, found.Count);
            Assert.All(found, finding => Assert.Matches($"^T3, a thread mill, goes straight down {depth.ToString(CultureInfo.InvariantCulture)}[0-9]* mm where the hole before it leaves no room for it: its end does not cut. The hole has to be as wide as the mill down to there.$", finding.Message));
        }
    }

    // A mill of 10 mm beside a slot of 10 mm along X at Y30, 8 mm deep, and beside a hole of 8 mm: its middle counts (common practice).
    [Theory]
    [InlineData("end-mill", 34, 0)]
    [InlineData("end-mill", 35, 0)]
    [InlineData("end-mill", 37, 1)]
    [InlineData("face-mill", 38, 1)]
    [InlineData("face-mill", 33, 0)]
    [InlineData("end-mill", 45, -1)] // nothing there
    public void A_mill_half_over_an_earlier_cut_still_goes_down_with_its_middle(string kind, double y, int told)
    {
        var found = Findings(
            "plunge-with-end-mill", Tool(3, kind, 10, ", \"flutes\": 4") + "," + Tool(4, "end-mill", 10, ", \"flutes\": 2"),
            "T4 M6\nS500 M3\nG0 X-10 Y30\nG43 H4 Z20\nG0 Z-8\nG1 X80 F100\nG0 Z20\nG0 G53 Z0\nM5\n" + Down.Replace("Y30", string.Create(CultureInfo.InvariantCulture, $"Y{y}"), StringComparison.Ordinal));
        Assert.Equal(told == 0 ? 0 : 1, found.Count);
        Assert.All(found, finding => Assert.Contains(told < 0 ? "down 4 mm into full material:" : "down 4 mm beside an earlier cut, its middle in full material:", finding.Message, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(2.0, 0)]
    [InlineData(5.5, 1)]
    public void A_hole_has_to_be_where_the_middle_of_the_mill_comes(double beside, int told) =>
        Assert.Equal(told, Findings("plunge-with-end-mill", Tool(3, "end-mill", 10, ", \"flutes\": 4") + "," + Tool(2, "drill", 8), Cycle(2, "G81", -20).Replace("X50", string.Create(CultureInfo.InvariantCulture, $"X{50 + beside}"), StringComparison.Ordinal) + Down).Count);

    [Theory]
    [InlineData("", "its end may not cut in the middle")]
    [InlineData(", \"centreCutting\": false", "its end does not cut in the middle")]
    public void What_the_setup_says_of_its_end_is_taken_as_said(string more, string words) =>
        Assert.Contains(words, Assert.Single(Findings("plunge-with-end-mill", Tool(3, "end-mill", 10, ", \"flutes\": 4" + more), Down)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("T2 M6\nS500 M3\nG0 X50 Y30\nG43 H2 Z20\nG99 G81 X50 Y30 Z-8 R2 F100\nG80\nG0 G53 Z0\nM5\n", Down)]
    [InlineData("", "T3 M6\nS500 M3\nG0 X50 Y30\nG43 H3 Z20\nG0 Z0\nG1 X60 Z-4 F60\nG0 Z20\n")]
    [InlineData("", "T3 M6\nS500 M3\nG0 X50 Y30\nG43 H3 Z20\nG0 Z0\nG3 X50 Y30 I-3 J0 Z-4 F60\nG0 Z20\n")]
    [InlineData("", "T3 M6\nS500 M3\nG0 X-10 Y30\nG43 H3 Z20\nG0 Z2\nG1 Z-4 F60\nX60\nG0 Z20\n")]
    [InlineData("", "T3 M6\nS500 M3\nG0 X50 Y30\nG43 H3 Z20\nG0 Z2\nG1 Z-0.2 F60\nX60\nG0 Z20\n")]
    public void Into_a_hole_on_a_ramp_beside_the_stock_and_a_little_it_may(string before, string cuts) =>
        Assert.Empty(Findings("plunge-with-end-mill", Tool(3, "end-mill", 10, ", \"flutes\": 4") + "," + Tool(2, "drill", 10), before + cuts));
}
