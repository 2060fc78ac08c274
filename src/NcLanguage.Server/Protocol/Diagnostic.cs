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
    bool _wasWritten;

    public TextRange Range { get; } = range;

    public DiagnosticText Text { get; } = text;

    public DiagnosticRelatedInformation[]? RelatedInformation { get; } = relatedInformation;

    /// <summary>The same at other lines.</summary>
    /// <param name="line">Where a line (from 0) of the text that this stands in is found now; asked for lines that are still there only.</param>
    public Diagnostic MovedBy(Func<int, int> line)
    {
        if (RelatedInformation is not { } related)
            return new Diagnostic(Moved(Range, line), Text);
        var moved = new DiagnosticRelatedInformation[related.Length];
        for (var i = 0; i < moved.Length; i++)
            moved[i] = new DiagnosticRelatedInformation(Moved(related[i].Range, line), related[i].Text);
        return new Diagnostic(Moved(Range, line), Text, moved);
    }

    /// <summary>Writes it as JSON. What is written a second time, because it stays where it is, is kept as it was written: it goes out at every key.</summary>
    public void WriteTo(Utf8JsonWriter writer)
    {
        if (_json is null && _wasWritten)
            _json = DiagnosticConverter.Write(this).ToArray();
        _wasWritten = true;
        writer.WriteRawValue(_json ?? DiagnosticConverter.Write(this), skipInputValidation: true);
    }

    static TextRange Moved(TextRange range, Func<int, int> line) =>
        new(range.Start with { Line = (uint)line((int)range.Start.Line) }, range.End with { Line = (uint)line((int)range.End.Line) });
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

/// <summary>A second place that a finding speaks of. The protocol has a location and a message; here what stays the same at every key is one thing.</summary>
[JsonConverter(typeof(RelatedInformationConverter))]
readonly record struct DiagnosticRelatedInformation(TextRange Range, RelatedText Text);

/// <summary>What is said of a second place, and in which document it stands.</summary>
sealed class RelatedText(string uri, string message)
{
    byte[]? _uri;
    byte[]? _message;

    public string Uri { get; } = uri;

    public string Message { get; } = message;

    /// <summary>The address as a JSON string.</summary>
    public ReadOnlySpan<byte> UriJson => _uri ??= JsonSerializer.SerializeToUtf8Bytes(Uri, ProtocolJson.Default.String);

    /// <summary>The message as a JSON string.</summary>
    public ReadOnlySpan<byte> MessageJson => _message ??= JsonSerializer.SerializeToUtf8Bytes(Message, ProtocolJson.Default.String);
}
