using System.Text.Json.Serialization;
using NcLanguage.Editing;
using StreamJsonRpc;
using StreamJsonRpc.Protocol;

namespace NcLanguage.Server.Protocol;

/// <summary>How every message is read and written. Missing members and wrong types are errors; unknown members are skipped.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
// The transport reads and writes these three itself; without them cancelling is silently ignored and the first error ends the connection.
[JsonSerializable(typeof(RequestId))]
[JsonSerializable(typeof(CommonErrorData))]
[JsonSerializable(typeof(object))]
// Client to server.
[JsonSerializable(typeof(InitializeParams))]
[JsonSerializable(typeof(InitializedParams))]
[JsonSerializable(typeof(SetTraceParams))]
[JsonSerializable(typeof(DidOpenTextDocumentParams))]
[JsonSerializable(typeof(DidChangeTextDocumentParams))]
[JsonSerializable(typeof(DidCloseTextDocumentParams))]
[JsonSerializable(typeof(DidSaveTextDocumentParams))]
[JsonSerializable(typeof(DidChangeWatchedFilesParams))]
[JsonSerializable(typeof(HoverParams))]
[JsonSerializable(typeof(CodeActionParams))]
[JsonSerializable(typeof(InlayHintParams))]
[JsonSerializable(typeof(DocumentSymbolParams))]
[JsonSerializable(typeof(StateAtParams))]
[JsonSerializable(typeof(HolesParams))]
[JsonSerializable(typeof(CallHierarchyCallsParams))]
[JsonSerializable(typeof(ReferenceParams))]
[JsonSerializable(typeof(RenameParams))]
[JsonSerializable(typeof(SelectionRangeParams))]
[JsonSerializable(typeof(TextDocumentParams))]
[JsonSerializable(typeof(TextDocumentPositionParams))]
[JsonSerializable(typeof(DocumentDiagnosticParams))]
[JsonSerializable(typeof(DocumentFormattingParams))]
[JsonSerializable(typeof(DocumentOnTypeFormattingParams))]
[JsonSerializable(typeof(DocumentRangeFormattingParams))]
[JsonSerializable(typeof(InlineValueParams))]
[JsonSerializable(typeof(SemanticTokensDeltaParams))]
[JsonSerializable(typeof(SemanticTokensRangeParams))]
[JsonSerializable(typeof(WorkspaceDiagnosticParams))]
[JsonSerializable(typeof(WorkspaceSymbolParams))]
// Server to client.
[JsonSerializable(typeof(InitializeResult))]
[JsonSerializable(typeof(PublishDiagnosticsParams))]
[JsonSerializable(typeof(LogMessageParams))]
[JsonSerializable(typeof(LogTraceParams))]
[JsonSerializable(typeof(RegistrationParams))]
[JsonSerializable(typeof(Protocol.Hover))]
[JsonSerializable(typeof(CodeAction))]
[JsonSerializable(typeof(CodeAction[]))]
[JsonSerializable(typeof(InlayHint[]))]
[JsonSerializable(typeof(DocumentSymbol[]))]
[JsonSerializable(typeof(StateAnswer))]
[JsonSerializable(typeof(HolesAnswer))]
[JsonSerializable(typeof(CallHierarchyIncomingCall[]))]
[JsonSerializable(typeof(CallHierarchyItem[]))]
[JsonSerializable(typeof(CallHierarchyOutgoingCall[]))]
[JsonSerializable(typeof(DocumentHighlight[]))]
[JsonSerializable(typeof(DocumentLink[]))]
[JsonSerializable(typeof(FoldingRange[]))]
[JsonSerializable(typeof(LinkedEditingRanges))]
[JsonSerializable(typeof(Location[]))]
[JsonSerializable(typeof(PrepareRenameResult))]
[JsonSerializable(typeof(SelectionRange[]))]
[JsonSerializable(typeof(WorkspaceEdit))]
[JsonSerializable(typeof(TextDocumentEdit))]
[JsonSerializable(typeof(RenameFile))]
[JsonSerializable(typeof(DocumentDiagnosticReport))]
[JsonSerializable(typeof(InlineValueText[]))]
[JsonSerializable(typeof(SemanticTokensDelta))]
[JsonSerializable(typeof(SemanticTokensResult))]
[JsonSerializable(typeof(SymbolInformation[]))]
[JsonSerializable(typeof(TextEdit[]))]
[JsonSerializable(typeof(WorkspaceDiagnosticReport))]
[JsonSerializable(typeof(CodeLens))]
[JsonSerializable(typeof(CodeLens[]))]
internal sealed partial class ProtocolJson : JsonSerializerContext;
