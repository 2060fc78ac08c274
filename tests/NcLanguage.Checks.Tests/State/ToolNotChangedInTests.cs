using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>T names a tool and M6 changes it in (NISTIR 6556 §3.6.3 and §3.7.3); that the next tool is made ready while one cuts is common practice.</summary>
public sealed class ToolNotChangedInTests
{
    static int[] Lines(string blocks, string readings = "") => Programs.Lines("tool-not-changed-in", $"G21 G90 G17 G54\n{blocks}\nG0 Z50\nM5\nM30\n", readings: readings);

    [Theory]
    [InlineData("T1\nS900 M3\nG0 X20 Y30 Z5\nG1 Z-2 F100", new[] { 2 })]
    [InlineData("T1 S900 M3\nG0 X20 Y30 Z5\nG98 G81 Z-2 R2 F100\nG80", new[] { 2 })]
    [InlineData("T1\nS900 M3\nG0 X20 Y30 Z5\nG1 Z-2 F100\nG0 Z50\nT2 M6\nM3\nG0 X40\nG1 Z-2", new[] { 2 })] // the second is changed in
    public void A_first_tool_that_stays_in_the_changer_is_told(string blocks, int[] lines) => Assert.Equal(lines, Lines(blocks));

    [Theory]
    [InlineData("T1 M6\nS900 M3\nG0 X20 Y30 Z5\nG1 Z-2 F100")]
    [InlineData("T1\nM6\nS900 M3\nG0 X20 Y30 Z5\nG1 Z-2 F100")]
    [InlineData("T1 M6\nT2\nS900 M3\nG0 X20 Y30 Z5\nG1 Z-2 F100")] // made ready
    [InlineData("T2\nS900 M3\nG0 X20 Y30 Z5\nG1 Z-2 F100\nG0 Z50\nM6\nM3\nG0 X40\nG1 Z-2")] // for the change behind
    [InlineData("T0\nS900 M3\nG0 X20 Y30 Z5\nG1 Z-2 F100")]
    [InlineData("S900 M3\nG0 X20 Y30 Z5\nG1 Z-2 F100\nT1")]
    [InlineData("T1\nG0 X20 Y30 Z50")] // nothing is cut
    public void Others_are_not(string blocks) => Assert.Empty(Lines(blocks));

    [Fact]
    public void Where_T_changes_the_tool_nothing_is_missing() => Assert.Empty(Lines("T1\nS900 M3\nG0 X20 Y30 Z5\nG1 Z-2 F100", "toolChange=T"));
}
