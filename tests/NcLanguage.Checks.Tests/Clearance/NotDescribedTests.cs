using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>What the setup leaves out makes clearance not known: that is said once, where it begins to matter, and no distance is told as if it were.</summary>
public sealed class NotDescribedTests
{
    const string Clamp = """ "obstacles": [ { "name": "clamp A", "min": [40, -20, 0], "max": [60, 12, 25] } ] """;
    const string Tools = """ "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118 }, { "number": 2, "kind": "drill" } ] """;
    const string Both = """ "workOffsets": { "G54": [0, 0, 0], "G55": [100, 0, 0] } """;
    const string OnlyG55 = """ "workOffsets": { "G55": [100, 0, 0] } """;

    static int[] Lines(string rule, string program, params string[] setup) => Programs.Lines(rule, program, "{" + string.Join(",", setup) + "}");

    [Fact]
    public void A_work_offset_the_setup_lacks_is_said_once_for_each_stretch()
    {
        const string program = "G21 G90 G17 G54\nT3 M6\nG0 X0 Y0 Z50\nG55\nG0 X10\nX50\nG54 X0\nX10\nG56 X0\nG55 X50\nG53 G0 Z0\nM30";
        Assert.Equal([5, 9, 10], Lines("path-not-known", program, Clamp, Tools));
        var finding = Programs.Of("path-not-known", program, "{" + Clamp + "," + Tools + "}")[0];
        Assert.Equal("G55 is not in the setup's workOffsets: clearance is not checked from here on.", finding.Message);
        Assert.Equal(Severity.Note, finding.Severity);
    }

    /// <summary>A digit may be wrong: what the setup has is named beside it.</summary>
    [Theory]
    [InlineData(""" "workOffsets": { "G55": [100, 0, 0] }, "frame": "G55" """, "G56 is not in the setup's workOffsets, but G55 is: clearance is not checked from here on.")]
    [InlineData(""" "workOffsets": { "G54": [0, 0, 0], "G55": [100, 0, 0], "G57": [100, 0, 0] } """, "G56 is not in the setup's workOffsets, but G54, G55 and G57 are: clearance is not checked from here on.")]
    public void The_work_offsets_that_the_setup_has_are_named(string offsets, string message) => Assert.Equal(
        message, Programs.Of("path-not-known", "G21 G90 G17 G56\nT3 M6\nG0 X0 Y0 Z50\nX10\nM30", "{" + Clamp + "," + Tools + "," + offsets + "}")[0].Message);

    [Theory]
    [InlineData("G55\nG0 X10", Both, false)]
    [InlineData("G55\nG0 X10", OnlyG55, true)] // the frame's own place is missing
    [InlineData("G54\nG0 X10", OnlyG55, false)] // the setup is measured in it
    [InlineData("G55\nG53 G0 Z0", Tools, false)] // a way in machine coordinates
    public void A_work_offset_is_placed_by_both_datums(string blocks, string more, bool said) =>
        Assert.Equal(said, Lines("path-not-known", "G21 G90 G17\nT3 M6\n" + blocks + "\nM30", Clamp, more).Length == 1);

    [Fact]
    public void Without_anything_to_be_clear_of_no_work_offset_needs_a_place() =>
        Assert.Empty(Lines("path-not-known", "G21 G90 G17\nT3 M6\nG55 G0 X10\nM30", Tools));

    [Theory]
    [InlineData("T2 M6\nG0 X10 Y30 Z50\nG1 Z40 F100\nT2 M6\nG0 X20", new[] { 3, 6 })]
    [InlineData("T3 M6\nG0 X10 Y30 Z50\nG1 Z40 F100", new int[0])]
    [InlineData("T9 M6\nG0 X10 Y30 Z50\nG1 Z40 F100", new[] { 3 })]
    [InlineData("G0 X10 Y30 Z50\nG1 Z40 F100\nG1 Z30", new[] { 3 })] // no tool change: at the first cut
    [InlineData("G53 G0 Z0\nT3 M6", new int[0])]
    public void A_tool_of_unknown_diameter_is_said_once(string blocks, int[] lines) =>
        Assert.Equal(lines, Lines("tool-size-unknown", "G21 G90 G17 G54\n" + blocks + "\nM30", Clamp, Tools));

    [Fact]
    public void Without_obstacles_the_diameter_does_not_matter() =>
        Assert.Empty(Lines("tool-size-unknown", "G21 G90 G17 G54\nT2 M6\nG0 X10\nG1 X20 F100\nM30", Tools, "\"clampHeight\": 20"));

    [Theory] // The axis passes 1 mm beside the clamp, within the clearance of 2 mm; the tool itself may hit it or not.
    [InlineData("G0 X0 Y13 Z5\nX100")]
    [InlineData("G0 X20 Y13 Z40\nG99 G81 X20 Y13 R2 Z-5 F100\nX80\nG80")]
    public void Nearness_is_not_told_of_a_tool_of_unknown_diameter(string blocks) =>
        Assert.Empty(Lines("clearance-small", "G21 G90 G17 G54\nT2 M6\n" + blocks + "\nM30", Clamp, Tools));

    [Fact]
    public void What_the_axis_itself_meets_stays_an_error_and_names_no_diameter()
    {
        Assert.Equal([4], Lines("rapid-hits-obstacle", "G21 G90 G17 G54\nT2 M6\nG0 X0 Y0 Z5\nX100\nM30", Clamp, Tools));
        var hole = Assert.Single(Programs.Of("hole-under-obstacle", "G21 G90 G17 G54\nT2 M6\nG0 X50 Y12 Z50\nG98 G81 X50 Y12 R30 Z-5 F100\nG80\nM30", "{" + Clamp + "," + Tools + "}"));
        Assert.DoesNotContain("diameter", hole.Message, StringComparison.Ordinal);
    }
}
