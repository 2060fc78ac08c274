using System.Text.Json.Nodes;
using NcLanguage.Machine.Files;
using NcLanguage.Server.Documents;

namespace NcLanguage.Server.Tests;

/// <summary>LSP 3.17, "Pull Diagnostics", "Work Done Progress", "Partial Result Progress": findings of setup files, and of the workspace's files that are not open.</summary>
public sealed class WorkspaceDiagnosticTests
{
    const string Pulls = """{"textDocument":{"diagnostic":{}},"workspace":{"diagnostics":{"refreshSupport":true},"didChangeWatchedFiles":{"dynamicRegistration":true}}}""";
    const string Faulty = "G21 G90\nG999\nM30\n";

    [Fact]
    public async Task A_setup_file_gives_its_findings_when_asked_and_does_not_send_them_as_well()
    {
        await using var client = await TestClient.InitializedAsync(Pulls);
        await client.OpenAsync("file:///job/part.setup.json", "{\n  \"units\": \"miles\"\n}");
        var ask = """{"textDocument":{"uri":"file:///job/part.setup.json"}}""";
        var report = (await client.RequestAsync("textDocument/diagnostic", ask))!;
        Assert.Equal("setup-value", (string?)report["items"]!.AsArray().Single()!["data"]);
        ask = ask.Insert(ask.Length - 1, ",\"previousResultId\":\"" + report["resultId"] + "\"");
        Assert.Equal("unchanged", (string?)(await client.RequestAsync("textDocument/diagnostic", ask))!["kind"]);
        await client.ChangeAsync("file:///job/part.setup.json", 2, TestClient.Replace(1, 11, 1, 18, "\"mm\""));
        Assert.Empty((await client.RequestAsync("textDocument/diagnostic", ask))!["items"]!.AsArray());
        Assert.DoesNotContain(client.Log, message => (string?)message["method"] == "textDocument/publishDiagnostics");
    }

    [Fact]
    public async Task Files_that_are_not_open_are_told_with_their_findings()
    {
        using TestFolder folder = new()
        {
            ["part.nc"] = "G21 G90\nM30\n",
            ["deep/er/faulty.nc"] = Faulty,
            ["deep/nc.setup.json"] = """{ "units": "miles" }""",
            ["note.txt"] = Faulty,
            [".hidden/faulty.nc"] = Faulty,
        };
        using TestFolder outside = new() { ["faulty.nc"] = Faulty };
        Directory.CreateSymbolicLink(folder.PathOf("link"), outside.Path);
        File.CreateSymbolicLink(folder.PathOf("link.nc"), outside.PathOf("faulty.nc"));
        await using var client = await InitializedAsync(folder);
        await client.OpenAsync(folder.UriOf("part.nc"), "G21 G90\nG998\nM30\n", version: 7);
        var items = await AskAsync(client);
        Assert.Equal(
            [(folder.UriOf("deep/er/faulty.nc"), null, "code-unknown"), (folder.UriOf("deep/nc.setup.json"), null, "setup-value"), (folder.UriOf("part.nc"), 7, "code-unknown")],
            items.Select(item => ((string)item!["uri"]!, (int?)item["version"], (string)item["items"]![0]!["data"]!)).OrderBy(row => row.Item1, StringComparer.Ordinal));
    }

    [Fact] // Else the clamps of a setup that cannot be read would be left out of the check without a word.
    public async Task A_setup_that_cannot_be_read_is_told_with_the_program_that_is_open()
    {
        using TestFolder folder = new() { ["part.nc"] = "G21 G90\nM30\n" };
        File.CreateSymbolicLink(folder.PathOf("part.setup.json"), folder.PathOf("nowhere.json"));
        await using var client = await InitializedAsync(folder);
        var items = await AskAsync(client);
        await client.OpenAsync(folder.UriOf("part.nc"), "G21 G90\nM30\n");
        var news = await NewsOfAsync(client, BeginAsync(client, items), folder.UriOf("part.setup.json"));
        Assert.Contains("part.setup.json is a link to a file that is not there", (string)news.Single()!["message"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_answer_waits_for_a_change_on_disk_and_takes_away_what_is_gone()
    {
        using TestFolder folder = new() { ["a.nc"] = Faulty, ["b.nc"] = Faulty };
        await using var client = await InitializedAsync(folder);
        var first = await AskAsync(client);
        Assert.Equal(2, first.Count);
        var waiting = BeginAsync(client, first);
        File.Delete(folder.PathOf("a.nc"));
        folder["b.nc"] = "G21 G90\nG997\nG998\nM30\n";
        await client.NotifyAsync("workspace/didChangeWatchedFiles", "{\"changes\":[{\"uri\":\"" + folder.UriOf("a.nc") + "\",\"type\":3},{\"uri\":\"" + folder.UriOf("b.nc") + "\",\"type\":2}]}");
        Assert.Empty(await NewsOfAsync(client, waiting, folder.UriOf("a.nc")));
        waiting = client.RequestAsync("workspace/diagnostic", """{"previousResultIds":[]}""");
        Assert.Equal(2, (await NewsOfAsync(client, waiting, folder.UriOf("b.nc"))).Count);
    }

    [Fact]
    public async Task A_changed_setup_checks_the_programs_below_it_anew()
    {
        using TestFolder folder = new() { ["a.nc"] = "G21 G90 G17 G54\nG0 Z50\nG81 X100 Y10 Z-5 R2 F100\nG80\nM30\n", ["b/c.nc"] = "G21 G90\nM30\n" };
        await using var client = await InitializedAsync(folder);
        var first = await AskAsync(client);
        var waiting = BeginAsync(client, first);
        folder["nc.setup.json"] = """{ "stock": { "min": [0, 0, -12], "max": [60, 60, 0] } }""";
        await client.NotifyAsync("workspace/didChangeWatchedFiles", "{\"changes\":[{\"uri\":\"" + folder.UriOf("nc.setup.json") + "\",\"type\":1}]}");
        Assert.Contains(await NewsOfAsync(client, waiting, folder.UriOf("a.nc")), item => (string?)item!["data"] == "hole-outside-stock");
    }

    [Fact]
    public async Task Findings_leave_as_they_are_found_where_the_client_takes_them_so()
    {
        using TestFolder folder = new() { ["a.nc"] = Faulty, ["b.nc"] = Faulty };
        await using var client = await InitializedAsync(folder);
        Assert.Empty((await client.RequestAsync("workspace/diagnostic", """{"previousResultIds":[],"partialResultToken":"p","workDoneToken":5}"""))!["items"]!.AsArray());
        JsonNode[] told = [.. client.Log.Where(message => (string?)message["method"] == "$/progress").Select(message => message["params"]!)];
        Assert.Equal(
            [folder.UriOf("a.nc"), folder.UriOf("b.nc")],
            told.Where(message => message["token"]!.ToJsonString() == "\"p\"").SelectMany(message => message["value"]!["items"]!.AsArray()).Select(item => (string)item!["uri"]!));
        Assert.Equal(["begin", "report", "end"], told.Where(message => message["token"]!.ToJsonString() == "5").Select(message => (string)message["value"]!["kind"]!));
    }

    /// <summary>LSP 3.17, "Partial Result Progress": the answer comes last.</summary>
    [Fact]
    public async Task However_slowly_they_are_taken_all_of_them_leave_before_the_answer()
    {
        const int Files = 120;
        using TestFolder folder = new();
        for (var i = 0; i < Files; i++)
            folder[$"p{i:000}.nc"] = Faulty.Replace("G999\n", string.Concat(Enumerable.Repeat("G999\n", 40)), StringComparison.Ordinal);
        await using var client = await InitializedAsync(folder);
        // So that they need only be sent the next time.
        await client.RequestAsync("workspace/diagnostic", """{"previousResultIds":[]}""");
        client.StopReading();
        (var id, var answer) = client.BeginAsync("workspace/diagnostic", """{"previousResultIds":[],"partialResultToken":"p"}""");
        await Task.Delay(500);
        client.GoOnReading();
        await answer;
        await client.AskAsync("workspace/symbol", """{"query":"none"}""");
        List<JsonNode> log = [.. client.Log];
        var answered = log.FindIndex(message => message["method"] is null && (int?)message["id"] == id);
        JsonNode[] told = [.. log.Take(answered).Where(message => (string?)message["method"] == "$/progress").Select(message => message["params"]!)];
        Assert.Equal(Files, told.Count(message => message["token"]!.ToJsonString() == "\"p\""));
        Assert.DoesNotContain(log.Skip(answered), message => (string?)message["method"] == "$/progress");
    }

    [Fact]
    public async Task A_request_that_waits_can_be_called_off()
    {
        using TestFolder folder = new() { ["a.nc"] = Faulty };
        await using var client = await InitializedAsync(folder);
        var first = await AskAsync(client);
        (var id, var answer) = client.BeginAsync("workspace/diagnostic", Known(first));
        await client.NotifyAsync("$/cancelRequest", "{\"id\":" + id + "}");
        Assert.Equal(-32800, (int)(await answer)["error"]!["code"]!);
    }

    [Fact]
    public async Task A_setup_that_is_not_open_is_sent_until_the_workspace_is_asked_for()
    {
        using TestFolder folder = new() { ["part.nc"] = "G21 G90\nM30\n", ["part.setup.json"] = """{ "units": "miles" }""" };
        await using var client = await InitializedAsync(folder);
        await client.OpenAsync(folder.UriOf("part.nc"), "G21 G90\nM30\n");
        Assert.NotEmpty((await client.DiagnosticsAsync(folder.UriOf("part.setup.json"), null))["diagnostics"]!.AsArray());
        Assert.Contains(await AskAsync(client), item => (string?)item!["uri"] == folder.UriOf("part.setup.json") && item["items"]!.AsArray().Count == 1);
        Assert.Empty((await client.DiagnosticsAsync(folder.UriOf("part.setup.json"), null))["diagnostics"]!.AsArray());
    }

    [Fact]
    public async Task A_folder_of_very_many_programs_is_checked_in_part_and_that_is_told()
    {
        using var folder = new TestFolder();
        for (var i = 0; i < WorkspaceChecks.MostPrograms + 3; i++)
            folder[$"{i:0000}.nc"] = "M30\n";
        folder["0001.nc"] = new string('(', WorkspaceChecks.GreatestProgram + 1);
        await using var client = await InitializedAsync(folder);
        Assert.Equal(WorkspaceChecks.MostPrograms - 1, (await AskAsync(client)).Count);
        var told = (string)(await client.NextAsync("window/logMessage"))["message"]!;
        Assert.Equal($"The folder has {WorkspaceChecks.MostPrograms + 3} programs: {WorkspaceChecks.MostPrograms} are checked without being opened, the others once they are.", told);
    }

    static Task<TestClient> InitializedAsync(TestFolder folder) =>
        TestClient.InitializedAsync(Pulls, ",\"workspaceFolders\":[{\"uri\":\"" + folder.Uri + "\",\"name\":\"job\"}]", DiskFiles.Instance);

    /// <summary>The findings that are new of a file: a look that is under way may see one change before another, and the next answer then has the rest.</summary>
    static async Task<JsonArray> NewsOfAsync(TestClient client, Task<JsonNode?> waiting, string uri)
    {
        while (true)
        {
            var items = (await waiting)!["items"]!.AsArray();
            if (items.FirstOrDefault(item => (string?)item!["uri"] == uri && (string?)item["kind"] == "full") is { } news)
                return news["items"]!.AsArray();
            waiting = BeginAsync(client, items);
        }
    }

    static async Task<JsonArray> AskAsync(TestClient client) =>
        (await client.RequestAsync("workspace/diagnostic", """{"previousResultIds":[]}"""))!["items"]!.AsArray();

    static Task<JsonNode?> BeginAsync(TestClient client, JsonArray known) => client.RequestAsync("workspace/diagnostic", Known(known));

    static string Known(JsonArray items) =>
        "{\"previousResultIds\":[" + string.Join(",", items.Select(item => "{\"uri\":\"" + item!["uri"] + "\",\"value\":\"" + item["resultId"] + "\"}")) + "]}";
}
