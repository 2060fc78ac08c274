using System.Globalization;
using System.Text;
using System.Text.Json;

namespace NcLanguage.Editing;

/// <summary>Whole objects and lists that may stand at a place, from the examples of the schema, with a place to fill in for each number and name.</summary>
static class JobExample
{
    /// <summary>The examples of a place, or its bare brackets.</summary>
    /// <param name="number">The number that an entry gets in the place of the example's own, where those are taken; it stands also where the example repeats its own.</param>
    public static IEnumerable<JobFileItem> Of(JobSchema schema, JsonElement shape, int? number = null)
    {
        var any = false;
        foreach (var example in schema.Examples(shape))
        {
            any = true;
            yield return Write(example, schema.Meaning(shape), number);
        }
        if (!any && schema.Brackets(shape) is { Before: not ("" or "\"") } brackets)
            yield return new JobFileItem(brackets.Before.Trim() + " " + brackets.After.Trim(), brackets.Before + brackets.After, schema.Meaning(shape), false)
            {
                Snippet = Escaped(brackets.Before) + "$1" + Escaped(brackets.After),
            };
    }

    static JobFileItem Write(JsonElement example, string meaning, int? number)
    {
        var own = number is not null && example.ValueKind == JsonValueKind.Object && example.TryGetProperty("number", out var given) ? given.GetRawText() : null;
        var text = new StringBuilder();
        var snippet = new StringBuilder();
        var places = 0;
        Write(example, "");
        return new JobFileItem(Label(example), text.ToString(), meaning, false) { Snippet = snippet.ToString() };

        void Write(JsonElement value, string margin)
        {
            if (value.ValueKind == JsonValueKind.Object)
            {
                // The file itself has a line for each member, what stands in it one line.
                var isFile = text.Length == 0 && value.EnumerateObject().Any(member => member.Value.ValueKind == JsonValueKind.Object);
                var (open, between, close) = isFile ? ("{\n  ", ",\n  ", "\n}") : ("{ ", ", ", " }");
                var before = open;
                foreach (var member in value.EnumerateObject())
                {
                    Both($"{before}\"{member.Name}\": ");
                    if (member.Name is "number" or "lengthOffset" or "radiusOffset" && member.Value.GetRawText() == own)
                        Place(number!.Value.ToString(CultureInfo.InvariantCulture), "");
                    else
                        Write(member.Value, margin);
                    before = between;
                }
                Both(close);
            }
            else if (value.ValueKind == JsonValueKind.Array)
            {
                Both("[");
                var before = "";
                foreach (var entry in value.EnumerateArray())
                {
                    Both(before);
                    Write(entry, margin);
                    before = ", ";
                }
                Both("]");
            }
            else
                Place(value.GetRawText(), value.ValueKind == JsonValueKind.String ? "\"" : "");
        }

        void Both(string signs)
        {
            text.Append(signs);
            snippet.Append(Escaped(signs));
        }

        void Place(string raw, string quote)
        {
            text.Append(raw);
            snippet.Append(CultureInfo.InvariantCulture, $"{quote}${{{++places}:{Escaped(raw.Trim('"'))}}}{quote}");
        }
    }

    /// <summary>clamp A; spot-drill; else the first members.</summary>
    static string Label(JsonElement example)
    {
        if (example.ValueKind != JsonValueKind.Object)
            return example.GetRawText();
        foreach (var name in (ReadOnlySpan<string>)["name", "kind", "thread"])
            if (example.TryGetProperty(name, out var value))
                return "{ … } " + value.GetString();
        return "{ " + string.Join(", ", example.EnumerateObject().Take(3).Select(member => member.Name)) + " … }";
    }

    public static string Escaped(string text) =>
        text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("$", "\\$", StringComparison.Ordinal).Replace("}", "\\}", StringComparison.Ordinal);
}
