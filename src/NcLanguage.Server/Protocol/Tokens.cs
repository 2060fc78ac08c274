namespace NcLanguage.Server.Protocol;

// Colours, values, tidying: LSP 3.17, section "Language Features".

internal sealed record SemanticTokensOptions(SemanticTokensLegend Legend, bool Range, SemanticTokensFullOptions Full);

internal sealed record SemanticTokensLegend(string[] TokenTypes, string[] TokenModifiers);

internal sealed record SemanticTokensFullOptions(bool Delta);

internal sealed record SemanticTokensRangeParams(TextDocumentIdentifier TextDocument, TextRange Range);

internal sealed record SemanticTokensDeltaParams(TextDocumentIdentifier TextDocument, string PreviousResultId);

internal sealed record SemanticTokensResult(string? ResultId, uint[] Data);

internal sealed record SemanticTokensEdit(uint Start, uint DeleteCount, uint[] Data);

/// <summary>Either the edits that lead from the tokens sent before to those of now, or all tokens.</summary>
internal sealed record SemanticTokensDelta(string? ResultId, SemanticTokensEdit[]? Edits = null, uint[]? Data = null);

internal sealed record InlineValueParams(TextDocumentIdentifier TextDocument, TextRange Range, InlineValueContext? Context = null);

/// <param name="StoppedLocation">Where a run stands; its end is the line that comes next.</param>
internal sealed record InlineValueContext(TextRange? StoppedLocation = null);

internal sealed record InlineValueText(TextRange Range, string Text);

internal sealed record DocumentFormattingParams(TextDocumentIdentifier TextDocument);

internal sealed record DocumentRangeFormattingParams(TextDocumentIdentifier TextDocument, TextRange Range);

internal sealed record DocumentOnTypeFormattingParams(TextDocumentIdentifier TextDocument, Position Position, string Ch);

internal sealed record DocumentOnTypeFormattingOptions(string FirstTriggerCharacter);
