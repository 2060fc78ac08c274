using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cutting;

/// <summary>A bore of radius R takes in a hole of radius r whose axis stands e beside its own where R ≥ e + r (plane geometry). The programs are our own.</summary>
public sealed class BoreBesideHoleTests
{
    const string Core = """, "hollows": [ { "center": [40, 40], "diameter": 38 } ]""";

    static List<Finding> Of(string blocks, string hollows = Core, string more = "") => Programs.Of(
        "bore-beside-hole", $"G21 G90 G17 G54 G94\n{blocks}\nG80\nG0 Z50\nM5\nM30",
        $$"""
        { "stock": { "min": [0, 0, -30], "max": [150, 80, 0]{{hollows}} }{{more}},
          "tools": [ { "number": 3, "kind": "drill", "diameter": 7.8, "pointAngle": 118 }, { "number": 4, "kind": "reamer", "diameter": 8 }, { "number": 6, "kind": "boring-bar", "diameter": 42 } ] }
        """);

    static string Bored(string x, string bottom = "Z-31") => $"T6 M6\nS700 M3\nG0 X40 Y40 Z30\nG98 G85 X{x} Y40 {bottom} R2 F50";

    [Theory]
    [InlineData("40", 0)]
    [InlineData("42", 0)] // a core that stands off: 19 + 2 is the bar's radius
    [InlineData("42.1", 1)]
    [InlineData("49", 1)]
    [InlineData("58.9", 1)]
    [InlineData("59.1", 0)] // beside the hole's wall: another hole may be meant
    public void A_bar_that_leaves_a_part_of_the_wall_is_told(string x, int count) => Assert.Equal(count, Of(Bored(x)).Count);

    /// <summary>A blind hole above the bar's level is a step, and a window of another shape no hole.</summary>
    [Theory]
    [InlineData(""", "hollows": [ { "center": [40, 40], "diameter": 38, "bottom": -10 } ]""", 0)]
    [InlineData(""", "hollows": [ { "min": [21, 21], "max": [59, 59] } ]""", 0)]
    [InlineData(""", "hollows": [ { "center": [40, 40], "diameter": 38 }, { "center": [49, 40], "diameter": 38 } ]""", 0)]
    [InlineData(Core, 1)]
    public void Only_a_round_hole_as_deep_counts(string hollows, int count) => Assert.Equal(count, Of(Bored("49"), hollows).Count);

    /// <summary>Half a millimetre beside its drilled hole a reamer of 8 leaves 0.4 of the wall of 7.8.</summary>
    [Theory]
    [InlineData("40", 0)]
    [InlineData("40.05", 0)]
    [InlineData("40.5", 1)]
    public void A_reamer_is_held_against_what_was_drilled(string x, int count) => Assert.Equal(
        count, Of($"T3 M6\nS900 M3\nG0 X40 Y40 Z30\nG98 G81 X40 Y40 Z-34 R2 F90\nG80\nT4 M6\nG98 G85 X{x} Y40 Z-30 R2 F90", "").Count);

    /// <summary>What the drawing's holes tell is not told twice.</summary>
    [Fact]
    public void Where_the_drawing_lists_holes_it_is_theirs() => Assert.Empty(Of(Bored("49"), more: """, "holes": [ { "x": 40, "y": 40, "diameter": 42 } ]"""));

    [Fact]
    public void Both_places_are_told() => Assert.Equal(
        "T6 bores 42 mm about X49 Y40, and the hole of 38 mm that it goes into stands at X40 Y40, 9 mm beside it: on one side the old wall stays.", Assert.Single(Of(Bored("49"))).Message);
}
