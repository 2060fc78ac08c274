using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>A tangent arc leaves its chord at both ends by the same angle, and its radius is the chord by twice the sine of that (plane geometry): in a corner of 90° with sides of 10 mm it is 10 mm,
/// where the path turns by 60° over a chord of 8 mm it is 8 mm. That points are misplaced is common practice.</summary>
public sealed class ArcRadiusPointTests
{
    static List<Finding> Of(string blocks) => Programs.Of(
        "arc-radius-point", $"G21 G17 G90 G94 G40 G54\nT3 M6\nS2000 M3\nG0 X-20 Y0\nG43 H3 Z-5\n{blocks}\nG0 Z50\nM5\nM30", """{ "tools": [ { "number": 3, "kind": "end-mill", "diameter": 8, "length": 90, "radiusOffset": 3 } ] }""");

    [Theory]
    [InlineData("G1 X50 F300\nG3 X60 Y10 R100\nG1 Y40", "R10")]
    [InlineData("G1 X50 F300\nG3 X60 Y10 R100.\nG1 Y40", "R10.")]
    [InlineData("G1 X50 F300\nG2 X60 Y-10 R1000\nG1 Y-40", "R10")]
    [InlineData("G1 X50 F300\nG3 X52.5 Y2.5 R25\nG1 Y40", "R2.5")]
    [InlineData("G1 X50 F300\nG3 X56.928 Y4 R80\nG1 X76.928 Y38.641", "R8")] // turns by 60°
    [InlineData("G1 G42 D3 X0 F300\nG1 X50\nG3 X60 Y10 R100\nG1 Y40\nG40 X70", "R10")]
    [InlineData("G2 X0 Y0 I10 J0 F300\nG3 X10 Y-10 R100\nG1 X40", "R10")] // behind an arc that ends straight down
    public void A_radius_ten_times_the_tangent_one_is_told(string blocks, string fits)
    {
        var finding = Assert.Single(Of(blocks));
        Assert.Contains($"with {fits} it would run smoothly into both.", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("G1 X50 F300\nG3 X60 Y10 R10\nG1 Y40")]
    [InlineData("G1 X50 F300\nG3 X60 Y10 R50\nG1 Y40")] // five times
    [InlineData("G1 X50 F300\nG3 X60 Y12 R100\nG1 Y40")] // no tangent arc fits
    [InlineData("G1 X50 F300\nG2 X60 Y10 R100\nG1 Y40")] // and not the other way round
    [InlineData("G1 X50 F300\nG3 X60 Y10 R100")] // nothing behind it
    [InlineData("G0 X50\nG3 X60 Y10 R100 F300\nG1 Y40")] // nor before
    [InlineData("G1 X0 F300\nG2 X20 R100\nG2 X40 R100\nG2 X60 R100")] // shallow waves
    public void Others_are_not(string blocks) => Assert.Empty(Of(blocks));

    [Fact]
    public void The_fix_moves_the_point()
    {
        var analysis = Programs.Analyse("G21 G17 G90 G94 G40 G54\nG0 X-20 Y0 Z-5\nG1 X50 F300\nG3 X60 Y10 R100\nG1 Y40\nM30");
        var finding = Assert.Single(analysis.Findings, finding => finding.Name == "arc-radius-point");
        Assert.Contains("G3 X60 Y10 R10\n", TextEdits.Apply(analysis.Text, Assert.Single(analysis.FixesOf(finding)).Edits).ToString(), StringComparison.Ordinal);
    }
}
