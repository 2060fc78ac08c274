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
sealed class LspMessageHandler(Stream output, Stream input, IJsonRpcMessageFormatter formatter, LongTexts texts, Lifecycle lifecycle, Backlog backlog, ILogger log, FaultLog faults)
    : HeaderDelimitedMessageHandler(PipeWriter.Create(output, new StreamPipeWriterOptions(new MessageMemory())), PipeReader.Create(input, new StreamPipeReaderOptions(bufferSize: ReadAtOnce)), formatter)
{
    /// <summary>As much as a pipe holds, bytes.</summary>
    const int ReadAtOnce = 64 * 1024;

    // The library ends the connection over an answer to a question it never asked.
    readonly ConcurrentDictionary<RequestId, byte> _asked = new();

    // Of two requests under one id the library fails the second, and then no longer knows how to cancel the first.
    readonly ConcurrentDictionary<RequestId, byte> _unanswered = new();
    readonly Farewell _farewell = new();
    readonly TaskCompletionSource<IOException> _lost = new(TaskCreationOptions.RunContinuationsAsynchronously);
    FrameReader? _frames;
    bool _isVersionTold;

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
            JsonRpcMessage? message = null;
            JsonRpcError.ErrorDetail? unreadable = null;
            MessageHead head;
            try
            {
                var rest = texts.TakeFrom(content);
                JsonText.MendHalves(rest);
                message = Formatter.Deserialize(new ReadOnlySequence<byte>(rest));
                head = MessageHead.Of(message);
            }
            catch (Exception e) when (IsUnreadableContent(e))
            {
                head = MessageHead.Of(content);
                unreadable = head.IsJson
                    ? Errors.Detail(JsonRpcErrorCode.InvalidRequest, "The message could not be read: it is no request, notification or answer by JSON-RPC 2.0, or nested deeper than 64 levels.")
                    : Errors.Detail(JsonRpcErrorCode.ParseError, "The message could not be read: " + e.Message);
            }

            (var passed, var refusal) = !head.IsOurVersion && (head.NamesMethod || _asked.ContainsKey(head.Id)) ? OfOtherVersion(head)
                : TakesNoParameters(head.Method) && IsIdKnown(head, message) ? Judge(new JsonRpcRequest { RequestId = head.Id, Method = head.Method })
                : message is null ? (null, unreadable)
                : Judge(message);
            if (message is not null && passed == message)
                return message;
            if (message is IJsonRpcMessageBufferManager kept)
                kept.DeserializationComplete(message);
            if (passed is not null)
                return passed;
            if (refusal is not null)
                await AnswerAsync(head.Asked, refusal, cancellationToken).ConfigureAwait(false);
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
        // Before it leaves: whoever has read the answer may use the id again.
        if (content is JsonRpcResult or (JsonRpcError and not Refusal) && ((IJsonRpcMessageWithId)content).RequestId is var answered)
            _unanswered.TryRemove(answered, out _);
        // The library has a code of its own for an answer that cannot be written.
        if (content is JsonRpcError { Error: { Code: JsonRpcErrorCode.ResponseSerializationFailure } detail })
            detail.Code = JsonRpcErrorCode.InternalError;
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

    (JsonRpcMessage? Passed, JsonRpcError.ErrorDetail? Refusal) Judge(JsonRpcMessage message) => message switch
    {
        JsonRpcRequest { IsResponseExpected: true } request => Admit(request) is { } refusal ? (null, refusal) : (message, null),
        JsonRpcRequest request => (Takes(request) ? message : null, null),
        IJsonRpcMessageWithId answer => (_asked.TryRemove(answer.RequestId, out _) ? message : null, null),
        _ => (message, null),
    };

    /// <summary>A request is refused, a notification dropped, and an answer counts as the client's refusal: what it answers would wait for ever without one.</summary>
    (JsonRpcMessage? Passed, JsonRpcError.ErrorDetail? Refusal) OfOtherVersion(MessageHead head)
    {
        var fault = Errors.Detail(JsonRpcErrorCode.InvalidRequest, $"The message does not say \"jsonrpc\": \"{MessageHead.Version}\".");
        if (head is { NamesMethod: true, HasId: true })
            return (null, fault);
        if (!_isVersionTold)
            log.MessageOfOtherVersion(MessageHead.Version);
        _isVersionTold = true;
        return _asked.TryRemove(head.Id, out _) ? (new JsonRpcError { RequestId = head.Id, Error = fault }, null) : (null, null);
    }

    /// <summary>Why a request must not pass; null where it may, and an answer to it is then owed.</summary>
    JsonRpcError.ErrorDetail? Admit(JsonRpcRequest request)
    {
        if (request.Method is not { } method)
            return Errors.Detail(JsonRpcErrorCode.InvalidRequest, "The message names no method.");
        if (_unanswered.ContainsKey(request.RequestId))
            return Errors.Detail(JsonRpcErrorCode.InvalidRequest, "Another request of this id is not answered yet.");
        if (lifecycle.Refuse(method, isRequest: true) is { } refusal)
            return refusal;
        // The library answers that there is none of that name, which may be as long as a message. To refuse it here would keep the messages behind it from being read until that has left.
        request.Method = Excerpt.OfName(method);
        if (MethodTable.Rows.ContainsKey(method) && LacksObject(request))
        {
            if (method == Methods.Initialize)
                lifecycle.InitializeFailed();
            return Errors.Detail(JsonRpcErrorCode.InvalidParams, $"{method} needs its parameters, as an object.");
        }
        _unanswered[request.RequestId] = 0;
        backlog.Came();
        return null;
    }

    /// <summary>Whether a notification may pass; what the server has no method for is dropped.</summary>
    bool Takes(JsonRpcRequest notification)
    {
        if (notification.Method is not { } method || lifecycle.Refuse(method, isRequest: false) is not null || !MethodTable.Rows.ContainsKey(method))
            return false;
        if (!LacksObject(notification))
            return true;
        faults.Refused(method, "it needs its parameters, as an object.");
        return false;
    }

    // The library's own answer names its methods and says nothing of the parameters.
    static bool LacksObject(JsonRpcRequest request) => request.ArgumentNames is null && !TakesNoParameters(request.Method);

    /// <summary>Methods whose parameters say nothing, whatever they are (LSP 3.17: none, or an object without members): they are left unread. Clients send null, an object and a row there.</summary>
    static bool TakesNoParameters(string? method) => method is Methods.Initialized or Methods.Shutdown or Methods.Exit;

    // Where nothing could be read, an id that is none by the protocol looks like the id null; an exit is none the less for that.
    static bool IsIdKnown(MessageHead head, JsonRpcMessage? message) => message is not null || head.Id != RequestId.Null || head.Method == Methods.Exit;

    // The frame was consumed before its content was looked at; what these say concerns that content alone.
    static bool IsUnreadableContent(Exception e) =>
        e is JsonException or FormatException or KeyNotFoundException or NotSupportedException or ArgumentException
        or (InvalidOperationException and not ObjectDisposedException);

    ValueTask AnswerAsync(RequestId id, JsonRpcError.ErrorDetail error, CancellationToken cancellationToken)
    {
        backlog.Came();
        return WriteAsync(new Refusal { RequestId = id, Error = error }, cancellationToken);
    }

    /// <summary>The answer to what did not pass: under its id another request may be waiting for its own.</summary>
    sealed class Refusal : JsonRpcError;
}
