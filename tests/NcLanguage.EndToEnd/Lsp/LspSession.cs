using System.Text.Json;
using System.Text.Json.Nodes;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd.Lsp;

/// <summary>A started and initialised server with the handful of requests that the tests repeat. Lines and columns count from 1.</summary>
sealed class LspSession : IAsyncDisposable
{
    LspSession(LspClient client, JsonElement initialized)
    {
        Client = client;
        Initialized = initialized;
    }

    public LspClient Client { get; }

    /// <summary>The answer to <c>initialize</c>.</summary>
    public JsonElement Initialized { get; }

    public static Task<LspSession> StartAsync(string folder, params string[] encodings) => StartWithAsync(ServerCommand.With("serve"), folder, encodings);

    public static async Task<LspSession> StartWithAsync(IReadOnlyList<string> command, string folder, params string[] encodings)
    {
        var client = LspClient.Start(command);
        var positions = new JsonArray([.. encodings.Select(encoding => (JsonNode)encoding)]);
        var initialized = await client.RequestAsync("initialize", new JsonObject
        {
            ["processId"] = Environment.ProcessId,
            ["rootUri"] = Uri(folder),
            ["workspaceFolders"] = new JsonArray(new JsonObject { ["uri"] = Uri(folder), ["name"] = "job" }),
            ["capabilities"] = new JsonObject
            {
                ["general"] = new JsonObject { ["positionEncodings"] = positions },
                ["textDocument"] = new JsonObject
                {
                    ["publishDiagnostics"] = new JsonObject { ["relatedInformation"] = true, ["versionSupport"] = true, ["dataSupport"] = true },
                    ["hover"] = new JsonObject { ["contentFormat"] = new JsonArray("markdown", "plaintext") },
                    ["codeAction"] = new JsonObject
                    {
                        ["codeActionLiteralSupport"] = new JsonObject { ["codeActionKind"] = new JsonObject { ["valueSet"] = new JsonArray("quickfix") } },
                        ["dataSupport"] = true,
                        ["resolveSupport"] = new JsonObject { ["properties"] = new JsonArray("edit") },
                    },
                },
            },
        });
        await client.NotifyAsync("initialized", new JsonObject());
        return new LspSession(client, initialized);
    }

    public static string Uri(string file) => new System.Uri(file).AbsoluteUri;

    public Task OpenAsync(string file, string text) => Client.NotifyAsync("textDocument/didOpen", new JsonObject
    {
        ["textDocument"] = new JsonObject { ["uri"] = Uri(file), ["languageId"] = "nc", ["version"] = 1, ["text"] = text },
    });

    /// <summary>The findings published for a version of a file.</summary>
    public async Task<JsonElement> FindingsAsync(string file, int version) =>
        (await Client.NotificationAsync("textDocument/publishDiagnostics", p =>
            SameFile(p.GetProperty("uri").GetString()!, file) && p.TryGetProperty("version", out var of) && of.GetInt32() == version))
        .GetProperty("diagnostics");

    public Task<JsonElement> HoverAsync(string file, int line, int column) => Client.RequestAsync("textDocument/hover", At(file, line, column));

    public async Task<IReadOnlyList<JsonElement>> HintsAsync(string file, int lines)
    {
        var answer = await Client.RequestAsync("textDocument/inlayHint", new JsonObject
        {
            ["textDocument"] = new JsonObject { ["uri"] = Uri(file) },
            ["range"] = Range(1, 1, lines + 1, 1),
        });
        return answer.ValueKind == JsonValueKind.Array ? [.. answer.EnumerateArray()] : [];
    }

    /// <summary>The fixes offered for one finding, edits included whether or not the server gives them only on request.</summary>
    public async Task<IReadOnlyList<JsonElement>> FixesAsync(string file, JsonElement finding)
    {
        var answer = await Client.RequestAsync("textDocument/codeAction", new JsonObject
        {
            ["textDocument"] = new JsonObject { ["uri"] = Uri(file) },
            ["range"] = JsonNode.Parse(finding.GetProperty("range").GetRawText()),
            ["context"] = new JsonObject { ["diagnostics"] = new JsonArray(JsonNode.Parse(finding.GetRawText())), ["only"] = new JsonArray("quickfix") },
        });
        var fixes = new List<JsonElement>();
        foreach (var action in answer.EnumerateArray())
        {
            fixes.Add(action.TryGetProperty("edit", out _)
                ? action
                : await Client.RequestAsync("codeAction/resolve", JsonNode.Parse(action.GetRawText())));
        }

        return fixes;
    }

    public Task ChangeAsync(string file, int version, JsonArray changes) => Client.NotifyAsync("textDocument/didChange", new JsonObject
    {
        ["textDocument"] = new JsonObject { ["uri"] = Uri(file), ["version"] = version },
        ["contentChanges"] = changes,
    });

    public static JsonObject At(string file, int line, int column) => new()
    {
        ["textDocument"] = new JsonObject { ["uri"] = Uri(file) },
        ["position"] = Position(line, column),
    };

    public static JsonObject Range(int line, int column, int endLine, int endColumn) =>
        new() { ["start"] = Position(line, column), ["end"] = Position(endLine, endColumn) };

    /// <summary>Servers may write a URI's letters and escapes in their own way; the file is what counts.</summary>
    public static bool SameFile(string uri, string file) => new System.Uri(uri).LocalPath == file;

    public ValueTask DisposeAsync() => Client.DisposeAsync();

    static JsonObject Position(int line, int column) => new() { ["line"] = line - 1, ["character"] = column - 1 };
}
