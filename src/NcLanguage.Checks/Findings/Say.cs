using System.Globalization;

namespace NcLanguage.Checks;

/// <summary>Numbers as a setter reads them: no needless zeros, a point as decimal sign, a unit. What is not known says so.</summary>
public static class Say
{
    /// <summary>A number with up to three decimals.</summary>
    public static string Number(double value) => Number(value, 3);

    /// <summary>A number with up to that many decimals.</summary>
    public static string Number(double value, int decimals)
    {
        if (double.IsNaN(value))
            return "?";
        var rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero) + 0.0;
        return rounded.ToString("0.######", CultureInfo.InvariantCulture);
    }

    /// <summary>The same number with a point, where it has none: so it means the same under every reading of numbers without one.</summary>
    public static string WithPoint(string number)
    {
        ArgumentNullException.ThrowIfNull(number);
        return number.Contains('.', StringComparison.Ordinal) ? number : number + ".";
    }

    /// <summary>12.5 mm</summary>
    public static string Mm(double value) => Number(value) + " mm";

    /// <summary>Z2; the level of any axis is said with its letter.</summary>
    public static string Level(double value, char axis = 'Z') => double.IsNaN(value) ? $"an unknown {axis}" : axis + Number(value);

    /// <summary>X45 Y15</summary>
    public static string Place(double x, double y) => $"X{Number(x)} Y{Number(y)}";

    /// <summary>0.5 s, 8 min 20 s, 1 h 5 min; small times keep three figures.</summary>
    public static string Seconds(double seconds)
    {
        if (double.IsNaN(seconds))
            return "an unknown time";
        if (seconds < 60)
            return Number(seconds, DecimalsOf(seconds)) + " s";
        var whole = (long)Math.Round(seconds);
        var (hours, minutes, rest) = (whole / 3600, whole / 60 % 60, whole % 60);
        if (hours > 0)
            return minutes == 0 ? $"{hours} h" : $"{hours} h {minutes} min";
        return rest == 0 ? $"{minutes} min" : $"{minutes} min {rest} s";
    }

    // A dwell read in the wrong unit lasts a ten-thousandth of a second: that is not nothing.
    static int DecimalsOf(double seconds) => seconds switch { < 0.0005 => 6, < 0.01 => 4, < 1 => 3, < 10 => 2, _ => 1 };

    /// <summary>1 hole, 3 holes</summary>
    public static string Count(int count, string one, string? many = null) => count == 1 ? $"1 {one}" : $"{count} {many ?? one + "s"}";
}
