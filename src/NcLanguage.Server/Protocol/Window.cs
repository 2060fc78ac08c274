namespace NcLanguage.Server.Protocol;

enum MessageType
{
    Error = 1,
    Warning = 2,
    Info = 3,
    Log = 4,
}

sealed record LogMessageParams(MessageType Type, string Message);

sealed record ShowMessageParams(MessageType Type, string Message);

sealed record LogTraceParams(string Message, string? Verbose);

sealed record SetTraceParams(string Value);
