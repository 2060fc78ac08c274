using System.Buffers;
using System.Collections.Concurrent;
using System.IO.Pipelines;
using System.Text.Json;
using Microsoft.Extensions.Logging;
using NcLanguage.Server.Logging;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Scheduling;
using StreamJsonRpc;
using StreamJsonRpc.Protocol;
using StreamJsonRpc.Reflection;

namespace NcLanguage.Server.Rpc;

/// <summary>Reads and writes frames. What cannot be read or may not come yet is answered here, so that nothing behind sees it and
/// no malformed message ends the connection. Only a broken header does: after that the stream's frames can't be told apart.</summary>
/// <remarks>The pipes write to the streams themselves, not by a task beside them: what counts as sent has left.</remarks>
sealed class LspMessageHandler(Stream output, Stream input, IJsonRpcMessageFormatter formatter, LongTexts texts, Lifecycle lifecycle, Backlog backlog, ILogger log)
    : HeaderDelimitedMessageHandler(PipeWriter.Create(output), PipeReader.Create(input, new StreamPipeReaderOptions(bufferSize: ReadAtOnce)), formatter)
{
    /// <summary>As much as a pipe holds, bytes.</summary>
    const int ReadAtOnce = 64 * 1024;

    // The library ends the connection over an answer to a question it never asked.
    readonly ConcurrentDictionary<RequestId, byte> _asked = new();
    readonly Farewell _farewell = new();
    readonly TaskCompletionSource<IOException> _lost = new(TaskCreationOptions.RunContinuationsAsynchronously);
    FrameReader? _frames;

    /// <summary>Ends when something could not be sent because nobody is there any more.</summary>
    public Task<IOException> Lost => _lost.Task;

    protected override async ValueTask<JsonRpcMessage?> ReadCoreAsync(CancellationToken cancellationToken)
    {
        while (await NextFrameAsync(cancellationToken).ConfigureAwait(false) is var (content, fault))
        {
            if (fault is not null)
            {
                log.MessageRefused(fault);
                await AnswerAsync(RequestId.Null, Errors.Detail(JsonRpcErrorCode.InvalidRequest, fault), cancellationToken).ConfigureAwait(false);
                continue;
            }
            JsonRpcMessage message;
            try
            {
                var rest = texts.TakeFrom(content);
                JsonText.MendHalves(rest);
                message = Formatter.Deserialize(new ReadOnlySequence<byte>(rest));
            }
            catch (Exception e) when (IsUnreadableContent(e))
            {
                (var isJson, var asked) = RequestHead.Of(content);
                var code = isJson ? JsonRpcErrorCode.InvalidRequest : JsonRpcErrorCode.ParseError;
                await AnswerAsync(asked, Errors.Detail(code, "The message could not be read: " + e.Message), cancellationToken).ConfigureAwait(false);
                continue;
            }

            (var pass, var id, var refusal) = message switch
            {
                JsonRpcRequest request => Admit(request),
                IJsonRpcMessageWithId answer => (_asked.TryRemove(answer.RequestId, out _), RequestId.NotSpecified, null),
                _ => (true, RequestId.NotSpecified, null),
            };
            if (pass)
                return message;
            (message as IJsonRpcMessageBufferManager)?.DeserializationComplete(message);
            if (refusal is not null)
                await AnswerAsync(id, refusal, cancellationToken).ConfigureAwait(false);
        }
        return null;
    }

    async ValueTask<Frame?> NextFrameAsync(CancellationToken cancellationToken)
    {
        _frames ??= new FrameReader(Reader!, backlog);
        Frame? frame = null;
        try
        {
            return frame = await _frames.ReadAsync(cancellationToken).ConfigureAwait(false);
        }
        finally
        {
            // Behind the last whole message a client may close its end and still wait for what it asked, and the end of the connection would cut that off.
            if (frame is null)
                await backlog.SettleAsync(Farewell.Longest).ConfigureAwait(false);
        }
    }

    /// <summary>Lets the message that is being written leave whole, and no other begin; waits at most <see cref="Farewell.Longest"/>.</summary>
    public Task CloseAsync() => _farewell.SayAsync();

    protected override void Write(JsonRpcMessage content, CancellationToken cancellationToken)
    {
        if (!_farewell.Begin())
            return;
        if (content is JsonRpcRequest { IsResponseExpected: true } request)
            _asked[request.RequestId] = 0;
        base.Write(content, cancellationToken);
        if (content is JsonRpcError or JsonRpcResult)
            backlog.Answered();
    }

    protected override async ValueTask FlushAsync(CancellationToken cancellationToken)
    {
        try
        {
            await base.FlushAsync(cancellationToken).ConfigureAwait(false);
        }
        catch (IOException e)
        {
            _lost.TrySetResult(e);
            throw;
        }
        finally
        {
            _farewell.Done();
        }
    }

    (bool Pass, RequestId Id, JsonRpcError.ErrorDetail? Refusal) Admit(JsonRpcRequest request)
    {
        var refusal = request.Method is { } method
            ? lifecycle.Refuse(method, request.IsResponseExpected)
            : Errors.Detail(JsonRpcErrorCode.InvalidRequest, "The message names no method.");
        if (refusal is null && request.IsResponseExpected && NeedsObject(request))
        {
            refusal = Errors.Detail(JsonRpcErrorCode.InvalidParams, $"{request.Method} needs its parameters, as an object.");
            if (request.Method == Methods.Initialize)
                lifecycle.InitializeFailed();
        }
        if (refusal is null && request.IsResponseExpected)
            backlog.Came();
        return (refusal is null, request.RequestId, request.IsResponseExpected ? refusal : null);
    }

    // The library's own answer names its methods and says nothing of the parameters.
    static bool NeedsObject(JsonRpcRequest request) =>
        request.ArgumentNames is null && request.Method != Methods.Shutdown && MethodTable.Rows.ContainsKey(request.Method!);

    // The frame was consumed before its content was looked at; what these say concerns that content alone.
    static bool IsUnreadableContent(Exception e) =>
        e is JsonException or FormatException or KeyNotFoundException or NotSupportedException or ArgumentException
        or (InvalidOperationException and not ObjectDisposedException);

    ValueTask AnswerAsync(RequestId id, JsonRpcError.ErrorDetail error, CancellationToken cancellationToken)
    {
        backlog.Came();
        return WriteAsync(new JsonRpcError { RequestId = id, Error = error }, cancellationToken);
    }
}
