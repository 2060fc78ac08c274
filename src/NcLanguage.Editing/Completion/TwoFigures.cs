namespace NcLanguage.Editing;

/// <summary>Numbers rounded to two figures: as fine as a feed or a dwell is chosen. What is not positive, or not known, stays as it is.</summary>
static class TwoFigures
{
    const double Rounding = 1e-6;

    public static double Nearest(double value)
    {
        if (!(value > 0))
            return value;
        var step = StepOf(value);
        return Math.Round(value / step, MidpointRounding.AwayFromZero) * step;
    }

    /// <summary>Never less than the value.</summary>
    public static double Up(double value)
    {
        if (!(value > 0))
            return value;
        var step = StepOf(value);
        return Math.Ceiling(value / step - Rounding) * step;
    }

    static double StepOf(double value) => Math.Pow(10, Math.Floor(Math.Log10(value)) - 1);
}
