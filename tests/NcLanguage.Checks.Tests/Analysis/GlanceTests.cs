using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Analysis;

/// <summary>What is told at once of a large program that calls, jumps or loops: where an edit changes nothing beyond its own lines it is what the whole look tells.</summary>
public sealed class GlanceTests
{
    const int Blocks = 3_000;

    static readonly string Text = "G21 G90 G17 G40 G49 G80 G54\nT1 M6\nS1000 M3\nG43 H1 G0 X0 Y0 Z50\n"
        + string.Concat(Enumerable.Range(0, Blocks).Select(i => i % 500 == 40 ? "G1 X5 Y\n" : i % 100 == 0 ? "M98 P200\n" : $"G1 X{i % 90} Y{i % 70} F300\n"))
        + "G0 Z50\nM5\nM30\nO200\nG1 Z-1 F100\nG0 Z5\nM99\n";

    static readonly ProgramAnalysis Before = Check.Analyse(Text);

    [Theory]
    [InlineData(1_050, 0, "G1 Q ")]
    [InlineData(1_050, 0, "\n")]
    [InlineData(1_050, 0, "\n\nG1 X1.2.3\nhello\n")]
    [InlineData(1_050, 14, "\nG1 X")]
    [InlineData(1_050, 0, "(NOTE\n")]
    [InlineData(1_050, 0, "M5\nM3\nG1 X2 Y2 X3\n")]
    [InlineData(Blocks, 0, "G1 Q ")]
    public void New_lines_are_told_as_the_whole_look_tells_them(int line, int column, string added)
    {
        var at = Before.Text.OffsetOf(line, Math.Min(column, Before.Text.Line(line).Length));
        var text = Before.Text.WithChange(at, at, Encoding.UTF8.GetBytes(added));
        Same(Before.WithText(text), Before.GlanceAt(text, Before.Text, Before.Findings));
    }

    [Fact]
    public void What_was_taken_away_is_told_no_more()
    {
        var line = Enumerable.Range(1_000, Blocks).First(at => Before.Text.Line(at).EndsWith("Y"u8));
        var text = Before.Text.WithChange(Before.Text.OffsetOf(line, 0), Before.Text.OffsetOf(line + 1, 0), ""u8);
        Same(Before.WithText(text), Before.GlanceAt(text, Before.Text, Before.Findings));
    }

    /// <summary>Keys may come quicker than a program is followed: then what was told at a glance is what the next one begins with.</summary>
    [Fact]
    public void A_glance_goes_on_from_the_one_before()
    {
        var at = Before.Text.OffsetOf(2_000, 0);
        var first = Before.Text.WithChange(at, at, "G1 X1.2.3\n"u8);
        var second = first.WithChange(at, at, "\n"u8);
        var told = Before.GlanceAt(first, Before.Text, Before.Findings);
        Same(Before.WithText(second), Before.GlanceAt(second, first, told));
    }

    [Fact]
    public void A_program_in_the_order_of_its_text_and_a_small_one_need_none()
    {
        var inOrder = Check.Analyse(string.Concat(Enumerable.Repeat("G0 X1\nG0 X2\n", Blocks)));
        Assert.True(inOrder.IsLarge);
        Assert.True(inOrder.GlanceAt(inOrder.Text, inOrder.Text, inOrder.Findings).IsDefault);
        var small = Check.Analyse("G0 X1\nM98 P200\nM30\nO200\nM99\n");
        Assert.True(small.GlanceAt(small.Text, small.Text, small.Findings).IsDefault);
    }

    static void Same(ProgramAnalysis whole, IEnumerable<Finding> glance)
    {
        Assert.NotEmpty(whole.Findings);
        Assert.Equal(whole.Findings.Select(Shown), glance.Select(Shown));
    }

    static (string, int, int, int, string) Shown(Finding finding) => (finding.Name, finding.Line, finding.StartColumn, finding.EndColumn, finding.Message);
}
