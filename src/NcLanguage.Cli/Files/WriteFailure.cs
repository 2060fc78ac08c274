namespace NcLanguage.Cli.Files;

/// <summary>Says why something could not be written.</summary>
static class WriteFailure
{
    // ENOSPC and EDQUOT of Linux (errno.h) and ERROR_DISK_FULL of Windows.
    const int NoSpace = 28;
    const int OverQuota = 122;
    const int DiskFull = unchecked((int)0x80070070);

    /// <summary>A clause.</summary>
    public static string Clause(Exception failure) => failure switch
    {
        UnauthorizedAccessException => "you may not write there",
        DirectoryNotFoundException => "there is no such folder",
        IOException { HResult: NoSpace or OverQuota or DiskFull } => "the disk is full",
        // Thrown for EFBIG of Linux.
        ArgumentOutOfRangeException => "it is larger than the file system takes",
        _ => WithoutPath(failure.Message),
    };

    /// <summary>The system's words for it; the path behind them may be that of a file that stands beside for a moment.</summary>
    static string WithoutPath(string message) => message.IndexOf(" : '", StringComparison.Ordinal) is > 0 and var end ? message[..end] : message;
}
