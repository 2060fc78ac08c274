using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>Some controls count the factor of G51 in thousandths where it has no point: common practice, from memory.</summary>
public sealed class ScaleFactorPointTests
{
    static List<Finding> Of(string block) => Programs.Of("scale-factor-point", $"G21 G90 G17 G54\n#1=1013\n{block}\nG0 X20 Y30\nG50\nM30\n");

    [Theory]
    [InlineData("G51 X0 Y0 P1013", 1)]
    [InlineData("G51 X0 Y0 P500", 1)]
    [InlineData("G51 X0 Y0 P1.013", 0)]
    [InlineData("G51 X0 Y0 P500.", 0)]
    [InlineData("G51 X0 Y0 P2", 0)]
    [InlineData("G51 X0 Y0 P#1", 0)]
    [InlineData("G4 P1013", 0)]
    public void A_large_whole_factor_without_a_point_is_told(string block, int count) => Assert.Equal(count, Of(block).Count);

    [Fact]
    public void Both_readings_are_named() =>
        Assert.Equal("P1013 stretches the path 1013 times here; a control that counts in thousandths takes it as 1.013.", Assert.Single(Of("G51 X0 Y0 P1013")).Message);
}
