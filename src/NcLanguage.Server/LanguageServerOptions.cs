using Microsoft.Extensions.Logging;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Files;

namespace NcLanguage.Server;

/// <summary>What the caller of the server may choose.</summary>
public sealed record LanguageServerOptions
{
    /// <summary>Where log lines go beside the client's log; null for nowhere. Never the stream that carries the protocol.</summary>
    public TextWriter? ErrorLog { get; init; }

    /// <summary>A setup, machine or readings chosen for all programs.</summary>
    public JobOptions Job { get; init; } = JobOptions.None;

    /// <summary>How programs are analysed.</summary>
    public AnalysisOptions Analysis { get; init; } = new(MostBlocks: AnalysisOptions.MostBlocksWhileTyping);

    /// <summary>Where setup and machine files are read.</summary>
    public IFileAccess Files { get; init; } = DiskFiles.Instance;

    /// <summary>Writes a page for each rule, named by its number with the ending .md, where there is none yet, and gives their folder. Called
    /// once, on a worker, when the first finding is told. May throw IOException or UnauthorizedAccessException. Null: findings carry no links.</summary>
    public Func<string>? WriteReference { get; init; }

    /// <summary>Makes the pages of a program; null where there are none.</summary>
    public IPages? Pages { get; init; }

    /// <summary>The least level that is logged.</summary>
    public LogLevel LogLevel { get; init; } = LogLevel.Information;
}
