using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>G44 takes the length of its H away from Z (common practice): a length of 100 mm above 0 puts the tip 200 mm lower than G43 would.</summary>
public sealed class LengthOffsetSignTests
{
    const string Tool = """{ "tools": [ { "number": 1, "kind": "end-mill", "diameter": 10, "length": 100 } ] }""";
    const string NoLength = """{ "tools": [ { "number": 1, "kind": "end-mill", "diameter": 10 } ] }""";
    const string Start = "G21 G90 G17 G54\nT1 M6\nS1000 M3\n";

    // Another tool's H, H0 among them, is a warning of its own.
    static List<Finding> Of(string blocks, string setup) =>
        [.. Programs.Of("length-offset-mismatch", Start + blocks + "\nM5\nM30", setup).Where(finding => finding.Severity == Severity.Error)];

    [Theory]
    [InlineData("G0 G44 H1 Z50", Tool, 1)]
    [InlineData("G0 G43 H1 Z50", Tool, 0)]
    [InlineData("G0 G44 H0 Z50", Tool, 0)]
    [InlineData("G0 G44 H1 Z50", NoLength, 0)]
    [InlineData("G10 L10 P1 R-100\nG0 G44 H1 Z50", Tool, 0)] // a list with lengths below 0
    [InlineData("G10 L10 P1 R80\nG0 G44 H1 Z50", NoLength, 1)]
    public void A_length_above_0_is_not_to_be_taken_away(string blocks, string setup, int findings) => Assert.Equal(findings, Of(blocks, setup).Count);

    [Fact]
    public void It_is_an_error_that_says_how_much_lower_the_tip_runs()
    {
        var finding = Assert.Single(Of("G0 G44 H1 Z50", Tool));
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Contains("100 mm", finding.Message, StringComparison.Ordinal);
        Assert.Contains("200 mm lower", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void G43_is_offered()
    {
        var analysis = Programs.Analyse(Start + "G0 G44 H1 Z50\nM5\nM30", Tool);
        var fix = Assert.Single(analysis.FixesOf(analysis.Findings.Single(finding => finding.Name == "length-offset-mismatch")));
        Assert.Equal(FixSafety.Choice, fix.Safety);
        Assert.Contains("G0 G43 H1 Z50", TextEdits.Apply(analysis.Text, fix.Edits).ToString(), StringComparison.Ordinal);
    }
}
