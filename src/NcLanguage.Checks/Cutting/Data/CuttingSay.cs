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

    static string FineNumber(double mm, LengthText say) => say.IsInch ? Say.Number(mm / UnitLength.MmPerInch, 5) : Say.Number(mm, 3);
}
