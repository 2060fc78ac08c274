using NcLanguage.Editing.Refactorings;
using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Refactorings;

/// <summary>Block numbers, decimal points and words that change nothing. The texts expected are common practice.</summary>
public sealed class NumberTests
{
    [Fact]
    public void Blocks_are_numbered_in_tens_and_jumps_follow() => Assert.Equal(
        "%\nO1 (PART)\nN10 #1 = 0\nN20 G0 X#1\n/N30 M8\n(note)\n\nN40 IF [#1 GT 3] GOTO 70\nN50 #1 = #1 + 1\nN60 GOTO 20\nN70 M30\n%\n",
        Rewritten.At(0, "renumber", "%\nO1 (PART)\n#1 = 0\nN7 G0 X#1\n/M8\n(note)\n\nIF [#1 GT 3] GOTO 9\n#1 = #1 + 1\nGOTO 7\nN9 M30\n%\n"));

    [Fact]
    public void A_jump_that_is_worked_out_keeps_the_numbers() =>
        Assert.Equal("Line 2 jumps to a number that is worked out, which would not follow.", Rewritten.Refused(0, "renumber", "#1 = 5\nGOTO #1\nN5 M30\n"));

    [Fact]
    public void Numbers_that_no_jump_needs_go() => Assert.Equal(
        "%\nO1\n#1 = 0\nN20 G0 X#1 (N30 stays here)\n/M8\n#1 = #1 + 1\nIF [#1 LT 3] GOTO 20\nM30\n%\n",
        Rewritten.At(0, "removeNumbers", "%\nO1\nN10 #1 = 0\nN20 G0 X#1 (N30 stays here)\n/N25 M8\nN30 #1 = #1 + 1\nN40 IF [#1 LT 3] GOTO 20\nN50 M30\n%\n"));

    [Fact]
    public void Comments_alone_are_not_rewritten()
    {
        foreach (var program in new[] { "", "\n\n", "%\n( PLATE )\n; begun\n%\n" })
            Assert.Empty(RefactoringList.For(Editor.Analyse(program), Lines.At(0)));
    }

    [Fact]
    public void Without_numbers_there_is_nothing_to_remove() => Assert.False(Rewritten.IsOffered(Lines.At(0), "removeNumbers", "G0 X1\nM30\n"));

    [Fact]
    public void Lengths_get_points_and_times_and_counts_do_not() => Assert.Equal(
        "G21 G90 G0 X10. Y0. Z2.5\nG4 P500\nG4 X2\nG99 G83 X20. Y0. Z-8. R2. Q3. F100\nG80\nG2 X30. Y0. I5. J0.\nM30\n",
        Rewritten.At(0, "addPoints", "G21 G90 G0 X10 Y0 Z2.5\nG4 P500\nG4 X2\nG99 G83 X20 Y0 Z-8 R2 Q3 F100\nG80\nG2 X30 Y0 I5 J0\nM30\n"
));

    [Fact]
    public void Least_increments_become_lengths() => Assert.Equal(
        "G21 G90 G0 X15. Y0.25 Z2.\nM30\n",
        Rewritten.At(0, "addPoints", "G21 G90 G0 X15000 Y250 Z2.\nM30\n", machine: Editor.Reading("integers=increments")));

    [Fact]
    public void Points_are_added_in_the_lines_marked() =>
        Assert.Equal("G90 G0 X1\nX2.\nX3\n", Rewritten.In(new Lines(1, 1, false), "addPoints", "G90 G0 X1\nX2\nX3\n"));

    [Fact]
    public void What_was_said_is_dropped() => Assert.Equal(
        "G21 G90 G54 G0 X10 Y10 S1000 M3\nZ5\nG1 Z-1 F100\nX20\nY20\nG0 Z5\nM30\n",
        Rewritten.At(0, "dropIdleWords", "G21 G90 G54 G0 X10 Y10 S1000 M3\nG90 G0 Z5\nG1 Z-1 F100\nG1 X20 Y10 F100\nG1 X20 Y20 S1000 M3\nG0 Z5\nM30\n"));

    [Fact]
    public void Words_of_a_cycle_carry_over() => Assert.Equal(
        "G21 G90 G0 X0 Y0 Z20\nG99 G82 X10 Y10 Z-5 R2 P0.5 F100\nX20 Y10\nX30 Y10 Z-6\nG80\nG0 Z20\nM30\n",
        Rewritten.At(0, "dropIdleWords", "G21 G90 G0 X0 Y0 Z20\nG99 G82 X10 Y10 Z-5 R2 P0.5 F100\nG99 G82 X20 Y10 Z-5 R2 P0.5 F100\nG82 X30 Y10 Z-6 R2\nG80\nG0 Z20\nM30\n"));

    /// <summary>A program is begun again at a tool: its first blocks say all they need.</summary>
    [Fact]
    public void What_a_tool_begins_with_stays() => Assert.Equal(
        "G90 G54 G0 X1 F100\nT2 M6\nG90 G54 G0 X2\nG1 Y5 F100\nM30\n",
        Rewritten.At(0, "dropIdleWords", "G90 G54 G0 X1 F100\nT2 M6\nG90 G54 G0 X2\nG90 G1 Y5 F100\nM30\n"));

    [Fact]
    public void A_block_keeps_a_word() =>
        Assert.Equal("There is nothing to change here.", Rewritten.Refused(0, "dropIdleWords", "G90 G0 X1 Y1\nN5 G90\nX1\nX2\nM30\n"));

    /// <summary>In a loop a word that changes nothing the first time may do so the next.</summary>
    [Fact]
    public void A_word_stays_that_is_needed_once_in_a_loop()
    {
        const string Program = "G90 G0 X0 Y0\n#1 = 0\nWHILE [#1 LT 2] DO 1\nG90 G0 X5\nG91 G1 X5 F100\n#1 = #1 + 1\nEND 1\nM30\n";
        Assert.Equal("There is nothing to change here.", Rewritten.Refused(0, "dropIdleWords", Program));
    }
}
