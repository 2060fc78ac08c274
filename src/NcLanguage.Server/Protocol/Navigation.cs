using System.Text.Json;

namespace NcLanguage.Server.Protocol;

// Places in a program and what is said of them: LSP 3.17, section "Language Features".

sealed record TextDocumentPositionParams(TextDocumentIdentifier TextDocument, Position Position);

sealed record TextDocumentParams(TextDocumentIdentifier TextDocument);

sealed record ReferenceParams(TextDocumentIdentifier TextDocument, Position Position, ReferenceContext Context);

sealed record ReferenceContext(bool IncludeDeclaration);

enum DocumentHighlightKind
{
    Text = 1,
    Read = 2,
    Write = 3,
}

sealed record DocumentHighlight(TextRange Range, DocumentHighlightKind Kind);

sealed record RenameParams(TextDocumentIdentifier TextDocument, Position Position, string NewName, JsonElement? WorkDoneToken = null);

sealed record RenameOptions(bool PrepareProvider, bool WorkDoneProgress);

sealed record PrepareRenameResult(TextRange Range, string Placeholder);

/// <summary>Lines count from 0, both included; <c>kind</c> is comment or region.</summary>
sealed record FoldingRange(int StartLine, int EndLine, string? Kind);

sealed record SelectionRangeParams(TextDocumentIdentifier TextDocument, Position[] Positions);

sealed record SelectionRange(TextRange Range, SelectionRange? Parent = null);

sealed record LinkedEditingRanges(TextRange[] Ranges, string? WordPattern = null);

sealed record DocumentLink(TextRange Range, string Target, string? Tooltip = null);

sealed record DocumentLinkOptions(bool ResolveProvider = false);

sealed record CallHierarchyItem(string Name, SymbolKind Kind, string Uri, TextRange Range, TextRange SelectionRange, CallHierarchyData? Data = null);

/// <summary>What an item of the call hierarchy carries back: the program it was asked for in.</summary>
sealed record CallHierarchyData(string Uri);

sealed record CallHierarchyCallsParams(CallHierarchyItem Item);

sealed record CallHierarchyIncomingCall(CallHierarchyItem From, TextRange[] FromRanges);

sealed record CallHierarchyOutgoingCall(CallHierarchyItem To, TextRange[] FromRanges);

sealed record WorkspaceSymbolOptions(bool WorkDoneProgress);

sealed record WorkspaceSymbolParams(string Query, JsonElement? WorkDoneToken = null);

sealed record SymbolInformation(string Name, SymbolKind Kind, Location Location, string? ContainerName = null);
