using Microsoft.Extensions.Logging;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Logging;

/// <summary>Sends log lines to the client as <c>window/logMessage</c>, without stack traces, and to the error stream in full.
/// Never to stdout: that carries the protocol.</summary>
sealed class ServerLoggerProvider(TextWriter? errorLog) : ILoggerProvider
{
    readonly Lock _gate = new();

    /// <summary>Where lines for the client go; null until there is a connection.</summary>
    public Action<LogMessageParams>? ToClient { get; set; }

    public ILogger CreateLogger(string categoryName) => new ServerLogger(this);

    public void Dispose() => ToClient = null;

    void Write(LogLevel level, string message, string? details)
    {
        var type = level switch
        {
            >= LogLevel.Error => MessageType.Error,
            LogLevel.Warning => MessageType.Warning,
            LogLevel.Information => MessageType.Info,
            _ => MessageType.Log,
        };
        // The message of an exception may quote as much as it likes.
        message = Excerpt.OfMessage(message);
        ToClient?.Invoke(new LogMessageParams(type, message));
        if (errorLog is null)
            return;
        lock (_gate)
        {
            errorLog.WriteLine($"nclanguage: {message}");
            if (details is not null)
                errorLog.WriteLine(details);
            errorLog.Flush();
        }
    }

    sealed class ServerLogger(ServerLoggerProvider provider) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => logLevel != LogLevel.None;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            provider.Write(logLevel, formatter(state, exception), (state as FaultReport)?.Details);
    }
}
