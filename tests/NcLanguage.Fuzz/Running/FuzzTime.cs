using System.Globalization;

namespace NcLanguage.Fuzz.Running;

/// <summary>How long and from which seed on cases are written.</summary>
static class FuzzTime
{
    /// <summary>Seconds for each check; some 60 in all where nothing else is asked for.</summary>
    const int Usual = 10;

    public static int Workers { get; } = Math.Max(1, Environment.ProcessorCount);

    /// <summary>Cases of a check where nobody has said how long it is to go on: a quick machine then tries no others than a slow one, and a run is red or green by the code alone.</summary>
    public static int MostCases => Number("NCLANGUAGE_FUZZ_SECONDS") is null ? 4_000 : int.MaxValue;

    public static TimeSpan OfEach => TimeSpan.FromSeconds(Number("NCLANGUAGE_FUZZ_SECONDS") ?? Usual);

    /// <summary>The same one each time, so that whoever changes something else does not come upon an old fault; another one where it is asked for, "any" for one by chance.</summary>
    public static int FirstSeed => Environment.GetEnvironmentVariable("NCLANGUAGE_FUZZ_SEED") == "any" ? Random.Shared.Next(1_000_000_000) : Number("NCLANGUAGE_FUZZ_SEED") ?? 1;

    static int? Number(string variable) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;
}
