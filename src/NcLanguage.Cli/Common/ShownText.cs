using System.Buffers;
using System.Globalization;
using System.Text;

namespace NcLanguage.Cli.Common;

/// <summary>Names of files and what quotes them, fit for one line on a terminal: a name may hold line ends, and bytes that a terminal would obey.</summary>
static class ShownText
{
    /// <summary>The text with the bytes of control characters written out as a shell takes them between $' and ': a\x0ab.nc.</summary>
    public static string Of(string text) => text.Any(char.IsControl) ? Of(Encoding.UTF8.GetBytes(text)) : text;

    /// <summary>The same of UTF-8; bytes that are none are written out too.</summary>
    public static string Of(ReadOnlySpan<byte> bytes)
    {
        var shown = new StringBuilder();
        while (bytes.Length > 0)
        {
            var isRead = Rune.DecodeFromUtf8(bytes, out var rune, out var length) == OperationStatus.Done && !Rune.IsControl(rune);
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
