using NcLanguage.Editing.Tests.Support;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Editing.Tests.SignatureHelp;

/// <summary>The words of the code at the cursor, as they stand.</summary>
public sealed class SignatureTests
{
    const string Start = "G21 G90 G17 G54\nT5 M6\nG0 X0 Y0 Z50 S1000 M3\n";

    static SignatureAnswer? At(string marked, MachineProfile? machine = null)
    {
        var (text, line, column) = Typist.Parse(marked);
        return Signatures.At(Editor.Analyse(text, machine: machine), line, column);
    }

    static SignatureLine Active(string marked, MachineProfile? machine = null)
    {
        var answer = At(marked, machine);
        Assert.NotNull(answer);
        return answer.Lines[answer.Active];
    }

    static string Word(SignatureLine line, int index) => line.Label[line.Words[index].Start..line.Words[index].End];

    [Fact]
    public void A_cycle_shows_what_is_given_and_what_is_missing()
    {
        var line = Active(Start + "G83 X10 Y5 |");
        Assert.Equal("G83 X10 Y5 Z… R… F… [L] Q… [P]", line.Label);
        Assert.Equal("Z…", Word(line, line.ActiveWord));
        Assert.StartsWith("peck drilling. Feeds down peck by peck", line.Documentation, StringComparison.Ordinal);
        Assert.Contains("Still missing: Z bottom of the hole; R level, where the feed begins; F feed; Q depth of one peck.", line.Documentation, StringComparison.Ordinal);
        Assert.Equal("bottom of the hole · mm · needed", line.Words[line.ActiveWord].Text);
    }

    /// <summary>What signature, hover and hint say of a dwell's words is one truth: X is seconds, by the decimal point where a reading says so.</summary>
    [Theory]
    [InlineData("dwell=seconds", "s", "s")]
    [InlineData("dwell=milliseconds", "ms", "s")]
    [InlineData("dwell=byPoint", "s with a point, ms without", "s with a point, ms without")]
    [InlineData("integers=increments", "s", "s with a point, ms without")]
    public void A_dwell_tells_the_unit_of_each_word(string reading, string ofP, string ofX)
    {
        var line = Active(Start + "G4 |", Editor.Reading(reading));
        Assert.Equal(
            [$"time to wait · {ofP} · one of these is needed", $"time to wait, on controls that take X here · {ofX} · one of these is needed"],
            line.Words.Where(word => word.Text.StartsWith("time", StringComparison.Ordinal)).Select(word => word.Text));
    }

    [Fact]
    public void What_is_carried_over_stands_in_brackets_with_its_line()
    {
        var line = Active(Start + "G99 G83 X10 Y5 Z-20 R2 Q4 F120\nX20 |");
        Assert.Equal("G83 X20 [Y] (Z-20) (R2) (F120) [L] (Q4) [P]", line.Label);
        Assert.EndsWith("Carried over: Z-20 (line 4), R2 (line 4), F120 (line 4), Q4 (line 4).", line.Documentation, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("G83 X10 Y5 Z-2|0 R2", "Z-20")]
    [InlineData("G83 X1|0 Y5 Z-20 R2", "X10")]
    [InlineData("G83 X10 Y5 Z-20 R|", "R…")]
    [InlineData("G83 X10 Y5 Z-20 R2|", "R2")]
    [InlineData("G83| X10 Y5 Z-20", "R…")]
    public void The_word_at_the_cursor_is_the_active_one(string block, string expected)
    {
        var line = Active(Start + block);
        Assert.Equal(expected, Word(line, line.ActiveWord));
    }

    [Fact]
    public void The_code_that_takes_the_word_is_the_active_one()
    {
        var answer = At(Start + "G43 H|5 G1 X10")!;
        Assert.Equal(2, answer.Lines.Length);
        Assert.StartsWith("G43 H5", answer.Lines[answer.Active].Label, StringComparison.Ordinal);
        Assert.StartsWith("G1 X10", Active(Start + "G43 H5 G1 X1|0").Label, StringComparison.Ordinal);
        Assert.StartsWith("G43", Active(Start + "G43 |").Label, StringComparison.Ordinal);
    }

    [Fact]
    public void One_of_several_words_is_told_as_such()
    {
        Assert.Contains("One of these is needed: I arc centre along X; J arc centre along Y; R", Active(Start + "G2 X10 F100 |").Documentation, StringComparison.Ordinal);
        Assert.DoesNotContain("One of these", Active(Start + "G2 X10 R5 F100 |").Documentation, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("dwell=seconds", "dwell at the bottom · s")]
    [InlineData("dwell=milliseconds", "dwell at the bottom · ms")]
    [InlineData("dwell=byPoint", "dwell at the bottom · s with a point, ms without")]
    public void The_unit_is_that_of_the_control(string reading, string expected) =>
        Assert.Contains(Active(Start + "G82 X1 |", Editor.Reading(reading)).Words, word => word.Text == expected);

    [Fact]
    public void Inches_and_feeds_a_turn_are_told()
    {
        var line = Active("G20 G90 G95 G0 X0 Y0 Z2\nG1 X1 |");
        Assert.Contains(line.Words, word => word.Text == "end point along Y · in");
        Assert.Contains(line.Words, word => word.Text == "feed · in per rev · needed");
    }

    /// <summary>Arguments become local variables: A #1, B #2, C #3, I #4 … (common practice).</summary>
    [Fact]
    public void The_words_of_a_call_become_variables()
    {
        var line = Active("G65 P100 A1.5 X|\nM30\nO100\nM99");
        Assert.StartsWith("G65 P100 [L] A1.5 [B]", line.Label, StringComparison.Ordinal);
        Assert.Equal("X…", Word(line, line.ActiveWord));
        Assert.Equal("becomes #24 in the program called", line.Words[line.ActiveWord].Text);
        Assert.Contains("A #1, B #2, C #3, D #7", line.Documentation, StringComparison.Ordinal);
        Assert.Equal("P…", Word(Active("G65 |"), Active("G65 |").ActiveWord));
    }

    [Fact]
    public void The_values_of_a_subroutine_call_are_counted()
    {
        const string rest = "\nM30\nO100 SUB\nO100 ENDSUB";
        var line = Active("O100 CALL [5] [|6]" + rest);
        Assert.Equal("O100 CALL [5] [6] […]", line.Label);
        Assert.Equal("[6]", Word(line, line.ActiveWord));
        Assert.Equal("becomes #2 in the subroutine", line.Words[line.ActiveWord].Text);
        Assert.Equal("[…]", Word(Active("O100 CALL [5] |" + rest), 1));
    }

    [Theory]
    [InlineData("G83 X1 (G|81)")]
    [InlineData("G83 X1 ; n|ote")]
    [InlineData("|")]
    [InlineData("(note) |")]
    [InlineData("M30 |")]
    [InlineData("N10 |")]
    [InlineData("O1000|")]
    [InlineData("%|")]
    [InlineData("G80\nM5|")]
    [InlineData("M30\nG83 X|")]
    public void Nothing_is_shown_where_no_code_takes_words(string program) => Assert.Null(At(program));

    [Fact]
    public void A_part_of_the_label_belongs_to_each_word()
    {
        foreach (var line in At(Start + "G43 H5 G83 X10 Y#5 |")!.Lines)
        {
            Assert.InRange(line.ActiveWord, 0, line.Words.Length - 1);
            Assert.Equal(line.Words.Select(word => word.Start).Order(), line.Words.Select(word => word.Start));
            Assert.All(line.Words, word => Assert.InRange(word.End, word.Start + 1, line.Label.Length));
        }
    }
}
