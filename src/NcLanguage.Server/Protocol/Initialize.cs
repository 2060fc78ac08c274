namespace NcLanguage.Server.Protocol;

// What the client and the server tell each other at the start. Of the client's capabilities only those that change what
// this server does are read.

internal sealed record InitializeParams(
    int? ProcessId = null,
    string? RootUri = null,
    string? RootPath = null,
    WorkspaceFolder[]? WorkspaceFolders = null,
    ClientCapabilities? Capabilities = null,
    string? Trace = null,
    System.Text.Json.JsonElement? InitializationOptions = null);

internal sealed record WorkspaceFolder(string Uri);

internal sealed record ClientCapabilities(GeneralCapabilities? General = null, WorkspaceCapabilities? Workspace = null, TextDocumentCapabilities? TextDocument = null, WindowCapabilities? Window = null);

internal sealed record WindowCapabilities(ShowDocumentCapabilities? ShowDocument = null);

internal sealed record ShowDocumentCapabilities(bool Support = false);

internal sealed record GeneralCapabilities(string[]? PositionEncodings = null);

internal sealed record WorkspaceCapabilities(bool ApplyEdit = false, WorkspaceEditCapabilities? WorkspaceEdit = null, DynamicRegistration? DidChangeWatchedFiles = null, RefreshSupport? InlayHint = null, RefreshSupport? SemanticTokens = null, RefreshSupport? Diagnostics = null, bool Configuration = false);

internal sealed record WorkspaceEditCapabilities(bool DocumentChanges = false, string[]? ResourceOperations = null);

internal sealed record DynamicRegistration(bool DynamicRegistrationSupported = false)
{
    [System.Text.Json.Serialization.JsonPropertyName("dynamicRegistration")]
    public bool DynamicRegistrationSupported { get; init; } = DynamicRegistrationSupported;
}

internal sealed record RefreshSupport(bool RefreshSupported = false)
{
    [System.Text.Json.Serialization.JsonPropertyName("refreshSupport")]
    public bool RefreshSupported { get; init; } = RefreshSupported;
}

internal sealed record TextDocumentCapabilities(
    HoverCapabilities? Hover = null, DocumentSymbolCapabilities? DocumentSymbol = null, CodeActionCapabilities? CodeAction = null,
    PublishDiagnosticsCapabilities? PublishDiagnostics = null, DiagnosticCapabilities? Diagnostic = null, CompletionCapabilities? Completion = null, SignatureHelpCapabilities? SignatureHelp = null,
    InlayHintCapabilities? InlayHint = null);

internal sealed record InlayHintCapabilities(ResolveSupport? ResolveSupport = null);

internal sealed record CompletionCapabilities(CompletionItemCapabilities? CompletionItem = null);

internal sealed record CompletionItemCapabilities(bool SnippetSupport = false, string[]? DocumentationFormat = null);

internal sealed record SignatureHelpCapabilities(SignatureInformationCapabilities? SignatureInformation = null);

internal sealed record SignatureInformationCapabilities(string[]? DocumentationFormat = null, ParameterInformationCapabilities? ParameterInformation = null);

internal sealed record ParameterInformationCapabilities(bool LabelOffsetSupport = false);

internal sealed record DiagnosticCapabilities;

internal sealed record HoverCapabilities(string[]? ContentFormat = null);

internal sealed record DocumentSymbolCapabilities(bool HierarchicalDocumentSymbolSupport = false);

internal sealed record CodeActionCapabilities(ResolveSupport? ResolveSupport = null, bool DataSupport = false, System.Text.Json.JsonElement? CodeActionLiteralSupport = null);

internal sealed record ResolveSupport(string[]? Properties = null);

internal sealed record PublishDiagnosticsCapabilities(bool RelatedInformation = false, bool CodeDescriptionSupport = false);

internal sealed record InitializedParams;

internal sealed record InitializeResult(ServerCapabilities Capabilities, ServerInfo ServerInfo);

internal sealed record ServerInfo(string Name, string Version);

internal sealed record ServerCapabilities(
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

internal enum TextDocumentSyncKind
{
    None = 0,
    Full = 1,
    Incremental = 2,
}

internal sealed record TextDocumentSyncOptions(bool OpenClose, TextDocumentSyncKind Change, SaveOptions Save);

internal sealed record SaveOptions(bool IncludeText);

internal sealed record CodeActionOptions(string[] CodeActionKinds, bool ResolveProvider);

internal sealed record CompletionOptions(string[] TriggerCharacters, bool ResolveProvider);

internal sealed record SignatureHelpOptions(string[] TriggerCharacters, string[] RetriggerCharacters);
