using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>Travel is counted in machine coordinates: work coordinate plus datum plus, in Z, the tool length. Expected outcomes are such sums.</summary>
public sealed class TravelTests
{
    const string Mill = """{ "name": "bench mill", "travel": { "x": [-400, 0], "y": [-250, 0], "z": [-450, 0] } }""";
    const string Setup = """{ "workOffsets": { "G54": [-100, -50, -400], "G55": [-300, -50, -400] }, "tools": [ { "number": 3, "length": 120 } ] }""";

    static int[] Lines(string program, string? setup = Setup) => Programs.Lines("travel-exceeded", program, setup, Mill);

    [Theory]
    [InlineData("G0 X100 Y50", new int[0])] // exactly at the limits
    [InlineData("G0 X100.01", new[] { 2 })]
    [InlineData("G0 X-301", new[] { 2 })]
    [InlineData("G0 X120\nY20\nX130\nX0\nX120", new[] { 2, 6 })] // outside it stays one finding until it comes back
    [InlineData("G0 Z410\nG98 G81 X10 Y0 Z-5 R2 F100\nX20\nX30\nG80", new[] { 2 })] // back up at each hole
    [InlineData("G0 Z10\nG98 G81 X10 Y0 Z-55 R2 F100\nX20\nX30 Z-60\nX40\nG80", new[] { 3, 5 })] // down at each hole, and deeper
    [InlineData("G0 Z10\nG98 G81 X10 Y0 Z-5 R2 F100\nX20\nX130\nG80", new[] { 5 })]
    [InlineData("G55 G0 X120", new int[0])]
    [InlineData("G0 Z390", new int[0])]
    [InlineData("G43 H3 G0 Z290", new[] { 2 })] // the length lifts the gauge point: 290 − 400 + 120 = 10
    [InlineData("G43 H9 G0 Z290", new int[0])] // a length nobody knows
    [InlineData("G0 X80 Y0\nG3 X80 Y40 I0 J20 F200", new int[0])] // a half circle of radius 20 bulges to X100, exactly at the limit
    [InlineData("G0 X80.5 Y0\nG3 X80.5 Y40 I0 J20 F200", new[] { 3 })]
    [InlineData("G0 X80.5 Y0\nG2 X80.5 Y40 I0 J20 F200", new int[0])] // the other way round it bulges to X60.5
    public void Each_axis_is_held_against_its_limits(string moves, int[] lines) => Assert.Equal(lines, Lines($"G21 G90 G17 G54\n{moves}\nM30"));

    /// <summary>What a G91 that was left on does to a way is told where it happens (incremental-left-on, common practice), be it left on at home or by a called program.</summary>
    [Theory]
    [InlineData("O1\nG21 G90 G17 G54\nG0 X50 Y0\nM98 P2\nG0 X60 Y0\nM30\nO2\nG91 X10\nM99", new int[0])]
    [InlineData("O1\nG21 G90 G17 G54\nG0 X50 Y0\nG91 G28 Z0\nG0 X60 Y0\nM30", new int[0])]
    // Distances that were meant, and positions, are held against the travel.
    [InlineData("O1\nG21 G90 G17 G54\nG0 X50 Y0\nM98 P2\nG90 G0 X110 Y0\nM30\nO2\nG91 X10\nM99", new[] { 5 })]
    [InlineData("O1\nG21 G90 G17 G54\nG0 X50 Y0\nM98 P2\nG90 G0 X60 Y0\nM30\nO2\nG91 X60\nM99", new[] { 8 })]
    public void A_G91_that_was_left_on_is_told_by_itself(string program, int[] lines) => Assert.Equal(lines, Lines(program));

    [Fact]
    public void Without_the_datum_only_moves_in_machine_coordinates_are_known()
    {
        Assert.Empty(Lines("G21 G90 G17 G54\nG0 X5000\nM30", null));
        Assert.Equal([2], Lines("G21 G90 G17 G54\nG53 G0 Z10\nM30", null));
        Assert.Empty(Lines("G21 G90 G17 G54\nG53 G0 Z0\nG53 X-400\nM30", null));
    }

    [Fact]
    public void An_inch_program_is_told_in_inches() =>
        Assert.Contains(": X would go to 2 in in machine coordinates, 2 in beyond its limit of 0 in.", Assert.Single(
            Programs.Of("travel-exceeded", "G20 G90 G17 G54\nG53 G0 X2\nM30", Setup, Mill)).Message, StringComparison.Ordinal);

    [Fact]
    public void Axes_are_named_together() =>
        Assert.Contains("X would go to 20 mm in machine coordinates, 20 mm beyond its limit of 0 mm; Y would go to -260 mm", Assert.Single(
            Programs.Of("travel-exceeded", "G21 G90 G17 G54\nG0 X120 Y-210\nM30", Setup, Mill)).Message, StringComparison.Ordinal);
}
