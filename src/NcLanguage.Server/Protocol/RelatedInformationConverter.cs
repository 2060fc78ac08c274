using System.Text.Json;
using System.Text.Json.Serialization;

namespace NcLanguage.Server.Protocol;

/// <summary>Reads a second place of a finding, as clients send it back with the finding; it is written with its finding.</summary>
sealed class RelatedInformationConverter : JsonConverter<DiagnosticRelatedInformation>
{
    public override DiagnosticRelatedInformation Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        JsonSerializer.Deserialize(ref reader, ProtocolJson.Default.RelatedInformationMembers) is { } members
            ? new DiagnosticRelatedInformation(members.Location.Range, new RelatedText(members.Location.Uri, members.Message))
            : throw new JsonException("A related place is an object.");

    public override void Write(Utf8JsonWriter writer, DiagnosticRelatedInformation value, JsonSerializerOptions options) =>
        JsonSerializer.Serialize(writer, new RelatedInformationMembers(new Location(value.Text.Uri, value.Range), value.Text.Message), ProtocolJson.Default.RelatedInformationMembers);
}

/// <summary>The members of a related place as the protocol has them.</summary>
sealed record RelatedInformationMembers(Location Location, string Message);
