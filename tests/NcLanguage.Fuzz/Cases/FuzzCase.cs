using System.Collections.Immutable;

namespace NcLanguage.Fuzz.Cases;

/// <summary>An edit of a text, wherever the text ends: bytes replaced from a place on.</summary>
/// <param name="At">Taken modulo the length of the text and one more, so that it fits however the text was made smaller.</param>
/// <param name="Length">Bytes that go, as far as the text has them.</param>
/// <param name="Text">What comes.</param>
sealed record CaseEdit(int At, int Length, byte[] Text);

/// <summary>One input of the whole program: what stands in the files, what is chosen, what is typed. All that a check looks at is in it, so that it can be kept as a file.</summary>
sealed record FuzzCase
{
    public byte[] Program { get; init; } = [];

    /// <summary>The setup file beside the program; null for none. The others likewise.</summary>
    public byte[]? Setup { get; init; }

    public byte[]? Machine { get; init; }

    public byte[]? Cutting { get; init; }

    /// <summary>O100.nc in the same folder.</summary>
    public byte[]? Called { get; init; }

    /// <summary>Readings chosen, as NAME=CHOICE.</summary>
    public ImmutableArray<string> Readings { get; init; } = [];

    public bool IsPortable { get; init; }

    public bool Skips { get; init; }

    public ImmutableArray<CaseEdit> Edits { get; init; } = [];
}
