namespace NcLanguage.Checks.Cutting;

/// <summary>Time that drilling takes.</summary>
public static class DrillingTime
{
    /// <summary>Seconds for a hole at one stroke: t = 60·(d + A)/F (drilling problems of Groover, Fundamentals of Modern Manufacturing; the formula
    /// from memory). A is the point's length, for the way until the full diameter cuts; some answers leave it out.</summary>
    /// <param name="depth">Of the full diameter, d, mm.</param>
    /// <param name="point">A, mm; 0 to leave it out.</param>
    /// <param name="feed">F, mm/min.</param>
    public static double Seconds(double depth, double point, double feed) => 60 * (depth + point) / feed;

    /// <summary>Seconds that a number of turns takes: 60·turns/n.</summary>
    /// <param name="turns">How many.</param>
    /// <param name="speed">Spindle speed n, 1/min.</param>
    public static double Dwell(double turns, double speed) => 60 * turns / speed;

    /// <summary>Turns of the spindle in a time: n·t/60.</summary>
    /// <param name="seconds">t.</param>
    /// <param name="speed">Spindle speed n, 1/min.</param>
    public static double Turns(double seconds, double speed) => speed * seconds / 60;
}
