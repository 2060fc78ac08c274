using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests;

/// <summary>A program that is typed from its beginning has no end until the last line: that is no error before it is saved.</summary>
public sealed class TypedFromNothingTests
{
    const string Uri = "file:///job/new.nc";
    const string Pulls = """{"textDocument":{"diagnostic":{}},"workspace":{"diagnostics":{"refreshSupport":true}}}""";

    static int? SeverityOfEnd(JsonNode diagnostics) =>
        (int?)diagnostics.AsArray().SingleOrDefault(finding => (string?)finding!["data"] == "program-end-missing")?["severity"];

    static async Task<int?> PublishedAsync(TestClient client, int version) => SeverityOfEnd((await client.DiagnosticsAsync(Uri, version))["diagnostics"]!);

    static Task SaveAsync(TestClient client) => client.NotifyAsync("textDocument/didSave", "{\"textDocument\":{\"uri\":\"" + Uri + "\"}}");

    [Fact]
    public async Task The_missing_end_is_an_information_until_it_is_saved()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "");
        Assert.Null(await PublishedAsync(client, 1));
        await client.ChangeAsync(Uri, 2, TestClient.Insert(0, 0, "G21 G90 G17 G54\nG0 X1\n"));
        Assert.Equal(3, await PublishedAsync(client, 2));
        await SaveAsync(client);
        Assert.Equal(1, await PublishedAsync(client, 2));
        await client.ChangeAsync(Uri, 3, TestClient.Insert(2, 0, "X2\n"));
        Assert.Equal(3, await PublishedAsync(client, 3));
        await client.ChangeAsync(Uri, 4, TestClient.Insert(3, 0, "M30\n"));
        Assert.Null(await PublishedAsync(client, 4));
    }

    [Fact]
    public async Task As_it_is_opened_it_is_an_error()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G21 G90 G17 G54\nG0 X1\n");
        Assert.Equal(1, await PublishedAsync(client, 1));
        // Saved as it was opened, nothing is told anew: the next findings are those of the next version.
        await SaveAsync(client);
        await client.ChangeAsync(Uri, 2, TestClient.Insert(2, 0, "X2\n"));
        await PublishedAsync(client, 2);
        Assert.Equal(1, client.Log.Count(message => (int?)message["params"]?["version"] == 1));
    }

    /// <summary>A program that lies there without its end, with a cycle left on at a tool change: whoever types above it, or mends another fault there, is still told of it as before. What is left on anew may be on its way.</summary>
    [Fact]
    public async Task What_was_left_on_when_it_was_opened_stays_what_it_is()
    {
        const string Program = "G21 G90 G17 G54 G94\nT1 M6\nG43 H1 Z50\nG0 X0 Y0 S900 M3\nG98 G81 X0 Y0 Z-5 R2 F100\nG80\nG91 G28 Z0 M5\nG90 T2 M6\n";
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, Program.Replace("G80\n", "", StringComparison.Ordinal));
        Assert.Equal(1, await CycleAsync(1));
        await client.ChangeAsync(Uri, 2, TestClient.Insert(4, 0, "(FIRST HOLE)\n"));
        Assert.Equal(1, await CycleAsync(2));
        await client.ChangeAsync(Uri, 3, TestClient.Insert(6, 0, "G80\n"));
        Assert.Null(await CycleAsync(3));
        await SaveAsync(client);
        Assert.Null(await CycleAsync(3));
        await client.ChangeAsync(Uri, 4, TestClient.Replace(6, 0, 7, 0, ""));
        Assert.Equal(3, await CycleAsync(4));

        async Task<int?> CycleAsync(int version) =>
            (int?)(await client.DiagnosticsAsync(Uri, version))["diagnostics"]!.AsArray().SingleOrDefault(finding => (string?)finding!["data"] == "cycle-not-cancelled")?["severity"];
    }

    [Fact]
    public async Task Who_asks_for_findings_himself_is_told_to_ask_again()
    {
        await using var client = await TestClient.InitializedAsync(Pulls);
        async Task<JsonNode> AskAsync(string more = "") => (await client.RequestAsync("textDocument/diagnostic", "{\"textDocument\":{\"uri\":\"" + Uri + "\"}" + more + "}"))!;
        await client.OpenAsync(Uri, "");
        await client.ChangeAsync(Uri, 2, TestClient.Insert(0, 0, "G21 G90 G17 G54\nG0 X1\n"));
        var typed = await AskAsync();
        Assert.Equal(3, SeverityOfEnd(typed["items"]!));
        await SaveAsync(client);
        await client.NextAsync("workspace/diagnostic/refresh", _ => true);
        Assert.Equal(1, SeverityOfEnd((await AskAsync(",\"previousResultId\":" + typed["resultId"]!.ToJsonString()))["items"]!));
    }
}
