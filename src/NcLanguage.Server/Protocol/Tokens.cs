namespace NcLanguage.Server.Protocol;

// Colours, values, tidying: LSP 3.17, section "Language Features".

sealed record SemanticTokensOptions(SemanticTokensLegend Legend, bool Range, SemanticTokensFullOptions Full);

sealed record SemanticTokensLegend(string[] TokenTypes, string[] TokenModifiers);

sealed record SemanticTokensFullOptions(bool Delta);

sealed record SemanticTokensRangeParams(TextDocumentIdentifier TextDocument, TextRange Range);

sealed record SemanticTokensDeltaParams(TextDocumentIdentifier TextDocument, string PreviousResultId);

sealed record SemanticTokensResult(string? ResultId, uint[] Data);

sealed record SemanticTokensEdit(uint Start, uint DeleteCount, uint[] Data);

/// <summary>Either the edits that lead from the tokens sent before to those of now, or all tokens.</summary>
sealed record SemanticTokensDelta(string? ResultId, SemanticTokensEdit[]? Edits = null, uint[]? Data = null);

sealed record InlineValueParams(TextDocumentIdentifier TextDocument, TextRange Range, InlineValueContext? Context = null);

/// <param name="StoppedLocation">Where a run stands; its end is the line that comes next.</param>
sealed record InlineValueContext(TextRange? StoppedLocation = null);

sealed record InlineValueText(TextRange Range, string Text);

sealed record DocumentFormattingParams(TextDocumentIdentifier TextDocument);

sealed record DocumentRangeFormattingParams(TextDocumentIdentifier TextDocument, TextRange Range);

sealed record DocumentOnTypeFormattingParams(TextDocumentIdentifier TextDocument, Position Position, string Ch);

sealed record DocumentOnTypeFormattingOptions(string FirstTriggerCharacter);
