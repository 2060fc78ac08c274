using System.Collections.Immutable;

namespace NcLanguage.Checks.Operations;

/// <summary>Kinds of work that make one operation.</summary>
public enum OperationKind
{
    /// <summary>Moves that lead to no work at all.</summary>
    None,

    /// <summary>Holes of one cycle.</summary>
    Cycle,

    /// <summary>Feeds and arcs outside cycles.</summary>
    Feed,

    /// <summary>Moves until contact.</summary>
    Probing,
}

/// <summary>One operation: a stretch of the run with one tool and one kind of work. See <see cref="OperationScan"/> for where one ends.</summary>
public sealed record Operation
{
    /// <summary>Running number from 1.</summary>
    public required int Number { get; init; }

    /// <summary>The tool in the spindle; 0 none, −1 not known.</summary>
    public required int Tool { get; init; }

    /// <summary>For <see cref="ChangedAt"/>: the tool was in the spindle from the beginning.</summary>
    public const int NotChanged = -1;

    /// <summary>For <see cref="ChangedAt"/>: a program in another file changed to it.</summary>
    public const int ChangedElsewhere = -2;

    /// <summary>The line (0-based) of the program's own block that changed to the tool, or one of the two numbers above.</summary>
    public required int ChangedAt { get; init; }

    public required OperationKind Kind { get; init; }

    /// <summary>The cycle's number, 73 to 89; 0 where it is none.</summary>
    public required int Cycle { get; init; }

    /// <summary>What it is called.</summary>
    public required string Title { get; init; }

    /// <summary>Whether the title is a comment of the program; otherwise it is in our own words.</summary>
    public required bool IsTitled { get; init; }

    /// <summary>First line (0-based) of its moves, in the file named.</summary>
    public required int FirstLine { get; init; }

    /// <summary>Last line (0-based) of its moves, in the file named.</summary>
    public required int LastLine { get; init; }

    /// <summary>The name of the file that its first move stands in, where it is another than the program's own.</summary>
    public required string? File { get; init; }

    /// <summary>Holes that cycles drill.</summary>
    public required int Holes { get; init; }

    public required MoveTotals Totals { get; init; }

    /// <summary>Stops until somebody lets the machine go on; how long they take is not known, and they count as no time.</summary>
    public required int Stops { get; init; }

    /// <summary>Spindle speeds while it works, within the machine's limits, 1/min.</summary>
    public required ValueRange Speed { get; init; }

    /// <summary>Feeds of its feeds and arcs, within the machine's limits, mm/min.</summary>
    public required ValueRange Feed { get; init; }

    /// <summary>Lowest Z of a feed or arc, work coordinates, mm; NaN where none is known.</summary>
    public required double Deepest { get; init; }

    /// <summary>The coordinates that <see cref="Deepest"/> is meant in; null where it is not known.</summary>
    public WorkCoordinates? DeepestIn { get; init; }

    /// <summary>The coordinates that its feeds and arcs are meant in, in the order of the run; the first hundred of them.</summary>
    public ImmutableArray<WorkCoordinates> Under { get; init; } = [];

    /// <summary>The nearest place to each obstacle that is known, nearest first; empty where the setup lists none.</summary>
    public required ImmutableArray<NearestPass> Passes { get; init; }

    /// <summary>Moves whose distance to the obstacles is not known, of those that travel; 0 where the setup lists none.</summary>
    public required int PassesUnknown { get; init; }

    /// <summary>What the return levels cost; null where no traverse between holes is made.</summary>
    public required ReturnCost? Returns { get; init; }

    /// <summary>Material removed, mm³; null where it is not known.</summary>
    public double? Removed { get; init; }

    /// <summary>How deep the tool goes at most along its axis into what stands, by one feed or arc, mm; null where what it removes is not known.</summary>
    public double? DepthOfCut { get; init; }

    /// <summary>Material removed in a minute over its feeds and arcs, those in air counted too, mm³/min; null where it or their time is not known.</summary>
    public double? RemovalRate => Removed is { } volume && Totals.FeedSeconds > 0 ? volume * 60 / Totals.FeedSeconds : null;

    /// <summary>The nearest place to any obstacle; null where none is known.</summary>
    public NearestPass? Nearest => Passes.IsEmpty ? null : Passes[0];
}

/// <summary>What one tool does in a whole program.</summary>
/// <param name="Tool">Number; 0 none, −1 not known.</param>
/// <param name="Operations">Its operations, in the order of the run.</param>
public sealed record ToolWork(int Tool, ImmutableArray<Operation> Operations, MoveTotals Totals, ValueRange Speed, ValueRange Feed);
