using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cutting;

/// <summary>A drill that finds spots at most of its holes is meant to find one at each (common practice).</summary>
public sealed class SpotLeftOutTests
{
    static List<Finding> Of(string spots, string holes, string more = "", string hollows = "") => Programs.Of(
        "spot-left-out",
        $"G21 G90 G17 G54\nS1000 M3\nT2 M6\nG43 H2 Z50\nG99 G81 R2 Z-4 F100 {string.Join('\n', spots.Split(' ').Select(x => $"X{x} Y30"))}\nG80\nG0 G53 Z0\nT3 M6\nG43 H3 Z50\n"
            + $"G99 G81 R2 Z-18 F100 {string.Join('\n', holes.Split(' ').Select(x => $"X{x} Y30"))}\nG80\nG0 G53 Z0\n{more.Replace('|', '\n')}\nM5\nM30",
        $$"""
        { "stock": { "min": [0, 0, -30], "max": [200, 60, 0], "hollows": [ {{hollows}} ] },
          "tools": [ { "number": 2, "kind": "spot-drill", "diameter": 10, "pointAngle": 90 }, { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118 }, { "number": 5, "kind": "end-mill", "diameter": 12 } ] }
        """);

    [Theory]
    [InlineData("20 40 60", "20 40 60 80", 1)]
    [InlineData("20 40", "20 40 60", 1)]
    [InlineData("20 40 60", "20 40 60", 0)]
    [InlineData("20", "20 40", 0)] // one spot tells nothing
    [InlineData("20 40 60", "20 40 60 80 100", 0)] // more than half as many
    [InlineData("20 40 60 70", "20 40 60 80", 0)] // spot-beside-hole
    [InlineData("20 40 60 20", "20 40 60 80", 0)] // hole-repeated
    public void Spots_are_counted(string spots, string holes, int told) => Assert.Equal(told, Of(spots, holes).Count);

    [Theory]
    [InlineData("T5 M6|G43 H5 Z50|G0 X80 Y20|G1 Z-5 F100|Y40|G0 Z50", "")] // a start hole
    [InlineData("", "{ \"center\": [80, 30], \"diameter\": 7 }")] // opened
    public void Where_something_else_is_there_it_is_not_told(string more, string hollows) => Assert.Empty(Of("20 40 60", "20 40 60 80", more, hollows));

    [Fact]
    public void The_place_is_told()
    {
        var finding = Assert.Single(Of("20 40 60 100", "20 40 60 80 100 120"));
        Assert.Equal((Severity.Note, "T3 drills at X80 Y30 and 1 more place without a spot, and its 4 other holes have one."), (finding.Severity, finding.Message));
    }
}
