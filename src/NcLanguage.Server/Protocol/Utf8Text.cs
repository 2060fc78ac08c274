using System.Buffers;
using System.Text.Json;
using System.Text.Json.Serialization;
using NcLanguage.Server.Rpc;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Protocol;

/// <summary>Document text as UTF-8, taken from the message without passing through a string: bytes, or a large one as a text.</summary>
readonly struct Utf8Text
{
    readonly object _held;

    public Utf8Text(byte[] bytes) => _held = bytes;

    public Utf8Text(SourceText text) => _held = text;

    public byte[] ToBytes() => _held as byte[] ?? ((SourceText)_held).ToBytes();

    public SourceText ToText() => _held as SourceText ?? SourceText.From((byte[])_held);
}

/// <param name="texts">Those that were taken out of the message.</param>
sealed class Utf8TextConverter(LongTexts texts) : JsonConverter<Utf8Text>
{
    public override Utf8Text Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType != JsonTokenType.String)
            throw new JsonException("The text must be a string.");
        var raw = reader.HasValueSequence ? reader.ValueSequence.ToArray() : reader.ValueSpan.ToArray();
        if (!reader.ValueIsEscaped)
            return new Utf8Text(raw);
        if (texts.TextOf(raw) is { } text)
            return new Utf8Text(text);
        var bytes = new ArrayBufferWriter<byte>(raw.Length + 1);
        // The reader has checked the escapes' form already.
        JsonText.TryUnescape(raw, bytes);
        return new Utf8Text(bytes.WrittenSpan.ToArray());
    }

    public override void Write(Utf8JsonWriter writer, Utf8Text value, JsonSerializerOptions options) => writer.WriteStringValue(value.ToBytes());
}
