using NcLanguage.Editing;
using NcLanguage.Server.Protocol;
using PolyType;
using StreamJsonRpc;

namespace NcLanguage.Server.Rpc;

/// <summary>What a client may call. How each is scheduled stands in <see cref="Scheduling.MethodTable"/>.</summary>
[JsonRpcContract]
[GenerateShape(IncludeMethods = MethodShapeFlags.PublicInstance)]
partial interface IServerMethods
{
    [JsonRpcMethod(Methods.Initialize, UseSingleObjectParameterDeserialization = true)]
    Task<InitializeResult> InitializeAsync(InitializeParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.Initialized)]
    Task InitializedAsync();

    [JsonRpcMethod(Methods.Shutdown)]
    Task ShutdownAsync();

    [JsonRpcMethod(Methods.Exit)]
    Task ExitAsync();

    [JsonRpcMethod(Methods.SetTrace, UseSingleObjectParameterDeserialization = true)]
    Task SetTraceAsync(SetTraceParams notification);

    [JsonRpcMethod(Methods.DidOpen, UseSingleObjectParameterDeserialization = true)]
    Task DidOpenAsync(DidOpenTextDocumentParams notification);

    [JsonRpcMethod(Methods.DidChange, UseSingleObjectParameterDeserialization = true)]
    Task DidChangeAsync(DidChangeTextDocumentParams notification);

    [JsonRpcMethod(Methods.DidClose, UseSingleObjectParameterDeserialization = true)]
    Task DidCloseAsync(DidCloseTextDocumentParams notification);

    [JsonRpcMethod(Methods.DidSave, UseSingleObjectParameterDeserialization = true)]
    Task DidSaveAsync(DidSaveTextDocumentParams notification);

    [JsonRpcMethod(Methods.DidChangeWatchedFiles, UseSingleObjectParameterDeserialization = true)]
    Task DidChangeWatchedFilesAsync(DidChangeWatchedFilesParams notification);

    [JsonRpcMethod(Methods.Hover, UseSingleObjectParameterDeserialization = true)]
    Task<Protocol.Hover?> HoverAsync(HoverParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.CodeAction, UseSingleObjectParameterDeserialization = true)]
    Task<System.Text.Json.JsonElement> CodeActionAsync(CodeActionParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.CodeActionResolve, UseSingleObjectParameterDeserialization = true)]
    Task<CodeAction> ResolveCodeActionAsync(CodeAction request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.InlayHint, UseSingleObjectParameterDeserialization = true)]
    Task<InlayHint[]> InlayHintAsync(InlayHintParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.InlayHintResolve, UseSingleObjectParameterDeserialization = true)]
    Task<InlayHint> ResolveInlayHintAsync(InlayHint request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.DocumentSymbol, UseSingleObjectParameterDeserialization = true)]
    Task<System.Text.Json.JsonElement> DocumentSymbolAsync(DocumentSymbolParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.Definition, UseSingleObjectParameterDeserialization = true)]
    Task<Location[]> DefinitionAsync(TextDocumentPositionParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.Declaration, UseSingleObjectParameterDeserialization = true)]
    Task<Location[]> DeclarationAsync(TextDocumentPositionParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.References, UseSingleObjectParameterDeserialization = true)]
    Task<Location[]> ReferencesAsync(ReferenceParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.DocumentHighlight, UseSingleObjectParameterDeserialization = true)]
    Task<DocumentHighlight[]> DocumentHighlightAsync(TextDocumentPositionParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.PrepareRename, UseSingleObjectParameterDeserialization = true)]
    Task<PrepareRenameResult?> PrepareRenameAsync(TextDocumentPositionParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.Rename, UseSingleObjectParameterDeserialization = true)]
    Task<WorkspaceEdit> RenameAsync(RenameParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.LinkedEditingRange, UseSingleObjectParameterDeserialization = true)]
    Task<LinkedEditingRanges?> LinkedEditingRangeAsync(TextDocumentPositionParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.FoldingRange, UseSingleObjectParameterDeserialization = true)]
    Task<FoldingRange[]> FoldingRangeAsync(TextDocumentParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.SelectionRange, UseSingleObjectParameterDeserialization = true)]
    Task<SelectionRange[]> SelectionRangeAsync(SelectionRangeParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.DocumentLink, UseSingleObjectParameterDeserialization = true)]
    Task<DocumentLink[]> DocumentLinkAsync(TextDocumentParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.PrepareCallHierarchy, UseSingleObjectParameterDeserialization = true)]
    Task<CallHierarchyItem[]> PrepareCallHierarchyAsync(TextDocumentPositionParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.IncomingCalls, UseSingleObjectParameterDeserialization = true)]
    Task<CallHierarchyIncomingCall[]> IncomingCallsAsync(CallHierarchyCallsParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.OutgoingCalls, UseSingleObjectParameterDeserialization = true)]
    Task<CallHierarchyOutgoingCall[]> OutgoingCallsAsync(CallHierarchyCallsParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.SemanticTokensFull, UseSingleObjectParameterDeserialization = true)]
    Task<SemanticTokensResult?> SemanticTokensFullAsync(TextDocumentParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.SemanticTokensDelta, UseSingleObjectParameterDeserialization = true)]
    Task<SemanticTokensDelta?> SemanticTokensDeltaAsync(SemanticTokensDeltaParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.SemanticTokensRange, UseSingleObjectParameterDeserialization = true)]
    Task<SemanticTokensResult?> SemanticTokensRangeAsync(SemanticTokensRangeParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.Formatting, UseSingleObjectParameterDeserialization = true)]
    Task<TextEdit[]> FormattingAsync(DocumentFormattingParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.RangeFormatting, UseSingleObjectParameterDeserialization = true)]
    Task<TextEdit[]> RangeFormattingAsync(DocumentRangeFormattingParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.OnTypeFormatting, UseSingleObjectParameterDeserialization = true)]
    Task<TextEdit[]> OnTypeFormattingAsync(DocumentOnTypeFormattingParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.InlineValue, UseSingleObjectParameterDeserialization = true)]
    Task<InlineValueText[]> InlineValueAsync(InlineValueParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.PullDiagnostics, UseSingleObjectParameterDeserialization = true)]
    Task<DocumentDiagnosticReport> PullDiagnosticsAsync(DocumentDiagnosticParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.WorkspaceDiagnostics, UseSingleObjectParameterDeserialization = true)]
    Task<WorkspaceDiagnosticReport> WorkspaceDiagnosticsAsync(WorkspaceDiagnosticParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.WorkspaceSymbol, UseSingleObjectParameterDeserialization = true)]
    Task<SymbolInformation[]> WorkspaceSymbolAsync(WorkspaceSymbolParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.Completion, UseSingleObjectParameterDeserialization = true)]
    Task<CompletionList> CompletionAsync(CompletionParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.CompletionResolve, UseSingleObjectParameterDeserialization = true)]
    Task<CompletionItem> ResolveCompletionAsync(CompletionItem request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.SignatureHelp, UseSingleObjectParameterDeserialization = true)]
    Task<SignatureHelp?> SignatureHelpAsync(SignatureHelpParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.CodeLens, UseSingleObjectParameterDeserialization = true)]
    Task<CodeLens[]> CodeLensAsync(TextDocumentParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.CodeLensResolve, UseSingleObjectParameterDeserialization = true)]
    Task<CodeLens> ResolveCodeLensAsync(CodeLens request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.DidChangeConfiguration, UseSingleObjectParameterDeserialization = true)]
    Task DidChangeConfigurationAsync(DidChangeConfigurationParams notification);

    [JsonRpcMethod(Methods.DidChangeWorkspaceFolders, UseSingleObjectParameterDeserialization = true)]
    Task DidChangeWorkspaceFoldersAsync(DidChangeWorkspaceFoldersParams notification);

    [JsonRpcMethod(Methods.WillRenameFiles, UseSingleObjectParameterDeserialization = true)]
    Task<WorkspaceEdit?> WillRenameFilesAsync(RenameFilesParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.ExecuteCommand, UseSingleObjectParameterDeserialization = true)]
    Task<string> ExecuteCommandAsync(ExecuteCommandParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.MotionView, UseSingleObjectParameterDeserialization = true)]
    Task<PageAnswer> MotionViewAsync(MotionViewParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.SetupSheet, UseSingleObjectParameterDeserialization = true)]
    Task<PageAnswer> SetupSheetAsync(TextDocumentParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.StateAt, UseSingleObjectParameterDeserialization = true)]
    Task<StateAnswer?> StateAtAsync(StateAtParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.Holes, UseSingleObjectParameterDeserialization = true)]
    Task<HolesAnswer> HolesAsync(HolesParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.JobInUse, UseSingleObjectParameterDeserialization = true)]
    Task<JobInUseAnswer?> JobInUseAsync(TextDocumentParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.NewSetup, UseSingleObjectParameterDeserialization = true)]
    Task<NewSetupAnswer?> NewSetupAsync(TextDocumentParams request, CancellationToken cancellationToken);
}
