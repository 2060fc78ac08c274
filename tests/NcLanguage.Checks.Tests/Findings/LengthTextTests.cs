namespace NcLanguage.Checks.Tests;

/// <summary>Lengths in words. 25.4 mm to the inch is exact by definition (1959).</summary>
public sealed class LengthTextTests
{
    [Theory]
    [InlineData(22, true, "Z0.8662")] // 22 / 25.4 = 0.86614…
    [InlineData(25.4, true, "Z1")]
    [InlineData(-22, true, "Z-0.8661")]
    [InlineData(22, false, "Z22")]
    [InlineData(22.0001, false, "Z22.001")]
    public void A_level_that_clears_is_never_written_lower(double mm, bool isInch, string expected)
    {
        var text = new LengthText(isInch);
        Assert.Equal(expected, text.Level(text.Upward(mm)));
    }
}
