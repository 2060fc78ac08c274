using System.Text.Json;
using NcLanguage.Server.Logging;
using StreamJsonRpc;
using StreamJsonRpc.Protocol;

namespace NcLanguage.Server.Rpc;

/// <summary>Which error of the protocol an exception becomes. No message carries a stack trace; that goes to the log.</summary>
static class Errors
{
    /// <summary>LSP ServerNotInitialized.</summary>
    public const JsonRpcErrorCode ServerNotInitialized = (JsonRpcErrorCode)(-32002);

    /// <summary>LSP ContentModified: the document changed while the answer was being worked out.</summary>
    public const JsonRpcErrorCode ContentModified = (JsonRpcErrorCode)(-32801);

    /// <summary>LSP RequestFailed: the request was in order, but what was asked for cannot be done.</summary>
    const JsonRpcErrorCode RequestFailed = (JsonRpcErrorCode)(-32803);

    /// <summary>An error as it is answered. Names of a client's own stand in it shortened (<see cref="Excerpt"/>).</summary>
    public static JsonRpcError.ErrorDetail Detail(JsonRpcErrorCode code, string message) => new() { Code = code, Message = Excerpt.OfMessage(message) };

    public static LocalRpcException Exception(JsonRpcErrorCode code, string message) => new(message) { ErrorCode = (int)code };

    public static LocalRpcException DocumentNotOpen(string uri) => FaultLog.Naming(Exception(JsonRpcErrorCode.InvalidParams, $"The document {Excerpt.OfName(uri)} is not open."), uri);

    /// <summary>A row of the parameters, none of whose members is null: that the reader of JSON lets through.</summary>
    public static T[] Whole<T>(T[] row) => Array.TrueForAll(row, member => member is not null) ? row
        : throw Exception(JsonRpcErrorCode.InvalidParams, "These parameters cannot be read: a row holds null where it may not.");

    /// <summary>What was asked for cannot be done.</summary>
    /// <param name="why">A sentence for the user.</param>
    public static LocalRpcException Refused(string why) => Exception(RequestFailed, why);

    public static LocalRpcException DocumentChanged() => Exception(ContentModified, "The document was changed meanwhile.");

    /// <summary>True where the fault is this server's own, so that it belongs in the log.</summary>
    public static bool IsInternal(Exception exception) => exception is not (LocalRpcException or JsonException or OperationCanceledException);

    /// <summary>An answer that was worked out and cannot be written, as one of more characters than a text of JSON takes.</summary>
    public static JsonRpcError.ErrorDetail AnswerNotWritten(string method, Exception exception) =>
        Detail(JsonRpcErrorCode.InternalError, $"{method}: the answer cannot be written ({exception.GetType().Name}); the server's log says where.");

    public static JsonRpcError.ErrorDetail ForException(string method, Exception exception) => exception switch
    {
        LocalRpcException local => Detail((JsonRpcErrorCode)local.ErrorCode, local.Message),
        JsonException json => Detail(JsonRpcErrorCode.InvalidParams, $"{method}: {Unreadable.Clause(json)}."),
        OperationCanceledException => Detail(JsonRpcErrorCode.RequestCanceled, "The request was cancelled."),
        _ => Detail(JsonRpcErrorCode.InternalError, $"An internal error ({exception.GetType().Name}); the server's log says where."),
    };
}
