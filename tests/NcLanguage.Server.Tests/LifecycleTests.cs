using System.Diagnostics;
using System.Text;
using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests;

/// <summary>LSP 3.17, "Server lifecycle": what may come when, and the exit codes.</summary>
public sealed class LifecycleTests
{
    [Fact]
    public async Task Initialize_names_the_server_and_what_it_can_do()
    {
        await using var client = new TestClient();
        var result = (await client.RequestAsync("initialize", """{"processId":null,"rootUri":null,"capabilities":{}}"""))!;
        Assert.Equal("nclanguage", (string?)result["serverInfo"]!["name"]);
        Assert.Matches(@"^\d+\.\d+\.\d+$", (string?)result["serverInfo"]!["version"]);
        var capabilities = result["capabilities"]!;
        Assert.Equal("utf-16", (string?)capabilities["positionEncoding"]);
        Assert.Equal(2, (int)capabilities["textDocumentSync"]!["change"]!);
        Assert.True((bool)capabilities["hoverProvider"]!);
        Assert.True((bool)capabilities["inlayHintProvider"]!["resolveProvider"]!);
        Assert.True((bool)capabilities["documentSymbolProvider"]!);
        Assert.Equal("""["quickfix","source.fixAll","source.renumber","source.removeNumbers","refactor.rewrite","source.convertUnits","source.returnLevels","refactor.inline","refactor.extract"]""", capabilities["codeActionProvider"]!["codeActionKinds"]!.ToJsonString());
    }

    [Theory]
    [InlineData("""["utf-8","utf-16"]""", "utf-8")]
    [InlineData("""["utf-32","utf-16"]""", "utf-16")]
    [InlineData("[]", "utf-16")]
    public async Task The_position_encoding_is_negotiated(string offered, string chosen)
    {
        await using var client = new TestClient();
        var result = (await client.RequestAsync("initialize", """{"processId":null,"rootUri":null,"capabilities":{"general":{"positionEncodings":""" + offered + "}}}"))!;
        Assert.Equal(chosen, (string?)result["capabilities"]!["positionEncoding"]);
    }

    /// <summary>As a script does: all is written, and the end closed, before the first answer is read.</summary>
    [Fact]
    public async Task A_whole_session_in_one_go_is_answered_and_ends_in_order()
    {
        string[] messages =
        [
            """{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"processId":null,"rootUri":null,"capabilities":{}}}""",
            """{"jsonrpc":"2.0","method":"initialized","params":{}}""",
            """{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":"file:///job/a.nc","languageId":"nc","version":1,"text":"G0 X1\nM30\n"}}}""",
            """{"jsonrpc":"2.0","id":2,"method":"textDocument/hover","params":{"textDocument":{"uri":"file:///job/a.nc"},"position":{"line":0,"character":0}}}""",
            """{"jsonrpc":"2.0","id":3,"method":"shutdown"}""",
            """{"jsonrpc":"2.0","method":"exit"}""",
        ];
        var all = Encoding.ASCII.GetBytes(string.Concat(messages.Select(message => $"Content-Length: {message.Length}\r\n\r\n{message}")));
        for (var i = 0; i < 20; i++)
        {
            using var input = new MemoryStream(all);
            using var output = new MemoryStream();
            using var errors = new StringWriter();
            Assert.Equal(0, await LanguageServer.RunAsync(input, output, new LanguageServerOptions { ErrorLog = errors, Files = new TestFiles() }).WaitAsync(TimeSpan.FromSeconds(20)));
            var answers = Encoding.UTF8.GetString(output.ToArray());
            Assert.All([1, 2, 3], id => Assert.Contains($"\"id\":{id}", answers, StringComparison.Ordinal));
            Assert.Equal("", errors.ToString());
        }
    }

    [Fact]
    public async Task Exit_after_shutdown_is_0()
    {
        await using var client = await TestClient.InitializedAsync();
        Assert.Null(await client.RequestAsync("shutdown", null));
        await client.NotifyAsync("exit", null);
        Assert.Equal(0, await client.ExitCode.WaitAsync(TimeSpan.FromSeconds(10)));
    }

    [Fact]
    public async Task Exit_without_shutdown_is_1()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.NotifyAsync("exit", null);
        Assert.Equal(1, await client.ExitCode.WaitAsync(TimeSpan.FromSeconds(10)));
    }

    [Fact]
    public async Task Exit_before_initialize_is_1()
    {
        await using var client = new TestClient();
        await client.NotifyAsync("exit", null);
        Assert.Equal(1, await client.ExitCode.WaitAsync(TimeSpan.FromSeconds(10)));
    }

    [Fact]
    public async Task An_ended_stream_is_1()
    {
        var client = await TestClient.InitializedAsync();
        client.HangUp();
        Assert.Equal(1, await client.ExitCode.WaitAsync(TimeSpan.FromSeconds(10)));
    }

    [Fact]
    public async Task The_end_of_the_clients_process_is_1()
    {
        using var editor = Process.Start(new ProcessStartInfo("sleep", "1000"))!;
        await using var client = await TestClient.InitializedAsync(more: $",\"processId\":{editor.Id}");
        await Task.Delay(300);
        Assert.False(client.ExitCode.IsCompleted);
        editor.Kill();
        await editor.WaitForExitAsync();
        Assert.Equal(1, await client.ExitCode.WaitAsync(TimeSpan.FromSeconds(10)));
    }

    [Fact]
    public async Task Requests_before_initialize_are_refused_and_notifications_dropped()
    {
        await using var client = new TestClient();
        Assert.Equal(-32002, await client.ErrorOfAsync("shutdown", null));
        Assert.Equal(-32002, await client.ErrorOfAsync("textDocument/hover", "{}"));
        Assert.Equal(-32002, await client.ErrorOfAsync("no/such/method", null));
        await client.OpenAsync("file:///a.nc", "G0");
        await client.RequestAsync("initialize", """{"processId":null,"rootUri":null,"capabilities":{}}""");
        Assert.Equal(-32602, await client.ErrorOfAsync("textDocument/documentSymbol", """{"textDocument":{"uri":"file:///a.nc"}}"""));
    }

    [Fact]
    public async Task A_second_initialize_is_refused()
    {
        await using var client = await TestClient.InitializedAsync();
        Assert.Equal(-32600, await client.ErrorOfAsync("initialize", """{"processId":null,"rootUri":null,"capabilities":{}}"""));
    }

    [Fact]
    public async Task An_initialize_that_cannot_be_read_may_be_repeated()
    {
        await using var client = new TestClient();
        Assert.Equal(-32602, await client.ErrorOfAsync("initialize", """{"processId":"no number"}"""));
        Assert.NotNull(await client.RequestAsync("initialize", """{"processId":null,"rootUri":null,"capabilities":{}}"""));
    }

    [Fact]
    public async Task After_shutdown_requests_are_refused_and_notifications_dropped()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.RequestAsync("shutdown", null);
        Assert.Equal(-32600, await client.ErrorOfAsync("textDocument/hover", "{}"));
        await client.OpenAsync("file:///a.nc", "G0");
        Assert.Equal(-32600, await client.ErrorOfAsync("shutdown", null));
        Assert.DoesNotContain(client.Log, message => (string?)message["method"] == "textDocument/publishDiagnostics");
    }
}
