using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cycles;

/// <summary>A pattern that the same tool drills again in a later run of holes. What is rightly drilled twice: common practice. The programs are our own.</summary>
public sealed class RunRepeatsTests
{
    const string Setup = """
        { "workOffsets": { "G54": [-500, -250, -420], "G55": [-300, -250, -420] }, "stock": { "min": [0, 0, -30], "max": [120, 80, 0] },
          "tools": [ { "number": 1, "kind": "spot-drill", "diameter": 10, "pointAngle": 90, "length": 100 }, { "number": 2, "kind": "drill", "diameter": 6.8, "pointAngle": 118, "fluteLength": 60, "length": 130 },
                     { "number": 3, "kind": "tap", "diameter": 8, "pitch": 1.25, "length": 120 }, { "number": 4, "kind": "boring-bar", "diameter": 20, "length": 120 } ] }
        """;

    const string Start = "G21 G90 G17 G54 G40 G49 G80 G94\nT2 M6\nS1200 M3\nG0 X10 Y10\nG43 H2 Z25 M8\n";

    const string Pattern = "G99 G83 X10 Y10 Z-20 R2 Q4 F150\nX30\nX50\nG80 G0 Z25\n";

    const string End = "M9\nM5\nM30\n";

    static List<Finding> Of(string blocks) => Programs.Of("hole-repeated", Start + blocks + End, Setup);

    [Fact]
    public void A_copied_pattern_is_told_once_with_its_places()
    {
        var found = Assert.Single(Of(Pattern + "S900 M3\nG0 X10 Y10\n" + Pattern));
        Assert.Equal((11, 5), (found.Line, found.Related!.Line));
        Assert.Equal("G83 drills X10 Y10 and 2 more places to Z-20 a second time, after T2 has been there in an earlier run, as deep or deeper: another tool or place may be meant.", found.Message);
    }

    [Theory]
    // No deeper counts too, and so does a tool that is changed to itself: the T of a copied group was forgotten.
    [InlineData(Pattern + "G99 G83 X30 Y10 Z-15 R2 Q4 F150\nG80\n", new[] { 10 })]
    [InlineData(Pattern + "T2 M6\nS1200 M3\nG43 H2 Z25\n" + Pattern, new[] { 13 })]
    [InlineData("G99 G84 X10 Y10 Z-15 R5 F1500\nG80\nG99 G84 X10 Y10 Z-15 R5 F1500\nG80\n", new[] { 8 })]
    // A group for another part whose work offset was forgotten.
    [InlineData(Pattern + "G54 G0 X10 Y10\n" + Pattern, new[] { 11 })]
    [InlineData(Pattern + "G55 G0 X10 Y10\n" + Pattern, new int[0])]
    [InlineData(Pattern + "G52 X0 Y30\n" + Pattern + "G52 X0 Y0\n", new int[0])]
    // Another place, deeper, by another cycle, or at another level of the same axis.
    [InlineData(Pattern + "G99 G83 X10 Y40 Z-20 R2 Q4 F150\nX30\nG80\n", new int[0])]
    [InlineData(Pattern + "G99 G83 X10 Y10 Z-28 R-18 Q4 F150\nX30\nG80\n", new int[0])]
    [InlineData(Pattern + "G99 G82 X10 Y10 Z-20 R2 P0.2 F150\nG80\n", new int[0])]
    [InlineData("G99 G83 X10 Y10 Z-28 R-15 Q4 F150\nG80\nG99 G83 X10 Y10 Z-5 R2 Q4 F150\nG80\n", new int[0])]
    // Spotted, drilled, tapped; and drilled once more behind the tap.
    [InlineData("G80 G0 Z25\nT1 M6\nS900 M3\nG43 H1 Z25\n" + Pattern + "T2 M6\nS900 M3\nG43 H2 Z25\n" + Pattern + "T3 M6\nS200 M3\nG43 H3 Z25\nG99 G84 X10 Y10 Z-15 R5 F250\nG80 G0 Z25\nT2 M6\nS900 M3\nG43 H2 Z25\n" + Pattern, new int[0])]
    // A bar that was set to size at a stop, or takes a second cut without one; the next part; a group that runs on demand.
    [InlineData("G99 G85 X10 Y10 Z-15 R2 F80\nG80\nG99 G85 X10 Y10 Z-15 R2 F80\nG80\n", new int[0])]
    [InlineData(Pattern + "M0\nS1200 M3\n" + Pattern, new int[0])]
    [InlineData(Pattern + "M01\nS1200 M3\n" + Pattern, new int[0])]
    [InlineData(Pattern + "/G99 G83 X10 Y10 Z-20 R2 Q4 F150\n/X30\nG80\n", new int[0])]
    public void Runs_are_told_that_drill_the_same_again(string blocks, int[] lines) => Assert.Equal(lines, Of(blocks).Select(finding => finding.Line + 1));

    [Fact]
    public void What_another_tool_does_elsewhere_in_between_leaves_it_open() =>
        Assert.Empty(Of(Pattern + "T1 M6\nS900 M3\nG43 H1 Z25\nG99 G82 X90 Y60 Z-3 R2 P0.2 F100\nG80 G0 Z25\nT2 M6\nS900 M3\nG43 H2 Z25\n" + Pattern));

    [Fact]
    public void A_program_that_is_called_twice_without_another_offset_is_told()
    {
        var found = Assert.Single(Programs.Of("hole-repeated", "O1\n" + Start + "M98 P2\nM98 P2\n" + End + "O2\n" + Pattern + "M99\n", Setup));
        Assert.Equal((12, null), (found.Line, found.Related));
        Assert.Empty(Programs.Of("hole-repeated", "O1\n" + Start + "M98 P2\nG55\nM98 P2\n" + End + "O2\n" + Pattern + "M99\n", Setup));
    }

    /// <summary>A loop that comes to one place again is no repeat by a word of the block.</summary>
    [Fact]
    public void A_loop_that_stays_in_place_says_so()
    {
        var found = Assert.Single(Of("G99 G83 X10 Y10 Z-20 R2 Q4 F150\n#1=0\nWHILE [#1 LT 3] DO1\nX30\n#1=#1+1\nEND1\nG80\n"));
        Assert.StartsWith("G83 drills X30 Y10 to Z-20 a second time.", found.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_an_endless_loop_drills_again_comes_of_the_loop() =>
        Assert.Empty(Of("G99 G83 X10 Y10 Z-20 R2 Q4 F150\n#1=0\nWHILE [#1 LT 3] DO1\nX[30+#1*10]\nEND1\nG80\n"));
}
