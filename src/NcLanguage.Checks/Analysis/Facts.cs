using NcLanguage.Control.State;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>What a part of a run is asked most. Kept side by side for all parts: behind each key the few that have an answer are looked for among thousands, each of
/// which would have to be fetched from memory to be asked.</summary>
/// <param name="Sets">All that it set.</param>
/// <param name="Holes">How many it drilled.</param>
/// <param name="CoordinatesUsed">The work offset that it works under, see <see cref="PartResult.CoordinatesUsed"/>.</param>
/// <param name="HasFindings">Whether rules told of its blocks.</param>
readonly record struct PartFacts(Slot Sets, int Holes, int CoordinatesUsed, bool HasFindings)
{
    public static PartFacts Of(PartResult part) => new(part.AllSets, part.Holes.Length, part.CoordinatesUsed, part.Findings.Length > 0);
}

/// <summary>What a chunk's text is asked most, likewise.</summary>
/// <param name="HasFindings">Whether rules told of its text.</param>
/// <param name="HasAllow">Whether a comment in it asks for silence.</param>
/// <param name="HasSkip">Whether a block in it can be skipped.</param>
readonly record struct TextFacts(bool HasFindings, bool HasAllow, bool HasSkip)
{
    public static TextFacts Of(ChunkText text) => new(text.Findings.Length > 0, text.HasAllow, text.HasSkip);
}

static class Facts
{
    /// <summary>Asks each item, apart from those that the version before has at its beginning or its end.</summary>
    public static TFacts[] Of<TItem, TFacts>(TItem[] items, TItem[]? before, TFacts[]? factsBefore, Func<TItem, TFacts> ask)
        where TItem : class
    {
        var facts = new TFacts[items.Length];
        var (same, sameAtEnd) = before is null ? (0, 0) : SharedEnds.Of<TItem>(before, items);
        if (factsBefore is not null)
        {
            Array.Copy(factsBefore, facts, same);
            Array.Copy(factsBefore, factsBefore.Length - sameAtEnd, facts, facts.Length - sameAtEnd, sameAtEnd);
        }
        for (var i = same; i < facts.Length - sameAtEnd; i++)
            facts[i] = ask(items[i]);
        return facts;
    }
}
