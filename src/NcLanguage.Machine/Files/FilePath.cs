namespace NcLanguage.Machine.Files;

/// <summary>Paths as this system compares them; no file is looked at.</summary>
public static class FilePath
{
    /// <summary>How paths compare on this system.</summary>
    public static StringComparer Comparer { get; } = OperatingSystem.IsWindows() || OperatingSystem.IsMacOS() ? StringComparer.OrdinalIgnoreCase : StringComparer.Ordinal;

    /// <summary>Whether a full path lies in a folder or below it, going by how both are written.</summary>
    public static bool IsBelow(string folder, string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        // The root of a disk ends with a separator already.
        var inner = Path.EndsInDirectorySeparator(folder) ? folder : folder + Path.DirectorySeparatorChar;
        return path.Length >= inner.Length && Comparer.Equals(path[..inner.Length], inner);
    }

    /// <summary>Whether two full paths are written for the same folder, with a separator at the end or without.</summary>
    public static bool IsSameFolder(string folder, string path) => Comparer.Equals(Path.TrimEndingDirectorySeparator(folder), Path.TrimEndingDirectorySeparator(path));
}
