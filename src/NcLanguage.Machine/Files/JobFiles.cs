using System.Collections.Immutable;
using NcLanguage.Machine.Cutting;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Files;

/// <summary>Finds and reads the setup and the machine of a program.</summary>
public static class JobFiles
{
    /// <summary>The cutting data in force in a folder, where no program is concerned, and every mistake in the user's file.</summary>
    public static CuttingTable Cutting(string folder, IFileAccess files, out ImmutableArray<SetupProblem> problems)
    {
        ArgumentNullException.ThrowIfNull(files);
        var search = new FileSearch(files);
        var own = new CuttingSearch(search).Find(Path.Combine(folder, SetupLocator.SharedCuttingName), null);
        problems = [.. search.Problems];
        return own ?? CuttingTable.BuiltIn;
    }

    /// <summary>The setup and machine in force for a program. Never throws: what cannot be read is a problem or an option error.</summary>
    /// <remarks>The program need not exist, and may be null for a text never saved. The workspace root bounds the search upward. Relative
    /// paths count from the process's folder.</remarks>
    public static JobInputs Resolve(string? programPath, string? workspaceRoot, IFileAccess files, JobOptions options)
    {
        ArgumentNullException.ThrowIfNull(files);
        ArgumentNullException.ThrowIfNull(options);
        var search = new FileSearch(files);
        var setup = new SetupSearch(search).Find(programPath, workspaceRoot, options.SetupPath, out var reportMachine);
        var machine = new MachineSearch(search).Find(programPath, workspaceRoot, options.Machine, setup, reportMachine);
        if (new CuttingSearch(search).Find(programPath, workspaceRoot) is { } cutting)
            setup = setup with { OwnCutting = cutting };
        foreach (var reading in options.Readings)
        {
            machine = ReadingOption.Apply(machine, reading, out var error);
            if (error is not null)
                search.OptionErrors.Add(error);
        }
        return new JobInputs
        {
            Setup = setup,
            Machine = machine,
            Problems = [.. search.Problems],
            LookedAt = [.. search.LookedAt],
            OptionErrors = [.. search.OptionErrors],
        };
    }
}
