using NcLanguage.Control.State;
namespace NcLanguage.Checks.Rules;

/// <summary>How findings say what the height field knows: what stands is never held for more than it is, so that depths are least ones, and places are as exact as its cells.</summary>
static class StockWords
{
    const double StepMm = 0.1;

    /// <summary>The step in inches, about as long.</summary>
    const double StepInch = 0.005;

    const double Rounding = 1e-4;

    /// <summary>", at least 2.3 mm deep"; nothing where it is less than one step.</summary>
    public static string Depth(double mm, LengthText say) => AtLeast(mm, "deep", say);

    /// <summary>", at least 2.3 mm thick"; nothing where it is less than one step.</summary>
    public static string Thickness(double mm, LengthText say) => AtLeast(mm, "thick", say);

    static string AtLeast(double mm, string how, LengthText say) =>
        Math.Floor((mm + Rounding) / Step(say)) * Step(say) is > 0 and var least ? $", at least {say.Length(Math.Round(least, 6))} {how}" : "";

    /// <summary>The nearest step, mm.</summary>
    public static double Nearest(double mm, LengthText say) => Math.Round(Math.Round(mm / Step(say)) * Step(say), 6);

    static double Step(LengthText say) => say.IsInch ? StepInch * UnitLength.MmPerInch : StepMm;
}
