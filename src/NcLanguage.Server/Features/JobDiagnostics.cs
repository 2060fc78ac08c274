using NcLanguage.Checks;
using NcLanguage.Machine.Loading;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Jobs;
using NcLanguage.Server.Protocol;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Features;

/// <summary>Mistakes in setup and machine files, published under the file's own address unless the client asks for them. A file may serve several open programs:
/// what any of them found in it stands until none of them finds it any more.</summary>
sealed class JobDiagnostics
{
    static readonly PositionMapper Written = new(PositionEncoding.Utf16);

    readonly Action<PublishDiagnosticsParams> _send;
    readonly PositionMapper _positions;
    readonly ReferenceLinks _links;
    readonly Lock _gate = new();
    readonly Dictionary<string, LoadedJob> _jobs = [];
    readonly Dictionary<string, LoadedJob> _own = new(DocumentUri.PathComparer);
    readonly Dictionary<string, (string Uri, SetupProblem[] Problems)> _published = new(DocumentUri.PathComparer);

    readonly Func<string, bool, bool> _isPulled;
    bool _workspaceIsPulled;

    /// <param name="send">Sends the findings of a file.</param>
    /// <param name="positions">How the client counts.</param>
    /// <param name="links">The pages of rules.</param>
    /// <param name="isPulled">Whether the client asks for a file's findings itself; also told whether it has asked for those of the workspace.</param>
    public JobDiagnostics(Action<PublishDiagnosticsParams> send, PositionMapper positions, ReferenceLinks links, Func<string, bool, bool> isPulled)
    {
        (_send, _positions, _links, _isPulled) = (send, positions, links, isPulled);
        links.Settled += SendWithLinks;
    }

    /// <summary>Notes what a document is run with now (null: it was closed), and publishes what that changes.
    /// <paramref name="isNewest"/> is asked under the lock; an outdated job is passed over. Of a setup, machine or cutting file that is open, at <paramref name="path"/>,
    /// only what its own text says counts: programs may still go by another.</summary>
    public void Set(string documentUri, LoadedJob? job, Func<bool> isNewest, string? path = null)
    {
        lock (_gate)
        {
            if (!isNewest() || ReferenceEquals(_jobs.GetValueOrDefault(documentUri), job))
                return;
            if (job is null)
                _jobs.Remove(documentUri);
            else
                _jobs[documentUri] = job;
            if (path is not null && job is null)
                _own.Remove(path);
            else if (path is not null)
                _own[path] = job!;
            Publish(again: false);
        }
    }

    /// <summary>The client asks for the findings of the workspace: those are not sent unasked any more, else they would be shown twice.</summary>
    public void WorkspaceIsPulled()
    {
        lock (_gate)
        {
            if (_workspaceIsPulled)
                return;
            _workspaceIsPulled = true;
            Publish(again: false);
        }
    }

    /// <summary>The findings of an open file.</summary>
    public Diagnostic[] Of(JobDocument document) => [.. document.Problems.Select(problem => Map(problem, document.Text))];

    /// <summary>The findings of a file that was read alone.</summary>
    public Diagnostic[] Of(string path, LoadedJob job)
    {
        var text = job.Files.GetValueOrDefault(path)?.Text ?? SourceText.From("");
        return [.. job.ProblemsIn(path).Distinct().Select(problem => Map(problem, text))];
    }

    /// <summary>The findings of the files that open programs are run with, as far as there are any: those of one too that is no file to be listed, as a link that leads nowhere.</summary>
    public (string Uri, Diagnostic[] Items)[] OfPrograms()
    {
        lock (_gate)
            return [.. Found(_ => true).Select(found => (UriOf(found.Key, found.Value.File), Map(found.Value.Problems, found.Value.File)))];
    }

    // Where the pages could not be written there is nothing to add.
    void SendWithLinks()
    {
        if (!_links.HasPages)
            return;
        lock (_gate)
            Publish(again: true);
    }

    /// <param name="again">Whether what has not changed is sent as well.</param>
    void Publish(bool again)
    {
        var found = Found(path => !_isPulled(path, _workspaceIsPulled));
        foreach (var path in _published.Keys.Except(found.Keys, DocumentUri.PathComparer).ToList())
        {
            _send(new PublishDiagnosticsParams(_published[path].Uri, null, []));
            _published.Remove(path);
        }
        foreach ((var path, (var problems, var file)) in found)
        {
            var uri = UriOf(path, file);
            if (!again && _published.TryGetValue(path, out var before) && before.Uri == uri && before.Problems.SequenceEqual(problems))
                continue;
            _published[path] = (uri, problems);
            _send(new PublishDiagnosticsParams(uri, null, Map(problems, file)));
        }
    }

    /// <summary>What the programs' jobs have found, file by file.</summary>
    Dictionary<string, (SetupProblem[] Problems, JobFile? File)> Found(Func<string, bool> isAskedFor)
    {
        var found = new Dictionary<string, (SetupProblem[] Problems, JobFile? File)>(DocumentUri.PathComparer);
        foreach (var file in _jobs.Values
            .SelectMany(job => job.Inputs.Problems.Select(problem => (problem, job)))
            .Where(pair => isAskedFor(pair.problem.Path))
            .Where(pair => !_own.TryGetValue(pair.problem.Path, out var own) || ReferenceEquals(own, pair.job))
            .GroupBy(pair => pair.problem.Path, DocumentUri.PathComparer))
        {
            found[file.Key] = ([.. file.Select(pair => pair.problem).Distinct()], file.Last().job.Files.GetValueOrDefault(file.Key));
        }
        return found;
    }

    static string UriOf(string path, JobFile? file) => file?.OpenUri ?? DocumentUri.FromPath(path);

    Diagnostic[] Map(SetupProblem[] problems, JobFile? file) => [.. problems.Select(problem => Map(problem, file?.Text ?? SourceText.From("")))];

    public Diagnostic Map(SetupProblem problem, SourceText text) => new(
        new TextRange(At(text, problem.Line, problem.Column), At(text, problem.EndLine, problem.EndColumn)),
        new DiagnosticText(
            ShownText.Of(problem.Message),
            problem.Severity == ProblemSeverity.Error ? DiagnosticSeverity.Error : DiagnosticSeverity.Warning,
            RuleList.Find(problem.Name)?.Info.Id,
            RuleList.Find(problem.Name) is { } rule ? _links.For(rule.Info.Id) : null,
            DiagnosticPublisher.Source,
            problem.Name));

    Position At(SourceText text, int line, int column)
    {
        (var textLine, var byteColumn) = Written.ToPlace(text, new Position((uint)Math.Max(0, line - 1), (uint)Math.Max(0, column - 1)));
        return _positions.ToPosition(text, textLine, byteColumn);
    }
}
