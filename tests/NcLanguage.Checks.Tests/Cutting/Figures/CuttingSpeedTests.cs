using NcLanguage.Checks.Cutting;

namespace NcLanguage.Checks.Tests.Cutting.Figures;

public sealed class CuttingSpeedTests
{
    /// <summary>D 12.7 at 25 m/min: 626.6 (Groover, Fundamentals of Modern Manufacturing, drilling problem); D 10 at 30: 954.9 (the same kind of problem);
    /// 10 mm at 100 m/min: 3183 (drilling example on a question site); the last two by arithmetic.</summary>
    [Theory]
    [InlineData(25, 12.7, 626.6)]
    [InlineData(30, 10, 954.9)]
    [InlineData(100, 10, 3183.1)]
    [InlineData(20, 8.5, 749.0)]
    [InlineData(30, 6.8, 1404.3)]
    public void Spindle_speed_in_metres(double speed, double diameter, double turns)
    {
        Assert.Equal(turns, CuttingSpeed.SpindleSpeed(speed, diameter), 0.06);
        Assert.Equal(speed, CuttingSpeed.AtDiameter(turns, diameter), 0.01);
    }

    /// <summary>½ in at 80 ft/min: 611.2; at 100 ft/min a lab sheet prints 764 (exact 763.9). RPM = 12·SFPM/(π·D): open textbook Machining 1, chapter 8 part 5.</summary>
    [Theory]
    [InlineData(80, 0.5, 611.2)]
    [InlineData(100, 0.5, 763.9)]
    public void Spindle_speed_in_inches(double feet, double inches, double turns) =>
        Assert.Equal(turns, CuttingSpeed.SpindleSpeed(feet * CuttingSpeed.MetresPerFoot, inches * 25.4), 0.05);

    /// <summary>The shop's 3.82·SFPM/D (drill reference sheet) is the exact form to its three figures.</summary>
    [Fact]
    public void The_shop_form_agrees() => Assert.Equal(3.82 * 100 / 0.5, CuttingSpeed.SpindleSpeed(100 * CuttingSpeed.MetresPerFoot, 12.7), 0.2);

    /// <summary>626.6 at 0.30: 188 mm/min; 954.9 at 0.25: 238.7; 3183 at 0.06: 191 (the problems above).</summary>
    [Theory]
    [InlineData(626.6, 0.30, 188)]
    [InlineData(954.9, 0.25, 238.7)]
    [InlineData(3183, 0.06, 191)]
    public void Feed_of_a_drill(double turns, double perTurn, double feed) => Assert.Equal(feed, CuttingSpeed.Feed(turns, 1, perTurn), 0.05);

    /// <summary>F = n·z·fz (textbook, from memory): 1200 · 4 · 0.05.</summary>
    [Fact]
    public void Feed_of_a_mill() => Assert.Equal(240, CuttingSpeed.Feed(1200, 4, 0.05), 1e-9);

    /// <summary>M6 at S600: F600 (textbook program); NISTIR 6556 §3.5.16.5: 2 threads/mm, S300: F150; the others are the pitches of ISO 261 at 500.</summary>
    [Theory]
    [InlineData(600, 1, 600)]
    [InlineData(300, 0.5, 150)]
    [InlineData(500, 0.7, 350)]
    [InlineData(500, 1.25, 625)]
    [InlineData(500, 1.75, 875)]
    public void Feed_of_a_tap(double turns, double pitch, double feed) => Assert.Equal(feed, CuttingSpeed.TapFeed(turns, pitch), 1e-9);

    /// <summary>Groover's problem: 23 812 mm³/min, printed as 396.9 mm³/s; the second 18 750 (printed 18 692 after rounding).</summary>
    [Theory]
    [InlineData(12.7, 188, 23812, 5)]
    [InlineData(10, 238.73, 18750, 1)]
    public void Removal_of_a_drill(double diameter, double feed, double removal, double within) => Assert.Equal(removal, CuttingSpeed.DrillRemoval(diameter, feed), within);
}
