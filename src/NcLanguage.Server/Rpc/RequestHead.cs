using System.Text.Json;
using StreamJsonRpc;

namespace NcLanguage.Server.Rpc;

/// <summary>What can be told of a request that is none by the protocol's rules.</summary>
static class RequestHead
{
    /// <summary>Whether a message is whole JSON at all, and the number or text that it wants to be answered under: <see cref="RequestId.Null"/> where it is no object, names no method or has no such id.</summary>
    public static (bool IsJson, RequestId Id) Of(ReadOnlySpan<byte> message)
    {
        // Deeper than messages are read: whoever sent it too deep is told so under its own number.
        var reader = new Utf8JsonReader(message, new JsonReaderOptions { MaxDepth = int.MaxValue });
        (var id, var hasMethod) = (RequestId.Null, false);
        try
        {
            if (!reader.Read())
                return (false, RequestId.Null);
            while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName && reader.CurrentDepth == 1)
            {
                var isId = reader.ValueTextEquals("id"u8);
                var isMethod = reader.ValueTextEquals("method"u8);
                reader.Read();
                if (isMethod)
                    hasMethod = reader.TokenType == JsonTokenType.String;
                if (isId)
                    id = reader.TokenType == JsonTokenType.String ? new RequestId(reader.GetString()) : reader.TokenType == JsonTokenType.Number && reader.TryGetInt64(out var number) ? new RequestId(number) : RequestId.Null;
                reader.Skip();
            }
            // To the end, since what is broken behind it is no JSON at all.
            while (reader.Read())
            {
            }
            return (true, hasMethod ? id : RequestId.Null);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            return (false, RequestId.Null);
        }
    }
}
