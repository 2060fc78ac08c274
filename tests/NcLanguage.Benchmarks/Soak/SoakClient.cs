using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text;
using System.Text.Json.Nodes;

namespace NcLanguage.Benchmarks.Soak;

/// <summary>A server process spoken to over its pipes as an editor does: what it answers is read all the time, beside what is sent.</summary>
sealed class SoakClient : IDisposable
{
    readonly Process _process;
    readonly Stream _input;
    readonly ConcurrentDictionary<int, TaskCompletionSource<JsonNode>> _waiting = new();
    readonly ConcurrentDictionary<string, JsonNode> _findings = new();
    readonly SemaphoreSlim _published = new(0);
    int _id;

    public SoakClient(string executable)
    {
        _process = Process.Start(new ProcessStartInfo(executable, "serve") { RedirectStandardInput = true, RedirectStandardOutput = true })!;
        _input = _process.StandardInput.BaseStream;
        _ = Task.Run(() => Read(new BufferedStream(_process.StandardOutput.BaseStream, 1 << 16)));
    }

    /// <summary>Resident memory, MB.</summary>
    public double Memory
    {
        get
        {
            _process.Refresh();
            return _process.WorkingSet64 / 1e6;
        }
    }

    public bool HasExited => _process.HasExited;

    public int Unanswered => _waiting.Count;

    public async Task InitializeAsync()
    {
        // As editors do, it takes the second places of findings, which an edit far before them may change.
        var text = new JsonObject { ["publishDiagnostics"] = new JsonObject { ["relatedInformation"] = true, ["versionSupport"] = true } };
        await AskAsync("initialize", new JsonObject { ["processId"] = Environment.ProcessId, ["rootUri"] = null, ["capabilities"] = new JsonObject { ["textDocument"] = text } });
        await NotifyAsync("initialized", new JsonObject());
    }

    public Task NotifyAsync(string method, JsonNode? parameters) => SendAsync(new JsonObject { ["jsonrpc"] = "2.0", ["method"] = method, ["params"] = parameters });

    /// <summary>Sends a request; the task ends with the whole answer, result or error.</summary>
    public (int Id, Task<JsonNode> Answer) Begin(string method, JsonNode? parameters)
    {
        var id = Interlocked.Increment(ref _id);
        var answer = _waiting[id] = new TaskCompletionSource<JsonNode>(TaskCreationOptions.RunContinuationsAsynchronously);
        return (id, SendThenAsync());

        async Task<JsonNode> SendThenAsync()
        {
            await SendAsync(new JsonObject { ["jsonrpc"] = "2.0", ["id"] = id, ["method"] = method, ["params"] = parameters });
            return await answer.Task;
        }
    }

    public Task<JsonNode> AskAsync(string method, JsonNode? parameters) => Begin(method, parameters).Answer;

    /// <summary>Waits for the findings of a version, and gives them.</summary>
    public async Task<JsonNode> FindingsAsync(string uri, int version, TimeSpan longest)
    {
        var clock = Stopwatch.StartNew();
        while (true)
        {
            if (_findings.TryGetValue(uri, out var known) && (int?)known["version"] == version)
                return known["diagnostics"]!;
            if (clock.Elapsed > longest || !await _published.WaitAsync(longest))
                throw new TimeoutException($"no findings for version {version} within {longest.TotalSeconds:0} s");
        }
    }

    public async Task ExitAsync()
    {
        await AskAsync("shutdown", null);
        await NotifyAsync("exit", null);
        await _process.WaitForExitAsync();
    }

    public void Dispose()
    {
        if (!_process.HasExited)
            _process.Kill();
        _process.Dispose();
    }

    Task SendAsync(JsonObject message)
    {
        var body = Encoding.UTF8.GetBytes(message.ToJsonString());
        byte[] frame = [.. Encoding.ASCII.GetBytes($"Content-Length: {body.Length}\r\n\r\n"), .. body];
        lock (_input)
        {
            _input.Write(frame);
            _input.Flush();
        }
        return Task.CompletedTask;
    }

    void Read(Stream output)
    {
        while (ReadHeader(output) is { } length)
        {
            var body = new byte[length];
            output.ReadExactly(body);
            var message = JsonNode.Parse(body)!;
            if ((string?)message["method"] == "textDocument/publishDiagnostics")
            {
                _findings[(string)message["params"]!["uri"]!] = message["params"]!;
                _published.Release();
            }
            else if (message["method"] is null && message["id"] is { } id && _waiting.TryRemove((int)id, out var waiting))
                waiting.TrySetResult(message);
        }
        foreach (var waiting in _waiting.Values)
            waiting.TrySetException(new EndOfStreamException("The server ended."));
    }

    static int? ReadHeader(Stream output)
    {
        var header = new StringBuilder();
        while (!header.ToString().EndsWith("\r\n\r\n", StringComparison.Ordinal))
        {
            var next = output.ReadByte();
            if (next < 0)
                return null;
            header.Append((char)next);
        }
        return int.Parse(header.ToString().Split(':')[1].Trim());
    }
}
