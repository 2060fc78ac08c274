using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests;

/// <summary>Programs called beside the one that calls them: the editor's text counts before the disk's, and a change reaches the callers. How a call
/// runs: common practice.</summary>
public sealed class CalledProgramTests
{
    const string Caller = "file:///job/part.nc";
    const string Called = "file:///job/O1200.nc";
    const string Watching = """{"workspace":{"didChangeWatchedFiles":{"dynamicRegistration":true},"inlayHint":{"refreshSupport":true}}}""";
    const string CallerText = "G21 G90 G17 G54\nG0 X0 Y0 Z50\nM98 P1200\nG0 Z60\nM30\n";

    [Fact]
    public async Task A_program_never_saved_is_found_by_its_callers()
    {
        await using var client = await TestClient.InitializedAsync(Watching);
        await client.OpenAsync(Called, "O1200\nG0 X40\nM99\n");
        await client.OpenAsync(Caller, CallerText);
        Assert.DoesNotContain("subprogram-missing", await FindingsAsync(client, 1));
        Assert.Equal(40, await PlaceBehindCallAsync(client));
    }

    [Fact]
    public async Task What_is_typed_counts_before_the_disk_and_reaches_the_callers_at_once()
    {
        var files = new TestFiles { ["/job/O1200.nc"] = "O1200\nG0 X40\nM99\n" };
        await using var client = await TestClient.InitializedAsync(Watching, files: files);
        await client.OpenAsync(Caller, CallerText);
        Assert.Equal(40, await PlaceBehindCallAsync(client));

        await client.OpenAsync(Called, "O1200\nG0 X41\nM99\n");
        Assert.Equal(41, await PlaceBehindCallAsync(client));
        await client.ChangeAsync(Called, 2, TestClient.Replace(1, 4, 1, 6, "72"));
        Assert.Equal(72, await PlaceBehindCallAsync(client));
        Assert.Contains(client.Log, message => (string?)message["method"] == "workspace/inlayHint/refresh");

        // Closed without saving: what is on disk counts again.
        await client.NotifyAsync("textDocument/didClose", "{\"textDocument\":{\"uri\":\"" + Called + "\"}}");
        Assert.Equal(40, await PlaceBehindCallAsync(client));
    }

    [Fact]
    public async Task A_called_program_that_comes_to_be_on_disk_mends_the_finding_and_no_other_program_is_checked()
    {
        var files = new TestFiles();
        await using var client = await TestClient.InitializedAsync(Watching, files: files);
        await client.OpenAsync(Caller, CallerText);
        await client.OpenAsync("file:///job/else.nc", "G21 G90 G17 G54\nG0 X0 Y0 Z50\nM30\n", version: 7);
        Assert.Contains("subprogram-missing", await FindingsAsync(client, 1));
        await client.DiagnosticsAsync("file:///job/else.nc", 7);

        files["/job/O1200.nc"] = "O1200\nG0 X40\nM99\n";
        await client.NotifyAsync("workspace/didChangeWatchedFiles", "{\"changes\":[{\"uri\":\"" + Called + "\",\"type\":1}]}");
        Assert.DoesNotContain("subprogram-missing", await FindingsAsync(client, 1));
        Assert.Equal(40, await PlaceBehindCallAsync(client));
        Assert.Equal(1, client.Log.Count(message => (string?)message["params"]?["uri"] == "file:///job/else.nc"));
    }

    [Fact]
    public async Task Without_a_watching_client_the_server_looks_itself()
    {
        var folder = Directory.CreateTempSubdirectory("nclanguage-").FullName;
        try
        {
            var caller = new Uri(Path.Combine(folder, "part.nc")).AbsoluteUri;
            await using var client = await TestClient.InitializedAsync(files: Machine.Files.DiskFiles.Instance);
            await client.OpenAsync(caller, CallerText);
            Assert.Contains("subprogram-missing", Names(await client.DiagnosticsAsync(caller, 1)));
            await File.WriteAllTextAsync(Path.Combine(folder, "1200.nc"), "O1200\nG0 X40\nM99\n");
            Assert.DoesNotContain("subprogram-missing", Names(await client.DiagnosticsAsync(caller, 1)));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public async Task A_link_that_leads_out_of_the_folder_is_not_read()
    {
        var folder = Directory.CreateTempSubdirectory("nclanguage-").FullName;
        try
        {
            var inner = Directory.CreateDirectory(Path.Combine(folder, "job")).FullName;
            await File.WriteAllTextAsync(Path.Combine(folder, "O1200.nc"), "O1200\nG0 X40\nM99\n");
            File.CreateSymbolicLink(Path.Combine(inner, "O1200.nc"), Path.Combine(folder, "O1200.nc"));
            var caller = new Uri(Path.Combine(inner, "part.nc")).AbsoluteUri;
            await using var client = await TestClient.InitializedAsync(files: Machine.Files.DiskFiles.Instance);
            await client.OpenAsync(caller, CallerText);
            Assert.Contains("subprogram-missing", Names(await client.DiagnosticsAsync(caller, 1)));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>LSP 3.18, text document synchronization: from didOpen to didClose the client owns the text, and the file's address must not be read.</summary>
    [Fact]
    public async Task What_happens_on_disk_to_a_program_that_is_open_changes_nothing()
    {
        var files = new TestFiles { ["/job/part.nc"] = "G21 G90 G17 G54\nG0 X1\nM99\nG0 X2\nM30\n", ["/job/O1200.nc"] = "O1200\nG0 X40\nM99\n" };
        await using var client = await TestClient.InitializedAsync(Watching, files: files);
        await client.OpenAsync(Caller, CallerText);
        Assert.Equal(40, await PlaceBehindCallAsync(client));
        files["/job/part.nc"] = "G21 G90 G17 G54\nG0 X77\nM99\nG0 X77\nM30\n";
        await client.NotifyAsync("workspace/didChangeWatchedFiles", "{\"changes\":[{\"uri\":\"" + Caller + "\",\"type\":2}]}");
        Assert.Equal(40, await PlaceBehindCallAsync(client));
        await client.NotifyAsync("workspace/didChangeWatchedFiles", "{\"changes\":[{\"uri\":\"" + Caller + "\",\"type\":3}]}");
        await client.ChangeAsync(Caller, 2, TestClient.Replace(1, 4, 1, 6, "X5"));
        Assert.DoesNotContain("subprogram-missing", await FindingsAsync(client, 2));
        Assert.Equal(40, await PlaceBehindCallAsync(client));
    }

    static async Task<List<string?>> FindingsAsync(TestClient client, int version) => Names(await client.DiagnosticsAsync(Caller, version));

    static List<string?> Names(JsonNode published) => [.. published["diagnostics"]!.AsArray().Select(finding => (string?)finding!["data"])];

    // Line 4 only lifts, so that the tool still stands where the call has left it.
    static async Task<double?> PlaceBehindCallAsync(TestClient client) => (double?)(await client.RequestAsync(
        "nclanguage/stateAt", "{\"textDocument\":{\"uri\":\"" + Caller + "\"},\"position\":" + TestClient.At(3, 0) + "}"))!["position"]?["x"];
}
