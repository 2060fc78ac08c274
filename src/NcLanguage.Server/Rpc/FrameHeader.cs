using System.Buffers;
using System.Buffers.Text;
using System.Text;

namespace NcLanguage.Server.Rpc;

/// <summary>The header of a message (LSP 3.17, "Header Part"), looked at before anything behind it is read.</summary>
/// <param name="ContentLength">Bytes of the content.</param>
/// <param name="Charset">The charset of the content; null where none is named.</param>
/// <param name="Size">Bytes of the header, with the empty line that ends it.</param>
readonly record struct FrameHeader(long ContentLength, string? Charset, int Size)
{
    /// <summary>Longer than this no header is: what fills it is none.</summary>
    const int LongestHeader = 4096;

    /// <summary>The only charset of the protocol, also as its earlier version wrote it.</summary>
    public bool IsUtf8 => Charset is null || Charset.Equals("utf-8", StringComparison.OrdinalIgnoreCase) || Charset.Equals("utf8", StringComparison.OrdinalIgnoreCase);

    /// <summary>Reads the header at the start of the bytes; null where it is not all there yet.</summary>
    /// <exception cref="InvalidDataException">What stands there is no header, so that nobody can tell where the next one begins.</exception>
    public static FrameHeader? Read(in ReadOnlySequence<byte> bytes)
    {
        var start = bytes.Slice(0, Math.Min(bytes.Length, LongestHeader)).ToArray();
        var end = start.AsSpan().IndexOf("\r\n\r\n"u8);
        if (end < 0)
            return start.Length < LongestHeader ? null : throw new InvalidDataException($"a header has no end within {LongestHeader} bytes");
        long? length = null;
        string? charset = null;
        ReadOnlySpan<byte> header = start.AsSpan(0, end);
        foreach (var range in header.Split("\r\n"u8))
        {
            var line = header[range];
            var colon = line.IndexOf((byte)':');
            if (colon <= 0)
                throw new InvalidDataException("a line of a header is no \"name: value\"");
            var value = line[(colon + 1)..].Trim((byte)' ');
            if (Ascii.EqualsIgnoreCase(line[..colon], "Content-Length"u8))
                length = length is null ? LengthIn(value) : throw new InvalidDataException("a header names its Content-Length twice");
            else if (Ascii.EqualsIgnoreCase(line[..colon], "Content-Type"u8))
                charset = CharsetIn(Encoding.ASCII.GetString(value));
        }
        return new FrameHeader(length ?? throw new InvalidDataException("a header has no Content-Length"), charset, end + 4);
    }

    static long LengthIn(ReadOnlySpan<byte> value) =>
        !value.StartsWith((byte)'+') && Utf8Parser.TryParse(value, out long length, out var used) && used == value.Length && length >= 0 ? length
        : throw new InvalidDataException("the Content-Length of a header is no number of bytes");

    static string? CharsetIn(string contentType)
    {
        const string Name = "charset=";
        var at = contentType.IndexOf(Name, StringComparison.OrdinalIgnoreCase);
        return at < 0 ? null : contentType[(at + Name.Length)..].Split(';')[0].Trim(' ', '"');
    }
}
