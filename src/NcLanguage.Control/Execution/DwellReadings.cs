using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Execution;

/// <summary>What a dwell's number means under each reading.</summary>
public static class DwellReadings
{
    /// <summary>Seconds that a P of this number stands for.</summary>
    public static double Seconds(double number, bool hasPoint, DwellReading reading) => reading switch
    {
        DwellReading.Milliseconds => number / 1000,
        DwellReading.ByPoint when !hasPoint => number / 1000,
        _ => number,
    };
}
