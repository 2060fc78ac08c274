using System.Text.Json.Nodes;
using NcLanguage.Machine.Files;

namespace NcLanguage.Server.Tests;

/// <summary>Pages that editors ask for: what stands in them is the business of who makes them.</summary>
public sealed class PageTests
{
    const string Uri = "file:///job/part.nc";

    sealed class MadePages : IPages
    {
        public string MotionView(PageInput input, string? nonce, CancellationToken cancel) => $"motion of {input.Path}, {input.Analysis.Text.LineCount} lines, {nonce ?? "no nonce"}";

        public string SetupSheet(PageInput input, CancellationToken cancel) => $"sheet of {input.Path}";

        public string Write(string name, string page) => name == "part.motion.html" ? throw new IOException("the disk is full") : $"/cache/{name}";
    }

    [Fact]
    public async Task A_page_is_handed_over_as_it_is_made()
    {
        await using var client = await OpenAsync();
        Assert.Equal("motion of /job/part.nc, 3 lines, n1", (string?)(await client.RequestAsync("nclanguage/motionView", Document(",\"nonce\":\"n1\"")))!["html"]);
        Assert.Equal("sheet of /job/part.nc", (string?)(await client.RequestAsync("nclanguage/setupSheet", Document()))!["html"]);
    }

    [Fact]
    public async Task A_command_writes_the_page_and_asks_the_client_to_show_it()
    {
        await using var client = await OpenAsync("""{"window":{"showDocument":{"support":true}}}""");
        Assert.Equal("/cache/part.setup-sheet.html", (string?)await client.RequestAsync("workspace/executeCommand", Command("nclanguage.openSetupSheet", Uri)));
        Assert.Equal("""{"uri":"file:///cache/part.setup-sheet.html","external":true}""", (await client.NextAsync("window/showDocument")).ToJsonString());
    }

    [Theory]
    [InlineData("nclanguage.openMotionView", Uri, -32803, "The page could not be written: the disk is full")]
    [InlineData("nclanguage.else", Uri, -32602, "There is no command nclanguage.else.")]
    [InlineData("nclanguage.openSetupSheet", null, -32602, "nclanguage.openSetupSheet takes the address of a program or a setup file.")]
    [InlineData("nclanguage.openSetupSheet", "file:///job/closed.nc", -32602, "The document file:///job/closed.nc is not open.")]
    public async Task What_cannot_be_done_is_said(string command, string? uri, int code, string message)
    {
        await using var client = await OpenAsync();
        var error = (await client.AskAsync("workspace/executeCommand", Command(command, uri)))["error"]!;
        Assert.Equal((code, message), ((int)error["code"]!, (string?)error["message"]));
    }

    [Theory]
    [InlineData("part.setup.json", "part.nc")]
    [InlineData("row.setup.json", "row.tap")]
    [InlineData("alone/nc.setup.json", "alone/only.nc")]
    // Of several, the one that is open.
    [InlineData("nc.setup.json", "part.nc")]
    public async Task A_setup_shows_its_program_open_or_not(string setup, string program)
    {
        using var folder = Folder();
        await using var client = await TestClient.InitializedAsync(files: DiskFiles.Instance, pages: new MadePages());
        await client.OpenAsync(folder.UriOf(setup), "{}");
        if (program == "part.nc")
            await client.OpenAsync(folder.UriOf(program), "G0 X1\nM30\n");
        var answer = (await client.RequestAsync("nclanguage/motionView", "{\"textDocument\":{\"uri\":\"" + folder.UriOf(setup) + "\"}}"))!;
        var lines = program == "part.nc" ? 3 : 2;
        Assert.Equal($"motion of {folder.PathOf(program)}, {lines} lines, no nonce", (string?)answer["html"]);
        Assert.Equal(folder.UriOf(program), (string?)answer["uri"]);
    }

    [Theory]
    [InlineData("nc.setup.json", "nc.setup.json is for 2 programs: open the one that is meant.")]
    [InlineData("none.setup.json", "There is no program beside none.setup.json, such as none.nc.")]
    [InlineData("empty/nc.setup.json", "There is no program beside nc.setup.json.")]
    [InlineData("mill.machine.json", "mill.machine.json is no program and no setup: open a program first.")]
    public async Task A_setup_without_one_program_says_so(string name, string sentence)
    {
        using var folder = Folder();
        await using var client = await TestClient.InitializedAsync(files: DiskFiles.Instance, pages: new MadePages());
        await client.OpenAsync(folder.UriOf(name), "{}");
        var error = (await client.AskAsync("nclanguage/setupSheet", "{\"textDocument\":{\"uri\":\"" + folder.UriOf(name) + "\"}}"))["error"]!;
        Assert.Equal((-32803, sentence), ((int)error["code"]!, (string?)error["message"]));
    }

    static TestFolder Folder() => new()
    {
        ["part.nc"] = "G0 X1\n",
        ["row.tap"] = "G0 X1\n",
        ["alone/only.nc"] = "G0 X1\n",
    };

    static async Task<TestClient> OpenAsync(string capabilities = "{}")
    {
        var client = await TestClient.InitializedAsync(capabilities, pages: new MadePages());
        await client.OpenAsync(Uri, "G0 X1\nM30\n");
        return client;
    }

    static string Command(string name, string? uri) => "{\"command\":\"" + name + "\",\"arguments\":[" + (uri is null ? "" : "\"" + uri + "\"") + "]}";

    static string Document(string more = "") => "{\"textDocument\":{\"uri\":\"" + Uri + "\"}" + more + "}";
}
