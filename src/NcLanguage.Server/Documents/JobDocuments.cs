using NcLanguage.Server.Features;
using NcLanguage.Server.Jobs;
using NcLanguage.Server.Protocol;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Documents;

/// <summary>Setup and machine files open in the editor: what is typed there counts at once, saved or not.
/// Called by one message at a time, as the queue lets them through.</summary>
internal sealed class JobDocuments(JobLoader jobs, JobDiagnostics diagnostics, PositionMapper positions)
{
    private readonly Dictionary<string, (string Path, SourceText Text)> _open = new(StringComparer.Ordinal);

    public bool IsOpen(string uri) => _open.ContainsKey(uri);

    /// <summary>Opens a document; gives the path whose content has changed with that.</summary>
    public string Open(string uri, string path, SourceText text)
    {
        _open[uri] = (path, text);
        return Update(uri);
    }

    /// <summary>Changes a document; gives its path.</summary>
    public string Change(string uri, IEnumerable<TextDocumentContentChangeEvent> changes)
    {
        (string path, SourceText text) = _open[uri];
        foreach (TextDocumentContentChangeEvent change in changes) text = OpenDocument.Apply(text, change, positions);
        _open[uri] = (path, text);
        return Update(uri);
    }

    /// <summary>Closes a document: the file on disk counts again. Gives its path.</summary>
    public string Close(string uri)
    {
        (string path, _) = _open[uri];
        _open.Remove(uri);
        jobs.RemoveOpenText(path);
        diagnostics.Set(uri, null, () => true);
        return path;
    }

    private string Update(string uri)
    {
        (string path, SourceText text) = _open[uri];
        jobs.SetOpenText(path, uri, text);
        diagnostics.Set(uri, jobs.LoadFile(path), () => true);
        return path;
    }
}
