using NcLanguage.Machine.Loading;

namespace NcLanguage.Machine.Files;

/// <summary>One search for the files of a job: what was looked at, and what went wrong.</summary>
sealed class FileSearch(IFileAccess files)
{
    readonly HashSet<string> _seen = [];

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
        foreach (var path in candidates)
        {
            var answer = Read(path);
            if (answer.State != FileState.Missing)
                return (path, answer);
        }
        return null;
    }

    /// <summary>Reports a file that stands where it was looked for but cannot be read.</summary>
    public void ReportUnreadable(string path, FileState state, string consequence) =>
        Problems.Add(new SetupProblem(ProblemKind.Malformed, path, 1, 1, 1, 1, $"{FileStateText.Clause(path, state)}; {consequence}."));
}
