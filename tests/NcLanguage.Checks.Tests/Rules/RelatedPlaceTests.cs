namespace NcLanguage.Checks.Tests.Rules;

/// <summary>The place a finding points to is where the part of the state concerned was set: none where the block's own word sets it. The programs
/// are our own; the order of a block is NISTIR 6556 table 8.</summary>
public sealed class RelatedPlaceTests
{
    // G94 and G40 on line 1, S and M3 on line 2, Z on line 3.
    const string Start = "G21 G90 G17 G94 G40 G54\nS1000 M3\nG0 X0 Y0 Z2\n";

    static int[] Related(string rule, string blocks)
    {
        var analysis = Check.Analyse(Start + blocks);
        return [.. analysis.Related(Check.Of(rule, Start + blocks).First()).Select(place => place.Line + 1)];
    }

    [Theory]
    [InlineData("feed-missing", "G93 G1 X6", new int[0])]
    [InlineData("feed-missing", "G93 G1 X6 F2\nX7", new[] { 4 })]
    [InlineData("feed-missing", "G1 X5 F100\nG95 X6", new int[0])]
    [InlineData("feed-missing", "G1 X5 F100\nG95\nX6", new[] { 5 })]
    [InlineData("not-allowed-here", "G93 G31 X6 F2", new int[0])]
    [InlineData("not-allowed-here", "G93 G1 X6 F2\nG31 X7 F2", new[] { 4 })]
    [InlineData("not-allowed-here", "G41 D1\nG42 D1", new[] { 4 })] // what the block met, though it sets the same
    [InlineData("spindle-off", "S0\nG1 Z-1 F100", new[] { 4 })] // the speed, not the M3
    [InlineData("spindle-off", "M5 S0\nS900\nG1 Z-1 F100", new[] { 4 })]
    [InlineData("spindle-off", "M5\nM29 S500\nG1 Z-1 F100", new[] { 4 })] // M29 stops nothing
    [InlineData("spindle-off", "M5 G1 Z-1 F100", new int[0])]
    [InlineData("arc-plane", "G18\nG2 X10 Y0 I5 J0 F100", new[] { 4 })]
    [InlineData("spindle-left-on", "G0 Z50\nM30", new[] { 2 })]
    [InlineData("frame-left-on", "G68 X0 Y0 R30\nG16\nG15\nM5\nM30", new[] { 4 })] // the rotation's own line
    public void It_is_where_the_block_before_set_it(string rule, string blocks, int[] lines) => Assert.Equal(lines, Related(rule, blocks));
}
