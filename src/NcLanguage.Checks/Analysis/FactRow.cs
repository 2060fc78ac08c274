using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>The facts of all items of a row, in stretches that versions share: behind a key a stretch or two are made anew, and what all items together come to is put together from what the stretches do.</summary>
sealed class FactRow<TItem, TFacts>
    where TItem : class
    where TFacts : struct, IFacts<TFacts>
{
    /// <summary>Items of a stretch.</summary>
    const int Stretch = 128;

    readonly TItem[] _items;
    readonly TFacts[][] _stretches;

    /// <summary>What each stretch comes to.</summary>
    readonly TFacts[] _sums;

    /// <param name="items">The row; it is kept, and must not change.</param>
    /// <param name="before">The facts of the version before; null where there is none.</param>
    /// <param name="ask">Tells the facts of an item.</param>
    public FactRow(TItem[] items, FactRow<TItem, TFacts>? before, Func<TItem, TFacts> ask)
    {
        _items = items;
        var (same, sameAtEnd) = before is null ? (0, 0) : SharedEnds.Of<TItem>(before._items, items);
        // Where the number of items is another, those at the end have moved from their stretches into others.
        var shift = (before?._items.Length ?? 0) - items.Length;
        _stretches = new TFacts[(items.Length + Stretch - 1) / Stretch][];
        _sums = new TFacts[_stretches.Length];
        for (var stretch = 0; stretch < _stretches.Length; stretch++)
        {
            var (first, end) = (stretch * Stretch, Math.Min((stretch + 1) * Stretch, items.Length));
            if (before is not null && end - first == LengthOf(before, stretch) && (end <= same || (shift == 0 && first >= items.Length - sameAtEnd)))
            {
                (_stretches[stretch], _sums[stretch]) = (before._stretches[stretch], before._sums[stretch]);
            }
            else
            {
                var facts = _stretches[stretch] = new TFacts[end - first];
                for (var i = first; i < end; i++)
                {
                    facts[i - first] = i < same ? before![i] : i >= items.Length - sameAtEnd ? before![i + shift] : ask(items[i]);
                    _sums[stretch] = TFacts.Join(_sums[stretch], facts[i - first]);
                }
            }
            All = TFacts.Join(All, _sums[stretch]);
        }
    }

    /// <summary>What all items come to.</summary>
    public TFacts All { get; }

    /// <summary>What the items before one come to.</summary>
    public TFacts UpTo(int item)
    {
        var facts = default(TFacts);
        for (var stretch = 0; stretch < item / Stretch; stretch++)
            facts = TFacts.Join(facts, _sums[stretch]);
        for (var i = item / Stretch * Stretch; i < item; i++)
            facts = TFacts.Join(facts, this[i]);
        return facts;
    }

    /// <summary>What an item and those behind it come to.</summary>
    public TFacts Behind(int item)
    {
        var facts = default(TFacts);
        for (; item < _items.Length && item % Stretch != 0; item++)
            facts = TFacts.Join(facts, this[item]);
        for (var stretch = item / Stretch; stretch < _sums.Length; stretch++)
            facts = TFacts.Join(facts, _sums[stretch]);
        return facts;
    }

    /// <summary>The last of the items up to one, that one included, that answers to something; −1 where none does. Stretches of which none does are passed over.</summary>
    /// <param name="has">Whether the facts of an item, or of several together, answer to it.</param>
    public int LastOf<TWhat>(int item, TWhat what, Func<TFacts, TWhat, bool> has)
    {
        while (item >= 0)
        {
            if (item % Stretch == Stretch - 1 && !has(_sums[item / Stretch], what))
                item -= Stretch;
            else if (has(this[item], what))
                return item;
            else
                item--;
        }
        return -1;
    }

    public ref readonly TFacts this[int item] => ref _stretches[item / Stretch][item % Stretch];

    static int LengthOf(FactRow<TItem, TFacts> row, int stretch) => stretch < row._stretches.Length ? row._stretches[stretch].Length : 0;
}
