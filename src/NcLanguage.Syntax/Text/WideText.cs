using System.Text;

namespace NcLanguage.Syntax.Text;

/// <summary>How a text in UTF-16 is written, as some editors save it. It is held as UTF-8, which everything works on, and written back as it was.</summary>
/// <param name="Encoding">UTF-16, low or high byte first.</param>
/// <param name="HasMark">Whether a byte order mark stands before it.</param>
public sealed record WideText(Encoding Encoding, bool HasMark)
{
    /// <summary>How many bytes are looked at where no mark tells.</summary>
    const int MostLookedAt = 1 << 16;

    /// <summary>How bytes are written; null unless it is UTF-16: told by the mark or, without one, by the characters that a control knows. Of those one byte in two is zero, the
    /// same of all; a comment in another script stands among them.</summary>
    public static WideText? Of(ReadOnlySpan<byte> bytes)
    {
        if (bytes is [0xFF, 0xFE, ..])
            return new WideText(Encoding.Unicode, true);
        if (bytes is [0xFE, 0xFF, ..])
            return new WideText(Encoding.BigEndianUnicode, true);
        var looked = bytes[..Math.Min(bytes.Length, MostLookedAt)];
        return looked.Contains((byte)0) ? ByZeros(looked) : null;
    }

    static WideText? ByZeros(ReadOnlySpan<byte> bytes)
    {
        // Zeros before and behind a text are the blank ends of a tape.
        var (start, end) = (0, bytes.Length / 2);
        for (; start < end && IsBlank(bytes, start); start++)
            ;
        for (; end > start && IsBlank(bytes, end - 1); end--)
            ;
        var (lowFirst, highFirst, blank, narrow) = (0, 0, 0, 0);
        for (var i = start; i < end; i++)
            switch (bytes[2 * i], bytes[2 * i + 1])
            {
                case (0, 0):
                    blank++;
                    break;
                case (_, 0):
                    lowFirst++;
                    break;
                case (0, _):
                    highFirst++;
                    break;
                case var (first, second) when IsOfText(first) && IsOfText(second):
                    narrow++;
                    break;
                default:
                    break;
            }
        // Two characters at least, a quarter of all, and few that would be such the other way round: an ideographic space is one. Where more would be two characters of one byte each, the zeros are
        // what a tape has behind each block.
        bool Tells(int told, int other) => told >= 2 && 4 * told >= end - start && told > 4 * other && told > 4 * blank && told > narrow;
        return Tells(lowFirst, highFirst) ? new WideText(Encoding.Unicode, false)
            : Tells(highFirst, lowFirst) ? new WideText(Encoding.BigEndianUnicode, false)
            : null;
    }

    static bool IsOfText(byte sign) => sign is >= (byte)' ' and <= (byte)'~' or (byte)'\t' or (byte)'\r' or (byte)'\n';

    static bool IsBlank(ReadOnlySpan<byte> bytes, int character) => bytes[2 * character] == 0 && bytes[2 * character + 1] == 0;

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
