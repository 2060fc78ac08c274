using Microsoft.Extensions.Logging;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Features;
using NcLanguage.Server.Jobs;
using NcLanguage.Server.Logging;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server;

/// <summary>One client's session: the methods of the contract, each handed to what does the work.</summary>
internal sealed class ServerSession(LspRpc rpc, Lifecycle lifecycle, Tracer tracer, ILogger log) : IServerMethods, IDisposable
{
    private readonly TaskCompletionSource<int> _exit = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly CancellationTokenSource _ended = new();
    private ClientProfile _client = new();
    private DocumentStore _documents = null!;

    /// <summary>Ends with the process's exit code when the client said exit or its process ended.</summary>
    public Task<int> Exit => _exit.Task;

    public Task<InitializeResult> InitializeAsync(InitializeParams request, CancellationToken cancellationToken)
    {
        tracer.Set(request.Trace);
        _client = ClientProfile.From(request.Capabilities);
        string? root = request.WorkspaceFolders is [{ } folder, ..] ? DocumentUri.ToPath(folder.Uri)
            : request.RootUri is { } uri ? DocumentUri.ToPath(uri)
            : request.RootPath;
        var positions = new PositionMapper(_client.PositionEncoding);
        var publisher = new DiagnosticPublisher(diagnostics => rpc.Notify(Methods.PublishDiagnostics, diagnostics), _client, positions);
        _documents = new DocumentStore(new JobLoader(root), publisher, positions, _client, log);
        if (request.ProcessId is { } client) _ = WatchClientAsync(client);

        return Task.FromResult(new InitializeResult(
            new ServerCapabilities(
                _client.PositionEncodingName,
                new TextDocumentSyncOptions(OpenClose: true, TextDocumentSyncKind.Incremental, new SaveOptions(IncludeText: false)),
                HoverProvider: true,
                new CodeActionOptions([CodeActionFeature.QuickFix, CodeActionFeature.FixAll], ResolveProvider: true),
                InlayHintProvider: true,
                DocumentSymbolProvider: true),
            new ServerInfo(LanguageServer.Name, LanguageServer.Version)));
    }

    public Task InitializedAsync(InitializedParams notification)
    {
        if (_client.WatchesFiles) _ = rpc.RequestAsync(Methods.RegisterCapability, WatchedFiles.Registration);
        return Task.CompletedTask;
    }

    public Task ShutdownAsync() => Task.CompletedTask;

    public Task ExitAsync()
    {
        _exit.TrySetResult(lifecycle.IsShutDown ? 0 : 1);
        return Task.CompletedTask;
    }

    public Task SetTraceAsync(SetTraceParams notification)
    {
        tracer.Set(notification.Value);
        return Task.CompletedTask;
    }

    public Task DidOpenAsync(DidOpenTextDocumentParams notification)
    {
        TextDocumentItem document = notification.TextDocument;
        _documents.Open(document.Uri, document.Version, SourceText.From(document.Text.Bytes));
        return Task.CompletedTask;
    }

    public Task DidChangeAsync(DidChangeTextDocumentParams notification)
    {
        _documents.Change(notification.TextDocument.Uri, notification.TextDocument.Version, notification.ContentChanges);
        return Task.CompletedTask;
    }

    public Task DidCloseAsync(DidCloseTextDocumentParams notification)
    {
        _documents.Close(notification.TextDocument.Uri);
        return Task.CompletedTask;
    }

    public Task DidSaveAsync(DidSaveTextDocumentParams notification)
    {
        FilesChanged([notification.TextDocument.Uri]);
        return Task.CompletedTask;
    }

    public Task DidChangeWatchedFilesAsync(DidChangeWatchedFilesParams notification)
    {
        FilesChanged(notification.Changes.Select(change => change.Uri));
        return Task.CompletedTask;
    }

    public Task<Hover?> HoverAsync(HoverParams request, CancellationToken cancellationToken) =>
        _documents.ReadAsync(request.TextDocument.Uri, context => HoverFeature.Answer(context, request.Position), cancellationToken);

    public Task<CodeAction[]> CodeActionAsync(CodeActionParams request, CancellationToken cancellationToken) =>
        _documents.ReadAsync(request.TextDocument.Uri, context => CodeActionFeature.Answer(context, request.Range, request.Context?.Only), cancellationToken);

    public Task<CodeAction> ResolveCodeActionAsync(CodeAction request, CancellationToken cancellationToken) =>
        request.Data is { } data
            ? _documents.ReadAsync(data.Uri, context => CodeActionFeature.Resolve(context, request), cancellationToken)
            : Task.FromResult(request);

    public Task<InlayHint[]> InlayHintAsync(InlayHintParams request, CancellationToken cancellationToken) =>
        _documents.ReadAsync(request.TextDocument.Uri, context => InlayHintFeature.Answer(context, request.Range), cancellationToken);

    public Task<DocumentSymbol[]> DocumentSymbolAsync(DocumentSymbolParams request, CancellationToken cancellationToken) =>
        _documents.ReadAsync(request.TextDocument.Uri, DocumentSymbolFeature.Answer, cancellationToken);

    public void Dispose()
    {
        _ended.Cancel();
        _ended.Dispose();
    }

    private void FilesChanged(IEnumerable<string> uris)
    {
        bool any = _documents.RecheckUsersOf(uris.Select(DocumentUri.ToPath).OfType<string>());
        if (any && _client.RefreshesInlayHints) _ = rpc.RequestAsync(Methods.InlayHintRefresh, null);
    }

    private async Task WatchClientAsync(int processId)
    {
        if (!await ClientProcess.WaitForEndAsync(processId, _ended.Token).ConfigureAwait(false)) return;
        log.ClientEnded(processId);
        _exit.TrySetResult(1);
    }
}
