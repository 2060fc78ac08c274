using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.State;

/// <summary>That tools for hole making and milling are right-hand, and cut under M3, is common practice, from memory; M3 is clockwise by NISTIR 6556 §3.6.2.</summary>
public sealed class SpindleReversedTests
{
    const string Start = "G21 G90 G17 G54 G94\nG0 X10 Y10\n";

    const string Change = "T1 M6\nS900 M4\nG0 G43 H1 Z30\n";

    static Setup With(ToolKind? kind, int? flutes = null) => Setup.None with
    {
        IsPresent = true,
        Stock = new(new(0, 0, -20), new(100, 60, 0)),
        Tools = [new Tool { Number = 1, Kind = kind, Flutes = flutes }, new Tool { Number = 2, Kind = ToolKind.EndMill }],
    };

    static int[] Lines(string blocks, ToolKind? kind, int? flutes = null, string readings = "") =>
        [.. Check.Of("spindle-reversed", Start + blocks + "\nG80 G0 Z30\nM5\nM30", readings, With(kind, flutes)).Select(finding => finding.Line + 1)];

    [Theory]
    [InlineData(ToolKind.Drill, "G99 G81 Z-5 R2 F100\nX20")]
    [InlineData(ToolKind.CentreDrill, "G99 G82 Z-3 R2 P0.2 F100\nX20")]
    [InlineData(ToolKind.SpotDrill, "G1 Z-3 F100\nG0 Z2")]
    [InlineData(ToolKind.Reamer, "G99 G85 Z-5 R2 F100\nX20")]
    [InlineData(ToolKind.Countersink, "G99 G82 Z-3 R2 P0.2 F100")]
    [InlineData(ToolKind.Counterbore, "G99 G82 Z-3 R2 P0.2 F100")]
    [InlineData(ToolKind.EndMill, "G1 Z-3 F100\nX40")]
    [InlineData(ToolKind.BallMill, "G2 I5 Z-3 F100\nX40")]
    [InlineData(ToolKind.BullMill, "G1 Z-3 F100")]
    [InlineData(ToolKind.ChamferMill, "G1 Z-3 F100")]
    [InlineData(ToolKind.FaceMill, "G1 Z-1 F100")]
    [InlineData(ToolKind.SlotMill, "G1 Z-1 F100")]
    public void A_right_hand_tool_is_told_at_its_first_cut(ToolKind kind, string blocks) => Assert.Equal([6], Lines(Change + blocks, kind));

    [Theory]
    [InlineData(ToolKind.Tap, "G99 G74 Z-5 R2 F900")]
    [InlineData(ToolKind.Tap, "G99 G84 Z-5 R2 F900")] // tap-direction tells it
    [InlineData(ToolKind.Tap, "G33 Z-5 K1")]
    [InlineData(ToolKind.Drill, "G99 G84 Z-5 R2 F900")] // and this as well
    [InlineData(ToolKind.BoringBar, "G99 G85 Z-5 R2 F100")]
    [InlineData(ToolKind.ThreadMill, "G1 Z-5 F100\nG2 I3 Z-6")]
    [InlineData(ToolKind.Probe, "G1 Z-5 F100")]
    [InlineData(null, "G1 Z-5 F100")]
    [InlineData(ToolKind.Counterbore, "G1 Z-25 F500\nM5\nM3\nG1 Z-22 F40")] // folded for the way through
    [InlineData(ToolKind.Countersink, "G1 Z-25 F500")]
    [InlineData(ToolKind.Drill, "G98 G87 Z-5 R-25 I1 J0 K-15 F100")]
    public void What_may_turn_backwards_is_not_told(ToolKind? kind, string blocks) => Assert.Empty(Lines(Change + blocks, kind));

    [Theory] // A fly cutter's or a back counterbore's only edge may be turned round; a mill with one flute is right-hand.
    [InlineData(ToolKind.FaceMill, "G1 Z-1 F100", new int[0])]
    [InlineData(ToolKind.Counterbore, "G99 G82 Z-3 R2 P0.2 F100", new int[0])]
    [InlineData(ToolKind.Countersink, "G99 G82 Z-3 R2 P0.2 F100", new int[0])]
    [InlineData(ToolKind.EndMill, "G1 Z-1 F100", new[] { 6 })]
    public void A_single_edge_may_be_set_to_cut_backwards(ToolKind kind, string blocks, int[] lines) => Assert.Equal(lines, Lines(Change + blocks, kind, flutes: 1));

    [Theory]
    [InlineData("G1 Z5 F500\nX40\nM5", new int[0])] // in the air
    [InlineData("G1 Z5 F500\nM3\nZ-5", new int[0])]
    [InlineData("M3\nG1 Z-5 F500\nM4\nG1 Z10", new int[0])] // straight up, to let go of what was wound up
    [InlineData("M5\nG1 Z10 F500", new int[0])]
    [InlineData("G1 Z5 F500\nZ-1\nX20", new[] { 7 })]
    [InlineData("M3\nG1 Z-1 F500\nM4\nX20\nM3\nX30\nM4\nX40", new[] { 9 })] // once for a tool
    [InlineData("G1 Z-1 F500\nG0 Z30\nM5\nT2 M6\nG43 H2 Z5\nM4\nG1 Z-1", new[] { 6, 12 })] // each tool
    [InlineData("G1 Z-1 F500\nG0 Z30\nM5\nT2 M6\nG43 H2 Z5\nM3\nG1 Z-1", new[] { 6 })]
    [InlineData("G1 Z-1 F500 (nc-allow spindle-reversed: left-hand drill)", new int[0])]
    public void It_is_told_once_for_a_tool_and_not_in_the_air(string blocks, int[] lines) => Assert.Equal(lines, Lines(Change + blocks, ToolKind.Drill));

    [Theory]
    [InlineData("T1 M6\nM4 S900\nG0 G43 H1 Z5\nG1 Z-1 F100\n", "T1 M6\nM3 S900\nG0 G43 H1 Z5\nG1 Z-1 F100\n")]
    [InlineData("T1 M6\nG0 G43 H1 Z5\nG1 Z-1 F100 S900 M04\n", "T1 M6\nG0 G43 H1 Z5\nG1 Z-1 F100 S900 M3\n")]
    public void M3_is_written_where_the_M4_stands(string blocks, string mended)
    {
        var analysis = Check.Analyse(Start + blocks + "G0 Z30\nM5\nM30", setup: With(ToolKind.Drill));
        var fix = analysis.FixesOf(analysis.Findings.Single(finding => finding.Name == "spindle-reversed")).Single();
        Assert.Equal(FixSafety.Choice, fix.Safety);
        Assert.Equal(Start + mended + "G0 Z30\nM5\nM30", TextEdits.Apply(analysis.Text, fix.Edits).ToString());
    }

    [Fact]
    public void The_tool_and_the_place_of_the_M4_are_told()
    {
        var analysis = Check.Analyse(Start + Change + "G1 Z-1 F100\nM5\nM30", setup: With(ToolKind.EndMill));
        var finding = analysis.Findings.Single(finding => finding.Name == "spindle-reversed");
        Assert.StartsWith("T1, an end mill, cuts with the spindle turning counterclockwise (M4):", finding.Message, StringComparison.Ordinal);
        Assert.Equal(4, analysis.Related(finding).Single().Line + 1);
    }
}
