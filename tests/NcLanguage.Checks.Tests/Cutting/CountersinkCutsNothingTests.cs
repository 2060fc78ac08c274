using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cutting;

/// <summary>A cone of 90 degrees is as wide as twice its depth (2·depth·tan 45°); it breaks the edge of a hole where it is wider than it.</summary>
public sealed class CountersinkCutsNothingTests
{
    static List<Finding> Of(string works, string hollows = "") => Programs.Of(
        "countersink-cuts-nothing",
        "G21 G90 G17 G54\nS1000 M3\n" + string.Concat(works.Split('|').Select(work => $"T{work[0]} M6\nG43 H{work[0]} Z50\nG99 G82 X20 Y30 R2 {work[2..]} P0.2 F100\nG80\nG0 G53 Z0\n")) + "M5\nM30",
        $$"""
        { "stock": { "min": [0, 0, -30], "max": [100, 60, 0], "hollows": [ {{hollows}} ] },
          "tools": [ { "number": 3, "kind": "drill", "diameter": 9, "pointAngle": 118 }, { "number": 4, "kind": "countersink", "diameter": 16, "pointAngle": 90 },
                     { "number": 5, "kind": "counterbore", "diameter": 15 }, { "number": 6, "kind": "countersink", "diameter": 12, "pointAngle": 90 },
                     { "number": 7, "kind": "spot-drill", "diameter": 8, "pointAngle": 90 }, { "number": 8, "kind": "chamfer-mill", "diameter": 16, "pointAngle": 90 } ] }
        """);

    [Theory]
    [InlineData("3 Z-20|4 Z-4.5", 1)] // just as wide as the hole
    [InlineData("3 Z-20|4 Z-4.6", 0)]
    [InlineData("3 Z-20|8 Z-4", 1)]
    [InlineData("3 Z-20|7 Z-6", 1)] // narrower than the hole, however deep
    [InlineData("7 Z-3|3 Z-20", 0)] // before it
    [InlineData("4 Z-4|3 Z-20", 0)]
    [InlineData("3 Z-20|5 Z-8|4 Z-7.5", 1)] // the mouth of the counterbore
    [InlineData("3 Z-20|5 Z-8|4 Z-7.8", 0)]
    [InlineData("3 Z-20|5 Z-8|6 Z-13", 0)] // the edge of the hole in its floor: 10 mm wide there
    [InlineData("3 Z-20|5 Z-8|6 Z-12", 1)] // 8 mm wide there
    [InlineData("5 Z-8|6 Z-9", 0)] // into the floor
    [InlineData("3 Z-4|4 Z-4.2", 0)] // deeper than the drill's corners
    [InlineData("4 Z-4", 0)] // no hole there
    [InlineData("3 Z-20|4 Z1", 0)] // above the stock: hole-above-stock
    public void A_cone_has_to_be_wider_than_the_hole(string works, int told) => Assert.Equal(told, Of(works).Count);

    [Theory]
    [InlineData("{ \"center\": [20, 30], \"diameter\": 9 }", 1)]
    [InlineData("{ \"center\": [20, 30], \"diameter\": 7 }", 0)]
    [InlineData("{ \"center\": [20, 30], \"diameter\": 9 }, { \"min\": [10, 20], \"max\": [30, 40], \"bottom\": -1 }", 0)] // its surface is lower
    public void A_bore_of_the_stock_counts_as_a_hole(string hollows, int told) => Assert.Equal(told, Of("4 Z-4", hollows).Count);

    [Fact]
    public void The_numbers_are_told() => Assert.Equal(
        "T4 at X20 Y30 goes down to Z-4, where its cone is 8 mm wide at the top, and the hole there is 9 mm wide: it takes nothing away.", Assert.Single(Of("3 Z-20|4 Z-4")).Message);
}
