using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Logging;

/// <summary>$/logTrace: says what was handled and how long it took, where the client asked for it.</summary>
sealed class Tracer(Action<LogTraceParams> send)
{
    volatile string _level = "off";

    /// <summary>Sets the level: off, messages or verbose. Anything else counts as off.</summary>
    public void Set(string? level) => _level = level is "messages" or "verbose" ? level : "off";

    public void Handled(string method, TimeSpan time)
    {
        var level = _level;
        if (level == "off")
            return;
        send(new LogTraceParams($"Handled {method}", level == "verbose" ? $"{time.TotalMilliseconds:0.000} ms from its arrival" : null));
    }
}
