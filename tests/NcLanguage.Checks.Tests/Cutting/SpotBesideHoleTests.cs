using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cutting;

/// <summary>A spot drilled at one place and its hole at another: that a drill finds the spot made for it is common practice.</summary>
public sealed class SpotBesideHoleTests
{
    const string Tools = """
        { "stock": { "min": [0, 0, -20], "max": [100, 60, 0] },
          "tools": [ { "number": 1, "kind": "end-mill", "diameter": 16 }, { "number": 2, "kind": "spot-drill", "diameter": 10, "pointAngle": 90 },
                     { "number": 3, "kind": "drill", "diameter": 6, "pointAngle": 118 }, { "number": 4, "kind": "drill", "diameter": 5, "pointAngle": 118 } ]
        """;

    const string Plain = Tools + "}";

    const string Drawn = Tools + """
        , "holes": [ { "x": 20, "y": 10, "diameter": 6 }, { "x": 60, "y": 10, "diameter": 6 }, { "x": 60, "y": 40, "diameter": 6 }, { "x": 20, "y": 40, "diameter": 6 } ] }
        """;

    const string Right = "X60\nY40\nX20";

    static string Drilled(int tool, string places) =>
        $"T{tool} M6\nS900 M3\nG0 X20 Y10\nG43 H{tool} Z40\nG99 G81 X20 Y10 Z{(tool == 2 ? "-3.4" : "-14")} R2 F100\n{places}\nG80 G0 Z40\nM5\n";

    static List<Finding> Of(string spots, string holes, string setup = Plain, string more = "") =>
        Programs.Of("spot-beside-hole", $"G21 G90 G17 G54\n{Drilled(2, spots)}{more}{Drilled(3, holes)}M30\n", setup);

    [Theory]
    [InlineData("X60\nY40\nX26", Right, 8, "T2 spots X26 Y40, where no hole is made, and T3 drills X20 Y40 without a spot, while 3 more of its holes have one: is one of the two places wrong?")]
    [InlineData(Right, "X60\nY40\nX26", 8, "T2 spots X20 Y40, where no hole is made, and T3 drills X26 Y40 without a spot, while 3 more of its holes have one: is one of the two places wrong?")]
    [InlineData("X60\nY4\nX20", Right, 7, "T2 spots X60 Y4, where no hole is made, and T3 drills X60 Y40 without a spot, while 2 more of its holes have one: is one of the two places wrong? The same goes for 1 more spot of T2.")]
    public void Told_once_with_both_places(string spots, string holes, int line, string message)
    {
        var finding = Assert.Single(Of(spots, holes));
        Assert.Equal((line, message), (finding.Line, finding.Message));
        Assert.Equal("The hole without a spot is drilled here.", finding.Related?.Message);
    }

    [Theory]
    [InlineData(Right, Right)]
    [InlineData("X60\nY40", Right)] // left out
    [InlineData(Right, "X60\nY40")] // too many
    [InlineData("X60\nY40\nX26 Y44", Right)] // in no line
    [InlineData("Y40", "X60\nX90")] // no more than one hole has its spot
    [InlineData("X60\nY40\nX26", "X60\nY40\nX#100")] // a hole may be anywhere
    public void Others_are_not(string spots, string holes) => Assert.Empty(Of(spots, holes));

    [Fact] // Drilled in the bottom of a pocket, beside a mark on the face.
    public void What_is_milled_over_is_not() =>
        Assert.Empty(Of("X60\nY40\nX40", Right, more: "T1 M6\nS900 M3\nG0 X20 Y40\nG43 H1 Z40\nZ2\nG1 Z-2 F100\nX22\nG0 Z40\nM5\n"));

    [Fact] // The unspotted hole is another drill's.
    public void A_drill_that_has_no_spots_at_all_is_not() => Assert.Empty(Of("X60\nY40\nX26", "X60\nY40", more: Drilled(4, "Y40").Replace("X20 Y10 Z-14", "X20 Y40 Z-14", StringComparison.Ordinal)));

    [Fact] // Each place is held against the drawing there.
    public void With_a_drawing_it_is_left_to_it() => Assert.Empty(Of("X60\nY40\nX26", Right, Drawn));
}
