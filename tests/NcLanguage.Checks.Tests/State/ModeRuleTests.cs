using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>Rules on the modes at the start of a program, on a change of units and on the plane of arcs: where they speak, that they speak
/// once, and where they are silent. The programs are our own.</summary>
public sealed class ModeRuleTests
{
    const string Start = "G21 G90 G17 G54 M3 S1000\n";

    static int[] Lines(string rule, string program, string readings = "") => [.. Check.Of(rule, program, readings).Select(finding => finding.Line + 1)];

    // ---- units-mixed: NISTIR 6556 §3.5.7 and §4.3.3.3 ----

    [Theory]
    [InlineData("G21 G90 G17 G54\nG0 X10\nG20 X1\nM30", new[] { 3 })]
    [InlineData("G20 G90 G17 G54\nG0 X1\nG21\nG0 X10\nG20\nM30", new[] { 3 })] // told once
    [InlineData("G20\nG21 G90 G17 G54\nG0 X10\nM30", new int[0])] // before any length
    [InlineData("G20 G90 G17 G54\nG91 G28 Z0\nG90 G21\nG0 X10\nM30", new int[0])] // a distance of 0 is 0 in both
    [InlineData("G21 G90 G17 G54\nG0 X10\nG21 X20\nM30", new int[0])]
    [InlineData("G90 G17 G54\nG0 X10\nG21 X20\nM30", new int[0])] // units-not-set speaks
    [InlineData("G21 G90 G17 G54\nG0 X10\nM98 P7\nG20 G0 X1\nM30", new int[0])] // not known what the call left
    [InlineData("G21 G90 G17 G54\nG0 X10\nG20 G21\nM30", new[] { 3 })] // beside codes-conflict: the first acts
    public void A_change_of_units_behind_lengths_is_told_once(string program, int[] lines) => Assert.Equal(lines, Lines("units-mixed", program));

    [Fact]
    public void Under_the_other_pair_of_codes_the_same_is_told()
    {
        const string program = "G71 G90 G17 G54\nG0 X10\nG70 X1\nM30";
        Assert.Equal([3], Lines("units-mixed", program, "units=G70/G71"));
        Assert.Empty(Lines("units-mixed", program)); // code-unknown: neither exists
    }

    /// <summary>§4.3.3.3: the feed keeps its number: F100 mm a minute becomes F100 inches a minute.</summary>
    [Fact]
    public void What_becomes_of_the_feed_is_said()
    {
        var finding = Check.Of("units-mixed", Start + "G0 X10 Z5\nG1 Z-1 F100\nG20\nX1\nG0 Z2\nM5\nM30").Single();
        Assert.Contains("F100 now is 100 in/min", finding.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("F100", Check.Of("units-mixed", Start + "G0 X10 Z5\nG1 Z-1 F100\nG20 F4\nX1\nG0 Z2\nM5\nM30").Single().Message, StringComparison.Ordinal);
    }

    // ---- distance-mode-not-set: NISTIR 6556 §3.5.17 ----

    [Theory]
    [InlineData("G21 G17 G54\nG0 X10\nX20\nM30", new[] { 2 })]
    [InlineData("G21 G17 G54\nG28 Z10\nG90\nG0 X20\nM30", new[] { 2 })] // the point on the way
    [InlineData("G21 G17 G54\nG28\nG90\nG0 X20\nM30", new int[0])]
    [InlineData("G21 G17 G54\nG53 G0 Z0\nG90\nG0 X20\nM30", new int[0])]
    [InlineData("G21 G17 G54\nG0 X10 G90\nM30", new int[0])]
    [InlineData("G21 G17 G54\nG91 G28 Z0\nG90 G0 X20\nM30", new int[0])]
    [InlineData("G21 G17 G54\nT1 M6\nM3 S500\nM30", new int[0])]
    [InlineData("G21 G90 G17 G54\nG0 X1\nM30\nO2\nG0 X1\nM99", new int[0])] // where a called program begins is not known
    public void The_distance_mode_is_missed_at_the_first_place_and_once(string program, int[] lines) =>
        Assert.Equal(lines, Lines("distance-mode-not-set", program));

    [Fact]
    public void G90_is_added_to_the_first_block() =>
        Assert.Equal("%\nO3\nN1 G90 G21 G17 G54\nN2 G0 X1\nM30", Check.Fixed("distance-mode-not-set", "%\nO3\nN1 G21 G17 G54\nN2 G0 X1\nM30"));

    // ---- start-unsafe: NISTIR 6556 §3.6.1; a start block is common practice ----

    [Theory]
    [InlineData("G21 G90 G54\nG0 X1\nX2\nM30", new[] { 2 })]
    [InlineData("G21 G90 G54\nG81 X1 Z-1 R1\nM30", new[] { 2 })]
    [InlineData("G21 G90 G54\nG28\nG53 G0 Z0\nG0 X1\nM30", new[] { 4 })]
    [InlineData("G21 G90 G54 G17\nG0 X1\nM30", new int[0])]
    [InlineData("G21 G90 G54\nG40 G49\nG0 X1\nM30", new int[0])]
    [InlineData("G21 G90 G54\nG80 G0 X1\nM30", new int[0])]
    [InlineData("G21 G90 G54 G94\nG0 X1\nM30", new int[0])]
    [InlineData("G21 G90 G54\nG0 G43 H1 Z50\nM30", new int[0])]
    [InlineData("G21 G90 G17 G54\nG0 X1\nM30\nO2\nG0 X1\nM99", new int[0])]
    public void A_start_without_modes_is_told_once(string program, int[] lines) => Assert.Equal(lines, Lines("start-unsafe", program));

    [Theory]
    [InlineData("N1 G21 G90 G54\nN2 G0 X1\nM30", "N1 G17 G40 G49 G80 G21 G90 G54\nN2 G0 X1\nM30")]
    [InlineData("%\r\nO1\r\nG21 G90 G54 G0 X1\r\nM30\r\n%", "%\nO1\nG17 G40 G49 G80\nG21 G90 G54 G0 X1\nM30\n%")]
    public void The_modes_are_added_before_anything_moves(string program, string mended) =>
        Assert.Equal(mended, Check.Fixed("start-unsafe", program));

    /// <summary>Units, distances and work offset have findings of their own, which this one does not repeat.</summary>
    [Fact]
    public void Each_mode_is_missed_by_one_rule()
    {
        var findings = Check.Analyse("G0 X1\nM30").Findings;
        Assert.Equal(["distance-mode-not-set", "start-unsafe", "units-not-set", "work-offset-not-set"], findings.Select(finding => finding.Name).Order(StringComparer.Ordinal));
        var message = findings.Single(finding => finding.Name == "start-unsafe").Message;
        Assert.All(new[] { "G20", "G21", "G90", "G54" }, code => Assert.DoesNotContain(code, message, StringComparison.Ordinal));
    }

    // ---- arc-plane: NISTIR 6556 §3.5.3.2: I and J in XY, I and K in XZ, J and K in YZ ----

    [Theory]
    [InlineData("G2 X10 Z0 I5 K0 F100", "K0")] // meant for G18
    [InlineData("G2 Y10 Z0 J5 K0 F100", "K0")] // meant for G19
    [InlineData("G2 X5 Z-5 K-5 F100", "K-5")]
    [InlineData("G18\nG2 X10 Y0 I5 J0 F100", "J0")] // G18 left on
    [InlineData("G18\nG2 I5 J0 F100", "J0")]
    [InlineData("G18\nG2 X10 Y10 R10 F100", "Y10")]
    [InlineData("G19\nG3 X10 Y0 I5 J0 F100", "I5")]
    public void An_arc_for_another_plane_is_told(string blocks, string word)
    {
        var program = Start + "G0 X0 Y0 Z0\n" + blocks + "\nG0 Z50\nM5\nM30";
        var analysis = Check.Analyse(program);
        var finding = Assert.Single(analysis.Findings);
        Assert.Equal("arc-plane", finding.Name);
        Assert.Equal(word, analysis.Text.LineText(finding.Line)[finding.StartColumn..finding.EndColumn]);
    }

    [Theory]
    [InlineData("G2 X10 Y0 I5 J0 F100")]
    [InlineData("G2 X10 I5 F100")]
    [InlineData("G2 X10 Z-2 I5 F100")] // half a turn of a helix
    [InlineData("G2 Z-2 I5 F100")]
    [InlineData("G2 X10 Y0 Z-2 I5 J0 F100")]
    [InlineData("G18 G2 X10 Z0 I5 K0 F100")]
    [InlineData("G18\nG2 X10 Z0 I5 K0 F100")]
    [InlineData("G18\nG2 X10 Y2 Z0 I5 K0 F100")]
    [InlineData("G19\nG2 Y10 Z0 J5 K0 F100")]
    [InlineData("G19\nG2 Y10 R5 F100")]
    public void An_arc_that_fits_its_plane_is_not(string blocks) => Assert.Empty(Check.Analyse(Start + "G0 X0 Y0 Z0\n" + blocks + "\nG17 G0 Z50\nM5\nM30").Findings);

    /// <summary>Where the words name no other plane either, or the block sets the plane itself, the older findings stand.</summary>
    [Theory]
    [InlineData("G2 X10 Y5 K5 F100", "word-missing")]
    [InlineData("G18 G2 X5 J5 F100", "word-missing")]
    [InlineData("G2 X10 Y0 I5 J0 K3 F100", "word-without-effect")]
    [InlineData("G2 X10 Y0 I5 F100\nG18\nX20", "word-missing")]
    public void Other_faults_of_arcs_stay_with_their_rules(string blocks, string name) =>
        Assert.Equal([name], Check.Analyse(Start + "G0 X0 Y0 Z0\n" + blocks + "\nG17 G0 Z50\nM5\nM30").Findings.Select(finding => finding.Name));

    /// <summary>An arc that does not exist in the plane in force stops the control: an error, not a warning.</summary>
    [Theory]
    [InlineData("G2 X10 Z0 I5 K0 F100", Severity.Warning)]
    [InlineData("G2 X5 Z-5 K-5 F100", Severity.Error)] // no centre in the plane
    [InlineData("G2 X5 Z-5 I0 K-5 F100", Severity.Error)] // start radius 0, end radius 5
    public void It_is_an_error_where_there_is_no_such_arc(string block, Severity severity) =>
        Assert.Equal(severity, Check.Of("arc-plane", Start + "G0 X0 Y0 Z0\n" + block + "\nM5\nM30").Single().Severity);
}
