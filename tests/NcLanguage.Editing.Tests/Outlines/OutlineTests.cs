using NcLanguage.Editing.Tests.Support;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Tests.Outlines;

/// <summary>The outline: programs, tools, operations.</summary>
public sealed class OutlineTests
{
    static string Tree(string program, string? setup = null) => string.Join('\n', Rows(Outline.Of(Editor.Analyse(program, setup)), ""));

    static IEnumerable<string> Rows(IEnumerable<OutlineItem> items, string indent) => items.SelectMany(item =>
        Rows(item.Children, indent + "  ").Prepend($"{indent}{item.Kind} {item.FirstLine + 1}-{item.LastLine + 1} {item.Name} | {item.Detail}"));

    const string Job =
        """
        G21 G90 G17 G54
        (FRONT ROW)
        T4 M6
        S1500 M3 F120
        G0 X0 Y0 Z10
        G99 G82 X0 Y0 Z-3 R2 P0.5
        X10
        X20
        G80
        (POCKET)
        G1 Z-1
        X30
        G0 Z50

        (TAPS)
        T6 M6
        S500 M3
        G84 X20 Z-9 R5 F625
        G81 X30 Z-1 R5
        M30

        """;

    /// <summary>Times by hand: rapids at 3,000 mm/s² and 250 mm/s, feeds at 2 and 10.4 mm/s, three dwells of 0.5 s, tool changes of 6 s.</summary>
    [Fact]
    public void By_tool_and_operation() => Assert.Equal(
        """
        Tool 3-13 T4 spot drill 10 (FRONT ROW) | 3 holes, at least 22.4 s
          Operation 6-8 G82 drilling with dwell | 3 holes, 9.58 s
          Operation 11-12 POCKET (feed) | 6.5 s
        Tool 16-20 T6 tap 8 (TAPS) | 2 holes, 9.85 s
          Operation 18-18 G84 tapping | 1 hole, 3.07 s
          Operation 19-19 G81 drilling | 1 hole, 0.781 s
        """.ReplaceLineEndings("\n"),
        Tree(Job, Editor.PlateSetup));

    [Fact]
    public void Without_a_setup_comments_name_the_tools() =>
        Assert.Contains("Tool 16-20 T6 TAPS | ", Tree(Job), StringComparison.Ordinal);

    [Fact]
    public void Operations_before_the_first_tool() => Assert.Equal(
        "Operation 2-2 Cuts at feed | at least 0 s\nOperation 3-3 G81 drilling | 1 hole, at least 1.2 s",
        Tree("G90\nG1 X5 F100\nG81 X1 Y1 Z-1 R1"));

    [Fact]
    public void Several_programs_in_a_file()
    {
        var tree = Tree("%\nO1 (MAIN)\nT1 M6\nM30\nO2 (PART)\nG90 G21 G94 G1 X1 F1\nM99\n");
        Assert.Equal(
            "Program 2-4 O1 MAIN | 6 s\n  Tool 3-4 T1 | 6 s\nProgram 5-8 O2 PART | at least 0 s\n  Operation 6-6 Cuts at feed | at least 0 s", tree);
    }

    [Theory]
    [InlineData("")]
    [InlineData("(nothing)")]
    [InlineData("G0 X1")]
    [InlineData("\n\n\n")]
    public void Nothing_to_list(string program) => Assert.Empty(Tree(program));

    [Fact]
    public void Odd_comments_name_nothing()
    {
        Assert.Contains("Operation 2-2 Cuts at feed |", Tree("(  \t )\nG1 X1 F1"), StringComparison.Ordinal);
        Assert.Contains("Operation 2-2 Cuts at feed |", Tree("(nc-allow spindle-off: test)\nG1 X1 F1"), StringComparison.Ordinal);
        Assert.Contains($"Operation 2-2 {new string('A', 40)}… (feed) |", Tree($"({new string('A', 41)})\nG1 X1 F1"), StringComparison.Ordinal);
    }

    /// <summary>Every item lies in its parent, behind the one before, and has a name.</summary>
    internal static void Nests(IEnumerable<OutlineItem> items, int first, int last)
    {
        foreach (var item in items)
        {
            Assert.False(string.IsNullOrWhiteSpace(item.Name));
            Assert.True(item.FirstLine >= first && item.LastLine >= item.FirstLine && item.LastLine <= last, $"{item} not within {first} to {last}");
            Nests(item.Children, item.FirstLine, item.LastLine);
            first = item.LastLine + 1;
        }
    }

    /// <summary>How calls run: common practice. Times by hand: feeds of 10 mm at 2 mm/s, three calls; a hole that nothing calls is none.</summary>
    [Fact]
    public void A_block_with_two_program_numbers_begins_one_program() =>
        Assert.Equal([("O12 PLATE", 0), ("O14", 2)], ProgramNames.In(SourceText.From("O12 O13 (PLATE)\nO5 O6 IF [#1 EQ 1]\nO14\n")));

    [Fact]
    public void Called_programs_tell_how_often_they_run() => Assert.Equal(
        """
        Program 1-6 O1 | at least 0 s
        Program 7-9 O200 ROW | runs 3 times, 15 s
          Operation 8-8 Cuts at feed | 15 s
        Program 10-12 O300 | not called
        """.ReplaceLineEndings("\n"),
        Tree("O1\nG21 G90 G17 G54 F120 G94 G0 X0 Y0 Z0\nM98 P200 L2\nM98 P200\nM30\n\nO200 (ROW)\nG91 G1 X10\nG90 M99\nO300\nG81 X1 Z-1 R1\nM99"));

    /// <summary>The only program of a text has an entry where it is asked for: its number, or the name of the file.</summary>
    [Theory]
    [InlineData("%\nO12 (PLATE)\nT4 M6\nM30", "Program 2-4 O12 PLATE | 6 s\n  Tool 3-4 T4 | 6 s")]
    [InlineData("T4 M6\nM30", "Program 1-2 part.nc | 6 s\n  Tool 1-2 T4 | 6 s")]
    [InlineData("G0 X1", "Program 1-1 part.nc | at least 0 s")]
    [InlineData("(nothing)", "")]
    [InlineData("", "")]
    public void The_only_program_has_a_name(string program, string expected) =>
        Assert.Equal(expected, string.Join('\n', Rows(Outline.Of(Editor.Analyse(program), "part.nc"), "")));

    /// <summary>What is called is done with the tool that calls it, wherever it stands. Times by hand: a tool change of 6 s, feeds of 10 mm at 2 mm/s.</summary>
    [Theory]
    [InlineData("G21 G90 G17 G54 F120 G94 G0 X0 Y0 Z0\nT4 M6\nM98 P2\nM98 P2\nT5 M6\nM98 P2\nM30\nO2\nG91 G1 X10\nG90 M99", "16 s", "11 s")]
    [InlineData("O2 SUB\nG91 G1 X10\nG90\nO2 ENDSUB\nG21 G90 G17 G54 F120 G94 G0 X0 Y0 Z0\nT4 M6\nO2 CALL\nO2 CALL\nT5 M6\nO2 CALL\nM30", "16 s", "11 s")]
    public void Tools_take_in_what_they_call_and_the_lenses_say_the_same(string program, string first, string second)
    {
        var analysis = Editor.Analyse(program);
        var tools = Flat(Outline.Of(analysis)).Where(item => item.Kind == OutlineKind.Tool).ToList();
        Assert.Equal([first, second], tools.Select(tool => tool.Detail));
        var operations = Editing.Lenses.Operations(analysis, default);
        Assert.Equal([first, second], Editing.Lenses.Of(analysis).Where(place => place.Kind == LensKind.Tool).Select(place => Editing.Lenses.TextOf(analysis, operations, place)));
        var own = Editing.Lenses.Of(analysis).First(place => place.Kind == LensKind.Tool).Line;
        Assert.All(operations.Operations.Where(operation => operation.Tool == 4), operation => Assert.Equal(own, operation.ChangedAt));
    }

    static IEnumerable<OutlineItem> Flat(IEnumerable<OutlineItem> items) => items.SelectMany(item => Flat(item.Children).Prepend(item));

    [Fact]
    public void Subroutines_stand_for_themselves() => Assert.Equal(
        """
        Subroutine 1-3 O100 row | runs 2 times, 10 s
          Operation 2-2 Cuts at feed | 10 s
        Subroutine 4-5 O110 | not called
        """.ReplaceLineEndings("\n"),
        Tree("O100 SUB (row)\nG91 G1 X10\nO100 ENDSUB\nO110 SUB\nO110 ENDSUB\nG21 G90 G17 G54 F120 G94 G0 X0 Y0 Z0\nO100 CALL\nO100 CALL\nM30"));

    /// <summary>A program may be large and the answer no longer wanted.</summary>
    [Fact]
    public void Who_no_longer_wants_it_need_not_wait()
    {
        var analysis = Editor.Analyse("T4 M6\nG0 X1\n");
        Assert.Throws<OperationCanceledException>(() => Outline.Of(analysis, cancel: new CancellationToken(canceled: true)));
        Assert.Throws<OperationCanceledException>(() => Foldings.Of(analysis, new CancellationToken(canceled: true)));
        Assert.Throws<OperationCanceledException>(() => Editing.Lenses.Of(analysis, new CancellationToken(canceled: true)));
    }
}
