using System.Collections.Immutable;
using NcLanguage.Cli.Common;
using NcLanguage.Control.Flow;
using NcLanguage.Machine.Files;
using NcLanguage.Machine.Loading;

namespace NcLanguage.Cli.Files;

/// <summary>Finds the setup and the machine of a program.</summary>
static class JobResolver
{
    /// <exception cref="CannotRunException">An option on the command line cannot be followed.</exception>
    public static JobInputs Resolve(ProgramFile program, JobOptions options)
    {
        // A text without a place on disk is read with the setup of the folder that the command runs in.
        var root = program.IsStandardInput ? Environment.CurrentDirectory : null;
        var job = JobFiles.Resolve(program.PlaceOnDisk, root, DiskFiles.Instance, options);
        return job.OptionErrors.IsEmpty ? job : throw new CannotRunException(job.OptionErrors[0].TrimEnd('.'));
    }

    /// <summary>The programs beside a program; null where it has no place on disk.</summary>
    public static ICalledPrograms? ProgramsBeside(ProgramFile program) =>
        program.PlaceOnDisk is { } path && !program.IsStandardInput ? new SiblingPrograms(path, DiskFiles.Instance) : null;

    /// <summary>The mistakes of a setup, machine or cutting file, and of the machines that it leads to, whatever program it is for.</summary>
    /// <exception cref="ProgramFailedException">It cannot be read; the message names it.</exception>
    public static ImmutableArray<SetupProblem> Mistakes(string jobFile)
    {
        if (JobFileName.IsCutting(jobFile))
            return CuttingFile.Read(Path.GetFullPath(jobFile), FileBytes.Read(jobFile).Bytes, behind: null).Problems;
        var options = JobFileName.IsSetup(jobFile) ? new JobOptions { SetupPath = jobFile } : new JobOptions { Machine = jobFile };
        var job = JobFiles.Resolve(null, null, DiskFiles.Instance, options);
        return job.OptionErrors.IsEmpty ? job.Problems : throw new ProgramFailedException(job.OptionErrors[0].TrimEnd('.'));
    }
}
