namespace NcLanguage.Machine.Files;

/// <summary>The kinds of files beside programs, by their names; no file is looked at.</summary>
public static class JobFileName
{
    public const string SetupEnding = ".setup.json";
    public const string MachineEnding = ".machine.json";
    public const string CuttingEnding = ".cutting.json";

    public static bool IsSetup(string path) => Ends(path, SetupEnding);

    public static bool IsMachine(string path) => Ends(path, MachineEnding);

    public static bool IsCutting(string path) => Ends(path, CuttingEnding);

    /// <summary>True for a setup, machine or cutting file.</summary>
    public static bool IsJobFile(string path) => IsSetup(path) || IsMachine(path) || IsCutting(path);

    static bool Ends(string path, string ending)
    {
        ArgumentNullException.ThrowIfNull(path);
        return path.EndsWith(ending, StringComparison.OrdinalIgnoreCase);
    }
}
