using System.Text.Json.Serialization;

namespace NcLanguage.Server.Protocol;

// Places and documents, as LSP 3.17 names them. Lines and characters count from 0; a character is a byte or a UTF-16 unit,
// whichever encoding the client and the server agreed on.

// Without the mark a member of a value type that is missing would count as 0.
[method: JsonConstructor]
readonly record struct Position(uint Line, uint Character);

[method: JsonConstructor]
readonly record struct TextRange(Position Start, Position End);

sealed record Location(string Uri, TextRange Range);

sealed record TextDocumentIdentifier(string Uri);

sealed record VersionedTextDocumentIdentifier(string Uri, int? Version = null);

sealed record TextDocumentItem(string Uri, int Version, Utf8Text Text);

sealed record DidOpenTextDocumentParams(TextDocumentItem TextDocument);

sealed record DidChangeTextDocumentParams(VersionedTextDocumentIdentifier TextDocument, TextDocumentContentChangeEvent[] ContentChanges);

/// <summary>One change; without a range the text replaces the whole document.</summary>
sealed record TextDocumentContentChangeEvent(Utf8Text Text, TextRange? Range = null);

sealed record DidCloseTextDocumentParams(TextDocumentIdentifier TextDocument);

sealed record DidSaveTextDocumentParams(TextDocumentIdentifier TextDocument);

sealed record TextEdit(TextRange Range, string NewText);

sealed record OptionalVersionedTextDocumentIdentifier(string Uri, int? Version)
{
    // LSP wants the member written even where it is null.
    [JsonIgnore(Condition = JsonIgnoreCondition.Never)]
    public int? Version { get; init; } = Version;
}

sealed record TextDocumentEdit(OptionalVersionedTextDocumentIdentifier TextDocument, TextEdit[] Edits) : DocumentChange;

/// <summary>One step of a change to the workspace.</summary>
[JsonConverter(typeof(DocumentChangeConverter))]
abstract record DocumentChange;

sealed record RenameFile(string OldUri, string NewUri, string Kind = "rename") : DocumentChange;

/// <summary>Edits of documents: with versions where the client takes them, else by address.</summary>
sealed record WorkspaceEdit(DocumentChange[]? DocumentChanges = null, Dictionary<string, TextEdit[]>? Changes = null);
