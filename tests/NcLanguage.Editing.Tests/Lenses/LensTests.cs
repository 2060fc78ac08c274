using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Lenses;

/// <summary>The texts above tools, the program and what is called.</summary>
public sealed class LensTests
{
    static string[] Of(string program, string? setup = null)
    {
        var analysis = Editor.Analyse(program, setup);
        var operations = Editing.Lenses.Operations(analysis, default);
        return [.. Editing.Lenses.Of(analysis).Select(place => $"{place.Line + 1} {place.Kind}: {Editing.Lenses.TextOf(analysis, operations, place)}")];
    }

    const string Job =
        """
        G21 G90 G17 G54
        T4 M6
        S1500 M3 F120
        G0 X0 Y10 Z50
        G99 G82 X0 Y10 Z-3 R2 P0.5
        X10
        G80 G0 Z50
        T5 M6
        S500 M3
        G0 X60 Y10
        G81 X60 Y10 Z-9 R5 F100
        G80 G0 Z50
        M30
        """;

    /// <summary>The clamp stands from X25; the spot drill's radius is 5 mm: hole 2 at X10 leaves 25 − 10 − 5 = 10 mm. Traverses of the drill (radius 6.35 mm)
    /// from X10 to X60 pass over the clamp, 25 mm high, at Z50.</summary>
    [Fact]
    public void Tools_tell_holes_time_and_the_nearest_clamp()
    {
        var lenses = Of(Job, Editor.PlateSetup);
        Assert.Equal(3, lenses.Length);
        Assert.StartsWith("1 Program: 2 tools, 3 holes, ", lenses[0], StringComparison.Ordinal);
        Assert.StartsWith("2 Tool: 2 holes, ", lenses[1], StringComparison.Ordinal);
        Assert.EndsWith(" s, nearest 10 mm to clamp A in line 6", lenses[1], StringComparison.Ordinal);
        Assert.StartsWith("8 Tool: 1 hole, ", lenses[2], StringComparison.Ordinal);
        Assert.Contains("to clamp A in line", lenses[2], StringComparison.Ordinal);
    }

    [Fact]
    public void A_contact_is_called_one() =>
        Assert.EndsWith("contact with clamp A in line 10", Of(Job.Replace("G0 X60 Y10", "G0 X60 Y10 Z10", StringComparison.Ordinal), Editor.PlateSetup)[2], StringComparison.Ordinal);

    /// <summary>As above, in inches: 25 − 0.4 · 25.4 − 5 = 9.84 mm, 0.3874 in.</summary>
    [Fact]
    public void A_program_in_inches_is_told_inches() =>
        Assert.EndsWith(" s, nearest 0.3874 in to clamp A in line 6",
            Of("G20 G90 G17 G54\nT4 M6\nS1500 M3 F5\nG0 X0 Y0.4 Z2\nG99 G82 X0 Y0.4 Z-0.1 R0.1 P0.5\nX0.4\nG80 G0 Z2\nM30", Editor.PlateSetup)[1], StringComparison.Ordinal);

    [Fact]
    public void Called_programs_tell_how_often_they_run() =>
        Assert.Equal(["4 Called: runs 3 times, 0 s", "7 Called: not called"],
            Of("O1\nM98 P2 L3\nM30\nO2\nG91 X1\nM99\nO3\nM99").Where(lens => lens.Contains("Called", StringComparison.Ordinal)));

    [Fact]
    public void A_program_without_tools_has_none() => Assert.Empty(Of("G0 X1\nM30"));
}
