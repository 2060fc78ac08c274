using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cycles;

/// <summary>A bar of 46 whose edge is to pass through a bore of 32 stands at least 7 mm aside (half the difference, plane geometry). That the bar goes down beside the axis: NISTIR 6556 §3.5.16.8.</summary>
public sealed class BackBoreShiftTests
{
    static List<Finding> Of(string cycle, string bored = "", string hollow = "\"hollows\": [ { \"center\": [40, 30], \"diameter\": 32 } ]", string diameter = "\"diameter\": 46") => Programs.Of(
        "back-bore-shift", $"G21 G90 G17 G54 G94\n{bored}T6 M6\nS300 M3\nG0 X40 Y30 Z30\nG98 {cycle} F30\nG80\nM5\nM30\n",
        $$"""
        { "stock": { "min": [0, 0, -30], "max": [80, 60, 0], {{hollow}} },
          "tools": [ { "number": 5, "kind": "boring-bar", "diameter": 32 }, { "number": 6, "kind": "boring-bar", {{diameter}} } ] }
        """);

    [Theory]
    [InlineData("G87 X40 Y30 Z-36 R5 K-28 Q6.9", 1)]
    [InlineData("G87 X40 Y30 Z-36 R5 K-28 Q7", 0)]
    [InlineData("G87 X40 Y30 Z-36 R5 K-28 I-5 J-5", 0)] // 7.07 mm in all
    [InlineData("G87 X40 Y30 Z-36 R5 K-28 I-5", 1)]
    [InlineData("G87 X60 Y30 Z-36 R5 K-28 Q3", 0)] // no bore is known there
    [InlineData("G76 X40 Y30 Z-31 R5 Q3", 0)]
    public void A_shift_that_leaves_the_edge_over_the_wall_is_told(string cycle, int count) => Assert.Equal(count, Of(cycle).Count);

    /// <summary>What the program bores counts where it reaches down to the level that is bored up to.</summary>
    [Theory]
    [InlineData("-31", 1)]
    [InlineData("-20", 0)]
    public void A_bore_of_the_program_counts_as_deep_as_it_goes(string bottom, int count) => Assert.Equal(
        count, Of("G87 X40 Y30 Z-36 R5 K-28 Q3", $"T5 M6\nS800 M3\nG0 X40 Y30 Z30\nG98 G76 X40 Y30 Z{bottom} R2 Q0.3 F60\nG80\n", "\"hollows\": []").Count);

    [Fact]
    public void Of_a_bar_without_a_diameter_nothing_is_said() => Assert.Empty(Of("G87 X40 Y30 Z-36 R5 K-28 Q3", diameter: "\"length\": 150"));

    [Fact]
    public void The_shift_that_is_wanted_is_told() => Assert.Equal(
        "G87 moves the bar 3 mm aside before it goes down, and its 46 mm want 7 mm to pass through the bore of 32 mm at X40 Y30.", Assert.Single(Of("G87 X40 Y30 Z-36 R5 K-28 Q3")).Message);

    /// <summary>One Q for two bores of one width is one slip; where it is too small for another width, or is given again, that is told as well.</summary>
    [Theory]
    [InlineData("32", "X10", 1)]
    [InlineData("34", "X10", 2)]
    [InlineData("32", "X10 Q3", 2)]
    [InlineData("32", "G91 X-15 Q3 L2", 2)] // twice in that block
    public void One_shift_of_a_run_is_told_once(string other, string next, int count) => Assert.Equal(
        count, Of($"G87 X40 Y30 Z-36 R5 K-28 Q3 F30\n{next}", hollow: "\"hollows\": [ { \"center\": [40, 30], \"diameter\": 32 }, { \"center\": [10, 30], \"diameter\": " + other + " } ]").Count);
}
