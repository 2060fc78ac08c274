using System.Collections.Immutable;

namespace NcLanguage.Checks;

/// <summary>How far a fix can be trusted.</summary>
public enum FixSafety
{
    /// <summary>The rule has no fix.</summary>
    None,

    /// <summary>Writes what the finding shows was meant; may be applied together with all others of its kind.</summary>
    Safe,

    /// <summary>One of several things that may have been meant: to be looked at before it is taken.</summary>
    Choice,
}

/// <summary>Bytes of one line replaced: line and columns from 0, the end excluded. <see cref="NewText"/> may hold line ends.</summary>
public readonly record struct Edit(int Line, int StartColumn, int EndColumn, string NewText);

/// <summary>A change of the text that mends a finding.</summary>
public sealed record Fix(string Title, FixSafety Safety, ImmutableArray<Edit> Edits);
