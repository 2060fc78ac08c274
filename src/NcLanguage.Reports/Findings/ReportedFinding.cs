using System.Collections.Immutable;
using NcLanguage.Checks;

namespace NcLanguage.Reports.Findings;

/// <summary>A stretch of one line as people count: line and columns from 1, a column being one character (a Unicode scalar
/// value; a byte that is no UTF-8 counts as one), the end column the first behind it.</summary>
public readonly record struct ReportedPlace(int Line, int Column, int EndColumn);

/// <summary>A second place that a finding speaks of, in the same file.</summary>
public sealed record ReportedRelated(ReportedPlace Place, string Message);

/// <summary>One replacement that a fix makes.</summary>
public sealed record ReportedEdit(ReportedPlace Place, string NewText);

/// <summary>A fix as it is offered.</summary>
public sealed record ReportedFix(string Title, FixSafety Safety, ImmutableArray<ReportedEdit> Edits);

/// <summary>A finding made ready to be told: it no longer needs the program it was found in.</summary>
public sealed record ReportedFinding
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public required Severity Severity { get; init; }

    public required ReportedPlace Place { get; init; }

    public required string Message { get; init; }

    /// <summary>The line concerned, for showing the place.</summary>
    public required Excerpt Excerpt { get; init; }

    /// <summary>Best first.</summary>
    public ImmutableArray<ReportedFix> Fixes { get; init; } = [];

    public ImmutableArray<ReportedRelated> Related { get; init; } = [];
}
