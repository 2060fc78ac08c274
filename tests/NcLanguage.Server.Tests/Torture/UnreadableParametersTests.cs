namespace NcLanguage.Server.Tests.Torture;

/// <summary>Parameters that cannot be read get −32602 (JSON-RPC 2.0 section 5.1, "Invalid params"), which says where in them what is wrong, and nothing of the server's own types.</summary>
public sealed class UnreadableParametersTests
{
    const string Uri = "file:///part.nc";
    const string Document = $$""" "textDocument":{"uri":"{{Uri}}"} """;
    const string Kind = "is not what may stand there";
    const string Range = "is not a whole number of the range that may stand there";

    [Theory]
    [InlineData("textDocument/hover", "{}", "$.textDocument, $.position are missing")]
    [InlineData("textDocument/hover", $"{{{Document}}}", "$.position is missing")]
    [InlineData("textDocument/hover", $$$"""{{{{Document}}},"position":{"character":0}}""", "$.position.line is missing")]
    [InlineData("textDocument/hover", $$$"""{{{{Document}}},"position":{}}""", "$.position.line, $.position.character are missing")]
    [InlineData("textDocument/hover", $$$"""{{{{Document}}},"position":{"line":"0","character":0}}""", $"$.position.line {Kind}")]
    [InlineData("textDocument/hover", $$$"""{{{{Document}}},"position":{"line":null,"character":0}}""", $"$.position.line {Kind}")]
    [InlineData("textDocument/hover", $$$"""{{{{Document}}},"position":{"line":-1,"character":0}}""", $"$.position.line {Range}")]
    [InlineData("textDocument/hover", $$$"""{{{{Document}}},"position":{"line":1.5,"character":0}}""", $"$.position.line {Range}")]
    [InlineData("textDocument/hover", $$$"""{{{{Document}}},"position":{"line":0,"character":4294967296}}""", $"$.position.character {Range}")]
    [InlineData("textDocument/hover", $$$"""{{{{Document}}},"position":[0,0]}""", $"$.position {Kind}")]
    [InlineData("textDocument/hover", """{"textDocument":{},"position":{"line":0,"character":0}}""", "$.textDocument.uri is missing")]
    [InlineData("textDocument/hover", """{"textDocument":{"uri":null},"position":{"line":0,"character":0}}""", $"$.textDocument.uri {Kind}")]
    [InlineData("textDocument/hover", """{"textDocument":{"uri":5},"position":{"line":0,"character":0}}""", $"$.textDocument.uri {Kind}")]
    [InlineData("textDocument/hover", """{"textDocument":null,"position":{"line":0,"character":0}}""", $"$.textDocument {Kind}")]
    [InlineData("textDocument/inlayHint", $$$"""{{{{Document}}},"range":7}""", $"$.range {Kind}")]
    [InlineData("textDocument/inlayHint", $$$"""{{{{Document}}},"range":{"start":{"line":0,"character":0} } }""", "$.range.end is missing")]
    [InlineData("textDocument/selectionRange", $$$"""{{{{Document}}},"positions":{}}""", $"$.positions {Kind}")]
    [InlineData("textDocument/selectionRange", $$$"""{{{{Document}}},"positions":[{"line":0,"character":0},{"line":0}]}""", "$.positions[1].character is missing")]
    [InlineData("textDocument/rename", $$$"""{{{{Document}}},"position":{"line":0,"character":0},"newName":["O1"]}""", $"$.newName {Kind}")]
    [InlineData("textDocument/codeAction", $$$"""{{{{Document}}},"range":{"start":{"line":0,"character":0},"end":{"line":true,"character":0} } }""", $"$.range.end.line {Kind}")]
    [InlineData("textDocument/references", $$$"""{{{{Document}}},"position":{"line":0,"character":0}}""", "$.context is missing")]
    [InlineData("callHierarchy/incomingCalls", """{"item":{"name":"O1"}}""", null)]
    [InlineData("workspace/symbol", """{"query":1}""", $"$.query {Kind}")]
    [InlineData("workspace/executeCommand", "{}", "$.command is missing")]
    [InlineData("codeAction/resolve", """{"kind":"quickfix"}""", "$.title is missing")]
    [InlineData("nclanguage/stateAt", $$$"""{{{{Document}}},"position":{"line":1e300,"character":0}}""", $"$.position.line {Range}")]
    [InlineData("initialize", """{"processId":"no number"}""", $"$.processId {Kind}")]
    [InlineData("initialize", """{"processId":99999999999}""", $"$.processId {Range}")]
    public async Task What_is_wrong_is_told_with_its_place(string method, string parameters, string? expected)
    {
        await using var client = method == "initialize" ? new TestClient() : await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G0 X1");
        var error = (await client.AskAsync(method, parameters))["error"]!;
        Assert.Equal(-32602, (int)error["code"]!);
        if (expected is null)
            Assert.Matches($@"^{method}: these parameters cannot be read: (\$\.item\.\w+, )+\$\.item\.\w+ are missing\.$", (string?)error["message"]);
        else
            Assert.Equal($"{method}: these parameters cannot be read: {expected}.", (string?)error["message"]);
    }

    /// <summary>JSON that is none of the protocol's messages: the library would name its types and methods.</summary>
    [Theory]
    [InlineData("""{"jsonrpc":"2.0","id":{},"method":"textDocument/hover","params":{}}""")]
    [InlineData("""{"jsonrpc":"2.0","id":1.5,"method":"textDocument/hover","params":{}}""")]
    [InlineData("[]")]
    [InlineData("7")]
    [InlineData("{}")]
    public async Task A_message_that_is_none_is_told_in_the_protocols_words(string message)
    {
        await using var client = await TestClient.InitializedAsync();
        var error = (await client.AnswerAsync("null", message))["error"]!;
        Assert.Equal(-32600, (int)error["code"]!);
        Assert.Equal("The message could not be read: it is no request, notification or answer by JSON-RPC 2.0, or nested deeper than 64 levels.", (string?)error["message"]);
    }

    [Theory]
    [InlineData("""{"textDocument":{"uri":"file:///part.nc","version":"2"},"contentChanges":[]}""", $"$.textDocument.version {Kind}")]
    [InlineData("""{"textDocument":{"uri":"file:///part.nc","version":2}}""", "$.contentChanges is missing")]
    [InlineData("""{"textDocument":{"uri":"file:///part.nc","version":2},"contentChanges":[{"range":{"start":{"line":0,"character":0},"end":{"line":0}},"text":""}]}""", "$.contentChanges[0].range.end.character is missing")]
    [InlineData("""{"textDocument":{"uri":"file:///part.nc","version":2},"contentChanges":[{"text":["secret"]}]}""", $"$.contentChanges[0].text {Kind}")]
    public async Task Of_a_notification_the_log_tells_it(string parameters, string expected)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G0 X1");
        await client.NotifyAsync("textDocument/didChange", parameters);
        Assert.Equal($"textDocument/didChange was not taken: these parameters cannot be read: {expected}.", (string?)(await client.NextAsync("window/logMessage"))["message"]);
    }
}
