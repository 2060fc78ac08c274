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

    /// <summary>Whether a file lies within, links followed.</summary>
    public bool Holds(string path)
    {
        var real = _real ??= [.. folders.Select(folder => Real(folder)).OfType<string>()];
        return (IsIn(folders, path) || IsIn(real, path)) && Real(path) is { } target && IsIn(real, target);
    }

    public FileAnswer Read(string path) => Holds(path) ? disk.Read(path) : new FileAnswer(FileState.Outside);

    public IReadOnlyList<string> NamesIn(string folder) => Holds(Path.Combine(folder, "any")) ? disk.NamesIn(folder) : [];

    static bool IsIn(IEnumerable<string> folders, string path) => folders.Any(folder => FilePath.IsBelow(folder, path));

    /// <summary>Where a path leads when every link on the way is followed; null where that cannot be told.</summary>
    public static string? Real(string path)
    {
        try
        {
            var links = 0;
            return Real(path, ref links);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return null;
        }
    }

    static string? Real(string path, ref int links)
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
            if (++links > MostLinks || Real(Path.GetFullPath(target, real), ref links) is not { } end)
                return null;
            real = end;
        }
        return real;
    }
}
