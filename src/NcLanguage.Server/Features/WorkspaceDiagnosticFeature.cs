using System.Text.Json;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Features;

/// <summary>workspace/diagnostic: the findings of what is open and of the other files of the workspace's folders. As long as nothing is new the answer waits:
/// a client would ask again and again else. Where the client takes partial results, each file's findings leave when they are there.</summary>
#pragma warning disable CA1001 // A semaphore that is only awaited holds nothing, and a request may outlive the session.
sealed class WorkspaceDiagnosticFeature(
    DocumentStore open, JobDocuments openJobs, WorkspaceChecks checks, JobDiagnostics jobDiagnostics, Func<string, object, Task> notify)
#pragma warning restore CA1001
{
    // Two requests at once would read every file twice.
    readonly SemaphoreSlim _turn = new(1, 1);

    public async Task<WorkspaceDiagnosticReport> AnswerAsync(WorkspaceDiagnosticParams request, CancellationToken cancel)
    {
        jobDiagnostics.WorkspaceIsPulled();
        checks.LookAgain();
        Dictionary<string, string> previous = new(DocumentUri.PathComparer);
        foreach (var id in Errors.Whole(request.PreviousResultIds))
            previous[Key(id.Uri)] = id.Value;
        var progress = new WorkProgress(request.WorkDoneToken, "Checking the programs of the folder", notify);
        while (true)
        {
            Task changed = Task.WhenAny(open.NextAnalysis, checks.NextChange);
            var reports = new Reports(previous, request.PartialResultToken, notify);
            foreach (var report in await open.ReadAllAsync(
                context => PullDiagnosticFeature.InWorkspace(context, previous.GetValueOrDefault(Key(context.Uri))), cancel).ConfigureAwait(false))
                await reports.AddAsync(report, cancel).ConfigureAwait(false);
            foreach (var document in openJobs.All)
                await reports.AddAsync(document.Uri, document.Version, jobDiagnostics.Of(document), cancel).ConfigureAwait(false);
            foreach ((var uri, var items) in jobDiagnostics.OfPrograms())
                await reports.AddAsync(uri, null, items, cancel).ConfigureAwait(false);
            try
            {
                await Task.Run(() => ReadDiskAsync(reports, progress, cancel), cancel).ConfigureAwait(false);
            }
            finally
            {
                await progress.EndAsync().WaitAsync(cancel).ConfigureAwait(false);
            }
            if (await reports.FinishAsync(cancel).ConfigureAwait(false))
                return new WorkspaceDiagnosticReport(reports.Rest);
            await changed.WaitAsync(cancel).ConfigureAwait(false);
        }
    }

    async Task ReadDiskAsync(Reports reports, WorkProgress progress, CancellationToken cancel)
    {
        await _turn.WaitAsync(cancel).ConfigureAwait(false);
        try
        {
            foreach (var file in checks.Check(progress.Report, cancel))
                await reports.AddAsync(file.Uri, null, file.Items, cancel).ConfigureAwait(false);
        }
        finally
        {
            _turn.Release();
        }
    }

    // A client may write an address in another way than the server.
    static string Key(string uri) => DocumentUri.ToPath(uri) ?? uri;

    /// <summary>What is told in one answer, or piece by piece before it.</summary>
    sealed class Reports(Dictionary<string, string> previous, JsonElement? token, Func<string, object, Task> notify)
    {
        readonly HashSet<string> _seen = new(DocumentUri.PathComparer);
        readonly List<WorkspaceDocumentDiagnosticReport> _rest = [];
        bool _hasNew;

        /// <summary>What was not sent before the answer.</summary>
        public WorkspaceDocumentDiagnosticReport[] Rest => token is null ? [.. _rest] : [];

        public Task AddAsync(string uri, int? version, Diagnostic[] items, CancellationToken cancel)
        {
            var report = PullDiagnosticFeature.Report(items, previous.GetValueOrDefault(Key(uri)));
            return AddAsync(new WorkspaceDocumentDiagnosticReport(report.Kind, uri, version, report.ResultId, report.Items), cancel);
        }

        /// <summary>Waits, where they leave before the answer, until they have: no faster than they are taken, and none behind it (LSP 3.17, "Partial Results").</summary>
        public async Task AddAsync(WorkspaceDocumentDiagnosticReport report, CancellationToken cancel)
        {
            if (!_seen.Add(Key(report.Uri)))
                return;
            var isNew = PullDiagnosticFeature.IsNew(report);
            _hasNew |= isNew;
            if (token is not { } partial)
                _rest.Add(report);
            else if (isNew)
                await notify(Methods.Progress, new PartialDiagnosticsParams(partial, new WorkspaceDiagnosticReport([report]))).WaitAsync(cancel).ConfigureAwait(false);
        }

        /// <summary>Takes away the findings of files that are no longer there. False where there is nothing to answer yet.</summary>
        public async Task<bool> FinishAsync(CancellationToken cancel)
        {
            foreach (var gone in previous.Keys.Where(key => !_seen.Contains(key)).ToList())
            {
                var uri = Path.IsPathRooted(gone) ? DocumentUri.FromPath(gone) : gone;
                if (PullDiagnosticFeature.Report([], previous[gone]).Items is not null)
                    await AddAsync(uri, null, [], cancel).ConfigureAwait(false);
            }
            return _hasNew || (_seen.Count == 0 && previous.Count == 0);
        }
    }
}
