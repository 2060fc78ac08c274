using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cycles;

/// <summary>Depths and ways of holes held against the stock. Expected outcomes are closed-form: sums of lengths, length over feed.</summary>
public sealed class DepthInStockTests
{
    const string Plate = """
        { "stock": { "min": [0, 0, -20], "max": [100, 60, 0] }, "clearance": 2,
          "workOffsets": { "G54": [0, 0, 0], "G55": [400, 0, 0], "G56": [30, 0, 0] },
          "tools": [ { "number": 3, "kind": "drill", "diameter": 6, "pointAngle": 118 } ] }
        """;

    static string Around(string blocks) => "G21 G90 G17 G54\nT3 M6\nS1000 M3\nG0 X10 Y10 Z40\n" + blocks + "\nG80 G0 Z40\nM30";

    static int[] Lines(string rule, string blocks) => Programs.Lines(rule, Around(blocks), Plate);

    [Theory] // 20 mm from R30 down to Z10, and 30 mm down to the stock, at 120 mm/min.
    [InlineData("Z10", "10 s")]
    [InlineData("Z-5", "15 s")]
    public void The_way_through_air_ends_at_the_stock_or_at_the_bottom(string bottom, string seconds) =>
        Assert.Contains(seconds, Assert.Single(Programs.Of("r-far", Around($"G98 G81 X10 Y10 {bottom} R30 F120"), Plate)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("G98 G81 X10 Y10 Z1 R2 F100\nX20\nX30", new[] { 5 })] // once for the run
    [InlineData("G98 G81 X10 Y10 Z0 R2 F100", new[] { 5 })]
    [InlineData("G98 G81 X10 Y10 Z-0.5 R2 F100", new int[0])]
    [InlineData("G98 G81 X110 Y10 Z1 R2 F100", new int[0])] // beside the stock
    [InlineData("G98 G81 X10 Y10 Z1 R2 F100\nZ-10", new int[0])] // drilled there as well
    [InlineData("G98 G81 X10 Y10 Z1 R2 F100\nX20\nX10 Z-10", new[] { 6 })]
    public void A_hole_above_the_stock_is_told(string blocks, int[] lines) => Assert.Equal(lines, Lines("hole-above-stock", blocks));

    [Theory] // Four diameters are 24 mm, more than the stock is thick: through it no hole is deeper than 20 mm.
    [InlineData("X10", new int[0])]
    [InlineData("X150", new[] { 5 })] // beside the stock it is not known what is drilled
    public void A_hole_through_the_stock_is_as_deep_as_the_stock(string x, int[] lines) =>
        Assert.Equal(lines, Lines("peck-missing", $"G98 G81 {x} Y10 Z-26 R2 F100"));

    [Theory]
    [InlineData("G55", new int[0])] // 300 mm beside the stock: another part
    [InlineData("G56", new[] { 7 })] // X100 there is X130
    public void Holes_of_another_part_are_not_held_against_this_stock(string offset, int[] lines) =>
        Assert.Equal(lines, Lines("hole-outside-stock", $"G98 G81 X10 Y10 Z-5 R2 F100\nG80 {offset}\nG81 X100 Y10 Z-5 R2"));

    [Fact] // A slipped digit under the setup's own work offset stays a mistake.
    public void A_hole_far_away_under_the_setup_s_own_offset_is_told() =>
        Assert.Equal([5], Lines("hole-outside-stock", "G98 G81 X1000 Y10 Z-5 R2 F100"));
}
