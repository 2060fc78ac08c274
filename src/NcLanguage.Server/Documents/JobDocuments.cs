using System.Collections.Concurrent;
using System.Collections.Immutable;
using NcLanguage.Machine.Loading;
using NcLanguage.Server.Features;
using NcLanguage.Server.Jobs;
using NcLanguage.Server.Protocol;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Documents;

/// <summary>One version of an open setup or machine file and the mistakes in it.</summary>
/// <param name="Job">What the text was read with.</param>
sealed record JobDocument(string Uri, string Path, int Version, SourceText Text, LoadedJob Job, ImmutableArray<SetupProblem> Problems);

/// <summary>Setup and machine files open in the editor: what is typed there counts at once, saved or not.
/// Called by one message at a time, as the queue lets them through.</summary>
sealed class JobDocuments(JobLoader jobs, JobDiagnostics diagnostics, PositionMapper positions)
{
    // Asked for findings on workers.
    readonly ConcurrentDictionary<string, JobDocument> _open = new(StringComparer.Ordinal);

    public IEnumerable<JobDocument> All => _open.Values;

    /// <summary>What the open files were read with.</summary>
    public IEnumerable<LoadedJob> JobsInUse => _open.Values.Select(document => document.Job);

    public bool IsOpen(string uri) => _open.ContainsKey(uri);

    /// <summary>Opens a document; gives the paths whose content has changed for programs with that: none where it cannot be read.</summary>
    public string[] Open(string uri, string path, int version, SourceText text) => Set(uri, path, version, text);

    /// <summary>Changes a document; gives the paths whose content has changed for programs: none as long as it cannot be read.</summary>
    public string[] Change(string uri, int version, IEnumerable<TextDocumentContentChangeEvent> changes)
    {
        var document = _open[uri];
        return Set(uri, document.Path, version, changes.Aggregate(document.Text, (text, change) => AppliedChange.Of(text, change, positions).Text));
    }

    /// <summary>Closes a document: the file on disk counts again. Gives its path.</summary>
    public string Close(string uri)
    {
        var path = _open[uri].Path;
        _open.TryRemove(uri, out _);
        jobs.RemoveOpenText(path);
        diagnostics.Set(uri, null, () => true, path);
        return path;
    }

    public JobDocument Find(string uri) => _open[uri];

    /// <summary>Reads those anew that lead to one of these files; true where the mistakes in one are others than before.</summary>
    /// <param name="changed">Paths.</param>
    /// <param name="but">A document that has been read just now.</param>
    public bool RecheckUsersOf(IReadOnlyCollection<string> changed, string? but)
    {
        var any = false;
        foreach (var document in _open.Values)
        {
            if (document.Uri == but || !document.Job.DependsOn(changed))
                continue;
            Set(document.Uri, document.Path, document.Version, document.Text);
            any |= !_open[document.Uri].Problems.SequenceEqual(document.Problems);
        }
        return any;
    }

    string[] Set(string uri, string path, int version, SourceText text)
    {
        (var job, var isOutOfForce) = jobs.SetJobText(path, uri, text);
        _open[uri] = new JobDocument(uri, path, version, text, job, [.. job.ProblemsIn(path)]);
        diagnostics.Set(uri, job, () => true, path);
        return isOutOfForce ? [] : [path];
    }
}
