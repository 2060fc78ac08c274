using NcLanguage.Machine.Loading;

namespace NcLanguage.Machine.Files;

/// <summary>One search for the files of a job: what was looked at, and what went wrong.</summary>
internal sealed class FileSearch(IFileAccess files)
{
    private readonly HashSet<string> _seen = [];

    public List<string> LookedAt { get; } = [];

    public List<SetupProblem> Problems { get; } = [];

    public List<string> OptionErrors { get; } = [];

    public FileAnswer Read(string path)
    {
        if (_seen.Add(path))
            LookedAt.Add(path);
        return files.Read(path);
    }

    /// <summary>The first of the places where something stands, or null where all are empty.</summary>
    public (string Path, FileAnswer Answer)? FirstPresent(IEnumerable<string> candidates)
    {
        foreach (string path in candidates)
        {
            var answer = Read(path);
            if (answer.State != FileState.Missing)
                return (path, answer);
        }
        return null;
    }

    /// <summary>Reports a file that stands where it was looked for but cannot be read.</summary>
    public void ReportUnreadable(string path, FileState state, string consequence) =>
        Problems.Add(new SetupProblem(ProblemKind.Malformed, path, 1, 1, 1, 1, $"{Clause(path, state)}; {consequence}."));

    /// <summary>Why a file could not be read, as a clause.</summary>
    public static string Clause(string path, FileState state)
    {
        string name = ValueReader.Clip(Path.GetFileName(path));
        return state switch
        {
            FileState.Missing => $"there is no file {name}",
            FileState.IsFolder => $"{name} is a folder, not a file",
            FileState.Denied => $"{name} may not be read by you",
            FileState.Outside => $"{name} lies outside the workspace and the program's folder, where nothing is read",
            FileState.TooLarge => $"{name} is larger than {DiskFiles.GreatestSize / 1024 / 1024} MB, too large for a file of its kind",
            _ => $"{name} could not be read",
        };
    }
}
