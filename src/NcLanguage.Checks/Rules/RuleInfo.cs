namespace NcLanguage.Checks;

/// <summary>Everything that is said about a rule: its page in the reference, its test, its place in listings.</summary>
public sealed record RuleInfo
{
    /// <summary>NC and four digits; the first digit is the area.</summary>
    public required string Id { get; init; }

    /// <summary>Lower-case words joined by hyphens.</summary>
    public required string Name { get; init; }

    public required Severity Severity { get; init; }

    /// <summary>One line without a full stop.</summary>
    public required string Title { get; init; }

    /// <summary>What it finds.</summary>
    public required string Finds { get; init; }

    /// <summary>What would happen at the machine.</summary>
    public required string AtTheMachine { get; init; }

    /// <summary>A small program with the fault. Under the block concerned stands a line that begins with ~ and marks the
    /// place with ^; such lines are not part of the program. It yields exactly the marked findings.</summary>
    public required string Example { get; init; }

    /// <summary>The same program put right; it yields no finding at all.</summary>
    public required string Instead { get; init; }

    /// <summary>The setup file both programs run with; null for none.</summary>
    public string? Setup { get; init; }

    /// <summary>The setup file the program put right runs with, where it is the setup that puts it right.</summary>
    public string? InsteadSetup { get; init; }

    /// <summary>Whether the examples run as when a missing setup is to be mentioned.</summary>
    public bool MentionMissingSetup { get; init; }

    /// <summary>Readings the examples run under, as NAME=CHOICE separated by blanks; null for the fallback profile.</summary>
    public string? Readings { get; init; }

    /// <summary>Whether the examples run as when the other readings are asked for.</summary>
    public bool Portable { get; init; }

    /// <summary>Machine profile both programs run with, as the text of a machine file; null for the fallback profile.</summary>
    public string? Machine { get; init; }

    public FixSafety FixSafety { get; init; }

    /// <summary>What the fix writes and how far it can be trusted; empty for a rule without one.</summary>
    public string Fix { get; init; } = "";

    /// <summary>What it does not find, and where it may be wrong.</summary>
    public required string NotFound { get; init; }

    /// <summary>Standard, report or book with the section; "common practice" or "from memory" where that is all there is.</summary>
    public required string Source { get; init; }
}
