// Which type of vscode-languageserver-protocol goes with which message. The schema beside this file is made of it: node schema.mjs.
import type {
  ApplyWorkspaceEditParams,
  ApplyWorkspaceEditResult,
  CallHierarchyIncomingCall,
  CallHierarchyIncomingCallsParams,
  CallHierarchyItem,
  CallHierarchyOutgoingCall,
  CallHierarchyOutgoingCallsParams,
  CallHierarchyPrepareParams,
  CancelParams,
  CodeAction,
  CodeActionParams,
  CodeLens,
  CodeLensParams,
  Command,
  CompletionItem,
  CompletionList,
  CompletionParams,
  ConfigurationParams,
  Declaration,
  DeclarationLink,
  DeclarationParams,
  Definition,
  DefinitionLink,
  DefinitionParams,
  DidChangeConfigurationParams,
  DidChangeTextDocumentParams,
  DidChangeWatchedFilesParams,
  DidChangeWorkspaceFoldersParams,
  DidCloseTextDocumentParams,
  DidOpenTextDocumentParams,
  DidSaveTextDocumentParams,
  DocumentDiagnosticParams,
  DocumentDiagnosticReport,
  DocumentFormattingParams,
  DocumentHighlight,
  DocumentHighlightParams,
  DocumentLink,
  DocumentLinkParams,
  DocumentOnTypeFormattingParams,
  DocumentRangeFormattingParams,
  DocumentSymbol,
  DocumentSymbolParams,
  ExecuteCommandParams,
  FoldingRange,
  FoldingRangeParams,
  Hover,
  HoverParams,
  InitializeParams,
  InitializeResult,
  InitializedParams,
  InlayHint,
  InlayHintParams,
  InlineValue,
  InlineValueParams,
  LSPAny,
  LinkedEditingRangeParams,
  LinkedEditingRanges,
  Location,
  LogMessageParams,
  LogTraceParams,
  PrepareRenameParams,
  PrepareRenameResult,
  ProgressParams,
  PublishDiagnosticsParams,
  ReferenceParams,
  RegistrationParams,
  RenameFilesParams,
  RenameParams,
  SelectionRange,
  SelectionRangeParams,
  SemanticTokens,
  SemanticTokensDelta,
  SemanticTokensDeltaParams,
  SemanticTokensParams,
  SemanticTokensRangeParams,
  SetTraceParams,
  ShowDocumentParams,
  ShowDocumentResult,
  ShowMessageParams,
  SignatureHelp,
  SignatureHelpParams,
  SymbolInformation,
  TextEdit,
  WorkDoneProgressCreateParams,
  WorkspaceDiagnosticParams,
  WorkspaceDiagnosticReport,
  WorkspaceEdit,
  WorkspaceSymbol,
  WorkspaceSymbolParams,
} from 'vscode-languageserver-protocol';

export interface Messages {
  'initialize': { params: InitializeParams; result: InitializeResult };
  'initialized': { params: InitializedParams };
  'textDocument/didOpen': { params: DidOpenTextDocumentParams };
  'textDocument/didChange': { params: DidChangeTextDocumentParams };
  'textDocument/didClose': { params: DidCloseTextDocumentParams };
  'textDocument/didSave': { params: DidSaveTextDocumentParams };
  'workspace/didChangeWatchedFiles': { params: DidChangeWatchedFilesParams };
  'workspace/didChangeConfiguration': { params: DidChangeConfigurationParams };
  'workspace/didChangeWorkspaceFolders': { params: DidChangeWorkspaceFoldersParams };
  'workspace/willRenameFiles': { params: RenameFilesParams; result: WorkspaceEdit | null };
  'workspace/applyEdit': { params: ApplyWorkspaceEditParams; result: ApplyWorkspaceEditResult };
  'workspace/configuration': { params: ConfigurationParams; result: LSPAny[] };
  'workspace/symbol': { params: WorkspaceSymbolParams; result: SymbolInformation[] | WorkspaceSymbol[] | null };
  'workspace/diagnostic': { params: WorkspaceDiagnosticParams; result: WorkspaceDiagnosticReport };
  'workspace/executeCommand': { params: ExecuteCommandParams; result: LSPAny | null };
  'textDocument/completion': { params: CompletionParams; result: CompletionItem[] | CompletionList | null };
  'completionItem/resolve': { params: CompletionItem; result: CompletionItem };
  'textDocument/signatureHelp': { params: SignatureHelpParams; result: SignatureHelp | null };
  'textDocument/hover': { params: HoverParams; result: Hover | null };
  'textDocument/definition': { params: DefinitionParams; result: Definition | DefinitionLink[] | null };
  'textDocument/declaration': { params: DeclarationParams; result: Declaration | DeclarationLink[] | null };
  'textDocument/references': { params: ReferenceParams; result: Location[] | null };
  'textDocument/documentHighlight': { params: DocumentHighlightParams; result: DocumentHighlight[] | null };
  'textDocument/documentSymbol': { params: DocumentSymbolParams; result: DocumentSymbol[] | SymbolInformation[] | null };
  'textDocument/codeAction': { params: CodeActionParams; result: (Command | CodeAction)[] | null };
  'codeAction/resolve': { params: CodeAction; result: CodeAction };
  'textDocument/codeLens': { params: CodeLensParams; result: CodeLens[] | null };
  'codeLens/resolve': { params: CodeLens; result: CodeLens };
  'textDocument/documentLink': { params: DocumentLinkParams; result: DocumentLink[] | null };
  'textDocument/foldingRange': { params: FoldingRangeParams; result: FoldingRange[] | null };
  'textDocument/selectionRange': { params: SelectionRangeParams; result: SelectionRange[] | null };
  'textDocument/linkedEditingRange': { params: LinkedEditingRangeParams; result: LinkedEditingRanges | null };
  'textDocument/prepareRename': { params: PrepareRenameParams; result: PrepareRenameResult | null };
  'textDocument/rename': { params: RenameParams; result: WorkspaceEdit | null };
  'textDocument/prepareCallHierarchy': { params: CallHierarchyPrepareParams; result: CallHierarchyItem[] | null };
  'callHierarchy/incomingCalls': { params: CallHierarchyIncomingCallsParams; result: CallHierarchyIncomingCall[] | null };
  'callHierarchy/outgoingCalls': { params: CallHierarchyOutgoingCallsParams; result: CallHierarchyOutgoingCall[] | null };
  'textDocument/semanticTokens/full': { params: SemanticTokensParams; result: SemanticTokens | null };
  'textDocument/semanticTokens/full/delta': { params: SemanticTokensDeltaParams; result: SemanticTokens | SemanticTokensDelta | null };
  'textDocument/semanticTokens/range': { params: SemanticTokensRangeParams; result: SemanticTokens | null };
  'textDocument/formatting': { params: DocumentFormattingParams; result: TextEdit[] | null };
  'textDocument/rangeFormatting': { params: DocumentRangeFormattingParams; result: TextEdit[] | null };
  'textDocument/onTypeFormatting': { params: DocumentOnTypeFormattingParams; result: TextEdit[] | null };
  'textDocument/inlayHint': { params: InlayHintParams; result: InlayHint[] | null };
  'inlayHint/resolve': { params: InlayHint; result: InlayHint };
  'textDocument/inlineValue': { params: InlineValueParams; result: InlineValue[] | null };
  'textDocument/diagnostic': { params: DocumentDiagnosticParams; result: DocumentDiagnosticReport };
  'textDocument/publishDiagnostics': { params: PublishDiagnosticsParams };
  'workspace/inlayHint/refresh': { result: null };
  'workspace/semanticTokens/refresh': { result: null };
  'workspace/diagnostic/refresh': { result: null };
  'workspace/codeLens/refresh': { result: null };
  'shutdown': { result: null };
  'exit': {};
  'client/registerCapability': { params: RegistrationParams; result: null };
  'window/logMessage': { params: LogMessageParams };
  'window/showMessage': { params: ShowMessageParams };
  'window/showDocument': { params: ShowDocumentParams; result: ShowDocumentResult };
  'window/workDoneProgress/create': { params: WorkDoneProgressCreateParams; result: null };
  '$/progress': { params: ProgressParams };
  '$/logTrace': { params: LogTraceParams };
  '$/setTrace': { params: SetTraceParams };
  '$/cancelRequest': { params: CancelParams };
}
