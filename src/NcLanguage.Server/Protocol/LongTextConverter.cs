using System.Text.Json;
using System.Text.Json.Serialization;

namespace NcLanguage.Server.Protocol;

/// <summary>A text that may be as long as a page: it is written in pieces. In one the writer would rent several times its length at once, and what is rented in such lengths stays with the process.</summary>
sealed class LongTextConverter : JsonConverter<string>
{
    /// <summary>UTF-16 units written at once: escaped they are at most six times as many bytes, which is what the writer rents.</summary>
    const int Piece = 8 * 1024;

    /// <summary>UTF-16 units of the longest text that the library itself writes; what is longer may be read by no client.</summary>
    const int Longest = 166_666_666;

    public override string Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetString() ?? throw new JsonException("The text must be a string.");

    /// <exception cref="ArgumentException">The text is longer than JSON is written here.</exception>
    public override void Write(Utf8JsonWriter writer, string value, JsonSerializerOptions options)
    {
        if (value.Length > Longest)
            throw new ArgumentException($"It is {value.Length} characters long, and {Longest} are written at most.", nameof(value));
        ReadOnlySpan<char> rest = value;
        for (; rest.Length > Piece; rest = rest[Piece..])
            writer.WriteStringValueSegment(rest[..Piece], isFinalSegment: false);
        writer.WriteStringValueSegment(rest, isFinalSegment: true);
    }
}
