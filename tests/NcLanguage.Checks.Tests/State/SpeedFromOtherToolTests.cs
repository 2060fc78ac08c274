using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>A tool that turns as the one before it did (NISTIR 6556 §3.6.3: a tool change stops the spindle; §3.7.2: the speed stays). The programs are our own.</summary>
public sealed class SpeedFromOtherToolTests
{
    const string Setup = """
        { "material": "aluminium", "stock": { "min": [0, 0, -20], "max": [100, 60, 0] },
          "tools": [ { "number": 1, "kind": "spot-drill", "diameter": 10, "material": "HSS", "length": 90 }, { "number": 2, "kind": "drill", "diameter": 8, "material": "HSS", "length": 110 },
                     { "number": 3, "kind": "drill", "diameter": 2, "material": "HSS", "length": 80 }, { "number": 4, "kind": "tap", "diameter": 8, "pitch": 1.25, "length": 100 }, { "number": 5, "kind": "probe", "diameter": 6, "length": 150 } ] }
        """;

    const string First = "G21 G17 G90 G94 G40 G49 G80 G54\nT1 M6\nG0 G43 H1 X10 Y10 Z50 S2000 M3\nG98 G81 X10 Y10 Z-3 R2 F200\nG80\nG91 G28 Z0\nG90\n";

    static int[] Lines(string blocks) => Programs.Lines("speed-from-other-tool", First + blocks + "\nM5\nM30", Setup);

    [Theory]
    [InlineData("T2 M6\nM3\nG0 G43 H2 X10 Y10 Z50\nG98 G81 X10 Y10 Z-9 R2 F300\nX20\nG80", new[] { 11 })] // at the first hole, once
    [InlineData("T2 M6\nS2500 M3\nG0 G43 H2 X10 Y10 Z50\nG98 G81 X10 Y10 Z-9 R2 F300\nG80", new int[0])]
    [InlineData("T2 M6\nM3\nG0 G43 H2 X10 Y10 Z50 S2500\nG98 G81 X10 Y10 Z-9 R2 F300\nG80", new int[0])] // in time for the first cut
    [InlineData("T2 M6 S2500\nM3\nG0 G43 H2 X10 Y10 Z50\nG98 G81 X10 Y10 Z-9 R2 F300\nG80", new int[0])]
    [InlineData("S2500\nT2 M6\nM3\nG0 G43 H2 X10 Y10 Z50\nG98 G81 X10 Y10 Z-9 R2 F300\nG80", new int[0])] // given for it before the change
    [InlineData("T2 M6\nT1 M6\nM3\nG0 G43 H1 X10 Y10 Z50\nG98 G81 X10 Y10 Z-9 R2 F300\nG80", new[] { 12 })]
    [InlineData("T1 M6\nM3\nG0 G43 H1 X10 Y10 Z50\nG98 G81 X30 Y10 Z-3 R2 F200\nG80", new int[0])] // the same tool
    [InlineData("T2 M6\nG0 G43 H2 X10 Y10 Z50\nG98 G81 X10 Y10 Z-9 R2 F300\nG80", new int[0])] // it stands: spindle-off
    [InlineData("T3 M6\nM3\nG0 G43 H3 X10 Y10 Z50\nG98 G81 X10 Y10 Z-9 R2 F60\nG80", new int[0])] // 12.6 m/min, which cutting-speed tells: less than half of 61
    [InlineData("T4 M6\nM3\nG0 G43 H4 X10 Y10 Z50\nG98 G84 X10 Y10 Z-9 R5 F2500\nG80", new int[0])] // its feed goes with it
    [InlineData("T5 M6\nM3\nG0 G43 H5 X10 Y10 Z50\nG1 Z-1 F300", new int[0])]
    public void It_is_told_at_the_first_cut(string blocks, int[] lines) => Assert.Equal(lines, Lines(blocks));

    [Fact]
    public void The_speed_is_named() => Assert.Equal(
        "The first cut of T2 runs at the speed of the tool before, S2000: no S has come since the tool change.",
        Assert.Single(Programs.Of("speed-from-other-tool", First + "T2 M6\nM3\nG0 G43 H2 X10 Y10 Z50\nG98 G81 X10 Y10 Z-9 R2 F300\nG80\nM5\nM30", Setup)).Message);
}
