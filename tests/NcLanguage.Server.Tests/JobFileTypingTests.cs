using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests;

/// <summary>A setup, machine or cutting file under the fingers is no JSON after most keys. Programs then go by what it said before.</summary>
public sealed class JobFileTypingTests
{
    const string Uri = "file:///job/part.nc";
    const string SetupUri = "file:///job/part.setup.json";
    const string SetupPath = "/job/part.setup.json";
    const string Watching = """{"workspace":{"didChangeWatchedFiles":{"dynamicRegistration":true}}}""";
    const string Program = "G21 G17 G90 G54\nT4 M6\nS1000 M3\nG0 X0 Y0\nM30\n";

    // The tool list lacks T4, which is a finding of its own (tool-not-in-setup).
    const string Sound = "{\n  \"units\": \"mm\",\n  \"tools\": [ { \"number\": 7, \"diameter\": 5 } ]\n}";

    static string[] Names(JsonNode published) => [.. published["diagnostics"]!.AsArray().Select(finding => (string)finding!["data"]!)];

    static async Task<JsonNode> JobAsync(TestClient client) => (await client.RequestAsync("nclanguage/jobInUse", "{\"textDocument\":{\"uri\":\"" + Uri + "\"}}"))!;

    [Fact]
    public async Task A_setup_that_is_no_json_for_a_moment_stays_in_force_as_it_was()
    {
        var files = new TestFiles { [SetupPath] = Sound };
        await using var client = await TestClient.InitializedAsync(Watching, files: files);
        await client.OpenAsync(Uri, Program);
        var before = Names(await client.DiagnosticsAsync(Uri, 1));
        Assert.Contains("tool-not-in-setup", before);
        await client.OpenAsync(SetupUri, Sound);
        await client.DiagnosticsAsync(Uri, 1);

        await client.ChangeAsync(SetupUri, 2, TestClient.Insert(2, 13, "{ \"nu"));
        var finding = (await client.DiagnosticsAsync(SetupUri, null))["diagnostics"]!.AsArray().Single()!;
        Assert.Equal("setup-malformed", (string?)finding["data"]);
        Assert.EndsWith("Until it can be read again, programs go by what it said before.", (string?)finding["message"], StringComparison.Ordinal);
        Assert.Equal(1, (int)(await JobAsync(client))["setup"]!["problems"]!);

        // Nothing has changed for the program, so that it is not run again; what is typed there meets the setup as it was.
        var told = client.Log.Count(message => (string?)message["params"]?["uri"] == Uri);
        await client.ChangeAsync(Uri, 2, TestClient.Insert(4, 0, "G0 X1.\n"));
        Assert.Equal(before, Names(await client.DiagnosticsAsync(Uri, 2)));
        Assert.Equal(told + 1, client.Log.Count(message => (string?)message["params"]?["uri"] == Uri));

        // Read again: the new row counts.
        await client.ChangeAsync(SetupUri, 3, TestClient.Replace(2, 13, 2, 18, "{ \"number\": 4, \"diameter\": 8 }, "));
        Assert.Empty((await client.DiagnosticsAsync(SetupUri, null))["diagnostics"]!.AsArray());
        Assert.DoesNotContain("tool-not-in-setup", Names(await client.DiagnosticsAsync(Uri, 2)));
    }

    [Fact]
    public async Task A_program_opened_meanwhile_goes_by_what_the_setup_said_before()
    {
        await using var client = await TestClient.InitializedAsync(Watching);
        await client.OpenAsync(SetupUri, Sound);
        await client.ChangeAsync(SetupUri, 2, TestClient.Insert(0, 1, "{"));
        await client.ChangeAsync(SetupUri, 3, TestClient.Insert(0, 1, "\""));
        await client.OpenAsync(Uri, Program);
        Assert.Contains("tool-not-in-setup", Names(await client.DiagnosticsAsync(Uri, 1)));
        // Its own mistake is told once, at its place in the text as it stands.
        var finding = (await client.DiagnosticsAsync(SetupUri, null))["diagnostics"]!.AsArray().Single()!;
        Assert.Equal(0, (int)finding["range"]!["start"]!["line"]!);
    }

    [Fact]
    public async Task A_text_that_is_no_json_when_it_is_opened_goes_by_the_one_on_disk()
    {
        var files = new TestFiles { [SetupPath] = Sound };
        await using var client = await TestClient.InitializedAsync(Watching, files: files);
        await client.OpenAsync(SetupUri, "{ \"units\": ");
        Assert.Contains("programs go by what it said before", (string?)(await client.DiagnosticsAsync(SetupUri, null))["diagnostics"]![0]!["message"], StringComparison.Ordinal);
        await client.OpenAsync(Uri, Program);
        Assert.Contains("tool-not-in-setup", Names(await client.DiagnosticsAsync(Uri, 1)));
    }

    [Fact]
    public async Task A_file_never_readable_says_that_nothing_of_it_is_used()
    {
        await using var client = await TestClient.InitializedAsync(Watching);
        await client.OpenAsync(SetupUri, "{");
        await client.ChangeAsync(SetupUri, 2, TestClient.Insert(0, 1, "\""));
        var message = (string)(await client.DiagnosticsAsync(SetupUri, null))["diagnostics"]![0]!["message"]!;
        Assert.Contains("Nothing of this setup is used", message, StringComparison.Ordinal);
        Assert.DoesNotContain("before", message, StringComparison.Ordinal);
        await client.OpenAsync(Uri, Program);
        Assert.DoesNotContain("tool-not-in-setup", Names(await client.DiagnosticsAsync(Uri, 1)));
    }

    [Fact]
    public async Task A_machine_under_the_fingers_stays_in_force_too()
    {
        const string machineUri = "file:///job/nc.machine.json";
        await using var client = await TestClient.InitializedAsync(Watching);
        await client.OpenAsync(machineUri, "{ \"spindle\": { \"max\": 500 } }");
        await client.ChangeAsync(machineUri, 2, TestClient.Insert(0, 1, ","));
        await client.OpenAsync(Uri, Program);
        Assert.Contains("speed-over-machine", Names(await client.DiagnosticsAsync(Uri, 1)));
    }

    [Fact]
    public async Task Cutting_data_open_anywhere_are_checked()
    {
        const string uri = "file:///job/inner/nc.cutting.json";
        await using var client = await TestClient.InitializedAsync(Watching, more: ""","workspaceFolders":[{"uri":"file:///job","name":"a"}]""");
        await client.OpenAsync(uri, "{ \"rows\": 7 }");
        Assert.Single((await client.DiagnosticsAsync(uri, null))["diagnostics"]!.AsArray());
    }

    [Fact]
    public async Task Completion_puts_commas_right_and_offers_what_lies_beside()
    {
        await using var client = await TestClient.InitializedAsync("""{"textDocument":{"completion":{"completionItem":{"snippetSupport":true}}}}""");
        await client.OpenAsync("file:///job/shop.machine.json", "{ \"base\": \"iso-mill\" }");
        await client.OpenAsync(Uri, "X#100\nM30\n");
        await client.OpenAsync(SetupUri, "{ \"units\": \"mm\"\n  \n  \"machine\": ,\n \"variables\": { } }");
        async Task<JsonNode> ItemAsync(int line, int character, string label) =>
            (await client.RequestAsync("textDocument/completion", "{\"textDocument\":{\"uri\":\"" + SetupUri + "\"},\"position\":" + TestClient.At(line, character) + "}"))!["items"]!
                .AsArray().Single(item => (string?)item!["label"] == label)!;
        var clearance = await ItemAsync(1, 2, "clearance");
        Assert.Equal("\"clearance\": $1,", (string?)clearance["textEdit"]!["newText"]);
        Assert.Equal("""{"range":{"start":{"line":0,"character":15},"end":{"line":0,"character":15}},"newText":","}""", clearance["additionalTextEdits"]!.AsArray().Single()!.ToJsonString());
        Assert.Equal("\"shop.machine.json\"", (string?)(await ItemAsync(2, 13, "shop.machine.json"))["textEdit"]!["newText"]);
        Assert.Equal("\"#100\": $1", (string?)(await ItemAsync(3, 16, "#100"))["textEdit"]!["newText"]);
    }
}
