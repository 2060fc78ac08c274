using System.Collections.Immutable;
using NcLanguage.Machine.Files;
using NcLanguage.Machine.Loading;
using NcLanguage.Server.Documents;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Jobs;

/// <summary>A setup or machine file as it was read: its text, the editor's address where it is open there, and its stamp on disk.
/// Without text where it could not be read.</summary>
/// <param name="IsRefused">Whether it is a link out of where files are read; the stamp is its own then. Another file may come in its place.</param>
sealed record JobFile(SourceText? Text, string? OpenUri, FileStamp Stamp, bool IsRefused = false)
{
    public bool IsOutdated(string path) => (IsRefused ? FileStamp.OfLink(path) : FileStamp.Of(path)) != Stamp;
}

/// <summary>A program's setup and machine, and every file that was looked at for them, there or not, by path.</summary>
/// <param name="Programs">Where the programs are found that it calls; null for a text never saved.</param>
sealed record LoadedJob(JobInputs Inputs, ImmutableDictionary<string, JobFile> Files, CalledPrograms? Programs)
{
    public bool DependsOn(IEnumerable<string> paths) => paths.Any(path => Files.ContainsKey(path) || Programs?.DependsOn(path) == true);

    /// <summary>The mistakes in a file.</summary>
    public IEnumerable<SetupProblem> ProblemsIn(string path) => Inputs.Problems.Where(problem => DocumentUri.PathComparer.Equals(problem.Path, path));

    /// <summary>Whether nothing of a file can be used.</summary>
    public bool IsUnreadable(string path) => Inputs.Problems.Any(problem => IsUnreadable(problem, path));

    /// <summary>The same, where programs meanwhile go by what the file said before: its mistake says so.</summary>
    public LoadedJob WithStateBefore(string path) => this with
    {
        Inputs = Inputs with { Problems = [.. Inputs.Problems.Select(problem => IsUnreadable(problem, path) ? problem.WithConsequence("Until it can be read again, programs go by what it said before") : problem)] },
    };

    static bool IsUnreadable(SetupProblem problem, string path) => problem.Kind == ProblemKind.Malformed && DocumentUri.PathComparer.Equals(problem.Path, path);

    /// <summary>The files that are no longer as they were read.</summary>
    public IEnumerable<string> Outdated() =>
        Files.Where(file => file.Value.IsOutdated(file.Key)).Select(file => file.Key).Concat(Programs?.Outdated() ?? []);
}
