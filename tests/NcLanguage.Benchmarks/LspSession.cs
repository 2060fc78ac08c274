using System.Diagnostics;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace NcLanguage.Benchmarks;

/// <summary>A language server's process spoken to over its pipes. The clock starts as the written message is handed to the pipe and stops
/// as the last byte of the answer arrives, so that neither end counts this side's work on JSON.</summary>
sealed class LspSession : IDisposable
{
    const int LongMessage = 1 << 20;

    readonly Process _process;
    readonly Stream _input;
    readonly Stream _output;
    readonly Lock _writing = new();
    readonly object _gate = new();
    readonly Dictionary<int, (long At, JsonDocument Message)> _replies = [];
    readonly List<(long At, string Uri, int Version, int Count)> _published = [];
    readonly long _spawned;
    long _lastArrival;
    bool _ended;
    int _id;

    public LspSession(string executable, IEnumerable<string> arguments, string folder)
    {
        var start = new ProcessStartInfo(executable)
        {
            RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = folder,
        };
        foreach (var argument in arguments)
            start.ArgumentList.Add(argument);
        _spawned = Stopwatch.GetTimestamp();
        _process = Process.Start(start)!;
        _process.ErrorDataReceived += static (_, _) => { };
        _process.BeginErrorReadLine();
        _input = _process.StandardInput.BaseStream;
        _output = new BufferedStream(_process.StandardOutput.BaseStream, 1 << 18);
        new Thread(ReadAll) { IsBackground = true }.Start();
    }

    /// <summary>Whether the server is asked for findings; otherwise it sends them.</summary>
    public bool Pulls { get; private set; }

    /// <summary>Says initialize and initialized.</summary>
    /// <param name="folder">The workspace's folder.</param>
    /// <param name="mayPull">Whether this client says that it can ask for findings.</param>
    /// <returns>Milliseconds from the start of the process to the answer.</returns>
    public double Initialize(string folder, bool mayPull)
    {
        var root = new Uri(folder + Path.DirectorySeparatorChar).AbsoluteUri.TrimEnd('/');
        var text = new JsonObject
        {
            ["synchronization"] = new JsonObject(),
            ["publishDiagnostics"] = new JsonObject { ["versionSupport"] = true, ["relatedInformation"] = true },
            ["hover"] = new JsonObject { ["contentFormat"] = new JsonArray("markdown") },
            ["documentSymbol"] = new JsonObject { ["hierarchicalDocumentSymbolSupport"] = true },
        };
        if (mayPull)
            text["diagnostic"] = new JsonObject();
        var (id, _) = Send("initialize", new JsonObject
        {
            ["processId"] = Environment.ProcessId,
            ["rootUri"] = root,
            ["workspaceFolders"] = new JsonArray(new JsonObject { ["uri"] = root, ["name"] = "bench" }),
            ["capabilities"] = new JsonObject { ["textDocument"] = text },
        });
        var (at, message) = Reply(id);
        Pulls = mayPull && message.RootElement.GetProperty("result").GetProperty("capabilities").TryGetProperty("diagnosticProvider", out _);
        Notify("initialized", new JsonObject());
        return Milliseconds(_spawned, at);
    }

    /// <summary>Sends a notification and returns when.</summary>
    public long Notify(string method, JsonNode? parameters) => Write(new JsonObject { ["jsonrpc"] = "2.0", ["method"] = method, ["params"] = parameters });

    /// <summary>Sends a request and returns its number and when.</summary>
    public (int Id, long At) Send(string method, JsonNode? parameters)
    {
        var id = ++_id;
        var message = new JsonObject { ["jsonrpc"] = "2.0", ["id"] = id, ["method"] = method };
        if (parameters is not null)
            message["params"] = parameters;
        return (id, Write(message));
    }

    /// <summary>Waits for the answer to a request.</summary>
    public (long At, JsonDocument Message) Reply(int id) => Wait(() => _replies.Remove(id, out var reply) ? reply : ((long, JsonDocument)?)null);

    /// <summary>Milliseconds of one request, and whether its answer was more than null.</summary>
    public (double Milliseconds, bool HasAnswer) Time(string method, JsonNode parameters)
    {
        var (id, sent) = Send(method, parameters);
        var (at, message) = Reply(id);
        using (message)
            return (Milliseconds(sent, at), message.RootElement.TryGetProperty("result", out var result) && result.ValueKind != JsonValueKind.Null);
    }

    /// <summary>Waits until findings of a version of a document have been sent; returns when the first of them came and how many there were.</summary>
    public (long At, int Count) Published(string uri, int version) => Wait(() =>
        _published.FindIndex(sent => sent.Version == version && sent.Uri == uri) is >= 0 and var found ? (_published[found].At, _published[found].Count) : ((long, int)?)null);

    /// <summary>When the newest findings of a version came, and how many there were.</summary>
    public (long At, int Count) NewestOf(string uri, int version)
    {
        lock (_gate)
            return _published.FindLast(sent => sent.Version == version && sent.Uri == uri) is var sent ? (sent.At, sent.Count) : default;
    }

    /// <summary>Waits until nothing has come for that many milliseconds.</summary>
    /// <param name="quiet">Milliseconds.</param>
    /// <param name="forget">Whether findings sent until then are forgotten.</param>
    public void Settle(double quiet, bool forget = true)
    {
        var began = Stopwatch.GetTimestamp();
        while (true)
        {
            double idle;
            lock (_gate)
            {
                idle = Milliseconds(Math.Max(began, _lastArrival), Stopwatch.GetTimestamp());
                if (idle >= quiet)
                {
                    if (forget)
                        _published.Clear();
                    return;
                }
            }
            Thread.Sleep(TimeSpan.FromMilliseconds(quiet - idle + 0.1));
        }
    }

    /// <summary>What the server has taken of the processors until now, seconds.</summary>
    public double ProcessorSeconds()
    {
        _process.Refresh();
        return _process.TotalProcessorTime.TotalSeconds;
    }

    /// <summary>Resident memory of the process and those it started, now and at most, MB.</summary>
    public (double Now, double Peak) Memory()
    {
        var (now, peak) = (0.0, 0.0);
        foreach (var id in Family(_process.Id))
            foreach (var line in File.ReadLines($"/proc/{id}/status"))
            {
                if (line.StartsWith("VmRSS:", StringComparison.Ordinal))
                    now += Kilobytes(line);
                else if (line.StartsWith("VmHWM:", StringComparison.Ordinal))
                    peak += Kilobytes(line);
            }
        return (now / 1024, peak / 1024);

        static double Kilobytes(string line) => double.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1]);
    }

    static IEnumerable<int> Family(int process)
    {
        yield return process;
        foreach (var task in Directory.GetDirectories($"/proc/{process}/task"))
            foreach (var child in File.ReadAllText(Path.Combine(task, "children")).Split(' ', StringSplitOptions.RemoveEmptyEntries))
                foreach (var member in Family(int.Parse(child)))
                    yield return member;
    }

    /// <summary>Ends the session as the protocol says, and the process with it.</summary>
    public void Exit()
    {
        Reply(Send("shutdown", null).Id);
        Notify("exit", null);
        if (!_process.WaitForExit(5000))
            _process.Kill(entireProcessTree: true);
    }

    public static double Milliseconds(long from, long to) => (to - from) * 1e3 / Stopwatch.Frequency;

    public void Dispose()
    {
        if (!_process.HasExited)
            _process.Kill(entireProcessTree: true);
        _process.Dispose();
    }

    long Write(JsonNode message)
    {
        var body = Encoding.UTF8.GetBytes(message.ToJsonString());
        byte[] frame = [.. Encoding.ASCII.GetBytes($"Content-Length: {body.Length}\r\n\r\n"), .. body];
        // What a long text was written with is garbage here, and would be collected on the processors that the server is to work with.
        if (frame.Length > LongMessage)
            GC.Collect();
        lock (_writing)
        {
            var at = Stopwatch.GetTimestamp();
            _input.Write(frame);
            _input.Flush();
            return at;
        }
    }

    T Wait<T>(Func<T?> found)
        where T : struct
    {
        var began = Stopwatch.GetTimestamp();
        lock (_gate)
        {
            while (true)
            {
                if (found() is { } it)
                    return it;
                if (_ended)
                    throw new EndOfStreamException($"{_process.StartInfo.FileName} ended.");
                if (Milliseconds(began, Stopwatch.GetTimestamp()) > 180_000)
                    throw new TimeoutException($"{_process.StartInfo.FileName} gave no answer in three minutes.");
                Monitor.Wait(_gate, 1000);
            }
        }
    }

    void ReadAll()
    {
        try
        {
            while (true)
            {
                var length = 0;
                for (var header = ReadLine(); header.Length > 0; header = ReadLine())
                    if (header.StartsWith("Content-Length: ", StringComparison.OrdinalIgnoreCase))
                        length = int.Parse(header.AsSpan(16));
                var body = new byte[length];
                _output.ReadExactly(body);
                var at = Stopwatch.GetTimestamp();
                Take(JsonDocument.Parse(body), at);
            }
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException or InvalidOperationException)
        {
            lock (_gate)
            {
                _ended = true;
                Monitor.PulseAll(_gate);
            }
        }
    }

    string ReadLine()
    {
        var line = new StringBuilder();
        for (var next = _output.ReadByte(); next != '\n'; next = _output.ReadByte())
        {
            if (next < 0)
                throw new EndOfStreamException();
            if (next != '\r')
                line.Append((char)next);
        }
        return line.ToString();
    }

    void Take(JsonDocument message, long at)
    {
        var root = message.RootElement;
        var method = root.TryGetProperty("method", out var name) ? name.GetString() : null;
        if (method is not null && root.TryGetProperty("id", out var asked))
            Answer(asked, method, root);
        lock (_gate)
        {
            _lastArrival = at;
            if (method is null)
                _replies[root.GetProperty("id").GetInt32()] = (at, message);
            else if (method == "textDocument/publishDiagnostics" && root.GetProperty("params") is var sent && sent.TryGetProperty("version", out var version))
                _published.Add((at, sent.GetProperty("uri").GetString()!, version.ValueKind == JsonValueKind.Number ? version.GetInt32() : -1, sent.GetProperty("diagnostics").GetArrayLength()));
            Monitor.PulseAll(_gate);
        }
    }

    /// <summary>What a small client says when the server asks for something: it has no settings, and takes note of the rest.</summary>
    void Answer(JsonElement id, string method, JsonElement request)
    {
        JsonNode? result = method == "workspace/configuration"
            ? new JsonArray([.. request.GetProperty("params").GetProperty("items").EnumerateArray().Select(_ => (JsonNode?)null)])
            : null;
        Write(new JsonObject { ["jsonrpc"] = "2.0", ["id"] = JsonNode.Parse(id.GetRawText()), ["result"] = result });
    }
}
