using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cutting;

/// <summary>A groove or a thread stands about the axis of its bore: common practice. The programs are our own.</summary>
public sealed class GrooveOffBoreTests
{
    const string Hollow = """, "hollows": [ { "center": [40, 30], "diameter": 32 } ]""";

    static List<Finding> Of(string blocks, string tool = """{ "number": 8, "kind": "slot-mill", "diameter": 20, "shankDiameter": 8, "fluteLength": 3 }""", string hollow = Hollow) => Programs.Of(
        "groove-off-bore", $"G21 G90 G17 G54 G94\n{blocks}\nG0 Z50\nM5\nM30",
        $$"""
        { "stock": { "min": [0, 0, -30], "max": [80, 60, 0]{{hollow}} },
          "tools": [ { "number": 5, "kind": "end-mill", "diameter": 16 }, { "number": 6, "kind": "boring-bar", "diameter": 32 }, {{tool}} ] }
        """);

    static string At(double x) => FormattableString.Invariant($"T8 M6\nS900 M3\nG0 X{x} Y30\nZ-10\nG1 X{x + 7.5} F90\nG3 I-7.5\nG1 X{x}");

    [Theory]
    [InlineData(40, 0)]
    [InlineData(40.02, 0)] // rounded
    [InlineData(40.5, 1)]
    [InlineData(47, 1)]
    [InlineData(52, 0)] // farther off than the tool's radius
    public void A_groove_beside_the_axis_of_its_bore_is_told(double x, int count) => Assert.Equal(count, Of(At(x)).Count);

    /// <summary>What the program bores itself counts, as far down as it goes.</summary>
    [Theory]
    [InlineData("Z-31", 1)]
    [InlineData("Z-8", 0)]
    public void A_bore_of_the_program_counts(string bottom, int count) => Assert.Equal(
        count, Of($"T6 M6\nS800 M3\nG0 X40 Y30 Z30\nG98 G85 X40 Y30 {bottom} R2 F60\nG80\n" + At(40.5), hollow: "").Count);

    [Theory]
    [InlineData(40.5, 1)]
    [InlineData(40, 0)]
    public void A_thread_is_held_against_its_bore_too(double x, int count)
    {
        var thread = FormattableString.Invariant($"T8 M6\nS900 M3\nG0 X{x} Y30\nZ-20\nG1 X{x + 9.5} F90\nG3 I-9.5 Z-18\nG1 X{x}");
        Assert.Equal(count, Of(thread, """{ "number": 8, "kind": "thread-mill", "diameter": 16, "pitch": 2 }""").Count);
    }

    /// <summary>Another bore about its own centre: the groove is that one's. A step that an end mill cuts beside the axis is meant.</summary>
    [Fact]
    public void What_has_a_bore_of_its_own_or_is_no_groove_is_not()
    {
        Assert.Empty(Of("T6 M6\nS800 M3\nG0 X41 Y30 Z30\nG98 G85 X41 Y30 Z-31 R2 F60\nG80\n" + At(41)));
        Assert.Empty(Of("T5 M6\nS900 M3\nG0 X41 Y30\nZ-10\nG1 X51 F90\nG3 I-10\nG1 X41"));
    }

    [Fact]
    public void Both_places_are_told() => Assert.Equal(
        "The groove is milled about X40.5 Y30, and the bore of 32 mm around it stands at X40 Y30, 0.5 mm beside it.", Assert.Single(Of(At(40.5))).Message);

    /// <summary>A seat that is cored and then bored is as wide as it was bored last, whichever of the two is listed first.</summary>
    [Theory]
    [InlineData(28)]
    [InlineData(32.4)]
    public void The_bore_that_is_told_is_the_widest_there(double cored) => Assert.Contains(
        FormattableString.Invariant($"the bore of {Math.Max(cored, 32)} mm around it"),
        Assert.Single(Of("T6 M6\nS800 M3\nG0 X40 Y30 Z30\nG98 G85 X40 Y30 Z-31 R2 F60\nG80\n" + At(40.5), hollow: FormattableString.Invariant($$""", "hollows": [ { "center": [40, 30], "diameter": {{cored}} } ]"""))).Message,
        StringComparison.Ordinal);
}
