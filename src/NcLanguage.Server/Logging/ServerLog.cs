using Microsoft.Extensions.Logging;

namespace NcLanguage.Server.Logging;

/// <summary>Everything the server logs, in one place.</summary>
static partial class ServerLog
{
    [LoggerMessage(LogLevel.Warning, "{Method} was not taken: {Reason}")]
    public static partial void NotificationRefused(this ILogger log, string method, string reason);

    [LoggerMessage(LogLevel.Warning, "{Told}")]
    public static partial void NotificationOdd(this ILogger log, string told);

    [LoggerMessage(LogLevel.Error, "{Fault}")]
    public static partial void MessageRefused(this ILogger log, string fault);

    [LoggerMessage(LogLevel.Warning, "A message was not taken: it does not say \"jsonrpc\": \"{Version}\". Others like it are not taken either, and not told.")]
    public static partial void MessageOfOtherVersion(this ILogger log, string version);

    [LoggerMessage(LogLevel.Error, "The connection broke: {Reason}")]
    public static partial void ConnectionBroken(this ILogger log, string reason);

    [LoggerMessage(LogLevel.Warning, "The pages of the reference could not be written, so findings carry no links: {Reason}")]
    public static partial void ReferenceNotWritten(this ILogger log, string reason);

    [LoggerMessage(LogLevel.Information, "The folder has {Programs} programs: {Checked} are checked without being opened, the others once they are.")]
    public static partial void WorkspaceCutShort(this ILogger log, int programs, int @checked);

    [LoggerMessage(LogLevel.Information, "The client's process {ProcessId} has ended.")]
    public static partial void ClientEnded(this ILogger log, int processId);
}
