using NcLanguage.Control.State;
using NcLanguage.Machine.Cutting;

namespace NcLanguage.Checks.Cutting;

/// <summary>Cutting speeds and fine feeds as a setter reads them, in the unit of the program.</summary>
public static class CuttingSay
{
    /// <summary>24.4 m/min, 80 ft/min</summary>
    public static string Speed(double metresPerMinute, LengthText say) => SpeedNumber(metresPerMinute, say) + SpeedUnit(say);

    /// <summary>61 to 91.4 m/min</summary>
    public static string Speeds(in CuttingRange range, LengthText say) =>
        range.Least == range.Greatest ? Speed(range.Least, say) : $"{SpeedNumber(range.Least, say)} to {Speed(range.Greatest, say)}";

    /// <summary>0.08 mm, 0.0031 in</summary>
    public static string Fine(double mm, LengthText say) => FineNumber(mm, say) + (say.IsInch ? " in" : " mm");

    /// <summary>0.1 to 0.18 mm</summary>
    public static string Fines(in CuttingRange range, LengthText say) =>
        range.Least == range.Greatest ? Fine(range.Least, say) : $"{FineNumber(range.Least, say)} to {Fine(range.Greatest, say)}";

    static string SpeedNumber(double metresPerMinute, LengthText say) =>
        say.IsInch ? Say.Number(metresPerMinute / CuttingSpeed.MetresPerFoot, 0) : Say.Number(metresPerMinute, 1);

    static string SpeedUnit(LengthText say) => say.IsInch ? " ft/min" : " m/min";

    /// <summary>With the decimals that a table has, and as many more as a small number needs to be none that reads 0.</summary>
    static string FineNumber(double mm, LengthText say)
    {
        var (number, decimals) = say.IsInch ? (mm / UnitLength.MmPerInch, 5) : (mm, 3);
        if (number > 0 && number < Math.Pow(10, -decimals) / 2)
            decimals = (int)Math.Ceiling(-Math.Log10(number)) + 1;
        return Say.Number(number, Math.Min(decimals, 15));
    }
}
