using System.Collections.Immutable;
using NcLanguage.Control.State;

namespace NcLanguage.Checks;

/// <summary>A second place that a finding speaks of, such as the block that set the state concerned. Line and columns from 0, in bytes.</summary>
public sealed record RelatedPlace(int Line, int StartColumn, int EndColumn, string Message);

/// <summary>What a rule reports about one place of a program. Line and columns count from 0, in bytes; the end is excluded.</summary>
public sealed record Finding
{
    public required Rule Rule { get; init; }

    public required Severity Severity { get; init; }

    public required int Line { get; init; }

    public required int StartColumn { get; init; }

    public required int EndColumn { get; init; }

    /// <summary>What the machine would do, with the numbers, in one sentence.</summary>
    public required string Message { get; init; }

    /// <summary>The part of the state concerned: the block that set it last is the finding's related place.</summary>
    public Slot Concerns { get; init; }

    /// <summary>What the related place says; empty where there is none.</summary>
    public string ConcernsMessage { get; init; } = "";

    /// <summary>A second place that a rule on the whole file names itself; null for none.</summary>
    public RelatedPlace? Related { get; init; }

    /// <summary>What the rule's fix needs to know: a number in mm, seconds or 1/min as the rule says.</summary>
    public double Value { get; init; }

    /// <summary>Further text the rule's fix needs, or empty.</summary>
    public string Text { get; init; } = "";

    /// <summary>True when it holds only with the block skip switch the other way.</summary>
    public bool IsOfOtherSkip { get; init; }

    /// <summary>True when its block runs more than once and does not show the very same at each of the runs: what is right at one of them may be wrong at another.</summary>
    public bool IsOfSomeRuns { get; init; }

    /// <summary>The run of its block, from 0, that showed it first.</summary>
    public int Run { get; init; }

    /// <summary>True when the fault lies in another file, and the place is that of the call that leads there.</summary>
    public bool IsElsewhere { get; init; }

    /// <summary>What the rule threw, where it could not do its work: then this finding says only that. Null otherwise.</summary>
    public Exception? Fault { get; init; }

    public string Id => Rule.Info.Id;

    public string Name => Rule.Info.Name;
}
