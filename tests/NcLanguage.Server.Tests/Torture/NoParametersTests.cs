using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests.Torture;

/// <summary>LSP 3.17, "Server lifecycle": shutdown and exit have no parameters, initialized an object without members. Clients send null, an object or a row there, and whatever it is, it says nothing.</summary>
public sealed class NoParametersTests
{
    public static TheoryData<string> Shapes =>
    [
        "", ",\"params\":null", ",\"params\":{}", ",\"params\":[]", ",\"params\":[null]", ",\"params\":{\"a\":[1]}", ",\"params\":[1,{}]", ",\"params\":7", ",\"params\":\"x\"", ",\"params\":true",
        // Deeper than the 64 levels that messages are read to.
        $",\"params\":{new string('[', 100)}{new string(']', 100)}",
    ];

    [Theory]
    [MemberData(nameof(Shapes))]
    public async Task A_shutdown_is_answered_with_null_and_counts_whatever_stands_in_it(string shape)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.SendAsync($$"""{"jsonrpc":"2.0","id":"end","method":"shutdown"{{shape}}}""");
        var answer = await AnswerAsync(client, "end");
        Assert.True(answer.ContainsKey("result") && answer["result"] is null, answer.ToJsonString());
        Assert.Equal(-32600, await client.ErrorOfAsync("textDocument/hover", "{}"));
        await client.NotifyAsync("exit", null);
        Assert.Equal(0, await client.ExitCode.WaitAsync(TimeSpan.FromSeconds(60)));
        Assert.Equal("", client.ErrorLog.ToString());
    }

    [Theory]
    [MemberData(nameof(Shapes))]
    public async Task An_exit_ends_the_server_whatever_stands_in_it(string shape)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.RequestAsync("shutdown", null);
        await client.SendAsync($$"""{"jsonrpc":"2.0","method":"exit"{{shape}}}""");
        Assert.Equal(0, await client.ExitCode.WaitAsync(TimeSpan.FromSeconds(60)));
    }

    [Theory]
    [InlineData("7")]
    [InlineData("null")]
    [InlineData("{}")]
    [InlineData("1.5")]
    public async Task An_exit_that_is_sent_as_a_request_ends_it_too(string id)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.SendAsync($$"""{"jsonrpc":"2.0","id":{{id}},"method":"exit"}""");
        Assert.Equal(1, await client.ExitCode.WaitAsync(TimeSpan.FromSeconds(60)));
    }

    /// <summary>A shutdown whose id cannot be read could not be answered: it is refused, and does not count.</summary>
    [Fact]
    public async Task A_shutdown_whose_id_is_none_does_not_count()
    {
        await using var client = await TestClient.InitializedAsync();
        Assert.Equal(-32600, (int)(await client.AnswerAsync("null", """{"jsonrpc":"2.0","id":{},"method":"shutdown","params":7}"""))["error"]!["code"]!);
        await client.OpenAsync("file:///part.nc", "G0 X1");
        Assert.NotNull(await client.RequestAsync("textDocument/documentSymbol", """{"textDocument":{"uri":"file:///part.nc"}}"""));
    }

    [Theory]
    [MemberData(nameof(Shapes))]
    public async Task What_follows_initialized_happens_whatever_stands_in_it(string shape)
    {
        await using var client = new TestClient();
        await client.RequestAsync("initialize", """{"processId":null,"rootUri":null,"capabilities":{"workspace":{"didChangeWatchedFiles":{"dynamicRegistration":true}}}}""");
        await client.SendAsync($$"""{"jsonrpc":"2.0","method":"initialized"{{shape}}}""");
        Assert.NotNull(await client.NextAsync("client/registerCapability"));
    }

    /// <summary>Without them it says nothing: the user would wonder why nothing happens.</summary>
    [Theory]
    [InlineData("")]
    [InlineData(",\"params\":null")]
    [InlineData(",\"params\":[]")]
    public async Task A_notification_without_the_parameters_it_needs_is_told_in_the_log(string shape)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.SendAsync($$"""{"jsonrpc":"2.0","method":"textDocument/didOpen"{{shape}}}""");
        Assert.Equal("textDocument/didOpen was not taken: it needs its parameters, as an object.", (string?)(await client.NextAsync("window/logMessage"))["message"]);
    }

    // Not by the client's own bookkeeping: that holds what it asks against the protocol.
    static async Task<JsonObject> AnswerAsync(TestClient client, string id)
    {
        JsonNode? answer = null;
        await HeaderTests.Eventually(() => (answer = client.Log.FirstOrDefault(message => message["method"] is null && message["id"]?.ToJsonString().Trim('"') == id)) is not null);
        return answer!.AsObject();
    }
}
