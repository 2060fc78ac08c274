using System.Collections.Immutable;

namespace NcLanguage.Checks.Operations;

/// <summary>A whole run cut into operations.</summary>
/// <param name="Operations">In the order of the run.</param>
/// <param name="Totals">Of all moves.</param>
public sealed record OperationList(ImmutableArray<Operation> Operations, MoveTotals Totals)
{
    /// <summary>The tools in the order in which they are first used.</summary>
    public ImmutableArray<ToolWork> Tools { get; } = [.. Operations.GroupBy(operation => operation.Tool).Select(OfTool)];

    /// <summary>The closest approaches of the program, nearest first: one for each obstacle in each operation.</summary>
    public ImmutableArray<(Operation Operation, NearestPass Pass)> Approaches { get; } =
        [.. Operations.SelectMany(operation => operation.Passes.Select(pass => (operation, pass))).OrderBy(approach => approach.pass.Distance)];

    /// <summary>What the return levels of all cycles cost; null where no traverse between holes is made.</summary>
    public ReturnCost? Returns { get; } = Operations.Any(operation => operation.Returns is not null)
        ? Operations.Aggregate(default(ReturnCost), (sum, operation) => sum.With(operation.Returns ?? default))
        : null;

    /// <summary>Material that all operations remove, mm³; null where that is not known of each.</summary>
    public double? Removed { get; } = Operations.Any(operation => operation.Removed is null) ? null : Operations.Sum(operation => operation.Removed);

    static ToolWork OfTool(IGrouping<int, Operation> ofTool)
    {
        var totals = new MoveTotals();
        var (speed, feed) = (ValueRange.None, ValueRange.None);
        foreach (var operation in ofTool)
        {
            totals.Add(operation.Totals);
            speed = speed.With(operation.Speed);
            feed = feed.With(operation.Feed);
        }
        return new ToolWork(ofTool.Key, [.. ofTool], totals, speed, feed);
    }
}
