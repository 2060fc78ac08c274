using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests;

/// <summary>What writes a program in another way, as code actions.</summary>
public sealed class RefactorTests
{
    const string Uri = "file:///job/part.nc";
    const string Resolves = """{"workspace":{"workspaceEdit":{"documentChanges":true}},"textDocument":{"codeAction":{"dataSupport":true,"resolveSupport":{"properties":["edit"]}}}}""";
    const string Program = "%\nG21 G90 G17 G54 (é🔩)\nG0 X10 Y10 Z0\n(é🔩) G2 X20 Y20 I10 J0 F100\nM30\n%\n";

    [Fact]
    public async Task An_action_is_resolved_into_the_edits_of_its_version()
    {
        await using var client = await OpenAsync(Resolves, Program);
        var action = (await ActionsAsync(client, 3, 0, 3, 0, "refactor.rewrite")).Single(a => (string?)a["title"] == "Write this arc with its radius (R)");
        Assert.False(action.AsObject().ContainsKey("edit"));
        var resolved = (await client.RequestAsync("codeAction/resolve", action.ToJsonString()))!;
        var edit = resolved["edit"]!["documentChanges"]![0]!;
        Assert.Equal(5, (int)edit["textDocument"]!["version"]!);
        // In UTF-16: é is one unit and the screw two.
        Assert.Equal(
            """[{"range":{"start":{"line":3,"character":17},"end":{"line":3,"character":20}},"newText":"R10"},{"range":{"start":{"line":3,"character":20},"end":{"line":3,"character":23}},"newText":""}]""",
            edit["edits"]!.ToJsonString());
    }

    [Fact]
    public async Task Lines_marked_from_head_to_head_leave_the_last_one_out()
    {
        await using var client = await OpenAsync(Resolves, Program);
        var action = (await ActionsAsync(client, 2, 0, 3, 0, "refactor")).Single(a => (string?)a["title"] == "Add decimal points in these lines");
        var resolved = (await client.RequestAsync("codeAction/resolve", action.ToJsonString()))!;
        Assert.All(resolved["edit"]!["documentChanges"]![0]!["edits"]!.AsArray(), edit => Assert.Equal(2, (int)edit!["range"]!["start"]!["line"]!));
    }

    [Fact]
    public async Task What_cannot_be_done_is_refused_with_the_reason()
    {
        await using var client = await OpenAsync(Resolves, "G21\n#1 = 5\nG0 X#1\nM30\n");
        var action = (await ActionsAsync(client, 0, 0, 0, 0, "source.convertUnits")).Single();
        Assert.Equal(-32803, await client.ErrorOfAsync("codeAction/resolve", action.ToJsonString()));
    }

    [Fact]
    public async Task A_client_that_cannot_resolve_gets_only_what_is_proven()
    {
        await using var client = await OpenAsync(TestClient.Literals, "G21\n#1 = 5\nG0 X#1\nM30\n");
        Assert.Empty(await ActionsAsync(client, 0, 0, 0, 0, "source.convertUnits"));
        var action = (await ActionsAsync(client, 0, 0, 0, 0, "source.renumber")).Single();
        Assert.Equal(4, action["edit"]!["changes"]![Uri]!.AsArray().Count);
    }

    /// <summary>Each hole has 1,077 strokes and makes some 3,000 moves: 50 of them are within what is worked out at once, 80 are not.</summary>
    [Theory]
    [InlineData(TestClient.Literals, 50, true)]
    [InlineData(TestClient.Literals, 80, false)]
    [InlineData(Resolves, 80, true)]
    public async Task What_has_to_be_proven_at_once_is_offered_for_short_runs(string capabilities, int holes, bool isOffered)
    {
        var program = "G21 G90 G17 G54\nG0 X0 Y0 Z50\n" + string.Concat(Enumerable.Range(0, holes).Select(i => $"G99 G83 X{i} Y20 Z-19 R2 Q0.0195 F180\n")) + "G80\nM30\n";
        await using var client = await OpenAsync(capabilities, program);
        Assert.Equal(isOffered ? 1 : 0, (await ActionsAsync(client, 0, 0, 0, 0, "source.renumber")).Count);
    }

    [Fact]
    public async Task An_action_offered_for_an_older_text_is_not_resolved()
    {
        await using var client = await OpenAsync(Resolves, Program);
        var action = (await ActionsAsync(client, 0, 0, 0, 0, "source.renumber")).Single();
        await client.ChangeAsync(Uri, 6, TestClient.Insert(0, 0, "\n"));
        Assert.Equal(-32801, await client.ErrorOfAsync("codeAction/resolve", action.ToJsonString()));
    }

    static async Task<TestClient> OpenAsync(string capabilities, string program)
    {
        var client = await TestClient.InitializedAsync(capabilities);
        await client.OpenAsync(Uri, program, version: 5);
        return client;
    }

    static async Task<IReadOnlyList<JsonNode>> ActionsAsync(TestClient client, int first, int column, int last, int lastColumn, string only)
    {
        var answer = await client.RequestAsync(
            "textDocument/codeAction",
            "{\"textDocument\":{\"uri\":\"" + Uri + "\"},\"range\":{\"start\":" + TestClient.At(first, column) + ",\"end\":" + TestClient.At(last, lastColumn)
            + "},\"context\":{\"diagnostics\":[],\"only\":[\"" + only + "\"]}}");
        return [.. answer!.AsArray().Select(action => action!)];
    }
}
