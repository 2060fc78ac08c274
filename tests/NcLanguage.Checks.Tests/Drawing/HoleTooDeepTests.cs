using NcLanguage.Checks.Drawing;
using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Drawing;

/// <summary>Holes deeper than the drawing's. Plates are our own; point lengths are (D/2)·cot(α/2) (engineering reference): 8 mm at 118 degrees 2.403 mm, 6.8 mm 2.043 mm. General tolerances: ISO 2768-1,
/// class v, as a published table has them: 1 mm for 6 to 30 mm.</summary>
public sealed class HoleTooDeepTests
{
    const string Plate = "\"stock\": { \"min\": [0, 0, -20], \"max\": [100, 60, 0] }, ";

    static List<Finding> Found(string holes, string blocks, string stock = Plate, string head = "T3 M6\n") => Programs.Of(
        "hole-too-deep", $"G21 G90 G17 G54\n{head}S1500 M3\nG0 X20 Y30\nG43 H3 Z40 M8\n{blocks}\nG80\nG0 Z60 M9\nM5\nM30\n", $$"""
        { {{stock}}"obstacles": [],
          "tools": [ { "number": 2, "kind": "drill", "diameter": 7.8, "pointAngle": 118, "fluteLength": 60, "length": 120 },
                     { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118, "fluteLength": 60, "length": 120 },
                     { "number": 4, "kind": "reamer", "diameter": 8, "fluteLength": 60, "length": 120 },
                     { "number": 5, "kind": "drill", "diameter": 8, "fluteLength": 60, "length": 120 },
                     { "number": 6, "kind": "drill", "diameter": 6.8, "pointAngle": 118, "fluteLength": 60, "length": 120 },
                     { "number": 7, "kind": "tap", "diameter": 8, "pitch": 1.25, "fluteLength": 60, "length": 120 },
                     { "number": 8, "kind": "counterbore", "diameter": 14, "fluteLength": 60, "length": 120 } ],
          "holes": [ {{holes}} ] }
        """);

    static string Hole(double depth, double diameter = 8, string more = "") => FormattableString.Invariant($$"""{ "x": 20, "y": 30, "diameter": {{diameter}}, "depth": {{depth}}{{more}} }""");

    static string Drill(double bottom) => FormattableString.Invariant($"G99 G81 X20 Y30 R2 Z{bottom} F150");

    static string Told(List<Finding> findings) => string.Join(", ", findings.Select(finding => $"{finding.Severity} {finding.Line + 1}"));

    /// <summary>± mm of the class: 3 to 6, 6 to 30, 30 to 120, 120 to 400 mm … (published table).</summary>
    [Theory]
    [InlineData(4, 0.5)]
    [InlineData(6, 0.5)]
    [InlineData(6.1, 1)]
    [InlineData(30, 1)]
    [InlineData(31, 1.5)]
    [InlineData(121, 2.5)]
    [InlineData(401, 4)]
    [InlineData(1001, 6)]
    [InlineData(2001, 8)]
    public void General_tolerances_are_those_of_the_standard(double mm, double expected) => Assert.Equal(expected, GeneralTolerance.Coarsest(mm));

    [Theory]
    // 10 + 2.403 + 1 = 13.403.
    [InlineData(10, -12.41, "")]
    [InlineData(10, -13.4, "")]
    [InlineData(10, -13.41, "Warning 6")]
    [InlineData(10, -30, "Error 6")]
    // Drawn through, and so little short of it that the point comes out anyway.
    [InlineData(20, -30, "")]
    [InlineData(18, -20.5, "")]
    public void A_hole_may_be_as_much_deeper_as_any_general_tolerance_lets_it(double depth, double bottom, string expected) => Assert.Equal(expected, Told(Found(Hole(depth), Drill(bottom))));

    [Fact]
    public void What_is_too_deep_is_told_with_the_level_that_is_enough()
    {
        Assert.Equal(
            "The hole at X20 Y30 is at full diameter 12.597 mm deep, and the drawing asks for 10 mm: T3 goes 2.597 mm too deep, Z-12.403 is enough.", Assert.Single(Found(Hole(10), Drill(-15))).Message);
        Assert.Equal(
            "The hole at X20 Y30 is drilled through: T3 goes to Z-30, the stock ends at Z-20, and the drawing asks for a hole 10 mm deep: T3 has to stay in the stock.",
            Assert.Single(Found(Hole(10), Drill(-30))).Message);
    }

    [Fact]
    public void A_tool_that_was_never_called_has_no_number() => Assert.EndsWith(
        " drilled through: the tool goes to Z-30, the stock ends at Z-20, and the drawing asks for a hole 10 mm deep: the tool has to stay in the stock.", Assert.Single(Found(Hole(10), Drill(-30), head: "")).Message,
        StringComparison.Ordinal);

    [Fact]
    public void Holes_of_one_kind_are_told_once() => Assert.StartsWith(
        "The 2 holes at X20 Y30, X60 Y30 are ", Assert.Single(Found(Hole(10) + """, { "x": 60, "y": 30, "diameter": 8, "depth": 10 }""", Drill(-15) + "\nX60")).Message, StringComparison.Ordinal);

    [Fact]
    public void Without_a_stock_it_is_not_known_what_goes_through() => Assert.Empty(Found(Hole(10), Drill(-30), stock: ""));

    // The datum lies on what will be the top: 2 mm above it are faced off by another program. Where the datum is the bottom, depths count from the stock's top.
    [Theory]
    [InlineData("[0, 0, -20], \"max\": [100, 60, 2]", -12.5, "")]
    [InlineData("[0, 0, -20], \"max\": [100, 60, 2]", -15, "Warning 6")]
    [InlineData("[0, 0, 0], \"max\": [100, 60, 20]", 7.5, "")]
    [InlineData("[0, 0, 0], \"max\": [100, 60, 20]", 5, "Warning 6")]
    public void Depths_count_from_the_surface_that_may_be_left(string stock, double bottom, string expected) => Assert.Equal(
        expected, Told(Found(Hole(10), FormattableString.Invariant($"G99 G81 X20 Y30 R22 Z{bottom} F150"), $"\"stock\": {{ \"min\": {stock} }}, ")));

    [Fact]
    public void A_tool_whose_end_is_not_known_counts_only_where_it_goes_through()
    {
        Assert.Empty(Found(Hole(10), Drill(-15), head: "T5 M6\n"));
        Assert.Equal("Error 6", Told(Found(Hole(10), Drill(-30), head: "T5 M6\n")));
    }

    // The core hole of a thread is deeper on purpose. 15 + 2.043 + 3·1.25 = 20.793: it comes out of a plate of 20 mm, and not of one of 22.
    [Theory]
    [InlineData(10, -19, "")]
    [InlineData(10, -21, "Warning 6")]
    [InlineData(15, -23, "")]
    public void A_core_hole_counts_where_it_goes_through_without_need(double depth, double bottom, string expected) => Assert.Equal(expected, Told(Found(
        Hole(depth, 6.8, ", \"thread\": \"M8\""), Drill(bottom) + FormattableString.Invariant($"\nG80\nG0 Z60\nT7 M6\nS500 M3\nG0 X20 Y30\nG43 H7 Z40 M8\nG99 G84 X20 Y30 R5 Z-{depth} F625"), head: "T6 M6\n")));

    [Theory]
    [InlineData(-19, "")]
    [InlineData(-21, "Error 6")]
    public void What_is_drilled_for_a_reamer_counts_where_it_goes_through(double bottom, string expected) => Assert.Equal(expected, Told(Found(
        Hole(12), Drill(bottom) + "\nG80\nG0 Z60\nT4 M6\nS300 M3\nG0 X20 Y30\nG43 H4 Z40 M8\nG99 G85 X20 Y30 R2 Z-14 F90", head: "T2 M6\n")));

    [Fact]
    public void A_counterbore_over_a_through_hole_is_as_drawn()
    {
        var cuts = Drill(-23) + "\nG80\nG0 Z60\nT8 M6\nS300 M3\nG0 X20 Y30\nG43 H8 Z40 M8\nG99 G82 X20 Y30 R2 Z-5 P0.3 F90";
        Assert.Empty(Found(Hole(5, 14) + ", " + Hole(20), cuts));
        Assert.Empty(Found(Hole(5, 14), cuts));
    }
}
