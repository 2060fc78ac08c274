using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cycles;

/// <summary>A drill fed down without a cycle: more than four diameters at one stroke, 32 mm for a drill of 8 (the usual handbook rule for pecks, from memory).</summary>
public sealed class DeepFeedTests
{
    static List<Finding> Of(string blocks, string more = "") => Programs.Of(
        "peck-missing", $"G21 G90 G17 G54\nT3 M6\nS1500 M3\nG0 X20 Y30\nG43 H3 Z2\n{blocks}\nG0 Z50\nM5\nM30",
        $$"""
        { "stock": { "min": [0, 0, -70], "max": [100, 60, 0] },
          "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118{{more}} }, { "number": 4, "kind": "drill", "diameter": 8.5, "pointAngle": 118 }, { "number": 5, "kind": "end-mill", "diameter": 16 } ] }
        """);

    [Theory]
    [InlineData("G1 Z-33 F200", new[] { 6 })]
    [InlineData("G1 Z-32 F200", new int[0])]
    [InlineData("G1 Z-20 F200\nG0 Z2\nZ-19\nG1 Z-40", new int[0])] // by two strokes
    [InlineData("G1 Z-20 F200\nG0 Z2\nG1 Z-40", new int[0])] // fed again through what is drilled
    [InlineData("G1 Z-20 F200\nG0 Z2\nZ-19\nG1 Z-60", new[] { 9 })]
    [InlineData("T4 M6\nG0 X20 Y30 Z2\nG81 Z-30 R2 F200\nG80\nT3 M6\nG0 X20 Y30 Z2\nG1 Z-60 F200", new int[0])] // in its pilot hole
    [InlineData("G1 Z-60 F200\nT4 M6\nG0 X20 Y30 Z2\nG83 Z-60 R2 Q5 F200\nG80", new[] { 6 })] // opened up behind it
    [InlineData("G0 X-20\nG1 Z-60 F200", new int[0])] // beside the stock
    [InlineData("T5 M6\nG0 X-20 Y30 Z-30\nG1 X120 F300\nG0 Z2\nT3 M6\nG0 X20 Y30\nG1 Z-60 F200", new int[0])] // from the floor of a slot
    [InlineData("T5 M6\nG0 X-20 Y30 Z-20\nG1 X120 F300\nG0 Z2\nT3 M6\nG0 X20 Y30\nG1 Z-60 F200", new[] { 12 })]
    public void Too_deep_at_one_stroke_is_told(string blocks, int[] lines) => Assert.Equal(lines, Of(blocks).Select(finding => finding.Line + 1));

    [Fact]
    public void It_is_told_once_with_the_others() => Assert.Equal(
        "This feed takes the drill 60 mm deep into full material at once, 7.5 times its 8 mm: the chips jam. The same goes for 2 more holes.",
        Assert.Single(Of("G1 Z-60 F200\nG0 Z2\nX40\nG1 Z-60\nG0 Z2\nX60\nG1 Z-60")).Message);

    [Fact]
    public void A_drill_with_coolant_through_it_needs_no_pecks() => Assert.Empty(Of("G1 Z-60 F200", ", \"throughCoolant\": true"));
}
