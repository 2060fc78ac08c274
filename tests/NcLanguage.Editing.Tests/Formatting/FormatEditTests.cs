using NcLanguage.Checks.Analysis;
using NcLanguage.Editing.Formatting;
using NcLanguage.Editing.Tests.Support;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Tests.Formatting;

/// <summary>Tidying as edits: they lead to what the whole tidy text is.</summary>
public sealed class FormatEditTests
{
    static string Apply(string program, IReadOnlyList<RangeEdit> edits)
    {
        var text = SourceText.From(program);
        foreach (var edit in edits.Reverse())
            text = text.WithChange(text.OffsetOf(edit.Stretch.StartLine, edit.Stretch.StartColumn), text.OffsetOf(edit.Stretch.EndLine, edit.Stretch.EndColumn),
                System.Text.Encoding.UTF8.GetBytes(edit.NewText));
        return text.ToString();
    }

    [Theory]
    [InlineData("g0x1\n\n\n\ng1 y2f3\n")]
    [InlineData("\n\ng0 x1")]
    [InlineData("G0 X1\n\n\n")]
    [InlineData("G0 X1\n  \n\t\nG0 X2\r\n\r\n\r\ng0x3\r\n")]
    [InlineData("")]
    [InlineData("\n")]
    [InlineData("G0 X1\n")]
    public void Edits_lead_to_the_tidy_text(string program)
    {
        var analysis = ProgramAnalysis.Create(SourceText.From(program), Machine.Setups.Setup.None, MachineProfile.IsoMill);
        var (edits, refusal) = FormatEdits.Of(analysis, 0, int.MaxValue, default);
        Assert.Null(refusal);
        var tidy = ProgramFormat.Of(analysis.Text, analysis.Main.Job, new FormatOptions(), default).Text.ToString();
        Assert.Equal(tidy, Apply(program, edits));
    }

    [Fact]
    public void Random_programs_too()
    {
        var random = new Random(20261127);
        string[] lines = ["", " ", "g0x1", "G0 X1", "(a)  ", "n10 g1 y2 f3", "\t", "#1 = 2"];
        for (var run = 0; run < 500; run++)
        {
            var program = string.Concat(Enumerable.Range(0, random.Next(12)).Select(_ => lines[random.Next(lines.Length)] + (random.Next(5) == 0 ? "\r\n" : "\n")));
            Edits_lead_to_the_tidy_text(random.Next(2) == 0 ? program : program.TrimEnd('\n'));
        }
    }

    [Fact]
    public void A_range_leaves_the_lines_around_it()
    {
        const string Program = "g0x1\ng0x2\n\n\ng0x3\ng0x4";
        var analysis = Editor.Analyse(Program);
        Assert.Equal("g0x1\nG0 X2\n\nG0 X3\ng0x4", Apply(Program, FormatEdits.Of(analysis, 1, 4, default).Edits));
    }

    [Theory]
    [InlineData("g81x1y2 z-3 (Text)", "G81 X1 Y2 Z-3 (Text)")]
    [InlineData("x[#1+2]", "X[#1+2]")]
    [InlineData("  n10g0", "  N10 G0")]
    public void A_line_just_written_is_tidied(string line, string expected) => Assert.Equal(expected, Apply(line, FormatEdits.OfLine(SourceText.From(line), 0)));

    [Theory]
    [InlineData("G0 X1")]
    [InlineData("")]
    [InlineData("g0 x")]
    [InlineData("g0 (open")]
    [InlineData("x1..2")]
    public void A_line_that_is_tidy_or_cannot_be_read_stays(string line) => Assert.Empty(FormatEdits.OfLine(SourceText.From(line), 0));

    [Fact]
    public void Values_are_those_before_the_block_and_behind_a_setting()
    {
        var analysis = Editor.Analyse("#1=5\n#1=[#1+2]\nX#1 Y#2\n#<d>=3\nX#<d> Y#100");
        Assert.Equal(["0: #1 = 5", "1: #1 = 7", "1: #1 = 5", "2: #1 = 7", "2: #2 = empty", "3: #<d> = 3", "4: #<d> = 3"],
            InlineValues.In(analysis, 0, 9).Select(value => $"{value.Line}: {value.Text}"));
    }

    /// <summary>LSP 3.17, InlineValueContext: where the execution has stopped.</summary>
    [Fact]
    public void Values_are_those_where_a_run_stands()
    {
        var analysis = Editor.Analyse("#1=5\n#1=[#1+2]\nX#1 Y#2\n#1=3\nX#1\nM30\nX#1");
        Assert.Equal(["0: #1 = 7", "1: #1 = 7", "1: #1 = 7", "2: #1 = 7", "2: #2 = empty"],
            InlineValues.In(analysis, 0, 9, stoppedAt: 2).Select(value => $"{value.Line}: {value.Text}"));
        Assert.Empty(InlineValues.In(analysis, 3, 9, stoppedAt: 2));
    }
}
