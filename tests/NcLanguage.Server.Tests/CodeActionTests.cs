using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests;

/// <summary>Quick fixes and the fix of all.</summary>
public sealed class CodeActionTests
{
    const string Uri = "file:///job/part.nc";
    const string Full = """{"workspace":{"workspaceEdit":{"documentChanges":true}},"textDocument":{"codeAction":{"dataSupport":true,"resolveSupport":{"properties":["edit"]}}}}""";
    const string Program = "%\nG21 G90 G17 G54\nG0 X10. Y10. (é🔩 hole\nG0 X20. Y10. (hole\nM30\n%\n";

    [Fact]
    public async Task A_safe_fix_is_preferred_and_edits_the_version_it_was_offered_for()
    {
        await using var client = await OpenAsync(Full);
        var action = (await ActionsAsync(client, 2, 2)).Single(a => Name(a) == "comment-not-closed");
        Assert.Equal("quickfix", (string?)action["kind"]);
        Assert.True((bool)action["isPreferred"]!);
        var edit = action["edit"]!["documentChanges"]![0]!;
        Assert.Equal(Uri, (string?)edit["textDocument"]!["uri"]);
        Assert.Equal(5, (int)edit["textDocument"]!["version"]!);
        Assert.Equal(
            """[{"range":{"start":{"line":2,"character":22},"end":{"line":2,"character":22}},"newText":")"}]""", edit["edits"]!.ToJsonString());
        Assert.Equal("nclanguage", (string?)action["diagnostics"]![0]!["source"]);
    }

    [Fact]
    public async Task A_client_without_versioned_edits_gets_edits_by_address()
    {
        await using var client = await OpenAsync(TestClient.Literals);
        var action = (await ActionsAsync(client, 2, 2)).Single(a => Name(a) == "comment-not-closed");
        Assert.Equal(22, (int)action["edit"]!["changes"]![Uri]![0]!["range"]!["start"]!["character"]!);
    }

    [Fact]
    public async Task A_fix_that_is_a_choice_is_not_preferred()
    {
        await using var client = await TestClient.InitializedAsync(Full);
        await client.OpenAsync(Uri, "G21 G90 G17 G54\nN10 G0 X10. Y10.\nN10 G0 X20.\nM30\n");
        var action = (await ActionsAsync(client, 0, 3)).First(a => Name(a) == "number-repeated");
        Assert.False(action.AsObject().ContainsKey("isPreferred"));
    }

    [Fact]
    public async Task Only_the_kinds_asked_for_are_offered()
    {
        await using var client = await OpenAsync(Full);
        Assert.All(await ActionsAsync(client, 0, 5, trigger: 2), a => Assert.Equal("quickfix", (string?)a["kind"]));
        Assert.NotEmpty(await ActionsAsync(client, 0, 5, "quickfix"));
        Assert.All(await ActionsAsync(client, 0, 5, "refactor"), a => Assert.StartsWith("refactor.", (string?)a["kind"], StringComparison.Ordinal));
        Assert.Empty(await ActionsAsync(client, 0, 5, "quick"));
        Assert.Contains(await ActionsAsync(client, 0, 0, "source"), a => (string?)a["kind"] == "source.fixAll");
        Assert.Equal("source.fixAll", (string?)(await ActionsAsync(client, 0, 0, "source.fixAll")).Single()["kind"]);
        Assert.Empty(await ActionsAsync(client, 1, 1, trigger: 2));
    }

    [Fact]
    public async Task Fix_all_is_resolved_into_every_safe_edit()
    {
        await using var client = await OpenAsync(Full);
        var action = (await ActionsAsync(client, 0, 0, "source.fixAll")).Single();
        Assert.False(action.AsObject().ContainsKey("edit"));
        var resolved = (await client.RequestAsync("codeAction/resolve", action.ToJsonString()))!;
        Assert.Equal((string?)action["title"], (string?)resolved["title"]);
        int[] lines = [.. resolved["edit"]!["documentChanges"]![0]!["edits"]!.AsArray().Select(edit => (int)edit!["range"]!["start"]!["line"]!)];
        Assert.Contains(2, lines);
        Assert.Contains(3, lines);
    }

    [Fact]
    public async Task Fix_all_comes_complete_where_the_client_cannot_resolve()
    {
        await using var client = await OpenAsync(TestClient.Literals);
        var action = (await ActionsAsync(client, 0, 0, "source.fixAll")).Single();
        Assert.NotEmpty(action["edit"]!["changes"]![Uri]!.AsArray());
    }

    [Fact]
    public async Task What_would_change_nothing_is_not_offered()
    {
        await using var client = await OpenAsync(Full);
        await client.OpenAsync("file:///job/none.nc", "( NOTHING YET )\n");
        var all = "{\"textDocument\":{\"uri\":\"file:///job/none.nc\"},\"range\":{\"start\":" + TestClient.At(0, 0) + ",\"end\":" + TestClient.At(0, 0) + "},\"context\":{\"diagnostics\":[],\"only\":[\"source\",\"refactor\"]}}";
        Assert.Empty((await client.RequestAsync("textDocument/codeAction", all))!.AsArray());
    }

    [Fact]
    public async Task An_action_offered_for_an_older_text_is_not_resolved()
    {
        await using var client = await OpenAsync(Full);
        var action = (await ActionsAsync(client, 0, 0, "source.fixAll")).Single();
        await client.ChangeAsync(Uri, 6, TestClient.Insert(0, 0, "\n"));
        Assert.Equal(-32801, await client.ErrorOfAsync("codeAction/resolve", action.ToJsonString()));
    }

    [Fact]
    public async Task An_action_that_is_complete_comes_back_as_it_was()
    {
        await using var client = await OpenAsync(Full);
        var action = (await ActionsAsync(client, 2, 2)).Single(a => Name(a) == "comment-not-closed");
        var resolved = (await client.RequestAsync("codeAction/resolve", action.ToJsonString()))!;
        Assert.True(JsonNode.DeepEquals(action, resolved), resolved.ToJsonString());
    }

    [Fact]
    public async Task A_misspelt_name_in_an_open_setup_has_a_fix()
    {
        const string Setup = "file:///job/part.setup.json";
        await using var client = await TestClient.InitializedAsync(Full);
        await client.OpenAsync(Setup, "{\n  \"matrial\": \"aluminium\"\n}", version: 3);
        var answer = (await client.RequestAsync(
            "textDocument/codeAction", "{\"textDocument\":{\"uri\":\"" + Setup + "\"},\"range\":{\"start\":" + TestClient.At(1, 4) + ",\"end\":" + TestClient.At(1, 4) + "},\"context\":{\"diagnostics\":[]}}"))!;
        var action = answer.AsArray().Single()!;
        var edit = action["edit"]!["documentChanges"]![0]!;
        Assert.Equal(3, (int)edit["textDocument"]!["version"]!);
        Assert.Equal(
            """[{"range":{"start":{"line":1,"character":2},"end":{"line":1,"character":11}},"newText":"\u0022material\u0022"}]""", edit["edits"]!.ToJsonString());
        Assert.False(action.AsObject().ContainsKey("isPreferred"));
    }

    static async Task<TestClient> OpenAsync(string capabilities)
    {
        var client = await TestClient.InitializedAsync(capabilities);
        await client.OpenAsync(Uri, Program, version: 5);
        return client;
    }

    static string? Name(JsonNode action) => (string?)action["diagnostics"]?[0]?["data"];

    static async Task<IReadOnlyList<JsonNode>> ActionsAsync(TestClient client, int first, int last, string? only = null, int trigger = 1)
    {
        var kinds = only is null ? "" : ",\"only\":[\"" + only + "\"]";
        var answer = await client.RequestAsync(
            "textDocument/codeAction",
            "{\"textDocument\":{\"uri\":\"" + Uri + "\"},\"range\":{\"start\":" + TestClient.At(first, 0) + ",\"end\":" + TestClient.At(last, 0) + "},\"context\":{\"diagnostics\":[],\"triggerKind\":" + trigger + kinds + "}}");
        return [.. answer!.AsArray().Select(action => action!)];
    }
}
