using System.Collections.Immutable;

namespace NcLanguage.Machine.Loading;

/// <summary>How grave a mistake in a setup or machine file is.</summary>
public enum ProblemSeverity { Error, Warning }

/// <summary>The kinds of mistake in a setup or machine file; the names are those of the catalogue of findings.</summary>
public sealed record ProblemKind(string Name, ProblemSeverity Severity)
{
    /// <summary>The file cannot be read at all: nothing of it is used.</summary>
    public static ProblemKind Malformed { get; } = new("setup-malformed", ProblemSeverity.Error);

    /// <summary>A value has the wrong type, is out of bounds, contradicts another or is missing where it is needed.</summary>
    public static ProblemKind Value { get; } = new("setup-value", ProblemSeverity.Error);

    /// <summary>A name that means nothing at its place.</summary>
    public static ProblemKind UnknownKey { get; } = new("setup-unknown-key", ProblemSeverity.Warning);

    /// <summary>Two rows of the tool list have one number.</summary>
    public static ProblemKind ToolRepeated { get; } = new("setup-tool-repeated", ProblemSeverity.Error);

    /// <summary>An obstacle that lies wholly inside the stock, where nothing can be clamped.</summary>
    public static ProblemKind ObstacleInside { get; } = new("setup-obstacle-inside", ProblemSeverity.Warning);

    public static ImmutableArray<ProblemKind> All { get; } = [Malformed, Value, UnknownKey, ToolRepeated, ObstacleInside];
}

/// <summary>One mistake in a setup or machine file. Lines and columns count from 1, columns in UTF-16 code units; the end is the first place after it.
/// The message is one sentence with the numbers and what becomes of the value.</summary>
public sealed record SetupProblem(
    ProblemKind Kind, string Path, int Line, int Column, int EndLine, int EndColumn, string Message)
{
    /// <summary>The text (quotes included) that mends the mistake when it takes the place of the marked text; null where none is near enough.</summary>
    public string? Replacement { get; init; }

    /// <summary>What is wrong, as a sentence without its full stop, where nothing of the file could be read; null for other mistakes.</summary>
    internal string? Fault { get; init; }

    /// <summary>The same mistake, from which something else follows: a sentence without its full stop, in the place of the one that was told. Other mistakes than
    /// that nothing of a file could be read stay as they are.</summary>
    public SetupProblem WithConsequence(string consequence) => Fault is null ? this : this with { Message = $"{Fault}. {consequence}." };

    public string Name => Kind.Name;

    public ProblemSeverity Severity => Kind.Severity;
}
