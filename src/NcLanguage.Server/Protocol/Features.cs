namespace NcLanguage.Server.Protocol;

sealed record PublishDiagnosticsParams(string Uri, int? Version, Diagnostic[] Diagnostics);

sealed record HoverParams(TextDocumentIdentifier TextDocument, Position Position);

sealed record Hover(MarkupContent Contents, TextRange Range);

sealed record MarkupContent(string Kind, string Value);

sealed record CodeActionParams(TextDocumentIdentifier TextDocument, TextRange Range, CodeActionContext? Context = null);

/// <summary>The kinds asked for (null: all), and whether somebody asked or the editor by itself. The client's own diagnostics are not read: the server has newer ones.</summary>
sealed record CodeActionContext(string[]? Only = null, int? TriggerKind = null)
{
    public const int Automatic = 2;
}

sealed record CodeAction(
    string Title, string? Kind = null, Diagnostic[]? Diagnostics = null, bool? IsPreferred = null, WorkspaceEdit? Edit = null, CodeActionData? Data = null);

/// <summary>What a code action carries back when its edit is asked for: the document and the version it was offered for, and what it writes anew.</summary>
sealed record CodeActionData(string Uri, int Version, RefactoringData? Refactoring = null);

/// <summary>A refactoring by its name and the lines (0-based, both included) it was offered for.</summary>
sealed record RefactoringData(string Name, int First, int Last, bool IsCursor);

sealed record InlayHintParams(TextDocumentIdentifier TextDocument, TextRange Range);

sealed record InlayHintOptions(bool ResolveProvider);

/// <param name="Data">What is carried back when the rest is asked for; null where nothing is left.</param>
sealed record InlayHint(Position Position, HintLabel Label, string? Tooltip = null, bool PaddingLeft = false, bool PaddingRight = false, InlayHintData? Data = null);

/// <summary>The document, the version and the place (line and byte column from 0) that a hint was given for.</summary>
sealed record InlayHintData(string Uri, int Version, int Line, int Column);

sealed record DocumentSymbolParams(TextDocumentIdentifier TextDocument);

enum SymbolKind
{
    Module = 2,
    Class = 5,
    Method = 6,
    Function = 12,
}

sealed record DocumentSymbol(string Name, string? Detail, SymbolKind Kind, TextRange Range, TextRange SelectionRange, DocumentSymbol[] Children);
