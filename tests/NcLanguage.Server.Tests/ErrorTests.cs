using System.Text;
using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests;

/// <summary>Whatever a client sends gets a proper error (JSON-RPC 2.0 section 5.1 and LSP 3.17 "ErrorCodes"), and the server lives on.</summary>
public sealed class ErrorTests
{
    private const string Uri = "file:///part.nc";

    [Theory]
    [InlineData("textDocument/hover", """{"textDocument":{"uri":"file:///part.nc"}}""", -32602)]
    [InlineData("textDocument/hover", """{"textDocument":{"uri":"file:///part.nc"},"position":{"line":-1,"character":0}}""", -32602)]
    [InlineData("textDocument/hover", """{"textDocument":{"uri":"file:///part.nc"},"position":{"line":"0","character":0}}""", -32602)]
    [InlineData("textDocument/hover", """{"textDocument":{"uri":null},"position":{"line":0,"character":0}}""", -32602)]
    [InlineData("textDocument/hover", """{"textDocument":{"uri":"\ud800"},"position":{"line":0,"character":0}}""", -32602)]
    [InlineData("textDocument/hover", """{"textDocument":{"uri":"file:///other.nc"},"position":{"line":0,"character":0}}""", -32602)]
    [InlineData("textDocument/hover", """[1,2]""", -32602)]
    [InlineData("textDocument/hover", """[]""", -32602)]
    [InlineData("textDocument/hover", """null""", -32602)]
    [InlineData("textDocument/hover", null, -32602)]
    [InlineData("textDocument/inlayHint", """{"textDocument":{"uri":"file:///part.nc"},"range":7}""", -32602)]
    [InlineData("codeAction/resolve", """{"kind":"quickfix"}""", -32602)]
    [InlineData("textDocument/completion", "{}", -32601)]
    [InlineData("no/such/method", "{}", -32601)]
    [InlineData("$/unknown", "{}", -32601)]
    [InlineData("Hover", "{}", -32601)]
    [InlineData("HoverAsync", "{}", -32601)]
    [InlineData("", "{}", -32601)]
    public async Task A_faulty_request_gets_its_error(string method, string? parameters, int code)
    {
        await using TestClient client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G0 X1");
        Assert.Equal(code, await client.ErrorOfAsync(method, parameters));
        await AssertLives(client);
    }

    [Theory]
    [InlineData("{")]
    [InlineData("[]")]
    [InlineData("7")]
    [InlineData("{}")]
    [InlineData("""{"jsonrpc":"2.0","id":{},"method":"shutdown"}""")]
    [InlineData("""{"jsonrpc":"2.0","id":1.5,"method":"shutdown"}""")]
    [InlineData("""{"jsonrpc":"2.0","method":7}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"\ud800"}""")]
    [InlineData("""{"jsonrpc":"2.0","error":{}}""")]
    [InlineData("""{"jsonrpc":"2.0","error":7}""")]
    public async Task A_message_that_cannot_be_read_is_a_parse_error(string message)
    {
        await using TestClient client = await TestClient.InitializedAsync();
        JsonNode answer = await client.AnswerAsync("null", message);
        Assert.Equal(-32700, (int)answer["error"]!["code"]!);
        await AssertLives(client);
    }

    [Theory]
    [InlineData("""{"jsonrpc":"2.0","id":99,"result":null}""")]
    [InlineData("""{"jsonrpc":"2.0","id":"x","error":{"code":1,"message":"no"}}""")]
    [InlineData("""{"jsonrpc":"2.0","result":null}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"no/such/notification","params":{}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"$/progress","params":{}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"$/cancelRequest","params":{"id":99}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"$/cancelRequest","params":{"id":{}}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"$/cancelRequest"}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"textDocument/didOpen"}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"textDocument/didChange","params":{"textDocument":{"uri":"file:///other.nc","version":2},"contentChanges":[]}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"textDocument/didClose","params":{"textDocument":{"uri":"file:///other.nc"}}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"workspace/didChangeWatchedFiles","params":{"changes":[{"uri":":::","type":1}]}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"workspace/didChangeConfiguration","params":{"settings":null}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":null}""")]
    public async Task An_odd_message_without_answer_is_survived(string message)
    {
        await using TestClient client = await TestClient.InitializedAsync();
        await client.SendAsync(message);
        await AssertLives(client);
    }

    [Fact]
    public async Task A_request_whose_id_is_text_or_null_is_answered_under_it()
    {
        await using TestClient client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G0 X1");
        JsonNode text = await client.AnswerAsync("one", """{"jsonrpc":"2.0","id":"one","method":"textDocument/documentSymbol","params":{"textDocument":{"uri":"file:///part.nc"}}}""");
        Assert.NotNull(text["result"]);
        JsonNode none = await client.AnswerAsync("null", """{"jsonrpc":"2.0","id":null,"method":"no/such/method"}""");
        Assert.Equal(-32601, (int)none["error"]!["code"]!);
    }

    [Fact]
    public async Task A_broken_header_ends_the_session_with_1()
    {
        await using TestClient client = await TestClient.InitializedAsync();
        await client.SendRawAsync(Encoding.ASCII.GetBytes("Content-Length: many\r\n\r\n{}"));
        Assert.Equal(1, await client.ExitCode.WaitAsync(TimeSpan.FromSeconds(10)));
    }

    [Fact]
    public async Task A_refused_change_is_told_in_the_log()
    {
        await using TestClient client = await TestClient.InitializedAsync();
        await client.ChangeAsync("file:///other.nc", 2, """{"text":""}""");
        JsonNode message = await client.NextAsync("window/logMessage");
        Assert.Equal(2, (int)message["type"]!);
        Assert.Contains("file:///other.nc", (string?)message["message"], StringComparison.Ordinal);
    }

    private static async Task AssertLives(TestClient client)
    {
        await client.OpenAsync("file:///alive.nc", "G0 X1");
        Assert.NotNull(await client.RequestAsync("textDocument/documentSymbol", """{"textDocument":{"uri":"file:///alive.nc"}}"""));
    }
}
