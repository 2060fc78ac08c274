using System.Text.Json;
using StreamJsonRpc;
using StreamJsonRpc.Protocol;

namespace NcLanguage.Server.Rpc;

/// <summary>What a message says of itself, also where the rest of it is none by the protocol's rules.</summary>
/// <param name="IsJson">Whether it is whole JSON at all.</param>
/// <param name="IsOurVersion">Whether it says that it is of <see cref="Version"/>.</param>
/// <param name="NamesMethod">Whether it wants something done: a request or notification.</param>
/// <param name="Method">What it wants done; null where it names none.</param>
/// <param name="Id">The number or text that it is known by: <see cref="RequestId.NotSpecified"/> where it has none, <see cref="RequestId.Null"/> where that is neither.</param>
readonly record struct MessageHead(bool IsJson, bool IsOurVersion, bool NamesMethod, string? Method, RequestId Id)
{
    /// <summary>JSON-RPC 2.0, sections 4 and 5.</summary>
    public const string Version = "2.0";

    public bool HasId => Id != RequestId.NotSpecified;

    /// <summary>The id that a refusal is sent under (section 5: null where the message has none of a request).</summary>
    public RequestId Asked => NamesMethod && HasId ? Id : RequestId.Null;

    public static MessageHead Of(JsonRpcMessage message) =>
        new(true, message.Version == Version, message is JsonRpcRequest, (message as JsonRpcRequest)?.Method, (message as IJsonRpcMessageWithId)?.RequestId ?? RequestId.NotSpecified);

    /// <summary>The same, of a message that could not be read.</summary>
    public static MessageHead Of(ReadOnlySpan<byte> message)
    {
        // Deeper than messages are read: whoever sent it too deep is told so under its own number.
        var reader = new Utf8JsonReader(message, new JsonReaderOptions { MaxDepth = int.MaxValue });
        (var id, string? method, var isOurVersion) = (RequestId.NotSpecified, null, false);
        try
        {
            if (!reader.Read())
                return default;
            while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName && reader.CurrentDepth == 1)
            {
                var isId = reader.ValueTextEquals("id"u8);
                var isMethod = reader.ValueTextEquals("method"u8);
                var isVersion = reader.ValueTextEquals("jsonrpc"u8);
                reader.Read();
                if (isMethod)
                    method = reader.TokenType == JsonTokenType.String ? reader.GetString() : null;
                if (isVersion)
                    isOurVersion = reader.TokenType == JsonTokenType.String && reader.ValueTextEquals(Version);
                if (isId)
                    id = reader.TokenType == JsonTokenType.String ? new RequestId(reader.GetString()) : reader.TokenType == JsonTokenType.Number && reader.TryGetInt64(out var number) ? new RequestId(number) : RequestId.Null;
                reader.Skip();
            }
            // To the end, since what is broken behind it is no JSON at all.
            while (reader.Read())
            {
            }
            return new MessageHead(true, isOurVersion, method is not null, method, id);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            return default;
        }
    }
}
