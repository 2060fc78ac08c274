namespace NcLanguage.Checks.Cutting;

/// <summary>Cutting speed and feed (open textbook Machining 1, chapter 8 part 5, for the inch form of the speed; the metric form and the feeds from memory).</summary>
public static class CuttingSpeed
{
    /// <summary>m/min in a ft/min, exact since the inch is 25.4 mm.</summary>
    public const double MetresPerFoot = 0.3048;

    /// <summary>Turns a minute: n = 1000·v/(π·D).</summary>
    /// <param name="metresPerMinute">Cutting speed v, m/min.</param>
    /// <param name="diameter">D, mm.</param>
    public static double SpindleSpeed(double metresPerMinute, double diameter) => 1000 * metresPerMinute / (Math.PI * diameter);

    /// <summary>Cutting speed in m/min: v = π·D·n/1000.</summary>
    /// <param name="turns">Spindle speed n, 1/min.</param>
    /// <param name="diameter">D, mm.</param>
    public static double AtDiameter(double turns, double diameter) => Math.PI * diameter * turns / 1000;

    /// <summary>Feed in mm/min: F = n·z·fz; with one tooth the feed per turn, as for drills.</summary>
    /// <param name="turns">Spindle speed n, 1/min.</param>
    /// <param name="teeth">z.</param>
    /// <param name="perTooth">fz, mm.</param>
    public static double Feed(double turns, double teeth, double perTooth) => turns * teeth * perTooth;

    /// <summary>Feed of a tap in mm/min: F = n·P (NISTIR 6556 §3.5.16.5).</summary>
    /// <param name="turns">Spindle speed n, 1/min.</param>
    /// <param name="pitch">P, mm.</param>
    public static double TapFeed(double turns, double pitch) => turns * pitch;

    /// <summary>Material removed by a drill, mm³/min: π/4·D²·F (textbook, from memory).</summary>
    /// <param name="diameter">D, mm.</param>
    /// <param name="feed">F, mm/min.</param>
    public static double DrillRemoval(double diameter, double feed) => Math.PI / 4 * diameter * diameter * feed;
}
