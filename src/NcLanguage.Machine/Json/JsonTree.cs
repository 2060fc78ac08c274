using System.Text;
using System.Text.Json;
using System.Text.Unicode;

namespace NcLanguage.Machine.Json;

/// <summary>What is wrong with a file that is not JSON: where, and in one sentence.</summary>
sealed record JsonFault(ByteRange Range, string Message);

/// <summary>Reads a whole JSON file (comments and trailing commas allowed, byte order mark allowed) into values that know their place.</summary>
static class JsonTree
{
    /// <summary>Deepest nesting that is read; these files need four levels.</summary>
    internal const int MaxDepth = 64;

    internal static ReadOnlySpan<byte> ByteOrderMark => [0xEF, 0xBB, 0xBF];

    /// <summary>The root value, or null and the one fault that stopped the reading.</summary>
    public static JsonValue? Parse(ReadOnlySpan<byte> bytes, out JsonFault? fault)
    {
        var skip = bytes.StartsWith(ByteOrderMark) ? ByteOrderMark.Length : 0;
        fault = FindEncodingFault(bytes);
        if (fault is not null)
            return null;

        var options = new JsonReaderOptions { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip, MaxDepth = MaxDepth };
        var reader = new Utf8JsonReader(bytes[skip..], options);
        var progress = new ReadProgress(skip);
        try
        {
            Advance(ref reader, progress);
            var root = ReadValue(ref reader, progress);
            // The reader looks at what follows the root only when asked for one token more.
            reader.Read();
            return root;
        }
        catch (JsonException)
        {
            fault = MalformedJson.Explain(bytes, progress);
            return null;
        }
        catch (InvalidOperationException)
        {
            // The token was sound, but its text holds an escape that is half a character.
            fault = MalformedJson.ExplainText(bytes, progress.TokenStart)
                ?? new JsonFault(new(progress.TokenStart, progress.TokenEnd), "This text holds an escape that is no character");
            return null;
        }
    }

    static JsonValue ReadValue(ref Utf8JsonReader reader, ReadProgress progress)
    {
        var start = progress.TokenStart;
        var end = progress.TokenEnd;
        switch (reader.TokenType)
        {
            case JsonTokenType.StartObject:
                var members = new List<JsonMember>();
                while (Advance(ref reader, progress) && reader.TokenType != JsonTokenType.EndObject)
                {
                    // The reader takes a name and its colon for one token; the value's span leaves out the quotes.
                    var nameRange = new ByteRange(progress.TokenStart, progress.TokenStart + reader.ValueSpan.Length + 2);
                    var name = reader.GetString()!;
                    Advance(ref reader, progress);
                    members.Add(new JsonMember(name, nameRange, ReadValue(ref reader, progress)));
                }
                return new JsonValue { Kind = JsonKind.Object, Range = new(start, progress.TokenEnd), Members = members };
            case JsonTokenType.StartArray:
                var items = new List<JsonValue>();
                while (Advance(ref reader, progress) && reader.TokenType != JsonTokenType.EndArray)
                    items.Add(ReadValue(ref reader, progress));
                return new JsonValue { Kind = JsonKind.Array, Range = new(start, progress.TokenEnd), Items = items };
            case JsonTokenType.String:
                return new JsonValue { Kind = JsonKind.Text, Range = new(start, end), Text = reader.GetString()! };
            case JsonTokenType.Number:
                var number = reader.TryGetDouble(out var value) ? value : double.PositiveInfinity;
                return new JsonValue { Kind = JsonKind.Number, Range = new(start, end), Number = number };
            case JsonTokenType.True or JsonTokenType.False:
                return new JsonValue { Kind = JsonKind.Boolean, Range = new(start, end), Truth = reader.TokenType == JsonTokenType.True };
            default:
                return new JsonValue { Kind = JsonKind.Null, Range = new(start, end) };
        }
    }

    static bool Advance(ref Utf8JsonReader reader, ReadProgress progress)
    {
        var more = reader.Read();
        if (more)
            progress.Note(reader.TokenType, (int)reader.TokenStartIndex, (int)reader.BytesConsumed);
        return more;
    }

    static JsonFault? FindEncodingFault(ReadOnlySpan<byte> bytes)
    {
        // Without a mark the zeros tell: JSON begins with two characters of ASCII (RFC 4627 §3).
        if (bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..] or [not 0, 0, not 0, 0, ..] or [0, not 0, 0, not 0, ..])
            return new JsonFault(new(0, 2), "The file is saved as UTF-16, but must be UTF-8");
        if (Utf8.IsValid(bytes))
            return null;
        var at = 0;
        while (Rune.DecodeFromUtf8(bytes[at..], out _, out var length) == System.Buffers.OperationStatus.Done)
            at += length;
        return new JsonFault(new(at, at + 1), $"The byte 0x{bytes[at]:X2} is not UTF-8 text; save the file as UTF-8");
    }
}
