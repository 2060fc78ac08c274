using NcLanguage.Machine.Loading;

namespace NcLanguage.Machine.Profiles;

/// <summary>A reading given on the command line as NAME=CHOICE, or programMarks.NAME=VALUE.</summary>
public static class ReadingOption
{
    const string MarkPrefix = ProgramMarkTable.Name + ".";

    /// <summary>The machine with that reading; the machine as it was, and one sentence why, where the option makes no sense.</summary>
    public static MachineProfile Apply(MachineProfile machine, string option, out string? error)
    {
        ArgumentNullException.ThrowIfNull(machine);
        ArgumentNullException.ThrowIfNull(option);
        var equals = option.IndexOf('=', StringComparison.Ordinal);
        if (equals < 0)
        {
            error = $"The reading \"{option}\" is not of the form NAME=CHOICE, such as dwell=seconds.";
            return machine;
        }
        var name = option[..equals].Trim();
        var choice = option[(equals + 1)..].Trim();
        var changed = name.StartsWith(MarkPrefix, StringComparison.Ordinal)
            ? WithMark(machine.Readings, name[MarkPrefix.Length..], choice, out error)
            : WithReading(machine.Readings, name, choice, out error);
        return changed is null ? machine : machine with { Readings = changed };
    }

    static Readings? WithReading(Readings readings, string name, string choice, out string? error)
    {
        var reading = ReadingTable.Find(name);
        if (reading is null)
        {
            error = $"There is no reading \"{name}\"{Meant(name, ReadingTable.All.Select(r => r.Name))}";
            return null;
        }
        var changed = reading.With(readings, choice);
        error = changed is null ? $"The reading {name} has no choice \"{choice}\"{Meant(choice, reading.ChoiceNames)}" : null;
        return changed;
    }

    static Readings? WithMark(Readings readings, string name, string value, out string? error)
    {
        var mark = ProgramMarkTable.All.FirstOrDefault(m => m.Name == name);
        error = mark is null ? $"There is no reading \"{MarkPrefix}{name}\"{Meant(name, ProgramMarkTable.All.Select(m => m.Name))}" : null;
        if (mark is null)
            return null;
        if (mark.IsTruth && value is "true" or "false")
            return readings with { ProgramMarks = mark.With(readings.ProgramMarks, value == "true") };
        if (!mark.IsTruth && !mark.IsSigns && int.TryParse(value, out var number) && number is >= 1 and <= ProgramMark.GreatestBlock)
            return readings with { ProgramMarks = mark.With(readings.ProgramMarks, number) };
        if (mark.IsSigns && ProgramMark.AreSigns(value))
            return readings with { ProgramMarks = mark.With(readings.ProgramMarks, value) };
        error = $"The reading {MarkPrefix}{name} must be {mark.Values}, not \"{value}\".";
        return null;
    }

    static string Meant(string written, IEnumerable<string> names) => NearestName.Find(written, names) is { } nearest
        ? $"; did you mean {nearest}? There are {string.Join(", ", names)}."
        : $"; there are {string.Join(", ", names)}.";
}
