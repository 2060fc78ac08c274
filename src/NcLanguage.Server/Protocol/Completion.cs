namespace NcLanguage.Server.Protocol;

// What stands beside the cursor while typing, as LSP 3.17 names it.

sealed record CompletionParams(TextDocumentIdentifier TextDocument, Position Position);

sealed record CompletionList(bool IsIncomplete, CompletionItem[] Items);

/// <summary>The kinds every client knows.</summary>
enum CompletionItemKind
{
    Function = 3,
    Field = 5,
    Variable = 6,
    Module = 9,
    Value = 12,
    Enum = 13,
    Keyword = 14,
    Snippet = 15,
    Reference = 18,
}

enum InsertTextFormat
{
    PlainText = 1,
    Snippet = 2,
}

/// <summary>One item; a client hands the whole of it back when it asks for its documentation.</summary>
/// <param name="Data">The topic that the documentation is found by.</param>
sealed record CompletionItem(
    string Label, CompletionItemKind? Kind = null, string? Detail = null, MarkupContent? Documentation = null, string? SortText = null, string? FilterText = null,
    InsertTextFormat? InsertTextFormat = null, TextEdit? TextEdit = null, string? Data = null, TextEdit[]? AdditionalTextEdits = null);

sealed record SignatureHelpParams(TextDocumentIdentifier TextDocument, Position Position);

sealed record SignatureHelp(SignatureInformation[] Signatures, uint ActiveSignature, uint ActiveParameter);

sealed record SignatureInformation(string Label, MarkupContent Documentation, ParameterInformation[] Parameters, uint ActiveParameter);

sealed record ParameterInformation(ParameterLabel Label, string Documentation);
