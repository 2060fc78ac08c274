using System.Diagnostics;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace NcLanguage.Benchmarks;

/// <summary>A server process spoken to over its pipes, one message at a time.</summary>
sealed class PipedServer : IAsyncDisposable
{
    readonly Process _process;
    readonly Stream _input;
    readonly Stream _output;
    int _id;

    public PipedServer(string executable)
    {
        _process = Process.Start(new ProcessStartInfo(executable, "serve") { RedirectStandardInput = true, RedirectStandardOutput = true })!;
        _input = _process.StandardInput.BaseStream;
        _output = new BufferedStream(_process.StandardOutput.BaseStream, 1 << 16);
    }

    public async Task InitializeAsync()
    {
        await RequestAsync("initialize", new JsonObject { ["processId"] = Environment.ProcessId, ["rootUri"] = null, ["capabilities"] = new JsonObject() });
        await NotifyAsync("initialized", new JsonObject());
    }

    public async Task ExitAsync()
    {
        await RequestAsync("shutdown", null);
        await NotifyAsync("exit", null);
        await _process.WaitForExitAsync();
    }

    public Task NotifyAsync(string method, JsonNode? parameters) => SendAsync(new JsonObject { ["jsonrpc"] = "2.0", ["method"] = method, ["params"] = parameters });

    async Task RequestAsync(string method, JsonNode? parameters)
    {
        var id = ++_id;
        await SendAsync(new JsonObject { ["jsonrpc"] = "2.0", ["id"] = id, ["method"] = method, ["params"] = parameters });
        while (true)
        {
            using var message = await ReadAsync();
            if (message.RootElement.TryGetProperty("id", out var answer) && !message.RootElement.TryGetProperty("method", out _) && answer.GetInt32() == id)
                return;
        }
    }

    /// <summary>Waits for the findings of that version of a document.</summary>
    public async Task DiagnosticsAsync(string uri, int version)
    {
        while (true)
        {
            using var message = await ReadAsync();
            if (message.RootElement.TryGetProperty("method", out var method) && method.GetString() == "textDocument/publishDiagnostics"
                && message.RootElement.GetProperty("params") is var parameters
                && parameters.GetProperty("uri").GetString() == uri
                && parameters.TryGetProperty("version", out var found) && found.GetInt32() == version)
                return;
        }
    }

    async Task SendAsync(JsonObject message)
    {
        var body = Encoding.UTF8.GetBytes(message.ToJsonString());
        await _input.WriteAsync(Encoding.ASCII.GetBytes($"Content-Length: {body.Length}\r\n\r\n"));
        await _input.WriteAsync(body);
        await _input.FlushAsync();
    }

    async Task<JsonDocument> ReadAsync()
    {
        var length = 0;
        for (var header = ReadLine(); header.Length > 0; header = ReadLine())
            if (header.StartsWith("Content-Length: ", StringComparison.OrdinalIgnoreCase))
                length = int.Parse(header.AsSpan(16));
        var body = new byte[length];
        await _output.ReadExactlyAsync(body);
        return JsonDocument.Parse(body);
    }

    string ReadLine()
    {
        var line = new StringBuilder();
        for (var next = _output.ReadByte(); next != '\n'; next = _output.ReadByte())
        {
            if (next < 0)
                throw new EndOfStreamException("The server ended.");
            if (next != '\r')
                line.Append((char)next);
        }
        return line.ToString();
    }

    public ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
            _process.Kill();
        _process.Dispose();
        return ValueTask.CompletedTask;
    }
}
