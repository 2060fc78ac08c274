using System.Text;
using System.Text.Json.Nodes;
using CsCheck;

namespace NcLanguage.Server.Tests;

/// <summary>Whatever a client sends gets a proper error (JSON-RPC 2.0 section 5.1 and LSP 3.17 "ErrorCodes"), and the server lives on.</summary>
public sealed class ErrorTests
{
    const string Uri = "file:///part.nc";

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
    [InlineData("textDocument/hover", "7", -32600)]
    [InlineData("textDocument/hover", "\"x\"", -32600)]
    [InlineData("textDocument/hover", "true", -32600)]
    [InlineData("no/such/method", "7", -32600)]
    [InlineData("textDocument/inlayHint", """{"textDocument":{"uri":"file:///part.nc"},"range":7}""", -32602)]
    [InlineData("codeAction/resolve", """{"kind":"quickfix"}""", -32602)]
    [InlineData("textDocument/moniker", "{}", -32601)]
    [InlineData("no/such/method", "{}", -32601)]
    [InlineData("$/unknown", "{}", -32601)]
    [InlineData("Hover", "{}", -32601)]
    [InlineData("HoverAsync", "{}", -32601)]
    [InlineData("", "{}", -32601)]
    public async Task A_faulty_request_gets_its_error(string method, string? parameters, int code)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G0 X1");
        Assert.Equal(code, await client.ErrorOfAsync(method, parameters));
        await AssertLives(client);
    }

    /// <summary>What is said names the method asked for and nothing of the inside.</summary>
    [Theory]
    [InlineData("null")]
    [InlineData(null)]
    [InlineData("[]")]
    public async Task Parameters_that_are_missing_are_asked_for(string? parameters)
    {
        await using var client = await TestClient.InitializedAsync();
        Assert.Equal("textDocument/hover needs its parameters, as an object.", (string?)(await client.AskAsync("textDocument/hover", parameters))["error"]!["message"]);
    }

    /// <summary>JSON-RPC 2.0 §5.1 and the examples of §7: what is no JSON is a parse error, JSON that is no request an invalid request.</summary>
    [Theory]
    [InlineData("{", -32700)]
    [InlineData("""{"jsonrpc": "2.0", "method": "foobar, "params": "bar", "baz]""", -32700)]
    [InlineData("[]", -32600)]
    [InlineData("[1]", -32600)]
    [InlineData("7", -32600)]
    [InlineData("null", -32600)]
    [InlineData("{}", -32600)]
    [InlineData("""{"foo":"boo"}""", -32600)]
    [InlineData("""{"jsonrpc":"2.0","id":{},"method":"shutdown"}""", -32600)]
    [InlineData("""{"jsonrpc":"2.0","id":1.5,"method":"shutdown"}""", -32600)]
    [InlineData("""{"jsonrpc": "2.0", "method": 1, "params": "bar"}""", -32600)]
    [InlineData("""{"jsonrpc":"2.0","error":{}}""", -32600)]
    [InlineData("""{"jsonrpc":"2.0","error":7}""", -32600)]
    public async Task A_message_that_cannot_be_read_gets_its_error(string message, int code)
    {
        await using var client = await TestClient.InitializedAsync();
        var answer = await client.AnswerAsync("null", message);
        Assert.Equal(code, (int)answer["error"]!["code"]!);
        await AssertLives(client);
    }

    [Theory]
    [InlineData("""{"jsonrpc":"2.0","id":99,"result":null}""")]
    [InlineData("""{"jsonrpc":"2.0","id":"x","error":{"code":1,"message":"no"}}""")]
    [InlineData("""{"jsonrpc":"2.0","result":null}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"no/such/notification","params":{}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"\ud800"}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"$/progress","params":{}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"$/cancelRequest","params":{"id":99}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"$/cancelRequest","params":{"id":{}}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"$/cancelRequest"}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"textDocument/didOpen"}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"textDocument/didChange","params":{"textDocument":{"uri":"file:///other.nc","version":2},"contentChanges":[]}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"textDocument/didClose","params":{"textDocument":{"uri":"file:///other.nc"}}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"textDocument/didChange","params":{"textDocument":{"uri":"","version":2},"contentChanges":[]}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"textDocument/didClose","params":{"textDocument":{"uri":""}}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"workspace/didChangeWatchedFiles","params":{"changes":[{"uri":":::","type":1}]}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"workspace/didChangeConfiguration","params":{"settings":null}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"workspace/didChangeWatchedFiles","params":{"changes":[null]}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"workspace/didChangeWorkspaceFolders","params":{"event":{"added":[null],"removed":[null]}}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":"textDocument/didChange","params":{"textDocument":{"uri":"file:///part.nc","version":2},"contentChanges":[null]}}""")]
    [InlineData("""{"jsonrpc":"2.0","method":null}""")]
    public async Task An_odd_message_without_answer_is_survived(string message)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.SendAsync(message);
        await AssertLives(client);
    }

    [Fact]
    public async Task A_request_whose_id_is_text_or_null_is_answered_under_it()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G0 X1");
        var text = await client.AnswerAsync("one", """{"jsonrpc":"2.0","id":"one","method":"textDocument/documentSymbol","params":{"textDocument":{"uri":"file:///part.nc"}}}""");
        Assert.NotNull(text["result"]);
        var none = await client.AnswerAsync("null", """{"jsonrpc":"2.0","id":null,"method":"no/such/method"}""");
        Assert.Equal(-32601, (int)none["error"]!["code"]!);
    }

    [Fact]
    public async Task A_broken_header_ends_the_session_with_1()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.SendRawAsync(Encoding.ASCII.GetBytes("Content-Length: many\r\n\r\n{}"));
        Assert.Equal(1, await client.ExitCode.WaitAsync(TimeSpan.FromSeconds(10)));
        Assert.Contains("The connection broke: the Content-Length of a header is no number of bytes", client.ErrorLog.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_refused_change_is_told_in_the_log()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.ChangeAsync("file:///other.nc", 2, """{"text":""}""");
        var message = await client.NextAsync("window/logMessage");
        Assert.Equal(2, (int)message["type"]!);
        Assert.Matches("^textDocument/didChange was not taken: The document [0-9a-f]{8} is not open.$", (string?)message["message"]);
    }

    [Fact]
    public async Task Every_unsupported_request_is_method_not_found()
    {
        await using var client = await TestClient.InitializedAsync();
        foreach (var method in Unsupported.Reasons.Keys)
            Assert.Equal((method, -32601), (method, await client.ErrorOfAsync(method, "{}")));
    }

    /// <summary>Bytes of sound messages are overwritten, left out or doubled; the frame's length is kept right.</summary>
    [Fact]
    public void Damaged_messages_never_end_the_session()
    {
        string[] sound =
        [
            """{"jsonrpc":"2.0","id":7,"method":"textDocument/hover","params":{"textDocument":{"uri":"file:///part.nc"},"position":{"line":0,"character":1}}}""",
            """{"jsonrpc":"2.0","method":"textDocument/didChange","params":{"textDocument":{"uri":"file:///part.nc","version":2},"contentChanges":[{"range":{"start":{"line":0,"character":1},"end":{"line":0,"character":2}},"text":"\u00e9 \ud83d\ude00"}]}}""",
            """{"jsonrpc":"2.0","id":"x","method":"textDocument/codeAction","params":{"textDocument":{"uri":"file:///part.nc"},"range":{"start":{"line":0,"character":0},"end":{"line":9,"character":0}},"context":{"diagnostics":[],"only":["quickfix"]}}}""",
            """{"jsonrpc":"2.0","method":"$/cancelRequest","params":{"id":7}}""",
            """{"jsonrpc":"2.0","id":3,"result":{"a":[1,2,{"b":null}]}}""",
        ];
        var damage = Gen.Select(Gen.Int[0, 2], Gen.Int[0, 300], Gen.Byte).Array[1, 4];
        Gen.Select(Gen.OneOf(sound), damage).Array[1, 30].Sample(
            messages =>
            {
                Session(messages).GetAwaiter().GetResult();

                static async Task Session((string Message, (int Kind, int At, byte Value)[] Damage)[] messages)
                {
                    await using var client = await TestClient.InitializedAsync();
                    await client.OpenAsync(Uri, "G0 X1 (one)\nG1 X2");
                    foreach ((var message, (int, int, byte)[] damage) in messages)
                    {
                        var content = Damage(Encoding.UTF8.GetBytes(message), damage);
                        await client.SendRawAsync([.. Encoding.ASCII.GetBytes($"Content-Length: {content.Length}\r\n\r\n"), .. content]);
                    }
                    await AssertLives(client);
                }
            },
            iter: 60, threads: 1);
    }

    static byte[] Damage(byte[] content, (int Kind, int At, byte Value)[] damage)
    {
        List<byte> bytes = [.. content];
        foreach ((var kind, var at, var value) in damage)
        {
            var place = at % bytes.Count;
            if (kind == 0)
                bytes[place] = value;
            else if (kind == 1)
                bytes.RemoveAt(place);
            else
                bytes.Insert(place, bytes[place]);
        }
        return [.. bytes];
    }

    static async Task AssertLives(TestClient client)
    {
        await client.OpenAsync("file:///alive.nc", "G0 X1");
        Assert.NotNull(await client.RequestAsync("textDocument/documentSymbol", """{"textDocument":{"uri":"file:///alive.nc"}}"""));
    }
}
