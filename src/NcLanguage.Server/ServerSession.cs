using System.Text.Json;
using Microsoft.Extensions.Logging;
using NcLanguage.Editing;
using NcLanguage.Machine.Files;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Features;
using NcLanguage.Server.Jobs;
using NcLanguage.Server.Logging;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;
using NcLanguage.Server.Scheduling;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server;

/// <summary>One client's session: the methods of the contract, each handed to what does the work.</summary>
sealed partial class ServerSession(LspRpc rpc, RequestQueue queue, Lifecycle lifecycle, Tracer tracer, LanguageServerOptions options, ILogger log, FaultLog faults) : IServerMethods, IDisposable
{
    readonly TaskCompletionSource<int> _exit = new(TaskCreationOptions.RunContinuationsAsynchronously);
    readonly SessionEnd _ended = new();
    readonly ServerSettings _settings = new(options.Job, options.Analysis);
    readonly OddChanges _oddChanges = new(faults);
    readonly Notices _notices = new(message => rpc.Notify(Methods.ShowMessage, message));
    ClientProfile _client = new();
    JobLoader _jobs = null!;
    PositionMapper _positions = null!;
    DocumentStore _documents = null!;
    JobDocuments _jobDocuments = null!;
    ProgramsOnDisk _onDisk = null!;
    JobDiagnostics _jobDiagnostics = null!;
    WorkspaceChecks _checks = null!;
    WorkspaceDiagnosticFeature _workspaceDiagnostics = null!;
    readonly SemanticTokenFeature _tokens = new();
    readonly CodeLensFeature _lenses = new();
    readonly PageFeature _pages = new(options.Pages);
    JobFixFeature _jobFixes = null!;
    JobFileFeature _jobFiles = null!;
    WorkspaceSymbolFeature _workspaceSymbols = null!;

    /// <summary>Ends with the process's exit code when the client said exit or its process ended.</summary>
    public Task<int> Exit => _exit.Task;

    public Task<InitializeResult> InitializeAsync(InitializeParams request, CancellationToken cancellationToken)
    {
        tracer.Set(request.Trace);
        _client = ClientProfile.From(request.Capabilities);
        var positions = new PositionMapper(_client.PositionEncoding);
        Action<PublishDiagnosticsParams> publish = diagnostics => rpc.Notify(Methods.PublishDiagnostics, diagnostics);
        if (request.InitializationOptions is { } settings)
            Take(settings);
        var jobs = _jobs = new JobLoader(options.Files, _settings) { Roots = [.. Roots(request)] };
        _positions = positions;
        var links = new ReferenceLinks(_client.CodeDescriptions ? options.WriteReference : null, log, faults);
        // Findings that were asked for while there were no pages yet are asked for again.
        links.Settled += () =>
        {
            if (links.HasPages && _client.PullsDiagnostics)
                rpc.Refresh(Methods.DiagnosticRefresh);
        };
        var jobDiagnostics = _jobDiagnostics = new JobDiagnostics(
            publish, positions, links, (path, workspace) => _client.PullsDiagnostics && (jobs.IsOpen(path) || (workspace && jobs.IsInWorkspace(path))));
        _jobFiles = new JobFileFeature(_client, positions, jobs);
        _jobFixes = new JobFixFeature(_client, positions, jobDiagnostics);
        var publisher = new DiagnosticPublisher(publish, () => rpc.Refresh(Methods.DiagnosticRefresh), _client, positions, links);
        _onDisk = new ProgramsOnDisk(jobs, _settings, publisher, positions, _client);
        _documents = new DocumentStore(jobs, _settings, publisher, jobDiagnostics, positions, _client, _notices, faults, rpc.LetAnswersPassAsync, () => rpc.Refresh(Methods.InlayHintRefresh));
        _workspaceSymbols = new WorkspaceSymbolFeature(jobs, positions);
        _jobDocuments = new JobDocuments(jobs, jobDiagnostics, positions);
        _checks = new WorkspaceChecks(jobs, _onDisk, jobDiagnostics, links, log, faults);
        links.Settled += _checks.AllChanged;
        _workspaceDiagnostics = new WorkspaceDiagnosticFeature(_documents, _jobDocuments, _checks, jobDiagnostics, rpc.NotifyFirstAsync);
        if (request.ProcessId is { } client)
            _ = WatchClientAsync(client);

        return Task.FromResult(new InitializeResult(Announcement.For(_client), new ServerInfo(LanguageServer.Name, LanguageServer.Version)));
    }

    public Task InitializedAsync()
    {
        _notices.Begin();
        _ = WatchFilesAsync();
        if (_client.HandsOutSettings)
            _ = AskForSettingsAsync();
        return Task.CompletedTask;
    }

    async Task WatchFilesAsync()
    {
        // A client that says it can may still refuse.
        if (!_client.WatchesFiles || !await rpc.RequestAsync(Methods.RegisterCapability, WatchedFiles.Registration).ConfigureAwait(false))
            await FilePoll.RunAsync(() => InTurn<IReadOnlyList<LoadedJob>>(() => [.. _documents.JobsInUse, .. _jobDocuments.JobsInUse]), changed => InTurn(() => FilesChanged(changed)), _ended.Token).ConfigureAwait(false);
    }

    public Task DidChangeConfigurationAsync(DidChangeConfigurationParams notification)
    {
        if (SettingsReader.SectionOf(notification.Settings) is { } settings)
            TakeSettings(settings);
        else if (_client.HandsOutSettings)
            _ = AskForSettingsAsync();
        return Task.CompletedTask;
    }

    public Task DidChangeWorkspaceFoldersAsync(DidChangeWorkspaceFoldersParams notification)
    {
        var removed = Errors.Whole(notification.Event.Removed).Select(folder => DocumentUri.ToPath(folder.Uri)).ToHashSet();
        _jobs.Roots = [.. _jobs.Roots.Where(root => !removed.Contains(root)), .. Errors.Whole(notification.Event.Added).Select(folder => DocumentUri.ToPath(folder.Uri)).OfType<string>()];
        RefreshIf(_documents.RecheckAll());
        _checks.AllChanged();
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
        var document = notification.TextDocument;
        var text = document.Text.ToText();
        var path = DocumentUri.ToPath(document.Uri);
        if (path is not null && JobFileName.IsJobFile(path))
            FilesChanged(_jobDocuments.Open(document.Uri, path, document.Version, text), document.Uri);
        else
            RefreshIf(_documents.Open(document.Uri, document.Version, text));
        if (path is not null)
            _checks.Changed([path]);
        return Task.CompletedTask;
    }

    public Task DidChangeAsync(DidChangeTextDocumentParams notification)
    {
        var uri = notification.TextDocument.Uri;
        var changes = Errors.Whole(notification.ContentChanges);
        var isJobFile = _jobDocuments.IsOpen(uri);
        var held = isJobFile ? _jobDocuments.Find(uri).Version : _documents.VersionOf(uri);
        if (held is { } before)
            _oddChanges.Look(before, notification);
        var version = notification.TextDocument.Version ?? held ?? 0;
        if (isJobFile)
            FilesChanged(_jobDocuments.Change(uri, version, changes), uri);
        else
            RefreshIf(_documents.Change(uri, version, changes));
        if (DocumentUri.ToPath(uri) is { } path)
            _checks.TextChanged(path);
        return Task.CompletedTask;
    }

    public Task DidCloseAsync(DidCloseTextDocumentParams notification)
    {
        var uri = notification.TextDocument.Uri;
        if (_jobDocuments.IsOpen(uri))
            FilesChanged([_jobDocuments.Close(uri)]);
        else
            RefreshIf(_documents.Close(uri));
        if (DocumentUri.ToPath(uri) is { } path)
            _checks.Changed([path]);
        _tokens.Forget(uri);
        return Task.CompletedTask;
    }

    public Task DidSaveAsync(DidSaveTextDocumentParams notification)
    {
        RefreshIf(_documents.Saved(notification.TextDocument.Uri));
        if (DocumentUri.ToPath(notification.TextDocument.Uri) is { } path)
            FilesChanged([path]);
        return Task.CompletedTask;
    }

    public Task DidChangeWatchedFilesAsync(DidChangeWatchedFilesParams notification)
    {
        FilesChanged([.. Errors.Whole(notification.Changes).Select(change => DocumentUri.ToPath(change.Uri)).OfType<string>()]);
        return Task.CompletedTask;
    }

    public void Dispose() => _ended.Dispose();

    async Task AskForSettingsAsync()
    {
        var asked = new ConfigurationParams([new ConfigurationItem(LanguageServer.Name)]);
        if (await rpc.AskAsync<JsonElement[]>(Methods.Configuration, asked).ConfigureAwait(false) is [{ ValueKind: not (JsonValueKind.Null or JsonValueKind.Undefined) } settings, ..])
            await InTurn(() => TakeSettings(settings)).ConfigureAwait(false);
    }

    bool TakeSettings(JsonElement settings)
    {
        var isOther = Take(settings);
        if (!isOther)
            return false;
        RefreshIf(_documents.RecheckAll());
        _checks.AllChanged();
        return true;
    }

    bool Take(JsonElement settings)
    {
        var read = SettingsReader.Read(settings, _notices.Tell);
        faults.TellsAll = read.LogDetails == true;
        return _settings.Take(read);
    }

    /// <param name="by">The open setup, machine or cutting file whose change it is; null for one on disk.</param>
    bool FilesChanged(IReadOnlyCollection<string> paths, string? by = null)
    {
        if (paths.Count == 0)
            return false;
        var any = _jobDocuments.RecheckUsersOf(paths, by) | _documents.RecheckUsersOf(paths);
        _checks.Changed(paths);
        RefreshIf(any);
        return any;
    }

    void RefreshIf(bool isRechecked)
    {
        if (!isRechecked)
            return;
        if (_client.RefreshesInlayHints)
            rpc.Refresh(Methods.InlayHintRefresh);
        if (_client.RefreshesTokens)
            rpc.Refresh(Methods.SemanticTokensRefresh);
        if (_client.PullsDiagnostics)
            rpc.Refresh(Methods.DiagnosticRefresh);
    }

    /// <summary>The workspace's folders; the two older members count only where the newer are missing.</summary>
    static List<string> Roots(InitializeParams request)
    {
        var roots = request.WorkspaceFolders is { Length: > 0 } folders ? Errors.Whole(folders).Select(folder => DocumentUri.ToPath(folder.Uri))
            : request.RootUri is { } uri ? [DocumentUri.ToPath(uri)]
            : [request.RootPath];
        return [.. roots.OfType<string>().Where(root => root.Length > 0)];
    }

    /// <summary>Does something as if a message had asked for it: after those before it, alone.</summary>
    Task<T> InTurn<T>(Func<T> act) => queue.Enqueue(inOrder: true, () => ValueTask.FromResult(act()), _ended.Token);

    async Task WatchClientAsync(int processId)
    {
        if (!await ClientProcess.WaitForEndAsync(processId, _ended.Token).ConfigureAwait(false))
            return;
        log.ClientEnded(processId);
        _exit.TrySetResult(1);
    }
}
