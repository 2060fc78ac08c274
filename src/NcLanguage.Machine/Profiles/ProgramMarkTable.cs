using System.Collections.Immutable;

namespace NcLanguage.Machine.Profiles;

/// <summary>One member of <see cref="ProgramMarks"/>: what a file must hold for the control to load it.</summary>
public sealed class ProgramMark
{
    private readonly Func<ProgramMarks, bool, ProgramMarks>? _setTruth;
    private readonly Func<ProgramMarks, int, ProgramMarks>? _setNumber;

    internal ProgramMark(string name, string meaning, Func<ProgramMarks, bool, ProgramMarks> set) => (Name, Meaning, _setTruth) = (name, meaning, set);

    internal ProgramMark(string name, string meaning, Func<ProgramMarks, int, ProgramMarks> set) => (Name, Meaning, _setNumber) = (name, meaning, set);

    /// <summary>The longest block a control can be said to take, in characters.</summary>
    public const int GreatestBlock = 100_000;

    public string Name { get; }

    /// <summary>What it says of the control, in one sentence.</summary>
    public string Meaning { get; }

    /// <summary>True where the value is true or false, false where it is a number of characters.</summary>
    public bool IsTruth => _setTruth is not null;

    /// <summary>The marks with this one set. Only where <see cref="IsTruth"/>.</summary>
    public ProgramMarks With(ProgramMarks marks, bool value) =>
        _setTruth is null ? throw new InvalidOperationException($"{Name} is a number.") : _setTruth(marks, value);

    /// <summary>The marks with this one set to a number of characters. Only where not <see cref="IsTruth"/>.</summary>
    public ProgramMarks With(ProgramMarks marks, int value) =>
        _setNumber is null ? throw new InvalidOperationException($"{Name} is true or false.") : _setNumber(marks, value);
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
    ];
}
