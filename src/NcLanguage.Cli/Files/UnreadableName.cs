namespace NcLanguage.Cli.Files;

/// <summary>Names of files that are not written in UTF-8. The runtime shows them with a sign in place of each byte that it cannot read, and then finds
/// nothing under the name that it shows.</summary>
static class UnreadableName
{
    public const char Sign = '\uFFFD';

    public static bool Is(FileSystemInfo entry) => entry.Name.Contains(Sign) && !entry.Exists;

    /// <summary>Why the file at a path that leads nowhere cannot be opened, where its folder holds one of such a name; null where it does not.</summary>
    public static string? Reason(string path)
    {
        if (!path.Contains(Sign))
            return null;
        var folder = Path.GetDirectoryName(path) ?? "";
        return UnreadableNames.In(folder.Length == 0 ? "." : folder).Find(Path.GetFileName(path)) is { } written ? Clause(Path.Combine(folder, written)) : null;
    }

    /// <param name="path">With the bytes of the name written out: <see cref="UnreadableNames"/>.</param>
    public static string Clause(string path) => $"{path} has a name that is not written in UTF-8 and cannot be opened: give it another name";
}
