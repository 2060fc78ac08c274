using NcLanguage.Control.Flow;
using NcLanguage.Machine.Files;
using NcLanguage.Reports.Findings;

namespace NcLanguage.Cli.Files;

/// <summary>Searches folders for programs. A link to a program is followed where it leads into one of the folders that are named; a link to a folder never is, for it may lead back up: what
/// lies behind it is found where it stands, or told as not searched.</summary>
/// <param name="named">All that the command line names.</param>
/// <param name="found">Gets the programs: full path, and path as it is told.</param>
/// <param name="notRead">Gets what is not read, with the reason.</param>
sealed class FolderSearch(IEnumerable<string> named, Dictionary<string, string> found, List<UnreadFile> notRead)
{
    readonly Fence _fence = new(DiskFiles.Instance, [.. named.Where(Directory.Exists).Select(Path.GetFullPath)]);
    readonly HashSet<string> _searched = new(FilePath.Comparer);
    readonly List<(string Folder, DirectoryInfo Link)> _links = [];
    readonly List<string> _without = [];

    /// <summary>Searches one folder to the bottom.</summary>
    /// <param name="folder">As the user wrote it.</param>
    public void Search(string folder)
    {
        var (unreadBefore, programs) = (notRead.Count, 0);
        var open = new Stack<DirectoryInfo>([new DirectoryInfo(folder)]);
        while (open.TryPop(out var next))
        {
            _searched.Add(next.FullName);
            try
            {
                programs += Search(folder, next, open);
            }
            catch (UnauthorizedAccessException)
            {
                notRead.Add(Unread(folder, next, path => $"you may not look into the folder {path}"));
            }
            catch (IOException e)
            {
                notRead.Add(Unread(folder, next, path => $"the folder {path} could not be read: {e.Message}"));
            }
        }
        if (programs == 0 && notRead.Count == unreadBefore)
            _without.Add(folder);
    }

    /// <summary>Tells, when all folders were searched, which of them hold no program, and which links lead to folders that are none of them.</summary>
    public void End()
    {
        if (_links.Count > 0)
            _searched.UnionWith(_searched.Select(Fence.Real).OfType<string>().ToList());
        foreach (var (folder, link) in _links.Where(link => Fence.Real(link.Link.FullName) is not { } real || !_searched.Contains(real)))
        {
            notRead.Add(Unread(folder, link, path => $"{path} is a link to a folder, which is searched only when it is named"));
            _without.RemoveAll(without => without == folder);
        }
        notRead.AddRange(_without.Select(folder => new UnreadFile(folder, $"the folder {folder} holds no program ({string.Join(' ', SiblingPrograms.Extensions)})")));
    }

    /// <summary>Adds the programs of one folder, and the folders in it to those that are to be searched.</summary>
    /// <returns>How many programs it holds, those found before as well.</returns>
    int Search(string folder, DirectoryInfo within, Stack<DirectoryInfo> open)
    {
        var programs = 0;
        UnreadableNames? badNames = null;
        foreach (var entry in within.EnumerateFileSystemInfos())
        {
            if (entry.Name.StartsWith('.') || !(entry is DirectoryInfo || IsProgram(entry)))
                continue;
            if (IsTooLong(entry))
            {
                notRead.Add(UnreadByName(folder, within, entry.Name, path => $"{path} cannot be opened: its path is longer than the system takes"));
                continue;
            }
            if (UnreadableName.Is(entry))
            {
                badNames ??= UnreadableNames.In(within.FullName);
                notRead.Add(UnreadByName(folder, within, badNames.Next(entry.Name), UnreadableName.Clause));
                continue;
            }
            if (IsHidden(entry))
                continue;
            if (entry is DirectoryInfo inner)
            {
                if (inner.LinkTarget is null)
                    open.Push(inner);
                else
                    _links.Add((folder, inner));
            }
            else if (LeavesFolders(entry))
            {
                notRead.Add(Unread(folder, entry, path => $"{path} is a link out of the folder {folder}, where nothing is read unless it is named"));
            }
            else
            {
                programs++;
                found.TryAdd(entry.FullName, Below(folder, entry.FullName));
            }
        }
        return programs;
    }

    /// <summary>A folder may come from anywhere, and what a check shows of a program is shown to others: one that lies elsewhere is checked only when it is named itself.</summary>
    bool LeavesFolders(FileSystemInfo entry) => entry.LinkTarget is not null && !_fence.Holds(entry.FullName);

    /// <summary>Of what has a path that does not go into its buffer the runtime gives no more than the name.</summary>
    static bool IsTooLong(FileSystemInfo entry) => entry.FullName.Length == 0;

    /// <summary>What has just gone is not hidden: that it is not there is told when it is read.</summary>
    static bool IsHidden(FileSystemInfo entry) => entry.Attributes is var attributes && (int)attributes != -1 && attributes.HasFlag(FileAttributes.Hidden);

    /// <summary>Among what a folder holds; a file named by itself may have any ending.</summary>
    static bool IsProgram(FileSystemInfo entry) => SiblingPrograms.Extensions.Contains(Path.GetExtension(entry.Name), StringComparer.OrdinalIgnoreCase);

    static string Below(string folder, string path) => Path.Combine(folder is "." ? "" : folder, Path.GetRelativePath(folder, path));

    static UnreadFile UnreadByName(string folder, DirectoryInfo inner, string name, Func<string, string> why)
    {
        var path = Below(folder, Path.Combine(inner.FullName, name));
        return new UnreadFile(path, why(path));
    }

    static UnreadFile Unread(string folder, FileSystemInfo inner, Func<string, string> why)
    {
        var path = inner.FullName == Path.GetFullPath(folder) ? folder : Below(folder, inner.FullName);
        return new UnreadFile(path, why(path));
    }
}
