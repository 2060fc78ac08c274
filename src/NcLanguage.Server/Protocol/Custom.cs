namespace NcLanguage.Server.Protocol;

// Requests of our own, described in DEVELOPERS.md. What is not known is left out of the answers.

internal sealed record StateAtParams(TextDocumentIdentifier TextDocument, Position Position);

internal sealed record HolesParams(TextDocumentIdentifier TextDocument);

internal sealed record MotionViewParams(TextDocumentIdentifier TextDocument, string? Nonce = null);

internal sealed record PageAnswer(string Html);

internal sealed record ExecuteCommandParams(string Command, System.Text.Json.JsonElement[]? Arguments = null);

internal sealed record ExecuteCommandOptions(string[] Commands);

internal sealed record ShowDocumentParams(string Uri, bool External);
