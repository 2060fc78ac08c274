using System.Text;

namespace NcLanguage.Syntax.Text;

/// <summary>How a text in UTF-16 is written, as some editors save it. It is held as UTF-8, which everything works on, and written back as it was.</summary>
/// <param name="Encoding">UTF-16, low or high byte first.</param>
/// <param name="HasMark">Whether a byte order mark stands before it.</param>
public sealed record WideText(Encoding Encoding, bool HasMark)
{
    /// <summary>How many bytes are looked at where no mark tells.</summary>
    const int MostLookedAt = 256;

    /// <summary>How bytes are written; null unless it is UTF-16: told by the mark or, without one, by zeros that take every other place from the beginning.</summary>
    public static WideText? Of(ReadOnlySpan<byte> bytes)
    {
        if (bytes is [0xFF, 0xFE, ..])
            return new WideText(Encoding.Unicode, true);
        if (bytes is [0xFE, 0xFF, ..])
            return new WideText(Encoding.BigEndianUnicode, true);
        if (bytes.Length < 4)
            return null;
        var (even, odd) = (0, 0);
        var pairs = Math.Min(bytes.Length, MostLookedAt) / 2;
        for (var i = 0; i < pairs; i++)
        {
            even += bytes[2 * i] == 0 ? 1 : 0;
            odd += bytes[2 * i + 1] == 0 ? 1 : 0;
        }
        // Zeros in both places are the blank leader of a tape, and no text.
        return (even, odd) switch
        {
            (0, _) when odd == pairs => new WideText(Encoding.Unicode, false),
            (_, 0) when even == pairs => new WideText(Encoding.BigEndianUnicode, false),
            _ => null,
        };
    }

    /// <summary>The text of bytes as a file holds them, decoded where they are UTF-16.</summary>
    public static SourceText Read(byte[] bytes) => Of(bytes) is { } wide ? wide.Decode(bytes) : SourceText.From(bytes);

    /// <summary>The text, held as UTF-8.</summary>
    public SourceText Decode(byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        var start = HasMark ? 2 : 0;
        return SourceText.From(Encoding.Convert(Encoding, Encoding.UTF8, bytes, start, bytes.Length - start));
    }

    /// <summary>The bytes that a text is written with.</summary>
    public byte[] Encode(SourceText text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var bytes = Encoding.Convert(Encoding.UTF8, Encoding, text.ToBytes());
        return HasMark ? [.. Encoding.GetPreamble(), .. bytes] : bytes;
    }
}
