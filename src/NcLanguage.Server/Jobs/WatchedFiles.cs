using NcLanguage.Control.Flow;
using NcLanguage.Machine.Files;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Jobs;

/// <summary>The files whose change concerns open programs.</summary>
static class WatchedFiles
{
    const string SetupEnding = ".setup.json";
    const string MachineEnding = ".machine.json";
    const string CuttingEnding = ".cutting.json";

    public static RegistrationParams Registration { get; } = new(
    [
        new Registration("job-files", Methods.DidChangeWatchedFiles, new DidChangeWatchedFilesRegistrationOptions(
        [
            // The first pattern takes in nc.setup.json; it is named all the same for clients whose * does not match a whole stem.
            new FileSystemWatcherPattern("**/*" + SetupEnding),
            new FileSystemWatcherPattern("**/nc" + SetupEnding),
            new FileSystemWatcherPattern("**/*" + MachineEnding),
            new FileSystemWatcherPattern("**/nc" + CuttingEnding),
            // Programs that others call.
            .. SiblingPrograms.Extensions.Select(extension => new FileSystemWatcherPattern("**/*" + extension)),
        ])),
    ]);

    /// <summary>The name of the program that a setup is for, without its ending; null for a setup of all programs at and below its folder.</summary>
    public static string? ProgramOf(string setupPath) =>
        Path.GetFileName(setupPath).Equals(SetupLocator.SharedSetupName, StringComparison.OrdinalIgnoreCase) ? null : Path.GetFileName(setupPath)[..^SetupEnding.Length];

    public static bool IsSetup(string path) => path.EndsWith(SetupEnding, StringComparison.OrdinalIgnoreCase);

    public static bool IsMachine(string path) => path.EndsWith(MachineEnding, StringComparison.OrdinalIgnoreCase);

    public static bool IsCutting(string path) => path.EndsWith(CuttingEnding, StringComparison.OrdinalIgnoreCase);

    /// <summary>True for a setup, machine or cutting file, going by its name.</summary>
    public static bool IsJobFile(string path) => IsSetup(path) || IsCutting(path) || IsMachine(path);
}
