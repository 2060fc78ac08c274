using NcLanguage.Control.Flow;
using NcLanguage.Machine.Files;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Jobs;

/// <summary>The files whose change concerns open programs.</summary>
static class WatchedFiles
{
    public static RegistrationParams Registration { get; } = new(
    [
        new Registration("job-files", Methods.DidChangeWatchedFiles, new DidChangeWatchedFilesRegistrationOptions(
        [
            // The first pattern takes in nc.setup.json; it is named all the same for clients whose * does not match a whole stem.
            new FileSystemWatcherPattern("**/*" + JobFileName.SetupEnding),
            new FileSystemWatcherPattern("**/nc" + JobFileName.SetupEnding),
            new FileSystemWatcherPattern("**/*" + JobFileName.MachineEnding),
            new FileSystemWatcherPattern("**/nc" + JobFileName.CuttingEnding),
            // Programs that others call.
            .. SiblingPrograms.Extensions.Select(extension => new FileSystemWatcherPattern("**/*" + extension)),
        ])),
    ]);

    /// <summary>The name of the program that a setup is for, without its ending; null for a setup of all programs at and below its folder.</summary>
    public static string? ProgramOf(string setupPath) =>
        Path.GetFileName(setupPath).Equals(SetupLocator.SharedSetupName, StringComparison.OrdinalIgnoreCase) ? null : Path.GetFileName(setupPath)[..^JobFileName.SetupEnding.Length];
}
