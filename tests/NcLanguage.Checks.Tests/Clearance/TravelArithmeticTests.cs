using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>
/// Machine coordinates by hand: work coordinate + datum + shifts, and in Z + tool length (the machine's Z is that of the gauge line). X of the machine runs
/// from −400 to 0, Y from −250 to 0, Z from −450 to 0; G54 lies at X−100 Y−50 Z−400, so that in G54 X ends at 100 and −300, Y at 50 and −200, and without a
/// length Z at 400 and −50. Sources: NISTIR 6556 §3.5.11 to §3.5.14 and §3.5.18 for what offsets do; the sums are plain arithmetic.
/// </summary>
public sealed class TravelArithmeticTests
{
    const string Mill = """{ "name": "bench mill", "travel": { "x": [-400, 0], "y": [-250, 0], "z": [-450, 0] } }""";
    const string Setup = """
        { "workOffsets": { "G54": [-100, -50, -400], "G55": [-300, -50, -400], "G54.1 P2": [-390, -50, -400] },
          "tools": [ { "number": 3, "length": 120, "diameter": 20, "radiusOffset": 3 }, { "number": 4, "length": 80, "lengthOffset": 14 } ] }
        """;

    static int[] Lines(string blocks, string machine = Mill) => Programs.Lines("travel-exceeded", $"G21 G90 G17 G40 G49 G80 G94 G54\nG0 X0 Y0 Z0\n{blocks}\nM30", Setup, machine);

    [Theory]
    // Tool lengths: Z + length - 400.
    [InlineData("G43 H3 G0 Z280", new int[0])] // 280 + 120 - 400 = 0
    [InlineData("G43 H3 G0 Z280.001", new[] { 3 })]
    [InlineData("G43 H14 G0 Z320", new int[0])] // 320 + 80 - 400 = 0
    [InlineData("G43 H14 G0 Z320.001", new[] { 3 })]
    [InlineData("G44 H3 G0 Z70", new int[0])] // 70 - 120 - 400 = -450
    [InlineData("G44 H3 G0 Z69.999", new[] { 3 })]
    [InlineData("G43 H3 G0 Z280\nG49\nG0 Z400", new int[0])]
    [InlineData("G43 H3 G0 Z280\nG49\nG0 Z400.001", new[] { 5 })]
    // Machine coordinates as such: no datum and no length counts.
    [InlineData("G53 G0 X-400 Y-250 Z-450", new int[0])]
    [InlineData("G53 G0 X-400.001", new[] { 3 })]
    [InlineData("G43 H3 G0 Z0\nG53 G0 Z-450", new int[0])]
    [InlineData("G43 H3 G0 Z0\nG53 G0 Z0.001", new[] { 4 })]
    [InlineData("G55 G52 X50\nG53 G0 X-400", new int[0])]
    // The reference point: by way of the place written.
    [InlineData("G28 X100 Y50", new int[0])]
    [InlineData("G28 X100.001", new[] { 3 })]
    [InlineData("G91 G28 Z0", new int[0])]
    [InlineData("G91 G28 Z400.001", new[] { 3 })]
    // Datums and shifts.
    [InlineData("G55 G0 X300", new int[0])] // 300 - 300 = 0
    [InlineData("G55 G0 X300.001", new[] { 3 })]
    [InlineData("G54.1 P2 G0 X-10", new int[0])] // -10 - 390 = -400
    [InlineData("G54.1 P2 G0 X-10.001", new[] { 3 })]
    [InlineData("G52 X10\nG0 X90", new int[0])] // 90 + 10 - 100 = 0
    [InlineData("G52 X10\nG0 X90.001", new[] { 4 })]
    [InlineData("G92 X50\nG0 X150", new int[0])] // what stood at X0 is X50: 150 - 50 - 100 = 0
    [InlineData("G92 X50\nG0 X150.001", new[] { 4 })]
    [InlineData("G92 X50\nG92.1\nG0 X100.001", new[] { 5 })]
    [InlineData("G52 X10\nG92 X20\nG0 X120", new int[0])] // X0 of G54 is X-10 under G52, then X20: 120 lies 100 past it
    [InlineData("G52 X10\nG92 X20\nG0 X120.001", new[] { 5 })]
    [InlineData("G10 L2 P1 X-90\nG0 X90", new int[0])] // the datum 10 farther: 90 - 90 = 0
    [InlineData("G10 L2 P1 X-90\nG0 X90.001", new[] { 4 })]
    // Frames that turn and scale.
    [InlineData("G68 X0 Y0 R90\nG0 X50 Y0", new int[0])] // turned to Y50
    [InlineData("G68 X0 Y0 R90\nG0 X50.001 Y0", new[] { 4 })]
    [InlineData("G51 X0 Y0 Z0 I2 J1 K1\nG0 X50", new int[0])] // X100
    [InlineData("G51 X0 Y0 Z0 I2 J1 K1\nG0 X50.001", new[] { 4 })]
    // Inches: 3.937 in = 99.9998 mm, 3.9371 in = 100.00234 mm.
    [InlineData("G20 G0 X3.937", new int[0])]
    [InlineData("G20 G0 X3.9371", new[] { 3 })]
    // Incremental moves add up: 60 + 40 = 100.
    [InlineData("G91 G0 X60\nX40\nX0.001", new[] { 5 })]
    // From one side out beyond the other is a second way out: 350 - 100 = 250, then -350 - 100 = -450.
    [InlineData("G0 X350\nX-350", new[] { 3, 4 })]
    public void The_sum_decides(string blocks, int[] lines) => Assert.Equal(lines, Lines(blocks));

    [Theory]
    // Z-40 is -440 in the machine: a half circle of radius 10 dips to -450, one of 10.5 to -450.5.
    [InlineData("G0 Z-40\nG18 G2 X20 Z-40 I10 K0 F300", "G0 Z-40\nG18 G3 X20 Z-40 I10 K0 F300")]
    // Y40 is -10: 10 beyond it is the limit.
    [InlineData("G0 Y40\nG19 G3 Y40 Z20 J0 K10 F300", "G0 Y40\nG19 G2 Y40 Z20 J0 K10 F300")]
    public void The_bulge_of_an_arc_counts_on_the_side_it_goes(string one, string other)
    {
        // The first turn goes towards the limit and reaches it exactly, the other goes away from it.
        Assert.Empty(Lines(one));
        Assert.Empty(Lines(other));
        string Larger(string blocks) => blocks.Replace("X20 ", "X21 ", StringComparison.Ordinal).Replace("I10", "I10.5", StringComparison.Ordinal)
            .Replace("Z20 ", "Z21 ", StringComparison.Ordinal).Replace("K10", "K10.5", StringComparison.Ordinal);
        Assert.Equal([4], Lines(Larger(one)));
        Assert.Empty(Lines(Larger(other)));
    }

    [Theory]
    [InlineData("G0 X60\nG2 X60 Y0 I20 J0 F300", new int[0])] // a full circle about X80 of radius 20: X60 to X100
    [InlineData("G0 X60\nG2 X60 Y0 I20.001 J0 F300", new[] { 4 })]
    [InlineData("G0 X60\nG2 X60 Y0 Z-50 I20 J0 F300", new int[0])] // a helix down to -450
    [InlineData("G0 X60\nG2 X60 Y0 Z-50.001 I20 J0 F300", new[] { 4 })]
    [InlineData("G0 X90 Y-10\nG2 X100 Y0 I0 J10 F300", new int[0])] // nearly round about X90 Y0: by X80, Y10 and back to X100
    public void Full_circles_and_helices_count_all_round(string blocks, int[] lines) => Assert.Equal(lines, Lines(blocks));

    [Theory]
    [InlineData("G99 G81 X50 Y0 R2 Z-50 F100", new int[0])] // -50 - 400 = -450
    [InlineData("G99 G81 X50 Y0 R2 Z-50.001 F100", new[] { 3 })]
    [InlineData("G99 G83 X50 Y0 R2 Z-50.001 Q60 F100", new[] { 3 })]
    [InlineData("G99 G81 X50 Y0 R400 Z-5 F100", new int[0])]
    [InlineData("G99 G81 X50 Y0 R400.001 Z-5 F100", new[] { 3 })]
    [InlineData("G99 G81 X40 Y0 R2 Z-5 F100\nG91 X20 L3", new int[0])] // 40 + 3 * 20 = 100
    [InlineData("G99 G81 X40 Y0 R2 Z-5 F100\nG91 X20.001 L3", new[] { 4 })]
    [InlineData("G98 G87 X95 Y0 R2 Z-5 K-2 I5 J0 F100", new int[0])] // off-centre at X100
    [InlineData("G98 G87 X95 Y0 R2 Z-5 K-2 I5.001 J0 F100", new[] { 3 })]
    [InlineData("G98 G76 X95 Y0 R2 Z-5 Q5.001 F100", new[] { 3 })]
    [InlineData("G43 H3 G0 Z20\nG99 G81 X50 Y0 R2 Z-170 F100", new int[0])] // -170 + 120 - 400 = -450
    [InlineData("G43 H3 G0 Z20\nG99 G81 X50 Y0 R2 Z-170.001 F100", new[] { 4 })]
    public void Levels_and_places_of_cycles_count(string blocks, int[] lines) => Assert.Equal(lines, Lines(blocks + "\nG80"));

    [Theory] // The tool of 20 mm runs 10 beside the path: to the right of a way in +Y that is X + 10. It gets there round the corner behind the slanting way in.
    [InlineData("90", new int[0])]
    [InlineData("90.001", new[] { 6 })]
    public void The_way_of_the_tool_counts_not_the_one_written(string x, int[] lines) =>
        Assert.Equal(lines, Lines($"T3 M6\nG0 X60 Y-40\nG42 D3 G1 X{x} Y-20 F300\nY0\nY20\nG40 G1 X60"));

    [Fact]
    public void The_numbers_are_told()
    {
        var finding = Assert.Single(Programs.Of("travel-exceeded", "G21 G90 G17 G54\nT3 M6\nG43 H3 G0 X0 Y0 Z290\nM30", Setup, Mill));
        Assert.Contains("Z would go to 10 mm in machine coordinates, 10 mm beyond its limit of 0 mm", finding.Message, StringComparison.Ordinal);
    }

    [Fact] // A reference point of the profile that lies outside its own travel.
    public void A_reference_point_outside_the_travel_is_told_where_it_is_gone_to() =>
        Assert.Equal([3], Lines("G91 G28 Z0", Mill.Replace("\"travel\"", "\"home\": [0, 0, 10], \"travel\"", StringComparison.Ordinal)));
}
