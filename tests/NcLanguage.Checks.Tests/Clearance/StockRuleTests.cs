using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>Rules that hold moves and holes against the stock and what it rests on. Expected outcomes are closed-form.</summary>
public sealed class StockRuleTests
{
    const string Plate = """
        { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] },
          "supports": [ { "name": "rear parallel", "min": [0, 50, -45], "max": [100, 60, -15] } ],
          "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118 }, { "number": 4, "kind": "spot-drill", "diameter": 10, "pointAngle": 90 },
                     { "number": 5, "kind": "end-mill", "diameter": 10 }, { "number": 6, "kind": "end-mill", "diameter": 16 }, { "number": 7, "kind": "drill", "diameter": 8 } ] }
        """;
    const string Start = "G21 G90 G17 G54\nT5 M6\nG0 X-10 Y30 Z5\n";

    static int[] Rapids(string program, string readings = "") => Programs.Lines("rapid-into-stock", program, Plate, null, readings);

    [Theory]
    [InlineData("G0 Z-3\nG1 X50 F300\nG0 X-10\nX50\nZ5\nX20\nZ-3\nM30", new int[0])] // back into its own slot, along it and from above
    [InlineData("G0 Z-3\nG1 X50 F300\nG0 X60\nM30", new[] { 6 })] // past the end of the slot
    [InlineData("G0 Z-3\nG1 X50 F300\nG0 Z-4\nM30", new[] { 6 })] // deeper than the slot
    [InlineData("G0 Z-3\nG1 X50 F300\nG0 Z5\nT6 M6\nG0 X20\nZ-3\nM30", new[] { 9 })] // a wider tool into the slot
    [InlineData("G0 Z-3\nX-10 Y-10\nX110\nY70\nM30", new int[0])] // beside the stock
    [InlineData("G0 X50\nG38.2 Z-2 F50\nG0 Z5\nX20\nM30", new int[0])] // a probe move meets the stock by design, and cuts nothing
    [InlineData("G68 X50 Y30 R90\nG0 X-10 Y30\nZ-3\nG1 X110 F300\nG69 G0 X50 Y30\nX60\nM30", new[] { 9 })] // a slot turned by 90°, along it and out of it
    [InlineData("G0 X50 Z0\nX90\nZ5\nM30", new int[0])] // on the stock's top
    [InlineData("G0 X50\nZ-3\nX80\nZ-5\nZ5\nM30", new[] { 5 })] // in, along, deeper and out: one finding
    public void A_rapid_is_held_against_what_still_stands(string moves, int[] lines) => Assert.Equal(lines, Rapids(Start + moves));

    // Whichever way the tool comes, from home say, it ends 3 mm deep in the work; the height it comes from tells nothing more.
    [Theory]
    [InlineData("G0 X50 Y30\nZ-3\nM30", new[] { 4 })]
    [InlineData("G0 X50 Y30 Z-3\nZ5\nM30", new[] { 3 })]
    [InlineData("G0 X50 Y30\nZ-3\nX80\nZ5\nM30", new[] { 4 })] // once
    [InlineData("G91 G28 Z0\nG90 G0 X50 Y30\nZ-3\nM30", new[] { 5 })]
    [InlineData("G0 X50 Y30\nZ0\nM30", new int[0])] // on the stock's top
    [InlineData("G0 X-10 Y30\nZ-3\nM30", new int[0])] // beside it
    [InlineData("G0 Z-3\nM30", new int[0])] // anywhere
    [InlineData("G0 X50\nZ-3\nM30", new int[0])]
    [InlineData("G0 X-10 Y30 Z5\nZ-3\nG1 X50 F300\nG0 G53 Z0\nG0 X20 Y30\nZ-3\nM30", new int[0])] // where it has cut
    public void A_rapid_from_an_unknown_place_is_held_against_the_stock_where_it_ends(string moves, int[] lines) =>
        Assert.Equal(lines, Rapids("G21 G90 G17 G54\nT5 M6\n" + moves));

    // Only a probe move (NISTIR 6556 §3.5.9, G31 by common practice) stops at contact.
    [Theory]
    [InlineData("G0 X50 Y30 Z5\nG1 Z-3 F200\nX80\nG0 Z5\nM30", new[] { 8 })]
    [InlineData("G0 X-10 Y30 Z5\nG1 Z-3 F2000\nX50\nG0 Z5\nM30", new[] { 9 })]
    [InlineData("G0 X-10 Y30 Z5\nG1 Z-3 F2000\nG31 X5 F100\nG1 X-10 F2000\nG0 Z5\nM30", new int[0])]
    [InlineData("G0 X50 Y30 Z5\nG38.2 Z-2 F50\nG0 Z5\nM30", new int[0])]
    [InlineData("G0 X50 Y30 Z5\nG31 Z-2 F50\nG91 G1 Z2 F1000\nG31 Z-4 F20\nG90 G0 Z5\nM30", new int[0])]
    [InlineData("G0 X20 Y10 Z5\nG1 Z-2 F500\nX40\nG31 X80 F50\nG0 Z5\nM30", new int[0])] // in the slot of 16
    [InlineData("G0 X20 Y10 Z5\nG1 Z-2 F500\nG3 X20 Y30 J10\nG0 Z5\nM30", new[] { 9 })] // an arc out of the slot
    [InlineData("G0 X20 Y10 Z5\nG1 Z-2 F500\nG2 X24 Y10 I2 J0\nG3 I-4\nG0 Z5\nM30", new int[0])] // small arcs within it
    [InlineData("G0 X-10 Y40 Z5\nG1 Z-2 F500\nG2 Y20 J-10\nG0 Z5\nM30", new[] { 9 })] // round, into the side
    [InlineData("G0 X-10 Y40 Z5\nG1 Z-2 F500\nG3 Y20 J-10\nG0 Z5\nM30", new int[0])] // and away from it
    public void A_feed_of_a_probe_is_held_against_what_still_stands(string moves, int[] lines)
    {
        var setup = Plate.Replace("\"tools\": [", "\"tools\": [ { \"number\": 8, \"kind\": \"probe\", \"diameter\": 6 },", StringComparison.Ordinal);
        var found = Programs.Of("rapid-into-stock", "G21 G90 G17 G54\nT6 M6\nG0 X-10 Y10 Z-3\nG1 X110 F300\nG0 Z5\nT8 M6\n" + moves, setup);
        Assert.Equal(lines, found.Select(finding => finding.Line + 1));
        Assert.All(found, finding => Assert.StartsWith("T8 is a probe, and this feed, which does not stop at contact, takes it into stock that still stands, at least", finding.Message, StringComparison.Ordinal));
        Assert.All(found, finding => Assert.Equal(Severity.Warning, finding.Severity));
    }

    [Fact] // At equal rates a rapid from X-10 Y52 to X6 Y80 goes at 45 degrees first, through the corner at X0 Y60; a feed goes straight past it.
    public void A_feed_does_not_bend()
    {
        var setup = Plate.Replace("\"tools\": [", "\"tools\": [ { \"number\": 8, \"kind\": \"probe\", \"diameter\": 6 },", StringComparison.Ordinal);
        static string Move(string code) => $"G21 G90 G17 G54\nT8 M6\nG0 X-10 Y52\nG0 Z-3\n{code} X6 Y80 F500\nG0 Z5\nM30";
        Assert.Empty(Programs.Of("rapid-into-stock", Move("G1"), setup, null, "rapidPath=perAxis"));
        Assert.Single(Programs.Of("rapid-into-stock", Move("G0"), setup, null, "rapidPath=perAxis"));
    }

    // A tap with R 1 mm below the top stands in each hole by its chamfer, and goes from one to the next through solid metal.
    [Theory]
    [InlineData("R-1", 1)]
    [InlineData("R2", 0)]
    public void A_tap_that_goes_from_hole_to_hole_inside_the_stock_is_found(string level, int told)
    {
        const string setup = """
            { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] },
              "tools": [ { "number": 3, "kind": "drill", "diameter": 6.8, "pointAngle": 118 }, { "number": 4, "kind": "tap", "diameter": 8, "pitch": 1.25 } ] }
            """;
        var program = "G21 G90 G17 G54\nT3 M6\nG0 X20 Y30 Z5\nG99 G81 X20 Y30 R2 Z-18 F100\nX60\nG80 G0 Z5\nT4 M6\nG0 X20 Y30 Z5\n" + $"G99 G84 X20 Y30 {level} Z-12 F625\nX60\nG80 G0 Z5\nM30";
        Assert.Equal(told, Programs.Of("rapid-into-stock", program, setup).Count);
    }

    [Theory]
    [InlineData("G41 D9 G0 Z-3\nG1 X50 F300\nG40 G0 X-10\nG0 X60\nM30")] // where the cut ran is not known: no tool has D9
    [InlineData("M98 P2000\nG90 G54 G0 X-10 Y30 Z5\nX50\nZ-3\nM30")] // what the called program cut is not known
    [InlineData("T9 M6\nG0 Z-3\nG1 X50 F300\nG0 X60\nM30")] // nor what a tool of unknown diameter did
    public void Where_the_cuts_are_not_known_it_is_silent(string moves) => Assert.Empty(Rapids(Start + moves));

    [Fact] // R inside the stock is r-inside-stock; the rapid down to it is not reported a second time.
    public void The_way_to_an_R_inside_the_stock_is_another_finding() =>
        Assert.Empty(Rapids("G21 G90 G17 G54\nT3 M6\nG0 X20 Y30 Z5\nG99 G81 X20 Y30 R-2 Z-10 F100\nX40\nX60\nG80 G0 Z5\nM30"));

    [Fact] // A traverse at the initial level, which lies inside the stock, from the hole just drilled into full material.
    public void A_hop_at_an_initial_level_inside_the_stock_is_found() =>
        Assert.Equal([6], Rapids(Start + "G0 Z-3\nG1 X20 F300\nG98 G81 X50 R-4 Z-10 F100\nG80 G0 Z5\nM30"));

    // R is held against what stands at the hole, and put above it: the floor of a pocket along Y30, 5 mm deep from X-10 to X50, where the holes of the run all lie in it; else the stock's top.
    [Theory]
    [InlineData("X20 Y30 R-7 Z-12", "The R level Z-7 lies 2 mm inside the stock (milled down to Z-5): the tool goes there at rapid.", "R-3")]
    [InlineData("X20 Y30 R-7 Z-12\nX40", "The R level Z-7 lies 2 mm inside the stock (milled down to Z-5): the tool goes there at rapid.", "R-3")]
    [InlineData("X20 Y30 R-7 Z-12\nX80", "The R level Z-7 lies 7 mm inside the stock (top at Z0): the tool goes there at rapid.", "R2")]
    [InlineData("X80 Y30 R-7 Z-12", "The R level Z-7 lies 7 mm inside the stock (top at Z0): the tool goes there at rapid.", "R2")]
    [InlineData("X20 Y30 R-3 Z-12", null, null)]
    public void R_is_held_against_the_floor_that_was_milled(string hole, string? message, string? word)
    {
        var analysis = Programs.Analyse($"{Start}Z-5\nG1 X50 F300\nG0 Z5\nT3 M6\nG99 G81 {hole} F100\nG80 G0 Z5\nM30\n", Plate);
        var found = analysis.Findings.Where(finding => finding.Name == "r-inside-stock").ToList();
        Assert.Equal(message is null ? 0 : 1, found.Count);
        Assert.All(found, finding => Assert.Equal((message, $"Put R above the stock ({word})"), (finding.Message, Assert.Single(analysis.FixesOf(finding)).Title)));
    }

    [Fact] // What a slope, a round end or a tool of unknown size has left is not known: R is put above the stock.
    public void Where_no_floor_is_known_the_stock_counts() => Assert.All(
        new[] { "Z0\nG1 X50 Z-5 F300", "T8 M6\nZ-5\nG1 X50 Y32 F300", "T9 M6\nZ-5\nG1 X50 F300" },
        cut =>
        {
            var analysis = Programs.Analyse($"{Start}{cut}\nG0 Z5\nT3 M6\nG99 G81 X20 Y30 R-7 Z-12 F100\nG80 G0 Z5\nM30\n", Plate.Replace("\"tools\": [", "\"tools\": [ { \"number\": 8, \"kind\": \"ball-mill\", \"diameter\": 10 }, ", StringComparison.Ordinal));
            Assert.Contains("(top at Z0)", Assert.Single(analysis.Findings, finding => finding.Name == "r-inside-stock").Message, StringComparison.Ordinal);
        });

    [Theory] // Pockets 5 deep from both ends, R 2 mm above their floors: the traverse from one to the other goes through what is left between them.
    [InlineData("X95", new[] { 13 })]
    [InlineData("X95\nX10", new[] { 13 })] // back at the same R: the same cause
    [InlineData("X30", new int[0])] // to a place where R itself lies inside the stock: that is r-inside-stock
    public void A_hop_at_R_through_a_wall_between_two_pockets_is_found(string hole, int[] lines) =>
        Assert.Equal(lines, Rapids(Start + $"Z-5\nG1 X20 F300\nG0 Z5\nX110\nZ-5\nG1 X80\nG0 Z5\nT3 M6\nG99 G81 X10 R-3 Z-10 F100\n{hole}\nG80 G0 Z5\nM30"));

    [Fact] // At equal rates the bent way from X-10 Y-10 to X110 Y10 runs along Y10 from X10 on; the straight one reaches Y10 at the end only. Slot along the straight one.
    public void The_bent_path_counts_where_rapids_bend()
    {
        const string program = "G21 G90 G17 G54\nT5 M6\nG0 X-10 Y-10 Z5\nG0 Z-3\nG1 X110 Y10 F300\nG0 X-10 Y-10\nM30";
        Assert.Empty(Rapids(program));
        Assert.Equal([6], Rapids(program, "rapidPath=perAxis"));
    }

    [Fact] // Far more cutting than the bound on touched cells allows at the finest size: still exact enough for a 10 mm tool, and the edit agrees with a fresh run.
    public void A_long_program_is_coarsened_and_still_found()
    {
        var cuts = string.Concat(Enumerable.Range(0, 4000).Select(i => $"G1 X{(i % 2 == 0 ? 90 : 10)} Y{10 + i / 100} F300\n"));
        var program = "G21 G90 G17 G54\nT5 M6\nG0 X10 Y-10 Z5\nZ-3\n" + cuts + "G0 X20 Y30\nX10 Y10\nX95 Y58\nM30";
        var analysis = Programs.Analyse(program, Plate);
        var found = analysis.Findings.Where(f => f.Name == "rapid-into-stock").Select(f => f.Line + 1).ToArray();
        Assert.Equal([4007], found);
        var start = analysis.Text.OffsetOf(4006, 0);
        var edited = analysis.WithText(analysis.Text.WithChange(start, start + 3, "X80"u8));
        var fresh = ProgramAnalysis.Create(SourceText.From(edited.Text.ToString()), analysis.Setup, analysis.Machine);
        Assert.Equal<Finding>([.. fresh.Findings], [.. edited.Findings]);
    }

    // ---- holes and the stock's sides ----------------------------------------------------------------------

    static string[] Hole(string tool, string x, string y, string z, params string[] rules) =>
        [.. Programs.Analyse($"G21 G90 G17 G54\nT{tool} M6\nG0 X{x} Y{y} Z50\nG99 G81 X{x} Y{y} R2 Z{z} F100\nG80 G0 Z50\nM30", Plate)
            .Findings.Where(f => rules.Contains(f.Name)).Select(f => f.Name)];

    [Theory]
    [InlineData("3", "96", "-10", false)] // exactly at the edge
    [InlineData("3", "96.1", "-10", true)]
    [InlineData("3", "103", "-10", true)]
    [InlineData("4", "96", "-2", false)] // a spot 2 deep under 90 degrees is 4 wide: 2 mm of stock are left
    [InlineData("4", "98.5", "-2", true)]
    [InlineData("7", "98", "-10", false)] // without its point angle a drill's width is not certain
    [InlineData("7", "100.1", "-10", true)]
    [InlineData("9", "99", "-10", false)]
    [InlineData("3", "120", "1", false)] // it does not reach the stock's top
    [InlineData("5", "98", "-10", false)] // a mill plunged over the edge takes it away
    [InlineData("5", "104.9", "-10", false)]
    [InlineData("5", "105.1", "-10", true)]
    public void A_hole_is_held_against_the_sides_of_the_stock(string tool, string x, string z, bool outside) =>
        Assert.Equal(outside ? ["hole-outside-stock"] : [], Hole(tool, x, "30", z, "hole-outside-stock"));

    /// <summary>One number wrong takes the rest of a row out of the stock: the first is told, and how many are like it. One that breaks through the edge is told by itself.</summary>
    [Fact]
    public void Holes_of_one_run_outside_the_stock_are_told_at_the_first()
    {
        const string setup = """{ "stock": { "min": [0, 0, -15], "max": [100, 60, 0] }, "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118, "length": 140 } ] }""";
        const string run = "G21 G90 G17 G54\nT3 M6\nS1500 M3\nG0 X20 Y30\nG43 H3 Z40\nG99 G81 X20 Y30 R2 Z-10 F150\nX98\nY600\nX60\nX20\nG80\nG99 G81 X40 Y-30 R2 Z-10\nG91 X20 L2\nG90 G80\nM5\nM30";
        var found = Programs.Of("hole-outside-stock", run, setup);
        Assert.Equal([7, 8, 12], found.Select(finding => finding.Line + 1));
        Assert.DoesNotContain("The same goes", found[0].Message, StringComparison.Ordinal);
        Assert.EndsWith(" The same goes for 2 more holes of this run.", found[1].Message, StringComparison.Ordinal);
        Assert.EndsWith(" The same goes for 2 more holes of this run.", found[2].Message, StringComparison.Ordinal);
    }

    [Theory] // The parallel begins at Y50 and Z-15. 4 / tan(59°) = 2.4 mm of point: 1 mm below Z-15 the drill is 1 · tan(59°) = 1.66 mm in radius.
    [InlineData("3", "48.5", "-16", true)]
    [InlineData("3", "48.2", "-16", false)]
    [InlineData("3", "46.1", "-19", true)]
    [InlineData("3", "45.9", "-19", false)]
    [InlineData("3", "55", "-15", false)] // touching the parallel is none
    [InlineData("7", "49", "-19", false)]
    [InlineData("7", "51", "-19", true)]
    [InlineData("5", "46", "-15.1", true)]
    public void A_through_hole_is_held_against_the_parallels(string tool, string y, string z, bool hits) =>
        Assert.Equal(hits ? ["hits-support"] : [], Hole(tool, "50", y, z, "hits-support"));

    [Theory]
    [InlineData("Z-15", false)]
    [InlineData("Z-15.2", true)]
    public void A_cut_is_held_against_the_parallels(string level, bool hits) =>
        Assert.Equal(
            hits ? [5] : [],
            Programs.Lines("hits-support", $"G21 G90 G17 G54\nT5 M6\nG0 X-10 Y40 Z50\n{level}\nG1 X110 Y60 F300\nX-10 Y40\nG0 Z50\nM30", Plate).Take(1));

    [Theory] // The parallel begins at Y50 and Z-15. The drill is 4 mm in radius from 2.4 mm above its tip on, the ball 10 mm from 10 mm above; 4 mm up it is sqrt(10² - 6²) = 8.
    [InlineData("3", "Y46.1", "Z-20", true)]
    [InlineData("3", "Y45.9", "Z-20", false)]
    [InlineData("8", "Y40.1", "Z-30", true)]
    [InlineData("8", "Y39.9", "Z-30", false)]
    [InlineData("8", "Y43", "Z-19", true)]
    [InlineData("8", "Y41.9", "Z-19", false)]
    [InlineData("7", "Y49", "Z-20", false)] // what its point is like is not known
    public void A_pointed_or_round_tool_is_held_against_the_parallels_on_moves_too(string tool, string y, string z, bool hits)
    {
        var setup = Plate.Replace("\"tools\": [", "\"tools\": [ { \"number\": 8, \"kind\": \"ball-mill\", \"diameter\": 20 },", StringComparison.Ordinal);
        Assert.Equal(hits ? [5] : [], Programs.Lines("hits-support", $"G21 G90 G17 G54\nT{tool} M6\nG0 X-30 {y} Z50\n{z}\nG1 X130 F300\nG0 Z50\nM30", setup));
    }
}
