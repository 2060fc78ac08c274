namespace NcLanguage.Server.Protocol;

// What the client and the server tell each other at the start. Of the client's capabilities only those that change what
// this server does are read.

sealed record InitializeParams(
    int? ProcessId = null,
    string? RootUri = null,
    string? RootPath = null,
    WorkspaceFolder[]? WorkspaceFolders = null,
    ClientCapabilities? Capabilities = null,
    string? Trace = null,
    System.Text.Json.JsonElement? InitializationOptions = null);

sealed record WorkspaceFolder(string Uri);

sealed record ClientCapabilities(GeneralCapabilities? General = null, WorkspaceCapabilities? Workspace = null, TextDocumentCapabilities? TextDocument = null, WindowCapabilities? Window = null);

sealed record WindowCapabilities(ShowDocumentCapabilities? ShowDocument = null);

sealed record ShowDocumentCapabilities(bool Support = false);

sealed record GeneralCapabilities(string[]? PositionEncodings = null);

sealed record WorkspaceCapabilities(bool ApplyEdit = false, WorkspaceEditCapabilities? WorkspaceEdit = null, DynamicRegistration? DidChangeWatchedFiles = null, RefreshSupport? InlayHint = null, RefreshSupport? SemanticTokens = null, RefreshSupport? Diagnostics = null, bool Configuration = false);

sealed record WorkspaceEditCapabilities(bool DocumentChanges = false, string[]? ResourceOperations = null);

sealed record DynamicRegistration(bool DynamicRegistrationSupported = false)
{
    [System.Text.Json.Serialization.JsonPropertyName("dynamicRegistration")]
    public bool DynamicRegistrationSupported { get; init; } = DynamicRegistrationSupported;
}

sealed record RefreshSupport(bool RefreshSupported = false)
{
    [System.Text.Json.Serialization.JsonPropertyName("refreshSupport")]
    public bool RefreshSupported { get; init; } = RefreshSupported;
}

sealed record TextDocumentCapabilities(
    HoverCapabilities? Hover = null, DocumentSymbolCapabilities? DocumentSymbol = null, CodeActionCapabilities? CodeAction = null,
    PublishDiagnosticsCapabilities? PublishDiagnostics = null, DiagnosticCapabilities? Diagnostic = null, CompletionCapabilities? Completion = null, SignatureHelpCapabilities? SignatureHelp = null,
    InlayHintCapabilities? InlayHint = null);

sealed record InlayHintCapabilities(ResolveSupport? ResolveSupport = null);

sealed record CompletionCapabilities(CompletionItemCapabilities? CompletionItem = null);

sealed record CompletionItemCapabilities(bool SnippetSupport = false, string[]? DocumentationFormat = null);

sealed record SignatureHelpCapabilities(SignatureInformationCapabilities? SignatureInformation = null);

sealed record SignatureInformationCapabilities(string[]? DocumentationFormat = null, ParameterInformationCapabilities? ParameterInformation = null);

sealed record ParameterInformationCapabilities(bool LabelOffsetSupport = false);

sealed record DiagnosticCapabilities;

sealed record HoverCapabilities(string[]? ContentFormat = null);

sealed record DocumentSymbolCapabilities(bool HierarchicalDocumentSymbolSupport = false);

sealed record CodeActionCapabilities(ResolveSupport? ResolveSupport = null, bool DataSupport = false, System.Text.Json.JsonElement? CodeActionLiteralSupport = null);

sealed record ResolveSupport(string[]? Properties = null);

sealed record PublishDiagnosticsCapabilities(bool RelatedInformation = false, bool CodeDescriptionSupport = false);

sealed record InitializeResult(ServerCapabilities Capabilities, ServerInfo ServerInfo);

sealed record ServerInfo(string Name, string Version);

sealed record ServerCapabilities(
    string PositionEncoding,
    TextDocumentSyncOptions TextDocumentSync,
    bool HoverProvider,
    CodeActionOptions CodeActionProvider,
    InlayHintOptions InlayHintProvider,
    bool DocumentSymbolProvider,
    bool DefinitionProvider,
    bool DeclarationProvider,
    bool ReferencesProvider,
    bool DocumentHighlightProvider,
    RenameOptions RenameProvider,
    bool LinkedEditingRangeProvider,
    bool FoldingRangeProvider,
    bool SelectionRangeProvider,
    DocumentLinkOptions DocumentLinkProvider,
    bool CallHierarchyProvider,
    SemanticTokensOptions SemanticTokensProvider,
    bool DocumentFormattingProvider,
    bool DocumentRangeFormattingProvider,
    DocumentOnTypeFormattingOptions DocumentOnTypeFormattingProvider,
    bool InlineValueProvider,
    DiagnosticOptions DiagnosticProvider,
    WorkspaceSymbolOptions WorkspaceSymbolProvider,
    CompletionOptions CompletionProvider,
    SignatureHelpOptions SignatureHelpProvider,
    CodeLensOptions CodeLensProvider,
    WorkspaceServerCapabilities Workspace,
    ExecuteCommandOptions ExecuteCommandProvider);

enum TextDocumentSyncKind
{
    None = 0,
    Full = 1,
    Incremental = 2,
}

sealed record TextDocumentSyncOptions(bool OpenClose, TextDocumentSyncKind Change, SaveOptions Save);

sealed record SaveOptions(bool IncludeText);

sealed record CodeActionOptions(string[] CodeActionKinds, bool ResolveProvider);

sealed record CompletionOptions(string[] TriggerCharacters, bool ResolveProvider);

sealed record SignatureHelpOptions(string[] TriggerCharacters, string[] RetriggerCharacters);
