namespace NcLanguage.Machine.Files;

/// <summary>By what a change of a file on disk is told: when it was written, UTC, and how many bytes it has. Default where there is none.</summary>
public readonly record struct FileStamp(DateTime Written, long Length)
{
    /// <summary>The stamp of the file at a path, links followed; default where it cannot be had. Never throws for what a file system can do.</summary>
    public static FileStamp Of(string path)
    {
        try
        {
            var file = new FileInfo(path);
            // A link has a time and a length of its own.
            if (file.LinkTarget is not null)
                file = (FileInfo)file.ResolveLinkTarget(returnFinalTarget: true)!;
            return Of(file);
        }
        catch (Exception e) when (IsOfDisk(e))
        {
            return default;
        }
    }

    /// <summary>The stamp of what stands at a path itself: that of the link where it is one, whatever it leads to.</summary>
    public static FileStamp OfLink(string path)
    {
        try
        {
            return Of(new FileInfo(path));
        }
        catch (Exception e) when (IsOfDisk(e))
        {
            return default;
        }
    }

    static FileStamp Of(FileInfo file) => file.Exists ? new FileStamp(file.LastWriteTimeUtc, file.Length) : default;

    static bool IsOfDisk(Exception e) => e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException;
}
