using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests;

/// <summary>Settings, folders and files of the workspace.</summary>
public sealed class WorkspaceTests
{
    const string Uri = "file:///job/part.nc";
    const string Dwell = "G21 G90 G17 G54\nG4 P500\nM30\n";

    [Theory]
    [InlineData("dwell=milliseconds", "0.5 s")]
    [InlineData("dwell=seconds", "8 min 20 s")]
    public async Task Settings_choose_readings_at_once(string reading, string expected)
    {
        await using var client = await OpenAsync(Dwell);
        await client.NotifyAsync("workspace/didChangeConfiguration", "{\"settings\":{\"nclanguage\":{\"readings\":[\"" + reading + "\"]}}}");
        Assert.Contains(expected, await DwellAsync(client), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Settings_come_with_the_start_too_and_taking_them_away_leaves_what_was_before()
    {
        await using var client = await OpenAsync(Dwell, more: ",\"initializationOptions\":{\"readings\":[\"dwell=milliseconds\"]}");
        Assert.Contains("0.5 s", await DwellAsync(client), StringComparison.Ordinal);
        await client.NotifyAsync("workspace/didChangeConfiguration", "{\"settings\":{\"nclanguage\":{}}}");
        Assert.Contains("8 min 20 s", await DwellAsync(client), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_client_that_hands_out_settings_is_asked_for_them()
    {
        await using var client = await OpenAsync(Dwell, "{\"workspace\":{\"configuration\":true}}");
        var asked = await client.NextAsync("workspace/configuration");
        Assert.Equal("""{"items":[{"section":"nclanguage"}]}""", asked.ToJsonString());
    }

    /// <summary>A stick with programs is opened whole.</summary>
    [Fact]
    public async Task A_whole_disk_may_be_the_folder()
    {
        var files = new TestFiles { ["/nc.setup.json"] = "{ \"units\": \"miles\" }" };
        await using var client = await TestClient.InitializedAsync(more: ",\"workspaceFolders\":[{\"uri\":\"file:///\",\"name\":\"disk\"}]", files: files);
        await client.OpenAsync(Uri, "G0 X1.\n");
        var inUse = (await client.RequestAsync("nclanguage/jobInUse", "{\"textDocument\":{\"uri\":\"" + Uri + "\"}}"))!;
        Assert.Equal("file:///nc.setup.json", (string?)inUse["setup"]?["uri"]);
    }

    [Fact]
    public async Task A_file_that_gets_another_number_takes_its_callers_along()
    {
        await using var client = await OpenAsync("O1\nM98 P12\nM98 P0012\nM30\n");
        await client.OpenAsync("file:///job/O0012.nc", "O0012\nG91 X1\nM99\n");
        var changes = (await client.RequestAsync("workspace/willRenameFiles", """{"files":[{"oldUri":"file:///job/O0012.nc","newUri":"file:///job/O0034.nc"}]}"""))!["changes"]!;
        Assert.Equal(["34", "0034"], changes[Uri]!.AsArray().Select(edit => (string?)edit!["newText"]));
        Assert.Equal(["0034"], changes["file:///job/O0012.nc"]!.AsArray().Select(edit => (string?)edit!["newText"]));
        Assert.Null(await client.RequestAsync("workspace/willRenameFiles", """{"files":[{"oldUri":"file:///job/O0012.nc","newUri":"file:///job/row.nc"}]}"""));
        Assert.Null(await client.RequestAsync("workspace/willRenameFiles", """{"files":[{"oldUri":"file:///job/gone.nc","newUri":"file:///job/O5.nc"}]}"""));
    }

    /// <summary>Left behind, the program would be checked without it. A setup that the new name has already stays.</summary>
    [Fact]
    public async Task A_file_takes_its_setup_along()
    {
        var files = new TestFiles { ["/job/row.setup.json"] = "{}", ["/job/other.setup.json"] = "{}" };
        await using var client = await TestClient.InitializedAsync("""{"workspace":{"workspaceEdit":{"documentChanges":true,"resourceOperations":["rename"]}}}""", files: files);
        await client.OpenAsync("file:///job/row.nc", "G91 X1\nM30\n");
        var changes = (await client.RequestAsync("workspace/willRenameFiles", """{"files":[{"oldUri":"file:///job/row.nc","newUri":"file:///job/plate.nc"}]}"""))!["documentChanges"]!;
        Assert.Equal("""[{"oldUri":"file:///job/row.setup.json","newUri":"file:///job/plate.setup.json","kind":"rename"}]""", changes.ToJsonString());
        Assert.Null(await client.RequestAsync("workspace/willRenameFiles", """{"files":[{"oldUri":"file:///job/row.nc","newUri":"file:///job/other.nc"}]}"""));
        Assert.Null(await client.RequestAsync("workspace/willRenameFiles", """{"files":[{"oldUri":"file:///job/row.nc","newUri":"file:///elsewhere/plate.nc"}]}"""));
        Assert.Null(await client.RequestAsync("workspace/willRenameFiles", """{"files":[{"oldUri":"file:///job/row.nc","newUri":"file:///job/row.tap"}]}"""));
    }

    /// <summary>Calls that would lead to another program stay as they are, and why is shown.</summary>
    [Theory]
    [InlineData("O1\nM98 P200\nM98 P300\nM30\nO300\nG0 X9\nM99\n", "300", "O300 is in use already, in line 3 of part.nc")]
    [InlineData("O1\nM98 P200\nM30\n", "400", "O0400.nc has the number 400 already")]
    public async Task A_file_does_not_get_the_number_of_another_program(string caller, string number, string why)
    {
        await using var client = await OpenAsync(caller);
        await client.OpenAsync("file:///job/O0400.nc", "O0400\nM99\n");
        await client.OpenAsync("file:///job/O200.nc", "O200\nG91 X1\nM99\n");
        Assert.Null(await client.RequestAsync("workspace/willRenameFiles", "{\"files\":[{\"oldUri\":\"file:///job/O200.nc\",\"newUri\":\"file:///job/O" + number + ".nc\"}]}"));
        Assert.Equal($"The calls of program 200 were not changed along with its file: {why}.", (string?)(await client.NextAsync("window/showMessage"))["message"]);
    }

    [Fact]
    public async Task A_folder_added_lets_a_setup_be_found_up_to_it()
    {
        var files = new TestFiles { ["/job/nc.setup.json"] = """{ "stock": { "min": [0, 0, -12], "max": [60, 60, 0] } }""" };
        await using var client = await TestClient.InitializedAsync(files: files);
        await client.OpenAsync("file:///job/sub/part.nc", "G21 G90 G17 G54\nG0 Z50\nG81 X100 Y10 Z-5 R2 F100\nG80\nM30\n");
        await client.NotifyAsync("workspace/didChangeWorkspaceFolders", """{"event":{"added":[{"uri":"file:///job","name":"job"}],"removed":[]}}""");
        var report = (await client.RequestAsync("textDocument/diagnostic", """{"textDocument":{"uri":"file:///job/sub/part.nc"}}"""))!;
        Assert.Contains(report["items"]!.AsArray(), item => (string?)item!["data"] == "hole-outside-stock");
    }

    [Fact]
    public async Task Findings_of_the_workspace_wait_until_there_are_new_ones()
    {
        await using var client = await OpenAsync("G91 X5\n");
        var first = (await client.RequestAsync("workspace/diagnostic", """{"previousResultIds":[]}"""))!["items"]!.AsArray().Single()!;
        var known = "{\"previousResultIds\":[{\"uri\":\"" + Uri + "\",\"value\":\"" + first["resultId"] + "\"}]}";
        var waiting = client.RequestAsync("workspace/diagnostic", known);
        await client.ChangeAsync(Uri, 2, TestClient.Insert(0, 0, "X1 "));
        Assert.Equal("full", (string?)(await waiting)!["items"]!.AsArray().Single()!["kind"]);
    }

    static async Task<string> DwellAsync(TestClient client) =>
        (string)(await client.RequestAsync("textDocument/hover", "{\"textDocument\":{\"uri\":\"" + Uri + "\"},\"position\":{\"line\":1,\"character\":4}}"))!["contents"]!["value"]!;

    static async Task<TestClient> OpenAsync(string program, string capabilities = "{}", string more = "")
    {
        var client = await TestClient.InitializedAsync(capabilities, more);
        await client.OpenAsync(Uri, program);
        return client;
    }
}
