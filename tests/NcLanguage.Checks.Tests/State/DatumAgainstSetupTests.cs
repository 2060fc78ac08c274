using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>Datums that a program writes (G10 L2, NISTIR 6556 §3.5.5) with a slip in a number that the setup has too. Which slips are usual: common practice. The programs are our own.</summary>
public sealed class DatumAgainstSetupTests
{
    const string Setup = """
        { "workOffsets": { "G54": [-500, -250, -420], "G55": [-300, -250, -420] }, "stock": { "min": [0, 0, -16], "max": [120, 80, 0] },
          "tools": [ { "number": 1, "kind": "drill", "diameter": 6.8, "pointAngle": 118, "fluteLength": 60, "length": 120 } ] }
        """;

    const string InchSetup = """{ "units": "inch", "workOffsets": { "G54": [-20, -10, -16.5] } }""";

    const string Mill = """{ "name": "bench mill", "travel": { "x": [-800, 0], "y": [-450, 0], "z": [-500, 0] } }""";

    static List<Finding> Of(string datum, string setup = Setup, string unit = "G21") => Programs.Of("datum-against-setup", $"{unit} G90 G17 G54\n{datum}\nG0 X0 Y0\nM30\n", setup);

    [Theory]
    [InlineData("G10 L2 P1 X500 Y-250 Z-420", "This puts the datum of G54 to X500, and the setup has it at X-500: what follows under it runs 1000 mm beside its place.")]
    [InlineData("G10 L2 P1 X-500 Y-250 Z-42", "This puts the datum of G54 to Z-42, and the setup has it at Z-420: what follows under it runs 378 mm beside its place.")]
    [InlineData("G10 L2 P2 X-300 Y25 Z-420", null)]
    [InlineData("G10 L2 P2 X-300 Y-2.5 Z-420", "This puts the datum of G55 to Y-2.5, and the setup has it at Y-250: what follows under it runs 247.5 mm beside its place.")]
    [InlineData("G10 L2 P1 X500 Y250 Z-420", "This puts the datum of G54 to X500 Y250, and the setup has it at X-500 Y-250: what follows under it runs 1000 mm beside its place.")]
    // As they should be, and new ones: the setup may be older.
    [InlineData("G10 L2 P1 X-500 Y-250 Z-420", null)]
    [InlineData("G10 L2 P1 X-480 Y-250 Z-420", null)]
    [InlineData("G10 L2 P1 X500 Y-240 Z-420", null)]
    [InlineData("G10 L2 P3 X500 Y-250 Z-420", null)]
    [InlineData("G10 L2 P1 X500", null)]
    [InlineData("#1=500\nG10 L2 P1 X#1 Y-250 Z-420", null)]
    [InlineData("G91 G10 L2 P1 X500 Y0\nG90", null)]
    // A second place of the fixture, on the other side of the machine's zero.
    [InlineData("G10 L2 P1 X-500 Y-250 Z-420\nG0 X10 Y10\nG10 L2 P1 X500 Y-250 Z-420", null)]
    [InlineData("G0 X10 Y10\nG10 L2 P1 X500 Y-250 Z-420", null)]
    public void A_sign_or_a_digit_is_told(string datum, string? message)
    {
        var found = Of(datum);
        if (message is null)
            Assert.Empty(found);
        else
            Assert.Equal(message, Assert.Single(found).Message);
    }

    [Theory]
    [InlineData("G10 L2 P1 X-300 Y-250 Z-420", "P1 is G54, and the numbers are those that the setup has for G55: is P2 meant?")]
    [InlineData("G10 L2 P1 X-500 Y-250 Z-420\nG10 L2 P1 X-300 Y-250", "P1 is G54, and the numbers are those that the setup has for G55: is P2 meant?")]
    // One number is no datum, and neither is a second place behind a move.
    [InlineData("G10 L2 P1 X-300", null)]
    [InlineData("G10 L2 P1 X-300 Y-250 Z-410", null)]
    [InlineData("G0 X10 Y10\nG10 L2 P1 X-300 Y-250 Z-420", null)]
    [InlineData("G10 L2 P1 Y-250 Z-420", null)]
    public void Another_work_offsets_datum_is_told(string datum, string? message)
    {
        var found = Of(datum);
        if (message is null)
            Assert.Empty(found);
        else
            Assert.Equal(message, Assert.Single(found).Message);
    }

    /// <summary>L2 writes machine coordinates, L20 (common practice) what the tool's place is to be called: 0 with the first, where the setup has the datum elsewhere, is the second.</summary>
    [Theory]
    [InlineData("G10 L2 P1 X0 Y0", "L2 puts the datum of G54 to the machine's own X0 Y0, and the setup has it at X-500 Y-250; L20 would make X0 Y0 of where the tool stands.")]
    [InlineData("G0 X10 Y10\nG10 L2 P1 Z0.", "L2 puts the datum of G54 to the machine's own Z0, and the setup has it at Z-420; L20 would make Z0 of where the tool stands.")]
    [InlineData("G10 L20 P1 X0 Y0", null)]
    [InlineData("G10 L2 P3 X0 Y0", null)]
    [InlineData("G91 G10 L2 P1 X0 Y0\nG90", null)]
    // Cleared, and written anew; and one that is measured by where the tool stands behind it.
    [InlineData("G10 L2 P1 X0 Y0 Z0\nG10 L2 P1 X-480 Y-240 Z-420", null)]
    [InlineData("G10 L2 P1 X0 Y0 Z0\nG10 L20 P1 X0 Y0 Z5", null)]
    [InlineData("G10 L2 P1 X0 Y-240", null)]
    public void A_datum_in_the_machines_zero_is_told(string datum, string? message)
    {
        var found = Of(datum);
        if (message is null)
            Assert.Empty(found);
        else
            Assert.Equal(message, Assert.Single(found).Message);
    }

    /// <summary>Gauge lengths measured down to the work: its level is 0 in the setup too.</summary>
    [Fact]
    public void A_zero_that_the_setup_has_too_is_none() =>
        Assert.Empty(Of("G10 L2 P1 Z0", Setup.Replace("\"G54\": [-500, -250, -420]", "\"G54\": [-500, -250, 0]", StringComparison.Ordinal)));

    [Fact]
    public void An_inch_program_is_told_in_inches() =>
        Assert.Equal("This puts the datum of G54 to X20, and the setup has it at X-20: what follows under it runs 40 in beside its place.", Assert.Single(Of("G10 L2 P1 X20 Y-10 Z-16.5", InchSetup, "G20")).Message);

    [Theory]
    [InlineData("X500 Y-250 Z-420", "2 more findings may come of it and are not told by themselves: travel-exceeded, hole-outside-stock.")]
    [InlineData("X-500 Y-250 Z-42", "3 more findings may come of it and are not told by themselves: travel-exceeded, hole-above-stock, r-far.")]
    public void What_comes_of_it_is_told_with_it(string datum, string told)
    {
        var program = $"G21 G90 G17 G54 G40 G49 G80 G94\nG10 L2 P1 {datum}\nT1 M6\nS1200 M3\nG0 X10 Y10\nG43 H1 Z25 M8\nG99 G81 X10 Y10 Z-6 R2 F150\nG80 G0 Z25 M9\nG91 G28 Z0 M5\nG90\nM30\n";
        var found = Programs.Analyse(program, Setup, Mill).Findings;
        Assert.EndsWith(told, Assert.Single(found, finding => finding.Severity < Severity.Note).Message, StringComparison.Ordinal);
    }
}
