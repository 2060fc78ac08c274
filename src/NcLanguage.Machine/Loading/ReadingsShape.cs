using NcLanguage.Machine.Json;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Machine.Loading;

/// <summary>The readings of a machine file, made from the table of readings.</summary>
static class ReadingsShape
{
    static readonly ObjectShape<ProgramMarks> MarksShape = new("the list of program marks", [.. ProgramMarkTable.All.Select(MarkField)]);

    static readonly ObjectShape<Readings> Shape = new(
        "the list of readings",
        [.. ReadingTable.All.Select(ReadingField), new Field<Readings>(ProgramMarkTable.Name, (readings, m, read) => Marks(readings, m, read))]);

    /// <summary>The readings with those of the file; a wrong one stays as the base has it, and the problem says so.</summary>
    public static Readings Read(Readings readings, JsonMember member, ValueReader read) =>
        read.IsObject(member.Value, $"\"{member.Name}\"", "the readings of the base stay") ? Shape.Read(readings, member.Value, read) : readings;

    static Field<Readings> ReadingField(Reading reading) => new(reading.Name, (readings, m, read) =>
    {
        var instead = $"the base's {reading.Of(readings).Name} stays";
        var choice = reading.IsTruth
            ? read.Truth(m, instead) switch { true => "true", false => "false", null => null }
            : read.Choice(m, reading.ChoiceNames, instead);
        return choice is null ? readings : reading.With(readings, choice)!;
    });

    static Readings Marks(Readings readings, JsonMember member, ValueReader read) =>
        read.IsObject(member.Value, $"\"{member.Name}\"", "the marks of the base stay")
            ? readings with { ProgramMarks = MarksShape.Read(readings.ProgramMarks, member.Value, read) }
            : readings;

    static Field<ProgramMarks> MarkField(ProgramMark mark) => new(mark.Name, (marks, m, read) =>
    {
        const string instead = "what the base says stays";
        if (mark.IsTruth)
            return read.Truth(m, instead) is { } truth ? mark.With(marks, truth) : marks;
        if (mark.IsSigns)
            return read.Signs(m, mark.Values, instead) is { } signs ? mark.With(marks, signs) : marks;
        return read.Whole(m, Bounds.BlockLength, instead) is { } number ? mark.With(marks, number) : marks;
    });
}
