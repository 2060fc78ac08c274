using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>G41 keeps the tool to the left of the path, G42 to the right (NISTIR 6556 §3.5.10); left of a way that runs counterclockwise lies its inside (plane geometry).</summary>
public sealed class CompensationWrongSideTests
{
    const string Setup = """{ "stock": { "min": [0, 0, -20], "max": [100, 60, 0] }, "tools": [ { "number": 2, "kind": "end-mill", "diameter": 8, "radiusOffset": 2 } ] }""";

    static List<Finding> Of(string blocks, string setup = Setup, string behind = "") =>
        Programs.Of("compensation-wrong-side", $"G21 G90 G17 G54\nT2 M6\nS4000 M3\nG43 H2 Z50\n{blocks.Replace('|', '\n')}\nG0 Z50\nM5\nM30\n{behind.Replace('|', '\n')}", setup);

    const string Rim = "G1 X0 F500|Y60|X100|Y0|X-15|G40 Y-15";
    const string RimBack = "G1 Y0 F500|X100|Y60|X0|Y-15|G40 X-15";

    const string Pocket = "G1 X56 Y44 F500|G3 X50 Y50 I-6|G1 X20|G3 X10 Y40 J-10|G1 Y20|G3 X20 Y10 I10|G1 X80|G3 X90 Y20 J10|G1 Y40|G3 X80 Y50 I-10|G1 X50|G3 X44 Y44 J-6|G40 G1 X50 Y38";

    [Theory]
    [InlineData("G0 X-15 Y-15|Z-5|G41 D2 " + Rim, 0)]
    [InlineData("G0 X-15 Y-15|Z-5|G42 D2 " + Rim, 1)]
    [InlineData("G0 X-15 Y-15|Z-5|G42 D2 " + RimBack, 0)]
    [InlineData("G0 X-15 Y-15|Z-5|G41 D2 " + RimBack, 1)]
    [InlineData("G0 X50 Y38|Z2|G1 Z-5 F100|G41 D2 " + Pocket, 0)]
    [InlineData("G0 X50 Y38|Z2|G1 Z-5 F100|G42 D2 " + Pocket, 1)]
    [InlineData("G0 X50 Y30|Z2|G1 Z-5 F100|G41 D2 G1 X70 Y30 F300|G3 I-20|G40 G1 X50", 0)] // a bore
    [InlineData("G0 X50 Y30|Z2|G1 Z-5 F100|G42 D2 G1 X70 Y30 F300|G3 I-20|G40 G1 X50", 1)]
    [InlineData("G0 X50 Y22|Z2|G1 Z-5 F100|G41 D2 G1 X62 Y22 F300|G3 X50 Y10 I-12|G1 X90|Y50|X10|Y10|X50|G3 X62 Y22 J12|G40 G1 X50", 0)] // in on three quarters of a circle
    [InlineData("G0 X-15 Y-15|Z-5|G42 D2 M98 P2|G40 G1 Y-15", 0)] // through a call it is not followed
    public void The_way_in_begins_on_the_side_that_the_tool_keeps(string blocks, int told) => Assert.Equal(told, Of(blocks, behind: "O2|G1 X0 F500|Y60|X100|Y0|X-15|M99").Count);

    [Theory]
    [InlineData("G0 X-15 Y20|Z-5|G42 D2 G1 Y10 F500|X60|Y50|X-15|G40 Y30")] // an open pocket, from beside the part
    [InlineData("G0 X-15 Y-15|Z20|G42 D2 G1 X0 F500|Z-5|Y60|X100|Y0|X-15|G40 Y-15")] // down once it stands beside the path
    [InlineData("G0 X-15 Y-15|Z2|G42 D2 " + Rim)] // above the part
    [InlineData("G0 X20 Y30|Z2|G1 Z-5 F100|G42 D2 G1 X30 F300|X70|X30|G40 X20")] // a slit forth and back
    [InlineData("G0 X-3 Y-15|Z-5|G42 D2 " + Rim)] // nearer to the contour than its radius
    public void Others_are_silent(string blocks) => Assert.Empty(Of(blocks));

    /// <summary>A spigot with quarter circles in and out: of a turn that goes back on both, its G3 is told, and not G41, which is right. Where the side is wrong, the side is told.</summary>
    [Theory]
    [InlineData("G41", "G3 X70 Y30 J-15|G2 I-20|G3 X85 Y15 I15", "")]
    [InlineData("G41", "G3 X70 Y30 J-15|G3 I-20|G3 X85 Y15 I15", "arc-other-way")]
    [InlineData("G42", "G3 X70 Y30 J-15|G2 I-20|G3 X85 Y15 I15", "compensation-wrong-side")]
    public void A_turn_the_other_way_is_told_as_such(string side, string turn, string told)
    {
        var blocks = $"G0 X110 Y45|Z-5|{side} D2 G1 X85 F400|{turn}|G40 G1 X110".Replace('|', '\n');
        var found = Programs.Analyse($"G21 G90 G17 G54\nT2 M6\nS4000 M3\nG43 H2 Z50\n{blocks}\nG0 Z50\nM5\nM30\n", Setup).Findings;
        Assert.Equal(told.Length > 0 ? [told] : [], found.Where(finding => finding.Name is "arc-other-way" or "compensation-wrong-side").Select(finding => finding.Name));
    }

    [Fact]
    public void Without_a_stock_it_is_silent() => Assert.Empty(Of("G0 X-15 Y-15|Z-5|G42 D2 " + Rim, """{ "tools": [ { "number": 2, "kind": "end-mill", "diameter": 8, "radiusOffset": 2 } ] }"""));

    [Fact]
    public void The_sides_are_told() => Assert.Equal(
        "G42 keeps the tool inside this contour, which runs clockwise, and the way in begins outside: the tool crosses the wall. Is G41 meant?", Assert.Single(Of("G0 X-15 Y-15|Z-5|G42 D2 " + Rim)).Message);

    [Fact]
    public void A_contour_is_looked_at_again_where_an_edit_changes_it_alone()
    {
        // The contour begins in one chunk and ends in the next.
        static string Comments(int count) => string.Concat(Enumerable.Repeat("(a line)\n", count));
        var text = "G21 G90 G17 G54\nT2 M6\nS4000 M3\nG0 G43 H2 Z50\n" + Comments(117) + "G0 X-15 Y-15\nZ-5\nG42 D2 G1 X0 F500\nY30\nY60\nX50\nX80\nX100\n"
            + Comments(40) + "Y0\nX-15\nG40 Y-15\nG0 Z50\n" + string.Concat(Enumerable.Repeat("G0 X-20 Y-20\nX-30\n", 300)) + "M5\nM30\n";
        var analysis = Programs.Analyse(text, Setup);
        var source = analysis.Text;
        Assert.Single(analysis.Findings, finding => finding.Id == "NC2046");
        Assert.Equal(1, analysis.Main.Results[0].TimesContoursLookedAt);

        var far = analysis.WithText(source.WithChange(text.Length - 4, text.Length - 4, "(end)"u8));
        Assert.Single(far.Findings, finding => finding.Id == "NC2046");
        Assert.Equal(1, far.Main.Results[0].TimesContoursLookedAt);

        // Behind the chunk that it begins in: the contour no longer closes.
        var at = text.IndexOf("Y0\nX-15", StringComparison.Ordinal);
        Assert.True(source.ChunkOfLine(source.LineAt(at)) > 0);
        var near = far.WithText(source.WithChange(at, at + "Y0\nX-15".Length, "X-15"u8));
        Assert.DoesNotContain(near.Findings, finding => finding.Id == "NC2046");
    }
}
