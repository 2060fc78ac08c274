using System.Collections.Immutable;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Files;

/// <summary>What the user chose apart from the files beside a program; null and empty where nothing was chosen.</summary>
public sealed record JobOptions
{
    public static JobOptions None { get; } = new();

    /// <summary>A setup file to use instead of looking for one.</summary>
    public string? SetupPath { get; init; }

    /// <summary>A machine file, or a built-in profile's name, to use instead of what the setup names.</summary>
    public string? Machine { get; init; }

    /// <summary>Readings as NAME=CHOICE, put over the machine's own in this order.</summary>
    public ImmutableArray<string> Readings { get; init; } = [];
}

/// <summary>Everything beside the program text that its analysis needs.</summary>
public sealed record JobInputs
{
    public required Setup Setup { get; init; }

    public required MachineProfile Machine { get; init; }

    /// <summary>Every mistake in the files that were read, each with the path of its file.</summary>
    public ImmutableArray<SetupProblem> Problems { get; init; } = [];

    /// <summary>Every path that was looked at, found or not: when one of them changes or comes to be, resolve again.</summary>
    public ImmutableArray<string> LookedAt { get; init; } = [];

    /// <summary>One sentence for each option that could not be followed: a file that is not there, a reading that is none.</summary>
    public ImmutableArray<string> OptionErrors { get; init; } = [];
}
