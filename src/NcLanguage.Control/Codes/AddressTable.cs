using System.Collections.Immutable;
using static NcLanguage.Control.Codes.Tables.Row;

namespace NcLanguage.Control.Codes;

/// <summary>What one address letter says in general; a code's own <see cref="WordUse"/> says more.</summary>
public sealed record AddressEntry
{
    public required char Letter { get; init; }

    /// <summary>The trade's name for it, such as "feed".</summary>
    public required string Name { get; init; }

    /// <summary>What its number says, in one sentence.</summary>
    public required string Meaning { get; init; }

    /// <summary>The unit of its number; <see cref="WordUnit.None"/> where the code decides.</summary>
    public required WordUnit Unit { get; init; }

    public required string Source { get; init; }

    /// <summary>False for letters that say nothing on a three-axis mill, other than as an argument of a call.</summary>
    public bool HasMeaning { get; init; } = true;
}

/// <summary>The address letters A to Z.</summary>
public static class AddressTable
{
    /// <summary>One row a letter, A first.</summary>
    public static ImmutableArray<AddressEntry> All { get; } =
    [
        Unused('A', "rotary axis about X", WordUnit.Degrees, "Turns an axis about X, which a three-axis mill does not have.", Table3),
        Unused('B', "rotary axis about Y", WordUnit.Degrees, "Turns an axis about Y, which a three-axis mill does not have.", Table3),
        Unused('C', "rotary axis about Z", WordUnit.Degrees, "Turns an axis about Z, which a three-axis mill does not have.", Table3),
        Row('D', "radius offset number", WordUnit.Whole, "Names the radius offset that compensation uses.", Table3),
        Unused('E', "no meaning", WordUnit.None, "Has no meaning on a three-axis mill.", Iso),
        Row('F', "feed", WordUnit.Feed, "Sets the feed of the cuts that follow, in the unit of the feed mode.", Table3),
        Row('G', "preparatory code", WordUnit.None, "Says how the control shall move or read the numbers that follow.", Table3),
        Row('H', "length offset number", WordUnit.Whole, "Names the tool length offset.", Table3),
        Row('I', "arc centre along X", WordUnit.Length, "Gives the arc's centre along X, or a cycle's shift along X.", Table3),
        Row('J', "arc centre along Y", WordUnit.Length, "Gives the arc's centre along Y, or a cycle's shift along Y.", Table3),
        Row('K', "arc centre along Z", WordUnit.Length, "Gives the arc's centre along Z, the upper level of back boring, or a cycle's repeats by the reading.", Table3),
        Row('L', "repeats", WordUnit.Whole, "Counts how often a cycle or a called program runs, or names the kind of data G10 sets.", Table3),
        Row('M', "miscellaneous code", WordUnit.None, "Switches spindle, coolant or tool change, or stops, ends or calls a program.", Table3),
        Row('N', "block number", WordUnit.Whole, "Numbers the block, as a mark to find it by and to jump to.", Table3),
        Row('O', "program number", WordUnit.Whole, "Numbers the program, or a subroutine or loop within it.", Practice),
        Row('P', "dwell, number or factor", WordUnit.None, "Gives the time of a dwell, the number of a program, offset or block, or the factor of scaling (G51), by the code of its block.", Table3),
        Row('Q', "peck depth or shift", WordUnit.Length, "Gives the depth of one peck, or the shift off the wall of a bore.", Table3),
        Row('R', "R level, radius or angle", WordUnit.None, "Gives a cycle's R level, an arc's radius, a tool's length or radius in G10, or the angle of a rotation (G68) or of the spindle (M19), by the code of its block.", Table3),
        Row('S', "spindle speed", WordUnit.Speed, "Sets the spindle speed, in rev/min or as a cutting speed under G96.", Table3),
        Row('T', "tool number", WordUnit.Whole, "Chooses the tool that the next tool change puts into the spindle.", Table3),
        Unused('U', "no meaning", WordUnit.Length, "Has no meaning on a three-axis mill, where no second axis runs along X.", Iso),
        Unused('V', "no meaning", WordUnit.Length, "Has no meaning on a three-axis mill, where no second axis runs along Y.", Iso),
        Unused('W', "no meaning", WordUnit.Length, "Has no meaning on a three-axis mill, where no second axis runs along Z.", Iso),
        Row('X', "X position", WordUnit.Length, "Gives the position or distance along X, positive to the right as the operator faces the column.", Table3 + ", ISO 841"),
        Row('Y', "Y position", WordUnit.Length, "Gives the position or distance along Y, positive away from the operator towards the column.", Table3 + ", ISO 841"),
        Row('Z', "Z position", WordUnit.Length, "Gives the position or distance along the spindle, positive away from the work.", Table3 + ", ISO 841"),
    ];

    static string Table3 => "NISTIR 6556 table 3";

    /// <summary>The row of a letter, or null for anything but A to Z.</summary>
    /// <param name="letter">In either case.</param>
    public static AddressEntry? Find(char letter)
    {
        var index = (letter | 0x20) - 'a';
        return (uint)index < 26 ? All[index] : null;
    }

    static AddressEntry Row(char letter, string name, WordUnit unit, string meaning, string source) =>
        new() { Letter = letter, Name = name, Unit = unit, Meaning = meaning, Source = source };

    static AddressEntry Unused(char letter, string name, WordUnit unit, string meaning, string source) =>
        Row(letter, name, unit, meaning, source) with { HasMeaning = false };
}
