using NcLanguage.Editing.Tests.Support;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Editing.Tests.Completions;

/// <summary>Codes that may stand at the cursor. Groups as NISTIR 6556 table 4 has them, cycles a group of their own as in ISO 6983 (from memory).</summary>
public sealed class CodeCompletionTests
{
    [Fact]
    public void A_prefix_offers_the_codes_that_begin_with_it()
    {
        var labels = Typist.At("G21 G90\nG8|").Entries.Where(entry => entry.Kind is CompletionKind.Code or CompletionKind.Cycle).Select(entry => entry.Label);
        Assert.Equal(["G80", "G81", "G82", "G83", "G84", "G85", "G86", "G87", "G88", "G89"], labels.Order());
    }

    [Fact]
    public void Codes_of_the_machines_own_are_offered_with_what_they_do()
    {
        var mill = MachineProfile.IsoMill with { IsChosen = true, Codes = [new('M', 130, "spindle and coolant", ["M3", "M8"], "")] };
        var entry = Typist.At("G21 G90\nM1|", machine: mill).Entries.Single(entry => entry.Label == "M13");
        Assert.Equal("spindle and coolant", entry.Detail);
        Assert.Contains("followed as M3 spindle clockwise and M8 flood coolant on", entry.Documentation, StringComparison.Ordinal);
        Assert.DoesNotContain("M13", Typist.Labels("G21 G90\nM1|"));
        Assert.DoesNotContain("M13", Typist.Labels("G21 G90\nG1|", machine: mill));
    }

    /// <summary>Those that its file gives it, once each, as long as they do not stand there.</summary>
    [Theory]
    [InlineData("G21 G90\nM61 |", new[] { "P", "Q" })]
    [InlineData("G21 G90\nM61 P2 |", new[] { "Q" })]
    [InlineData("G21 G90\nM62 |", new string[0])]
    public void Words_of_the_machines_own_codes_are_offered(string program, string[] letters)
    {
        var mill = MachineProfile.IsoMill with { IsChosen = true, Codes = [new('M', 610, "moves the pallet", [], "PQ"), new('M', 620, "lifts the pallet", [], "")] };
        Assert.Equal(letters, Typist.At(program, machine: mill).Entries.Where(entry => entry.Detail.StartsWith("word of", StringComparison.Ordinal)).Select(entry => entry.Label));
    }

    [Fact]
    public void The_whole_word_is_replaced_also_amid_it()
    {
        Assert.Equal("G21\nG83 X5", Typist.Accept("G21\nG8|1 X5", "G83"));
        Assert.Equal("G21 G90", Typist.Accept("G21 G|", "G90"));
        var answer = Typist.At("(é) G8|");
        Assert.Equal((5, 7), (answer.StartColumn, answer.EndColumn));
    }

    [Theory]
    [InlineData("G90 G|", "G91")]
    [InlineData("G0 X1 G|", "G1")]
    [InlineData("G0 X1 G|", "G81")]
    [InlineData("G81 X1 G|", "G0")]
    [InlineData("G4 P1 G|", "G10")]
    [InlineData("M3 M|", "M5")]
    [InlineData("M8 M|", "M9")]
    public void A_group_that_has_its_code_in_the_block_offers_no_other(string program, string absent) => Assert.DoesNotContain(absent, Typist.Labels(program));

    [Theory]
    [InlineData("M8 M|", "M7")]
    [InlineData("G80 G|", "G0")]
    [InlineData("G90 G|", "G21")]
    public void What_may_stand_together_is_offered(string program, string present) => Assert.Contains(present, Typist.Labels(program));

    [Fact]
    public void What_is_in_force_already_comes_last_and_says_so()
    {
        var answer = Typist.At("G21 G90\nG0 X1\nG|");
        var labels = answer.Entries.Select(entry => entry.Label).ToList();
        Assert.True(labels.IndexOf("G90") > labels.IndexOf("G91"));
        Assert.Contains("in force already", answer.Entry("G90").Detail, StringComparison.Ordinal);
        Assert.DoesNotContain("in force", answer.Entry("G91").Detail, StringComparison.Ordinal);
    }

    /// <summary>What holds only because no program has changed it is worth being said (G17 at the start).</summary>
    [Fact]
    public void A_mode_that_the_program_has_not_set_itself_is_no_idle_one() =>
        Assert.DoesNotContain("in force", Typist.At("G21\nG|").Entry("G17").Detail, StringComparison.Ordinal);

    [Fact]
    public void The_machines_codes_for_the_units_are_offered_and_no_others()
    {
        Assert.Contains("G21", Typist.Labels("G|"));
        Assert.DoesNotContain("G71", Typist.Labels("G|"));
        var seventy = Typist.Labels("G|", machine: Editor.Reading("units=G70/G71"));
        Assert.Contains("G71", seventy);
        Assert.DoesNotContain("G21", seventy);
    }

    [Fact]
    public void A_control_that_changes_the_tool_by_T_has_M6_last()
    {
        var entry = Typist.At("T4\nM|", machine: Editor.Reading("toolChange=T")).Entry("M6");
        Assert.Contains("T changes the tool", entry.Detail, StringComparison.Ordinal);
        Assert.Equal("M6", Typist.Labels("T4\nM|")[0]);
    }

    /// <summary>M6 is no mode: it changes to the tool that T has chosen, also to the same.</summary>
    [Fact]
    public void A_tool_change_is_never_in_force()
    {
        Assert.DoesNotContain("in force", Typist.At("T4 M6\nG0 X1\nM|").Entry("M6").Detail, StringComparison.Ordinal);
        Assert.EndsWith("T4 is in the spindle", Typist.At("T4 M6\nG0 X1\nM|").Entry("M6").Detail, StringComparison.Ordinal);
        Assert.DoesNotContain("spindle", Typist.At("T4 M6\nT5 M|").Entry("M6").Detail, StringComparison.Ordinal);
    }

    /// <summary>Repeats are counted by L on some controls and by K on others, never by both.</summary>
    [Theory]
    [InlineData("L", "K")]
    [InlineData("K", "L")]
    public void A_cycle_names_the_word_that_counts_its_repeats(string own, string other)
    {
        var text = CompletionTopics.Documentation(Typist.At("G21 G90\nG|", machine: Editor.Reading("repeats=" + own)).Entry("G81").Topic!);
        Assert.Contains($"; {own} ", text, StringComparison.Ordinal);
        Assert.DoesNotContain($"; {other} ", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Cycles_tell_what_they_need()
    {
        Assert.EndsWith("needs Z R Q", Typist.At("G21 G90\nG|").Entry("G83").Detail, StringComparison.Ordinal);
        Assert.EndsWith("needs Y R", Typist.At("G21 G90 G18\nG|").Entry("G81").Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void The_cycles_of_the_tool_come_first()
    {
        var labels = Typist.Labels(Typist.Drill + "G|", Typist.Plate).ToList();
        Assert.True(labels.IndexOf("G83") < labels.IndexOf("G84"));
        labels = [.. Typist.Labels(Typist.Drill.Replace("T5", "T6", StringComparison.Ordinal) + "G|", Typist.Plate)];
        Assert.True(labels.IndexOf("G84") < labels.IndexOf("G83"));
    }

    [Theory]
    [InlineData("G00 X1\nM03 S1\nG|", "G01")]
    [InlineData("g0 x1 y2\ng|", "g1")]
    [InlineData("G0 X1\nG0|", "G01")]
    [InlineData("G0 X1\nG|", "G1")]
    public void A_code_is_written_as_the_blocks_above_write_theirs(string program, string expected) => Assert.Contains(expected, Typist.Labels(program));

    [Fact]
    public void More_than_four_M_codes_are_not_offered() // NISTIR 6556 §3.3.5
    {
        Assert.DoesNotContain(Typist.At("M3 M8 M48 M6 |").Entries, entry => entry.Label[0] == 'M');
        Assert.Contains(Typist.At("M3 M8 M48 |").Entries, entry => entry.Label[0] == 'M');
    }

    [Fact]
    public void The_documentation_comes_from_the_table()
    {
        var text = CompletionTopics.Documentation(Typist.At("G|").Entry("G83").Topic!)!;
        Assert.Contains("comes out at rapid after each", text, StringComparison.Ordinal);
        Assert.Contains("NISTIR 6556 §3.5.16.4", text, StringComparison.Ordinal);
        Assert.All(Typist.At("|").Entries.Where(entry => entry.Topic is not null), entry => Assert.NotNull(CompletionTopics.Documentation(entry.Topic!)));
        Assert.Null(CompletionTopics.Documentation("code G999"));
        Assert.Null(CompletionTopics.Documentation("nonsense"));
    }
}
