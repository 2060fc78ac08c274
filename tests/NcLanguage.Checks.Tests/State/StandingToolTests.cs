using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>That broaches, dragged scribers and pullers for bars work with the spindle standing, and that some finders of edges turn, is common practice, from memory.</summary>
public sealed class StandingToolTests
{
    const string Setup = """
        { "material": "aluminium", "stock": { "min": [0, 0, -20], "max": [100, 60, 0] },
          "tools": [ { "number": 1, "kind": "end-mill", "diameter": 10, "material": "carbide", "flutes": 2 },
                     { "number": 7, "kind": "chamfer-mill", "diameter": 6, "material": "carbide", "flutes": 1, "turns": false },
                     { "number": 8, "kind": "probe", "diameter": 10, "turns": true },
                     { "number": 9, "kind": "probe", "diameter": 6 } ] }
        """;

    static string[] Names(string blocks) =>
        [.. Programs.Analyse($"G21 G90 G17 G54 G94\n{blocks}\nG0 Z50\nM5\nM30\n", Setup).Findings.Where(finding => finding.Severity != Severity.Note && finding.Id.StartsWith("NC2", StringComparison.Ordinal) && !finding.Name.StartsWith("length", StringComparison.Ordinal)).Select(finding => finding.Name)];

    [Theory]
    [InlineData("T7 M6\nM19\nG0 X20 Y30 Z5\nG1 Z-1 F2000\nG1 X60")]
    [InlineData("T7 M6\nG0 X20 Y30 Z5\nG1 Z-1 F2000\nG1 X60")]
    [InlineData("T7 M6\nS300 M3\nG0 X20 Y30 Z5\nG1 Z1 F2000\nM5\nG1 Z-1\nG1 X60")] // stopped in time
    [InlineData("T8 M6\nS600 M3\nG0 X-20 Y30 Z-5\nG1 X-5 F100")]
    [InlineData("T9 M6\nG0 X-20 Y30 Z-5\nG38.2 X2 F100")]
    public void A_tool_that_does_as_the_setup_says_is_not_told(string blocks) => Assert.Empty(Names(blocks));

    [Theory]
    [InlineData("T7 M6\nS300 M3\nG0 X20 Y30 Z5\nG1 Z-1 F2000\nG1 X60", "standing-tool-turning")] // once
    [InlineData("T7 M6\nS300 M4\nG0 X20 Y30 Z5\nG1 Z-1 F2000\nG1 X60", "standing-tool-turning")] // and not as one that turns backwards
    [InlineData("T1 M6\nS9000 M3\nG0 X20 Y30 Z5\nG1 Z-1 F2000\nG0 Z50\nG53 Z0\nT7 M6\nM3\nG0 X20 Y40 Z5\nG1 Z-1 F2000", "standing-tool-turning")] // nor at the speed of the tool before
    [InlineData("T8 M6\nG0 X-20 Y30 Z-5\nG1 X-5 F100", "spindle-off")]
    [InlineData("T9 M6\nS600 M3\nG0 X-20 Y30 Z-5\nG38.2 X2 F100", "probe-turning")]
    [InlineData("T1 M6\nG0 X20 Y30 Z5\nG1 Z-1 F2000", "spindle-off")]
    public void One_that_does_not_is_told_once(string blocks, string name) => Assert.Equal([name], Names(blocks));

    /// <summary>A speed far above the table's is no matter of a tool that does not turn.</summary>
    [Fact]
    public void No_cutting_speed_is_asked_of_it() =>
        Assert.DoesNotContain(Programs.Analyse("G21 G90 G17 G54 G94\nT7 M6\nS30 M3\nG0 X20 Y30 Z5\nG1 Z-1 F9\nG0 Z50\nM5\nM30\n", Setup).Findings, finding => finding.Name is "cutting-speed" or "feed-per-tooth");

    [Fact]
    public void The_fix_stops_the_spindle_before()
    {
        var analysis = Programs.Analyse("G21 G90 G17 G54\nT7 M6\nS300 M3\nG0 X20 Y30 Z5\nG1 Z-1 F2000\nG0 Z50\nM30\n", Setup);
        var finding = Assert.Single(analysis.Findings, finding => finding.Name == "standing-tool-turning");
        Assert.Equal("The setup says that T7 does not turn while it works, and here it is fed with the spindle turning.", finding.Message);
        Assert.Equal(2, Assert.Single(analysis.Related(finding)).Line);
        Assert.Contains("Z5\nM5\nG1", TextEdits.Apply(analysis.Text, Assert.Single(analysis.FixesOf(finding)).Edits).ToString(), StringComparison.Ordinal);
    }
}
