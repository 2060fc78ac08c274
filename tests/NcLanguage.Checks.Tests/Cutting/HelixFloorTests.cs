using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cutting;

/// <summary>A helix leaves a ramp of one turn's fall where no full circle closes it (common practice; the fall is the difference of two levels).</summary>
public sealed class HelixFloorTests
{
    static List<Finding> Of(string moves, string kind = "end-mill", string holes = "") => Programs.Of(
        "helix-floor",
        $"G21 G90 G17 G54\nT5 M6\nS5000 M3\nG0 X60 Y30\nG43 H5 Z2\nG1 Z0 F300\n{moves.Replace('|', '\n')}\nG0 Z40\nM5\nM30",
        $$"""{ "stock": { "min": [0, 0, -15], "max": [100, 60, 0] }, {{holes}} "tools": [ { "number": 5, "kind": "{{kind}}", "diameter": 6 }, { "number": 6, "kind": "end-mill", "diameter": 10 } ] }""");

    [Theory]
    [InlineData("G3 I-10 Z-1 F400|I-10 Z-2", 1)]
    [InlineData("G2 I-10 Z-1 F400|I-10 Z-2", 1)]
    [InlineData("G3 I-10 Z-1 F400|I-10 Z-2|I-10", 0)]
    [InlineData("G3 I-10 Z-1 F400|X40 I-10 Z-1.5|X60 I10 Z-2|X40 I-10|X60 I10", 0)] // closed by two halves
    [InlineData("G3 I-10 Z-1 F400|I-10 Z-2|X40 I-10", 1)] // half of it closed
    [InlineData("G1 Z-2|G3 I-10 Z-1 F400", 1)] // upwards
    [InlineData("G3 I-10 Z-8 F400|I-10 Z-16|I-10 Z-24", 0)] // through the stock by more than a turn
    [InlineData("G3 I-10 Z-8 F400|I-10 Z-16", 1)]
    [InlineData("G3 I-10 Z-.02 F400|I-10 Z-.04", 0)]
    [InlineData("G2 X70 Z-2 I0 K-10 F400", 0)] // an arc of another plane: arc-plane
    [InlineData("G3 I-4 Z-1 F400|I-4 Z-2|G1 X70|Y36|X46|Y24|X70|Y30|X50", 0)] // the way into a pocket
    [InlineData("G3 I-10 Z-1 F400|I-10 Z-2|G0 Z40|T6 M6|G43 H6 Z2|G0 X60|G1 Z-2|G3 I-10", 0)] // another mill after it
    public void A_floor_is_level_where_a_full_turn_or_other_cuts_close_it(string moves, int told) => Assert.Equal(told, Of(moves).Count);

    [Theory]
    [InlineData("ball-mill", "")]
    [InlineData("slot-mill", "")]
    [InlineData("thread-mill", "")]
    [InlineData("end-mill", "\"holes\": [ { \"x\": 50, \"y\": 30, \"diameter\": 26, \"depth\": 2 } ],")] // hole-shallow
    public void Other_tools_and_drawn_holes_are_left_alone(string kind, string holes) => Assert.Empty(Of("G3 I-10 Z-1 F400|I-10 Z-2", kind, holes));

    [Fact]
    public void The_numbers_are_told() => Assert.Equal(
        "The helix of T5 at X50 Y30 goes down to Z-2.4 and has no level turn there: its floor climbs by up to 1.4 mm.", Assert.Single(Of("G3 I-10 Z-1 F400|I-10 Z-2.4")).Message);
}
