using NcLanguage.Checks.Analysis;

namespace NcLanguage.Checks.Clearance;

/// <summary>How much of a run has to be followed through the stock to answer what its moves ask of it.</summary>
/// <param name="travellers">The tools of whose cuts it is asked whether they are in air, in order.</param>
/// <param name="parts">The parts up to the last that asks anything.</param>
sealed class StockDemand(int[] travellers, int parts)
{
    readonly int[] _travellers = travellers;

    /// <summary>The parts, from the first on, up to the last that asks anything; 0 where none does.</summary>
    public int Parts { get; } = parts;

    public bool IsTraveller(int tool) => Array.BinarySearch(_travellers, tool) >= 0;

    /// <summary>Whether the same is asked of each cut as in another version.</summary>
    public bool IsOfSameTools(StockDemand other) => _travellers.AsSpan().SequenceEqual(other._travellers);

    public static StockDemand Of(ReadOnlySpan<PartResult> parts)
    {
        var travellers = new SortedSet<int>();
        foreach (var part in parts)
            foreach (var tool in part.Questions.Travellers)
                travellers.Add(tool);
        int[] tools = [.. travellers];
        var count = parts.Length;
        while (count > 0 && !parts[count - 1].Questions.AreAsked(tools))
            count--;
        return new StockDemand(tools, count);
    }
}
