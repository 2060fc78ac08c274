using System.Collections.Immutable;

namespace NcLanguage.Machine.Setups;

/// <summary>The names of work offsets as programs write them, and the numbers that stand for them (G54 is 54, G59.1 is 591).</summary>
public static class WorkOffsetName
{
    /// <summary>All names, in order.</summary>
    public static ImmutableArray<string> All { get; } = ["G54", "G55", "G56", "G57", "G58", "G59", "G59.1", "G59.2", "G59.3"];

    /// <summary>The number of a work offset, or null where the name is none.</summary>
    public static int? Parse(string name) =>
        All.Contains(name) ? int.Parse(name[1..].Replace(".", "", StringComparison.Ordinal)) : null;

    /// <summary>The name of a work offset's number.</summary>
    public static string Format(int number) => number < 100 ? $"G{number}" : $"G{number / 10}.{number % 10}";
}
