using NcLanguage.Editing;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Rpc;

/// <summary>What the client can do, as far as the server's answers depend on it.</summary>
sealed record ClientProfile
{
    public PositionEncoding PositionEncoding { get; init; }

    public bool VersionedEdits { get; init; }

    public bool RenamesFiles { get; init; }

    public bool ResolvesEdits { get; init; }

    /// <summary>Knows code actions with an edit of their own; other clients know commands only.</summary>
    public bool CodeActionLiterals { get; init; }

    /// <summary>Makes an edit that the server asks for.</summary>
    public bool AppliesEdits { get; init; }

    /// <summary>Whether hovers may be Markdown.</summary>
    public bool HoverMarkdown { get; init; }

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

    /// <summary>Asks for a hint's tooltip when somebody looks at it.</summary>
    public bool ResolvesHintTooltips { get; init; }

    /// <summary>Asks for the place that a hint leads to.</summary>
    public bool ResolvesHintPlaces { get; init; }

    public bool RefreshesTokens { get; init; }

    /// <summary>Asks for findings itself, and can be told to ask again. Findings are then not sent unasked: most editors would show them twice.</summary>
    public bool PullsDiagnostics { get; init; }

    public static ClientProfile From(ClientCapabilities? capabilities)
    {
        var text = capabilities?.TextDocument;
        var workspace = capabilities?.Workspace;
        return new ClientProfile
        {
            PositionEncoding = capabilities?.General?.PositionEncodings?.Contains(Utf8) == true ? PositionEncoding.Utf8 : PositionEncoding.Utf16,
            VersionedEdits = workspace?.WorkspaceEdit?.DocumentChanges == true,
            RenamesFiles = workspace?.WorkspaceEdit?.ResourceOperations?.Contains("rename") == true,
            ResolvesEdits = text?.CodeAction is { DataSupport: true, ResolveSupport.Properties: { } properties } && properties.Contains("edit"),
            // Who resolves an action, or keeps its data, knows them too.
            CodeActionLiterals = text?.CodeAction is { } actions && (actions.CodeActionLiteralSupport is { ValueKind: System.Text.Json.JsonValueKind.Object } || actions.ResolveSupport is not null || actions.DataSupport),
            AppliesEdits = workspace?.ApplyEdit == true,
            HoverMarkdown = PrefersMarkdown(text?.Hover?.ContentFormat),
            NestedSymbols = text?.DocumentSymbol?.HierarchicalDocumentSymbolSupport == true,
            RelatedInformation = text?.PublishDiagnostics?.RelatedInformation == true,
            CodeDescriptions = text?.PublishDiagnostics?.CodeDescriptionSupport == true,
            Snippets = text?.Completion?.CompletionItem?.SnippetSupport == true,
            CompletionMarkdown = PrefersMarkdown(text?.Completion?.CompletionItem?.DocumentationFormat),
            SignatureMarkdown = PrefersMarkdown(text?.SignatureHelp?.SignatureInformation?.DocumentationFormat),
            WordsByOffset = text?.SignatureHelp?.SignatureInformation?.ParameterInformation?.LabelOffsetSupport == true,
            WatchesFiles = workspace?.DidChangeWatchedFiles?.DynamicRegistrationSupported == true,
            RefreshesTokens = workspace?.SemanticTokens?.RefreshSupported == true,
            PullsDiagnostics = text?.Diagnostic is not null && workspace?.Diagnostics?.RefreshSupported == true,
            HandsOutSettings = workspace?.Configuration == true,
            ShowsDocuments = capabilities?.Window?.ShowDocument?.Support == true,
            ResolvesHintTooltips = text?.InlayHint?.ResolveSupport?.Properties?.Contains("tooltip") == true,
            ResolvesHintPlaces = text?.InlayHint?.ResolveSupport?.Properties?.Contains("label.location") == true,
            RefreshesInlayHints = workspace?.InlayHint?.RefreshSupported == true,
        };
    }

    /// <summary>A hover as the client shows it.</summary>
    public MarkupContent HoverText(string markdown) => Markup(HoverMarkdown, markdown);

    /// <summary>The text beside a completion as the client shows it.</summary>
    public MarkupContent CompletionText(string markdown) => Markup(CompletionMarkdown, markdown);

    /// <summary>The text of a signature as the client shows it.</summary>
    public MarkupContent SignatureText(string markdown) => Markup(SignatureMarkdown, markdown);

    static MarkupContent Markup(bool asMarkdown, string markdown) =>
        asMarkdown ? new MarkupContent(MarkdownKind, markdown) : new MarkupContent(PlainTextKind, PlainText.Of(markdown));

    // The client names what it likes best first.
    static bool PrefersMarkdown(string[]? formats) => formats?.FirstOrDefault(format => format is MarkdownKind or PlainTextKind) == MarkdownKind;

    const string MarkdownKind = "markdown";
    const string PlainTextKind = "plaintext";

    /// <summary>The protocol's name of the encoding in force.</summary>
    public string PositionEncodingName => PositionEncoding == PositionEncoding.Utf8 ? Utf8 : "utf-16";

    const string Utf8 = "utf-8";
}
