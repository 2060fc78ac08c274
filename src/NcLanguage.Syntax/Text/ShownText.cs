using System.Buffers;
using System.Globalization;
using System.Text;

namespace NcLanguage.Syntax.Text;

/// <summary>Names of files, programs and what quotes them, fit for one line on a screen: they may hold line ends, what a terminal would obey, and what turns the direction of reading.</summary>
public static class ShownText
{
    /// <summary>Marks, embeddings, overrides and isolates (Unicode Standard Annex 9, table 4).</summary>
    const string Turning = "\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069";

    static readonly SearchValues<char> Obeyed = SearchValues.Create([.. Enumerable.Range(0, 0x100).Select(code => (char)code).Where(char.IsControl), .. Turning]);

    /// <summary>The text with the bytes of such characters written out as a shell takes them between $' and ': a\x0ab.nc.</summary>
    public static string Of(string text) => text.AsSpan().ContainsAny(Obeyed) ? Of(Encoding.UTF8.GetBytes(text)) : text;

    /// <summary>A whole text in UTF-8 as a terminal may show it: line ends and tabs stay as they are.</summary>
    public static byte[] OfLines(ReadOnlySpan<byte> text)
    {
        var shown = new ArrayBufferWriter<byte>(text.Length);
        while (text.IndexOfAny("\t\r\n"u8) is >= 0 and var end)
        {
            shown.Write(Encoding.UTF8.GetBytes(Of(text[..end])));
            shown.Write(text.Slice(end, 1));
            text = text[(end + 1)..];
        }
        shown.Write(Encoding.UTF8.GetBytes(Of(text)));
        return shown.WrittenSpan.ToArray();
    }

    /// <summary>The same of UTF-8; bytes that are none are written out too.</summary>
    public static string Of(ReadOnlySpan<byte> bytes)
    {
        var shown = new StringBuilder();
        while (bytes.Length > 0)
        {
            var isRead = Rune.DecodeFromUtf8(bytes, out var rune, out var length) == OperationStatus.Done && !(rune.IsBmp && Obeyed.Contains((char)rune.Value));
            if (isRead)
                shown.Append(rune.ToString());
            else
                foreach (var one in bytes[..length])
                    shown.Append(CultureInfo.InvariantCulture, $"\\x{one:x2}");
            bytes = bytes[length..];
        }
        return shown.ToString();
    }
}
