using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;

namespace NcLanguage.Server.Protocol;

/// <summary>The characters of JSON strings (RFC 8259 §7).</summary>
static class JsonText
{
    const int LongestRune = 4;

    /// <summary>Writes a string's bytes as UTF-8; false where an escape is none. A lone surrogate becomes U+FFFD, which is one UTF-16 unit as well, so that the client's columns stay right.</summary>
    /// <param name="raw">What stands between the quotes.</param>
    /// <param name="target">Takes them.</param>
    public static bool TryUnescape(ReadOnlySpan<byte> raw, IBufferWriter<byte> target)
    {
        Span<byte> text = default;
        var to = 0;
        while (true)
        {
            var plain = raw.IndexOf((byte)'\\');
            if (plain < 0)
                plain = raw.Length;
            if (text.Length - to < plain + LongestRune)
            {
                target.Advance(to);
                text = target.GetSpan(plain + LongestRune);
                to = 0;
            }
            raw[..plain].CopyTo(text[to..]);
            to += plain;
            raw = raw[plain..];
            if (raw.IsEmpty)
            {
                target.Advance(to);
                return true;
            }
            if (raw.Length < 2)
                return false;
            if (raw[1] == 'u')
            {
                if (!TryUnit(raw, out var unit))
                    return false;
                raw = raw[6..];
                var rune = Rune.ReplacementChar;
                if (!char.IsSurrogate(unit))
                    rune = new Rune(unit);
                else if (TryUnit(raw, out var second) && Rune.TryCreate(unit, second, out var pair))
                {
                    rune = pair;
                    raw = raw[6..];
                }
                to += rune.EncodeToUtf8(text[to..]);
                continue;
            }
            byte sign = raw[1] switch
            {
                (byte)'n' => (byte)'\n', (byte)'r' => (byte)'\r', (byte)'t' => (byte)'\t', (byte)'b' => (byte)'\b', (byte)'f' => (byte)'\f',
                (byte)'"' or (byte)'\\' or (byte)'/' => raw[1],
                _ => 0,
            };
            if (sign == 0)
                return false;
            text[to++] = sign;
            raw = raw[2..];
        }
    }

    /// <summary>Puts U+FFFD in the place of each escape that is half of a surrogate pair, which no reader of strings takes: a whole message would fail by one sign.</summary>
    public static void MendHalves(Span<byte> message)
    {
        var rest = message;
        while (rest.IndexOf((byte)'\\') is >= 0 and var at && at + 1 < rest.Length)
        {
            rest = rest[at..];
            var length = 2;
            if (TryUnit(rest, out var unit))
            {
                length = 6;
                if (char.IsSurrogate(unit))
                {
                    if (TryUnit(rest[6..], out var second) && char.IsSurrogatePair(unit, second))
                        length = 12;
                    else
                        "\\ufffd"u8.CopyTo(rest);
                }
            }
            rest = rest[length..];
        }
    }

    /// <summary>The text of a string; null where it holds bytes that are no UTF-8.</summary>
    public static string? TextOf(JsonElement value)
    {
        try
        {
            return value.GetString();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    static bool TryUnit(ReadOnlySpan<byte> raw, out char unit)
    {
        unit = '\0';
        if (raw.Length < 6 || raw[0] != '\\' || raw[1] != 'u' || !ushort.TryParse(raw.Slice(2, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var number))
            return false;
        unit = (char)number;
        return true;
    }
}
