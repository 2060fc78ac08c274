using System.Text.Json;
using NcLanguage.Editing;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Features;
using NcLanguage.Server.Jobs;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server;

/// <content>The requests: each answered from a snapshot by its feature.</content>
sealed partial class ServerSession
{
    public Task<Protocol.Hover?> HoverAsync(HoverParams request, CancellationToken cancellationToken) =>
        _jobDocuments.IsOpen(request.TextDocument.Uri)
            ? Task.FromResult(_jobFiles.Hover(_jobDocuments.Find(request.TextDocument.Uri), request.Position))
            : _documents.ReadAsync(InView(request.TextDocument, request.Position), context => HoverFeature.Answer(context, request.Position), cancellationToken);

    public Task<JsonElement> CodeActionAsync(CodeActionParams request, CancellationToken cancellationToken) =>
        _jobDocuments.IsOpen(request.TextDocument.Uri)
            ? Task.FromResult(EditCommand.Answer(_client, () => _jobFixes.Answer(_jobDocuments.Find(request.TextDocument.Uri), request.Range, request.Context?.Only)))
            : _documents.ReadAsync(At(request.TextDocument, request.Range.Start), context => EditCommand.Answer(_client, () => CodeActionFeature.Answer(context, request.Range, request.Context)), cancellationToken);

    public Task<CodeAction> ResolveCodeActionAsync(CodeAction request, CancellationToken cancellationToken) =>
        request.Data is { } data
            ? ReadAsync(data.Uri, request, context => CodeActionFeature.Resolve(context, request), cancellationToken)
            : Task.FromResult(request);

    public Task<InlayHint[]> InlayHintAsync(InlayHintParams request, CancellationToken cancellationToken) =>
        ReadAsync(InView(request.TextDocument, request.Range.Start), [], context => InlayHintFeature.Answer(context, request.Range), cancellationToken);

    public Task<InlayHint> ResolveInlayHintAsync(InlayHint request, CancellationToken cancellationToken) =>
        request.Data is { } data ? ReadAsync(data.Uri, request, context => InlayHintFeature.Resolve(context, request), cancellationToken) : Task.FromResult(request);

    public Task<JsonElement> DocumentSymbolAsync(DocumentSymbolParams request, CancellationToken cancellationToken) =>
        ReadAsync(request.TextDocument.Uri, DocumentSymbolFeature.Nothing, DocumentSymbolFeature.Answer, cancellationToken);

    public Task<Location[]> DefinitionAsync(TextDocumentPositionParams request, CancellationToken cancellationToken) =>
        _jobDocuments.IsOpen(request.TextDocument.Uri)
            ? OfJobFile(request.TextDocument.Uri, document => _jobFiles.Definition(document, request.Position, cancellationToken), cancellationToken)
            : _documents.ReadAsync(At(request.TextDocument, request.Position), context => NavigationFeature.Definition(context, request.Position), cancellationToken);

    /// <summary>A program declares nothing: where something is defined is all there is.</summary>
    public Task<Location[]> DeclarationAsync(TextDocumentPositionParams request, CancellationToken cancellationToken) => DefinitionAsync(request, cancellationToken);

    public Task<Location[]> ReferencesAsync(ReferenceParams request, CancellationToken cancellationToken) =>
        _jobDocuments.IsOpen(request.TextDocument.Uri)
            ? OfJobFile(request.TextDocument.Uri, document => _jobFiles.References(document, request.Position, cancellationToken), cancellationToken)
            : _documents.ReadAsync(At(request.TextDocument, request.Position), context => NavigationFeature.References(context, request.Position, request.Context.IncludeDeclaration), cancellationToken);

    public Task<DocumentHighlight[]> DocumentHighlightAsync(TextDocumentPositionParams request, CancellationToken cancellationToken) =>
        ReadAsync(At(request.TextDocument, request.Position), [], context => NavigationFeature.Highlights(context, request.Position), cancellationToken);

    public Task<PrepareRenameResult?> PrepareRenameAsync(TextDocumentPositionParams request, CancellationToken cancellationToken) =>
        ReadAsync<PrepareRenameResult?>(At(request.TextDocument, request.Position), null, context => RenameFeature.Prepare(context, request.Position), cancellationToken);

    public Task<WorkspaceEdit> RenameAsync(RenameParams request, CancellationToken cancellationToken) =>
        WorkProgress.DuringAsync(request.WorkDoneToken, "Renaming in the programs of the folder", rpc.NotifyFirstAsync, () =>
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
        ReadAsync<SemanticTokensResult?>(InView(request.TextDocument, request.Range.Start), null, context => SemanticTokenFeature.InRange(context, request.Range), cancellationToken);

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
        WorkProgress.DuringAsync<SymbolInformation[]>(request.WorkDoneToken, "Looking through the programs of the folder", rpc.NotifyFirstAsync, async () =>
        {
            var open = await _documents.ReadAllAsync(context => WorkspaceSymbolFeature.Open(context, request.Query), cancellationToken).ConfigureAwait(false);
            return [.. open.SelectMany(symbols => symbols), .. await Task.Run(() => _workspaceSymbols.OnDisk(request.Query, cancellationToken), cancellationToken).ConfigureAwait(false)];
        });

    public Task<CompletionList> CompletionAsync(CompletionParams request, CancellationToken cancellationToken) =>
        _jobDocuments.IsOpen(request.TextDocument.Uri)
            ? Task.FromResult(_jobFiles.Completion(_jobDocuments.Find(request.TextDocument.Uri), request.Position))
            : _documents.ReadAsync(InView(request.TextDocument, request.Position), context => CompletionFeature.Answer(context, request.Position), cancellationToken);

    public Task<CompletionItem> ResolveCompletionAsync(CompletionItem request, CancellationToken cancellationToken) =>
        Task.FromResult(CompletionFeature.Resolve(_client, request));

    public Task<SignatureHelp?> SignatureHelpAsync(SignatureHelpParams request, CancellationToken cancellationToken) =>
        ReadAsync<SignatureHelp?>(InView(request.TextDocument, request.Position), null, context => SignatureHelpFeature.Answer(context, request.Position), cancellationToken);

    public Task<CodeLens[]> CodeLensAsync(TextDocumentParams request, CancellationToken cancellationToken) =>
        ReadAsync(request.TextDocument.Uri, [], CodeLensFeature.Answer, cancellationToken);

    public Task<CodeLens> ResolveCodeLensAsync(CodeLens request, CancellationToken cancellationToken) =>
        request.Data is { } data ? ReadAsync(data.Uri, request, context => _lenses.Resolve(context, request), cancellationToken) : Task.FromResult(request);

    public Task<WorkspaceEdit?> WillRenameFilesAsync(RenameFilesParams request, CancellationToken cancellationToken) =>
        Task.Run(() => WillRenameFeature.Answer(Errors.Whole(request.Files), _jobs, _positions, _client, _documents.VersionOf, _notices.Tell, cancellationToken), cancellationToken);

    public Task<PageAnswer> MotionViewAsync(MotionViewParams request, CancellationToken cancellationToken) =>
        ReadProgramAsync(request.TextDocument.Uri, context => _pages.MotionView(context, request.Nonce), cancellationToken);

    public Task<PageAnswer> SetupSheetAsync(TextDocumentParams request, CancellationToken cancellationToken) =>
        ReadProgramAsync(request.TextDocument.Uri, _pages.SetupSheet, cancellationToken);

    public async Task<string> ExecuteCommandAsync(ExecuteCommandParams request, CancellationToken cancellationToken)
    {
        if (EditCommand.EditOf(request) is { } edit)
        {
            _ = rpc.RequestAsync(Methods.ApplyEdit, new ApplyEditParams(edit));
            return "";
        }
        var uri = PageFeature.DocumentOf(request) ?? throw PageFeature.Refused(request);
        var path = await WorkProgress.DuringAsync(request.WorkDoneToken, "Writing the page", rpc.NotifyFirstAsync,
            () => ReadProgramAsync(uri, context => _pages.Write(context, request.Command), cancellationToken)).ConfigureAwait(false);
        if (_client.ShowsDocuments)
            _ = rpc.RequestAsync(Methods.ShowDocument, new ShowDocumentParams(DocumentUri.FromPath(path), External: true));
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

    /// <summary>Answers from a program's snapshot. A setup or machine file has findings only: it gets the empty answer.</summary>
    Task<T> ReadAsync<T>(Asked asked, T empty, Func<FeatureContext, T> answer, CancellationToken cancellationToken) =>
        _jobDocuments.IsOpen(asked.Uri) ? Task.FromResult(empty) : _documents.ReadAsync(asked, answer, cancellationToken);

    static Asked At(TextDocumentIdentifier document, Position position) => new(document.Uri, position);

    static Asked InView(TextDocumentIdentifier document, Position position) => new(document.Uri, position, InView: true);

    /// <summary>Answers from a program's snapshot; where a setup file is named, from that of the program it is for.</summary>
    Task<T> ReadProgramAsync<T>(string uri, Func<FeatureContext, T> answer, CancellationToken cancellationToken)
    {
        if (!_jobDocuments.IsOpen(uri))
            return _documents.ReadAsync(uri, answer, cancellationToken);
        var path = ProgramOfSetup.Find(_jobDocuments.Find(uri).Path, _jobs);
        var program = _jobs.UriOf(path);
        return _documents.VersionOf(program) is null
            ? Task.Run(() => answer(_onDisk.Read(path, cancellationToken) ?? throw Errors.DocumentNotOpen(program)), cancellationToken)
            : _documents.ReadAsync(program, answer, cancellationToken);
    }

    /// <summary>Answers from a setup, machine or cutting file as it stands now, on a worker.</summary>
    Task<T> OfJobFile<T>(string uri, Func<JobDocument, T> answer, CancellationToken cancellationToken)
    {
        var document = _jobDocuments.Find(uri);
        return Task.Run(() => answer(document), cancellationToken);
    }
}
