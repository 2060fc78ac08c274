using NcLanguage.Machine.Profiles;

namespace NcLanguage.Machine.Loading;

/// <summary>What a number may be, in the unit it is written in. The schemas state the same bounds.</summary>
readonly record struct Bounds(double Least, double Greatest, bool LeastExcluded = false)
{
    /// <summary>No length on a milling machine is greater, in mm or inch: a slip of the keyboard.</summary>
    public const double GreatestLength = 100_000;

    public static Bounds Coordinate { get; } = new(-GreatestLength, GreatestLength);

    public static Bounds AboveZero { get; } = new(0, GreatestLength, LeastExcluded: true);

    public static Bounds FromZero { get; } = new(0, GreatestLength);

    public static Bounds Angle { get; } = new(0, 180, LeastExcluded: true);

    /// <summary>Rates per minute and accelerations.</summary>
    public static Bounds Rate { get; } = new(0, 1_000_000, LeastExcluded: true);

    public static Bounds Speed { get; } = new(0, 1_000_000);

    public static Bounds Seconds { get; } = new(0, 3600);

    /// <summary>Numbers of tools and of their offsets.</summary>
    public static Bounds ToolNumber { get; } = new(1, 99_999);

    public static Bounds Flutes { get; } = new(1, 100);

    public static Bounds ToolPlaces { get; } = new(1, 10_000);

    public static Bounds BlockLength { get; } = new(1, ProgramMark.GreatestBlock);

    public static Bounds Variable { get; } = new(-1e12, 1e12);

    /// <summary>What is wrong with a number ("must be above 0"), or null.</summary>
    public string? Complain(double number)
    {
        if (double.IsNaN(number) || number > Greatest)
            return $"must be at most {Format(Greatest)}";
        if (LeastExcluded && number <= Least)
            return $"must be above {Format(Least)}";
        return number < Least ? $"must be at least {Format(Least)}" : null;
    }

    /// <summary>A number as messages show it.</summary>
    public static string Format(double number) =>
        double.IsInfinity(number) ? "too large for any number here"
        : Math.Abs(number) < 1e15 ? number.ToString("0.######") : number.ToString("0.###E+0");
}
