using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>Low rapids while it is not known where the tool stands in X and Y. What is high enough follows from the setups here by hand; X and Y first, then Z, is common practice.</summary>
public sealed class LowWayUnseenTests
{
    const string Clamp = """ "clearance": 2, "obstacles": [ { "name": "clamp A", "min": [40, -20, 0], "max": [60, 12, 25] } ] """;
    const string Block = """ "stock": { "min": [0, 0, -15], "max": [100, 60, 0] } """;
    const string Height = """ "clearance": 2, "clampHeight": 30 """;

    static int[] Lines(string blocks, params string[] setup) => Programs.Lines("low-way-unseen", "G21 G90 G17 G54\n" + blocks + "\nM30", "{" + string.Join(",", setup) + "}");

    [Theory]
    [InlineData("G0 Z5\nX10 Y10\nX20", new[] { 2, 3 })] // down, and then across
    [InlineData("G0 X10 Y10\nZ5\nX20", new int[0])]
    [InlineData("G0 X10 Y10 Z26", new[] { 2 })] // 1 mm above the clamp, and 2 are asked for
    [InlineData("G0 X10 Y10 Z27", new int[0])]
    [InlineData("G0 Z50\nX10 Z20", new[] { 3 })]
    [InlineData("G0 X10\nZ20\nX20\nX30\nY10\nX20", new[] { 3, 4 })] // Y is not known yet
    [InlineData("G0 Z5\nZ20\nX10 Y10", new[] { 2, 4 })]
    [InlineData("G0 Z5\nZ100\nX10 Y10\nZ5\nX80", new[] { 2 })]
    [InlineData("G0 Z50\nG99 G81 X10 Y10 R2 Z-5 F100\nX20", new int[0])]
    [InlineData("G1 Z5 F100", new int[0])] // a feed
    [InlineData("G53 G0 Z-300", new int[0])]
    public void What_goes_low_from_a_place_not_known_is_told_once(string blocks, int[] lines) => Assert.Equal(lines, Lines(blocks, Clamp, Block));

    [Fact]
    public void It_says_what_stands_there_and_how_high()
    {
        var finding = Assert.Single(Programs.Of("low-way-unseen", "G21 G90 G17 G54\nG0 X10 Y10 Z5\nM30", "{" + Clamp + "}"));
        Assert.StartsWith("Where this rapid comes from is not known, and it goes at Z5, 20 mm below the top of clamp A at Z25: its way is not checked", finding.Message, StringComparison.Ordinal);
        Assert.Equal(Severity.Warning, finding.Severity);
    }

    [Theory]
    [InlineData("G0 Z5", Severity.Note)] // over where the setter has put it by hand
    [InlineData("G0 X10 Y10 Z5", Severity.Warning)]
    public void Across_it_is_a_warning(string block, Severity severity) =>
        Assert.Equal(severity, Assert.Single(Programs.Of("low-way-unseen", $"G21 G90 G17 G54\n{block}\nM30", "{" + Clamp + "}")).Severity);

    [Theory]
    [InlineData("G0 X10 Y10 Z-1", new[] { 2 })]
    [InlineData("G0 X10 Y10 Z0", new int[0])]
    public void Of_the_stock_the_top_counts(string blocks, int[] lines) => Assert.Equal(lines, Lines(blocks, Block, "\"obstacles\": []"));

    [Theory]
    [InlineData("G0 X10 Y10 Z31", new[] { 2 })]
    [InlineData("G0 X10 Y10 Z32", new int[0])]
    public void Where_no_obstacle_is_listed_the_clamp_height_counts(string blocks, int[] lines) => Assert.Equal(lines, Lines(blocks, Block, Height));

    [Theory]
    [InlineData("G0 Z25\nX10 Y10", new[] { 2 }, new[] { 3 }, new int[0])] // the way down alone is not told by the height
    [InlineData("G0 Z50\nX10 Y10 Z31", new int[0], new int[0], new[] { 3 })]
    [InlineData("G0 X10 Y10 Z31", new[] { 2 }, new int[0], new int[0])] // where it comes from in Z is not known either
    public void A_way_across_that_the_clamp_height_tells_is_told_once(string blocks, int[] unseen, int[] below, int[] close)
    {
        const string setup = "{" + Height + "}";
        var program = "G21 G90 G17 G54\n" + blocks + "\nM30";
        Assert.Equal(unseen, Programs.Lines("low-way-unseen", program, setup));
        Assert.Equal(below, Programs.Lines("retract-below-clamp", program, setup));
        Assert.Equal(close, Programs.Lines("clearance-small", program, setup));
    }

    [Fact]
    public void Of_the_rapids_behind_a_way_down_the_clamp_height_is_asked() =>
        Assert.EndsWith("its way is not checked. Move in X and Y first, high up, then in Z.",
            Assert.Single(Programs.Of("low-way-unseen", "G21 G90 G17 G54\nG0 Z25\nM30", "{" + Height + "}")).Message, StringComparison.Ordinal);

    [Fact]
    public void Under_an_offset_that_is_not_known_that_is_told_instead() => Assert.Empty(Lines("G55\nG0 X10 Y10 Z5", Clamp, Block));

    [Fact]
    public void A_part_that_is_called_comes_from_wherever_its_caller_was() =>
        Assert.Empty(Lines("G0 X10 Y10 Z50\nM98 P7\nM30\nO7\nG0 X20 Z5\nM99", Clamp, Block));
}
