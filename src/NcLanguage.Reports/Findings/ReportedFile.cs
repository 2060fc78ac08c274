using System.Collections.Immutable;

namespace NcLanguage.Reports.Findings;

/// <summary>One file that was checked: a program, or a setup or machine file with mistakes.</summary>
/// <param name="Path">As the user wrote it, or from where the command runs.</param>
/// <param name="Findings">In the order of the text.</param>
public sealed record ReportedFile(string Path, ImmutableArray<ReportedFinding> Findings)
{
    /// <summary>Blocks that ran; null for a file that is no program.</summary>
    public int? Blocks { get; init; }

    /// <summary>Name of the machine that the program was read for; null for a file that is no program.</summary>
    public string? Machine { get; init; }

    /// <summary>One sentence on how the file is written, where a control may not take it as it is; null otherwise.</summary>
    public string? Remark { get; init; }

    /// <summary>What could not be checked, and why: one clause each.</summary>
    public ImmutableArray<string> NotChecked { get; init; } = [];

    /// <summary>Findings whose rule has a fix that was not worked out, because there are too many of them.</summary>
    public int FixesLeftOut { get; init; }

    /// <summary>Fixes that were written.</summary>
    public ImmutableArray<AppliedFix> Fixed { get; init; } = [];

    /// <summary>Fixes that are certain and were not made, because they do not mend what they are for.</summary>
    public ImmutableArray<LeftFix> NotFixed { get; init; } = [];

    /// <summary>Whether there is anything that a reader wants to be told of.</summary>
    public bool HasNews => !Findings.IsEmpty || !Fixed.IsEmpty || Blocks == 0 || Remark is not null;
}

/// <summary>A fix that was made.</summary>
/// <param name="Line">The line of its finding, from 1, as the text stood at the time.</param>
/// <param name="Title">What the fix says it does.</param>
/// <param name="Before">The lines it changed, as they were.</param>
/// <param name="After">The same lines as they are.</param>
public sealed record AppliedFix(int Line, string Title, ImmutableArray<string> Before, ImmutableArray<string> After);

/// <summary>A fix that was tried and left out.</summary>
/// <param name="Line">The line of its finding, from 1.</param>
/// <param name="Title">What the fix says it does.</param>
/// <param name="Finding">The name of its finding.</param>
public sealed record LeftFix(int Line, string Title, string Finding);

/// <summary>A file or folder that could not be read or written, and why: a clause that names it.</summary>
public sealed record UnreadFile(string Path, string Reason);
