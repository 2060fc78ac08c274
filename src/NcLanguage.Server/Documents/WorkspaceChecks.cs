using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;
using NcLanguage.Machine.Files;
using NcLanguage.Server.Features;
using NcLanguage.Server.Jobs;
using NcLanguage.Server.Logging;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Documents;

/// <summary>What was found in a file that is not open.</summary>
/// <param name="Job">What it was read with; tells when it has to be read anew.</param>
/// <param name="Stamp">The file as it was read.</param>
/// <param name="HasLinks">Whether the findings have links to the pages of their rules.</param>
sealed record FileFindings(string Path, string Uri, LoadedJob Job, FileStamp Stamp, bool HasLinks, Diagnostic[] Items);

/// <summary>The findings of the workspace's programs, setup, machine and cutting files that are not open. Each file is read again only when it, or one that it
/// depends on, has changed. Reading is done by one worker at a time; what changes may be told meanwhile.</summary>
sealed class WorkspaceChecks(JobLoader jobs, ProgramsOnDisk programs, JobDiagnostics jobDiagnostics, ReferenceLinks links, ILogger log, FaultLog faults)
{
    /// <summary>Programs that are checked without being opened; the rest is checked when it is.</summary>
    public const int MostPrograms = 300;

    /// <summary>Bytes of a program above which it is checked only when it is opened.</summary>
    public const int GreatestProgram = 1024 * 1024;

    /// <summary>Findings after which no more files are looked at: nobody reads so many.</summary>
    public const int MostFindings = 10_000;

    readonly ConcurrentDictionary<string, FileFindings> _kept = new(DocumentUri.PathComparer);
    readonly Signal _changed = new();
    IReadOnlyList<FileFindings> _latest = [];
    int _latestVersion = -1;
    int _version;
    bool _isCutShortTold;

    /// <summary>Done when a file may have other findings than before.</summary>
    public Task NextChange => _changed.Next;

    /// <summary>These files were changed, made, removed, opened or closed.</summary>
    public void Changed(IReadOnlyCollection<string> paths)
    {
        foreach ((var path, var findings) in _kept)
            if (paths.Contains(path) || findings.Job.DependsOn(paths))
                _kept.TryRemove(path, out _);
        RaiseChange();
    }

    /// <summary>A program open in the editor was changed: only those that call it may have other findings.</summary>
    public void TextChanged(string path)
    {
        var any = false;
        foreach ((var other, var findings) in _kept)
            if (findings.Job.Programs?.DependsOn(path) == true)
                any |= _kept.TryRemove(other, out _);
        if (any)
            RaiseChange();
    }

    /// <summary>Everything may be other than before.</summary>
    public void AllChanged()
    {
        _kept.Clear();
        RaiseChange();
    }

    /// <summary>Looks at the disk for what nobody has told.</summary>
    public void LookAgain()
    {
        foreach ((var path, var findings) in _kept)
            if (FileStamp.Of(path) != findings.Stamp || findings.Job.Outdated().Any())
                _kept.TryRemove(path, out _);
        Interlocked.Increment(ref _version);
    }

    /// <summary>The findings of every file, one after the other.</summary>
    /// <param name="onProgress">Called before a program is read that has to be: how many of how many were looked at.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public IEnumerable<FileFindings> Check(Action<int, int> onProgress, CancellationToken cancel)
    {
        var version = Volatile.Read(ref _version);
        if (version == _latestVersion)
            return _latest;
        return Read(version, onProgress, cancel);
    }

    IEnumerable<FileFindings> Read(int version, Action<int, int> onProgress, CancellationToken cancel)
    {
        List<FileFindings> all = [];
        string[] jobFiles = [.. WorkspaceFiles.JobFiles(jobs.Roots).Where(path => !jobs.IsOpen(path))];
        string[] found = [.. WorkspaceFiles.Programs(jobs.Roots).Where(path => !jobs.IsOpen(path)).Order(StringComparer.Ordinal)];
        var total = Math.Min(found.Length, MostPrograms);
        var count = 0;
        foreach (var path in (string[])[.. jobFiles, .. found.Take(total)])
        {
            cancel.ThrowIfCancellationRequested();
            if (count > MostFindings)
                break;
            var isJobFile = JobFileName.IsJobFile(path);
            if (!_kept.TryGetValue(path, out var findings) || findings.HasLinks != links.HasPages)
            {
                if (!isJobFile)
                    onProgress(all.Count - jobFiles.Length, total);
                findings = isJobFile ? JobFile(path) : Program(path, cancel);
                if (findings is null)
                    continue;
                _kept[path] = findings;
            }
            count += findings.Items.Length;
            all.Add(findings);
            yield return findings;
        }
        if (!_isCutShortTold && (found.Length > MostPrograms || count > MostFindings))
        {
            _isCutShortTold = true;
            log.WorkspaceCutShort(found.Length, total);
        }
        _latest = all;
        _latestVersion = version;
    }

    FileFindings JobFile(string path)
    {
        var stamp = FileStamp.Of(path);
        var hasLinks = links.HasPages;
        var job = jobs.LoadFile(path);
        return new FileFindings(path, jobs.UriOf(path), job, stamp, hasLinks, jobDiagnostics.Of(path, job));
    }

    FileFindings? Program(string path, CancellationToken cancel)
    {
        var stamp = FileStamp.Of(path);
        var hasLinks = links.HasPages;
        if (stamp.Length > GreatestProgram)
            return null;
        try
        {
            return programs.Read(path, cancel) is { } context
                ? new FileFindings(path, context.Uri, context.Job, stamp, hasLinks, context.Diagnostics.Map(context.Snapshot, context.Analysis, context.Analysis.FindAll(context.Cancel)))
                : null;
        }
#pragma warning disable CA1031 // Whatever a rule throws, the other files are told.
        catch (Exception e) when (e is not OperationCanceledException)
#pragma warning restore CA1031
        {
            faults.Failed("The analysis", e, new FaultPlace(jobs.UriOf(path), null));
            return null;
        }
    }

    void RaiseChange()
    {
        Interlocked.Increment(ref _version);
        _changed.Raise();
    }
}
