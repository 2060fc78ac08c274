namespace NcLanguage.Checks.Tests.Rules;

/// <summary>Blocks that NISTIR 6556 says are errors, each with its section and the word the finding marks, and neighbours that are right. Each
/// stands behind "G90 G98 G0 X1 Y2 Z3" and a feed. Where the product reads more than the report's language, it says why.</summary>
public sealed class RejectListTests
{
    static List<(string Name, string Word)> Found(string blocks, string spindle, string work = "X1 Y2 Z3", string readings = "")
    {
        var program = $"G21 G17 G54\nG90 G98 G0 {work} S1000\nF100{(spindle.Length > 0 ? " " + spindle : "")}\n{blocks}";
        var line = program.Split('\n').Length - 1;
        var analysis = Check.Analyse(program + "\nG40 G80\nM9\nM5\nM30", readings);
        return [.. analysis.Findings.Where(finding => finding.Line == line)
            .Select(finding => (finding.Name, analysis.Text.LineText(line)[finding.StartColumn..finding.EndColumn]))];
    }

    static IEnumerable<string> FindingsOf(string blocks, string spindle, string work = "X1 Y2 Z3") => Found(blocks, spindle, work).Select(found => found.Name);

    public static TheoryData<string, string, string, string> Rejected => new()
    {
        { "3.5.16", "G81 X4 Y5 Z1.5", "cycle-word-missing", "G81" },
        { "3.5.16", "G81 X4 Y5 R2.8", "cycle-word-missing", "G81" },
        { "3.5.16", "G81 X4 Y5 Z2.8 R1.5", "r-below-bottom", "R1.5" },
        { "3.5.16", "G81 X4 Y5 Z1.5 R2.8\nR3", "cycle-word-missing", "R3" },
        { "3.5.16", "G81 X4 Y5 Z1.5 R2.8 L0", "value-not-allowed", "L0" },
        { "3.5.16", "G81 X4 Y5 Z1.5 R2.8 L1.5", "value-not-allowed", "L1.5" },
        { "3.5.16", "G81 X4 Y5 Z1.5 R2.8 L-1", "value-not-allowed", "L-1" },
        { "3.5.16", "G81 X4 Y5 Z1.5 R2.8 A90", "word-unknown", "A90" },
        { "3.5.16", "G82 X4 Y5 Z1.5 R2.8 P-0.5", "value-not-allowed", "P-0.5" },
        { "3.5.16.7", "G86 X4 Y5 Z1.5 R2.8 P-0.5", "value-not-allowed", "P-0.5" },
        { "3.5.16.9", "G88 X4 Y5 Z1.5 R2.8 P-0.5", "value-not-allowed", "P-0.5" },
        { "3.5.16.10", "G89 X4 Y5 Z1.5 R2.8 P-0.5", "value-not-allowed", "P-0.5" },
        { "3.5.16.8", "G87 X4 Y5 Z-20 R2.8 I-1", "cycle-word-missing", "G87" },
        { "3.5.16.4", "G83 X4 Y5 Z1.5 R2.8", "cycle-word-missing", "G83" },
        { "3.5.16.4", "G83 X4 Y5 Z1.5 R2.8 Q0", "value-not-allowed", "Q0" },
        { "3.5.16.4", "G83 X4 Y5 Z1.5 R2.8 Q-1", "value-not-allowed", "Q-1" },
        { "3.5.16", "G93\nG81 X4 Y5 Z1.5 R2.8", "not-allowed-here", "G81" },
        { "3.5.16", "G41 D1\nG81 X4 Y5 Z1.5 R2.8", "not-allowed-here", "G81" },
        { "3.5.16", "G42 D1\nG81 X4 Y5 Z1.5 R2.8", "not-allowed-here", "G81" },
        { "3.5.15", "G80 X1", "motion-not-set", "X1" },
        { "3.3.5", "G0 G1 X1", "codes-conflict", "G1" },
        { "3.3.5", "M3 M4", "codes-conflict", "M4" },
        { "3.3.5", "G90 G91", "codes-conflict", "G91" },
        { "3.3.5", "G54 G55 X1", "codes-conflict", "G55" },
        { "3.3.5", "M3 M8 M48 M0 M29", "codes-conflict", "M29" },
        { "3.3.5", "G0 X1 X2", "address-repeated", "X2" },
        { "3.4", "G28 G1 X1", "codes-conflict", "G28" },
        { "3.4", "G92 G1 X1", "codes-conflict", "G92" },
        { "3.4", "G10 L2 P1 G1 X1", "codes-conflict", "G10" },
        { "3.5.3.1", "G2 X1 Y2 R5", "arc-impossible", "G2" },
        { "3.5.3.1", "G2 R5", "word-missing", "G2" },
        { "3.5.3.2", "G2 X4 Y5", "word-missing", "G2" },
        { "3.5.3.2", "G17 G2 X4 Y5 K1", "word-missing", "G2" },
        { "3.5.4", "G4 P-1", "value-not-allowed", "P-1" },
        { "3.5.4", "G4", "word-missing", "G4" },
        { "3.5.5", "G10 L2 P10 X0", "value-not-allowed", "P10" },
        { "3.5.5", "G10 L2 P0 X0", "value-not-allowed", "P0" },
        { "3.5.10", "G41 D-1", "value-not-allowed", "D-1" },
        { "3.5.10", "G41 D1.5", "value-not-allowed", "D1.5" },
        { "3.5.10", "G41 D1\nG42 D1", "not-allowed-here", "G42" },
        { "B.5", "G0 X1 D1", "word-without-effect", "D1" },
        { "B.5", "G41 D1 D2", "address-repeated", "D2" },
        { "3.5.11", "G43 Z5", "word-missing", "G43" },
        { "3.5.11", "G43 H-1", "value-not-allowed", "H-1" },
        { "3.5.11", "G43 H1.5", "value-not-allowed", "H1.5" },
        { "3.5.12", "G81 X4 Y5 Z1.5 R2.8\nG53 X1", "machine-move-mode", "G53" },
        { "3.5.12", "G2 X3 Y2 I1 J0\nG53 X1", "machine-move-mode", "G53" },
        { "3.5.12", "G41 D1\nG0 G53 X1", "not-allowed-here", "G53" },
        { "3.5.13", "G41 D1\nG54 X1", "not-allowed-here", "G54" },
        { "3.5.18", "G92", "word-missing", "G92" },
        { "3.5.19", "G93\nG1 X4 F2\nX5", "feed-missing", "X5" },
        { "3.7.1", "F-1", "value-not-allowed", "F-1" },
        { "3.7.2", "S-1", "value-not-allowed", "S-1" },
        { "3.7.3", "T-1", "value-not-allowed", "T-1" },
        { "3.7.3", "T1.5", "value-not-allowed", "T1.5" },
        { "3.3.1", "N000009 G0 X1", "number-malformed", "N000009" },
        { "3.3.1", "N-1 G0 X1", "number-malformed", "N-1" },
        { "3.3.1", "N1.5 G0 X1", "number-malformed", "N1.5" },
        { "3.3.2.1", "G0 X", "word-without-number", "X" },
        { "3.3.2.1", "G0 X+", "number-malformed", "X+" },
        { "3.3.2.1", "G0 X1..5", "number-malformed", "X1..5" },
        { "3.3.2.1", "G0 X1e5", "word-unknown", "e5" },
        { "3.3.2.2", "G0 X#0", "expression-malformed", "#0" },
        { "3.3.2.2", "G0 X#5400", "expression-malformed", "#5400" },
        { "3.3.2.2", "G0 X#1.5", "expression-malformed", "#1.5" },
        { "3.3.3", "#5400=1", "expression-malformed", "#5400=1" },
        { "3.3.3", "#0=1", "expression-malformed", "#0=1" },
        { "3.3.2.3", "G0 X[1+2", "expression-malformed", "[1+2" },
        { "3.3.2.3", "G0 X[1/0]", "expression-malformed", "/0]" },
        { "3.3.2.4", "G0 XSQRT[-1]", "expression-malformed", "SQRT[-1]" },
        { "3.3.2.4", "G0 XACOS[2]", "expression-malformed", "ACOS[2]" },
        { "3.3.2.4", "G0 XASIN[2]", "expression-malformed", "ASIN[2]" },
        { "3.3.2.4", "G0 XLN[0]", "expression-malformed", "LN[0]" },
        { "3.3.2.4", "G0 XATAN[1]", "expression-malformed", "ATAN[1]" },
        { "3.3", "G0 X1 ]", "unknown-character", "]" },
        { "3.3", "G0 X1 !", "unknown-character", "!" },
        { "3.3.4", "(a (b) c)", "comment-nested", "(a (b) c)" },
        { "3.3.4", "(open", "comment-not-closed", "(open" },
        { "table 3", "U5", "word-unknown", "U5" },
        { "table 3", "V5", "word-unknown", "V5" },
        { "table 3", "W5", "word-unknown", "W5" },
        { "table 3", "E5", "word-unknown", "E5" },
        { "table 5", "G7", "code-unknown", "G7" },
        { "table 5", "G1.5 X1", "code-unknown", "G1.5" },
        { "table 5", "G70", "code-unknown", "G70" },
        { "3.6", "M10", "code-unknown", "M10" },
    };

    [Theory]
    [MemberData(nameof(Rejected))]
    public void A_block_the_report_rejects_is_found_once(string section, string blocks, string name, string word)
    {
        Assert.NotEmpty(section);
        // That a code is not followed is no second finding of the fault.
        Assert.Equal([(name, word)], Found(blocks, "M3").Where(found => found.Name != "path-not-known"));
    }

    /// <summary>§3.7.3: a tool above the number of places in the changer; the report's sample machine has 68 (table 1).</summary>
    [Theory]
    [InlineData("T68", false)]
    [InlineData("T69", true)]
    public void A_tool_beyond_the_changer_is_refused(string word, bool refused)
    {
        var machine = Machine.Profiles.MachineProfile.IsoMill with { Tools = 68, IsChosen = true };
        var found = Check.Of("value-not-allowed", $"G21 G90 G17 G54\n{word} M6\nM30", machine: machine);
        Assert.Equal(refused ? 1 : 0, found.Count);
        Assert.All(found, finding => Assert.Contains("68 places", finding.Message, StringComparison.Ordinal));
        Assert.Empty(Check.Of("value-not-allowed", $"G21 G90 G17 G54\n{word} M6\nM30"));
    }

    /// <summary>What the report refuses and this product reads, on purpose.</summary>
    [Theory]
    [InlineData("table 5", "G95")] // ISO 6983-1 (from memory) has feed per revolution
    [InlineData("table 5", "G97")] // and speed in revolutions per minute
    [InlineData("table 5", "G52 X0 Y0 Z0")] // common practice
    [InlineData("table 5", "G73 X4 Y5 Z1.5 R2.8 Q1")] // common practice
    [InlineData("3.3.5", "G80 G0 X1")] // ISO 6983-1 (from memory): cycles are a group of their own
    [InlineData("3.4", "G28 G0 X1")] // the way to the reference point is a rapid anyway
    [InlineData("3.5.1", "G0")] // common practice: a mode alone moves nothing
    [InlineData("3.5.2", "G1")]
    [InlineData("3.5.3.2", "G2 I1")] // common practice: a full circle needs no end
    public void What_the_report_refuses_and_is_common_practice_is_read(string section, string blocks)
    {
        Assert.NotEmpty(section);
        Assert.Empty(Found(blocks, "M3"));
    }

    /// <summary>Table 5: the report has G20 and G21 alone; ISO 6983-1 (from memory) G70 and G71. The reading "units" says which.</summary>
    [Fact]
    public void The_codes_of_the_unit_are_a_reading()
    {
        Assert.Equal([("code-unknown", "G71")], Found("G71", "M3"));
        Assert.Empty(Found("G71", "M3", readings: "units=G70/G71"));
    }

    /// <summary>Table 3: O is not in the report's language; program numbers are common practice.</summary>
    [Fact]
    public void A_program_number_is_read() => Assert.Empty(Check.Analyse("O100\nG21 G90 G17 G54\nG0 X1\nM30").Findings);

    /// <summary>§3.1: without % a program needs M2 or M30. §3.3: a block has 256 characters at most.</summary>
    [Fact]
    public void What_a_file_needs()
    {
        Assert.Single(Check.Of("program-end-missing", "G21 G90 G17 G54\nG0 X1"));
        Assert.Empty(Check.Of("program-end-missing", "G21 G90 G17 G54\nG0 X1\nM2"));
        Assert.Empty(Check.Of("block-too-long", $"G21 G90 G17 G54\n({new string('a', 254)})\nM2"));
        Assert.Single(Check.Of("block-too-long", $"G21 G90 G17 G54\n({new string('a', 255)})\nM2"));
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
