using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Jobs;

/// <summary>The files whose change concerns open programs.</summary>
internal static class WatchedFiles
{
    public static RegistrationParams Registration { get; } = new(
    [
        new Registration("job-files", Methods.DidChangeWatchedFiles, new DidChangeWatchedFilesRegistrationOptions(
        [
            new FileSystemWatcherPattern("**/*.setup.json"),
            new FileSystemWatcherPattern("**/nc.setup.json"),
            new FileSystemWatcherPattern("**/*.machine.json"),
        ])),
    ]);
}
