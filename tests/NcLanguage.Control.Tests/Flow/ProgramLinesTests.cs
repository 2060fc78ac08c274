using System.Text;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Control.Tests.Flow;

/// <summary>Which program or subroutine a line belongs to, and what it costs to ask for many lines: marks are gone over to make an index, and not once for each question.</summary>
public sealed class ProgramLinesTests
{
    /// <summary>Passes over all marks that making the index may take.</summary>
    const int FewPasses = 6;

    static FlowText Read(string text) => FlowText.Of(SourceText.From(Encoding.ASCII.GetBytes(text)), null);

    static string Repeat(int times, Func<int, string> block) => string.Concat(Enumerable.Range(0, times).Select(block));

    [Theory]
    [InlineData("G0 X1\nO1\nG0 X2\nM30\n%\nG0 X3", "0-1 1-4 1-4 1-4 4-6 4-6")]
    [InlineData("G0 X1\nM98 P5\nM30\nO5\nG0 X2\nM99\n%\n\nO6\nM99", "0-3 0-3 0-3 3-6 3-6 3-6 6-8 6-8 8-10 8-10")]
    [InlineData("O9 SUB\nO8 SUB\nG0 X1\nO8 ENDSUB\nG0 X2\nO9 ENDSUB\nO9 CALL", "0-6 0-6 0-6 0-6 0-6 0-6 0-7")]
    [InlineData("O9 SUB\nO8 SUB\nG0 X1\nO9 ENDSUB\nG0 X2\nO8 ENDSUB\nG0 X3\nO7 SUB\nO7 ENDSUB", "0-4 0-4 0-4 0-4 1-6 1-6 0-9 7-9 7-9")]
    public void Each_line_belongs_to_the_subroutine_that_begins_first_around_it_or_else_to_its_program(string text, string lines)
    {
        var flow = Read(text);
        Assert.Equal(lines.Split(' '), Enumerable.Range(0, lines.Split(' ').Length).Select(line => $"{flow.LinesOfProgramAt(line).First}-{flow.LinesOfProgramAt(line).End}"));
    }

    [Theory]
    [InlineData("jumps")]
    [InlineData("programs")]
    [InlineData("subroutines")]
    public void To_ask_for_each_line_and_each_jump_takes_no_pass_over_the_marks_for_each(string kind)
    {
        const int Times = 500;
        var flow = Read(kind switch
        {
            "jumps" => Repeat(Times, i => $"N{i + 1} IF [#1 EQ 9] GOTO {i + 2}\n"),
            "programs" => "M30\n" + Repeat(Times, i => $"O{i + 1}\nN1 GOTO 2\nM99\n"),
            _ => Repeat(Times, i => $"O{i + 1} SUB\nN1 GOTO 2\nO{i + 1} ENDSUB\n"),
        });
        Assert.Equal(kind == "jumps" ? 1 : Times, flow.JumpsAstray().Count());
        for (var line = 0; line < flow.Text.LineCount; line++)
            Assert.True(flow.LinesOfProgramAt(line).End > line || line == flow.Text.LineCount - 1);
        Assert.InRange(flow.Passes, 1, FewPasses);
    }
}
