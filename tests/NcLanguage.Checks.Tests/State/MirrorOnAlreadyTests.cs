using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>A mirror stays on until it is cancelled (common practice): the same one written again changes nothing.</summary>
public sealed class MirrorOnAlreadyTests
{
    [Theory]
    [InlineData("G51.1 X0|X10|G51.1 X0", 1)]
    [InlineData("G51.1 X0|X10|G50.1 X0|X10|G51.1 X0", 0)]
    [InlineData("G51.1 X0|X10|G51.1 Y0|X10|G50.1 X0", 0)] // the four quadrants
    [InlineData("G51.1 X0|X10|G51.1 X60", 0)]
    [InlineData("G51.1 X0|X10|G51.1 X0 Y0", 0)]
    [InlineData("G51 X0 Y0 I-1 J1 K1|X10|G51 X0 Y0 I-1 J1 K1", 1)]
    [InlineData("G51 X0 Y0 P2|X10|G51 X0 Y0 P2", 0)]
    public void The_very_mirror_that_is_in_force_is_told(string blocks, int told) =>
        Assert.Equal(told, Check.Of("mirror-on-already", $"G21 G90 G17 G54\nM3 S500\nG0 X0 Y0 Z5\n{blocks.Replace('|', '\n')}\nM5\nM30").Count);
}
