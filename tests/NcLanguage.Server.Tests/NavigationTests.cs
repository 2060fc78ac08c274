using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests;

/// <summary>What the answers about places look like to the client. What they say is tested in the editing room.</summary>
public sealed class NavigationTests
{
    const string Uri = "file:///job/part.nc";
    const string Called = "file:///job/O0012.nc";
    const string Renames = """{"workspace":{"workspaceEdit":{"documentChanges":true,"resourceOperations":["create","rename","delete"]}}}""";

    const string Program = "(é🔩) N10 G0 X0\nM98 P12\nIF [#1 EQ 1] GOTO 10\nT4 M6\nG43 H4 Z50\nM30\n";

    [Fact]
    public async Task A_definition_is_a_place_in_the_text_or_the_file_called()
    {
        await using var client = await OpenAsync();
        Assert.Equal("""[{"uri":"file:///job/part.nc","range":{"start":{"line":0,"character":7},"end":{"line":0,"character":9}}}]""",
            (await client.RequestAsync("textDocument/definition", At(2, 19)))!.ToJsonString());
        var file = (await client.RequestAsync("textDocument/definition", At(1, 5)))!.AsArray().Single()!;
        Assert.Equal(Called, (string?)file["uri"]);
        Assert.Empty((await client.RequestAsync("textDocument/declaration", At(5, 3)))!.AsArray());
    }

    [Fact]
    public async Task References_come_from_the_files_beside_too()
    {
        await using var client = await OpenAsync();
        var places = (await client.RequestAsync("textDocument/references", At(1, 5, ",\"context\":{\"includeDeclaration\":true}")))!.AsArray();
        Assert.Equal([Uri, Called], places.Select(place => (string?)place!["uri"]));
        Assert.Single((await client.RequestAsync("textDocument/references", At(1, 5, ",\"context\":{\"includeDeclaration\":false}")))!.AsArray());
    }

    [Fact]
    public async Task Highlights_tell_reading_from_writing()
    {
        await using var client = await OpenAsync();
        var lit = (await client.RequestAsync("textDocument/documentHighlight", At(0, 8)))!.AsArray();
        Assert.Equal([(0, 3), (2, 2)], lit.Select(one => ((int)one!["range"]!["start"]!["line"]!, (int)one["kind"]!)));
    }

    [Fact]
    public async Task A_renaming_is_prepared_and_edits_every_file_in_order()
    {
        await using var client = await OpenAsync(Renames);
        Assert.Equal("""{"range":{"start":{"line":1,"character":5},"end":{"line":1,"character":7}},"placeholder":"12"}""",
            (await client.RequestAsync("textDocument/prepareRename", At(1, 6)))!.ToJsonString());
        Assert.Null(await client.RequestAsync("textDocument/prepareRename", At(0, 13)));
        var steps = (await client.RequestAsync("textDocument/rename", At(1, 6, ",\"newName\":\"34\"")))!["documentChanges"]!.AsArray();
        Assert.Equal([Uri, Called], steps.Take(2).Select(step => (string?)step!["textDocument"]!["uri"]));
        Assert.Equal(1, (int)steps[0]!["textDocument"]!["version"]!);
        Assert.Equal("""{"oldUri":"file:///job/O0012.nc","newUri":"file:///job/O0034.nc","kind":"rename"}""", steps[2]!.ToJsonString());
    }

    /// <summary>LSP 3.17, "Work Done Progress": only where the client gives a token for it; it begins once and ends once.</summary>
    [Fact]
    public async Task A_renaming_shows_its_progress_where_that_is_asked_for()
    {
        await using var client = await OpenAsync(Renames);
        await client.RequestAsync("textDocument/rename", At(1, 6, ",\"newName\":\"34\""));
        Assert.DoesNotContain(client.Log, message => (string?)message["method"] == "$/progress");
        await client.RequestAsync("textDocument/rename", At(1, 6, ",\"newName\":\"34\",\"workDoneToken\":\"t\""));
        await client.NextAsync("$/progress", progress => (string?)progress["value"]!["kind"] == "end");
        JsonNode[] sent = [.. client.Log.Where(message => (string?)message["method"] == "$/progress").Select(message => message["params"]!)];
        Assert.Equal(["begin", "end"], sent.Select(progress => (string?)progress["value"]!["kind"]));
        Assert.All(sent, progress => Assert.Equal("t", (string?)progress["token"]));
        Assert.Equal("Renaming in the programs of the folder", (string?)sent[0]["value"]!["title"]);
    }

    [Fact]
    public async Task A_renaming_that_cannot_be_is_refused_with_its_reason()
    {
        await using var client = await OpenAsync();
        var error = (await client.AskAsync("textDocument/rename", At(0, 8, ",\"newName\":\"x\"")))["error"]!;
        Assert.Equal(-32803, (int)error["code"]!);
        Assert.Equal("A block number is a whole number from 0 to 99999.", (string?)error["message"]);
    }

    [Fact]
    public async Task Twins_folds_selections_and_links()
    {
        await using var client = await OpenAsync();
        var twins = (await client.RequestAsync("textDocument/linkedEditingRange", At(3, 1)))!["ranges"]!.AsArray();
        Assert.Equal([3, 4], twins.Select(range => (int)range!["start"]!["line"]!));
        Assert.Null(await client.RequestAsync("textDocument/linkedEditingRange", At(0, 13)));
        Assert.Contains((await client.RequestAsync("textDocument/foldingRange", Document()))!.AsArray(), fold => (int)fold!["startLine"]! == 3 && (string?)fold["kind"] == "region");
        var grown = (await client.RequestAsync("textDocument/selectionRange", Document(",\"positions\":[{\"line\":4,\"character\":5}]")))!.AsArray().Single()!;
        Assert.Equal(5, (int)grown["range"]!["start"]!["character"]!);
        Assert.Equal(4, (int)grown["parent"]!["range"]!["start"]!["character"]!);
        var link = (await client.RequestAsync("textDocument/documentLink", Document()))!.AsArray().Single()!;
        Assert.Equal(Called, (string?)link["target"]);
    }

    [Fact]
    public async Task Calls_are_followed_from_file_to_file()
    {
        await using var client = await OpenAsync();
        var main = (await client.RequestAsync("textDocument/prepareCallHierarchy", At(0, 0)))!.AsArray().Single()!;
        var call = (await client.RequestAsync("callHierarchy/outgoingCalls", "{\"item\":" + main.ToJsonString() + "}"))!.AsArray().Single()!;
        Assert.Equal(Called, (string?)call["to"]!["uri"]);
        var back = (await client.RequestAsync("callHierarchy/incomingCalls", "{\"item\":" + call["to"]!.ToJsonString() + "}"))!.AsArray().Single()!;
        Assert.Equal(Uri, (string?)back["from"]!["uri"]);
        Assert.Equal(1, (int)back["fromRanges"]!.AsArray().Single()!["start"]!["line"]!);
    }

    static async Task<TestClient> OpenAsync(string capabilities = "{}")
    {
        var client = await TestClient.InitializedAsync(capabilities);
        await client.OpenAsync(Called, "O12\nG91 X1\nM99\n");
        await client.OpenAsync(Uri, Program);
        return client;
    }

    static string At(int line, int character, string more = "") =>
        "{\"textDocument\":{\"uri\":\"" + Uri + "\"},\"position\":{\"line\":" + line + ",\"character\":" + character + "}" + more + "}";

    static string Document(string more = "") => "{\"textDocument\":{\"uri\":\"" + Uri + "\"}" + more + "}";
}
