using System.Text.Json;
using System.Text.Json.Serialization;

namespace NcLanguage.Server.Protocol;

enum DiagnosticSeverity
{
    Error = 1,
    Warning = 2,
    Information = 3,
    Hint = 4,
}

/// <summary>A finding at its place. The protocol has all members side by side; here what stays the same at every key is one thing, written as JSON once.</summary>
[JsonConverter(typeof(DiagnosticConverter))]
sealed class Diagnostic(TextRange range, DiagnosticText text, DiagnosticRelatedInformation[]? relatedInformation = null)
{
    byte[]? _json;

    public TextRange Range { get; } = range;

    public DiagnosticText Text { get; } = text;

    public DiagnosticRelatedInformation[]? RelatedInformation { get; } = relatedInformation;

    /// <summary>It as JSON, written once: a finding that stays where it is goes out at every key.</summary>
    public ReadOnlySpan<byte> Json => _json ??= DiagnosticConverter.Write(this);
}

/// <summary>What a finding says, wherever it stands.</summary>
sealed class DiagnosticText(
    string message, DiagnosticSeverity? severity = null, string? code = null, CodeDescription? codeDescription = null, string? source = null, string? data = null)
{
    byte[]? _members;

    public string Message { get; } = message;

    public DiagnosticSeverity? Severity { get; } = severity;

    public string? Code { get; } = code;

    public CodeDescription? CodeDescription { get; } = codeDescription;

    public string? Source { get; } = source;

    public string? Data { get; } = data;

    /// <summary>Its members as JSON, without the braces around them.</summary>
    [JsonIgnore]
    public ReadOnlySpan<byte> Members => (_members ??= JsonSerializer.SerializeToUtf8Bytes(this, ProtocolJson.Default.DiagnosticText)).AsSpan(1..^1);
}

sealed record CodeDescription(string Href);

sealed record DiagnosticRelatedInformation(Location Location, string Message);
