using System.Buffers;
using System.Text;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Syntax.Text;

/// <summary>One version of a program's text: an immutable sequence of chunks of lines. A change makes a new text that
/// shares every chunk it did not touch. Offsets and columns are bytes; text that came as characters is held as UTF-8.
/// Any bytes are accepted and given back as they came.</summary>
public sealed class SourceText
{
    // Small enough that running one chunk again is quick, large enough that a text has few of them.
    const int LinesPerChunk = 128;
    const int ShortChunk = 256;
    const int LongChunk = 1 << 14;

    readonly Chunk[] _chunks;
    readonly int[] _offsets;
    readonly int[] _lines;

    internal SourceText(Chunk[] chunks)
        : this(chunks, null, 0, 0)
    {
    }

    /// <param name="chunks">The chunks.</param>
    /// <param name="before">A text that has the same chunks at its beginning and its end; null for none.</param>
    /// <param name="same">How many at the beginning.</param>
    /// <param name="sameAtEnd">How many at the end: where they begin is known without a look at them.</param>
    SourceText(Chunk[] chunks, SourceText? before, int same, int sameAtEnd)
    {
        _chunks = chunks;
        _offsets = new int[chunks.Length + 1];
        _lines = new int[chunks.Length + 1];
        before?._offsets.AsSpan(0, same + 1).CopyTo(_offsets);
        before?._lines.AsSpan(0, same + 1).CopyTo(_lines);
        var rest = chunks.Length - sameAtEnd;
        for (var i = same; i < rest; i++)
        {
            _offsets[i + 1] = checked(_offsets[i] + chunks[i].Length);
            _lines[i + 1] = _lines[i] + chunks[i].LineCount;
        }
        if (before is null)
            return;
        Shift(before._offsets.AsSpan()[^(sameAtEnd + 1)..], _offsets.AsSpan(rest));
        Shift(before._lines.AsSpan()[^(sameAtEnd + 1)..], _lines.AsSpan(rest));
    }

    /// <summary>Goes on from the first entry as the one before does from its own.</summary>
    static void Shift(ReadOnlySpan<int> before, Span<int> after)
    {
        var by = after[0] - before[0];
        for (var i = 1; i < after.Length; i++)
            after[i] = checked(before[i] + by);
    }

    public static SourceText From(byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        var chunks = new List<Chunk>(bytes.Length / 2048 + 1);
        Split(bytes, endsText: true, chunks);
        return new SourceText([.. chunks]);
    }

    public static SourceText From(string text) => From(Encoding.UTF8.GetBytes(text));

    /// <summary>Bytes in all.</summary>
    public int Length => _offsets[^1];

    /// <summary>Lines, counting the one after the last terminator even when it is empty.</summary>
    public int LineCount => _lines[^1];

    public ReadOnlySpan<Chunk> Chunks => _chunks;

    /// <summary>The number (0-based) of the first line of a chunk.</summary>
    public int FirstLineOf(int chunk) => _lines[chunk];

    /// <summary>The index of the chunk that holds a line (0-based).</summary>
    public int ChunkOfLine(int line)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(line);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(line, LineCount);
        return IndexIn(_lines, line);
    }

    /// <summary>The bytes of a line (0-based) without its terminator.</summary>
    public ReadOnlySpan<byte> Line(int line)
    {
        var chunk = ChunkOfLine(line);
        return _chunks[chunk].Line(line - _lines[chunk]);
    }

    /// <summary>The block on a line (0-based). For one here and one there: where the blocks of its chunk are not at hand, this line alone is lexed.</summary>
    public Block BlockAt(int line)
    {
        var chunk = ChunkOfLine(line);
        var inChunk = line - _lines[chunk];
        if (_chunks[chunk].KnownBlocks is { } known)
            return known[inChunk];
        var bytes = _chunks[chunk].Line(inChunk);
        return new Block(bytes, BlockLexer.LexLine(bytes));
    }

    /// <summary>The block on a line (0-based), with the blocks of its chunk kept at hand: for runs that come by again, or go on to the lines around.</summary>
    public Block BlockAmong(int line)
    {
        var chunk = ChunkOfLine(line);
        return _chunks[chunk].Blocks[line - _lines[chunk]];
    }

    /// <summary>A line's text (0-based); bytes that are not UTF-8 show as the replacement character.</summary>
    public string LineText(int line) => Encoding.UTF8.GetString(Line(line));

    /// <summary>Offset of a byte column in a line, both 0-based; a column past the line's end is its end.</summary>
    public int OffsetOf(int line, int byteColumn)
    {
        var chunk = ChunkOfLine(line);
        var inChunk = line - _lines[chunk];
        return _offsets[chunk] + _chunks[chunk].LineStart(inChunk)
            + Math.Clamp(byteColumn, 0, _chunks[chunk].Line(inChunk).Length);
    }

    /// <summary>The line (0-based) that the byte at an offset belongs to; the text's end belongs to the last line.</summary>
    public int LineAt(int offset)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(offset);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(offset, Length);
        if (offset == Length)
            return LineCount - 1;
        var chunk = IndexIn(_offsets, offset);
        return _lines[chunk] + _chunks[chunk].LineAt(offset - _offsets[chunk]);
    }

    /// <summary>The text with the bytes from <paramref name="start"/> up to <paramref name="end"/> replaced.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The range does not lie in the text.</exception>
    public SourceText WithChange(int start, int end, ReadOnlySpan<byte> newText)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(start);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(start, end);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(end, Length);

        var first = start == Length ? _chunks.Length - 1 : IndexIn(_offsets, start);
        var last = end == Length ? _chunks.Length - 1 : IndexIn(_offsets, end);
        // A CR that ends the chunk before and an LF that now begins this one are one terminator.
        var beginsWithLf = start == _offsets[first] && (newText.Length > 0 ? newText[0] : ByteAt(end)) == '\n';
        if (first > 0 && beginsWithLf)
            first--;
        var head = start - _offsets[first];
        var tail = _offsets[last + 1] - end;
        // Chunks that edits have worn down are joined with the next one, so that a text does not crumble.
        if (last + 1 < _chunks.Length && head + newText.Length + tail < ShortChunk)
            tail += _chunks[++last].Length;

        var bytes = new byte[checked(head + newText.Length + tail)];
        CopyRange(_offsets[first], head, bytes);
        newText.CopyTo(bytes.AsSpan(head));
        CopyRange(end, tail, bytes.AsSpan(head + newText.Length));

        var middle = new List<Chunk>();
        Split(bytes, endsText: last == _chunks.Length - 1, middle);
        var behind = _chunks.AsSpan(last + 1);
        return new SourceText([.. _chunks.AsSpan(0, first), .. middle, .. behind], this, first, behind.Length);
    }

    /// <summary>Writes the bytes from <paramref name="start"/> up to <paramref name="end"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The range does not lie in the text.</exception>
    public void CopyTo(int start, int end, IBufferWriter<byte> target)
    {
        ArgumentNullException.ThrowIfNull(target);
        ArgumentOutOfRangeException.ThrowIfNegative(start);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(end, Length);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(start, end);
        CopyRange(start, end - start, target.GetSpan(end - start));
        target.Advance(end - start);
    }

    public void WriteTo(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        foreach (var chunk in _chunks)
            stream.Write(chunk.Bytes);
    }

    /// <summary>The text as characters; bytes that are not UTF-8 show as the replacement character.</summary>
    public override string ToString() => Encoding.UTF8.GetString(ToBytes());

    /// <summary>All bytes in one array.</summary>
    public byte[] ToBytes() => ToBytes(0, Length);

    /// <summary>The bytes from <paramref name="start"/> up to <paramref name="end"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The range does not lie in the text.</exception>
    public byte[] ToBytes(int start, int end)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(start);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(end, Length);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(start, end);
        var bytes = new byte[end - start];
        CopyRange(start, bytes.Length, bytes);
        return bytes;
    }

    /// <summary>What its chunk holds from an offset on; not empty before the text's end.</summary>
    internal ReadOnlySpan<byte> BytesFrom(int offset)
    {
        var chunk = IndexIn(_offsets, offset);
        return _chunks[chunk].Bytes[(offset - _offsets[chunk])..];
    }

    /// <summary>What its chunk holds up to an offset; not empty behind the text's beginning.</summary>
    internal ReadOnlySpan<byte> BytesUpTo(int offset)
    {
        var chunk = IndexIn(_offsets, offset - 1);
        return _chunks[chunk].Bytes[..(offset - _offsets[chunk])];
    }

    byte ByteAt(int offset)
    {
        if (offset >= Length)
            return 0;
        var chunk = IndexIn(_offsets, offset);
        return _chunks[chunk].Bytes[offset - _offsets[chunk]];
    }

    void CopyRange(int start, int length, Span<byte> target)
    {
        for (var chunk = start == Length ? _chunks.Length : IndexIn(_offsets, start); length > 0; chunk++)
        {
            var from = start - _offsets[chunk];
            var part = _chunks[chunk].Bytes[from..Math.Min(_chunks[chunk].Length, from + length)];
            part.CopyTo(target);
            target = target[part.Length..];
            start += part.Length;
            length -= part.Length;
        }
    }

    /// <summary>Cuts a text, or a stretch of one, into chunks.</summary>
    internal static void Split(byte[] bytes, bool endsText, List<Chunk> chunks)
    {
        Span<int> starts = stackalloc int[LinesPerChunk + 1];
        var from = CutOff(bytes, starts, out var lines, chunks);
        if (endsText)
            lines++;
        if (lines > 0)
            chunks.Add(new Chunk(from == 0 ? bytes : bytes[from..], starts[..lines].ToArray(), endsText));
    }

    /// <summary>Cuts off the chunks that are full, and gives where what is left begins.</summary>
    internal static int CutOff(ReadOnlySpan<byte> bytes, List<Chunk> chunks) => CutOff(bytes, stackalloc int[LinesPerChunk + 1], out _, chunks);

    /// <param name="bytes">The text.</param>
    /// <param name="starts">Where the lines of what is left begin, in it.</param>
    /// <param name="lines">How many of them have ended.</param>
    /// <param name="chunks">Takes the chunks.</param>
    static int CutOff(ReadOnlySpan<byte> bytes, Span<int> starts, out int lines, List<Chunk> chunks)
    {
        starts[0] = 0;
        (var from, lines) = (0, 0);
        for (var at = LineBreaks.Next(bytes, 0); at >= 0; at = LineBreaks.Next(bytes, at))
        {
            lines++;
            if ((lines == LinesPerChunk || at - from >= LongChunk) && at < bytes.Length)
            {
                chunks.Add(new Chunk(bytes[from..at].ToArray(), starts[..lines].ToArray(), isLast: false));
                (from, lines) = (at, 0);
            }
            else
            {
                starts[lines] = at - from;
            }
        }
        return from;
    }

    // Starts hold one entry more than there are items; an item that is empty never owns a position.
    static int IndexIn(int[] starts, int position)
    {
        var index = Array.BinarySearch(starts, position);
        if (index < 0)
            return ~index - 1;
        while (index + 1 < starts.Length - 1 && starts[index + 1] == position)
            index++;
        return index;
    }
}
