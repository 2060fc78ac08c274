using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace NcLanguage.Server.Protocol;

/// <summary>Document text as UTF-8 bytes, taken from the message without passing through a string.
/// A lone surrogate becomes U+FFFD, which is one UTF-16 unit as well, so that the client's columns stay right.</summary>
[JsonConverter(typeof(Utf8TextConverter))]
internal readonly record struct Utf8Text(byte[] Bytes);

internal sealed class Utf8TextConverter : JsonConverter<Utf8Text>
{
    public override Utf8Text Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType != JsonTokenType.String) throw new JsonException("The text must be a string.");
        byte[] raw = reader.HasValueSequence ? reader.ValueSequence.ToArray() : reader.ValueSpan.ToArray();
        return new Utf8Text(reader.ValueIsEscaped ? Unescape(raw) : raw);
    }

    public override void Write(Utf8JsonWriter writer, Utf8Text value, JsonSerializerOptions options) => writer.WriteStringValue(value.Bytes);

    // The reader has checked the escapes' form already; only surrogates that stand alone are left to deal with.
    private static byte[] Unescape(byte[] raw)
    {
        int to = 0;
        for (int from = 0; from < raw.Length;)
        {
            if (raw[from] != '\\')
            {
                raw[to++] = raw[from++];
                continue;
            }
            byte code = raw[from + 1];
            if (code != 'u')
            {
                raw[to++] = code switch { (byte)'n' => (byte)'\n', (byte)'r' => (byte)'\r', (byte)'t' => (byte)'\t', (byte)'b' => (byte)'\b', (byte)'f' => (byte)'\f', _ => code };
                from += 2;
                continue;
            }
            char unit = Unit(raw, from);
            from += 6;
            Rune rune = Rune.ReplacementChar;
            if (!char.IsSurrogate(unit))
                rune = new Rune(unit);
            else if (from + 6 <= raw.Length && raw[from] == '\\' && raw[from + 1] == 'u' && Rune.TryCreate(unit, Unit(raw, from), out Rune pair))
            {
                rune = pair;
                from += 6;
            }
            to += rune.EncodeToUtf8(raw.AsSpan(to));
        }
        return raw.AsSpan(0, to).ToArray();
    }

    private static char Unit(byte[] raw, int escape) => (char)ushort.Parse(raw.AsSpan(escape + 2, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture);
}
