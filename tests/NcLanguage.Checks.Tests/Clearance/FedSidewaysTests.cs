using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>Where drills, reamers and taps are fed sideways into what stands of the stock. Expected outcomes are closed-form: where the tool goes, and what the cuts before have left.</summary>
public sealed class FedSidewaysTests
{
    const string Block = """
        { "stock": { "min": [0, 0, -30], "max": [100, 60, 0] },
          "tools": [ { "number": 1, "kind": "spot-drill", "diameter": 8, "pointAngle": 90 },
                     { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118 },
                     { "number": 4, "kind": "reamer", "diameter": 8 },
                     { "number": 6, "kind": "tap", "diameter": 8, "pitch": 1.25 },
                     { "number": 7, "kind": "end-mill", "diameter": 20, "fluteLength": 30, "length": 80 },
                     { "number": 8, "kind": "drill" },
                     { "number": 9, "diameter": 8 } ] }
        """;

    static List<Finding> Of(int tool, string moves, string setup = Block) =>
        Programs.Of("fed-sideways", $"G21 G90 G17 G54\nT{tool} M6\nS900 M3\nG0 X20 Y30 Z2\n{moves}G0 Z50\nM30\n", setup);

    [Theory]
    [InlineData(3, "G1 Z-5 F100\nX60\n", 6)]
    [InlineData(4, "G1 Z-5 F100\nX60\n", 6)]
    [InlineData(6, "G1 Z-5 F100\nX60\n", 6)]
    [InlineData(3, "G1 X60 Z-5 F100\n", 5)] // on a slope
    [InlineData(3, "G1 Z-10 F100\nX20.015 Z-10.01\nX60\n", 7)] // the first piece leads nowhere
    [InlineData(3, "G1 Z-5 F100\nG0 Z2\nX40\nG1 Z-5\nY50\nX60\n", 9)] // once
    [InlineData(7, "G1 Z-5 F100\nX60\nG0 Z2\nT3 M6\nG0 X60\nG1 Z-5\nX20\nZ-6\nX60\n", 13)] // in the slot of a mill 5 deep, then 1 mm below its floor
    public void It_is_told_at_the_first_block_that_does(int tool, string moves, int line) => Assert.Equal(line, Assert.Single(Of(tool, moves)).Line + 1);

    [Theory]
    [InlineData(7, "G1 Z-5 F100\nX60\n")] // a mill
    [InlineData(1, "G1 Z-1 F100\nX60\n")] // engraves
    [InlineData(3, "G1 Z-5 F100\nZ2\nX60\n")] // straight down and up, and aside above the stock
    [InlineData(3, "G1 Z0 F100\nX60\n")] // at its top
    [InlineData(3, "G0 X-20\nG1 Z-5 F100\nX-5\n")] // beside it, 1 mm off
    [InlineData(7, "G1 Z-5 F100\nX60\nG0 Z2\nT3 M6\nG0 X60\nG1 Z-5\nX20\n")] // where a wider mill was as deep
    [InlineData(3, "G81 Z-20 R2 F100\nX40\nG80\n")] // cycles
    [InlineData(8, "G1 Z-5 F100\nX60\n")] // nobody knows how wide it is
    [InlineData(9, "G1 Z-5 F100\nX60\n")] // or what it is
    [InlineData(3, "G91 G0 X0.1\nX0.1\nX0.1\nG90 G1 X20.3 Y30 Z-10 F100\n")] // the same place, but for rounding
    [InlineData(3, "G20 G0 X1.1 Y1.3\nG21 G1 X27.94 Y33.02 Z-10 F100\n")]
    [InlineData(3, "G0 X27.953\nG20 G1 X1.1 Z-0.4 F4\nG21\n")] // an inch rounded to thousandths
    public void It_is_not_told_where_nothing_is_met_or_known(int tool, string moves) => Assert.Empty(Of(tool, moves));

    [Fact]
    public void Without_a_stock_nothing_is_told() =>
        Assert.Empty(Of(3, "G1 Z-5 F100\nX60\n", """{ "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118 } ] }"""));

    [Fact]
    public void It_says_which_tool_and_how_deep_at_least() => Assert.Equal(
        "Tool 4, a reamer, is fed sideways into stock that still stands, at least 5 mm deep; it is not made to cut with its side. Is it the tool that is meant here?",
        Assert.Single(Of(4, "G1 Z-5 F100\nX60\n")).Message);

    // The same place in other words: what goes straight down there makes its hole, and a mill that does is told of.
    [Fact]
    public void A_place_written_again_is_the_same()
    {
        const string Again = "G91 G0 X0.1\nX0.1\nX0.1\nG90 G1 X20.3 Y30 Z-10 F100\n";
        var drawing = Block[..Block.LastIndexOf('}')] + ", \"holes\": [ { \"x\": 20.3, \"y\": 30, \"diameter\": 8, \"depth\": 7.5 } ] }";
        Assert.Empty(Programs.Of("hole-missing", $"G21 G90 G17 G54\nT3 M6\nS900 M3\nG0 X20 Y30 Z2\n{Again}G0 Z50\nM30\n", drawing));
        Assert.NotEmpty(Programs.Of("hole-missing", $"G21 G90 G17 G54\nT3 M6\nS900 M3\nG0 X20 Y30 Z2\n{Again.Replace("Y30", "Y31", StringComparison.Ordinal)}G0 Z50\nM30\n", drawing));
        var mill = Block.Replace("\"diameter\": 20,", "\"diameter\": 8, \"flutes\": 4,", StringComparison.Ordinal);
        Assert.Single(Programs.Of("plunge-with-end-mill", $"G21 G90 G17 G54\nT7 M6\nS900 M3\nG0 X20 Y30 Z2\n{Again}G0 Z50\nM30\n", mill));
    }
}
