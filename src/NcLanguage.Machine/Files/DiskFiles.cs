using System.Security;

namespace NcLanguage.Machine.Files;

/// <summary>Files as they stand on disk.</summary>
public sealed class DiskFiles : IFileAccess
{
    /// <summary>The most bytes that are read of one file: 16 MB, far above any setup.</summary>
    public const int GreatestSize = 16 * 1024 * 1024;

    public static DiskFiles Instance { get; } = new();

    public FileAnswer Read(string path)
    {
        try
        {
            if (Directory.Exists(path))
                return new FileAnswer(FileState.IsFolder);
            if (!FileKind.IsOrdinary(path))
                return new FileAnswer(FileState.IsStream);
            // An editor may be writing or replacing the file at this moment.
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var bytes = new MemoryStream();
            var buffer = new byte[64 * 1024];
            int count;
            while ((count = stream.Read(buffer)) > 0)
            {
                bytes.Write(buffer, 0, count);
                if (bytes.Length > GreatestSize)
                    return new FileAnswer(FileState.TooLarge);
            }
            return new FileAnswer(FileState.Read, bytes.ToArray());
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException or PathTooLongException)
        {
            return new FileAnswer(StateOfLink(path) ?? FileState.Missing);
        }
        catch (Exception e) when (e is UnauthorizedAccessException or SecurityException)
        {
            return new FileAnswer(FileState.Denied);
        }
        catch (Exception e) when (e is IOException or ArgumentException or NotSupportedException)
        {
            return new FileAnswer(StateOfLink(path) ?? FileState.Failed);
        }
    }

    /// <summary>What is wrong with a link that nothing could be read through; null where no link stands there.</summary>
    public static FileState? StateOfLink(string path)
    {
        try
        {
            var link = new FileInfo(path);
            return link.LinkTarget is null ? null : link.ResolveLinkTarget(returnFinalTarget: true) is { Exists: false } ? FileState.LinkToNothing : FileState.Failed;
        }
        catch (Exception e) when (e is UnauthorizedAccessException or SecurityException or ArgumentException or NotSupportedException or FileNotFoundException or DirectoryNotFoundException)
        {
            return null;
        }
        catch (IOException)
        {
            // Too many links one after the other: only a ring has them.
            return FileState.LinkRing;
        }
    }

    public IReadOnlyList<string> NamesIn(string folder)
    {
        try
        {
            return [.. Directory.EnumerateFiles(folder).Take(MostNames).Select(path => Path.GetFileName(path))];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or SecurityException or ArgumentException)
        {
            return [];
        }
    }

    /// <summary>Files of one folder that are listed at most.</summary>
    const int MostNames = 10_000;
}
