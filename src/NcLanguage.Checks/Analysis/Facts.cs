using NcLanguage.Control.State;

namespace NcLanguage.Checks.Analysis;

/// <summary>Facts of some items of a row that can be put together to those of all of them.</summary>
interface IFacts<TFacts>
{
    /// <summary>The facts of two stretches of a row; a default is those of none.</summary>
    static abstract TFacts Join(in TFacts a, in TFacts b);
}

/// <summary>What a part of a run is asked most. Kept side by side for all parts: behind each key the few that have an answer are looked for among thousands, each of
/// which would have to be fetched from memory to be asked.</summary>
/// <param name="Sets">All that it set.</param>
/// <param name="Holes">How many it drilled.</param>
/// <param name="CoordinatesUsed">The work offset that it works under, see <see cref="PartResult.CoordinatesUsed"/>.</param>
/// <param name="Findings">What rules told of its blocks.</param>
readonly record struct PartFacts(Slot Sets, int Holes, int CoordinatesUsed, FindingKinds Findings) : IFacts<PartFacts>
{
    public static PartFacts Of(PartResult part) => new(part.AllSets, part.Holes.Length, part.CoordinatesUsed, FindingKindsOf.All(part.Findings));

    public static PartFacts Join(in PartFacts a, in PartFacts b) =>
        new(a.Sets | b.Sets, a.Holes + b.Holes, CoordinatesLog.Join(a.CoordinatesUsed, b.CoordinatesUsed), a.Findings | b.Findings);
}

/// <summary>What a chunk's text is asked most, likewise.</summary>
/// <param name="Findings">What rules told of its text.</param>
/// <param name="HasAllow">Whether a comment in it asks for silence.</param>
/// <param name="HasSkip">Whether a block in it can be skipped.</param>
readonly record struct TextFacts(FindingKinds Findings, bool HasAllow, bool HasSkip) : IFacts<TextFacts>
{
    public static TextFacts Of(ChunkText text) => new(FindingKindsOf.All(text.Findings), text.HasAllow, text.HasSkip);

    public static TextFacts Join(in TextFacts a, in TextFacts b) => new(a.Findings | b.Findings, a.HasAllow || b.HasAllow, a.HasSkip || b.HasSkip);
}
