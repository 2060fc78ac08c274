using System.Buffers;
using System.Text;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Reports.Findings;

/// <summary>Turns byte columns of a text (from 0) into columns that people count: characters, from 1. It remembers where it
/// was, so that many places of one long line cost one pass over it.</summary>
public sealed class ColumnCounter(SourceText text)
{
    int _line = -1;
    int _bytes;
    int _characters;

    /// <summary>The place of bytes in a line, both from 0.</summary>
    public ReportedPlace Place(int line, int start, int end)
    {
        var first = Column(line, start);
        return new ReportedPlace(line + 1, first, Column(line, end));
    }

    int Column(int line, int byteColumn)
    {
        var bytes = text.Line(line);
        byteColumn = Math.Min(byteColumn, bytes.Length);
        if (line != _line || byteColumn < _bytes)
            (_line, _bytes, _characters) = (line, MarkLength(line, bytes), 0);
        if (byteColumn > _bytes)
        {
            _characters += Count(bytes[_bytes..byteColumn]);
            _bytes = byteColumn;
        }
        return _characters + 1;
    }

    // An editor does not count the byte order mark as a character.
    static int MarkLength(int line, ReadOnlySpan<byte> bytes) => line == 0 && bytes.StartsWith(Encoding.UTF8.Preamble) ? 3 : 0;

    /// <summary>Characters in a stretch of bytes.</summary>
    public static int Count(ReadOnlySpan<byte> bytes)
    {
        var count = 0;
        while (!bytes.IsEmpty)
        {
            var plain = bytes.IndexOfAnyExceptInRange((byte)0, (byte)127);
            if (plain < 0)
                return count + bytes.Length;
            count += plain + 1;
            bytes = bytes[plain..];
            bytes = bytes[(Rune.DecodeFromUtf8(bytes, out _, out var length) == OperationStatus.Done ? length : 1)..];
        }
        return count;
    }
}
