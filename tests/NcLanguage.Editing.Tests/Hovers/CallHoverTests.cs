using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Editing.Tests.Support;
using NcLanguage.Machine.Files;

namespace NcLanguage.Editing.Tests.Hovers;

/// <summary>Hovers on calls, returns, jumps and loops: where they lead at this place, and how often. How they run: common practice; lines and counts by hand.</summary>
public sealed class CallHoverTests
{
    const string Calls =
        """
        G21 G90 G17 G54 G94 F100
        G0 X0 Y0 Z5
        M98 P200 L3
        G0 X100
        M98 P200
        M30
        O200
        G91 G1 X10
        G90
        M99
        """;

    static string In(string program, string what, string marked)
    {
        Assert.Contains(what, program, StringComparison.Ordinal);
        return Editor.Markdown(program.Replace(what, marked, StringComparison.Ordinal));
    }

    [Fact]
    public void A_call_within_the_file() =>
        Assert.Contains("Runs program 200, from line 7 on, 3 times one after the other.", In(Calls, "M98 P200 L3", "$0M98 P200 L3"), StringComparison.Ordinal);

    /// <summary>The passes come to 4, each ends with M99; the first return to the caller goes behind the first call.</summary>
    [Fact]
    public void A_return_tells_where_it_first_goes_back_to() =>
        Assert.Contains("Of its 4 runs the first that goes back leads to line 4.", In(Calls, "M99", "$0M99"), StringComparison.Ordinal);

    [Fact]
    public void A_call_of_a_file_tells_the_file_and_what_is_done_there()
    {
        var text = Editor.Markdown("G21 G90 G17 G54 G94 F100\nT4 M6\nS500 M3\nG0 X0 Y0 Z5\n$0M98 P1200\nG0 X50\nM98 P1200\nM30", Editor.PlateSetup,
            options: Folder.Of(1200, "O1200\nG99 G81 Z-3 R2\nG80\nM99\n"));
        Assert.Contains("Runs program 1200 in O1200.nc, once. In all 1 hole and ", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_call_of_a_program_that_is_not_there() =>
        Assert.Contains("There is no program 300 in this file, nor a file of that number beside it.", Editor.Markdown("$0M98 P300\nM30"), StringComparison.Ordinal);

    [Fact]
    public void A_call_of_a_file_that_cannot_be_read_says_why()
    {
        var folder = Directory.CreateTempSubdirectory("nclanguage-called");
        try
        {
            Directory.CreateDirectory(Path.Combine(folder.FullName, "O300.nc"));
            var beside = new SiblingPrograms(Path.Combine(folder.FullName, "main.nc"), DiskFiles.Instance);
            Assert.Contains("Program 300 is not in this file, and beside it O300.nc is a folder, not a file: what it does is not known.",
                Editor.Markdown("$0M98 P300\nM30", options: new AnalysisOptions(Programs: beside)), StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void A_call_by_a_number_not_known() => Assert.Contains("Which program it runs is not known here.", Editor.Markdown(
        "G31 Z-5 F50\n$0M98 P#5063\nM30"), StringComparison.Ordinal);

    const string Loops =
        """
        G21 G90 G17 G54 G94 F100
        G0 X0 Y0 Z5
        #1=0
        WHILE [#1 LT 4] DO 1
        IF [#1 EQ 2] GOTO 20
        G1 X#1
        N20 #1=#1+1
        END 1
        N30 M30
        """;

    [Fact]
    public void Loops_and_jumps_tell_their_partners_and_how_often()
    {
        const string loop = "Ends at END in line 8. The condition holds in 4 of 5 runs.";
        Assert.EndsWith(loop, In(Loops, "WHILE", "$0WHILE"), StringComparison.Ordinal);
        Assert.EndsWith(loop, In(Loops, "DO 1", "$0DO 1"), StringComparison.Ordinal);
        Assert.StartsWith("**WHILE** loop\n", In(Loops, "DO 1", "$0DO 1"), StringComparison.Ordinal);
        Assert.StartsWith("**DO** loop without condition\n", Editor.Markdown("#1=0\n$0DO 1\n#1=#1+1\nIF [#1 GT 3] GOTO 20\nEND 1\nN20 M30"), StringComparison.Ordinal);
        Assert.EndsWith("Begins at DO in line 4. Runs 4 times.", In(Loops, "END 1", "$0END 1"), StringComparison.Ordinal);
        Assert.EndsWith("Leads to line 7, N20. The condition holds in 1 of 4 runs.", In(Loops, "IF [", "$0IF ["), StringComparison.Ordinal);
        Assert.EndsWith("Leads to line 7, N20. The condition holds in 1 of 4 runs.", In(Loops, "GOTO", "$0GOTO"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_jump_back_and_one_that_leads_nowhere()
    {
        Assert.EndsWith("Leads back to line 1, N10.", Editor.Markdown("N10 G4 P1\n$0GOTO 10\nM30"), StringComparison.Ordinal);
        Assert.EndsWith("No block of this program has the number N99.", Editor.Markdown("N10 G4 P1\n$0GOTO 99\nM30"), StringComparison.Ordinal);
    }

    /// <summary>The same number in two programs: a jump stays in its own.</summary>
    [Fact]
    public void A_jump_stays_in_its_program() => Assert.EndsWith("Leads to line 5, N10.", Editor.Markdown(
        "N10 M98 P200\nM30\nO200\n$0GOTO 10\nN10 M99"), StringComparison.Ordinal);

    const string Subroutines =
        """
        O100 SUB
        O101 IF [#1 GT 5]
        G1 X#1
        O101 ELSE
        G1 Y#1
        O101 ENDIF
        O100 ENDSUB
        G21 G90 G17 G54 G94 F100
        G0 X0 Y0 Z5
        O100 CALL [3]
        O102 REPEAT [2]
        O100 CALL [8]
        O102 ENDREPEAT
        M30
        """;

    [Theory]
    [InlineData("SUB\nO101", "$0SUB\nO101", "Ends at ENDSUB in line 7.")]
    [InlineData("ENDSUB", "$0ENDSUB", "Of its 3 runs the first that goes back leads to line 11. Begins at SUB in line 1. Runs 3 times.")]
    [InlineData("CALL [3]", "$0CALL [3]", "Runs subroutine 100, from line 2 on, once.")]
    [InlineData("CALL [8]", "$0CALL [8]", "Runs subroutine 100, from line 2 on, once. This block itself runs 2 times.")]
    [InlineData("IF [#1", "$0IF [#1", "Otherwise on at ELSE in line 4. The condition holds in 2 of 3 runs.")]
    [InlineData("ELSE", "$0ELSE", "Ends at ENDIF in line 6.")]
    [InlineData("ENDIF", "$0ENDIF", "Begins at IF in line 2.")]
    [InlineData("REPEAT [2]", "$0REPEAT [2]", "Ends at ENDREPEAT in line 13. 2 times, the first time it is met.")]
    [InlineData("ENDREPEAT", "$0ENDREPEAT", "Begins at REPEAT in line 11. Runs 2 times.")]
    public void Subroutines_and_conditions(string what, string marked, string end)
    {
        var text = In(Subroutines.ReplaceLineEndings("\n"), what, marked);
        Assert.EndsWith("\n\n" + end, text, StringComparison.Ordinal);
    }

    /// <summary>Which variable a letter becomes is common practice: H is #11, X #24.</summary>
    [Theory]
    [InlineData("$0H6", "#11 in the program called\n\n6, a number without unit.")]
    [InlineData("$0X3", "#24 in the program called\n\n3, a number without unit.")]
    [InlineData("$0Z#500", "#26 in the program called\n\nIts value is not known here.")]
    public void An_argument_of_a_call_tells_its_variable(string marked, string told)
    {
        var program = "G21 G90 G17 G54\nG0 X0 Y0 Z5\nG65 P700 H6 X3 Z#500\nM30\nO700\n#30=#11+#24\nM99\n";
        Assert.Contains(told, Editor.Markdown(program.Replace(marked[2..], marked, StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.Contains("Becomes 9", Editor.Markdown(program.Replace("#30=", "$0#30=", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("#1=3\n$0IF [#1 GT 2] THEN #2=4\nM30", "Written `IF […] THEN #n=…`.")]
    [InlineData("#1=3\n$0IF [#1 GT 2] GOTO 10\nN10 M30", "The condition holds.")]
    [InlineData("#1=1\n$0IF [#1 GT 2] GOTO 10\nN10 M30", "The condition does not hold.")]
    public void A_condition_met_once(string program, string told) => Assert.Contains(told, Editor.Markdown(program), StringComparison.Ordinal);

    [Fact]
    public void The_empty_variable_is_told_as_such()
    {
        var text = Editor.Markdown("#1=3\nIF [#1 EQ $0#0] GOTO 10\nN10 M30");
        Assert.Contains("Always empty", text, StringComparison.Ordinal);
        Assert.DoesNotContain("not known", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_statement_the_run_does_not_come_to_says_so() => Assert.EndsWith(
        "**Not reached**: the run does not come to this block. Leads to line 4, N10.", Editor.Markdown("GOTO 10\nG4 P1\n$0GOTO 10\nN10 M30"), StringComparison.Ordinal);

    /// <summary>Common practice: A is #1 in the program called, X #24.</summary>
    [Theory]
    [InlineData("$0A1.5", "A1.5 argument of the call: #1 in the program called")]
    [InlineData("A1.5 $0X2", "X2 argument of the call: #24 in the program called")]
    public void A_word_of_a_call_with_arguments(string words, string expected) =>
        Assert.Contains(expected, Editor.Markdown($"G21 G90 G17 G54\nG65 P9 {words}\nM30\nO9\nM99").Replace("*", "", StringComparison.Ordinal), StringComparison.Ordinal);

    [Theory]
    [InlineData("$0G52 X5", "Holds until another G52")]
    [InlineData("$0M29 S500", "Holds until G80 or a tool change.")]
    [InlineData("$0G4 P1", "Acts in this block only.")]
    public void How_long_a_code_holds(string block, string words) =>
        Assert.Contains(words, Editor.Markdown($"G21 G90 G17 G54\n{block}\nM30"), StringComparison.Ordinal);
}
