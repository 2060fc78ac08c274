namespace NcLanguage.Server.Protocol;

// Requests of our own, described in DEVELOPERS.md. What is not known is left out of the answers.

internal sealed record StateAtParams(TextDocumentIdentifier TextDocument, Position Position);

internal sealed record HolesParams(TextDocumentIdentifier TextDocument);
