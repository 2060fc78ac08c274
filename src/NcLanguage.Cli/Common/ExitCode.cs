namespace NcLanguage.Cli.Common;

/// <summary>What the process ends with.</summary>
static class ExitCode
{
    /// <summary>Nothing at or above what <c>--fail-on</c> says.</summary>
    public const int Clean = 0;

    /// <summary>Findings at or above it.</summary>
    public const int Findings = 1;

    /// <summary>The command could not do its work; one line on standard error says why.</summary>
    public const int CouldNotRun = 2;

    /// <summary>Ctrl-C ended it before it was done.</summary>
    public const int Interrupted = 130;

    /// <summary>Nobody read the output any more before it was written: 128 and the number of SIGPIPE, which is what a shell tells of a command that this signal ends, as it ends most.
    /// The runtime ignores it, so that the number is given here: neither success nor findings, since not all was looked at.</summary>
    public const int ReaderGone = 141;
}
