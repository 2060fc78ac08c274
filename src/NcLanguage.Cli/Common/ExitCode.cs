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
}
