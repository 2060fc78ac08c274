using System.Collections.Immutable;

namespace NcLanguage.Machine.Setups;

/// <summary>The names of work offsets as programs write them, and the numbers that stand for them (G54 is 54, G59.1 is 591, G54.1 P1 is 541001).</summary>
public static class WorkOffsetName
{
    /// <summary>How many further work offsets G54.1 P can name.</summary>
    public const int MostFurther = 999;

    const int FirstFurther = 541_000;
    const string FurtherBegins = "G54.1 P";

    /// <summary>The names of further offsets, as a message lists them.</summary>
    public static string FurtherNames { get; } = $"{FurtherBegins}1 to {FurtherBegins}{MostFurther}";

    /// <summary>All names but those of further offsets, in order.</summary>
    public static ImmutableArray<string> All { get; } = ["G54", "G55", "G56", "G57", "G58", "G59", "G59.1", "G59.2", "G59.3"];

    /// <summary>The number of a work offset, or null where the name is none.</summary>
    public static int? Parse(string name) =>
        All.Contains(name) ? int.Parse(name[1..].Replace(".", "", StringComparison.Ordinal)) : ParseFurther(name);

    /// <summary>The number that stands for G54.1 P<paramref name="number"/>, 1 to <see cref="MostFurther"/>.</summary>
    public static int Further(int number) => FirstFurther + number;

    static int? ParseFurther(string name) =>
        name.StartsWith(FurtherBegins, StringComparison.Ordinal)
        && int.TryParse(name.AsSpan(FurtherBegins.Length), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var number)
        && number is >= 1 and <= MostFurther && name[FurtherBegins.Length] != '0'
            ? Further(number) : null;

    /// <summary>The name of a work offset's number.</summary>
    public static string Format(int number) => number > FirstFurther ? $"{FurtherBegins}{number - FirstFurther}" : number < 100 ? $"G{number}" : $"G{number / 10}.{number % 10}";
}
