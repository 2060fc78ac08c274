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
