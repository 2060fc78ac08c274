using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests.Torture;

/// <summary>JSON-RPC 2.0 section 4: each message says "jsonrpc": "2.0", and by its id the client tells what an answer belongs to. What breaks either is answered with
/// Invalid Request (section 5.1, −32600) under its own id, a notification not at all (section 4.1).</summary>
public sealed class IdTests
{
    const string Uri = "file:///job/secret-part.nc";
    const string Parameters = $$"""{"textDocument":{"uri":"{{Uri}}"} }""";

    [Theory]
    [InlineData("\"one\"")]
    [InlineData("1000")]
    [InlineData("null")]
    public async Task A_second_request_under_an_id_in_flight_is_refused_and_the_first_still_answered(string id)
    {
        var files = new TestFiles();
        await using var client = await TestClient.InitializedAsync(files: files);
        files.Hold();
        await client.OpenAsync(Uri, "G0 X1");
        await client.SendAsync(Request(id, "textDocument/documentSymbol"));
        for (var time = 1; time <= 3; time++)
        {
            await client.SendAsync(Request(id, "textDocument/foldingRange"));
            await HeaderTests.Eventually(() => Answers(client, id).Length == time);
        }
        Assert.All(Answers(client, id), refused => Assert.Equal(-32600, (int)refused["error"]!["code"]!));
        files.Release();
        await HeaderTests.Eventually(() => Answers(client, id).Length == 4);
        Assert.NotNull(Answers(client, id)[3]["result"]);
        await AssertQuiet(client);
    }

    [Fact]
    public async Task An_id_may_come_again_as_soon_as_it_is_answered()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G0 X1");
        for (var time = 0; time < 500; time++)
            Assert.NotNull((await client.AnswerAsync("one", Request("\"one\"", "textDocument/documentSymbol")))["result"]);
        await AssertQuiet(client);
    }

    [Fact]
    public async Task A_number_and_a_text_of_the_same_digits_are_two_ids()
    {
        var files = new TestFiles();
        await using var client = await TestClient.InitializedAsync(files: files);
        files.Hold();
        await client.OpenAsync(Uri, "G0 X1");
        await client.SendAsync(Request("1000", "textDocument/documentSymbol"));
        await client.SendAsync(Request("\"1000\"", "textDocument/documentSymbol"));
        files.Release();
        await HeaderTests.Eventually(() => Answers(client, "1000").Length + Answers(client, "\"1000\"").Length == 2);
        Assert.All((string[])["1000", "\"1000\""], id => Assert.NotNull(Assert.Single(Answers(client, id))["result"]));
    }

    /// <summary>What is refused under an id in flight does not happen, and the one in flight can still be taken back.</summary>
    [Fact]
    public async Task A_second_request_neither_shuts_down_nor_keeps_the_first_from_being_cancelled()
    {
        var files = new TestFiles();
        await using var client = await TestClient.InitializedAsync(files: files);
        files.Hold();
        await client.OpenAsync(Uri, "G0 X1");
        await client.SendAsync(Request("1000", "textDocument/documentSymbol"));
        await client.SendAsync(Request("1000", "shutdown"));
        await client.NotifyAsync("$/cancelRequest", """{"id":1000}""");
        await HeaderTests.Eventually(() => Answers(client, "1000").Length == 2);
        Assert.Equal([-32800, -32600], Answers(client, "1000").Select(answer => (int)answer["error"]!["code"]!).Order());
        files.Release();
        Assert.NotNull(await client.RequestAsync("textDocument/documentSymbol", Parameters));
        await AssertQuiet(client);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\"jsonrpc\":\"1.0\",")]
    [InlineData("\"jsonrpc\":\"2\",")]
    [InlineData("\"jsonrpc\":\"secret\",")]
    [InlineData("\"jsonrpc\":2.0,")]
    [InlineData("\"jsonrpc\":null,")]
    [InlineData("\"jsonrpc\":{},")]
    [InlineData("\"JSONRPC\":\"2.0\",")]
    public async Task A_message_of_another_version_is_refused_or_dropped_and_told_once(string version)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G0 X1");
        await client.DiagnosticsAsync(Uri, 1);
        var refused = await client.AnswerAsync("1000", $$"""{{{version}}"id":1000,"method":"textDocument/documentSymbol","params":{{Parameters}}}""");
        Assert.Equal(-32600, (int)refused["error"]!["code"]!);
        for (var time = 0; time < 3; time++)
            await client.SendAsync($$"""{{{version}}"method":"textDocument/didClose","params":{{Parameters}}}""");
        Assert.NotNull(await client.RequestAsync("textDocument/documentSymbol", Parameters));
        var line = Assert.Single(client.ErrorLog.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("it does not say \"jsonrpc\": \"2.0\"", line, StringComparison.Ordinal);
        Assert.DoesNotContain("secret", line, StringComparison.Ordinal);
        Assert.DoesNotContain(client.Log, message => message["method"] is null && message["id"] is null);
    }

    static string Request(string id, string method) => $$"""{"jsonrpc":"2.0","id":{{id}},"method":"{{method}}","params":{{Parameters}}}""";

    static JsonNode[] Answers(TestClient client, string id) =>
        [.. client.Log.Where(message => message["method"] is null && message.AsObject().ContainsKey("id") && (message["id"]?.ToJsonString() ?? "null") == id)];

    static async Task AssertQuiet(TestClient client)
    {
        Assert.NotNull(await client.RequestAsync("textDocument/foldingRange", Parameters));
        Assert.Equal("", client.ErrorLog.ToString());
    }
}
