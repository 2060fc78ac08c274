using System.Collections.Concurrent;
using NcLanguage.Control.Flow;
using NcLanguage.Machine.Files;
using NcLanguage.Server.Documents;

namespace NcLanguage.Server.Jobs;

/// <summary>The programs beside one that calls them. Each is read once, when it is first called, and every place that was looked at is noted,
/// so that it is known what has to change before they are read anew. Used by several workers at once.</summary>
sealed class CalledPrograms : ICalledPrograms
{
    readonly ConcurrentDictionary<int, CalledFile?> _found = new();
    readonly ConcurrentDictionary<string, (FileStamp Stamp, bool IsRefused)> _looked = new(DocumentUri.PathComparer);
    readonly SiblingPrograms _siblings;

    /// <param name="programPath">The calling program.</param>
    /// <param name="files">How files are read, what is open in the editor first.</param>
    public CalledPrograms(string programPath, IFileAccess files) => _siblings = new SiblingPrograms(programPath, files, Note);

    public CalledFile? Find(int number) => _found.GetOrAdd(number, _siblings.Find);

    public string? WhyNotRead(int number) => Find(number) is null ? _siblings.WhyNotRead(number) : null;

    public IReadOnlyList<(int Number, string Name)> List() => _siblings.List();

    public bool DependsOn(string path) => _looked.ContainsKey(path);

    /// <summary>The places that are no longer as they were when looked at.</summary>
    public IEnumerable<string> Outdated() => _looked.Where(place => StampOf(place.Key, place.Value.IsRefused) != place.Value.Stamp).Select(place => place.Key);

    void Note(string path, bool isRefused) => _looked.TryAdd(path, (StampOf(path, isRefused), isRefused));

    // In the place of a link that leads out another file may come; where it leads is no business of ours.
    static FileStamp StampOf(string path, bool isRefused) => isRefused ? FileStamp.OfLink(path) : FileStamp.Of(path);
}
