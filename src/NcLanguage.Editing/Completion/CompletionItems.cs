using System.Collections.Immutable;

namespace NcLanguage.Editing;

/// <summary>Gathers what is offered; the least rank comes first, equal ranks in the order added.</summary>
sealed class CompletionItems
{
    readonly List<(int Rank, CompletionEntry Entry)> _entries = [];

    /// <summary>Whether something was left out because there is too much of it.</summary>
    public bool IsIncomplete { get; set; }

    public void Add(int rank, CompletionEntry entry) => _entries.Add((rank, entry));

    /// <summary>Takes over what another has gathered, as far as it fits.</summary>
    public void Take(CompletionItems other, Func<CompletionEntry, bool> fits)
    {
        foreach (var item in other._entries)
            if (fits(item.Entry))
                _entries.Add(item);
    }

    public ImmutableArray<CompletionEntry> Ranked() => [.. _entries.OrderBy(item => item.Rank).Select(item => item.Entry)];
}
