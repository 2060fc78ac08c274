namespace NcLanguage.Server.Protocol;

internal sealed record FileEvent(string Uri);

internal sealed record DidChangeWatchedFilesParams(FileEvent[] Changes);

internal sealed record RegistrationParams(Registration[] Registrations);

internal sealed record Registration(string Id, string Method, DidChangeWatchedFilesRegistrationOptions RegisterOptions);

internal sealed record DidChangeWatchedFilesRegistrationOptions(FileSystemWatcherPattern[] Watchers);

internal sealed record FileSystemWatcherPattern(string GlobPattern);
