using NcLanguage.Machine.Profiles;

namespace NcLanguage.Machine.Tests.Profiles;

public class ReadingTests
{
    [Fact]
    public void Every_choice_of_every_reading_changes_its_own_member_alone()
    {
        var seen = new HashSet<Readings>();
        foreach (var reading in ReadingTable.All)
        {
            foreach (var choice in reading.Choices)
            {
                var changed = reading.With(new Readings(), choice.Name)!;
                Assert.Equal(choice, reading.Of(changed));
                Assert.All(ReadingTable.All.Where(r => r != reading), other => Assert.Equal(other.Of(new Readings()), other.Of(changed)));
                seen.Add(changed);
            }
        }
        // All but the default of each reading make other readings.
        Assert.Equal(1 + ReadingTable.All.Sum(r => r.Choices.Length - 1), seen.Count);
    }

    [Fact]
    public void The_table_holds_every_member_of_the_readings()
    {
        var members = typeof(Readings).GetProperties().Select(p => p.Name).Where(n => n is not (nameof(Readings.ProgramMarks) or "EqualityContract"));

        Assert.Equal(members.Order(), ReadingTable.All.Select(r => char.ToUpperInvariant(r.Name[0]) + r.Name[1..]).Order());
    }

    [Fact]
    public void Meanings_are_sentences()
    {
        var texts = ReadingTable.All.SelectMany(r => r.Choices.Select(c => c.Meaning).Append(r.Meaning).Append(r.Consequence)).Concat(ProgramMarkTable.All.Select(m => m.Meaning));

        Assert.All(texts, text => Assert.True(text.EndsWith('.') && !char.IsLower(text[0]), text));
    }

    [Fact]
    public void The_built_in_profiles_differ_in_three_readings_and_the_name_only()
    {
        var iso = MachineProfile.IsoMill;

        Assert.Equal(
            ["dwell seconds milliseconds", "holePositions distanceMode incremental", "returnLevel afterHole beforeMove"],
            ReadingTable.All.Where(r => r.Of(iso.Readings) != r.Of(MachineProfile.TrainingMill.Readings))
                .Select(r => $"{r.Name} {r.Of(iso.Readings).Name} {r.Of(MachineProfile.TrainingMill.Readings).Name}"));
        Assert.Equal(iso, MachineProfile.TrainingMill with { Name = iso.Name, Readings = iso.Readings });
        Assert.Same(MachineProfile.TrainingMill, MachineProfile.FindBuiltIn("training-mill"));
        Assert.Null(MachineProfile.FindBuiltIn("mill"));
    }

    [Theory]
    [InlineData("dwell=milliseconds")]
    [InlineData(" units = G70/G71 ")]
    [InlineData("rapidsEndCycle=false")]
    public void An_option_sets_a_reading_and_nothing_else(string option)
    {
        var machine = ReadingOption.Apply(MachineProfile.IsoMill, option, out var error);

        Assert.Null(error);
        var parts = option.Split('=', StringSplitOptions.TrimEntries);
        Assert.Equal(parts[1], ReadingTable.Find(parts[0])!.Of(machine.Readings).Name);
        Assert.Equal(MachineProfile.IsoMill, machine with { Readings = MachineProfile.IsoMill.Readings });
    }

    [Fact]
    public void Options_set_program_marks()
    {
        var machine = ReadingOption.Apply(MachineProfile.IsoMill, "programMarks.longestBlock=80", out var first);
        machine = ReadingOption.Apply(machine, "programMarks.lowerCase=false", out var second);

        machine = ReadingOption.Apply(machine, "programMarks.characters=%=()", out var third);

        Assert.True(first is null && second is null && third is null);
        Assert.Equal(new ProgramMarks { LongestBlock = 80, LowerCase = false, Characters = "%=()" }, machine.Readings.ProgramMarks);
    }

    [Theory]
    [InlineData("dwell", "form NAME=CHOICE")]
    [InlineData("dwel=seconds", "did you mean dwell?")]
    [InlineData("dwell=second", "did you mean seconds?", "milliseconds, seconds, byPoint")]
    [InlineData("dwell=", "no choice \"\"")]
    [InlineData("=", "no reading \"\"")]
    [InlineData("rapidsEndCycle=yes", "true, false")]
    [InlineData("programMarks.percent=5", "true or false")]
    [InlineData("programMarks.longestBlock=0", "from 1 to")]
    [InlineData("programMarks.characters=", "signs of ASCII")]
    [InlineData("programMarks.characters=%A", "signs of ASCII")]
    [InlineData("programMarks.characters=%°", "signs of ASCII")]
    [InlineData("programMarks.longestBlocks=80", "did you mean longestBlock?")]
    public void A_wrong_option_is_refused_in_one_sentence(string option, params string[] parts)
    {
        var machine = ReadingOption.Apply(MachineProfile.TrainingMill, option, out var error);

        Assert.Same(MachineProfile.TrainingMill, machine);
        Assert.All(parts, part => Assert.Contains(part, error, StringComparison.Ordinal));
        Assert.EndsWith(".", error, StringComparison.Ordinal);
    }
}
