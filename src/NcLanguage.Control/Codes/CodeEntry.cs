using System.Collections.Immutable;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Codes;

/// <summary>How a code uses one of the words of its block.</summary>
/// <param name="Letter">The address.</param>
/// <param name="Need">Whether the code can do without it.</param>
/// <param name="Unit">The unit of its number.</param>
/// <param name="Meaning">What it says, in a few words.</param>
/// <param name="OnlyUnder">The reading of <c>repeats</c> under which the code takes this word; null for every reading.</param>
public sealed record WordUse(char Letter, WordNeed Need, WordUnit Unit, string Meaning, RepeatReading? OnlyUnder = null);

/// <summary>Whether a code can do without a word.</summary>
public enum WordNeed
{
    Optional,

    /// <summary>Needed unless an earlier block of the same cycle gave it.</summary>
    CarriedOver,
    Required,

    /// <summary>At least one of the code's words so marked is needed, in this block or, within a cycle, in an earlier one.</summary>
    OneOf,
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
    readonly uint _letters;

    /// <summary>G or M.</summary>
    public required char Letter { get; init; }

    /// <summary>The number times ten: G81 is 810, G59.1 is 591.</summary>
    public required int Tenths { get; init; }

    public required ModalGroup Group { get; init; }

    /// <summary>The trade's name for it, such as "drilling cycle with dwell".</summary>
    public required string Name { get; init; }

    /// <summary>What the control does, in one sentence.</summary>
    public required string Meaning { get; init; }

    public ImmutableArray<WordUse> Words
    {
        get;
        init
        {
            field = value;
            _letters = 0;
            foreach (var word in value)
                _letters |= 1u << (word.Letter - 'A');
        }
    } = [];

    /// <summary>Whether every letter of the block other than G, L, N, O and P is an argument of the call.</summary>
    public bool TakesArguments { get; init; }

    /// <summary>The reading of <c>units</c> under which the code exists; null for every reading.</summary>
    public UnitReading? OnlyUnder { get; init; }

    /// <summary>Where this is laid down; "from memory" or "common practice" where that is all there is.</summary>
    public required string Source { get; init; }

    /// <summary>Whether it stays in force behind its block, until another code of its group.</summary>
    public bool IsModal => Group is not (ModalGroup.NonModal or ModalGroup.MacroCall or ModalGroup.Stop or ModalGroup.ToolChange
        or ModalGroup.Subprogram or ModalGroup.Other);

    /// <summary>How long what it does holds where neither its group nor its block tells: "until G80"; null where they do.</summary>
    public string? Until { get; init; }

    /// <summary>Whether a control that reads as <paramref name="readings"/> says has this code.</summary>
    public bool ExistsUnder(Readings readings) => OnlyUnder is null || OnlyUnder == readings.Units;

    /// <summary>Whether the code itself uses the word of <paramref name="letter"/> (upper case).</summary>
    public bool Takes(char letter) => (uint)(letter - 'A') < 26 && (_letters >> (letter - 'A') & 1) != 0;

    /// <summary>As written: G81, G59.1, M3.</summary>
    public string Text => Tenths % 10 == 0 ? $"{Letter}{Tenths / 10}" : $"{Letter}{Tenths / 10}.{Tenths % 10}";
}
