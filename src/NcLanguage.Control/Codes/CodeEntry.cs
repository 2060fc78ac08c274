using System.Collections.Immutable;

namespace NcLanguage.Control.Codes;

/// <summary>How a code uses one of the words of its block.</summary>
/// <param name="Letter">The address.</param>
/// <param name="Need">Whether the code can do without it.</param>
/// <param name="Unit">The unit of its number.</param>
/// <param name="Meaning">What it says, in a few words.</param>
public sealed record WordUse(char Letter, WordNeed Need, WordUnit Unit, string Meaning);

/// <summary>Whether a code can do without a word.</summary>
public enum WordNeed
{
    Optional,

    /// <summary>Needed unless an earlier block of the same cycle gave it.</summary>
    CarriedOver,
    Required,
}

/// <summary>The unit a word's number is in.</summary>
public enum WordUnit
{
    None,

    /// <summary>Programmed length unit: mm under metric, inch under inch programming.</summary>
    Length,
    Degrees,

    /// <summary>Length unit per minute, per turn, or inverse minutes, by the feed mode.</summary>
    Feed,

    /// <summary>Turns per minute, or a cutting speed under G96.</summary>
    Speed,

    /// <summary>Seconds or milliseconds by the dwell reading.</summary>
    Dwell,

    /// <summary>A count or an index: a whole number.</summary>
    Whole,

    /// <summary>A factor without unit.</summary>
    Factor,
}

/// <summary>One code: everything the product says and knows about it in one row.</summary>
public sealed record CodeEntry
{
    /// <summary>G or M.</summary>
    public required char Letter { get; init; }

    /// <summary>The number times ten: G81 is 810, G59.1 is 591.</summary>
    public required int Tenths { get; init; }

    public required ModalGroup Group { get; init; }

    /// <summary>The trade's name for it, such as "drilling cycle with dwell".</summary>
    public required string Name { get; init; }

    /// <summary>What the control does, in one sentence.</summary>
    public required string Meaning { get; init; }

    public ImmutableArray<WordUse> Words { get; init; } = [];

    /// <summary>Where this is laid down; "from memory" or "common practice" where that is all there is.</summary>
    public required string Source { get; init; }

    /// <summary>As written: G81, G59.1, M3.</summary>
    public string Text => Tenths % 10 == 0 ? $"{Letter}{Tenths / 10}" : $"{Letter}{Tenths / 10}.{Tenths % 10}";
}
