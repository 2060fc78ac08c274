using NcLanguage.Control.Flow;
using NcLanguage.Machine.Files;

namespace NcLanguage.Server.Jobs;

/// <summary>The programs, setup, machine and cutting files below the workspace's folders, as far as they are looked at.</summary>
static class WorkspaceFiles
{
    /// <summary>Files that are taken.</summary>
    const int MostFiles = 5000;

    /// <summary>Files of any kind whose names are looked at: somebody may open a whole disk as a folder.</summary>
    const int MostNames = 200_000;

    static readonly EnumerationOptions Walk = new()
    {
        RecurseSubdirectories = true,
        IgnoreInaccessible = true,
        // Links lead out of the workspace, or round in it.
        AttributesToSkip = FileAttributes.ReparsePoint | FileAttributes.Hidden | FileAttributes.System,
        MaxRecursionDepth = 16,
    };

    public static IEnumerable<string> Programs(IEnumerable<string> roots) => Of(roots, ProgramFolder.IsProgram);

    public static IEnumerable<string> JobFiles(IEnumerable<string> roots) => Of(roots, JobFileName.IsJobFile);

    static IEnumerable<string> Of(IEnumerable<string> roots, Func<string, bool> isWanted) =>
        roots.Where(Directory.Exists).SelectMany(root => Directory.EnumerateFiles(root, "*", Walk)).Take(MostNames).Where(isWanted).Take(MostFiles);
}
