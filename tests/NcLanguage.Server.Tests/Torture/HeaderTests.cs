using System.Text;
using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests.Torture;

/// <summary>LSP 3.17, "Base Protocol, Header Part": fields end with \r\n, an empty line ends the header, Content-Length is required, and a content in
/// another encoding than utf-8 is answered with an error.</summary>
public sealed class HeaderTests
{
    const string Unknown = """{"jsonrpc":"2.0","id":7,"method":"no/such/method"}""";

    [Theory]
    [InlineData("Content-Type: application/vscode-jsonrpc\r\n\r\n{}")]
    [InlineData("Content-Length: -5\r\n\r\n{}")]
    [InlineData("Content-Length: +2\r\n\r\n{}")]
    [InlineData("Content-Length: many\r\n\r\n{}")]
    [InlineData("Content-Length: \r\n\r\n{}")]
    [InlineData("Content-Length: 0x10\r\n\r\n{}")]
    [InlineData("Content-Length: 2.5\r\n\r\n{}")]
    [InlineData("Content-Length: 2 3\r\n\r\n{}")]
    [InlineData("Content-Length: 99999999999999999999\r\n\r\n{}")]
    [InlineData("Content-Length: 2\r\nContent-Length: 3\r\n\r\n{}")]
    [InlineData("Content-Length 2\r\n\r\n{}")]
    [InlineData(": 2\r\n\r\n{}")]
    [InlineData("\r\n\r\n{}")]
    [InlineData("garbage between\r\n\r\n")]
    [InlineData("{}\r\nContent-Length: 2\r\n\r\n{}")]
    [InlineData("ÿþ\0\u0001\r\n\r\n")]
    public async Task A_header_that_is_none_ends_the_session_with_1_and_one_line(string bytes)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.SendRawAsync(Encoding.Latin1.GetBytes(bytes));
        await AssertBroken(client);
    }

    [Theory]
    [InlineData("Content-Length: 50\r\n", "{\"a\":1}\n")]
    [InlineData("Content-Length: 50\n\n", "{\"a\":1}\n")]
    [InlineData("", "\0")]
    public async Task A_header_without_end_is_given_up_after_some_thousand_bytes(string header, string repeated)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.SendRawAsync(Encoding.Latin1.GetBytes(header + string.Concat(Enumerable.Repeat(repeated, 5000))));
        await AssertBroken(client);
    }

    [Theory]
    [InlineData("content-length: {0}\r\n\r\n")]
    [InlineData("CONTENT-LENGTH:{0}\r\nX-Other: of no meaning\r\n\r\n")]
    [InlineData("Content-Type: application/vscode-jsonrpc; charset=utf-8\r\nContent-Length:   {0} \r\n\r\n")]
    [InlineData("Content-Length: {0}\r\nContent-Type: application/vscode-jsonrpc; charset=utf8\r\n\r\n")]
    [InlineData("Content-Length: {0}\r\nContent-Type: application/vscode-jsonrpc; charset=\"UTF-8\"\r\n\r\n")]
    [InlineData("Content-Length: {0}\r\nContent-Type: application/vscode-jsonrpc\r\n\r\n")]
    public async Task A_header_may_be_written_in_several_ways(string header)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.SendRawAsync(Encoding.ASCII.GetBytes(header.Replace("{0}", $"{Unknown.Length}", StringComparison.Ordinal) + Unknown));
        await Eventually(() => CodeOf(client, "7") == -32601);
    }

    [Fact]
    public async Task A_message_may_come_byte_by_byte()
    {
        await using var client = await TestClient.InitializedAsync();
        foreach (var one in Encoding.ASCII.GetBytes($"Content-Length: {Unknown.Length}\r\n\r\n{Unknown}"))
            await client.SendRawAsync([one]);
        await Eventually(() => CodeOf(client, "7") == -32601);
    }

    [Fact]
    public async Task Another_encoding_is_an_error_and_what_follows_is_read()
    {
        await using var client = await TestClient.InitializedAsync();
        var content = Encoding.Unicode.GetBytes(Unknown);
        await client.SendRawAsync([.. Encoding.ASCII.GetBytes($"Content-Length: {content.Length}\r\nContent-Type: application/vscode-jsonrpc; charset=utf-16\r\n\r\n"), .. content]);
        await Eventually(() => CodeOf(client, null) == -32600);
        Assert.Equal(-32601, await client.ErrorOfAsync("no/such/method", "{}"));
    }

    [Fact]
    public async Task An_empty_message_is_an_error_and_what_follows_is_read()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.SendRawAsync("Content-Length: 0\r\n\r\n"u8.ToArray());
        await Eventually(() => CodeOf(client, null) == -32600);
        Assert.Equal(-32601, await client.ErrorOfAsync("no/such/method", "{}"));
    }

    [Theory]
    [InlineData("Content-Len")]
    [InlineData("Content-Length: 50\r\n\r\n{\"jsonrpc\"")]
    [InlineData("Content-Length: 5000000000\r\n\r\n{\"jsonrpc\"")]
    public async Task A_client_that_vanishes_amid_a_message_ends_the_session_with_1(string bytes)
    {
        var client = await TestClient.InitializedAsync();
        await client.SendRawAsync(Encoding.ASCII.GetBytes(bytes));
        client.HangUp();
        Assert.Equal(1, await client.ExitCode.WaitAsync(TimeSpan.FromSeconds(60)));
    }

    internal static int? CodeOf(TestClient client, string? id) =>
        client.Log.Where(message => message["method"] is null && message["id"]?.ToJsonString() == id).Select(message => (int?)message["error"]?["code"]).LastOrDefault();

    static async Task AssertBroken(TestClient client)
    {
        Assert.Equal(1, await client.ExitCode.WaitAsync(TimeSpan.FromSeconds(60)));
        var line = Assert.Single(client.ErrorLog.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("The connection broke", line, StringComparison.Ordinal);
    }

    internal static async Task Eventually(Func<bool> isSo)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(120));
        while (!isSo())
            await Task.Delay(10, patience.Token);
    }
}
