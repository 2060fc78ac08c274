using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace NcLanguage.EndToEnd.Lsp;

/// <summary>An answer of the server that is an error: its JSON-RPC code and message.</summary>
sealed class LspErrorException(int code, string message) : Exception($"{code}: {message}")
{
    public int Code { get; } = code;
}

/// <summary>
/// A language client over a process's pipes, written for the tests alone so that it shares nothing with the server: frames,
/// ids, and the notifications that have come in.
/// </summary>
sealed class LspClient : IAsyncDisposable
{
    static readonly TimeSpan Limit = TimeSpan.FromSeconds(20);

    readonly Process process;
    readonly Stream input;
    readonly SemaphoreSlim writing = new(1);
    readonly ConcurrentDictionary<int, TaskCompletionSource<JsonElement>> pending = new();
    readonly List<(string Method, JsonElement Parameters)> notifications = [];
    readonly StringBuilder errors = new();
    readonly Task reading;
    TaskCompletionSource arrived = new(TaskCreationOptions.RunContinuationsAsynchronously);
    int lastId;

    LspClient(Process process)
    {
        this.process = process;
        input = process.StandardInput.BaseStream;
        process.ErrorDataReceived += (_, line) =>
        {
            lock (errors)
                errors.AppendLine(line.Data);
        };
        process.BeginErrorReadLine();
        reading = Task.Run(ReadAsync);
    }

    public Process Process => process;

    /// <summary>What the server wrote to its error stream so far.</summary>
    public string Errors
    {
        get
        {
            lock (errors)
                return errors.ToString();
        }
    }

    public static LspClient Start(IReadOnlyList<string> command) => new(System.Diagnostics.Process.Start(
        new ProcessStartInfo(command[0], command.Skip(1))
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!);

    /// <summary>Sends a request and gives its result.</summary>
    /// <exception cref="LspErrorException">The server answered with an error.</exception>
    public async Task<JsonElement> RequestAsync(string method, JsonNode? parameters = null)
    {
        var id = Interlocked.Increment(ref lastId);
        var answer = pending[id] = new(TaskCreationOptions.RunContinuationsAsynchronously);
        await SendAsync(new JsonObject { ["jsonrpc"] = "2.0", ["id"] = id, ["method"] = method, ["params"] = parameters });
        try
        {
            return await answer.Task.WaitAsync(Limit);
        }
        catch (TimeoutException)
        {
            throw new TimeoutException($"No answer to {method} within {Limit.TotalSeconds} s.\n{Errors}");
        }
    }

    public Task NotifyAsync(string method, JsonNode? parameters = null) =>
        SendAsync(new JsonObject { ["jsonrpc"] = "2.0", ["method"] = method, ["params"] = parameters });

    /// <summary>Bytes as they stand, for frames that no client should send.</summary>
    public async Task WriteRawAsync(string text)
    {
        await input.WriteAsync(Encoding.UTF8.GetBytes(text));
        await input.FlushAsync();
    }

    /// <summary>The first notification of a kind, among those that came and those to come.</summary>
    public async Task<JsonElement> NotificationAsync(string method, Func<JsonElement, bool> wanted)
    {
        using var timeout = new CancellationTokenSource(Limit);
        for (var seen = 0; ;)
        {
            Task next;
            lock (notifications)
            {
                for (; seen < notifications.Count; seen++)
                {
                    if (notifications[seen].Method == method && wanted(notifications[seen].Parameters))
                        return notifications[seen].Parameters;
                }

                next = arrived.Task;
            }

            try
            {
                await next.WaitAsync(timeout.Token);
            }
            catch (OperationCanceledException)
            {
                throw new TimeoutException($"No fitting {method} within {Limit.TotalSeconds} s.\n{Errors}");
            }
        }
    }

    /// <summary>Closes the server's input, as a client that dies does.</summary>
    public void CloseInput() => input.Close();

    /// <summary>The exit code, once the process has ended by itself.</summary>
    public async Task<int> ExitAsync()
    {
        await process.WaitForExitAsync().WaitAsync(Limit);
        return process.ExitCode;
    }

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited)
            process.Kill(entireProcessTree: true);
        await process.WaitForExitAsync();
        await reading;
        process.Dispose();
        writing.Dispose();
    }

    async Task SendAsync(JsonObject message)
    {
        // A left out parameter is left out, not null.
        if (message["params"] is null)
            message.Remove("params");
        var body = Encoding.UTF8.GetBytes(message.ToJsonString());
        await writing.WaitAsync();
        try
        {
            await input.WriteAsync(Encoding.ASCII.GetBytes($"Content-Length: {body.Length}\r\n\r\n"));
            await input.WriteAsync(body);
            await input.FlushAsync();
        }
        finally
        {
            writing.Release();
        }
    }

    async Task ReadAsync()
    {
        try
        {
            using var output = new BufferedStream(process.StandardOutput.BaseStream);
            while (await ReadFrameAsync(output) is { } body)
                await HandleAsync(JsonElement.Parse(body));
        }
        catch (Exception problem) when (problem is IOException or JsonException or InvalidDataException or ObjectDisposedException)
        {
            Fail(problem);
            return;
        }

        Fail(new EndOfStreamException("The server closed its output."));
    }

    void Fail(Exception problem)
    {
        foreach (var waiting in pending.Values)
            waiting.TrySetException(problem);
    }

    /// <summary>One frame's body, or null at the end. Anything but a header where one is due is a fault of the server.</summary>
    static async Task<byte[]?> ReadFrameAsync(Stream output)
    {
        var length = -1;
        for (var first = true; ; first = false)
        {
            var line = await ReadLineAsync(output);
            if (line is null)
                return first ? null : throw new InvalidDataException("The output ends within a header.");
            if (line.Length == 0)
                break;
            var colon = line.IndexOf(':', StringComparison.Ordinal);
            if (colon < 0)
                throw new InvalidDataException($"Not a header: {line}");
            if (line[..colon].Equals("Content-Length", StringComparison.OrdinalIgnoreCase))
                length = int.Parse(line[(colon + 1)..]);
        }

        if (length < 0)
            throw new InvalidDataException("A frame without Content-Length.");
        var body = new byte[length];
        await output.ReadExactlyAsync(body);
        return body;
    }

    static async Task<string?> ReadLineAsync(Stream output)
    {
        var line = new StringBuilder();
        var one = new byte[1];
        while (await output.ReadAsync(one) == 1)
        {
            if (one[0] == '\n')
                return line.ToString().TrimEnd('\r');
            line.Append((char)one[0]);
        }

        return line.Length == 0 ? null : line.ToString();
    }

    async Task HandleAsync(JsonElement message)
    {
        var method = message.TryGetProperty("method", out var name) ? name.GetString()! : null;
        var id = message.TryGetProperty("id", out var number) ? number : default;
        if (method is null)
        {
            if (id.ValueKind == JsonValueKind.Number && pending.TryRemove(id.GetInt32(), out var waiting))
                Settle(waiting, message);
        }
        else if (id.ValueKind != JsonValueKind.Undefined)
        {
            // The server asks (to register, for settings): answered with nothing, as a plain client may.
            await SendAsync(new JsonObject { ["jsonrpc"] = "2.0", ["id"] = JsonNode.Parse(id.GetRawText()), ["result"] = null });
        }
        else
        {
            TaskCompletionSource wake;
            lock (notifications)
            {
                notifications.Add((method, message.TryGetProperty("params", out var parameters) ? parameters : default));
                wake = arrived;
                arrived = new(TaskCreationOptions.RunContinuationsAsynchronously);
            }

            wake.SetResult();
        }
    }

    static void Settle(TaskCompletionSource<JsonElement> waiting, JsonElement message)
    {
        if (message.TryGetProperty("error", out var error))
            waiting.TrySetException(new LspErrorException(error.GetProperty("code").GetInt32(), error.GetProperty("message").GetString()!));
        else
            waiting.TrySetResult(message.GetProperty("result"));
    }
}
