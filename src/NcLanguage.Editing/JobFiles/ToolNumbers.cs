using System.Text.Json;

namespace NcLanguage.Editing;

/// <summary>The numbers that the tools of a setup file have, however unfinished it is.</summary>
static class ToolNumbers
{
    /// <summary>No tool has a greater number.</summary>
    public const int Most = 99_999;

    /// <summary>The greatest number before the first place that cannot be read; 0 where there is none.</summary>
    public static int Greatest(ReadOnlySpan<byte> bytes)
    {
        var greatest = 0;
        var isInTools = false;
        var reader = new Utf8JsonReader(bytes, new JsonReaderOptions { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip });
        try
        {
            while (reader.Read())
            {
                if (reader.TokenType != JsonTokenType.PropertyName)
                    continue;
                if (reader.CurrentDepth == 1)
                    isInTools = reader.ValueTextEquals("tools"u8);
                else if (isInTools && reader.CurrentDepth == 3 && reader.ValueTextEquals("number"u8) && reader.Read() && reader.TokenType == JsonTokenType.Number && reader.TryGetInt32(out var number))
                    greatest = Math.Max(greatest, number);
            }
        }
        catch (JsonException)
        {
            // It is being written: what stands before the place is known.
        }
        return greatest;
    }
}
