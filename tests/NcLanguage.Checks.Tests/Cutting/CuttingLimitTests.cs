using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cutting;

/// <summary>Limits of the machine and of the tool. Expected outcomes are closed-form.</summary>
public sealed class CuttingLimitTests
{
    const string Mill = """{ "name": "bench mill", "maxFeed": 4000, "spindle": { "min": 60, "max": 8000 } }""";

    [Theory]
    [InlineData("S8000 M3", false)]
    [InlineData("S8001 M3", true)]
    [InlineData("S60 M3", false)]
    [InlineData("S59 M3", true)]
    [InlineData("S0 M5", false)]
    public void Speeds_are_held_against_the_spindle(string words, bool over)
    {
        Assert.Equal(over, Programs.Lines("speed-over-machine", $"G21 G90\n{words}\nM30", null, Mill).Length == 1);
        Assert.Empty(Programs.Lines("speed-over-machine", $"G21 G90\n{words}\nM30"));
    }

    [Theory] // 1 in is 25.4 mm: 157.48 in/min is 4000 mm/min. 2 mm a turn at 2000 1/min is 4000 mm/min.
    [InlineData("G21 G94 F4000", false)]
    [InlineData("G21 G94 F4001", true)]
    [InlineData("G20\nG94 F157", false)]
    [InlineData("G20\nG94 F158", true)]
    [InlineData("G21 S2000\nG95 F2", false)]
    [InlineData("G21 S2001\nG95 F2", true)]
    [InlineData("G21 G95 F2", false)]
    [InlineData("G21 G93 F9000", false)]
    public void Feeds_are_held_against_the_machine(string words, bool over) =>
        Assert.Equal(over, Programs.Lines("feed-over-machine", $"{words}\nM30", null, Mill).Length == 1);

    const string Stock = """
        { "stock": { "min": [0, 0, -40], "max": [100, 60, 0] },
          "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "fluteLength": 20 }, { "number": 5, "kind": "end-mill", "diameter": 10, "fluteLength": 20 } ] }
        """;
    const string NoStock = """{ "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "fluteLength": 20 }, { "number": 5, "diameter": 10, "fluteLength": 20 } ] }""";

    static int[] Deep(string moves, string setup = Stock) => Programs.Lines("deeper-than-flutes", "G21 G90 G17 G54\nT3 M6\nG0 X20 Y30 Z5\n" + moves + "\nM30", setup);

    [Theory]
    [InlineData("G99 G81 X20 Y30 R2 Z-20 F100", new int[0])] // counted from the stock's top, not from R
    [InlineData("G99 G81 X20 Y30 R2 Z-20.1 F100", new[] { 4 })]
    [InlineData("G99 G81 X20 Y30 R2 Z-21 F100\nX40\nX60\nZ-22", new[] { 4, 7 })] // one cause, one finding
    [InlineData("G99 G81 X20 Y30 R-5 Z-24 F100", new int[0])] // in a pocket 5 deep
    [InlineData("G1 Z-21 F100", new[] { 4 })]
    [InlineData("T9 M6\nG99 G81 X20 Y30 R2 Z-30 F100", new int[0])]
    public void A_hole_is_counted_from_the_top_of_the_stock_or_from_R_where_that_is_lower(string moves, int[] lines) => Assert.Equal(lines, Deep(moves));

    /// <summary>Passes to one level that is too deep for the tool are one slip; another level, and another tool, is another.</summary>
    [Theory]
    [InlineData("G1 X110 F100|G0 Z5|X-10 Y40|Z-21|G1 X110", "6: more block of this tool, in line 10.")]
    [InlineData("G1 X110 F100|G0 Z5|X-10 Y40|Z-21|G1 X110|G0 Z5|X-10 Y50|Z-21|G1 X110", "6: more blocks of this tool, the last in line 14.")]
    [InlineData("G1 X110 F100|G0 Z5|X-10 Y40|Z-22|G1 X110", "6: 10:")]
    [InlineData("G1 X110 F100|G0 Z5|T6 M6|X-10 Y40|Z-21|G1 X110", "6: 11:")]
    public void Passes_to_one_level_are_one_finding(string moves, string told)
    {
        var setup = Stock.Replace("{ \"number\": 5", "{ \"number\": 6, \"kind\": \"end-mill\", \"diameter\": 12, \"fluteLength\": 20 }, { \"number\": 5", StringComparison.Ordinal);
        var found = Programs.Of("deeper-than-flutes", $"G21 G90 G17 G54\nT5 M6\nG0 X-10 Y30 Z5\nM3 S900\nZ-21\n{moves.Replace('|', '\n')}\nM30", setup);
        Assert.Equal(told, string.Join(' ', found.Select(finding => $"{finding.Line + 1}:{(finding.Message.IndexOf(" more block", StringComparison.Ordinal) is > 0 and var at ? finding.Message[at..] : "")}")));
    }

    // About a centre K above Z0 and 30 beside the start the arc comes down to K − sqrt(30² + K²): −16.06 for 20, −25.41 for 5 (geometry of the circle).
    [Theory]
    [InlineData("G2 X80 Z0 I30 K20", "")]
    [InlineData("G2 X80 Z0 I30 K5", "The cut goes 25.414 mm deep, counted from the top of the stock at Z0; the flutes of tool 5 are 20 mm long.")]
    [InlineData("G3 X80 Z0 I30 K5", "")] // over the top
    public void An_arc_that_dips_is_as_deep_as_its_lowest_place(string arc, string message) => Assert.Equal(
        message, string.Concat(Programs.Of("deeper-than-flutes", $"G21 G90 G17 G54\nT5 M6\nG0 X20 Y30 Z5\nG1 Z0 F100\nG18 {arc}\nG17\nM30", Stock).Select(finding => finding.Message)));

    // Flutes of 75, but the holder begins at 130 - 60 = 70.
    const string ShortOut = """
        { "stock": { "min": [0, 0, -100], "max": [100, 60, 0] },
          "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "fluteLength": 75, "length": 130, "holderDiameter": 40, "holderGauge": 60 } ] }
        """;

    [Theory]
    [InlineData("G99 G81 X20 Y30 R2 Z-70 F100", "")]
    [InlineData("G99 G81 X20 Y30 R2 Z-73 F100", "The hole goes 73 mm deep, counted from the top of the stock at Z0; the holder of tool 3 begins 70 mm above its tip.")]
    [InlineData("G1 Z-76 F100", "The cut goes 76 mm deep, counted from the top of the stock at Z0; the holder of tool 3 begins 70 mm above its tip.")]
    public void Where_the_holder_begins_below_the_end_of_the_flutes_it_is_what_counts(string moves, string message)
    {
        var program = "G21 G90 G17 G54\nT3 M6\nG0 X20 Y30 Z5\n" + moves + "\nM30";
        Assert.Equal(message, string.Concat(Programs.Of("deeper-than-flutes", program, ShortOut).Select(finding => finding.Message)));
        // One cause, one finding.
        Assert.Empty(Programs.Of("holder-meets-stock", program, ShortOut));
    }

    // Cuts of 8, behind them a neck of 7 clear of the wall as far as 40; the same tool without its neck, and with one in a holder that begins at 25.
    const string Necked = """
        { "stock": { "min": [0, 0, -40], "max": [100, 60, 0] },
          "tools": [ { "number": 3, "kind": "end-mill", "diameter": 8, "fluteLength": 8, "shankDiameter": 7 },
                     { "number": 4, "kind": "end-mill", "diameter": 8, "fluteLength": 8 },
                     { "number": 5, "kind": "end-mill", "diameter": 8, "fluteLength": 8, "shankDiameter": 7, "length": 65, "holderDiameter": 40, "holderGauge": 40 },
                     { "number": 6, "kind": "drill", "diameter": 8, "fluteLength": 8, "shankDiameter": 7 },
                     { "number": 7, "kind": "slot-mill", "diameter": 20, "fluteLength": 6, "shankDiameter": 7 },
                     { "number": 8, "kind": "boring-bar", "diameter": 29, "fluteLength": 6, "shankDiameter": 22 },
                     { "number": 9, "kind": "reamer", "diameter": 8, "fluteLength": 8, "shankDiameter": 7, "length": 65, "holderDiameter": 40, "holderGauge": 40 },
                     { "number": 10, "kind": "tap", "diameter": 8, "pitch": 1.25, "fluteLength": 8, "shankDiameter": 6 },
                     { "number": 11, "kind": "tap", "diameter": 8, "pitch": 1.25, "fluteLength": 8 } ] }
        """;

    const string SlotInSteps = "G0 X-10\nG1 Z-7 F100\nX110\nZ-14\nX-10\nZ-21\nX110\nZ-28\nX-10";

    // Common practice: a neck lets a mill go down along a wall, step by step, each as deep as its flutes are long at most.
    [Theory]
    [InlineData(3, SlotInSteps, new int[0])]
    [InlineData(4, SlotInSteps, new[] { 8, 10, 12 })]
    [InlineData(5, SlotInSteps, new[] { 12 })] // 28 deep is more than the holder's 25
    [InlineData(3, "G0 X-10\nG1 Z-7 F100\nX110\nZ-16\nX-10", new[] { 8 })] // 9 at once
    [InlineData(3, "G0 X-10\nG1 Z-9 F100\nX110\nG0 Z5\nY50\nG1 Z-9\nX-10", new[] { 6 })] // once
    [InlineData(3, "G0 X-10\nG1 Z-8 F100\nX110", new int[0])]
    [InlineData(3, "G1 Z-9 F100", new[] { 4 })] // straight down
    [InlineData(3, "G1 Z-7 F100\nG3 X20 Y30 I15 J0\nG1 Z-16\nG3 X20 Y30 I15 J0", new[] { 6 })]
    [InlineData(3, "G1 Z-7 F100\nG3 X20 Y30 I15 J0\nG0 Z5\nX50 Y30\nG0 Z0\nG2 X50 Y30 Z-16 I-15 J0 F100", new[] { 9 })] // a helix through what the first circle left
    [InlineData(6, "G1 Z-9 F100", new[] { 4 })] // a drill's chips come out of its flutes, whatever its shank is like
    [InlineData(6, "G99 G81 X20 Y30 R2 Z-9 F100", new[] { 4 })]
    [InlineData(7, "T3 M6\nG0 X-10\nG1 Z-7 F100\nX110\nZ-14\nX-10\nG0 Z50\nT7 M6\nX-20\nG0 Z-14\nG1 X120", new int[0])] // undercuts the slot
    [InlineData(8, "G99 G85 X20 Y30 R2 Z-40 F100", new int[0])]
    [InlineData(9, "G99 G85 X20 Y30 R2 Z-20 F100", new int[0])]
    [InlineData(9, "G99 G85 X20 Y30 R2 Z-26 F100", new[] { 4 })] // its holder begins at 25
    [InlineData(10, "G99 G84 X20 Y30 R2 Z-20 F100", new int[0])]
    [InlineData(11, "G99 G84 X20 Y30 R2 Z-20 F100", new[] { 4 })]
    public void Of_a_tool_with_a_neck_what_it_takes_at_once_counts_and_where_its_holder_begins(int tool, string moves, int[] lines) =>
        Assert.Equal(lines, Programs.Lines("deeper-than-flutes", $"G21 G90 G17 G54\nT{tool} M6\nG0 X20 Y30 Z5\n{moves}\nG0 Z50\nM30", Necked));

    [Fact]
    public void It_says_how_much_stands_at_least() => Assert.Equal(
        "Tool 3 cuts into stock that still stands, at least 9 mm deep; its flutes are 8 mm long.",
        Assert.Single(Programs.Of("deeper-than-flutes", "G21 G90 G17 G54\nT3 M6\nG0 X20 Y30 Z5\nG1 Z-9 F100\nG0 Z50\nM30", Necked)).Message);

    [Theory] // Without a stock what is known is where the cycle's feed begins.
    [InlineData("G99 G81 X20 Y30 R2 Z-18 F100", new int[0])]
    [InlineData("G99 G81 X20 Y30 R2 Z-19 F100", new[] { 4 })]
    [InlineData("G1 Z-50 F100", new int[0])] // where in the air the feed meets the work is not known
    [InlineData("G0 Z50\nG1 Z5 F500\nG1 Z-1 F100", new int[0])]
    [InlineData("G1 F500\nG53 G1 Z-50", new int[0])]
    [InlineData("G1 X0 Z-50 F100", new int[0])]
    public void Without_a_stock_a_hole_is_counted_from_where_its_feed_begins(string moves, int[] lines) => Assert.Equal(lines, Deep(moves, NoStock));

    [Theory]
    [InlineData("G0 X-10 Y30\nZ-21\nG1 X50 F300\nX90\nY20", new[] { 6 })] // a side cut too deep
    [InlineData("G0 X-10 Y30\nZ-19\nG1 X110 F300", new int[0])]
    [InlineData("G0 X-10 Y-6\nZ-30\nG1 X110 F300", new int[0])] // past the stock, 1 mm beside it
    [InlineData("G0 X-10 Y-4\nZ-30\nG1 X110 F300", new[] { 6 })] // along its side
    public void A_cut_is_counted_where_it_is_within_reach_of_the_stock(string moves, int[] lines) => Assert.Equal(lines, Deep("T5 M6\n" + moves).Select(line => line - 1));
}
