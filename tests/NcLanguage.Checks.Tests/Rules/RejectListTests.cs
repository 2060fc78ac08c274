namespace NcLanguage.Checks.Tests.Rules;

/// <summary>Blocks that NISTIR 6556 says are errors, each with its section, and neighbours that are right. Each stands behind
/// "G90 G98 G0 X1 Y2 Z3" and a feed.</summary>
public sealed class RejectListTests
{
    static List<string> FindingsOf(string blocks, string spindle, string work = "X1 Y2 Z3")
    {
        var program = $"G21 G17 G54\nG90 G98 G0 {work} S1000\nF100{(spindle.Length > 0 ? " " + spindle : "")}\n{blocks}";
        return Check.NamesOn(program.Split('\n').Length, program + "\nG40 G80\nM9\nM5\nM30");
    }

    [Theory]
    [InlineData("3.5.16", "G81 X4 Y5 Z1.5", "cycle-word-missing")]
    [InlineData("3.5.16", "G81 X4 Y5 R2.8", "cycle-word-missing")]
    [InlineData("3.5.16", "G81 X4 Y5 Z2.8 R1.5", "r-below-bottom")]
    [InlineData("3.5.16", "G81 X4 Y5 Z1.5 R2.8\nR3", "cycle-word-missing")]
    [InlineData("3.5.16", "G81 X4 Y5 Z1.5 R2.8 L0", "value-not-allowed")]
    [InlineData("3.5.16", "G81 X4 Y5 Z1.5 R2.8 L1.5", "value-not-allowed")]
    [InlineData("3.5.16", "G82 X4 Y5 Z1.5 R2.8 P-0.5", "value-not-allowed")]
    [InlineData("3.5.16.4", "G83 X4 Y5 Z1.5 R2.8 Q0", "value-not-allowed")]
    [InlineData("3.5.16.4", "G83 X4 Y5 Z1.5 R2.8 Q-1", "value-not-allowed")]
    [InlineData("3.5.16", "G93\nG81 X4 Y5 Z1.5 R2.8", "not-allowed-here")]
    [InlineData("3.5.16", "G41 D1\nG81 X4 Y5 Z1.5 R2.8", "not-allowed-here")]
    [InlineData("3.5.16", "G42 D1\nG81 X4 Y5 Z1.5 R2.8", "not-allowed-here")]
    [InlineData("3.5.15", "G80 X1", "motion-not-set")]
    [InlineData("3.3.5", "G0 G1 X1", "codes-conflict")]
    [InlineData("3.3.5", "M3 M4", "codes-conflict")]
    [InlineData("3.3.5", "G90 G91", "codes-conflict")]
    [InlineData("3.3.5", "M3 M8 M48 M0 M19", "codes-conflict")]
    [InlineData("3.4", "G28 G1 X1", "codes-conflict")]
    [InlineData("3.5.4", "G4 P-1", "value-not-allowed")]
    [InlineData("3.7.2", "S-1", "value-not-allowed")]
    [InlineData("3.7.3", "T-1", "value-not-allowed")]
    [InlineData("3.5.5", "G10 L2 P10 X0", "value-not-allowed")]
    [InlineData("3.3.1", "N000009 G0 X1", "number-malformed")]
    [InlineData("3.3.4", "(a (b) c)", "comment-nested")]
    [InlineData("3.3.4", "(open", "comment-not-closed")]
    [InlineData("3.5.13", "G41 D1\nG54 X1", "not-allowed-here")]
    [InlineData("3.5.12", "G81 X4 Y5 Z1.5 R2.8\nG53 X1", "machine-move-mode")]
    [InlineData("table 5", "G70", "code-unknown")]
    [InlineData("table 3", "U5", "word-unknown")]
    public void A_block_the_report_rejects_is_found(string section, string blocks, string name)
    {
        Assert.NotEmpty(section);
        Assert.Contains(name, FindingsOf(blocks, "M3"));
    }

    /// <summary>§3.5.16.5 and §3.5.16.7: tapping needs the spindle turning clockwise, boring with a stop needs it turning.</summary>
    [Theory]
    [InlineData("G84 X4 Y5 Z1.5 R2.8", "", "spindle-off")]
    [InlineData("G84 X4 Y5 Z1.5 R2.8", "M4", "tap-direction")]
    [InlineData("G86 X4 Y5 Z1.5 R2.8 P0.5", "", "spindle-off")]
    public void A_cycle_with_the_wrong_spindle_is_found(string block, string spindle, string name) =>
        Assert.Contains(name, FindingsOf(block, spindle));

    /// <summary>§3.5.3.1 and §3.5.3.2: arcs from X0 Y0. Radii 5.003 and 4.997 differ by 0.006 mm, 5.0009 and 4.9991 by 0.0018 mm.</summary>
    [Theory]
    [InlineData("G2 X10 Y0 I5.003 J0", "arc-radius-mismatch")]
    [InlineData("G2 X0 Y0 R5", "arc-impossible")]
    [InlineData("G2 X10 Y0 R4.9", "arc-impossible")]
    public void An_arc_the_report_rejects_is_found(string block, string name) =>
        Assert.Contains(name, FindingsOf(block, "M3", "X0 Y0 Z3"));

    [Theory]
    [InlineData("G2 X10 Y0 I5.0009 J0")]
    [InlineData("G2 X10 Y0 R5")]
    [InlineData("G2 X0 Y0 I5")]
    public void An_arc_within_the_report_s_tolerance_is_accepted(string block) =>
        Assert.Empty(FindingsOf(block, "M3", "X0 Y0 Z3"));

    [Theory]
    [InlineData("3.5.16", "G81 X4 Y5 Z1.5 R2.8")]
    [InlineData("3.5.16", "G81 X4 Y5 Z1.5 R2.8 L1")]
    [InlineData("3.5.16.3", "G82 X4 Y5 Z1.5 R2.8 P0.5")]
    [InlineData("3.5.16.4", "G83 X4 Y5 Z1.5 R2.8 Q0.5")]
    [InlineData("3.5.16.7", "G86 X4 Y5 Z1.5 R2.8 P0.5")]
    [InlineData("3.5.15", "G80 G0 X1")]
    [InlineData("3.3.5", "G0 X1 M8")]
    [InlineData("3.3.5", "G90 G1 X1")]
    [InlineData("3.3.5", "M7 M8")]
    [InlineData("3.3.5", "M3 M8 M48 M0")]
    [InlineData("3.4", "G28 X1")]
    [InlineData("3.5.4", "G4 P1")]
    [InlineData("3.7.2", "S0")]
    [InlineData("3.7.3", "T0")]
    [InlineData("3.3.1", "N99999 G0 X1")]
    [InlineData("3.3.1", "N00009 G0 X1")]
    [InlineData("3.3.4", "(a [b] c)")]
    [InlineData("3.3.4", "G80 M5 (stop motion)")]
    [InlineData("3.5.13", "G55")]
    [InlineData("3.5.12", "G0 G53 X1")]
    public void Its_neighbour_that_is_right_is_silent(string section, string blocks)
    {
        Assert.NotEmpty(section);
        Assert.Empty(FindingsOf(blocks, "M3"));
    }
}
