namespace NcLanguage.Cli.Files;

/// <summary>Says why something could not be written.</summary>
static class WriteFailure
{
    // EFBIG of Linux and macOS (errno.h); the runtime has an exception of its own for it.
    const int TooLarge = 27;

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
        ArgumentOutOfRangeException or IOException { HResult: TooLarge } => "it is larger than a file may become here",
        _ => WithoutPath(failure.Message),
    };

    /// <summary>The system's words for it; the path behind them may be that of a file that stands beside for a moment.</summary>
    static string WithoutPath(string message) => message.IndexOf(" : '", StringComparison.Ordinal) is > 0 and var end ? message[..end] : message;
}
