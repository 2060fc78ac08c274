using System.Collections.Immutable;
using NcLanguage.Cli.Common;
using NcLanguage.Control.Flow;
using NcLanguage.Machine.Files;
using NcLanguage.Reports.Findings;

namespace NcLanguage.Cli.Files;

/// <summary>The programs that a command line names, folders searched to the bottom.</summary>
/// <param name="Paths">As the user wrote them, with what stands below folders; ordered, each once.</param>
/// <param name="NotRead">What was named or found and is no program that can be read: paths that lead nowhere, folders that could not be searched or hold
/// none, files whose name cannot be written.</param>
sealed record ProgramSearch(ImmutableArray<string> Paths, ImmutableArray<UnreadFile> NotRead)
{
    public static ProgramSearch Find(IEnumerable<string> paths)
    {
        var found = new Dictionary<string, string>(StringComparer.Ordinal);
        var notRead = new List<UnreadFile>();
        foreach (var path in paths)
        {
            if (path == ProgramFile.StandardInput)
                found.TryAdd(path, path);
            else if (Directory.Exists(path))
                SearchFolder(path, found, notRead);
            else if (File.Exists(path))
                found.TryAdd(Path.GetFullPath(path), path);
            else
                notRead.Add(new UnreadFile(path, UnreadableName.Reason(path) ?? (path.Length == 0 ? "an empty name is that of no file or folder" : $"there is no file or folder {path}")));
        }
        return new ProgramSearch([.. found.Values.Order(StringComparer.Ordinal)], [.. notRead.OrderBy(unread => unread.Path, StringComparer.Ordinal)]);
    }

    static void SearchFolder(string folder, Dictionary<string, string> found, List<UnreadFile> notRead)
    {
        var (unreadBefore, programs) = (notRead.Count, 0);
        var open = new Stack<DirectoryInfo>([new DirectoryInfo(folder)]);
        while (open.TryPop(out var next))
        {
            try
            {
                programs += Search(folder, next, open, found, notRead);
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
            notRead.Add(new UnreadFile(folder, $"the folder {folder} holds no program ({string.Join(' ', SiblingPrograms.Extensions)})"));
    }

    /// <summary>Adds the programs of one folder, and the folders in it to those that are to be searched.</summary>
    /// <returns>How many programs it holds, those found before as well.</returns>
    static int Search(string folder, DirectoryInfo within, Stack<DirectoryInfo> open, Dictionary<string, string> found, List<UnreadFile> notRead)
    {
        var programs = 0;
        UnreadableNames? badNames = null;
        foreach (var entry in within.EnumerateFileSystemInfos())
        {
            if (UnreadableName.Is(entry))
            {
                badNames ??= UnreadableNames.In(within.FullName);
                if (!entry.Name.StartsWith('.') && (entry is DirectoryInfo || IsProgram(entry)))
                    notRead.Add(UnreadByName(folder, within, badNames.Next(entry.Name)));
                continue;
            }
            if (entry.Name.StartsWith('.') || entry.Attributes.HasFlag(FileAttributes.Hidden))
                continue;
            if (entry is DirectoryInfo inner)
            {
                // A linked folder may lead back up: it is searched only when it is named itself.
                if (inner.LinkTarget is null)
                    open.Push(inner);
            }
            else if (IsProgram(entry))
            {
                if (LeavesFolder(folder, entry))
                {
                    notRead.Add(Unread(folder, entry, path => $"{path} is a link out of the folder {folder}, where nothing is read unless it is named"));
                    continue;
                }
                // A file named by itself may have any ending.
                programs++;
                found.TryAdd(entry.FullName, Below(folder, entry.FullName));
            }
        }
        return programs;
    }

    /// <summary>A folder may come from anywhere, and what a check shows of a program is shown to others: one that lies elsewhere is checked only when it is named itself.</summary>
    static bool LeavesFolder(string folder, FileSystemInfo entry) =>
        entry.LinkTarget is not null && !new Fence(DiskFiles.Instance, [Path.GetFullPath(folder)]).Holds(entry.FullName) && DiskFiles.StateOfLink(entry.FullName) != FileState.LinkRing;

    static bool IsProgram(FileSystemInfo entry) => SiblingPrograms.Extensions.Contains(entry.Extension, StringComparer.OrdinalIgnoreCase);

    static string Below(string folder, string path) => Path.Combine(folder is "." ? "" : folder, Path.GetRelativePath(folder, path));

    static UnreadFile UnreadByName(string folder, DirectoryInfo inner, string name)
    {
        var path = Below(folder, Path.Combine(inner.FullName, name));
        return new UnreadFile(path, UnreadableName.Clause(path));
    }

    static UnreadFile Unread(string folder, FileSystemInfo inner, Func<string, string> why)
    {
        var path = inner.FullName == Path.GetFullPath(folder) ? folder : Below(folder, inner.FullName);
        return new UnreadFile(path, why(path));
    }
}
