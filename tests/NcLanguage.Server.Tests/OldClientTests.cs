using System.Text.Json.Nodes;
using NcLanguage.Server.Features;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Tests;

/// <summary>Clients that know an earlier state of the protocol: flat symbols, commands in the place of code actions (LSP 3.17, documentSymbol and codeAction).</summary>
public sealed class OldClientTests
{
    const string Uri = "file:///part.nc";
    const string Document = """{"textDocument":{"uri":"file:///part.nc"}}""";
    const string Everywhere = """{"textDocument":{"uri":"file:///part.nc"},"range":{"start":{"line":0,"character":0},"end":{"line":9,"character":0}},"context":{"diagnostics":[],"only":["quickfix"]}}""";
    const string Program = "O1 (PLATE)\nG21 G90 G17 G54\nT1 M6\nS1500 M3\nG0 X1 Y1\nG43 H1 Z50\nG0 Z60\nM30\n";

    [Fact]
    public async Task Symbols_come_one_after_the_other_with_what_they_stand_in()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, Program);
        var symbols = (await client.RequestAsync("textDocument/documentSymbol", Document))!.AsArray();
        Assert.Equal("O1 PLATE", (string?)symbols[0]!["name"]);
        Assert.Null(symbols[0]!["containerName"]);
        Assert.Equal("O1 PLATE", (string?)symbols[1]!["containerName"]);
        Assert.All(symbols, symbol => Assert.Equal(Uri, (string?)symbol!["location"]!["uri"]));
        Assert.All(symbols, symbol => Assert.Null(symbol!["children"]));
        Assert.Equal(2, (int)symbols[1]!["location"]!["range"]!["start"]!["line"]!);
    }

    [Fact]
    public async Task A_fix_is_a_command_that_has_the_client_make_the_edit()
    {
        await using var client = await TestClient.InitializedAsync("""{"workspace":{"applyEdit":true}}""");
        await client.OpenAsync(Uri, Program.Replace("M30\n", "", StringComparison.Ordinal));
        var actions = (await client.RequestAsync("textDocument/codeAction", Everywhere))!.AsArray();
        var action = actions.Single(one => ((string)one!["title"]!).Contains("M30", StringComparison.Ordinal))!;
        Assert.Equal("nclanguage.applyEdit", (string?)action["command"]);
        await client.RequestAsync("workspace/executeCommand", new JsonObject { ["command"] = "nclanguage.applyEdit", ["arguments"] = action["arguments"]!.DeepClone() }.ToJsonString());
        var asked = await client.NextAsync("workspace/applyEdit");
        Assert.Contains("M30", (string?)asked["edit"]!["changes"]![Uri]![0]!["newText"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_can_neither_take_an_action_nor_make_an_edit_is_offered_none()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, Program.Replace("M30\n", "", StringComparison.Ordinal));
        Assert.Empty((await client.RequestAsync("textDocument/codeAction", Everywhere))!.AsArray());
    }

    [Fact]
    public void And_no_action_is_worked_out_for_it() =>
        Assert.Equal("[]", EditCommand.Answer(new ClientProfile(), () => throw new InvalidOperationException("worked out")).GetRawText());

    /// <summary>LSP 3.17, SelectionRange: a parent holds its child.</summary>
    [Theory]
    [InlineData(7, 1)]
    [InlineData(7, 3)]
    [InlineData(4, 4)]
    [InlineData(0, 0)]
    public async Task Each_parent_of_a_selection_is_larger(int line, int character)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, Program);
        var range = (await client.RequestAsync("textDocument/selectionRange", "{\"textDocument\":{\"uri\":\"" + Uri + "\"},\"positions\":[" + TestClient.At(line, character) + "]}"))![0];
        var seen = new List<string>();
        for (; range is not null; range = range["parent"])
            seen.Add(range["range"]!.ToJsonString());
        Assert.Equal(seen.Distinct(), seen);
        Assert.True(seen.Count > 1);
    }
}
