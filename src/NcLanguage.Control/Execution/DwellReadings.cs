using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Execution;

/// <summary>What a dwell's number means under each reading: the one place that knows.</summary>
public static class DwellReadings
{
    /// <summary>Seconds that a dwell's word stands for: P of G4 or of a cycle, or X of G4.</summary>
    /// <param name="hasPoint">Also true of an expression, which has its value as it stands.</param>
    public static double Seconds(char letter, double number, bool hasPoint, Readings readings) => IsMilliseconds(letter, hasPoint, readings) ? number / 1000 : number;

    /// <summary>Whether the number of a dwell's word counts milliseconds; otherwise seconds.</summary>
    public static bool IsMilliseconds(char letter, bool hasPoint, Readings readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        return IsByPoint(letter, readings) ? !hasPoint : letter != 'X' && readings.Dwell == DwellReading.Milliseconds;
    }

    /// <summary>Whether the decimal point decides between seconds and milliseconds.</summary>
    /// <remarks>X in a dwell block is seconds on every control that takes it (common practice); without a point it counts thousandths where the point decides,
    /// for dwells or for lengths.</remarks>
    public static bool IsByPoint(char letter, Readings readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        return readings.Dwell == DwellReading.ByPoint || (letter == 'X' && readings.Integers == IntegerReading.Increments);
    }
}
