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

    const string Post = """ "obstacles": [ { "name": "post", "min": [10, 10, 0], "max": [30, 50, 30] } ] """;
    const string Height = """ "clampHeight": 30 """;

    [Theory]
    [InlineData("low-way-unseen", "G91 G28 Z0\nG90\nG0 X20 Z5\nY20", Post, new int[0])]
    [InlineData("low-way-unseen", "G91 G28 Z0\nG90\nG0 Z5", Post, new int[0])] // straight down
    [InlineData("low-way-unseen", "G0 Z100\nG0 Z31\nX20", Post, new int[0])]
    [InlineData("rapid-hits-obstacle", "G0 Z100\nX20 Y20\nZ30", Post, new int[0])] // down on it
    [InlineData("rapid-hits-obstacle", "G0 Z100\nX0 Y20\nZ5\nX40", Post, new[] { 4 })]
    [InlineData("rapid-hits-obstacle", "G0 Z100\nX0 Y20\nX40 Z5", Post, new int[0])]
    [InlineData("cut-hits-obstacle", "G0 Z100\nX0 Y20\nZ5\nG1 X40 F100", Post, new[] { 4 })]
    [InlineData("cut-hits-obstacle", "G0 Z100\nX20 Y20\nG1 Z5 F100", Post, new int[0])]
    [InlineData("retract-below-clamp", "G0 Z100\nX0 Y20\nZ5\nX40", Height, new[] { 4 })]
    [InlineData("retract-below-clamp", "G0 Z100\nX0 Y20\nX40 Z5", Height, new int[0])]
    [InlineData("clearance-small", "G0 Z100\nX0 Y20\nZ31\nX40", Height, new[] { 4 })]
    [InlineData("clearance-small", "G0 Z100\nX0 Y20\nX40 Z31", Height, new int[0])]
    [InlineData("clearance-small", "G0 Z100\nX20 Y20\nZ31", Post, new int[0])]
    [InlineData("home-through-work", "G0 Z100\nX0 Y20\nZ5\nG28 X0 Y0", Height, new[] { 4 })]
    [InlineData("home-through-work", "G0 Z100\nX0 Y20\nG28 X0 Y0 Z5", Height, new int[0])] // the point on the way
    public void A_level_is_set_by_the_block_that_brings_the_tool_there(string rule, string blocks, string json, int[] lines)
    {
        var analysis = Programs.Analyse("G21 G90 G17 G54 T2 M6\n" + blocks + "\nM30", $$"""{ "clearance": 2, "tools": [ { "number": 2, "kind": "drill", "diameter": 6.8, "length": 130 } ], {{json}} }""");
        var finding = analysis.Findings.First(found => found.Name == rule);
        Assert.Equal(lines, analysis.Related(finding).Select(place => place.Line + 1));
    }
}
