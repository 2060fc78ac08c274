namespace NcLanguage.Machine.Files;

/// <summary>Files as far as they may be read: those in some folders and below them. Neither <c>..</c> nor a link leads out of there. A path that is
/// written as one outside is not even looked at, for a path can name another computer.</summary>
/// <param name="disk">How files are read.</param>
/// <param name="folders">The folders: full paths.</param>
public sealed class Fence(IFileAccess disk, IReadOnlyCollection<string> folders) : IFileAccess
{
    /// <summary>Links that are followed one after the other; more than that go in a circle.</summary>
    const int MostLinks = 40;

    string[]? _real;

    /// <summary>Whether a path is written as one in the folders, wherever links lead on the way: what stands there may be a link that is refused.</summary>
    public bool IsWrittenWithin(string path) => IsIn(folders, path) || IsIn(RealFolders, path);

    string[] RealFolders => _real ??= [.. folders.Select(Real).OfType<string>()];

    /// <summary>Whether what stands at a path may be looked at: one of the folders or what lies within, links followed, and links within that lead nowhere but in a circle within.</summary>
    public bool Holds(string path)
    {
        if (!IsWrittenWithin(path))
            return false;
        var links = new List<string>();
        return Real(path, links) is { } target ? IsIn(RealFolders, target) : links.Count > MostLinks && links.TrueForAll(link => IsIn(RealFolders, link));
    }

    public FileAnswer Read(string path) => Holds(path) ? disk.Read(path) : new FileAnswer(FileState.Outside);

    public IReadOnlyList<string> NamesIn(string folder) => Holds(Path.Combine(folder, "any")) ? disk.NamesIn(folder) : [];

    static bool IsIn(IEnumerable<string> folders, string path) => folders.Any(folder => FilePath.IsBelow(folder, path) || FilePath.IsSameFolder(folder, path));

    /// <summary>Where a path leads when every link on the way is followed; null where that cannot be told.</summary>
    public static string? Real(string path) => Real(path, []);

    static string? Real(string path, List<string> links)
    {
        try
        {
            return Follow(path, links);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return null;
        }
    }

    /// <param name="path">Any path.</param>
    /// <param name="links">Gets the places of the links on the way.</param>
    static string? Follow(string path, List<string> links)
    {
        var full = Path.GetFullPath(path);
        if (Path.GetPathRoot(full) is not { Length: > 0 } root)
            return null;
        var real = root;
        foreach (var part in full[root.Length..].Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries))
        {
            var next = Path.Combine(real, part);
            if (new FileInfo(next).LinkTarget is not { } target)
            {
                real = next;
                continue;
            }
            links.Add(next);
            if (links.Count > MostLinks || Follow(Path.GetFullPath(target, real), links) is not { } end)
                return null;
            real = end;
        }
        return real;
    }
}
