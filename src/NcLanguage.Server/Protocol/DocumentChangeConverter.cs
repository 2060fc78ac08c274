using System.Text.Json;
using System.Text.Json.Serialization;

namespace NcLanguage.Server.Protocol;

/// <summary>Steps of a change to the workspace have no common mark: one on files has a kind, one on a document has none.</summary>
sealed class DocumentChangeConverter : JsonConverter<DocumentChange>
{
    public override DocumentChange? Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        using var step = JsonDocument.ParseValue(ref reader);
        return step.RootElement.ValueKind == JsonValueKind.Object && step.RootElement.TryGetProperty("kind", out _)
            ? step.RootElement.Deserialize(ProtocolJson.Default.RenameFile)
            : step.RootElement.Deserialize(ProtocolJson.Default.TextDocumentEdit);
    }

    public override void Write(Utf8JsonWriter writer, DocumentChange value, JsonSerializerOptions options)
    {
        if (value is RenameFile file)
            JsonSerializer.Serialize(writer, file, ProtocolJson.Default.RenameFile);
        else
            JsonSerializer.Serialize(writer, (TextDocumentEdit)value, ProtocolJson.Default.TextDocumentEdit);
    }
}
