using System.Collections.Immutable;
using NcLanguage.Machine.Files;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Jobs;

/// <summary>A setup or machine file as it was read: its text, the editor's address where it is open there, and its stamp on disk.
/// Without text where it could not be read.</summary>
internal sealed record JobFile(SourceText? Text, string? OpenUri, FileStamp Stamp);

/// <summary>A program's setup and machine, and every file that was looked at for them, there or not, by path.</summary>
/// <param name="Programs">Where the programs are found that it calls; null for a text never saved.</param>
internal sealed record LoadedJob(JobInputs Inputs, ImmutableDictionary<string, JobFile> Files, CalledPrograms? Programs)
{
    public bool DependsOn(IEnumerable<string> paths) => paths.Any(path => Files.ContainsKey(path) || Programs?.DependsOn(path) == true);

    /// <summary>The files that are no longer as they were read.</summary>
    public IEnumerable<string> Outdated() =>
        Files.Where(file => FileStamp.Of(file.Key) != file.Value.Stamp).Select(file => file.Key).Concat(Programs?.Outdated() ?? []);
}
