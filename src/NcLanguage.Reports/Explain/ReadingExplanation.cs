using NcLanguage.Machine.Profiles;

namespace NcLanguage.Reports.Explain;

/// <summary>Ways in which controls read a text differently.</summary>
static class ReadingExplanation
{
    const string Source = "Controls differ here: common practice. The names are this project's own.";

    public static Explanation Of(Reading reading) => new(
        ExplainedKind.Reading, reading.Name, reading.Meaning.TrimEnd('.'), "Readings", "reading-" + reading.Name,
        [
            new("What it decides", reading.Meaning),
            new("Choices", string.Join('\n', reading.Choices.Select(choice => $"{choice.Name}: {choice.Meaning}")), IsVerbatim: true),
            new("At the machine", $"{reading.Consequence} This is what taking it wrongly leads to."),
            new("Without a machine file", $"{MachineProfile.IsoMill.Name} reads {reading.Of(MachineProfile.IsoMill.Readings).Name}, "
                + $"{MachineProfile.TrainingMill.Name} reads {reading.Of(MachineProfile.TrainingMill.Readings).Name}."),
            new("How to choose", $"--reading {reading.Name}=CHOICE, or among the readings of a machine file."),
            new("Source", Source),
        ]);

    public static Explanation Of(ProgramMark mark) => new(
        ExplainedKind.Reading, $"{ProgramMarkTable.Name}.{mark.Name}", mark.Meaning.TrimEnd('.'), "Readings", $"reading-{ProgramMarkTable.Name}.{mark.Name}",
        [
            new("What it decides", mark.Meaning),
            new("Choices", mark.Values, IsVerbatim: true),
            new("How to choose", $"--reading {ProgramMarkTable.Name}.{mark.Name}=VALUE, or in {ProgramMarkTable.Name} among the readings of a machine file."),
            new("Source", Source),
        ])
    {
        AlsoFoundBy = [mark.Name, ProgramMarkTable.Name],
    };
}
