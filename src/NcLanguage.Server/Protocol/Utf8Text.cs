using System.Buffers;
using System.Text.Json;
using System.Text.Json.Serialization;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Protocol;

/// <summary>Document text as UTF-8 bytes, taken from the message without passing through a string.</summary>
internal readonly record struct Utf8Text(byte[] Bytes);

/// <param name="texts">Those that were taken out of the message.</param>
internal sealed class Utf8TextConverter(LongTexts texts) : JsonConverter<Utf8Text>
{
    public override Utf8Text Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType != JsonTokenType.String) throw new JsonException("The text must be a string.");
        byte[] raw = reader.HasValueSequence ? reader.ValueSequence.ToArray() : reader.ValueSpan.ToArray();
        if (!reader.ValueIsEscaped) return new Utf8Text(raw);
        // The reader has checked the escapes' form already.
        return new Utf8Text(texts.TextOf(raw) ?? JsonText.Unescape(raw)!);
    }

    public override void Write(Utf8JsonWriter writer, Utf8Text value, JsonSerializerOptions options) => writer.WriteStringValue(value.Bytes);
}
