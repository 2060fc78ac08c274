using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests;

/// <summary>Setup and machine files: their own findings, and the programs that are checked anew when one changes.</summary>
public sealed class JobFileTests
{
    const string Uri = "file:///job/part.nc";
    const string SetupUri = "file:///job/part.setup.json";
    const string SetupPath = "/job/part.setup.json";
    const string Watching = """{"workspace":{"didChangeWatchedFiles":{"dynamicRegistration":true},"inlayHint":{"refreshSupport":true}}}""";

    [Fact]
    public async Task The_files_are_watched_where_the_client_can()
    {
        await using var client = await TestClient.InitializedAsync(Watching);
        var registration = (await client.NextAsync("client/registerCapability"))["registrations"]!.AsArray().Single()!;
        Assert.Equal("workspace/didChangeWatchedFiles", (string?)registration["method"]);
        string[] patterns = [.. registration["registerOptions"]!["watchers"]!.AsArray().Select(watcher => (string)watcher!["globPattern"]!)];
        Assert.Equal(
            ["**/*.setup.json", "**/nc.setup.json", "**/*.machine.json", "**/nc.cutting.json", "**/*.nc", "**/*.cnc", "**/*.tap", "**/*.iso", "**/*.eia", "**/*.ncp"], patterns);
    }

    /// <summary>LSP 3.17, client/registerCapability: an error is set where the request fails. An answer that is none by JSON-RPC 2.0 counts as one.</summary>
    [Theory]
    [InlineData("\"jsonrpc\":\"2.0\",\"error\":{\"code\":-32601,\"message\":\"no\"}")]
    [InlineData("\"result\":null")]
    [InlineData("\"jsonrpc\":\"1.0\",\"result\":null")]
    public async Task The_files_are_looked_at_where_the_client_refuses_to_watch_them(string answer)
    {
        using var folder = new TestFolder();
        folder["part.nc"] = "G0 X1.\n";
        await using var client = await TestClient.InitializedAsync(Watching, files: Machine.Files.DiskFiles.Instance);
        await client.NextAsync("client/registerCapability");
        var id = client.Log.Single(message => (string?)message["method"] == "client/registerCapability")["id"]!;
        await client.SendAsync("{\"id\":" + id.ToJsonString() + "," + answer + "}");
        await client.OpenAsync(folder.UriOf("part.nc"), "G0 X1.\n");
        await client.DiagnosticsAsync(folder.UriOf("part.nc"), 1);
        folder["nc.setup.json"] = "{ \"units\": \"miles\" }";
        await client.NextAsync("textDocument/publishDiagnostics", published => (string?)published["uri"] == folder.UriOf("nc.setup.json") && published["diagnostics"]!.AsArray().Count > 0);
    }

    [Fact]
    public async Task A_setup_is_completed_and_explained_and_leads_to_its_machine()
    {
        var files = new TestFiles { ["/job/shop.machine.json"] = "{ \"base\": \"iso-mill\" }" };
        await using var client = await TestClient.InitializedAsync(Watching, files: files);
        await client.OpenAsync(SetupUri, "{\n  \"machine\": \"shop.machine.json\",\n  \"cl\"\n}");
        string At(int line, int character) => "{\"textDocument\":{\"uri\":\"" + SetupUri + "\"},\"position\":" + TestClient.At(line, character) + "}";
        var list = (await client.RequestAsync("textDocument/completion", At(2, 4)))!;
        var clearance = list["items"]!.AsArray().Single(item => (string?)item!["label"] == "clearance")!;
        Assert.Equal("""{"start":{"line":2,"character":2},"end":{"line":2,"character":6}}""", clearance["textEdit"]!["range"]!.ToJsonString());
        Assert.Contains("machine file", (string?)(await client.RequestAsync("textDocument/hover", At(1, 5)))!["contents"]!["value"], StringComparison.Ordinal);
        Assert.Equal("file:///job/shop.machine.json", (string?)(await client.RequestAsync("textDocument/definition", At(1, 20)))!.AsArray().Single()!["uri"]);
        Assert.Empty((await client.RequestAsync("textDocument/definition", At(2, 4)))!.AsArray());
    }

    /// <summary>No file system takes a NUL in a name.</summary>
    [Fact]
    public async Task A_machine_whose_name_is_no_path_leads_nowhere()
    {
        await using var client = await TestClient.InitializedAsync(Watching);
        await client.OpenAsync(SetupUri, "{ \"machine\": \"shop\0.machine.json\" }");
        var document = "{\"textDocument\":{\"uri\":\"" + SetupUri + "\"}";
        Assert.Empty((await client.RequestAsync("textDocument/documentLink", document + "}"))!.AsArray());
        Assert.Empty((await client.RequestAsync("textDocument/definition", document + ",\"position\":" + TestClient.At(0, 16) + "}"))!.AsArray());
    }

    [Fact]
    public async Task A_tool_of_a_setup_leads_to_the_programs_that_use_it()
    {
        var files = new TestFiles { ["/job/shop.machine.json"] = "{ \"base\": \"iso-mill\" }" };
        await using var client = await TestClient.InitializedAsync(Watching, files: files);
        await client.OpenAsync(SetupUri, "{ \"machine\": \"shop.machine.json\",\n  \"tools\": [ { \"number\": 4 } ]\n}");
        await client.OpenAsync(Uri, "T4 M6\nG43 H4 Z50\nT5 M6\nT4 M6\n");
        await client.OpenAsync("file:///job/other.nc", "T4 M6\n");
        string At(int line, int character, string more = "") => "{\"textDocument\":{\"uri\":\"" + SetupUri + "\"},\"position\":" + TestClient.At(line, character) + more + "}";
        var places = (await client.RequestAsync("textDocument/references", At(1, 25, ",\"context\":{\"includeDeclaration\":true}")))!.AsArray();
        Assert.Equal([(Uri, 0), (Uri, 3)], places.Select(place => ((string)place!["uri"]!, (int)place["range"]!["start"]!["line"]!)));
        Assert.Equal(places.ToJsonString(), (await client.RequestAsync("textDocument/definition", At(1, 25)))!.ToJsonString());
        var link = (await client.RequestAsync("textDocument/documentLink", "{\"textDocument\":{\"uri\":\"" + SetupUri + "\"}}"))!.AsArray().Single()!;
        Assert.Equal("file:///job/shop.machine.json", (string?)link["target"]);
        Assert.Equal("""{"start":{"line":0,"character":14},"end":{"line":0,"character":31}}""", link["range"]!.ToJsonString());
    }

    [Fact]
    public async Task A_mistake_in_a_setup_stands_under_its_own_address_until_mended()
    {
        var files = new TestFiles { [SetupPath] = "{\n  \"units\": \"miles\"\n}" };
        await using var client = await TestClient.InitializedAsync(Watching, files: files);
        await client.OpenAsync(Uri, "G0 X1.");
        var finding = (await client.DiagnosticsAsync(SetupUri, null))["diagnostics"]!.AsArray().Single()!;
        Assert.Equal("setup-value", (string?)finding["data"]);
        Assert.Equal(1, (int)finding["severity"]!);
        Assert.Equal("nclanguage", (string?)finding["source"]);
        Assert.Equal(1, (int)finding["range"]!["start"]!["line"]!);

        files[SetupPath] = "{ \"units\": \"mm\" }";
        await ChangedAsync(client, SetupUri);
        Assert.Empty((await client.DiagnosticsAsync(SetupUri, null))["diagnostics"]!.AsArray());
    }

    [Fact]
    public async Task A_changed_setup_checks_its_programs_anew_and_no_others()
    {
        var files = new TestFiles { ["/else/part.setup.json"] = "{}" };
        await using var client = await TestClient.InitializedAsync(Watching, files: files);
        await client.OpenAsync(Uri, "G0 X1.", version: 4);
        await client.OpenAsync("file:///else/part.nc", "G0 X1.", version: 9);
        await client.DiagnosticsAsync(Uri, 4);
        await client.DiagnosticsAsync("file:///else/part.nc", 9);

        // It was looked for, so its coming to be is a change.
        files[SetupPath] = "{ \"units\": 7 }";
        await ChangedAsync(client, SetupUri);
        await client.DiagnosticsAsync(Uri, 4);
        await client.DiagnosticsAsync(SetupUri, null);
        await client.NextAsync("workspace/inlayHint/refresh");
        Assert.Equal(1, client.Log.Count(message => (string?)message["params"]?["uri"] == "file:///else/part.nc"));
    }

    [Fact]
    public async Task Two_programs_with_one_setup_take_its_findings_away_together()
    {
        var files = new TestFiles { ["/job/nc.setup.json"] = "{ \"units\": 7 }" };
        await using var client = await TestClient.InitializedAsync(files: files);
        await client.OpenAsync(Uri, "G0 X1.");
        Assert.NotEmpty((await client.DiagnosticsAsync("file:///job/nc.setup.json", null))["diagnostics"]!.AsArray());
        await client.OpenAsync("file:///job/two.nc", "G0 X1.");
        await client.DiagnosticsAsync("file:///job/two.nc", 1);
        await CloseAsync(client, Uri);
        await client.DiagnosticsAsync(Uri, null);
        Assert.Equal(1, client.Log.Count(message => (string?)message["params"]?["uri"] == "file:///job/nc.setup.json"));
        await CloseAsync(client, "file:///job/two.nc");
        Assert.Empty((await client.DiagnosticsAsync("file:///job/nc.setup.json", null))["diagnostics"]!.AsArray());
    }

    [Fact]
    public async Task An_open_setup_counts_as_it_is_typed()
    {
        var files = new TestFiles { [SetupPath] = "{ \"units\": \"mm\" }" };
        await using var client = await TestClient.InitializedAsync(files: files);
        await client.OpenAsync(Uri, "G0 X1.", version: 3);
        await client.DiagnosticsAsync(Uri, 3);
        await client.OpenAsync(SetupUri, "{ \"units\": \"mm\" }");
        await client.DiagnosticsAsync(Uri, 3);
        await client.ChangeAsync(SetupUri, 2, TestClient.Replace(0, 12, 0, 14, "é🔩"));
        var finding = (await client.DiagnosticsAsync(SetupUri, null))["diagnostics"]!.AsArray().Single()!;
        Assert.Equal("""{"start":{"line":0,"character":11},"end":{"line":0,"character":16}}""", finding["range"]!.ToJsonString());
        await client.DiagnosticsAsync(Uri, 3);

        Assert.Null(await client.RequestAsync("textDocument/hover", "{\"textDocument\":{\"uri\":\"" + SetupUri + "\"},\"position\":" + TestClient.At(0, 1) + "}"));

        // Closed without saving: the file on disk counts again, and that is sound.
        await CloseAsync(client, SetupUri);
        Assert.Empty((await client.DiagnosticsAsync(SetupUri, null))["diagnostics"]!.AsArray());
    }

    [Fact]
    public async Task A_setup_open_alone_is_checked_too()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(SetupUri, "{");
        Assert.Equal("setup-malformed", (string?)(await client.DiagnosticsAsync(SetupUri, null))["diagnostics"]![0]!["data"]);
        await client.OpenAsync("file:///job/shop.machine.json", "[]");
        Assert.NotEmpty((await client.DiagnosticsAsync("file:///job/shop.machine.json", null))["diagnostics"]!.AsArray());
    }

    [Fact]
    public async Task The_search_for_a_setup_ends_at_the_programs_workspace_folder()
    {
        var files = new TestFiles { ["/job/nc.setup.json"] = "{ \"units\": 7 }" };
        await using var client = await TestClient.InitializedAsync(
            more: ""","workspaceFolders":[{"uri":"file:///else","name":"a"},{"uri":"file:///job/inner","name":"b"}]""", files: files);
        await client.OpenAsync("file:///job/inner/part.nc", "G0 X1.");
        await client.DiagnosticsAsync("file:///job/inner/part.nc", 1);
        await client.OpenAsync("file:///job/part.nc", "G0 X1.");
        await client.DiagnosticsAsync("file:///job/nc.setup.json", null);
        var inner = client.Log.ToList().FindIndex(message => (string?)message["params"]?["uri"] == "file:///job/inner/part.nc");
        var setup = client.Log.ToList().FindIndex(message => (string?)message["params"]?["uri"] == "file:///job/nc.setup.json");
        var outer = client.Log.ToList().FindIndex(message => (string?)message["params"]?["uri"] == "file:///job/part.nc");
        Assert.True(inner < outer && outer < setup);
    }

    [Fact]
    public async Task Without_a_watching_client_the_server_looks_itself()
    {
        var folder = Directory.CreateTempSubdirectory("nclanguage-").FullName;
        try
        {
            var program = new Uri(Path.Combine(folder, "part.nc")).AbsoluteUri;
            var setup = Path.Combine(folder, "part.setup.json");
            await using var client = await TestClient.InitializedAsync(files: Machine.Files.DiskFiles.Instance);
            await client.OpenAsync(program, "G0 X1.");
            await client.DiagnosticsAsync(program, 1);
            await File.WriteAllTextAsync(setup, "{ \"units\": 7 }");
            Assert.NotEmpty((await client.DiagnosticsAsync(new Uri(setup).AbsoluteUri, null))["diagnostics"]!.AsArray());
            File.Delete(setup);
            Assert.Empty((await client.DiagnosticsAsync(new Uri(setup).AbsoluteUri, null))["diagnostics"]!.AsArray());
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    static Task ChangedAsync(TestClient client, string uri) =>
        client.NotifyAsync("workspace/didChangeWatchedFiles", "{\"changes\":[{\"uri\":\"" + uri + "\",\"type\":2}]}");

    static Task CloseAsync(TestClient client, string uri) =>
        client.NotifyAsync("textDocument/didClose", "{\"textDocument\":{\"uri\":\"" + uri + "\"}}");
}
