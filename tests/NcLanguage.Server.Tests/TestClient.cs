using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Threading.Channels;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Files;
using Nerdbank.Streams;

namespace NcLanguage.Server.Tests;

/// <summary>A client that writes frames by hand and sorts what comes back: answers by id, all else in a queue. It shares no code with the server's transport.</summary>
sealed class TestClient : IAsyncDisposable
{
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(120);
    readonly Stream _stream;
    readonly SemaphoreSlim _turn = new(1);
    readonly Channel<JsonNode> _fromServer = Channel.CreateUnbounded<JsonNode>();
    readonly Dictionary<string, TaskCompletionSource<JsonNode>> _waiting = [];
    readonly List<JsonNode> _log = [];
    readonly List<JsonNode> _kept = [];
    readonly ConcurrentDictionary<string, (string Method, JsonNode? Parameters)> _asked = new();
    readonly ConcurrentQueue<string> _faults = new();
    volatile TaskCompletionSource? _stopped;
    int _lastId;
    int _answers;

    public TestClient(IFileAccess? files = null, Func<string>? writeReference = null, IPages? pages = null, RuleSet? rules = null)
    {
        (var client, var server) = FullDuplexStream.CreatePair();
        _stream = client;
        ExitCode = LanguageServer.RunAsync(server, server, new LanguageServerOptions { ErrorLog = ErrorLog, Files = files ?? new TestFiles(), WriteReference = writeReference, Pages = pages, Analysis = new AnalysisOptions(MostBlocks: AnalysisOptions.MostBlocksWhileTyping, Rules: rules) });
        _ = Task.Run(ReadAsync);
    }

    /// <summary>A client of a server that runs elsewhere, at the other end of the stream.</summary>
    public TestClient(Stream stream, Task<int> exitCode)
    {
        _stream = stream;
        ExitCode = exitCode;
        _ = Task.Run(ReadAsync);
    }

    public Task<int> ExitCode { get; }

    public StringWriter ErrorLog { get; } = new();

    public static async Task<TestClient> InitializedAsync(string capabilities = "{}", string more = "", IFileAccess? files = null, Func<string>? writeReference = null, IPages? pages = null, RuleSet? rules = null)
    {
        var client = new TestClient(files, writeReference, pages, rules);
        await client.RequestAsync("initialize", $$"""{"processId":null,"rootUri":null,"capabilities":{{capabilities}}{{more}}}""");
        await client.NotifyAsync("initialized", "{}");
        return client;
    }

    /// <summary>Sends a request and gives its result; fails on an error.</summary>
    public async Task<JsonNode?> RequestAsync(string method, string? parameters)
    {
        var answer = await AskAsync(method, parameters);
        Assert.True(answer["error"] is null, answer.ToJsonString());
        Assert.True(answer.AsObject().ContainsKey("result"), answer.ToJsonString());
        return answer["result"];
    }

    /// <summary>Sends a request and gives its error's code; fails on a result.</summary>
    public async Task<int> ErrorOfAsync(string method, string? parameters)
    {
        var answer = await AskAsync(method, parameters);
        Assert.True(answer["error"] is not null, answer.ToJsonString());
        Assert.DoesNotContain("   at ", answer.ToJsonString(), StringComparison.Ordinal);
        return (int)answer["error"]!["code"]!;
    }

    public Task<JsonNode> AskAsync(string method, string? parameters) => BeginAsync(method, parameters).Answer;

    /// <summary>Sends a request without waiting for its answer.</summary>
    public (int Id, Task<JsonNode> Answer) BeginAsync(string method, string? parameters)
    {
        var id = Interlocked.Increment(ref _lastId);
        return (id, AnswerAsync(id.ToString(CultureInfo.InvariantCulture), $$"""{"jsonrpc":"2.0","id":{{id}},"method":"{{method}}"{{(parameters is null ? "" : ",\"params\":" + parameters)}}}"""));
    }

    public Task NotifyAsync(string method, string? parameters) =>
        SendAsync($$"""{"jsonrpc":"2.0","method":"{{method}}"{{(parameters is null ? "" : ",\"params\":" + parameters)}}}""");

    /// <summary>Sends a frame as it is and waits for the answer with this id (null: the JSON null).</summary>
    public async Task<JsonNode> AnswerAsync(string id, string message)
    {
        var answer = new TaskCompletionSource<JsonNode>(TaskCreationOptions.RunContinuationsAsynchronously);
        lock (_waiting)
            _waiting[id] = answer;
        if (RequestIn(message) is { } request)
            _asked[id] = request;
        await SendAsync(message);
        return await answer.Task.WaitAsync(Patience);
    }

    public async Task SendAsync(string message)
    {
        var content = Encoding.UTF8.GetBytes(message);
        await SendRawAsync([.. Encoding.ASCII.GetBytes($"Content-Length: {content.Length}\r\n\r\n"), .. content]);
    }

    public async Task SendRawAsync(byte[] bytes)
    {
        // One after the other, in the order of the calls: a stream takes no second write while it has no room for the first.
        await _turn.WaitAsync();
        try
        {
            await _stream.WriteAsync(bytes);
            await _stream.FlushAsync();
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <summary>The parameters of the next message of this method that the server sends on its own. Others are kept for whoever asks for them.</summary>
    public Task<JsonNode> NextAsync(string method) => NextAsync(method, _ => true);

    /// <summary>The next findings published for this version of a document (null: without version).</summary>
    public Task<JsonNode> DiagnosticsAsync(string uri, int? version) =>
        NextAsync("textDocument/publishDiagnostics", published => (string?)published["uri"] == uri && (int?)published["version"] == version);

    /// <summary>The same, of those whose parameters are wanted.</summary>
    public async Task<JsonNode> NextAsync(string method, Func<JsonNode, bool> isWanted)
    {
        using var patience = new CancellationTokenSource(Patience);
        int found;
        while ((found = _kept.FindIndex(message => (string?)message["method"] == method && isWanted(message["params"]!))) < 0)
            _kept.Add(await _fromServer.Reader.ReadAsync(patience.Token));
        var parameters = _kept[found]["params"]!;
        _kept.RemoveAt(found);
        return parameters;
    }

    /// <summary>Everything the server has sent so far, in order.</summary>
    public IReadOnlyList<JsonNode> Log
    {
        get { lock (_log) return [.. _log]; }
    }

    /// <summary>What a client says that takes code actions with edits of their own, and resolves none.</summary>
    public const string Literals = """{"textDocument":{"codeAction":{"codeActionLiteralSupport":{"codeActionKind":{"valueSet":["quickfix"]}}}}}""";

    public static string Quote(string text) => "\"" + JsonEncodedText.Encode(text) + "\"";

    public Task OpenAsync(string uri, string text, int version = 1) => NotifyAsync(
        "textDocument/didOpen", $$"""{"textDocument":{"uri":"{{uri}}","languageId":"nc","version":{{version}},"text":{{Quote(text)}} } }""");

    public Task ChangeAsync(string uri, int version, params string[] changes) => NotifyAsync(
        "textDocument/didChange", $$"""{"textDocument":{"uri":"{{uri}}","version":{{version}}},"contentChanges":[{{string.Join(",", changes)}}]}""");

    public static string Insert(int line, int character, string text) => Replace(line, character, line, character, text);

    public static string Replace(int line, int character, int endLine, int endCharacter, string text) =>
        $$"""{"range":{"start":{{At(line, character)}},"end":{{At(endLine, endCharacter)}} },"text":{{Quote(text)}} }""";

    /// <summary>A change that gives the whole text.</summary>
    public static string Whole(string text) => "{\"text\":" + Quote(text) + "}";

    public static string At(int line, int character) => $$"""{"line":{{line}},"character":{{character}} }""";

    /// <summary>Ends the stream, and fails where the server has sent what the protocol does not know.</summary>
    public ValueTask DisposeAsync()
    {
        _stream.Dispose();
        Assert.True(_faults.IsEmpty, string.Join("\n", _faults));
        return ValueTask.CompletedTask;
    }

    void Hold(string method, string part, JsonNode? value)
    {
        try
        {
            if (ProtocolSchema.Fault(method, part, value) is { } fault)
                _faults.Enqueue(fault);
        }
        catch (Exception e)
        {
            _faults.Enqueue($"{method} {part} could not be judged: {e}");
        }
    }

    // What a test sends may be no JSON at all.
    static (string Method, JsonNode? Parameters)? RequestIn(string message)
    {
        try
        {
            return JsonNode.Parse(message) is JsonObject request && request["method"] is JsonValue value && value.TryGetValue(out string? method)
                ? (method, request["params"]?.DeepClone())
                : null;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            return null;
        }
    }

    /// <summary>Reads nothing any more but the header of the next message, until told to go on.</summary>
    public void StopReading() => _stopped = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);

    public void GoOnReading()
    {
        var stopped = _stopped;
        _stopped = null;
        stopped?.TrySetResult();
    }

    /// <summary>How many answers have come so far.</summary>
    public int AnswerCount => Volatile.Read(ref _answers);

    /// <summary>Ends the stream as a client that dies does.</summary>
    public void HangUp() => _stream.Dispose();

    async Task ReadAsync()
    {
        try
        {
            while (await ReadHeaderAsync() is { } length)
            {
                if (_stopped is { } stopped)
                    await stopped.Task;
                var content = new byte[length];
                await _stream.ReadExactlyAsync(content);
                var message = JsonNode.Parse(content)!;
                lock (_log)
                    _log.Add(message);
                if (message["method"] is { } method)
                {
                    Hold((string)method!, "params", message["params"]);
                    _fromServer.Writer.TryWrite(message);
                    continue;
                }
                Interlocked.Increment(ref _answers);
                var id = message["id"]?.ToJsonString().Trim('"') ?? "null";
                TaskCompletionSource<JsonNode>? waiting;
                lock (_waiting)
                    _waiting.Remove(id, out waiting);
                if (message.AsObject().ContainsKey("result") && _asked.TryRemove(id, out var asked))
                {
                    Hold(asked.Method, "params", asked.Parameters);
                    Hold(asked.Method, "result", message["result"]);
                }
                waiting?.TrySetResult(message);
            }
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException)
        {
            _fromServer.Writer.TryComplete();
        }
    }

    async Task<int?> ReadHeaderAsync()
    {
        var header = new StringBuilder();
        var one = new byte[1];
        while (!header.ToString().EndsWith("\r\n\r\n", StringComparison.Ordinal))
        {
            if (await _stream.ReadAsync(one) == 0)
                return null;
            header.Append((char)one[0]);
        }
        var line = header.ToString().Split("\r\n").Single(l => l.StartsWith("Content-Length:", StringComparison.OrdinalIgnoreCase));
        return int.Parse(line.Split(':')[1], CultureInfo.InvariantCulture);
    }
}
