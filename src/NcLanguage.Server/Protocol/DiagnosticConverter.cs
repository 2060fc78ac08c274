using System.Buffers;
using System.Buffers.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace NcLanguage.Server.Protocol;

/// <summary>Up to 500 findings go out at each key, and all but a few are as they were: they are written once, and where they only stand at another place, only that is written anew.</summary>
sealed class DiagnosticConverter : JsonConverter<Diagnostic>
{
    [ThreadStatic]
    static ArrayBufferWriter<byte>? s_buffer;

    public override Diagnostic Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        using var document = JsonDocument.ParseValue(ref reader);
        var members = document.RootElement;
        if (members.ValueKind != JsonValueKind.Object || !members.TryGetProperty("range", out var range))
            throw new JsonException("A diagnostic is an object with a range.");
        return new Diagnostic(
            Part(range, ProtocolJson.Default.TextRange, ".range"),
            Part(members, ProtocolJson.Default.DiagnosticText, ""),
            members.TryGetProperty("relatedInformation", out var related) ? Part(related, ProtocolJson.Default.DiagnosticRelatedInformationArray, ".relatedInformation") : null);
    }

    // The library says of a part where in the part it is wrong; of an exception without a place it says where in the message the whole stands.
    static T Part<T>(JsonElement part, JsonTypeInfo<T> type, string at)
    {
        try
        {
            return part.Deserialize(type)!;
        }
        catch (JsonException e) when (e.Path is { } path)
        {
            var member = (at + path[1..]).TrimStart('.');
            throw new JsonException(member.Length > 0 ? $"This member of a diagnostic is not as the protocol has it: {member}." : "A diagnostic has a message.", e);
        }
    }

    public override void Write(Utf8JsonWriter writer, Diagnostic value, JsonSerializerOptions options) => value.WriteTo(writer);

    /// <summary>A diagnostic as JSON; it stands until the next is written on the same thread.</summary>
    public static ReadOnlySpan<byte> Write(Diagnostic value)
    {
        var json = s_buffer ??= new ArrayBufferWriter<byte>(1024);
        json.ResetWrittenCount();
        json.Write("{\"range\":"u8);
        Write(json, value.Range);
        json.Write(","u8);
        json.Write(value.Text.Members);
        if (value.RelatedInformation is { } related)
        {
            json.Write(",\"relatedInformation\":"u8);
            for (var i = 0; i < related.Length; i++)
            {
                json.Write(i == 0 ? "["u8 : ","u8);
                Write(json, related[i]);
            }
            json.Write(related.Length == 0 ? "[]"u8 : "]"u8);
        }
        json.Write("}"u8);
        return json.WrittenSpan;
    }

    static void Write(ArrayBufferWriter<byte> json, DiagnosticRelatedInformation related)
    {
        json.Write("{\"location\":{\"uri\":"u8);
        json.Write(related.Text.UriJson);
        json.Write(",\"range\":"u8);
        Write(json, related.Range);
        json.Write("},\"message\":"u8);
        json.Write(related.Text.MessageJson);
        json.Write("}"u8);
    }

    static void Write(ArrayBufferWriter<byte> json, TextRange range)
    {
        json.Write("{\"start\":"u8);
        Write(json, range.Start);
        json.Write(",\"end\":"u8);
        Write(json, range.End);
        json.Write("}"u8);
    }

    static void Write(ArrayBufferWriter<byte> json, Position position)
    {
        json.Write("{\"line\":"u8);
        Write(json, position.Line);
        json.Write(",\"character\":"u8);
        Write(json, position.Character);
        json.Write("}"u8);
    }

    static void Write(ArrayBufferWriter<byte> json, uint number)
    {
        const int MostDigits = 10;
        Utf8Formatter.TryFormat(number, json.GetSpan(MostDigits), out var digits);
        json.Advance(digits);
    }
}
