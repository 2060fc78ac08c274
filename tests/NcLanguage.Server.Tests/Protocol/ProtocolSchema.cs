using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace NcLanguage.Server.Tests;

/// <summary>Holds messages against the protocol's published types: the schema is made from the type declarations of the npm package
/// vscode-languageserver-protocol 3.17.5 (see messages.ts and schema.mjs beside it), which its authors keep in step with the specification. Members
/// that the types do not have are faults too.</summary>
static class ProtocolSchema
{
    static readonly JsonNode s_all = Read();
    static readonly ConcurrentDictionary<string, Lazy<JsonSchema?>> s_schemas = new();

    /// <summary>What is wrong with the parameters or result of a message; null where nothing is. Messages of our own are not looked at.</summary>
    /// <param name="method">The method.</param>
    /// <param name="part">params or result.</param>
    /// <param name="value">What was sent.</param>
    public static string? Fault(string method, string part, JsonNode? value)
    {
        if (method.StartsWith("nclanguage/", StringComparison.Ordinal))
            return null;
        if (value is null && s_all["properties"]![method] is { } known && known["properties"]?[part] is null)
            return null;
        if (s_schemas.GetOrAdd(method + "#" + part, _ => new Lazy<JsonSchema?>(() => SchemaOf(method, part))).Value is not { } schema)
            return $"{method}: no type is known of its {part}; add it to messages.ts";
        var results = schema.Evaluate(JsonSerializer.SerializeToElement(value), new EvaluationOptions { OutputFormat = OutputFormat.List });
        if (results.IsValid)
            return null;
        var faults = (results.Details ?? []).Where(detail => detail.Errors is not null)
            .SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}")).Distinct().Take(8);
        return $"{method} {part}: {string.Join("; ", faults)} in {value?.ToJsonString()}";
    }

    static JsonSchema? SchemaOf(string method, string part)
    {
        if (s_all["properties"]![method]?["properties"]?[part] is not { } own)
            return null;
        // In this draft nothing counts beside a reference.
        var schema = new JsonObject { ["allOf"] = new JsonArray(own.DeepClone()) };
        schema["$schema"] = s_all["$schema"]!.DeepClone();
        schema["definitions"] = s_all["definitions"]!.DeepClone();
        return JsonSchema.FromText(schema.ToJsonString());
    }

    static JsonNode Read()
    {
        using var stream = typeof(ProtocolSchema).Assembly.GetManifestResourceStream("lsp.schema.json")!;
        return JsonNode.Parse(stream)!;
    }
}
