using System.Runtime.CompilerServices;

namespace NcLanguage.Syntax.Text;

/// <summary>Where lines end: at LF, CR LF, or a CR alone.</summary>
static class LineBreaks
{
    const byte Lf = (byte)'\n';
    const byte Cr = (byte)'\r';

    /// <summary>Offset after the terminator that follows <paramref name="from"/>, or −1 when the rest is one unterminated line.</summary>
    public static int Next(ReadOnlySpan<byte> text, int from)
    {
        var found = text[from..].IndexOfAny(Lf, Cr);
        if (found < 0)
            return -1;
        var at = from + found;
        return text[at] == Cr && at + 1 < text.Length && text[at + 1] == Lf ? at + 2 : at + 1;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ReadOnlySpan<byte> WithoutTerminator(ReadOnlySpan<byte> line)
    {
        if (line.Length > 0 && line[^1] == Lf)
            line = line[..^1];
        if (line.Length > 0 && line[^1] == Cr)
            line = line[..^1];
        return line;
    }
}
