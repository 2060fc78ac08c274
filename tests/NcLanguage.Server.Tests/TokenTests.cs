using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests;

/// <summary>Colours, tidying, values and findings that are asked for, as the client sees them.</summary>
public sealed class TokenTests
{
    const string Uri = "file:///job/part.nc";
    const string Pulls = """{"textDocument":{"diagnostic":{}},"workspace":{"diagnostics":{"refreshSupport":true},"semanticTokens":{"refreshSupport":true}}}""";

    [Fact]
    public async Task Tokens_are_counted_from_the_one_before_in_the_clients_units()
    {
        await using var client = await OpenAsync("(é🔩) G0 X1\nX2\n");
        var all = (await client.RequestAsync("textDocument/semanticTokens/full", Document()))!;
        // Rows: comment; G0 keyword, rapid; X parameter; 1 number; next line.
        Assert.Equal([0, 0, 5, 0, 0, 0, 6, 2, 1, 8, 0, 3, 1, 3, 8, 0, 1, 1, 4, 8, 1, 0, 1, 3, 8, 0, 1, 1, 4, 8], all["data"]!.AsArray().Select(number => (int)number!));
        var range = (await client.RequestAsync("textDocument/semanticTokens/range", Document(",\"range\":{\"start\":{\"line\":1,\"character\":0},\"end\":{\"line\":1,\"character\":2}}")))!;
        Assert.Equal([1, 0, 1, 3, 8, 0, 1, 1, 4, 8], range["data"]!.AsArray().Select(number => (int)number!));
    }

    [Fact]
    public async Task A_change_sends_the_difference_and_leads_to_the_same_tokens()
    {
        await using var client = await OpenAsync("G0 X1\nX2\nX3\n");
        var all = (await client.RequestAsync("textDocument/semanticTokens/full", Document()))!;
        await client.ChangeAsync(Uri, 2, TestClient.Insert(1, 0, "Y7 "));
        var delta = (await client.RequestAsync("textDocument/semanticTokens/full/delta", Document(",\"previousResultId\":\"" + all["resultId"] + "\"")))!;
        List<int> data = [.. all["data"]!.AsArray().Select(number => (int)number!)];
        var edit = delta["edits"]!.AsArray().Single()!;
        data.RemoveRange((int)edit["start"]!, (int)edit["deleteCount"]!);
        data.InsertRange((int)edit["start"]!, edit["data"]!.AsArray().Select(number => (int)number!));
        var now = (await client.RequestAsync("textDocument/semanticTokens/full", Document()))!;
        Assert.Equal(now["data"]!.AsArray().Select(number => (int)number!), data);
        Assert.True(edit["data"]!.AsArray().Count < now["data"]!.AsArray().Count);
        // What was sent long ago is not known any more: all tokens come.
        Assert.NotNull((await client.RequestAsync("textDocument/semanticTokens/full/delta", Document(",\"previousResultId\":\"none\"")))!["data"]);
    }

    [Fact]
    public async Task Tidying_comes_as_edits_of_lines()
    {
        await using var client = await OpenAsync("g0x1\nG0 X2\ng0x3\n");
        Assert.Equal(["G0 X1\n", "G0 X3\n"], (await client.RequestAsync("textDocument/formatting", Document(",\"options\":{\"tabSize\":4,\"insertSpaces\":true}")))!.AsArray().Select(edit => (string?)edit!["newText"]));
        Assert.Equal(["G0 X3\n"], (await client.RequestAsync("textDocument/rangeFormatting", Document(",\"range\":{\"start\":{\"line\":1,\"character\":0},\"end\":{\"line\":3,\"character\":0}},\"options\":{\"tabSize\":4,\"insertSpaces\":true}")))!.AsArray().Select(edit => (string?)edit!["newText"]));
        Assert.Equal(["G0 X1"], (await client.RequestAsync("textDocument/onTypeFormatting", Document(",\"position\":{\"line\":1,\"character\":0},\"ch\":\"\\n\",\"options\":{\"tabSize\":4,\"insertSpaces\":true}")))!.AsArray().Select(edit => (string?)edit!["newText"]));
    }

    [Fact]
    public async Task Values_of_variables()
    {
        await using var client = await OpenAsync("#1=5\nG0 X#1\n");
        var value = (await client.RequestAsync("textDocument/inlineValue", Document(",\"range\":{\"start\":{\"line\":1,\"character\":0},\"end\":{\"line\":1,\"character\":9}},\"context\":{\"frameId\":1,\"stoppedLocation\":{\"start\":{\"line\":1,\"character\":0},\"end\":{\"line\":1,\"character\":9}}}")))!.AsArray().Single()!;
        Assert.Equal("#1 = 5", (string?)value["text"]);
    }

    [Fact]
    public async Task Findings_asked_for_are_those_sent_and_unchanged_ones_stay()
    {
        await using var client = await OpenAsync("G91 X5\n");
        var sent = await client.DiagnosticsAsync(Uri, 1);
        var asked = (await client.RequestAsync("textDocument/diagnostic", Document()))!;
        Assert.Equal("full", (string?)asked["kind"]);
        Assert.Equal(sent["diagnostics"]!.ToJsonString(), asked["items"]!.ToJsonString());
        var again = (await client.RequestAsync("textDocument/diagnostic", Document(",\"previousResultId\":\"" + asked["resultId"] + "\"")))!;
        Assert.Equal("unchanged", (string?)again["kind"]);
        var workspace = (await client.RequestAsync("workspace/diagnostic", "{\"previousResultIds\":[]}"))!["items"]!.AsArray().Single()!;
        Assert.Equal((Uri, 1, "full"), ((string?)workspace["uri"], (int)workspace["version"]!, (string?)workspace["kind"]));
    }

    [Fact]
    public async Task A_client_that_asks_and_can_be_told_to_ask_again_is_not_sent_findings()
    {
        await using var client = await OpenAsync("G91 X5\n", Pulls);
        Assert.NotEmpty((await client.RequestAsync("textDocument/diagnostic", Document()))!["items"]!.AsArray());
        await client.ChangeAsync(Uri, 2, TestClient.Insert(0, 0, "G1 "));
        Assert.NotEmpty((await client.RequestAsync("textDocument/diagnostic", Document()))!["items"]!.AsArray());
        Assert.DoesNotContain(client.Log, message => (string?)message["method"] == "textDocument/publishDiagnostics" && (string?)message["params"]!["uri"] == Uri);
    }

    [Fact]
    public async Task Symbols_of_the_workspace_are_found_by_a_part_of_their_name()
    {
        await using var client = await OpenAsync("O7 (FRONT PLATE)\nT4 M6\nG0 X1\nM30\nO8 (ROW)\nM99\n");
        var symbol = (await client.RequestAsync("workspace/symbol", "{\"query\":\"plate\"}"))!.AsArray().Single()!;
        Assert.Equal("O7 FRONT PLATE", (string?)symbol["name"]);
        Assert.Equal(Uri, (string?)symbol["location"]!["uri"]);
        Assert.Equal("part.nc", (string?)symbol["containerName"]);
    }

    [Fact]
    public async Task Two_lenses_on_a_line_keep_their_own_texts()
    {
        await using var client = await OpenAsync("T4 M6\nG90 G81 X1 Y1 Z-3 R2 F100\nG80\nM30\n");
        var lenses = (await client.RequestAsync("textDocument/codeLens", Document()))!.AsArray();
        Assert.Equal([0, 0], lenses.Select(lens => (int)lens!["range"]!["start"]!["line"]!));
        Assert.StartsWith("1 tool, 1 hole, ", (string?)(await client.RequestAsync("codeLens/resolve", lenses[0]!.ToJsonString()))!["command"]!["title"], StringComparison.Ordinal);
        Assert.StartsWith("1 hole, ", (string?)(await client.RequestAsync("codeLens/resolve", lenses[1]!.ToJsonString()))!["command"]!["title"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lens_gets_its_text_when_it_is_shown()
    {
        await using var client = await OpenAsync("G90\nT4 M6\nG81 X1 Y1 Z-3 R2 F100\nG80\nM30\n");
        var lenses = (await client.RequestAsync("textDocument/codeLens", Document()))!.AsArray();
        Assert.Equal([0, 1], lenses.Select(lens => (int)lens!["range"]!["start"]!["line"]!));
        Assert.Null(lenses[1]!["command"]);
        var shown = (await client.RequestAsync("codeLens/resolve", lenses[1]!.ToJsonString()))!;
        Assert.StartsWith("1 hole, ", (string?)shown["command"]!["title"], StringComparison.Ordinal);
        await client.ChangeAsync(Uri, 2, TestClient.Insert(0, 0, "G54 "));
        Assert.Equal(-32801, await client.ErrorOfAsync("codeLens/resolve", lenses[1]!.ToJsonString()));
    }

    static async Task<TestClient> OpenAsync(string program, string capabilities = "{}")
    {
        var client = await TestClient.InitializedAsync(capabilities);
        await client.OpenAsync(Uri, program);
        return client;
    }

    static string Document(string more = "") => "{\"textDocument\":{\"uri\":\"" + Uri + "\"}" + more + "}";
}
