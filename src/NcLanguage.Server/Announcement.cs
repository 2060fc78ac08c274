using NcLanguage.Server.Features;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server;

/// <summary>What the server tells a client that it can do.</summary>
static class Announcement
{
    public static ServerCapabilities For(ClientProfile client) => new(
        client.PositionEncodingName,
        new TextDocumentSyncOptions(OpenClose: true, TextDocumentSyncKind.Incremental, new SaveOptions(IncludeText: false)),
        HoverProvider: true,
        new CodeActionOptions([CodeActionFeature.QuickFix, CodeActionFeature.FixAll, .. RefactorFeature.Kinds], ResolveProvider: true),
        new InlayHintOptions(ResolveProvider: true),
        DocumentSymbolProvider: true,
        DefinitionProvider: true,
        DeclarationProvider: true,
        ReferencesProvider: true,
        DocumentHighlightProvider: true,
        new RenameOptions(PrepareProvider: true, WorkDoneProgress: true),
        LinkedEditingRangeProvider: true,
        FoldingRangeProvider: true,
        SelectionRangeProvider: true,
        new DocumentLinkOptions(),
        CallHierarchyProvider: true,
        SemanticTokenFeature.Options,
        DocumentFormattingProvider: true,
        DocumentRangeFormattingProvider: true,
        new DocumentOnTypeFormattingOptions(FormattingFeature.Trigger),
        InlineValueProvider: true,
        PullDiagnosticFeature.Options,
        new WorkspaceSymbolOptions(WorkDoneProgress: true),
        new CompletionOptions(CompletionFeature.TriggerCharacters, ResolveProvider: true),
        new SignatureHelpOptions(SignatureHelpFeature.TriggerCharacters, SignatureHelpFeature.RetriggerCharacters),
        new CodeLensOptions(ResolveProvider: true),
        new WorkspaceServerCapabilities(new WorkspaceFoldersServerCapabilities(Supported: true, ChangeNotifications: true), WillRenameFeature.Options),
        new ExecuteCommandOptions([.. PageFeature.Commands, .. EditCommand.CommandsFor(client)], WorkDoneProgress: true));
}
