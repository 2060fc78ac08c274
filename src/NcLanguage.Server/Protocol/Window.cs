namespace NcLanguage.Server.Protocol;

internal enum MessageType
{
    Error = 1,
    Warning = 2,
    Info = 3,
    Log = 4,
}

internal sealed record LogMessageParams(MessageType Type, string Message);

internal sealed record ShowMessageParams(MessageType Type, string Message);

internal sealed record LogTraceParams(string Message, string? Verbose);

internal sealed record SetTraceParams(string Value);
