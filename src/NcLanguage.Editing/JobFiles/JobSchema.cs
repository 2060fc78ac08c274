using System.Collections.Immutable;
using System.Text.Json;
using NcLanguage.Machine;

namespace NcLanguage.Editing;

/// <summary>The kinds of file that go with a program.</summary>
public enum JobFileKind
{
    Setup,
    Machine,
    Cutting,
}

/// <summary>A schema as far as this project's schemas use the language: what may stand at a place, and what it means.</summary>
sealed class JobSchema
{
    readonly JsonElement _root;

    JobSchema(string schema) => _root = JsonDocument.Parse(schema).RootElement;

    public static JobSchema Of(JobFileKind kind) => new(kind switch
    {
        JobFileKind.Setup => Schemas.Setup,
        JobFileKind.Machine => Schemas.Machine,
        _ => Schemas.Cutting,
    });

    /// <summary>The shape of a place, its reference not followed; null where the schema knows none.</summary>
    public JsonElement? At(ImmutableArray<string> path)
    {
        var shape = _root;
        foreach (var step in path)
        {
            if (Step(shape, step) is not { } next)
                return null;
            shape = next;
        }
        return shape;
    }

    /// <summary>The members of an object.</summary>
    public IEnumerable<JsonProperty> Members(JsonElement shape) => Shapes(shape)
        .SelectMany(one => one.TryGetProperty("properties", out var members) ? members.EnumerateObject() : Enumerable.Empty<JsonProperty>());

    /// <summary>The values that a place takes by name, true and false included.</summary>
    public IEnumerable<string> Values(JsonElement shape)
    {
        foreach (var one in Shapes(shape))
        {
            if (one.TryGetProperty("enum", out var values))
                foreach (var value in values.EnumerateArray())
                    if (value.ValueKind != JsonValueKind.Null)
                        yield return value.GetRawText();
            if (Types(one).Contains("boolean"))
            {
                yield return "true";
                yield return "false";
            }
        }
    }

    /// <summary>Whole values that may stand at a place.</summary>
    public IEnumerable<JsonElement> Examples(JsonElement shape)
    {
        foreach (var one in Shapes(shape))
            if (one.TryGetProperty("examples", out var examples))
                foreach (var example in examples.EnumerateArray())
                    yield return example;
    }

    /// <summary>What a place means; empty where the schema does not say.</summary>
    public string Meaning(JsonElement shape)
    {
        foreach (var one in Shapes(shape))
            if (one.TryGetProperty("description", out var text))
                return text.GetString()!;
        return "";
    }

    /// <summary>How a value is begun: quotes, brackets, or nothing for a number.</summary>
    public (string Before, string After) Brackets(JsonElement shape)
    {
        var types = Shapes(shape).SelectMany(Types).ToHashSet();
        var isText = types.Contains("string") || Values(shape).Any(value => value[0] == '"');
        return isText && !types.Contains("object") && !types.Contains("array") ? ("\"", "\"")
            : types.Contains("array") ? ("[", "]")
            : types.Contains("object") ? ("{ ", " }")
            : ("", "");
    }

    JsonElement? Step(JsonElement shape, string step)
    {
        foreach (var one in Shapes(shape))
        {
            if (step == JsonCursor.Entry && one.TryGetProperty("items", out var items))
                return items;
            if (one.TryGetProperty("properties", out var members) && members.TryGetProperty(step, out var member))
                return member;
            if (one.TryGetProperty("patternProperties", out var patterns))
                return patterns.EnumerateObject().First().Value;
        }
        return null;
    }

    /// <summary>The shape, what it refers to, and its alternatives.</summary>
    IEnumerable<JsonElement> Shapes(JsonElement shape)
    {
        if (shape.ValueKind != JsonValueKind.Object)
            yield break;
        yield return shape;
        if (shape.TryGetProperty("$ref", out var reference))
            foreach (var one in Shapes(Follow(reference.GetString()!)))
                yield return one;
        foreach (var one in Alternatives(shape, "anyOf").Concat(Alternatives(shape, "oneOf")).Concat(Alternatives(shape, "allOf")))
            yield return one;
    }

    IEnumerable<JsonElement> Alternatives(JsonElement shape, string way) =>
        shape.TryGetProperty(way, out var choices) ? choices.EnumerateArray().SelectMany(Shapes) : [];

    JsonElement Follow(string reference)
    {
        var shape = _root;
        foreach (var step in reference.TrimStart('#', '/').Split('/'))
            shape = shape.GetProperty(step);
        return shape;
    }

    static IEnumerable<string> Types(JsonElement shape) => !shape.TryGetProperty("type", out var type) ? []
        : type.ValueKind == JsonValueKind.String ? [type.GetString()!]
        : type.EnumerateArray().Select(one => one.GetString()!);
}
