using Microsoft.Extensions.Logging;

namespace NcLanguage.Server;

/// <summary>What the caller of the server may choose.</summary>
public sealed record LanguageServerOptions
{
    /// <summary>Where log lines go beside the client's log; null for nowhere. Never the stream that carries the protocol.</summary>
    public TextWriter? ErrorLog { get; init; }

    /// <summary>The least level that is logged.</summary>
    public LogLevel LogLevel { get; init; } = LogLevel.Information;
}
