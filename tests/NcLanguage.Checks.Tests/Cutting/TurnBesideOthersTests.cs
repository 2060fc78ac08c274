using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cutting;

/// <summary>The turns of a bore or a thread have one centre (plane geometry); the programs are our own.</summary>
public sealed class TurnBesideOthersTests
{
    static List<Finding> Of(string blocks, string kind = "end-mill") => Programs.Of(
        "turn-beside-others", $"G21 G17 G90 G94 G40 G54\nT3 M6\nS2000 M3\nG0 X46 Y30\nG43 H3 Z1\n{blocks}\nG0 Z50\nM5\nM30",
        $$"""{ "workOffsets": { "G54": [0, 0, 0] }, "tools": [ { "number": 3, "kind": "{{kind}}", "diameter": 8, "length": 90 } ] }""");

    [Theory]
    [InlineData("G3 I6 Z-1 F300\nI-6 Z-3\nI-6 Z-5\nI-6", 6)] // the first, on the other side
    [InlineData("G3 I-60 Z-1 F300\nI-6 Z-3\nI-6 Z-5\nI-6", 6)]
    [InlineData("G3 I-6 Z-1 F300\nI-0.6 Z-3\nI-6 Z-5\nI-6", 7)]
    [InlineData("G3 I-6 Z-1 F300\nI-6 Z-3\nI6", 8)]
    [InlineData("G3 I-6 Z-1 F300\nI-6 Z-3\nI-6 J0.5 Z-5\nI-6", 8)]
    public void The_turn_that_has_another_centre_is_told(string blocks, int line) => Assert.Equal(line, Assert.Single(Of(blocks)).Line + 1);

    [Theory]
    [InlineData("G3 I-6 Z-1 F300\nI-6 Z-3\nI-6 Z-5\nI-6")]
    [InlineData("G3 I-6 Z-1 F300\nI6 Z-3")] // two: which is wrong?
    [InlineData("G3 I-6 Z-1 F300\nI6 Z-3\nI-6 Z-5\nI6 Z-7")] // an eight
    [InlineData("G3 I-6 Z-1 F300\nI-6 Z-3\nI-6 Z-5\nX34 I6\nX46 I6")] // no circle: arc-radius-mismatch
    [InlineData("G3 I-6 F300\nI-7\nI-8\nI-9")] // wider and wider
    [InlineData("G3 I-6 Z-1 F300\nI-6 Z-3\nG1 X50\nG3 I-10\nG1 X46\nG3 I-6")] // from another place
    [InlineData("G3 I-6 Z-1 F300\nI6 Z-3\nI-6 Z-5")] // told as arc-other-way
    [InlineData("#1=0\nWHILE [#1 LT 3] DO1\nG0 Z[1-#1]\nG3 I-6 Z-#1 F300\nI-6\n#1=#1+1\nEND1")]
    public void Others_are_not(string blocks) => Assert.Empty(Of(blocks));

    [Fact]
    public void Both_centres_are_named() => Assert.Equal(
        "This full turn goes about X52 Y30, and the 3 others that begin at the same place go about X40 Y30: is its I or J wrong?",
        Assert.Single(Of("G3 I6 Z-0.5 F300\nI-6 Z-2\nI-6 Z-3.5\nI-6 Z-5", "thread-mill")).Message);
}
