namespace NcLanguage.Machine.Json;

/// <summary>A place in a text: line and column count from 1, columns in UTF-16 code units.</summary>
readonly record struct TextPlace(int Line, int Column);

/// <summary>Turns byte offsets of a UTF-8 file into lines and columns. CRLF, LF and CR end a line.</summary>
sealed class LineMap
{
    /// <summary>Bytes from one count of the characters before to the next: a file of one long line must not be counted from its beginning for each place.</summary>
    const int BytesPerCount = 1024;

    readonly byte[] _bytes;
    readonly List<int> _starts = [0];
    readonly int[] _charsBefore;

    public LineMap(ReadOnlySpan<byte> bytes)
    {
        _bytes = bytes.ToArray();
        for (var i = 0; i < _bytes.Length; i++)
        {
            var endsLine = _bytes[i] == '\n' || (_bytes[i] == '\r' && (i + 1 == _bytes.Length || _bytes[i + 1] != '\n'));
            if (endsLine)
                _starts.Add(i + 1);
        }
        _charsBefore = new int[_bytes.Length / BytesPerCount + 1];
        for (var i = 1; i < _charsBefore.Length; i++)
            _charsBefore[i] = _charsBefore[i - 1] + CharsIn(_bytes.AsSpan((i - 1) * BytesPerCount, BytesPerCount));
    }

    public TextPlace At(int offset)
    {
        offset = Math.Clamp(offset, 0, _bytes.Length);
        var index = _starts.BinarySearch(offset);
        var line = index >= 0 ? index : ~index - 1;
        var start = _starts[line];
        // An editor does not count the byte order mark as a character.
        if (line == 0 && start + 3 <= offset && _bytes.AsSpan().StartsWith(JsonTree.ByteOrderMark))
            start += 3;
        return new TextPlace(line + 1, CharsBefore(offset) - CharsBefore(start) + 1);
    }

    int CharsBefore(int offset)
    {
        var counted = offset / BytesPerCount;
        return _charsBefore[counted] + CharsIn(_bytes.AsSpan(counted * BytesPerCount, offset - counted * BytesPerCount));
    }

    /// <summary>UTF-16 code units of a stretch of UTF-8, wherever it is cut: each character counts where it begins, one of four bytes twice.</summary>
    static int CharsIn(ReadOnlySpan<byte> bytes)
    {
        var count = 0;
        foreach (var b in bytes)
            count += (b & 0xC0) == 0x80 ? 0 : b >= 0xF0 ? 2 : 1;
        return count;
    }
}
