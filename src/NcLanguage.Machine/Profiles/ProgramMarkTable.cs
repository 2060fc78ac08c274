using System.Collections.Immutable;

namespace NcLanguage.Machine.Profiles;

/// <summary>One member of <see cref="ProgramMarks"/>: what a file must hold for the control to load it.</summary>
public sealed class ProgramMark
{
    readonly Func<ProgramMarks, bool, ProgramMarks>? _setTruth;
    readonly Func<ProgramMarks, int, ProgramMarks>? _setNumber;
    readonly Func<ProgramMarks, string, ProgramMarks>? _setSigns;

    internal ProgramMark(string name, string meaning, Func<ProgramMarks, bool, ProgramMarks> set) => (Name, Meaning, _setTruth) = (name, meaning, set);

    internal ProgramMark(string name, string meaning, Func<ProgramMarks, int, ProgramMarks> set) => (Name, Meaning, _setNumber) = (name, meaning, set);

    internal ProgramMark(string name, string meaning, Func<ProgramMarks, string, ProgramMarks> set) => (Name, Meaning, _setSigns) = (name, meaning, set);

    /// <summary>The longest block a control can be said to take, in characters.</summary>
    public const int GreatestBlock = 100_000;

    public string Name { get; }

    /// <summary>What it says of the control, in one sentence.</summary>
    public string Meaning { get; }

    /// <summary>True where the value is true or false.</summary>
    public bool IsTruth => _setTruth is not null;

    /// <summary>True where the value is a row of signs; false where it is a truth or a number of characters.</summary>
    public bool IsSigns => _setSigns is not null;

    /// <summary>What values the mark takes, in a few words.</summary>
    public string Values =>
        IsTruth ? "true or false" : IsSigns ? "signs of ASCII other than letters, digits and blanks, such as %()+-./:" : $"a whole number from 1 to {GreatestBlock}";

    /// <summary>True for one or more signs of ASCII, without letters, digits and blanks.</summary>
    public static bool AreSigns(string text) => text.Length > 0 && text.All(c => c is > ' ' and < '\x7F' && !char.IsAsciiLetterOrDigit(c));

    /// <summary>The marks with this one set to a row of signs. Only where <see cref="IsSigns"/>.</summary>
    public ProgramMarks With(ProgramMarks marks, string value) =>
        _setSigns is null ? throw new InvalidOperationException($"{Name} is no row of signs.") : _setSigns(marks, value);

    /// <summary>The marks with this one set. Only where <see cref="IsTruth"/>.</summary>
    public ProgramMarks With(ProgramMarks marks, bool value) =>
        _setTruth is null ? throw new InvalidOperationException($"{Name} is not true or false.") : _setTruth(marks, value);

    /// <summary>The marks with this one set to a number of characters. Only where neither <see cref="IsTruth"/> nor <see cref="IsSigns"/>.</summary>
    public ProgramMarks With(ProgramMarks marks, int value) =>
        _setNumber is null ? throw new InvalidOperationException($"{Name} is no number.") : _setNumber(marks, value);
}

/// <summary>All members of the reading programMarks.</summary>
public static class ProgramMarkTable
{
    /// <summary>The name of the object that holds them among the readings of a machine file.</summary>
    public const string Name = "programMarks";

    public static ImmutableArray<ProgramMark> All { get; } =
    [
        new("percent", "A line with % must open and close the file.", (marks, value) => marks with { Percent = value }),
        new("number", "The program needs a number (O or :).", (marks, value) => marks with { Number = value }),
        new("longestBlock", "The longest block the control takes, in characters.", (marks, value) => marks with { LongestBlock = value }),
        new("lowerCase", "Lower-case letters can be sent to the control.", (marks, value) => marks with { LowerCase = value }),
        new(
            "characters", "The signs beside letters, digits and blanks that can be sent to the control, such as %()+-./:; every one where it is left out.",
            (marks, value) => marks with { Characters = value }),
    ];
}
