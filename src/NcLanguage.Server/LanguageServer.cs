using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using Microsoft.Extensions.Logging;
using NcLanguage.Server.Logging;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;
using NcLanguage.Server.Scheduling;
using StreamJsonRpc;

namespace NcLanguage.Server;

/// <summary>The language server over a pair of streams.</summary>
public static class LanguageServer
{
    internal const string Name = "nclanguage";

    /// <summary>How long the end waits for messages that are being worked on and whose answers nobody takes.</summary>
    static readonly TimeSpan LongestRest = TimeSpan.FromSeconds(0.5);

    internal static string Version { get; } = typeof(LanguageServer).Assembly.GetName().Version?.ToString(3) ?? "0.0.0";

    /// <summary>Serves one client until it says exit, its streams end or its process ends.</summary>
    /// <returns>The process's exit code: 0 after shutdown and exit, else 1.</returns>
    public static async Task<int> RunAsync(Stream input, Stream output, LanguageServerOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        using var logs = new ServerLoggerProvider(options.ErrorLog);
        using var loggers = new LoggerFactory([logs], new LoggerFilterOptions { MinLevel = options.LogLevel });
        var log = loggers.CreateLogger(Name);

        var faults = new FaultLog(log);
        var lifecycle = new Lifecycle();
        var backlog = new Backlog();
        using var queue = new RequestQueue(backlog);
        var texts = new LongTexts();
        using var handler = new LspMessageHandler(output, input, CreateFormatter(texts), texts, lifecycle, backlog, log, faults);
        using var rpc = new LspRpc(handler, queue, lifecycle, backlog, faults);
        logs.ToClient = message => rpc.Notify(Methods.LogMessage, message);
        var tracer = new Tracer(message => rpc.Notify(Methods.LogTrace, message));
        rpc.Handled += tracer.Handled;
        using var housekeeper = new Housekeeper(() => !backlog.IsPassed || rpc.IsSending);
        rpc.Handled += (_, _) => housekeeper.Touch();
        rpc.Told += housekeeper.PutOff;

        using var session = new ServerSession(rpc, queue, lifecycle, tracer, options, log, faults);
        rpc.AddLocalRpcTarget(RpcTargetMetadata.FromShape<IServerMethods>(), session, null);
        // Not the connection's completion: it waits for what is being written, which a client that reads no more never lets go.
        var disconnected = new TaskCompletionSource<Exception?>(TaskCreationOptions.RunContinuationsAsynchronously);
        rpc.Disconnected += (_, end) => disconnected.TrySetResult(end.Exception);
        rpc.StartListening();

        // Not the connection's end alone: a read of stdin can't be called off, and must not keep the process alive after exit.
        var ended = await Task.WhenAny(session.Exit, disconnected.Task, handler.Lost).ConfigureAwait(false);
        if (ended == session.Exit)
            await rpc.FinishAsync(Farewell.Longest).ConfigureAwait(false);
        else if (ended == handler.Lost)
            log.ConnectionBroken((await handler.Lost.ConfigureAwait(false)).Message);
        else if (await disconnected.Task.ConfigureAwait(false) is { } broken)
            log.ConnectionBroken(broken.GetBaseException() is IOException or InvalidDataException ? broken.GetBaseException().Message : faults.ReasonOf(broken.GetBaseException()));
        await handler.CloseAsync().ConfigureAwait(false);
        // What still works on a message needs what is disposed next.
        await Task.WhenAny(rpc.DispatchCompletion, Task.Delay(LongestRest)).ConfigureAwait(false);
        return session.Exit.IsCompleted ? await session.Exit.ConfigureAwait(false) : 1;
    }

    [UnconditionalSuppressMessage("Trimming", "IL2026", Justification = "All types sent and received stand in the source-generated context.")]
    [UnconditionalSuppressMessage("AOT", "IL3050", Justification = "All types sent and received stand in the source-generated context.")]
    static SystemTextJsonFormatter CreateFormatter(LongTexts texts) =>
        new() { JsonSerializerOptions = new JsonSerializerOptions(ProtocolJson.Default.Options) { Converters = { new Utf8TextConverter(texts) } } };
}
