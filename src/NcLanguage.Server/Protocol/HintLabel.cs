using System.Text.Json;
using System.Text.Json.Serialization;

namespace NcLanguage.Server.Protocol;

/// <summary>What a hint shows: a text, or for clients that follow it one part that leads to a place.</summary>
/// <param name="IsPart">Whether it is sent as a part; the place may come later.</param>
[JsonConverter(typeof(HintLabelConverter))]
sealed record HintLabel(string Text, bool IsPart = false, Location? Place = null);

sealed class HintLabelConverter : JsonConverter<HintLabel>
{
    public override HintLabel Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType == JsonTokenType.String)
            return new HintLabel(reader.GetString()!);
        using var parts = JsonDocument.ParseValue(ref reader);
        return parts.RootElement.ValueKind == JsonValueKind.Array && parts.RootElement.GetArrayLength() == 1
            && parts.RootElement[0].ValueKind == JsonValueKind.Object && parts.RootElement[0].TryGetProperty("value", out var text) && text.ValueKind == JsonValueKind.String
            ? new HintLabel(text.GetString()!, IsPart: true)
            : throw new JsonException("A hint's label is a text, or one part with a value.");
    }

    public override void Write(Utf8JsonWriter writer, HintLabel value, JsonSerializerOptions options)
    {
        if (!value.IsPart)
        {
            writer.WriteStringValue(value.Text);
            return;
        }
        writer.WriteStartArray();
        writer.WriteStartObject();
        writer.WriteString("value", value.Text);
        if (value.Place is { } place)
        {
            writer.WritePropertyName("location");
            JsonSerializer.Serialize(writer, place, ProtocolJson.Default.Location);
        }
        writer.WriteEndObject();
        writer.WriteEndArray();
    }
}
