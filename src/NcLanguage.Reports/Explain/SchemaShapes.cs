using System.Collections.Immutable;
using System.Text.Json;

namespace NcLanguage.Reports.Explain;

/// <summary>One member within another, with what it may be and what it says.</summary>
/// <param name="Of">What it is a member of, where that has a name of its own within the other: any code, or a list.</param>
sealed record SchemaPart(string Name, string Text, string? Of = null)
{
    /// <summary>any code: does</summary>
    public string Label => Of is null ? Name : $"{Of}: {Name}";
}

/// <summary>Reads the shapes of a JSON Schema as far as this project's schemas use them, and puts them into words.</summary>
sealed class SchemaShapes(JsonElement root)
{
    /// <summary>What a member is for, as its schema says, or else the shape it refers to.</summary>
    public string Description(JsonElement shape) =>
        shape.TryGetProperty("description", out var text) ? text.GetString()! : Follow(shape) is var target && target.TryGetProperty("description", out text) ? text.GetString()! : "";

    /// <summary>What a value may be, such as "A whole number, 1 to 99999, or null".</summary>
    public string ValueText(JsonElement shape)
    {
        var text = Kind(shape);
        return $"{char.ToUpperInvariant(text[0])}{text[1..]}{(MayBeNull(shape) ? "; null is as if it were left out" : "")}";
    }

    /// <summary>
    /// The members of an object, or of the objects of a list; none for anything else. Behind them stands what the entries of their lists hold, what is named by a pattern, and behind that what each object so named holds.
    /// </summary>
    public ImmutableArray<SchemaPart> Within(JsonElement shape)
    {
        shape = Follow(shape);
        if (shape.TryGetProperty("items", out var items))
            shape = Follow(items);
        var needed = shape.TryGetProperty("required", out var required) ? required.EnumerateArray().Select(name => name.GetString()).ToHashSet() : [];
        List<SchemaPart> parts = [];
        if (shape.TryGetProperty("properties", out var properties))
        {
            parts.AddRange(properties.EnumerateObject().Select(member => Part(member.Name, member.Value, needed.Contains(member.Name))));
            foreach (var member in properties.EnumerateObject())
                if (Follow(member.Value).TryGetProperty("items", out var entry) && Follow(entry).TryGetProperty("properties", out _))
                    parts.AddRange(Within(member.Value).Select(part => part with { Of = member.Name }));
        }
        if (shape.TryGetProperty("patternProperties", out var patterns))
            foreach (var family in patterns.EnumerateObject())
            {
                var name = family.Value.GetProperty("title").GetString()!;
                parts.Add(Part(name, family.Value, isNeeded: false));
                parts.AddRange(Within(family.Value).Select(part => part with { Of = name }));
            }
        return [.. parts];
    }

    SchemaPart Part(string name, JsonElement shape, bool isNeeded) =>
        new(name, $"{(isNeeded ? "needed: " : "")}{Kind(shape)}. {Description(shape)}");

    string Kind(JsonElement shape) => KindOfFirst(shape) + (shape.TryGetProperty("anyOf", out var choices)
        ? string.Concat(choices.EnumerateArray().Skip(1).Select(choice => choice.TryGetProperty("title", out var title) ? $", or {title.GetString()}" : "")) : "");

    string KindOfFirst(JsonElement shape)
    {
        shape = Follow(shape);
        if (shape.TryGetProperty("enum", out var values))
            return "one of " + string.Join(", ", values.EnumerateArray().Where(value => value.ValueKind == JsonValueKind.String).Select(value => value.GetString()));
        return string.Join(" or ", Types(shape).Where(type => type != "null").Select(type => type switch
        {
            "number" => "a number" + Limits(shape),
            "integer" => "a whole number" + Limits(shape),
            "string" => "a text",
            "boolean" => "true or false",
            "array" => ListText(shape),
            _ => "an object with members",
        }));
    }

    string ListText(JsonElement shape)
    {
        var isFixed = shape.TryGetProperty("minItems", out var least) && shape.TryGetProperty("maxItems", out var most) && least.GetInt32() == most.GetInt32();
        return isFixed ? $"a list of {least.GetInt32()} numbers" : $"a list, each entry {Kind(shape.GetProperty("items"))}";
    }

    static string Limits(JsonElement shape)
    {
        var above = shape.TryGetProperty("exclusiveMinimum", out var bound) ? $", above {bound.GetRawText()}" : "";
        var from = shape.TryGetProperty("minimum", out bound) ? $", from {bound.GetRawText()}" : "";
        var to = shape.TryGetProperty("maximum", out bound) ? $" to {bound.GetDecimal():0.###}" : "";
        return above + from + (above.Length + from.Length == 0 && to.Length > 0 ? "," : "") + to;
    }

    bool MayBeNull(JsonElement shape) => (shape.TryGetProperty("enum", out var values) && values.EnumerateArray().Any(value => value.ValueKind == JsonValueKind.Null))
        || (shape.TryGetProperty("anyOf", out var choices) && choices.EnumerateArray().Any(choice => Types(choice).Contains("null") || MayBeNull(choice)))
        || Types(Follow(shape)).Contains("null");

    static IEnumerable<string> Types(JsonElement shape) => !shape.TryGetProperty("type", out var type) ? []
        : type.ValueKind == JsonValueKind.String ? [type.GetString()!]
        : type.EnumerateArray().Select(one => one.GetString()!);

    /// <summary>The shape itself, or the one it refers to.</summary>
    JsonElement Follow(JsonElement shape)
    {
        if (shape.TryGetProperty("anyOf", out var choices))
            shape = choices[0];
        if (!shape.TryGetProperty("$ref", out var reference))
            return shape;
        // "#/$defs/name"
        return root.GetProperty("$defs").GetProperty(reference.GetString()!.Split('/')[^1]);
    }
}
