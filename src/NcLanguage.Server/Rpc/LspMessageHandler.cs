using System.Collections.Concurrent;
using System.Text.Json;
using StreamJsonRpc;
using StreamJsonRpc.Protocol;
using StreamJsonRpc.Reflection;

namespace NcLanguage.Server.Rpc;

/// <summary>Reads and writes frames. What cannot be read or may not come yet is answered here, so that nothing behind sees it and
/// no malformed message ends the connection. Only a broken header does: after that the stream's frames can't be told apart.</summary>
internal sealed class LspMessageHandler(Stream output, Stream input, IJsonRpcMessageFormatter formatter, Lifecycle lifecycle)
    : HeaderDelimitedMessageHandler(output, input, formatter)
{
    // The library ends the connection over an answer to a question it never asked.
    private readonly ConcurrentDictionary<RequestId, byte> _asked = new();

    protected override async ValueTask<JsonRpcMessage?> ReadCoreAsync(CancellationToken cancellationToken)
    {
        while (true)
        {
            JsonRpcMessage? message;
            try
            {
                message = await base.ReadCoreAsync(cancellationToken).ConfigureAwait(false);
            }
            catch (Exception e) when (IsUnreadableContent(e))
            {
                await AnswerAsync(RequestId.Null, Errors.Detail(JsonRpcErrorCode.ParseError, "The message could not be read: " + e.Message), cancellationToken).ConfigureAwait(false);
                continue;
            }

            (bool pass, RequestId id, JsonRpcError.ErrorDetail? refusal) = message switch
            {
                JsonRpcRequest request => Admit(request),
                IJsonRpcMessageWithId answer => (_asked.TryRemove(answer.RequestId, out _), RequestId.NotSpecified, null),
                _ => (true, RequestId.NotSpecified, null),
            };
            if (pass) return message;
            ((IJsonRpcMessageBufferManager)this).DeserializationComplete(message!);
            if (refusal is not null) await AnswerAsync(id, refusal, cancellationToken).ConfigureAwait(false);
        }
    }

    protected override void Write(JsonRpcMessage content, CancellationToken cancellationToken)
    {
        if (content is JsonRpcRequest { IsResponseExpected: true } request) _asked[request.RequestId] = 0;
        base.Write(content, cancellationToken);
    }

    private (bool Pass, RequestId Id, JsonRpcError.ErrorDetail? Refusal) Admit(JsonRpcRequest request)
    {
        JsonRpcError.ErrorDetail? refusal = request.Method is { } method
            ? lifecycle.Refuse(method, request.IsResponseExpected)
            : Errors.Detail(JsonRpcErrorCode.InvalidRequest, "The message names no method.");
        return (refusal is null, request.RequestId, request.IsResponseExpected ? refusal : null);
    }

    // The frame was consumed before its content was looked at; what these say concerns that content alone.
    private static bool IsUnreadableContent(Exception e) =>
        e is JsonException or FormatException or KeyNotFoundException or NotSupportedException or ArgumentException
        or (InvalidOperationException and not ObjectDisposedException);

    private ValueTask AnswerAsync(RequestId id, JsonRpcError.ErrorDetail error, CancellationToken cancellationToken) =>
        WriteAsync(new JsonRpcError { RequestId = id, Error = error }, cancellationToken);
}
