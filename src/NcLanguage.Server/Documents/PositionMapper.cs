using System.Text;
using NcLanguage.Server.Protocol;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Documents;

/// <summary>What a character of a position counts, as negotiated.</summary>
enum PositionEncoding
{
    Utf16,
    Utf8,
}

/// <summary>Maps between the protocol's positions and (line, byte column), both from 0. Positions outside the text are clamped to
/// the end of the line or of the text; one amid a character is moved to that character's start.</summary>
sealed class PositionMapper(PositionEncoding encoding)
{
    public PositionEncoding Encoding { get; } = encoding;

    public (int Line, int Column) ToPlace(SourceText text, Position position)
    {
        if (position.Line >= (uint)text.LineCount)
        {
            var last = text.LineCount - 1;
            return (last, text.Line(last).Length);
        }
        var line = (int)position.Line;
        return (line, ToByteColumn(text.Line(line), position.Character));
    }

    /// <summary>The lines that a range touches, from 0, both included.</summary>
    public (int First, int Last) ToLines(SourceText text, TextRange range)
    {
        var (first, last) = (ToPlace(text, range.Start).Line, ToPlace(text, range.End).Line);
        return (Math.Min(first, last), Math.Max(first, last));
    }

    /// <summary>The lines that are marked by a range: one that ends at the head of a line does not take that line in.</summary>
    public (int First, int Last) ToMarkedLines(SourceText text, TextRange range)
    {
        var (first, last) = ToLines(text, range);
        var endsAtHead = ToPlace(text, range.End) == (last, 0);
        return (first, endsAtHead && last > first ? last - 1 : last);
    }

    /// <summary>Offset in bytes from the start of the text.</summary>
    public int ToOffset(SourceText text, Position position)
    {
        (var line, var column) = ToPlace(text, position);
        return text.OffsetOf(line, column);
    }

    public Position ToPosition(SourceText text, int line, int byteColumn)
    {
        line = Math.Clamp(line, 0, text.LineCount - 1);
        return ToPosition(text.Line(line), line, byteColumn);
    }

    /// <summary>The range of bytes <paramref name="startColumn"/> up to <paramref name="endColumn"/> of a line.</summary>
    public TextRange ToRange(SourceText text, int line, int startColumn, int endColumn)
    {
        line = Math.Clamp(line, 0, text.LineCount - 1);
        var bytes = text.Line(line);
        return new TextRange(ToPosition(bytes, line, startColumn), ToPosition(bytes, line, endColumn));
    }

    Position ToPosition(ReadOnlySpan<byte> bytes, int line, int byteColumn) =>
        new((uint)line, (uint)ToCharacter(bytes[..Math.Clamp(byteColumn, 0, bytes.Length)]));

    int ToByteColumn(ReadOnlySpan<byte> line, uint character)
    {
        var ascii = AsciiPrefix(line);
        if (character <= (uint)ascii)
            return (int)character;
        if (Encoding == PositionEncoding.Utf8)
        {
            if (character >= (uint)line.Length)
                return line.Length;
            // Not amid a character: go back to where one starts, at most as far as one is long.
            for (var column = (int)character; column > (int)character - 4 && column >= 0; column--)
            {
                if ((line[column] & 0xC0) != 0x80)
                    return column;
            }
            return (int)character;
        }
        var at = ascii;
        var units = (uint)ascii;
        while (at < line.Length)
        {
            Rune.DecodeFromUtf8(line[at..], out var rune, out var length);
            units += (uint)rune.Utf16SequenceLength;
            if (units > character)
                return at;
            at += length;
        }
        return line.Length;
    }

    int ToCharacter(ReadOnlySpan<byte> before)
    {
        if (Encoding == PositionEncoding.Utf8)
            return before.Length;
        var at = AsciiPrefix(before);
        var units = at;
        while (at < before.Length)
        {
            Rune.DecodeFromUtf8(before[at..], out var rune, out var length);
            units += rune.Utf16SequenceLength;
            at += length;
        }
        return units;
    }

    static int AsciiPrefix(ReadOnlySpan<byte> line)
    {
        var first = line.IndexOfAnyExceptInRange((byte)0, (byte)0x7F);
        return first < 0 ? line.Length : first;
    }
}
