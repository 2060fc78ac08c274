using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using NcLanguage.Server.Rpc;
using NcLanguage.Server.Scheduling;

namespace NcLanguage.Server.Tests.Torture;

/// <summary>Each notification with parameters of every wrong shape: what the log says of it is one line of the server's own, once, that quotes nothing of the message.</summary>
public sealed class HostileLogTests
{
    const string Mark = "SECRET";

    static readonly string[] Wrong =
    [
        "null", "0", "-1", "1.5", "1e300", "99999999999999999999", "true", "\"\"", $"\"{Mark}\"", "[]", $"[\"{Mark}\"]", "[null]", "{}", $$"""{"{{Mark}}":"{{Mark}}"}""", $$"""{"uri":"{{Mark}}"}""",
    ];

    /// <summary>Every member that any notification has.</summary>
    const string Whole = $$"""
        { "textDocument": { "uri": "file:///job/{{Mark}}.nc", "version": 3, "languageId": "nc", "text": "{{Mark}}" },
          "contentChanges": [{ "range": { "start": { "line": 0, "character": 0 }, "end": { "line": 2, "character": 0 } }, "text": "{{Mark}}" }],
          "changes": [{ "uri": "file:///{{Mark}}", "type": 1 }], "event": { "added": [{ "uri": "file:///{{Mark}}", "name": "{{Mark}}" }], "removed": [] },
          "settings": { "nclanguage": { "setup": "{{Mark}}", "machine": "{{Mark}}", "readings": { "{{Mark}}": "{{Mark}}" } } }, "value": "{{Mark}}", "id": "{{Mark}}", "{{Mark}}": "{{Mark}}" }
        """;

    public static TheoryData<string> MethodNames =>
    [
        .. MethodTable.Rows.Where(row => row.Value != Schedule.Snapshot && row.Key is not (Methods.Exit or Methods.Initialize or Methods.Shutdown)).Select(row => row.Key),
        Methods.Hover, Methods.Progress, Mark, $"$/{Mark}",
    ];

    [Theory]
    [MemberData(nameof(MethodNames))]
    public async Task A_notification_of_a_wrong_shape_is_told_in_words_of_our_own(string method)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync($"file:///job/{Mark}.nc", "G0 X1");
        foreach (var shape in Shapes())
            await client.SendAsync($$"""{"jsonrpc":"2.0","method":"{{method}}"{{shape}}}""");
        Assert.Equal(-32601, await client.ErrorOfAsync("no/such/method", "{}"));
        await client.OpenAsync("file:///alive.nc", "G0 X1");
        Assert.NotNull(await client.RequestAsync("textDocument/documentSymbol", """{"textDocument":{"uri":"file:///alive.nc"}}"""));
        var lines = client.ErrorLog.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var ours = new Regex($@"^nclanguage: {Regex.Escape(method)} (was not taken: (these parameters cannot be read: \$[$.,\w\[\] ]*|These parameters cannot be read: a row holds null where it may not|it needs its parameters, as an object|The document ([0-9a-f]{{8}})? is not open)|at document [0-9a-f]{{8}}, (version -?\d+, came behind version -?\d+|has no version)[\w :,]+\. Others like it of this document are not told)\.$");
        Assert.All(lines, line => Assert.Matches(ours, line.TrimEnd()));
        Assert.DoesNotContain(lines, line => line.Contains(Mark, StringComparison.Ordinal));
        Assert.Equal(lines.Distinct(), lines);
    }

    /// <summary>What stands behind the method in a message.</summary>
    static IEnumerable<string> Shapes()
    {
        yield return "";
        foreach (var wrong in Wrong)
            yield return $",\"params\":{wrong}";
        yield return $",\"params\":[{Whole},1]";
        var count = Places(JsonNode.Parse(Whole)!).Count();
        for (var place = 0; place < count; place++)
        {
            foreach (var wrong in Wrong.Append("left out"))
            {
                var parameters = JsonNode.Parse(Whole)!;
                (var parent, var key) = Places(parameters).ElementAt(place);
                if (key is int index)
                    ((JsonArray)parent)[index] = wrong == "left out" ? null : JsonNode.Parse(wrong);
                else if (wrong == "left out")
                    ((JsonObject)parent).Remove((string)key);
                else
                    ((JsonObject)parent)[(string)key] = JsonNode.Parse(wrong);
                yield return ",\"params\":" + parameters.ToJsonString();
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
