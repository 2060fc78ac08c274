using System.Text.Json;
using System.Text.Json.Serialization;

namespace NcLanguage.Server.Protocol;

/// <summary>How a signature's parameter is found in its label: by where it stands, in UTF-16 units, or by its text.</summary>
/// <param name="Text">The text; null where the place tells.</param>
[JsonConverter(typeof(ParameterLabelConverter))]
readonly record struct ParameterLabel(int Start, int End, string? Text = null);

sealed class ParameterLabelConverter : JsonConverter<ParameterLabel>
{
    public override ParameterLabel Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new JsonException("A parameter's label is only sent.");

    public override void Write(Utf8JsonWriter writer, ParameterLabel value, JsonSerializerOptions options)
    {
        if (value.Text is { } text)
        {
            writer.WriteStringValue(text);
            return;
        }
        writer.WriteStartArray();
        writer.WriteNumberValue(value.Start);
        writer.WriteNumberValue(value.End);
        writer.WriteEndArray();
    }
}
