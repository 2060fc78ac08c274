namespace NcLanguage.Server.Jobs;

/// <summary>By what a change of a file on disk is told: when it was written and how long it is. Default where there is none.</summary>
readonly record struct FileStamp(DateTime Written, long Length)
{
    public static FileStamp Of(string path)
    {
        try
        {
            var file = new FileInfo(path);
            return file.Exists ? new FileStamp(file.LastWriteTimeUtc, file.Length) : default;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return default;
        }
    }
}
