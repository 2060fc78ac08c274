using System.Text.Json;
using System.Text.Json.Nodes;

namespace NcLanguage.EndToEnd.Lsp;

/// <summary>The edits of a workspace edit for one file, as changes to send back and as text.</summary>
static class TextEdits
{
    /// <summary>The edits for a file, the last place first, so that each can be applied without moving the next.</summary>
    public static IReadOnlyList<JsonElement> For(JsonElement edit, string file)
    {
        var edits = edit.TryGetProperty("documentChanges", out var documents)
            ? documents.EnumerateArray()
                .Where(d => LspSession.SameFile(d.GetProperty("textDocument").GetProperty("uri").GetString()!, file))
                .SelectMany(d => d.GetProperty("edits").EnumerateArray())
            : edit.GetProperty("changes").EnumerateObject()
                .Where(p => LspSession.SameFile(p.Name, file))
                .SelectMany(p => p.Value.EnumerateArray());
        return [.. edits.Reverse().OrderByDescending(e => Line(e, "start")).ThenByDescending(e => Character(e, "start"))];
    }

    public static JsonArray AsChanges(IReadOnlyList<JsonElement> edits) => new([.. edits.Select(e => (JsonNode)new JsonObject
    {
        ["range"] = JsonNode.Parse(e.GetProperty("range").GetRawText()),
        ["text"] = e.GetProperty("newText").GetString(),
    })]);

    static int Line(JsonElement edit, string end) => edit.GetProperty("range").GetProperty(end).GetProperty("line").GetInt32();

    static int Character(JsonElement edit, string end) => edit.GetProperty("range").GetProperty(end).GetProperty("character").GetInt32();
}
