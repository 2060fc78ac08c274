using System.Collections.Immutable;
using NcLanguage.Cli.Common;
using NcLanguage.Control.Flow;
using NcLanguage.Machine.Cutting;
using NcLanguage.Machine.Files;
using NcLanguage.Machine.Loading;

namespace NcLanguage.Cli.Files;

/// <summary>Finds the setup and the machine of a program.</summary>
static class JobResolver
{
    /// <param name="program">The program.</param>
    /// <param name="options">What the command line chooses.</param>
    /// <param name="folders">Full paths of folders that the command line names beside it: what files refer to may lie there as well.</param>
    /// <exception cref="CannotRunException">An option on the command line cannot be followed.</exception>
    public static JobInputs Resolve(ProgramFile program, JobOptions options, ImmutableArray<string> folders = default)
    {
        // A text without a place on disk is read with the setup of the folder that the command runs in.
        var root = program.IsStandardInput ? Environment.CurrentDirectory : null;
        var job = JobFiles.Resolve(program.PlaceOnDisk, root, FenceAround(program.PlaceOnDisk, root, options, folders.IsDefault ? [] : folders), options);
        return job.OptionErrors.IsEmpty ? job : throw new CannotRunException(job.OptionErrors[0].TrimEnd('.'));
    }

    /// <summary>The programs beside a program; null where it has no place on disk.</summary>
    public static ICalledPrograms? ProgramsBeside(ProgramFile program) =>
        program.PlaceOnDisk is { } path && !program.IsStandardInput ? new SiblingPrograms(path, DiskFiles.Instance) : null;

    /// <summary>The mistakes of a setup, machine or cutting file, and of the machines that it leads to, whatever program it is for.</summary>
    /// <param name="jobFile">Its path.</param>
    /// <param name="folders">As for a program.</param>
    /// <exception cref="ProgramFailedException">It cannot be read; the message names it.</exception>
    public static ImmutableArray<SetupProblem> Mistakes(string jobFile, ImmutableArray<string> folders)
    {
        if (JobFileName.IsCutting(jobFile))
            return CuttingFile.Read(Path.GetFullPath(jobFile), FileBytes.Read(jobFile).Bytes, behind: null).Problems;
        var options = JobFileName.IsSetup(jobFile) ? new JobOptions { SetupPath = jobFile } : new JobOptions { Machine = jobFile };
        var job = JobFiles.Resolve(null, null, FenceAround(null, null, options, folders), options);
        return job.OptionErrors.IsEmpty ? job.Problems : throw new ProgramFailedException(job.OptionErrors[0].TrimEnd('.'));
    }

    /// <summary>The cutting data in force in a folder, and every mistake in the user's file.</summary>
    public static CuttingTable Cutting(string folder, out ImmutableArray<SetupProblem> problems)
    {
        var own = Path.Combine(folder, SetupLocator.SharedCuttingName);
        return JobFiles.Cutting(folder, FenceAround(own, null, JobOptions.None, []), out problems);
    }

    static JobFence FenceAround(string? program, string? root, JobOptions options, ImmutableArray<string> folders) => new(
        [.. folders, .. JobFence.Named(program is null ? [] : [program]), .. root is null ? [] : (string[])[root], .. JobFence.Named(options)],
        [.. SetupLocator.SetupCandidates(program, root), .. SetupLocator.MachineCandidates(program, root), .. SetupLocator.CuttingCandidates(program, root)]);
}
