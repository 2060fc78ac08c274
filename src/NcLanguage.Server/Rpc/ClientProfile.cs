using NcLanguage.Server.Documents;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Rpc;

/// <summary>What the client can do, as far as the server's answers depend on it.</summary>
internal sealed record ClientProfile
{
    public PositionEncoding PositionEncoding { get; init; }

    public bool VersionedEdits { get; init; }

    public bool RenamesFiles { get; init; }

    public bool ResolvesEdits { get; init; }

    public bool Markdown { get; init; }

    public bool NestedSymbols { get; init; }

    public bool RelatedInformation { get; init; }

    public bool CodeDescriptions { get; init; }

    public bool Snippets { get; init; }

    public bool CompletionMarkdown { get; init; }

    public bool SignatureMarkdown { get; init; }

    /// <summary>Whether a word of a signature may be named by where it stands in the label.</summary>
    public bool WordsByOffset { get; init; }

    public bool WatchesFiles { get; init; }

    /// <summary>Can be asked for its settings.</summary>
    public bool HandsOutSettings { get; init; }

    public bool ShowsDocuments { get; init; }

    public bool RefreshesInlayHints { get; init; }

    public bool RefreshesTokens { get; init; }

    /// <summary>Asks for findings itself, and can be told to ask again. Findings are then not sent unasked: most editors would show them twice.</summary>
    public bool PullsDiagnostics { get; init; }

    public static ClientProfile From(ClientCapabilities? capabilities)
    {
        TextDocumentCapabilities? text = capabilities?.TextDocument;
        WorkspaceCapabilities? workspace = capabilities?.Workspace;
        return new ClientProfile
        {
            PositionEncoding = capabilities?.General?.PositionEncodings?.Contains(Utf8) == true ? PositionEncoding.Utf8 : PositionEncoding.Utf16,
            VersionedEdits = workspace?.WorkspaceEdit?.DocumentChanges == true,
            RenamesFiles = workspace?.WorkspaceEdit?.ResourceOperations?.Contains("rename") == true,
            ResolvesEdits = text?.CodeAction is { DataSupport: true, ResolveSupport.Properties: { } properties } && properties.Contains("edit"),
            Markdown = text?.Hover?.ContentFormat?.Contains("markdown") == true,
            NestedSymbols = text?.DocumentSymbol?.HierarchicalDocumentSymbolSupport == true,
            RelatedInformation = text?.PublishDiagnostics?.RelatedInformation == true,
            CodeDescriptions = text?.PublishDiagnostics?.CodeDescriptionSupport == true,
            Snippets = text?.Completion?.CompletionItem?.SnippetSupport == true,
            CompletionMarkdown = text?.Completion?.CompletionItem?.DocumentationFormat?.Contains("markdown") == true,
            SignatureMarkdown = text?.SignatureHelp?.SignatureInformation?.DocumentationFormat?.Contains("markdown") == true,
            WordsByOffset = text?.SignatureHelp?.SignatureInformation?.ParameterInformation?.LabelOffsetSupport == true,
            WatchesFiles = workspace?.DidChangeWatchedFiles?.DynamicRegistrationSupported == true,
            RefreshesTokens = workspace?.SemanticTokens?.RefreshSupported == true,
            PullsDiagnostics = text?.Diagnostic is not null && workspace?.Diagnostics?.RefreshSupported == true,
            HandsOutSettings = workspace?.Configuration == true,
            ShowsDocuments = capabilities?.Window?.ShowDocument?.Support == true,
            RefreshesInlayHints = workspace?.InlayHint?.RefreshSupported == true,
        };
    }

    /// <summary>The protocol's name of the encoding in force.</summary>
    public string PositionEncodingName => PositionEncoding == PositionEncoding.Utf8 ? Utf8 : "utf-16";

    private const string Utf8 = "utf-8";
}
