using System.Collections.Concurrent;
using NcLanguage.Control.Flow;
using NcLanguage.Editing;
using NcLanguage.Machine.Files;
using NcLanguage.Server.Documents;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Jobs;

/// <summary>The programs in the folder of one: what is open in the editor first, the rest from disk. Nothing outside the folder is read.</summary>
sealed class ProgramFolder(string programPath, IFileAccess disk, ConcurrentDictionary<string, OpenText> open) : IProgramFolder
{
    /// <summary>Files of a folder that are looked at.</summary>
    const int MostFiles = 1000;

    IReadOnlyList<FolderProgram>? _others;

    public IReadOnlyList<FolderProgram> Others(CancellationToken cancel) => _others ??= Read(cancel);

    /// <summary>The paths of the programs in the folder, this one left out, by name.</summary>
    public IEnumerable<string> Paths()
    {
        var folder = Path.GetDirectoryName(programPath);
        if (folder is null)
            return [];
        SortedSet<string> paths = new(DocumentUri.PathComparer);
        paths.UnionWith(open.Keys.Where(path => Path.GetDirectoryName(path) == folder && IsProgram(path)));
        paths.UnionWith(OnDisk(folder));
        paths.Remove(programPath);
        return paths.Take(MostFiles);
    }

    List<FolderProgram> Read(CancellationToken cancel)
    {
        List<FolderProgram> programs = [];
        foreach (var path in Paths())
        {
            cancel.ThrowIfCancellationRequested();
            if (open.TryGetValue(path, out var document))
                programs.Add(new FolderProgram(path, document.Text));
            else if (disk.Read(path) is { State: FileState.Read } answer)
                programs.Add(new FolderProgram(path, WideText.Read(answer.Bytes.ToArray())));
        }
        return programs;
    }

    static IEnumerable<string> OnDisk(string folder)
    {
        try
        {
            // A link may lead out of the folder.
            return [.. new DirectoryInfo(folder).EnumerateFiles().Where(file => IsProgram(file.Name) && file.LinkTarget is null).Select(file => file.FullName)];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    /// <summary>Whether a file is a program, going by its ending.</summary>
    public static bool IsProgram(string path) => SiblingPrograms.Extensions.Contains(Path.GetExtension(path), StringComparer.OrdinalIgnoreCase);
}
