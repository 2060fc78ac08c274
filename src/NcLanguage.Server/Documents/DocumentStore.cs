using System.Collections.Concurrent;
using System.Collections.Immutable;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Server.Features;
using NcLanguage.Server.Jobs;
using NcLanguage.Server.Logging;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Documents;

/// <summary>The open programs. Called by one message at a time, as the queue lets them through.</summary>
/// <param name="letAnswersPass">Ends when answers that are owed have gone out, or soon: whoever types waits for them, and not for the findings.</param>
/// <param name="refreshHints">Has the client ask for hints again.</param>
sealed class DocumentStore(
    JobLoader jobs, ServerSettings settings, DiagnosticPublisher publisher, JobDiagnostics jobDiagnostics, PositionMapper positions, ClientProfile client, Notices notices, FaultLog faults,
    Func<Task> letAnswersPass, Action refreshHints) : IProgramListener
{
    readonly Signal _analysed = new();
    // Features ask for versions on workers.
    readonly ConcurrentDictionary<string, OpenDocument> _open = new(StringComparer.Ordinal);

    /// <summary>What the open programs are run with, as far as that is known.</summary>
    public IReadOnlyList<LoadedJob> JobsInUse => [.. _open.Values.Select(document => document.Job).OfType<LoadedJob>()];

    /// <summary>Opens a program; one open already takes the new text. Those that call it are checked anew: true where there are any.</summary>
    public bool Open(string uri, int version, SourceText text)
    {
        if (_open.TryRemove(uri, out var before))
            before.Dispose();
        var path = DocumentUri.ToPath(uri);
        if (path is not null)
            jobs.SetOpenText(path, uri, text);
        _open[uri] = new OpenDocument(uri, version, text, () => LoadJob(path), () => settings.Analysis, this, letAnswersPass);
        return RecheckCallersOf(path);
    }

    /// <summary>Changes a program. Those that call it are checked anew: true where there are any.</summary>
    public bool Change(string uri, int version, IReadOnlyList<TextDocumentContentChangeEvent> changes)
    {
        var document = Find(uri);
        document.Change(version, changes, positions);
        var path = DocumentUri.ToPath(uri);
        if (path is not null)
            jobs.SetOpenText(path, uri, document.Current.Text);
        return RecheckCallersOf(path);
    }

    /// <summary>Notes that a program was saved; true where its findings are told anew.</summary>
    public bool Saved(string uri) => _open.TryGetValue(uri, out var document) && document.Saved();

    /// <summary>Closes a program: for those that call it the file on disk counts again. True where there are any.</summary>
    public bool Close(string uri)
    {
        Find(uri).Dispose();
        _open.TryRemove(uri, out _);
        publisher.Clear(uri);
        jobDiagnostics.Set(uri, null, () => true);
        var path = DocumentUri.ToPath(uri);
        if (path is not null)
            jobs.RemoveOpenText(path);
        return RecheckCallersOf(path);
    }

    /// <summary>Checks all programs anew; false where none is open.</summary>
    public bool RecheckAll()
    {
        foreach (var document in _open.Values)
            document.Recheck();
        return !_open.IsEmpty;
    }

    /// <summary>The version of a document; null where it is not open.</summary>
    public int? VersionOf(string uri) => _open.TryGetValue(uri, out var document) ? document.Current.Version : null;

    /// <summary>Done when the next analysis of any program is.</summary>
    public Task NextAnalysis => _analysed.Next;

    /// <summary>Checks the programs anew whose setup or machine was read from, or looked for in, one of these files. False where there are none.</summary>
    public bool RecheckUsersOf(IReadOnlyCollection<string> changed)
    {
        var any = false;
        foreach (var document in _open.Values)
        {
            if (document.Job is { } job && !job.DependsOn(changed))
                continue;
            document.Recheck();
            any = true;
        }
        return any;
    }

    // A program that is not yet read for the first time will meet the new text by itself.
    bool RecheckCallersOf(string? path)
    {
        var any = false;
        if (path is null)
            return any;
        foreach (var document in _open.Values)
        {
            if (document.Job?.Programs is not { } called || !called.DependsOn(path))
                continue;
            document.Recheck();
            any = true;
        }
        return any;
    }

    /// <summary>Answers a request from the snapshot that stands now, on a worker.</summary>
    public Task<T> ReadAsync<T>(Asked asked, Func<FeatureContext, T> answer, CancellationToken cancellationToken)
    {
        var snapshot = Find(asked.Uri).Current;
        return Task.Run(() => AnswerAsync(snapshot, asked, answer, cancellationToken), cancellationToken);
    }

    /// <summary>Answers a request from each open program as it stands now; one that is changed meanwhile is left out.</summary>
    public async Task<T[]> ReadAllAsync<T>(Func<FeatureContext, T> answer, CancellationToken cancellationToken)
    {
        DocumentSnapshot[] snapshots = [.. _open.Values.Select(document => document.Current)];
        List<T> answers = [];
        foreach (var snapshot in snapshots)
        {
            try
            {
                answers.Add(await Task.Run(() => AnswerAsync(snapshot, snapshot.Uri, answer, cancellationToken), cancellationToken).ConfigureAwait(false));
            }
            catch (StreamJsonRpc.LocalRpcException e) when (e.ErrorCode == (int)Errors.ContentModified)
            {
            }
        }
        return [.. answers];
    }

    async Task<T> AnswerAsync<T>(DocumentSnapshot snapshot, Asked asked, Func<FeatureContext, T> answer, CancellationToken cancellationToken)
    {
        try
        {
            if (asked.InView)
            {
                try
                {
                    await snapshot.Look.Come.WaitAsync(cancellationToken).ConfigureAwait(false);
                    if (snapshot.Look.Program is { } known)
                        return answer(Context(snapshot, known, cancellationToken));
                }
                catch (NotYetRunException)
                {
                }
            }
            return answer(Context(snapshot, await snapshot.Analysis.WaitAsync(cancellationToken).ConfigureAwait(false), cancellationToken));
        }
        catch (OperationCanceledException) when (!cancellationToken.IsCancellationRequested)
        {
            throw Errors.DocumentChanged();
        }
        catch (Exception e) when (Errors.IsInternal(e))
        {
            FaultLog.Put(e, new FaultPlace(snapshot.Uri, snapshot.Version, asked.At));
            throw;
        }
    }

    FeatureContext Context(DocumentSnapshot snapshot, AnalysedProgram program, CancellationToken cancellationToken) =>
        new(snapshot, program.Analysis, client, positions, publisher, jobs, program.Job, cancellationToken);

    LoadedJob LoadJob(string? path)
    {
        var job = jobs.Load(path);
        foreach (var error in job.Inputs.OptionErrors)
            notices.Tell(error);
        return job;
    }

    void IProgramListener.Analysed(DocumentSnapshot snapshot, AnalysedProgram program, Func<bool> isNewest)
    {
        jobDiagnostics.Set(snapshot.Uri, program.Job, isNewest);
        _analysed.Raise();
    }

    /// <summary>Logs what failed before the client sees it: the next version may be on its way as soon as this one has been shown.</summary>
    void IProgramListener.Found(DocumentSnapshot snapshot, AnalysedProgram program, ImmutableArray<Finding> findings, Func<bool> isNewest)
    {
        foreach (var finding in findings)
        {
            if (finding.Fault is { } fault)
                faults.Failed("The check " + finding.Name, fault, new FaultPlace(snapshot.Uri, snapshot.Version, positions.ToPosition(snapshot.Text, finding.Line, finding.StartColumn)));
        }
        publisher.Publish(snapshot, program, findings, isNewest);
    }

    void IProgramListener.Rested(DocumentSnapshot snapshot, AnalysedProgram program, ImmutableArray<Finding> findings, Func<bool> isNewest)
    {
        publisher.Rest(snapshot, program, findings, isNewest);
        if (client.RefreshesInlayHints && snapshot.Typing is { } keys && InlayHintFeature.IsHeldBack(snapshot.Text, program.Analysis, keys.Line))
            refreshHints();
    }

    void IProgramListener.Failed(DocumentSnapshot snapshot, Exception fault, Func<bool> isNewest)
    {
        faults.Failed("The analysis", fault, new FaultPlace(snapshot.Uri, snapshot.Version));
        publisher.PublishFailure(snapshot, fault, isNewest);
    }

    OpenDocument Find(string uri) => _open.TryGetValue(uri, out var document) ? document : throw Errors.DocumentNotOpen(uri);
}
