using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cycles;

/// <summary>Between a shank in the middle of a bore and its wall there is half the difference of their diameters (plane geometry): 2 mm for 16 in 20.</summary>
public sealed class BoreShiftTests
{
    static List<Finding> Of(string cycle, string shank = "\"shankDiameter\": 16") => Programs.Of(
        "bore-shift", $"G21 G90 G17 G54 G94\nT6 M6\nS800 M3\nG0 X20 Y30 Z50\nG98 {cycle} F60\nX40\nG80\nM5\nM30\n",
        $$"""{ "tools": [ { "number": 6, "kind": "boring-bar", "diameter": 20, {{shank}} } ] }""");

    [Theory]
    [InlineData("G76 X20 Y30 R3 Z-20 Q3", 1)] // once for a run of holes
    [InlineData("G76 X20 Y30 R3 Z-20 Q2.01", 1)]
    [InlineData("G76 X20 Y30 R3 Z-20 Q2", 0)]
    [InlineData("G76 X20 Y30 R3 Z-20 Q0.3", 0)]
    [InlineData("G76 X20 Y30 R3 Z-20 I-2 J2", 1)] // 2.83 mm in all
    [InlineData("G76 X20 Y30 R3 Z-20 I-1 J1", 0)]
    [InlineData("G85 X20 Y30 R3 Z-20", 0)]
    public void A_shift_larger_than_the_room_is_told(string cycle, int count) => Assert.Equal(count, Of(cycle).Count);

    [Fact]
    public void Of_a_bar_whose_shank_is_not_given_nothing_is_said() => Assert.Empty(Of("G76 X20 Y30 R3 Z-20 Q3", "\"length\": 100"));

    [Fact]
    public void The_room_is_told() => Assert.Equal(
        "G76 moves the bar 3 mm off the wall at the bottom, and its shank of 16 mm has only 2 mm to the wall behind it, in a bore of 20 mm.", Assert.Single(Of("G76 X20 Y30 R3 Z-20 Q3")).Message);
}
