using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>What an earlier block has set decides over a later one: motions and cycles carried over that the modes forbid (NISTIR 6556 §3.5.10 and §3.5.16), and
/// words of which the code in force makes no sense. The programs are our own.</summary>
public sealed class CarriedOverTests
{
    const string Setup = """{ "tools": [ { "number": 1, "kind": "drill", "diameter": 10, "length": 90 } ], "workOffsets": { "G54": [0, 0, 0] } }""";
    const string Start = "G21 G17 G90 G40 G49 G80 G94 G54\nT1 M6\nS1000 M3\nG0 G43 H1 X0 Y0 Z50\nZ2\n";

    static int[] Lines(string rule, string blocks, string readings = "") =>
        Programs.Lines(rule, Start + blocks + "\nM5\nM30", Setup, readings: readings);

    static string Message(string rule, string blocks, string readings = "") =>
        Programs.Of(rule, Start + blocks + "\nM5\nM30", Setup, readings: readings).Single().Message;

    [Theory]
    [InlineData("G98 G81 X10 Y10 Z-5 R2 F100\nG41 D1\nX20\nX30\nG40\nX40\nG80", new[] { 8 })] // at the first hole, once
    [InlineData("G98 G81 X10 Y10 Z-5 R2 F100\nG41 D1 X20\nX30\nG40\nG80", new[] { 7 })]
    [InlineData("G98 G81 X10 Y10 Z-5 R2 F100\nG93\nX20\nX30\nG94\nX40\nG93\nX50\nG80", new[] { 8, 13 })] // once for each stretch
    [InlineData("G98 G81 X10 Y10 Z-5 R2 F100\nG41 D1\nG40\nX20\nG80", new int[0])]
    [InlineData("G41 D1\nG98 G81 X10 Y10 Z-5 R2 F100\nX20\nG80\nG40", new[] { 7 })]
    [InlineData("G2 X30 Y10 R50 F100\nG51 X0 Y0 I2 J1\nX40 Y10 R50\nX50 R50", new[] { 8 })]
    [InlineData("G2 X30 Y10 R50 F100\nG68 X0 Y0 R30\nG18\nX40 Z0 R50\nX50 R50", new[] { 9 })] // turned in XY, an arc in ZX
    [InlineData("G2 X30 Y10 R50 F100\nG51 X0 Y0 P2\nX40 Y10 R50", new int[0])]
    [InlineData("G2 X30 Y10 R50 F100\nG51 X0 Y0 I2 J1\nG1 X40 Y10", new int[0])]
    public void What_is_carried_over_is_told_at_the_first_block_it_matters(string blocks, int[] lines) => Assert.Equal(lines, Lines("not-allowed-here", blocks));

    [Fact]
    public void Not_the_word_but_the_code_in_force_is_named()
    {
        Assert.StartsWith("G81 is not allowed while radius compensation is on", Message("not-allowed-here", "G98 G81 X10 Y10 Z-5 R2 F100\nG41 D1 X15\nG40\nG80"), StringComparison.Ordinal);
        Assert.Contains(", G2 is no arc any more", Message("not-allowed-here", "G2 X30 Y10 R50 F100\nG51 X0 Y0 I2 J1\nX40 J0 I5"), StringComparison.Ordinal);
    }

    /// <summary>Common practice: scaling, rotation and mirror are switched while the tool's centre is on the programmed path.</summary>
    [Theory]
    [InlineData("G41 D1\nG1 X20 F100\nG68 X0 Y0 R30\nX40\nG69\nG40 X0", new[] { 8 })]
    [InlineData("G41 D1\nG1 X20 F100\nG51 X0 Y0 P2\nX40\nG50\nG40 X0", new[] { 8 })]
    [InlineData("G41 D1\nG1 X20 F100\nG51.1 X0\nX40\nG50.1 X0\nG40 X0", new[] { 8 })] // one setting of compensation, one finding
    [InlineData("G68 X0 Y0 R30\nG41 D1\nG1 X20 F100\nG40 X0\nG69", new int[0])]
    [InlineData("G41 D1\nG1 X20 F100\nG40 X0\nG68 X0 Y0 R30\nG69", new int[0])]
    public void Rotation_and_scaling_begin_before_compensation(string blocks, int[] lines) => Assert.Equal(lines, Lines("not-allowed-here", blocks));

    /// <summary>Common practice: a shift by G52 is taken back with zeros; controls differ in whether the end of a program takes it back.</summary>
    [Theory]
    [InlineData("G52 X40\nG1 X10 F100", new[] { 9 })]
    [InlineData("G52 X40\nG1 X10 F100\nG52 X0 Y0", new int[0])]
    [InlineData("G52 X40 Y0\nG1 X10 F100\nG52 X0", new int[0])]
    [InlineData("G92 X40\nG1 X10 F100", new int[0])]
    public void A_shift_that_the_end_meets_is_told(string blocks, int[] lines) => Assert.Equal(lines, Lines("frame-left-on", blocks));

    [Fact]
    public void A_shift_is_taken_back_along_its_axes() => Assert.Equal(
        "End it with G52 X0 Z0",
        Programs.Analyse(Start + "G52 X40 Y0 Z-5\nG1 X10 F100\nM5\nM30", Setup) is var analysis && analysis.Findings.Single(finding => finding.Name == "frame-left-on") is var found
            ? found.Rule.Fixes(found, analysis).Single().Title : "");

    /// <summary>Common practice: coupled by M29, the tapping cycle starts the spindle, reverses it and stops it.</summary>
    [Theory]
    [InlineData("M29 S500\nG98 G84 X10 Y10 Z-5 R2 F500\nX20\nG80\nG1 Z-2 F100\nX50", new[] { 10 })]
    [InlineData("M29 S500\nG98 G84 X10 Y10 Z-5 R2 F500\nX20\nG80\nM3\nG1 Z-2 F100\nX50", new int[0])]
    [InlineData("G98 G84 X10 Y10 Z-5 R2 F1000\nX20\nG80\nG1 Z-2 F100", new int[0])] // not coupled, it turns on
    [InlineData("M29 S500\nG80\nG1 Z-2 F100", new int[0])] // no hole was tapped
    public void Behind_a_coupled_tapping_cycle_the_spindle_stands(string blocks, int[] lines) => Assert.Equal(lines, Lines("spindle-off", blocks));

    /// <summary>NISTIR 6556 §3.3.5 and table 4, group 0; M19 as a code of the spindle is common practice.</summary>
    [Theory]
    [InlineData("M3 M19", true)]
    [InlineData("G92 X1 G92.1", true)]
    [InlineData("G28 G92.1", true)]
    [InlineData("G4 P1 G92.2", true)]
    [InlineData("G4 P1 G53 G0 X0", true)]
    [InlineData("G28 G92 X1", true)]
    [InlineData("G4 P1 G0 X10", false)]
    [InlineData("G4 P1 G52 X0", false)] // of no group in the table
    [InlineData("G53 G0 G9 X0", false)]
    [InlineData("M19", false)]
    public void Two_of_a_group(string block, bool refused) => Assert.Equal(refused ? [6] : [], Lines("codes-conflict", block));

    /// <summary>Common practice: the lead is a length above 0.</summary>
    [Theory]
    [InlineData("G33 Z-5 K0", true)]
    [InlineData("G33 Z-5 K-1", true)]
    [InlineData("G33 Z-5 K1", false)]
    [InlineData("G33 Z-5 F1", false)]
    public void The_lead_of_a_thread(string block, bool refused) => Assert.Equal(refused ? [6] : [], Lines("value-not-allowed", block));

    /// <summary>NISTIR 6556 §3.5.5: only the axes named change.</summary>
    [Theory]
    [InlineData("G10 L2 P1", true)]
    [InlineData("G10 L20 P1", true)]
    [InlineData("G10 L2 P1 Z0", false)]
    public void A_datum_without_an_axis(string block, bool missing) => Assert.Equal(missing ? [6] : [], Lines("word-missing", block));

    /// <summary>Common practice: by the decimal point, X1 waits a thousandth of a second, a sixtieth of a turn at 1000 a minute.</summary>
    [Theory]
    [InlineData("G4 X1", "dwell=byPoint", true)]
    [InlineData("G4 X1.", "dwell=byPoint", false)]
    [InlineData("G4 X1000", "dwell=byPoint", false)]
    [InlineData("G4 X1", "dwell=seconds", false)]
    [InlineData("G4 X1", "integers=increments", true)]
    [InlineData("G4 X1.", "integers=increments", false)]
    [InlineData("G4 P1", "integers=increments", false)]
    [InlineData("G4 P[0.5]", "dwell=byPoint", false)] // an expression has its value as it stands
    public void A_dwell_by_X(string block, string readings, bool told) => Assert.Equal(told ? [6] : [], Lines("dwell-unit", block, readings));
}
