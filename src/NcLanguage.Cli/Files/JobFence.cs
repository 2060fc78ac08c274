using System.Collections.Immutable;
using NcLanguage.Machine.Files;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Cli.Files;

/// <summary>Files as far as a command reads them for one program. What the command line names may stand anywhere; what files lead to must lie in one of the folders named there or in
/// the folder of a file named there, and neither <c>..</c> nor a link leads out. Looked for upward are files of fixed names alone; such a setup may lead to what lies below it.</summary>
/// <param name="folders">Full paths: <see cref="Named(IEnumerable{string})"/>.</param>
/// <param name="sought">Where setup, machine and cutting data are looked for by their names.</param>
sealed class JobFence(ImmutableArray<string> folders, IEnumerable<string> sought) : IFileAccess
{
    static readonly DiskFiles s_disk = DiskFiles.Instance;

    readonly HashSet<string> _sought = new(sought, FilePath.Comparer);
    Fence _fence = new(s_disk, folders);

    /// <summary>The folders that the command line names, by themselves or with a file in them: that of a link, and that of the file behind it.</summary>
    public static ImmutableArray<string> Named(IEnumerable<string> paths)
    {
        var folders = new HashSet<string>(FilePath.Comparer);
        foreach (var path in paths)
        {
            if (SetupLocator.FullPath(path) is not { } full)
                continue;
            if (Directory.Exists(full))
                folders.Add(full);
            else
                folders.UnionWith(new[] { Path.GetDirectoryName(full), Path.GetDirectoryName(Fence.Real(full)) }.OfType<string>());
        }
        return [.. folders];
    }

    /// <summary>The same, of the files that options name.</summary>
    public static ImmutableArray<string> Named(JobOptions options) =>
        Named(new[] { options.SetupPath, options.Machine is { } machine && MachineProfile.FindBuiltIn(machine) is null ? machine : null }.OfType<string>());

    public FileAnswer Read(string path)
    {
        // Most of what is looked for is nowhere.
        var isSought = _sought.Contains(path);
        if ((isSought && !Stands(path)) || _fence.Holds(path))
            return s_disk.Read(path);
        if (!isSought || Path.GetDirectoryName(path) is not { } folder)
            return new FileAnswer(FileState.Outside);
        var answer = new Fence(s_disk, [folder]).Read(path);
        if (answer.State == FileState.Read)
            _fence = new Fence(s_disk, [.. folders, folder]);
        return answer;
    }

    public IReadOnlyList<string> NamesIn(string folder) => _fence.NamesIn(folder);

    /// <summary>Whether anything stands there, be it a link to nothing. What the system takes for no path, or hides, cannot be read either.</summary>
    static bool Stands(string path)
    {
        try
        {
            return (int)new FileInfo(path).Attributes != -1;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}
