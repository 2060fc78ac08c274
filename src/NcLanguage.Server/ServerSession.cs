using System.Text.Json;
using Microsoft.Extensions.Logging;
using NcLanguage.Editing;
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
internal sealed class ServerSession(LspRpc rpc, RequestQueue queue, Lifecycle lifecycle, Tracer tracer, LanguageServerOptions options, ILogger log, FaultLog faults) : IServerMethods, IDisposable
{
    private readonly TaskCompletionSource<int> _exit = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly CancellationTokenSource _ended = new();
    private readonly ServerSettings _settings = new(options.Job, options.Analysis);
    private readonly Notices _notices = new(message => rpc.Notify(Methods.ShowMessage, message));
    private ClientProfile _client = new();
    private JobLoader _jobs = null!;
    private PositionMapper _positions = null!;
    private DocumentStore _documents = null!;
    private JobDocuments _jobDocuments = null!;
    private ProgramsOnDisk _onDisk = null!;
    private JobDiagnostics _jobDiagnostics = null!;
    private WorkspaceChecks _checks = null!;
    private WorkspaceDiagnosticFeature _workspaceDiagnostics = null!;
    private readonly SemanticTokenFeature _tokens = new();
    private readonly CodeLensFeature _lenses = new();
    private readonly PageFeature _pages = new(options.Pages);
    private JobFixFeature _jobFixes = null!;
    private JobFileFeature _jobFiles = null!;
    private WorkspaceSymbolFeature _workspaceSymbols = null!;

    /// <summary>Ends with the process's exit code when the client said exit or its process ended.</summary>
    public Task<int> Exit => _exit.Task;

    public Task<InitializeResult> InitializeAsync(InitializeParams request, CancellationToken cancellationToken)
    {
        tracer.Set(request.Trace);
        _client = ClientProfile.From(request.Capabilities);
        var positions = new PositionMapper(_client.PositionEncoding);
        Action<PublishDiagnosticsParams> publish = diagnostics => rpc.Notify(Methods.PublishDiagnostics, diagnostics);
        if (request.InitializationOptions is { } settings) Take(settings);
        JobLoader jobs = _jobs = new JobLoader(options.Files, _settings) { Roots = [.. Roots(request)] };
        _positions = positions;
        var links = new ReferenceLinks(_client.CodeDescriptions ? options.WriteReference : null, log);
        // Findings that were asked for while there were no pages yet are asked for again.
        links.Settled += () =>
        {
            if (links.HasPages && _client.PullsDiagnostics) rpc.Refresh(Methods.DiagnosticRefresh);
        };
        JobDiagnostics jobDiagnostics = _jobDiagnostics = new JobDiagnostics(
            publish, positions, links, (path, workspace) => _client.PullsDiagnostics && (jobs.IsOpen(path) || (workspace && jobs.IsInWorkspace(path))));
        _jobFiles = new JobFileFeature(_client, positions, jobs);
        _jobFixes = new JobFixFeature(_client, positions, jobDiagnostics);
        var publisher = new DiagnosticPublisher(publish, _client, positions, links);
        _onDisk = new ProgramsOnDisk(jobs, _settings, publisher, positions, _client);
        _documents = new DocumentStore(jobs, _settings, publisher, jobDiagnostics, positions, _client, _notices, faults);
        _workspaceSymbols = new WorkspaceSymbolFeature(jobs, positions);
        _jobDocuments = new JobDocuments(jobs, jobDiagnostics, positions);
        _checks = new WorkspaceChecks(jobs, _onDisk, jobDiagnostics, links, log, faults);
        links.Settled += _checks.AllChanged;
        _workspaceDiagnostics = new WorkspaceDiagnosticFeature(_documents, _jobDocuments, _checks, jobDiagnostics, rpc.Notify);
        if (request.ProcessId is { } client) _ = WatchClientAsync(client);

        return Task.FromResult(new InitializeResult(Announcement.For(_client), new ServerInfo(LanguageServer.Name, LanguageServer.Version)));
    }

    public Task InitializedAsync(InitializedParams notification)
    {
        _notices.Begin();
        _ = _client.WatchesFiles
            ? rpc.RequestAsync(Methods.RegisterCapability, WatchedFiles.Registration)
            : FilePoll.RunAsync(() => InTurn(() => _documents.JobsInUse), changed => InTurn(() => FilesChanged(changed)), _ended.Token);
        if (_client.HandsOutSettings) _ = AskForSettingsAsync();
        return Task.CompletedTask;
    }

    public Task DidChangeConfigurationAsync(DidChangeConfigurationParams notification)
    {
        if (SettingsReader.SectionOf(notification.Settings) is { } settings) TakeSettings(settings);
        else if (_client.HandsOutSettings) _ = AskForSettingsAsync();
        return Task.CompletedTask;
    }

    public Task DidChangeWorkspaceFoldersAsync(DidChangeWorkspaceFoldersParams notification)
    {
        var removed = notification.Event.Removed.Select(folder => DocumentUri.ToPath(folder.Uri)).ToHashSet();
        _jobs.Roots = [.. _jobs.Roots.Where(root => !removed.Contains(root)), .. notification.Event.Added.Select(folder => DocumentUri.ToPath(folder.Uri)).OfType<string>()];
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
        TextDocumentItem document = notification.TextDocument;
        var text = SourceText.From(document.Text.Bytes);
        string? path = DocumentUri.ToPath(document.Uri);
        if (path is not null && WatchedFiles.IsJobFile(path)) FilesChanged(_jobDocuments.Open(document.Uri, path, document.Version, text));
        else RefreshIf(_documents.Open(document.Uri, document.Version, text));
        if (path is not null) _checks.Changed([path]);
        return Task.CompletedTask;
    }

    public Task DidChangeAsync(DidChangeTextDocumentParams notification)
    {
        (string uri, int version) = notification.TextDocument;
        if (_jobDocuments.IsOpen(uri)) FilesChanged(_jobDocuments.Change(uri, version, notification.ContentChanges));
        else RefreshIf(_documents.Change(uri, version, notification.ContentChanges));
        if (DocumentUri.ToPath(uri) is { } path) _checks.TextChanged(path);
        return Task.CompletedTask;
    }

    public Task DidCloseAsync(DidCloseTextDocumentParams notification)
    {
        string uri = notification.TextDocument.Uri;
        if (_jobDocuments.IsOpen(uri)) FilesChanged([_jobDocuments.Close(uri)]);
        else RefreshIf(_documents.Close(uri));
        if (DocumentUri.ToPath(uri) is { } path) _checks.Changed([path]);
        _tokens.Forget(uri);
        return Task.CompletedTask;
    }

    public Task DidSaveAsync(DidSaveTextDocumentParams notification)
    {
        if (DocumentUri.ToPath(notification.TextDocument.Uri) is { } path) FilesChanged([path]);
        return Task.CompletedTask;
    }

    public Task DidChangeWatchedFilesAsync(DidChangeWatchedFilesParams notification)
    {
        FilesChanged([.. notification.Changes.Select(change => DocumentUri.ToPath(change.Uri)).OfType<string>()]);
        return Task.CompletedTask;
    }

    public Task<Protocol.Hover?> HoverAsync(HoverParams request, CancellationToken cancellationToken) =>
        _jobDocuments.IsOpen(request.TextDocument.Uri)
            ? Task.FromResult(_jobFiles.Hover(_jobDocuments.Find(request.TextDocument.Uri), request.Position))
            : _documents.ReadAsync(At(request.TextDocument, request.Position), context => HoverFeature.Answer(context, request.Position), cancellationToken);

    public Task<CodeAction[]> CodeActionAsync(CodeActionParams request, CancellationToken cancellationToken) =>
        _jobDocuments.IsOpen(request.TextDocument.Uri)
            ? Task.FromResult(_jobFixes.Answer(_jobDocuments.Find(request.TextDocument.Uri), request.Range, request.Context?.Only))
            : _documents.ReadAsync(At(request.TextDocument, request.Range.Start), context => CodeActionFeature.Answer(context, request.Range, request.Context), cancellationToken);

    public Task<CodeAction> ResolveCodeActionAsync(CodeAction request, CancellationToken cancellationToken) =>
        request.Data is { } data
            ? ReadAsync(data.Uri, request, context => CodeActionFeature.Resolve(context, request), cancellationToken)
            : Task.FromResult(request);

    public Task<InlayHint[]> InlayHintAsync(InlayHintParams request, CancellationToken cancellationToken) =>
        ReadAsync(At(request.TextDocument, request.Range.Start), [], context => InlayHintFeature.Answer(context, request.Range), cancellationToken);

    public Task<InlayHint> ResolveInlayHintAsync(InlayHint request, CancellationToken cancellationToken) =>
        request.Data is { } data ? ReadAsync(data.Uri, request, context => InlayHintFeature.Resolve(context, request), cancellationToken) : Task.FromResult(request);

    public Task<DocumentSymbol[]> DocumentSymbolAsync(DocumentSymbolParams request, CancellationToken cancellationToken) =>
        ReadAsync(request.TextDocument.Uri, [], DocumentSymbolFeature.Answer, cancellationToken);

    public Task<Location[]> DefinitionAsync(TextDocumentPositionParams request, CancellationToken cancellationToken) =>
        _jobDocuments.IsOpen(request.TextDocument.Uri)
            ? OfJobFile(request.TextDocument.Uri, document => _jobFiles.Definition(document, request.Position, cancellationToken), cancellationToken)
            : _documents.ReadAsync(At(request.TextDocument, request.Position), context => NavigationFeature.Definition(context, request.Position), cancellationToken);

    public Task<Location[]> DeclarationAsync(TextDocumentPositionParams request, CancellationToken cancellationToken) =>
        _jobDocuments.IsOpen(request.TextDocument.Uri)
            ? OfJobFile(request.TextDocument.Uri, document => _jobFiles.Definition(document, request.Position, cancellationToken), cancellationToken)
            : _documents.ReadAsync(At(request.TextDocument, request.Position), context => NavigationFeature.Definition(context, request.Position), cancellationToken);

    public Task<Location[]> ReferencesAsync(ReferenceParams request, CancellationToken cancellationToken) =>
        _jobDocuments.IsOpen(request.TextDocument.Uri)
            ? OfJobFile(request.TextDocument.Uri, document => _jobFiles.References(document, request.Position, cancellationToken), cancellationToken)
            : _documents.ReadAsync(At(request.TextDocument, request.Position), context => NavigationFeature.References(context, request.Position, request.Context.IncludeDeclaration), cancellationToken);

    public Task<DocumentHighlight[]> DocumentHighlightAsync(TextDocumentPositionParams request, CancellationToken cancellationToken) =>
        ReadAsync(At(request.TextDocument, request.Position), [], context => NavigationFeature.Highlights(context, request.Position), cancellationToken);

    public Task<PrepareRenameResult?> PrepareRenameAsync(TextDocumentPositionParams request, CancellationToken cancellationToken) =>
        ReadAsync<PrepareRenameResult?>(At(request.TextDocument, request.Position), null, context => RenameFeature.Prepare(context, request.Position), cancellationToken);

    public Task<WorkspaceEdit> RenameAsync(RenameParams request, CancellationToken cancellationToken) =>
        WorkProgress.DuringAsync(request.WorkDoneToken, "Renaming in the programs of the folder", rpc.Notify, () =>
            ReadAsync(At(request.TextDocument, request.Position), new WorkspaceEdit(), context => RenameFeature.Rename(context, request.Position, request.NewName, _documents.VersionOf), cancellationToken));

    public Task<LinkedEditingRanges?> LinkedEditingRangeAsync(TextDocumentPositionParams request, CancellationToken cancellationToken) =>
        ReadAsync<LinkedEditingRanges?>(At(request.TextDocument, request.Position), null, context => RenameFeature.Linked(context, request.Position), cancellationToken);

    public Task<FoldingRange[]> FoldingRangeAsync(TextDocumentParams request, CancellationToken cancellationToken) =>
        ReadAsync(request.TextDocument.Uri, [], context => StructureFeature.Foldings(context), cancellationToken);

    public Task<SelectionRange[]> SelectionRangeAsync(SelectionRangeParams request, CancellationToken cancellationToken) =>
        ReadAsync(request.TextDocument.Uri, [], context => StructureFeature.Selections(context, request.Positions), cancellationToken);

    public Task<DocumentLink[]> DocumentLinkAsync(TextDocumentParams request, CancellationToken cancellationToken) =>
        _jobDocuments.IsOpen(request.TextDocument.Uri)
            ? OfJobFile(request.TextDocument.Uri, _jobFiles.Links, cancellationToken)
            : _documents.ReadAsync(request.TextDocument.Uri, context => StructureFeature.Links(context), cancellationToken);

    public Task<CallHierarchyItem[]> PrepareCallHierarchyAsync(TextDocumentPositionParams request, CancellationToken cancellationToken) =>
        ReadAsync(At(request.TextDocument, request.Position), [], context => CallHierarchyFeature.Prepare(context, request.Position), cancellationToken);

    public Task<CallHierarchyIncomingCall[]> IncomingCallsAsync(CallHierarchyCallsParams request, CancellationToken cancellationToken) =>
        ReadAsync(request.Item.Data?.Uri ?? request.Item.Uri, [], context => CallHierarchyFeature.Incoming(context, request.Item), cancellationToken);

    public Task<CallHierarchyOutgoingCall[]> OutgoingCallsAsync(CallHierarchyCallsParams request, CancellationToken cancellationToken) =>
        ReadAsync(request.Item.Data?.Uri ?? request.Item.Uri, [], context => CallHierarchyFeature.Outgoing(context, request.Item), cancellationToken);

    public Task<SemanticTokensResult?> SemanticTokensFullAsync(TextDocumentParams request, CancellationToken cancellationToken) =>
        ReadAsync<SemanticTokensResult?>(request.TextDocument.Uri, null, context => _tokens.Full(context), cancellationToken);

    public Task<SemanticTokensDelta?> SemanticTokensDeltaAsync(SemanticTokensDeltaParams request, CancellationToken cancellationToken) =>
        ReadAsync<SemanticTokensDelta?>(request.TextDocument.Uri, null, context => _tokens.Delta(context, request.PreviousResultId), cancellationToken);

    public Task<SemanticTokensResult?> SemanticTokensRangeAsync(SemanticTokensRangeParams request, CancellationToken cancellationToken) =>
        ReadAsync<SemanticTokensResult?>(At(request.TextDocument, request.Range.Start), null, context => SemanticTokenFeature.InRange(context, request.Range), cancellationToken);

    public Task<TextEdit[]> FormattingAsync(DocumentFormattingParams request, CancellationToken cancellationToken) =>
        ReadAsync(request.TextDocument.Uri, [], context => FormattingFeature.Whole(context), cancellationToken);

    public Task<TextEdit[]> RangeFormattingAsync(DocumentRangeFormattingParams request, CancellationToken cancellationToken) =>
        ReadAsync(At(request.TextDocument, request.Range.Start), [], context => FormattingFeature.Range(context, request.Range), cancellationToken);

    public Task<TextEdit[]> OnTypeFormattingAsync(DocumentOnTypeFormattingParams request, CancellationToken cancellationToken) =>
        ReadAsync(At(request.TextDocument, request.Position), [], context => FormattingFeature.OnType(context, request.Position), cancellationToken);

    public Task<InlineValueText[]> InlineValueAsync(InlineValueParams request, CancellationToken cancellationToken) =>
        ReadAsync(At(request.TextDocument, request.Range.Start), [], context => FormattingFeature.Values(context, request.Range, request.Context), cancellationToken);

    public Task<DocumentDiagnosticReport> PullDiagnosticsAsync(DocumentDiagnosticParams request, CancellationToken cancellationToken) =>
        _jobDocuments.IsOpen(request.TextDocument.Uri)
            ? Task.FromResult(PullDiagnosticFeature.Report(_jobDiagnostics.Of(_jobDocuments.Find(request.TextDocument.Uri)), request.PreviousResultId))
            : _documents.ReadAsync(request.TextDocument.Uri, context => PullDiagnosticFeature.Answer(context, request.PreviousResultId), cancellationToken);

    public Task<WorkspaceDiagnosticReport> WorkspaceDiagnosticsAsync(WorkspaceDiagnosticParams request, CancellationToken cancellationToken) =>
        _workspaceDiagnostics.AnswerAsync(request, cancellationToken);

    public Task<SymbolInformation[]> WorkspaceSymbolAsync(WorkspaceSymbolParams request, CancellationToken cancellationToken) =>
        WorkProgress.DuringAsync<SymbolInformation[]>(request.WorkDoneToken, "Looking through the programs of the folder", rpc.Notify, async () =>
        {
            SymbolInformation[][] open = await _documents.ReadAllAsync(context => WorkspaceSymbolFeature.Open(context, request.Query), cancellationToken).ConfigureAwait(false);
            return [.. open.SelectMany(symbols => symbols), .. await Task.Run(() => _workspaceSymbols.OnDisk(request.Query, cancellationToken), cancellationToken).ConfigureAwait(false)];
        });

    public Task<CompletionList> CompletionAsync(CompletionParams request, CancellationToken cancellationToken) =>
        _jobDocuments.IsOpen(request.TextDocument.Uri)
            ? Task.FromResult(_jobFiles.Completion(_jobDocuments.Find(request.TextDocument.Uri), request.Position))
            : _documents.ReadAsync(At(request.TextDocument, request.Position), context => CompletionFeature.Answer(context, request.Position), cancellationToken);

    public Task<CompletionItem> ResolveCompletionAsync(CompletionItem request, CancellationToken cancellationToken) =>
        Task.FromResult(CompletionFeature.Resolve(_client, request));

    public Task<SignatureHelp?> SignatureHelpAsync(SignatureHelpParams request, CancellationToken cancellationToken) =>
        ReadAsync<SignatureHelp?>(At(request.TextDocument, request.Position), null, context => SignatureHelpFeature.Answer(context, request.Position), cancellationToken);

    public Task<CodeLens[]> CodeLensAsync(TextDocumentParams request, CancellationToken cancellationToken) =>
        ReadAsync(request.TextDocument.Uri, [], CodeLensFeature.Answer, cancellationToken);

    public Task<CodeLens> ResolveCodeLensAsync(CodeLens request, CancellationToken cancellationToken) =>
        request.Data is { } data ? ReadAsync(data.Uri, request, context => _lenses.Resolve(context, request), cancellationToken) : Task.FromResult(request);

    public Task<WorkspaceEdit?> WillRenameFilesAsync(RenameFilesParams request, CancellationToken cancellationToken) =>
        Task.Run(() => WillRenameFeature.Answer(request.Files, _jobs, _positions, _client, _documents.VersionOf, cancellationToken), cancellationToken);

    public Task<PageAnswer> MotionViewAsync(MotionViewParams request, CancellationToken cancellationToken) =>
        ReadProgramAsync(request.TextDocument.Uri, context => _pages.MotionView(context, request.Nonce), cancellationToken);

    public Task<PageAnswer> SetupSheetAsync(TextDocumentParams request, CancellationToken cancellationToken) =>
        ReadProgramAsync(request.TextDocument.Uri, _pages.SetupSheet, cancellationToken);

    public async Task<string> ExecuteCommandAsync(ExecuteCommandParams request, CancellationToken cancellationToken)
    {
        string uri = PageFeature.DocumentOf(request) ?? throw PageFeature.Refused(request);
        string path = await WorkProgress.DuringAsync(request.WorkDoneToken, "Writing the page", rpc.Notify,
            () => ReadProgramAsync(uri, context => _pages.Write(context, request.Command), cancellationToken)).ConfigureAwait(false);
        if (_client.ShowsDocuments) _ = rpc.RequestAsync(Methods.ShowDocument, new ShowDocumentParams(DocumentUri.FromPath(path), External: true));
        return path;
    }

    public Task<StateAnswer?> StateAtAsync(StateAtParams request, CancellationToken cancellationToken) =>
        ReadAsync<StateAnswer?>(At(request.TextDocument, request.Position), null, context => CustomFeatures.StateAt(context, request.Position), cancellationToken);

    public Task<HolesAnswer> HolesAsync(HolesParams request, CancellationToken cancellationToken) =>
        ReadAsync(request.TextDocument.Uri, new HolesAnswer([]), CustomFeatures.Holes, cancellationToken);

    public Task<JobInUseAnswer?> JobInUseAsync(TextDocumentParams request, CancellationToken cancellationToken) =>
        ReadAsync<JobInUseAnswer?>(request.TextDocument.Uri, null, JobInUseFeature.Answer, cancellationToken);

    public Task<NewSetupAnswer?> NewSetupAsync(TextDocumentParams request, CancellationToken cancellationToken) =>
        ReadAsync<NewSetupAnswer?>(request.TextDocument.Uri, null, JobInUseFeature.NewSetup, cancellationToken);

    public void Dispose()
    {
        _ended.Cancel();
        _ended.Dispose();
    }

    /// <summary>Answers from a program's snapshot. A setup or machine file has findings only: it gets the empty answer.</summary>
    private Task<T> ReadAsync<T>(Asked asked, T empty, Func<FeatureContext, T> answer, CancellationToken cancellationToken) =>
        _jobDocuments.IsOpen(asked.Uri) ? Task.FromResult(empty) : _documents.ReadAsync(asked, answer, cancellationToken);

    private static Asked At(TextDocumentIdentifier document, Position position) => new(document.Uri, position);

    /// <summary>Answers from a program's snapshot; where a setup file is named, from that of the program it is for.</summary>
    private Task<T> ReadProgramAsync<T>(string uri, Func<FeatureContext, T> answer, CancellationToken cancellationToken)
    {
        if (!_jobDocuments.IsOpen(uri)) return _documents.ReadAsync(uri, answer, cancellationToken);
        string path = ProgramOfSetup.Find(_jobDocuments.Find(uri).Path, _jobs);
        string program = _jobs.UriOf(path);
        return _documents.VersionOf(program) is null
            ? Task.Run(() => answer(_onDisk.Read(path, cancellationToken) ?? throw Errors.DocumentNotOpen(program)), cancellationToken)
            : _documents.ReadAsync(program, answer, cancellationToken);
    }

    /// <summary>Answers from a setup, machine or cutting file as it stands now, on a worker.</summary>
    private Task<T> OfJobFile<T>(string uri, Func<JobDocument, T> answer, CancellationToken cancellationToken)
    {
        JobDocument document = _jobDocuments.Find(uri);
        return Task.Run(() => answer(document), cancellationToken);
    }

    private async Task AskForSettingsAsync()
    {
        var asked = new ConfigurationParams([new ConfigurationItem(LanguageServer.Name)]);
        if (await rpc.AskAsync<JsonElement[]>(Methods.Configuration, asked).ConfigureAwait(false) is [{ ValueKind: not (JsonValueKind.Null or JsonValueKind.Undefined) } settings, ..])
            await InTurn(() => TakeSettings(settings)).ConfigureAwait(false);
    }

    private bool TakeSettings(JsonElement settings)
    {
        bool isOther = Take(settings);
        if (!isOther) return false;
        RefreshIf(_documents.RecheckAll());
        _checks.AllChanged();
        return true;
    }

    private bool Take(JsonElement settings)
    {
        EditorSettings read = SettingsReader.Read(settings, _notices.Tell);
        faults.TellsAll = read.LogDetails == true;
        return _settings.Take(read);
    }

    private bool FilesChanged(IReadOnlyCollection<string> paths)
    {
        if (paths.Count == 0) return false;
        bool any = _documents.RecheckUsersOf(paths);
        _checks.Changed(paths);
        RefreshIf(any);
        return any;
    }

    private void RefreshIf(bool isRechecked)
    {
        if (!isRechecked) return;
        if (_client.RefreshesInlayHints) rpc.Refresh(Methods.InlayHintRefresh);
        if (_client.RefreshesTokens) rpc.Refresh(Methods.SemanticTokensRefresh);
        if (_client.PullsDiagnostics) rpc.Refresh(Methods.DiagnosticRefresh);
    }

    /// <summary>The workspace's folders; the two older members count only where the newer are missing.</summary>
    private static List<string> Roots(InitializeParams request)
    {
        IEnumerable<string?> roots = request.WorkspaceFolders is { Length: > 0 } folders ? folders.Select(folder => DocumentUri.ToPath(folder.Uri))
            : request.RootUri is { } uri ? [DocumentUri.ToPath(uri)]
            : [request.RootPath];
        return [.. roots.OfType<string>().Where(root => root.Length > 0)];
    }

    /// <summary>Does something as if a message had asked for it: after those before it, alone.</summary>
    private Task<T> InTurn<T>(Func<T> act) => queue.Enqueue(inOrder: true, () => ValueTask.FromResult(act()), _ended.Token);

    private async Task WatchClientAsync(int processId)
    {
        if (!await ClientProcess.WaitForEndAsync(processId, _ended.Token).ConfigureAwait(false)) return;
        log.ClientEnded(processId);
        _exit.TrySetResult(1);
    }
}
