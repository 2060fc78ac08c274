using System.Buffers;
using System.Buffers.Text;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace NcLanguage.Server.Protocol;

/// <summary>Up to 500 findings go out at each key, and all but a few are as they were: only their places are written anew.</summary>
internal sealed class DiagnosticConverter : JsonConverter<Diagnostic>
{
    [ThreadStatic]
    private static ArrayBufferWriter<byte>? s_buffer;

    public override Diagnostic Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        using JsonDocument members = JsonDocument.ParseValue(ref reader);
        JsonElement root = members.RootElement;
        if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("range", out JsonElement range)) throw new JsonException("A diagnostic is an object with a range.");
        return new Diagnostic(
            range.Deserialize(ProtocolJson.Default.TextRange),
            root.Deserialize(ProtocolJson.Default.DiagnosticText)!,
            root.TryGetProperty("relatedInformation", out JsonElement related) ? related.Deserialize(ProtocolJson.Default.DiagnosticRelatedInformationArray) : null);
    }

    public override void Write(Utf8JsonWriter writer, Diagnostic value, JsonSerializerOptions options)
    {
        ArrayBufferWriter<byte> json = s_buffer ??= new ArrayBufferWriter<byte>(1024);
        json.ResetWrittenCount();
        json.Write("{\"range\":{\"start\":"u8);
        Write(json, value.Range.Start);
        json.Write(",\"end\":"u8);
        Write(json, value.Range.End);
        json.Write("},"u8);
        json.Write(value.Text.Members);
        if (value.RelatedInformation is { } related)
        {
            json.Write(",\"relatedInformation\":"u8);
            json.Write(JsonSerializer.SerializeToUtf8Bytes(related, ProtocolJson.Default.DiagnosticRelatedInformationArray));
        }
        json.Write("}"u8);
        writer.WriteRawValue(json.WrittenSpan, skipInputValidation: true);
    }

    private static void Write(ArrayBufferWriter<byte> json, Position position)
    {
        json.Write("{\"line\":"u8);
        Write(json, position.Line);
        json.Write(",\"character\":"u8);
        Write(json, position.Character);
        json.Write("}"u8);
    }

    private static void Write(ArrayBufferWriter<byte> json, uint number)
    {
        const int MostDigits = 10;
        Utf8Formatter.TryFormat(number, json.GetSpan(MostDigits), out int digits);
        json.Advance(digits);
    }
}
