using System.Text;
using System.Text.Json.Nodes;
using NcLanguage.Server.Rpc;
using NcLanguage.Server.Scheduling;

namespace NcLanguage.Server.Tests.Torture;

/// <summary>Each request with parameters of every wrong shape: all of them null, a number, a text, a row, and each member so, or left out. Each is answered under its own id,
/// by a result or by one of the protocol's codes (JSON-RPC 2.0 section 5.1, LSP 3.17 "ErrorCodes"), never by a fault of the server's own.</summary>
public sealed class WrongShapeTests
{
    const string Uri = "file:///job/part.nc";

    /// <summary>Stands for half of a surrogate pair, which the writer of the cases does not take.</summary>
    const string Half = "HALF";

    static readonly string?[] Wrong = [null, "0", "-1", "1.5", "1e300", "99999999999999999999", "true", "\"\"", "\"x\"", $"\"{Half}\"", "[]", "[1]", "[null]", "{}", """{"uri":5}"""];

    static readonly int[] Codes = [-32600, -32602, -32801, -32803];

    /// <summary>Every member that any request has.</summary>
    const string Whole = $$"""
        { "textDocument": { "uri": "{{Uri}}" }, "position": { "line": 1, "character": 1 }, "range": { "start": { "line": 0, "character": 0 }, "end": { "line": 2, "character": 0 } },
          "context": { "diagnostics": [], "includeDeclaration": true, "frameId": 1, "stoppedLocation": { "start": { "line": 1, "character": 0 }, "end": { "line": 1, "character": 1 } }, "only": ["quickfix"] },
          "newName": "O7", "positions": [{ "line": 1, "character": 1 }], "previousResultId": "1", "options": { "tabSize": 4, "insertSpaces": true }, "ch": "\n", "query": "", "label": "G0", "title": "x",
          "item": { "name": "O1", "kind": 12, "uri": "{{Uri}}", "range": { "start": { "line": 0, "character": 0 }, "end": { "line": 0, "character": 1 } },
                    "selectionRange": { "start": { "line": 0, "character": 0 }, "end": { "line": 0, "character": 1 } } },
          "data": { "uri": "{{Uri}}", "version": 1, "line": 1, "column": 1 }, "files": [{ "oldUri": "{{Uri}}", "newUri": "file:///job/other.nc" }],
          "command": "nclanguage.openMotionView", "arguments": ["{{Uri}}"], "nonce": "x", "workDoneToken": 1, "partialResultToken": 1 }
        """;

    public static TheoryData<string> MethodNames => [.. MethodTable.Rows.Where(row => row.Value == Schedule.Snapshot && row.Key != Methods.WorkspaceDiagnostics).Select(row => row.Key)];

    [Theory]
    [MemberData(nameof(MethodNames))]
    public async Task Each_is_answered_under_its_own_id_and_the_server_lives_on(string method)
    {
        await using var client = await TestClient.InitializedAsync(pages: new RealPages());
        await client.OpenAsync(Uri, "O1\nG81 X1 Y2 Z-3 R2 F100\nM30\n");
        await client.DiagnosticsAsync(Uri, 1);
        string[] shapes = [.. Shapes()];
        var frames = new StringBuilder();
        for (var i = 0; i < shapes.Length; i++)
        {
            var message = $$"""{"jsonrpc":"2.0","id":{{1000 + i}},"method":"{{method}}"{{shapes[i]}}}""";
            frames.Append($"Content-Length: {message.Length}\r\n\r\n{message}");
        }
        var before = client.AnswerCount;
        await client.SendRawAsync(Encoding.ASCII.GetBytes(frames.ToString()));
        await HeaderTests.Eventually(() => client.AnswerCount >= before + shapes.Length);
        JsonNode[] answers = [.. client.Log.Where(message => message["method"] is null && message["id"] is JsonValue id && id.TryGetValue(out int number) && number >= 1000)];
        Assert.Equal(Enumerable.Range(1000, shapes.Length), answers.Select(answer => (int)answer["id"]!).Order());
        foreach (var answer in answers.Where(answer => answer["error"] is not null))
            Assert.True(Codes.Contains((int)answer["error"]!["code"]!), $"{shapes[(int)answer["id"]! - 1000]}: {answer["error"]!.ToJsonString()}");
        Assert.NotNull(await client.RequestAsync("textDocument/documentSymbol", $$"""{"textDocument":{"uri":"{{Uri}}"} }"""));
        Assert.DoesNotContain(client.Log, message => (string?)message["method"] == "window/logMessage" && (int)message["params"]!["type"]! == 1);
    }

    /// <summary>What stands behind the method in a message.</summary>
    static IEnumerable<string> Shapes()
    {
        yield return "";
        // Deeper than the 64 levels that messages are read to.
        yield return $",\"params\":{new string('[', 100)}{new string(']', 100)}";
        foreach (var wrong in Wrong)
            yield return $",\"params\":{wrong?.Replace(Half, "\\ud800", StringComparison.Ordinal) ?? "null"}";
        var count = Places(JsonNode.Parse(Whole)!).Count();
        for (var place = 0; place < count; place++)
        {
            foreach (var wrong in Wrong.Append("left out"))
            {
                var parameters = JsonNode.Parse(Whole)!;
                (var parent, var key) = Places(parameters).ElementAt(place);
                if (key is int index)
                    ((JsonArray)parent)[index] = wrong is null or "left out" ? null : JsonNode.Parse(wrong);
                else if (wrong == "left out")
                    ((JsonObject)parent).Remove((string)key);
                else
                    ((JsonObject)parent)[(string)key] = wrong is null ? null : JsonNode.Parse(wrong);
                yield return ",\"params\":" + parameters.ToJsonString().Replace(Half, "\\ud800", StringComparison.Ordinal);
            }
        }
    }

    static IEnumerable<(JsonNode Parent, object Key)> Places(JsonNode node) => node switch
    {
        JsonObject members => members.SelectMany(member => (IEnumerable<(JsonNode, object)>)[(node, member.Key), .. member.Value is null ? [] : Places(member.Value)]),
        JsonArray row => row.SelectMany((value, i) => (IEnumerable<(JsonNode, object)>)[(node, i), .. value is null ? [] : Places(value)]),
        _ => [],
    };
}
