using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests;

/// <summary>Pages that editors ask for: what stands in them is the business of who makes them.</summary>
public sealed class PageTests
{
    private const string Uri = "file:///job/part.nc";

    private sealed class MadePages : IPages
    {
        public string MotionView(PageInput input, string? nonce, CancellationToken cancel) => $"motion of {input.Path}, {input.Analysis.Text.LineCount} lines, {nonce ?? "no nonce"}";

        public string SetupSheet(PageInput input, CancellationToken cancel) => $"sheet of {input.Path}";

        public string Write(string name, string page) => name == "part.motion.html" ? throw new IOException("the disk is full") : $"/cache/{name}";
    }

    [Fact]
    public async Task A_page_is_handed_over_as_it_is_made()
    {
        await using TestClient client = await OpenAsync();
        Assert.Equal("motion of /job/part.nc, 3 lines, n1", (string?)(await client.RequestAsync("nclanguage/motionView", Document(",\"nonce\":\"n1\"")))!["html"]);
        Assert.Equal("sheet of /job/part.nc", (string?)(await client.RequestAsync("nclanguage/setupSheet", Document()))!["html"]);
    }

    [Fact]
    public async Task A_command_writes_the_page_and_asks_the_client_to_show_it()
    {
        await using TestClient client = await OpenAsync("""{"window":{"showDocument":{"support":true}}}""");
        Assert.Equal("/cache/part.setup-sheet.html", (string?)await client.RequestAsync("workspace/executeCommand", Command("nclanguage.openSetupSheet", Uri)));
        Assert.Equal("""{"uri":"file:///cache/part.setup-sheet.html","external":true}""", (await client.NextAsync("window/showDocument")).ToJsonString());
    }

    [Theory]
    [InlineData("nclanguage.openMotionView", Uri, -32803, "The page could not be written: the disk is full")]
    [InlineData("nclanguage.else", Uri, -32602, "There is no command nclanguage.else.")]
    [InlineData("nclanguage.openSetupSheet", null, -32602, "nclanguage.openSetupSheet takes the address of a program.")]
    [InlineData("nclanguage.openSetupSheet", "file:///job/closed.nc", -32602, "The document file:///job/closed.nc is not open.")]
    public async Task What_cannot_be_done_is_said(string command, string? uri, int code, string message)
    {
        await using TestClient client = await OpenAsync();
        JsonNode error = (await client.AskAsync("workspace/executeCommand", Command(command, uri)))["error"]!;
        Assert.Equal((code, message), ((int)error["code"]!, (string?)error["message"]));
    }

    private static async Task<TestClient> OpenAsync(string capabilities = "{}")
    {
        TestClient client = await TestClient.InitializedAsync(capabilities, pages: new MadePages());
        await client.OpenAsync(Uri, "G0 X1\nM30\n");
        return client;
    }

    private static string Command(string name, string? uri) => "{\"command\":\"" + name + "\",\"arguments\":[" + (uri is null ? "" : "\"" + uri + "\"") + "]}";

    private static string Document(string more = "") => "{\"textDocument\":{\"uri\":\"" + Uri + "\"}" + more + "}";
}
