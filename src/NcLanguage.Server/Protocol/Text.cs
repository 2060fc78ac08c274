namespace NcLanguage.Server.Protocol;

// Places and documents, as LSP 3.17 names them. Lines and characters count from 0; a character is a byte or a UTF-16 unit,
// whichever encoding the client and the server agreed on.

internal readonly record struct Position(uint Line, uint Character);

internal readonly record struct TextRange(Position Start, Position End);

internal sealed record Location(string Uri, TextRange Range);

internal sealed record TextDocumentIdentifier(string Uri);

internal sealed record VersionedTextDocumentIdentifier(string Uri, int Version);

internal sealed record TextDocumentItem(string Uri, int Version, Utf8Text Text);

internal sealed record DidOpenTextDocumentParams(TextDocumentItem TextDocument);

internal sealed record DidChangeTextDocumentParams(VersionedTextDocumentIdentifier TextDocument, TextDocumentContentChangeEvent[] ContentChanges);

/// <summary>One change; without a range the text replaces the whole document.</summary>
internal sealed record TextDocumentContentChangeEvent(Utf8Text Text, TextRange? Range = null);

internal sealed record DidCloseTextDocumentParams(TextDocumentIdentifier TextDocument);

internal sealed record DidSaveTextDocumentParams(TextDocumentIdentifier TextDocument);

internal sealed record TextEdit(TextRange Range, string NewText);

internal sealed record OptionalVersionedTextDocumentIdentifier(string Uri, int? Version)
{
    // LSP wants the member written even where it is null.
    [System.Text.Json.Serialization.JsonIgnore(Condition = System.Text.Json.Serialization.JsonIgnoreCondition.Never)]
    public int? Version { get; init; } = Version;
}

internal sealed record TextDocumentEdit(OptionalVersionedTextDocumentIdentifier TextDocument, TextEdit[] Edits) : DocumentChange;

/// <summary>One step of a change to the workspace.</summary>
[System.Text.Json.Serialization.JsonConverter(typeof(DocumentChangeConverter))]
internal abstract record DocumentChange;

internal sealed record RenameFile(string OldUri, string NewUri, string Kind = "rename") : DocumentChange;

/// <summary>Edits of documents: with versions where the client takes them, else by address.</summary>
internal sealed record WorkspaceEdit(DocumentChange[]? DocumentChanges = null, Dictionary<string, TextEdit[]>? Changes = null);
