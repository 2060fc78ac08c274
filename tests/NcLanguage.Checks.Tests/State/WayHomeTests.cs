using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>The way to the reference point: NISTIR 6556 §3.5.8 and §3.5.12 let all axes start together; Z first is common practice. Setups and
/// programs are our own.</summary>
public sealed class WayHomeTests
{
    const string Tools = """ "tools": [ { "number": 3, "kind": "end-mill", "diameter": 8, "length": 90 } ] """;

    const string Clamps = """{ "clampHeight": 30, "clearance": 2,""" + Tools + "}";

    const string Listed = """{ "clearance": 2, "obstacles": [ { "name": "clamp A", "min": [40, 40, 0], "max": [60, 60, 30] } ],""" + Tools + "}";

    const string Plate = """{ "stock": { "min": [0, 0, -20], "max": [100, 60, 0] },""" + Tools + "}";

    const string Start = "G21 G90 G17 G54\nT3 M6\nM3 S1000\n";

    static int[] Lines(string blocks, string setup, string rule = "home-through-work") => Programs.Lines(rule, Start + blocks + "\nM30", setup);

    [Theory]
    [InlineData("G0 X10 Y10 G43 H3 Z5\nG28", new[] { 5 })]
    [InlineData("G0 X10 Y10 G43 H3 Z5\nG91 G28 X0 Y0 Z0\nG90", new[] { 5 })]
    [InlineData("G0 X10 Y10 G43 H3 Z5\nG91 G28 Y0\nG90", new[] { 5 })]
    [InlineData("G0 X10 Y10 G43 H3 Z5\nG91 G30 X0\nG90", new[] { 5 })]
    [InlineData("G0 X10 Y10 G43 H3 Z5\nG53 G0 X-300 Y-10", new[] { 5 })]
    [InlineData("G0 X10 Y10 G43 H3 Z31\nG28", new[] { 5 })] // nearer than the clearance
    [InlineData("G0 X10 Y10 G43 H3 Z50\nG28 X0 Y0 Z0", new[] { 5 })] // down to the point on the way
    [InlineData("G28 X0 Y0 Z0", new[] { 4 })] // from a place not known
    [InlineData("G0 X10 Y10 G43 H3 Z32\nG28", new int[0])] // just clear
    [InlineData("G0 X10 Y10 G43 H3 Z5\nG91 G28 Z0\nG28 X0 Y0\nG90", new int[0])]
    [InlineData("G0 X10 Y10 G43 H3 Z5\nG53 G0 Z0\nG53 X-300 Y-10", new int[0])]
    [InlineData("G28\nG28 X0 Y0", new int[0])] // no level is known
    public void Below_the_clamps_no_axis_goes_sideways(string blocks, int[] lines) => Assert.Equal(lines, Lines(blocks, Clamps));

    // Under G90 the words of G28 are a place that is gone to first, under G91 a distance.
    [Theory]
    [InlineData("G0 X10 Y10 G43 H3 Z50\nG28 Z0", new[] { 5 })]
    [InlineData("G0 X10 Y10 G43 H3 Z50\nG30 Z49", new[] { 5 })]
    [InlineData("G0 X10 Y10 G43 H3 Z50\nG28 X10 Y10 Z0", new[] { 5 })]
    [InlineData("G0 X10 Y10 G43 H3 Z50\nG28 Z50", new int[0])]
    [InlineData("G0 X10 Y10 G43 H3 Z50\nG28 Z80", new int[0])]
    [InlineData("G0 X10 Y10 G43 H3 Z50\nG91 G28 Z0\nG90", new int[0])]
    [InlineData("G0 X10 Y10 G43 H3 Z50\nG28 X0 Y0", new int[0])]
    [InlineData("G28 Z0", new int[0])] // from a height not known
    public void A_way_home_that_leads_down_first_is_told(string blocks, int[] lines) => Assert.Equal(lines, Lines(blocks, Plate, "home-leads-down"));

    /// <summary>At the beginning nobody knows where the tool stands. With a length that reaches from home to the work (common practice), Z0 is home.</summary>
    [Theory]
    [InlineData("G28 Z0", -400, new[] { 4 })]
    [InlineData("G49 G28 Z0", -400, new[] { 4 })]
    [InlineData("G28 Z50", -400, new int[0])]
    [InlineData("G91 G28 Z0\nG90", -400, new int[0])]
    [InlineData("G49 G28 Z0", 0, new int[0])]
    public void A_way_home_to_the_work_from_a_height_not_known(string blocks, double datum, int[] lines) => Assert.Equal(
        lines, Lines(blocks, $$"""{ "workOffsets": { "G54": [-300, -200, {{datum}}] }, "stock": { "min": [0, 0, -20], "max": [100, 60, 0] }, {{Tools}} }""", "home-leads-down"));

    [Fact] // One cause, one finding: below the clamps' top the way sideways is what is wrong.
    public void A_way_sideways_at_the_work_is_not_told_twice()
    {
        Assert.Equal([5], Lines("G0 X10 Y10 G43 H3 Z50\nG28 X0 Y0 Z0", Clamps));
        Assert.Empty(Lines("G0 X10 Y10 G43 H3 Z50\nG28 X0 Y0 Z0", Clamps, "home-leads-down"));
    }

    /// <summary>One cause, one finding: a way home is not a traverse too.</summary>
    [Fact]
    public void It_is_said_once()
    {
        const string blocks = "G0 X10 Y10 G43 H3 Z50\nG28 X0 Y0 Z0";
        Assert.Empty(Lines(blocks, Clamps, "retract-below-clamp"));
        Assert.Empty(Lines(blocks, Clamps, "clearance-small"));
    }

    [Fact]
    public void A_way_home_already_made_moves_nothing() =>
        Assert.DoesNotContain(6, Lines("G28 X0 Y0\nG0 G43 H3 Z5\nG91 G28 X0 Y0\nG90", Clamps));

    [Theory]
    [InlineData("G0 X10 Y10 G43 H3 Z5\nG28", new[] { 5 })]
    [InlineData("G0 X10 Y50 G43 H3 Z5\nG91 G28 X0\nG90", new[] { 5 })] // along X past the clamp
    [InlineData("G0 X10 Y10 G43 H3 Z5\nG91 G28 X0\nG90", new int[0])] // along X, 30 mm beside it
    [InlineData("G0 X10 Y10 G43 H3 Z40\nG28", new int[0])]
    public void Where_the_way_is_not_known_the_obstacles_that_may_lie_in_it_count(string blocks, int[] lines) => Assert.Equal(lines, Lines(blocks, Listed));

    /// <summary>With datum and reference point known the way is held against each obstacle: from X10 Y10 away from the clamp is clear, through it is
    /// rapid-hits-obstacle. The datum lies at X-300 Y-200 in machine coordinates, so that X0 Y0 of the machine is at X300 Y200.</summary>
    [Theory]
    [InlineData("G0 X10 Y10 G43 H3 Z5\nG53 G0 X-310 Y-210", false)]
    [InlineData("G0 X10 Y10 G43 H3 Z5\nG53 G0 X-200 Y-100", true)]
    public void A_way_that_is_known_is_measured(string blocks, bool hits)
    {
        var known = Listed.Replace("{ \"clearance\"", "{ \"workOffsets\": { \"G54\": [-300, -200, -400] }, \"clearance\"", StringComparison.Ordinal);
        Assert.Empty(Lines(blocks, known));
        Assert.Equal(hits, Lines(blocks, known, "rapid-hits-obstacle").Length > 0);
    }

    [Theory]
    [InlineData("G0 X10 Y10 G43 H3 Z5\nG1 Z-3 F100\nG28", new[] { 6 })]
    [InlineData("G0 X10 Y10 G43 H3 Z5\nG1 Z-3 F100\nG91 G28 Z0\nG28 X0 Y0", new int[0])]
    [InlineData("G0 X10 Y10 G43 H3 Z5\nG1 Z0 F100\nG28", new int[0])] // on the stock's top
    [InlineData("G0 X-10 Y10 G43 H3 Z5\nG1 Z-3 F100\nG28", new int[0])] // beside it: where the way leads is not known
    public void From_inside_the_stock_no_axis_goes_sideways(string blocks, int[] lines) => Assert.Equal(lines, Lines(blocks, Plate));

    [Fact]
    public void Without_a_setup_nothing_is_said() => Assert.Empty(Lines("G0 X10 Y10 G43 H3 Z-5\nG28", "{ }"));
}
