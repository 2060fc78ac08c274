using System.Text.Json;

namespace NcLanguage.Server.Protocol;

// Places in a program and what is said of them: LSP 3.17, section "Language Features".

internal sealed record TextDocumentPositionParams(TextDocumentIdentifier TextDocument, Position Position);

internal sealed record TextDocumentParams(TextDocumentIdentifier TextDocument);

internal sealed record ReferenceParams(TextDocumentIdentifier TextDocument, Position Position, ReferenceContext Context);

internal sealed record ReferenceContext(bool IncludeDeclaration);

internal enum DocumentHighlightKind
{
    Text = 1,
    Read = 2,
    Write = 3,
}

internal sealed record DocumentHighlight(TextRange Range, DocumentHighlightKind Kind);

internal sealed record RenameParams(TextDocumentIdentifier TextDocument, Position Position, string NewName, JsonElement? WorkDoneToken = null);

internal sealed record RenameOptions(bool PrepareProvider, bool WorkDoneProgress);

internal sealed record PrepareRenameResult(TextRange Range, string Placeholder);

/// <summary>Lines count from 0, both included; <c>kind</c> is comment or region.</summary>
internal sealed record FoldingRange(int StartLine, int EndLine, string? Kind);

internal sealed record SelectionRangeParams(TextDocumentIdentifier TextDocument, Position[] Positions);

internal sealed record SelectionRange(TextRange Range, SelectionRange? Parent = null);

internal sealed record LinkedEditingRanges(TextRange[] Ranges, string? WordPattern = null);

internal sealed record DocumentLink(TextRange Range, string Target, string? Tooltip = null);

internal sealed record DocumentLinkOptions(bool ResolveProvider = false);

internal sealed record CallHierarchyItem(string Name, SymbolKind Kind, string Uri, TextRange Range, TextRange SelectionRange, CallHierarchyData? Data = null);

/// <summary>What an item of the call hierarchy carries back: the program it was asked for in.</summary>
internal sealed record CallHierarchyData(string Uri);

internal sealed record CallHierarchyCallsParams(CallHierarchyItem Item);

internal sealed record CallHierarchyIncomingCall(CallHierarchyItem From, TextRange[] FromRanges);

internal sealed record CallHierarchyOutgoingCall(CallHierarchyItem To, TextRange[] FromRanges);

internal sealed record WorkspaceSymbolOptions(bool WorkDoneProgress);

internal sealed record WorkspaceSymbolParams(string Query, JsonElement? WorkDoneToken = null);

internal sealed record SymbolInformation(string Name, SymbolKind Kind, Location Location, string? ContainerName = null);
