using System.Text;

namespace NcLanguage.Machine.Json;

/// <summary>A place in a text: line and column count from 1, columns in UTF-16 code units.</summary>
internal readonly record struct TextPlace(int Line, int Column);

/// <summary>Turns byte offsets of a UTF-8 file into lines and columns. CRLF, LF and CR end a line.</summary>
internal sealed class LineMap
{
    private readonly byte[] _bytes;
    private readonly List<int> _starts = [0];

    public LineMap(ReadOnlySpan<byte> bytes)
    {
        _bytes = bytes.ToArray();
        for (int i = 0; i < _bytes.Length; i++)
        {
            bool endsLine = _bytes[i] == '\n' || (_bytes[i] == '\r' && (i + 1 == _bytes.Length || _bytes[i + 1] != '\n'));
            if (endsLine)
                _starts.Add(i + 1);
        }
    }

    public TextPlace At(int offset)
    {
        offset = Math.Clamp(offset, 0, _bytes.Length);
        int index = _starts.BinarySearch(offset);
        int line = index >= 0 ? index : ~index - 1;
        int start = _starts[line];
        // An editor does not count the byte order mark as a character.
        if (line == 0 && start + 3 <= offset && _bytes.AsSpan().StartsWith(JsonTree.ByteOrderMark))
            start += 3;
        return new TextPlace(line + 1, Encoding.UTF8.GetCharCount(_bytes.AsSpan(start, offset - start)) + 1);
    }
}
