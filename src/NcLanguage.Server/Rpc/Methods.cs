namespace NcLanguage.Server.Rpc;

/// <summary>The names of the methods this server answers or sends.</summary>
internal static class Methods
{
    public const string Initialize = "initialize";
    public const string Initialized = "initialized";
    public const string Shutdown = "shutdown";
    public const string Exit = "exit";
    public const string CancelRequest = "$/cancelRequest";
    public const string SetTrace = "$/setTrace";
    public const string DidOpen = "textDocument/didOpen";
    public const string DidChange = "textDocument/didChange";
    public const string DidClose = "textDocument/didClose";
    public const string DidSave = "textDocument/didSave";
    public const string DidChangeWatchedFiles = "workspace/didChangeWatchedFiles";
    public const string Hover = "textDocument/hover";
    public const string CodeAction = "textDocument/codeAction";
    public const string CodeActionResolve = "codeAction/resolve";
    public const string InlayHint = "textDocument/inlayHint";
    public const string DocumentSymbol = "textDocument/documentSymbol";
    public const string Definition = "textDocument/definition";
    public const string Declaration = "textDocument/declaration";
    public const string References = "textDocument/references";
    public const string DocumentHighlight = "textDocument/documentHighlight";
    public const string PrepareRename = "textDocument/prepareRename";
    public const string Rename = "textDocument/rename";
    public const string LinkedEditingRange = "textDocument/linkedEditingRange";
    public const string FoldingRange = "textDocument/foldingRange";
    public const string SelectionRange = "textDocument/selectionRange";
    public const string DocumentLink = "textDocument/documentLink";
    public const string PrepareCallHierarchy = "textDocument/prepareCallHierarchy";
    public const string IncomingCalls = "callHierarchy/incomingCalls";
    public const string OutgoingCalls = "callHierarchy/outgoingCalls";
    public const string SemanticTokensFull = "textDocument/semanticTokens/full";
    public const string SemanticTokensDelta = "textDocument/semanticTokens/full/delta";
    public const string SemanticTokensRange = "textDocument/semanticTokens/range";
    public const string Formatting = "textDocument/formatting";
    public const string RangeFormatting = "textDocument/rangeFormatting";
    public const string OnTypeFormatting = "textDocument/onTypeFormatting";
    public const string InlineValue = "textDocument/inlineValue";
    public const string PullDiagnostics = "textDocument/diagnostic";
    public const string WorkspaceDiagnostics = "workspace/diagnostic";
    public const string WorkspaceSymbol = "workspace/symbol";
    public const string Completion = "textDocument/completion";
    public const string CompletionResolve = "completionItem/resolve";
    public const string SignatureHelp = "textDocument/signatureHelp";
    public const string CodeLens = "textDocument/codeLens";
    public const string CodeLensResolve = "codeLens/resolve";
    public const string DidChangeConfiguration = "workspace/didChangeConfiguration";
    public const string DidChangeWorkspaceFolders = "workspace/didChangeWorkspaceFolders";
    public const string WillRenameFiles = "workspace/willRenameFiles";
    public const string ExecuteCommand = "workspace/executeCommand";
    public const string MotionView = "nclanguage/motionView";
    public const string SetupSheet = "nclanguage/setupSheet";
    public const string StateAt = "nclanguage/stateAt";
    public const string Holes = "nclanguage/holes";

    public const string LogTrace = "$/logTrace";
    public const string LogMessage = "window/logMessage";
    public const string PublishDiagnostics = "textDocument/publishDiagnostics";
    public const string ShowDocument = "window/showDocument";
    public const string Configuration = "workspace/configuration";
    public const string RegisterCapability = "client/registerCapability";
    public const string DiagnosticRefresh = "workspace/diagnostic/refresh";
    public const string SemanticTokensRefresh = "workspace/semanticTokens/refresh";
    public const string InlayHintRefresh = "workspace/inlayHint/refresh";
}
