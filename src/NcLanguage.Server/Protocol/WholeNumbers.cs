using System.Text.Json;
using System.Text.Json.Serialization;

namespace NcLanguage.Server.Protocol;

/// <summary>Whole numbers as clients write them: JSON knows no kinds of numbers, and of some languages 3 leaves as 3.0 or 3e0.</summary>
sealed class WholeNumberConverter : JsonConverter<int>
{
    public override int Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.TokenType == JsonTokenType.Number && reader.TryGetInt32(out var number) ? number : (int)WholeNumber.Of(ref reader, int.MinValue, int.MaxValue);

    public override void Write(Utf8JsonWriter writer, int value, JsonSerializerOptions options) => writer.WriteNumberValue(value);
}

/// <summary>The same of numbers that count from 0.</summary>
sealed class CountConverter : JsonConverter<uint>
{
    public override uint Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.TokenType == JsonTokenType.Number && reader.TryGetUInt32(out var number) ? number : (uint)WholeNumber.Of(ref reader, 0, uint.MaxValue);

    public override void Write(Utf8JsonWriter writer, uint value, JsonSerializerOptions options) => writer.WriteNumberValue(value);
}

static class WholeNumber
{
    /// <exception cref="JsonException">It is no number; with a <see cref="FormatException"/> within: not a whole one, or beyond the ends.</exception>
    public static double Of(ref Utf8JsonReader reader, double least, double most)
    {
        if (reader.TokenType != JsonTokenType.Number)
            throw new JsonException();
        return reader.TryGetDouble(out var number) && Math.Truncate(number) == number && number >= least && number <= most ? number : throw new JsonException(null, new FormatException());
    }
}
