using System.Collections.Immutable;

namespace NcLanguage.Machine.Files;

/// <summary>Where the setup, the machine and the cutting data of a program are looked for. Names only: no file is touched here.</summary>
public static class SetupLocator
{
    /// <summary>A setup for all programs at and below its folder.</summary>
    public const string SharedSetupName = "nc.setup.json";

    /// <summary>A machine for all programs at and below its folder.</summary>
    public const string SharedMachineName = "nc.machine.json";

    /// <summary>Cutting data for all programs at and below its folder.</summary>
    public const string SharedCuttingName = "nc.cutting.json";

    /// <summary>The places of a program's setup, the first that exists counting: PROGRAM.setup.json beside it, then nc.setup.json in its
    /// folder and upward to the workspace root, or to the file system's root where none is given or the program lies outside it.</summary>
    /// <remarks>Without a program (a text never saved), the workspace root is the only folder.</remarks>
    public static ImmutableArray<string> SetupCandidates(string? programPath, string? workspaceRoot)
    {
        var shared = Upward(programPath, workspaceRoot, SharedSetupName);
        return FullPath(programPath) is { } program ? [OwnSetupOf(program), .. shared] : [.. shared];
    }

    /// <summary>The setup that belongs to one program alone: PROGRAM.setup.json beside it.</summary>
    public static string OwnSetupOf(string programPath) => Path.ChangeExtension(programPath, null) + ".setup.json";

    /// <summary>The places of a program's machine where its setup names none: nc.machine.json in its folder and upward.</summary>
    public static ImmutableArray<string> MachineCandidates(string? programPath, string? workspaceRoot) =>
        [.. Upward(programPath, workspaceRoot, SharedMachineName)];

    /// <summary>The places of a user's cutting data: nc.cutting.json in the program's folder and upward.</summary>
    public static ImmutableArray<string> CuttingCandidates(string? programPath, string? workspaceRoot) =>
        [.. Upward(programPath, workspaceRoot, SharedCuttingName)];

    /// <summary>A path as the file system takes it, or null where it cannot be one.</summary>
    /// <param name="path">The path as it is written.</param>
    /// <param name="relativeTo">The folder, a full path, that one that is not full counts from; null for the process's folder.</param>
    public static string? FullPath(string? path, string? relativeTo = null)
    {
        if (string.IsNullOrWhiteSpace(path) || path.Contains('\0', StringComparison.Ordinal))
            return null;
        try
        {
            return relativeTo is null ? Path.GetFullPath(path) : Path.GetFullPath(path, relativeTo);
        }
        catch (Exception e) when (e is ArgumentException or NotSupportedException or PathTooLongException)
        {
            return null;
        }
    }

    static IEnumerable<string> Upward(string? programPath, string? workspaceRoot, string name)
    {
        var root = FullPath(workspaceRoot) is { } full ? Path.TrimEndingDirectorySeparator(full) : null;
        var folder = FullPath(programPath) is { } program ? Path.GetDirectoryName(program) : root;
        var comparison = OperatingSystem.IsWindows() ? StringComparison.OrdinalIgnoreCase : StringComparison.Ordinal;
        while (folder is not null)
        {
            yield return Path.Combine(folder, name);
            folder = string.Equals(folder, root, comparison) ? null : Path.GetDirectoryName(folder);
        }
    }
}
