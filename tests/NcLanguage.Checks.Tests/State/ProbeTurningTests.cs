using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>That a probe stands still in the spindle while it probes is common practice, from memory.</summary>
public sealed class ProbeTurningTests
{
    const string Setup = """
        { "stock": { "min": [0, 0, -20], "max": [100, 60, 0] },
          "tools": [ { "number": 1, "kind": "end-mill", "diameter": 10 }, { "number": 9, "kind": "probe", "diameter": 6 } ] }
        """;

    static int[] Lines(string blocks) => Programs.Lines("probe-turning", $"G21 G90 G17 G54\n{blocks}\nG0 Z50\nM5\nM30\n", Setup);

    [Theory]
    [InlineData("T9 M6\nS800 M3\nG0 X-20 Y30 Z-5\nG38.2 X2 F100", new[] { 5 })]
    [InlineData("T9 M6\nS800 M4\nG0 X-20 Y30 Z-5\nG31 X2 F100", new[] { 5 })]
    [InlineData("T9 M6\nS800 M3\nG0 X-20 Y30 Z-5\nG1 X-10 F500\nG31 X2 F100", new[] { 5 })] // once
    [InlineData("T9 M6\nS800 M3\nG0 X-20 Y30 Z-5\nG31 X2 F100\nG1 X-10 F500\nG31 X2 F20", new[] { 5 })]
    [InlineData("T9 M6\nG0 X-20 Y30 Z-5\nG31 X2 F100\nS800 M3\nG0 X-10\nG31 X2 F20", new[] { 7 })] // started between
    [InlineData("T9 M6\nS800 M3\nG0 X-20 Y30 Z-5\nG2 Y20 J-5 F500", new[] { 5 })] // on an arc
    public void A_probe_that_turns_is_told_once(string blocks, int[] lines) => Assert.Equal(lines, Lines(blocks));

    [Theory]
    [InlineData("T9 M6\nG0 X-20 Y30 Z-5\nG31 X2 F100")]
    [InlineData("T9 M6\nS500 M3\nG4 P1\nM5\nG0 X-20 Y30 Z-5\nG31 X2 F100")] // switched on by turning
    [InlineData("T9 M6\nS0 M3\nG0 X-20 Y30 Z-5\nG31 X2 F100")]
    [InlineData("T9 M6\nM19\nG0 X-20 Y30 Z-5\nG31 X2 F100")]
    [InlineData("T1 M6\nS800 M3\nG0 X-20 Y30 Z-5\nG1 X50 F100\nG0 Z50\nT9 M6\nG0 X-20 Y30\nG0 Z-5\nG31 X2 F100")] // a change stops the spindle
    [InlineData("T1 M6\nS800 M4\nG0 X-20 Y30 Z-5\nG31 X2 F100")] // a cutter measured as it turns
    [InlineData("T7 M6\nS800 M3\nG0 X-20 Y30 Z-5\nG31 X2 F100")] // not known
    [InlineData("T9 M6\nS800 M3\nG0 X-20 Y30 Z5\nG1 X10 F900\nM5")] // above the stock
    public void One_that_stands_and_what_is_no_probe_are_not(string blocks) => Assert.Empty(Lines(blocks));

    [Fact]
    public void The_fix_stops_the_spindle_before()
    {
        var analysis = Programs.Analyse("G21 G90 G17 G54\nT9 M6\nS800 M3\nG0 X-20 Y30 Z-5\nG31 X2 F100\nG0 Z50\nM30\n", Setup);
        var finding = Assert.Single(analysis.Findings, finding => finding.Name == "probe-turning");
        Assert.Equal("T9 is a probe, and the spindle turns while it is fed against the work.", finding.Message);
        Assert.Equal(2, Assert.Single(analysis.Related(finding)).Line);
        var fix = Assert.Single(analysis.FixesOf(finding));
        Assert.Equal(FixSafety.Choice, fix.Safety);
        Assert.Contains("Z-5\nM5\nG31", TextEdits.Apply(analysis.Text, fix.Edits).ToString(), StringComparison.Ordinal);
    }
}
