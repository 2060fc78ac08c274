using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>Offsets of which the setup does not give the size. What a block leaves as it was cancels out, known or not (NISTIR 6556 §3.5.11 to §3.5.13 and
/// §3.5.18: nothing moves); what does not is told. The clamp reaches from X40 to X50 and up to Z30, the traverse runs at Z5.</summary>
public sealed class OffsetsNotKnownTests
{
    const string Clamp = """ "obstacles": [ { "name": "clamp A", "min": [40, -20, 0], "max": [50, 40, 30] } ] """;
    const string NoLength = """ "tools": [ { "number": 1, "kind": "drill", "diameter": 10, "pointAngle": 118 }, { "number": 2, "kind": "drill", "diameter": 10, "pointAngle": 118 } ] """;
    const string Start = "G21 G17 G90 G40 G49 G80 G94 G54\nT1 M6\nS1000 M3\nG0 G43 H1 X10 Y10 Z5\n";

    static int[] Lines(string rule, string blocks, string more = "") => Programs.Lines(rule, Start + blocks + "\nM5\nM30", "{" + Clamp + "," + NoLength + more + "}");

    [Theory]
    [InlineData("G0 X80", 5)]
    [InlineData("G52 X5\nG0 X80", 6)]
    [InlineData("G52 X0\nG0 X80", 6)]
    [InlineData("G52 X5 Z1\nG0 X80", 6)] // Z4 there
    [InlineData("G92 X20\nG92.1\nG0 X80", 7)]
    [InlineData("G92 X20\nG92.2\nG0 X80", 7)]
    [InlineData("G92 X20\nG92.2\nG92.3\nG0 X80", 8)]
    [InlineData("G10 L20 P1 X10\nG0 X80", 6)]
    [InlineData("G43 H1\nG0 X80", 6)]
    [InlineData("T1 M6\nS1000 M3\nG43 H1\nG0 X80", 8)]
    [InlineData("T2 M6\nS1000 M3\nG43 H1\nG0 X80", 8)] // the offset is the same, whatever the tool
    [InlineData("G10 L11 P1 R0\nG10 L11 P1 R0.5\nG0 X80", 7)] // the wear alone grows
    public void A_length_not_known_that_stays_cancels_out(string blocks, int line)
    {
        Assert.Equal([line], Lines("rapid-hits-obstacle", blocks));
        Assert.Empty(Lines("path-not-known", blocks));
    }

    [Fact]
    public void Between_two_datums_that_are_known_it_cancels_out_too()
    {
        const string datums = """, "workOffsets": { "G54": [0, 0, 0], "G55": [100, 0, 0] } """;
        Assert.Equal([6], Lines("rapid-hits-obstacle", "G55\nG0 X-20", datums)); // X80 of G54
    }

    [Theory]
    [InlineData("G43 H2\nG0 X80\nY20\nG43 H1\nX10", new[] { 6 })] // once
    [InlineData("G49\nG0 X80", new[] { 6 })]
    [InlineData("G49 X80", new[] { 5 })]
    [InlineData("G44 H1\nG0 X80", new[] { 6 })]
    [InlineData("G10 L1 P1 R80\nG0 X80", new[] { 6 })]
    [InlineData("G43 H2\nG0 Z40\nX80", new int[0])] // to a level that is known
    [InlineData("G49\nG91 G28 Z0", new int[0])] // the way home
    public void A_length_not_known_that_changes_is_told_once_where_the_tool_travels(string blocks, int[] lines) =>
        Assert.Equal(lines, Lines("path-not-known", blocks));

    [Fact]
    public void What_is_told_names_the_missing_length()
    {
        var finding = Programs.Of("path-not-known", Start + "G43 H2\nG0 X80\nM5\nM30", "{" + Clamp + "," + NoLength + "}").Single();
        Assert.Equal("The setup gives no length for H2: where the tool stands along Z is not known, and clearance is not checked until it has moved to a new Z.", finding.Message);
    }

    /// <summary>NISTIR 6556 §3.5.5: the datum of G54 lies at −1 in the machine; where the tool stands under it was known before and is not now.</summary>
    [Fact]
    public void A_datum_first_put_by_the_program_is_told_at_the_first_move_from_where_is_not_known()
    {
        Assert.Equal([6], Lines("path-not-known", "G10 L2 P1 X-1\nG0 X80"));
        Assert.Equal([7], Lines("rapid-hits-obstacle", "G10 L2 P1 X-1\nG0 X80\nX10")); // known again at X80
        Assert.Empty(Lines("path-not-known", "G10 L2 P2 X-1\nG0 X80")); // another offset than the one in force
    }
}
