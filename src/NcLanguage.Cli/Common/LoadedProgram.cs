using NcLanguage.Checks.Analysis;
using NcLanguage.Cli.Files;
using NcLanguage.Machine.Files;

namespace NcLanguage.Cli.Common;

/// <summary>One program with its setup and machine, ready to run.</summary>
sealed record LoadedProgram(ProgramFile File, Job Job)
{
    /// <summary>Mistakes in setup or machine file are told in one line on standard error: the command does what it still can.</summary>
    /// <exception cref="CannotRunException">The program cannot be read, or an option cannot be followed.</exception>
    public static LoadedProgram Load(string path, JobOptions options, AnalysisOptions analysis)
    {
        var file = ProgramFile.Read(path);
        var inputs = JobResolver.Resolve(file, options);
        if (inputs.Problems is [var first, ..])
        {
            var more = inputs.Problems.Length > 1 ? $" ({inputs.Problems.Length - 1} more: check tells them)" : "";
            Application.Tell(first, more);
        }
        return new LoadedProgram(file, new Job(inputs.Machine, inputs.Setup, analysis.Skip, JobResolver.ProgramsBeside(file), analysis.MostBlocks));
    }

    /// <summary>The exit code that the program's findings ask for; they are looked for only where they matter.</summary>
    public int ExitCodeFor(string failOn, AnalysisOptions analysis, CancellationToken cancel) => failOn == "never"
        ? ExitCode.Clean
        : FailOn.ExitCodeFor(failOn, ProgramAnalysis.Create(File.Text, Job.Setup, Job.Machine, analysis with { Programs = Job.Programs }, cancel).Findings.Select(finding => finding.Severity));
}
