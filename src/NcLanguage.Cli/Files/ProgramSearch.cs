using System.Collections.Immutable;
using NcLanguage.Cli.Common;
using NcLanguage.Machine.Files;
using NcLanguage.Reports.Findings;

namespace NcLanguage.Cli.Files;

/// <summary>The programs that a command line names, folders searched to the bottom.</summary>
/// <param name="Paths">As the user wrote them, with what stands below folders; ordered, each once.</param>
/// <param name="NotRead">What was named or found and is no program that can be read: paths that lead nowhere, folders that could not be searched or hold
/// none, links to folders that were not searched, files whose name cannot be written.</param>
sealed record ProgramSearch(ImmutableArray<string> Paths, ImmutableArray<UnreadFile> NotRead)
{
    public static ProgramSearch Find(IReadOnlyCollection<string> paths)
    {
        var found = new Dictionary<string, string>(StringComparer.Ordinal);
        var notRead = new List<UnreadFile>();
        var folders = new FolderSearch(paths, found, notRead);
        foreach (var path in paths)
        {
            if (path == ProgramFile.StandardInput)
                found.TryAdd(path, path);
            else if (Directory.Exists(path))
                folders.Search(path);
            else if (File.Exists(path))
                found.TryAdd(Path.GetFullPath(path), path);
            else
                notRead.Add(new UnreadFile(path, WhyNot(path)));
        }
        folders.End();
        return new ProgramSearch([.. found.Values.Order(StringComparer.Ordinal)], [.. notRead.Distinct().OrderBy(unread => unread.Path, StringComparer.Ordinal)]);
    }

    /// <summary>Why a path leads neither to a file nor to a folder.</summary>
    static string WhyNot(string path)
    {
        if (path.Length == 0)
            return "an empty name is that of no file or folder";
        try
        {
            // Whoever may not look into a folder is told of all that stands in it that it is not there.
            _ = File.GetAttributes(path);
        }
        catch (UnauthorizedAccessException)
        {
            return $"{path} may not be read by you";
        }
        catch (Exception e) when (e is IOException or ArgumentException or NotSupportedException)
        {
            // It is not there, or its name is none.
        }
        return UnreadableName.Reason(path) ?? $"there is no file or folder {path}";
    }
}
