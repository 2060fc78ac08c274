namespace NcLanguage.Server.Protocol;

sealed record FileEvent(string Uri);

sealed record DidChangeWatchedFilesParams(FileEvent[] Changes);

sealed record RegistrationParams(Registration[] Registrations);

sealed record Registration(string Id, string Method, DidChangeWatchedFilesRegistrationOptions RegisterOptions);

sealed record DidChangeWatchedFilesRegistrationOptions(FileSystemWatcherPattern[] Watchers);

sealed record FileSystemWatcherPattern(string GlobPattern);
