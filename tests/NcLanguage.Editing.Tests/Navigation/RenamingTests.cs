namespace NcLanguage.Editing.Tests.Navigation;

/// <summary>Numbers and names changed wherever they mean the same, and nowhere else.</summary>
public sealed class RenamingTests
{
    static string Rename(string marked, string newName)
    {
        var at = new Marked(marked);
        var answer = new Renaming(at.Analysis, null, null).Rename(at.Line, at.Column, newName);
        Assert.Null(answer.Refusal);
        return at.Apply(answer.Edits);
    }

    static string? Refusal(string marked, string newName, string? setup = null)
    {
        var at = new Marked(marked, setup);
        var answer = new Renaming(at.Analysis, null, null).Rename(at.Line, at.Column, newName);
        Assert.Empty(answer.Edits);
        return answer.Refusal;
    }

    [Theory]
    [InlineData("N1$00 G0\nGOTO 10\nIF [#1 EQ 1] GOTO 10\nM99 P10", "N25", "N25 G0\nGOTO 25\nIF [#1 EQ 1] GOTO 25\nM99 P25")]
    [InlineData("O1\nN10 M98 P2$0\nM30\nO2\nG65 P2 A1\nM99", "300", "O1\nN10 M98 P300\nM30\nO300\nG65 P300 A1\nM99")]
    [InlineData("O7$0 SUB\nG91 X7\nO7 ENDSUB\nO7 CALL\nM2", "O8", "O8 SUB\nG91 X7\nO8 ENDSUB\nO8 CALL\nM2")]
    [InlineData("#100=1\nG1 X[#10$00+#101] F#100\n(#100)", "#110", "#110=1\nG1 X[#110+#101] F#110\n(#100)")]
    [InlineData("#<wide>=1\nX#<Wide$0>\nY[2*#< wide >]", "#<width>", "#<width>=1\nX#<width>\nY[2*#<width>]")]
    [InlineData("WHILE [#1 LT 9] DO1$0\nWHILE [#2 LT 9] DO2\nEND2\nEND1\nWHILE [#1 LT 9] DO1\nEND1", "3",
        "WHILE [#1 LT 9] DO3\nWHILE [#2 LT 9] DO2\nEND2\nEND3\nWHILE [#1 LT 9] DO1\nEND1")]
    public void All_uses_change_and_nothing_else(string marked, string newName, string expected) => Assert.Equal(expected, Rename(marked, newName));

    [Fact]
    public void A_block_number_of_another_program_stays() =>
        Assert.Equal("O1\nN20 G0\nGOTO 20\nM30\nO2\nN10 G0\nGOTO 10\nM99", Rename("O1\nN$010 G0\nGOTO 10\nM30\nO2\nN10 G0\nGOTO 10\nM99", "20"));

    [Fact]
    public void A_local_variable_of_another_program_stays() =>
        Assert.Equal("O1\n#2=1\nX#2\nM30\nO2\n#1=2\nX#1\nM99", Rename("O1\n#$01=1\nX#1\nM30\nO2\n#1=2\nX#1\nM99", "2"));

    [Theory]
    [InlineData("N1$00 G0\nN20 G0\nGOTO 10", "20", "N20 is in use already, in line 2.")]
    [InlineData("N1$00 G0\nGOTO #1", "30", "Line 2 works out the number that it jumps to: whether N10 is meant there is not known.")]
    [InlineData("#10$00=1\nX#[100+#1]", "101", "Line 2 works out the number of a variable: whether #100 is meant there is not known.")]
    [InlineData("#10$00=1\nX#100", "5", "#1 to #33 belong to one program alone, the others are shared: #5 would not mean the same.")]
    [InlineData("#10$00=1\nX#100", "5221", "#5221 belongs to the control.")]
    [InlineData("#10$00=1\nX#100", "deep", "A variable's number is a whole number above 0.")]
    [InlineData("WHILE [#1 LT 9] DO1$0\nWHILE [#2 LT 9] DO2\nEND2\nEND1", "2", "A loop with the number 2 begins in line 2, and one lies in the other.")]
    [InlineData("WHILE [#1 LT 9] DO1\nWHILE [#2 LT 9] DO2$0\nEND2\nEND1", "1", "A loop with the number 1 begins in line 1, and one lies in the other.")]
    [InlineData("O1\nG65 P8 A3\nM30\nO8\nG0 Z#$01\nM99", "20", "A call by G65 may hand this variable its value by a letter: it cannot be given another number alone.")]
    [InlineData("O1\n#$01=1\nX#1\nM98 P2\nM30\nO2\n#1=2\nX#1\nM99", "2", "A program called by M98 has the same #1 to #33 as the one that calls it: this variable cannot be given another number alone.")]
    [InlineData("O1\nM98 P2\nN9$00 G0\nM30\nO2\nM99 P90", "91", "M99 in line 6 leads back into the program that called it, by this number: it cannot be changed at one end alone.")]
    [InlineData("O1\nM98 P2\nN90 G0\nM30\nO2\nM99 P9$00", "91", "The P of M99 leads back into the program that called it, by this number: it cannot be changed at one end alone.")]
    [InlineData("N1$00 G0", "123456", "A block number is a whole number from 0 to 99999.")]
    [InlineData("G1 X1$00 F1", "5", "Nothing here has a number or name that could be changed everywhere at once.")]
    [InlineData("X#52$021", "100", "Nothing here has a number or name that could be changed everywhere at once.")]
    public void What_would_change_the_meaning_is_refused(string marked, string newName, string expected) => Assert.Equal(expected, Refusal(marked, newName));

    [Theory]
    [InlineData("Z-#10$00", "101", "The setup gives #100 its value: change it there too, then here by hand.")]
    [InlineData("Z-#<dep$0th>", "#<low>", "The setup gives #<depth> its value: change it there too, then here by hand.")]
    [InlineData("Z-#10$02", "103", "The setup gives #103 a value, which the program would begin with.")]
    public void What_the_setup_gives_is_known_however_it_writes_it(string marked, string newName, string expected) =>
        Assert.Equal(expected, Refusal(marked, newName, "{ \"variables\": { \"#0100\": 3, \"#<Depth>\": 2, \"#103\": 4 } }"));

    [Fact]
    public void Programs_beside_that_call_it_change_too_and_its_file_gets_the_name()
    {
        var at = new Marked("O001$02\nG91 X1\nM99");
        var folder = new Beside(("/job/main.nc", "O1\nM98 P12\nM98 P0012 L2\nM30"), ("/job/own.nc", "O2\nM98 P12\nM30\nO12\nM99"));
        var answer = new Renaming(at.Analysis, "/job/O0012.nc", folder).Rename(at.Line, at.Column, "340");
        Assert.Null(answer.Refusal);
        Assert.Equal([(null, 0), ("/job/main.nc", 1), ("/job/main.nc", 2)], answer.Edits.Select(edit => (edit.Path, edit.Edit.Line)));
        Assert.Equal([("/job/O0012.nc", "/job/O0340.nc")], answer.Files);
    }

    /// <summary>Calls look for a number as it is and with four digits (see SiblingProgramTests), and for no other writing of it.</summary>
    [Theory]
    [InlineData("/job/12.nc", "5", "/job/5.nc")]
    [InlineData("/job/o12.nc", "5", "/job/o5.nc")]
    [InlineData("/job/0012.nc", "5", "/job/0005.nc")]
    [InlineData("/job/O0012.nc", "12345", "/job/O12345.nc")]
    [InlineData("/job/00012.nc", "5", null)]
    public void A_file_gets_a_name_that_calls_find(string path, string newNumber, string? expected)
    {
        var at = new Marked("O1$02\nG91 X1\nM99");
        var answer = new Renaming(at.Analysis, path, new Beside()).Rename(at.Line, at.Column, newNumber);
        Assert.Equal(expected is null ? [] : [(path, expected)], answer.Files);
    }

    [Fact]
    public void A_file_keeps_its_name_where_the_number_is_a_programs_of_this_text()
    {
        var at = new Marked("O1\nM98 P20$000\nM30\nO2000\nG91 X1\nM99");
        var answer = new Renaming(at.Analysis, "/job/a.nc", new Beside(("/job/O2000.nc", "O2000\nM99"))).Rename(at.Line, at.Column, "2100");
        Assert.Equal([(null, 1), (null, 3)], answer.Edits.Select(edit => (edit.Path, edit.Edit.Line)));
        Assert.Empty(answer.Files);
    }

    [Fact]
    public void A_variable_of_programs_that_only_call_the_same_one_stays()
    {
        var at = new Marked("O1\n#10$00=3\nM98 P12\nM30");
        var folder = new Beside(("/job/b.nc", "O2\n#100=4\nM98 P12\nM30"), ("/job/O12.nc", "O12\nG91 X1\nM99"));
        Assert.All(new Renaming(at.Analysis, "/job/main.nc", folder).Rename(at.Line, at.Column, "105").Edits, edit => Assert.Null(edit.Path));
    }

    [Fact]
    public void A_number_that_a_called_program_uses_is_taken()
    {
        var at = new Marked("O600\n#10$00=5\nM98 P601\nG65 P602 A1\nG0 X#100\nM30");
        var folder = new Beside(("/job/O601.nc", "O601\nG91 X1\nM99"), ("/job/O602.nc", "O602\n#130=#1\nM99"));
        Assert.Equal("#130 is in use already, in line 2 of O602.nc.", new Renaming(at.Analysis, "/job/O600.nc", folder).Rename(at.Line, at.Column, "130").Refusal);
    }

    [Fact]
    public void A_block_that_a_called_program_leads_back_to_keeps_its_number()
    {
        var at = new Marked("O1\nM98 P12\nN9$00 G0\nM30");
        var folder = new Beside(("/job/O12.nc", "O12\nM99 P90"));
        Assert.StartsWith("M99 in line 2 of O12.nc", new Renaming(at.Analysis, "/job/O1.nc", folder).Rename(at.Line, at.Column, "91").Refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void A_shared_variable_changes_in_the_programs_that_calls_lead_to()
    {
        var at = new Marked("O1\n#50$00=3\nM98 P12\nM30");
        var folder = new Beside(("/job/O12.nc", "O12\nG91 X#500\nM98 P13\nM99"), ("/job/O13.nc", "O13\nZ-#500\nM99"), ("/job/else.nc", "O5\nX#500\nM30"));
        var answer = new Renaming(at.Analysis, "/job/main.nc", folder).Rename(at.Line, at.Column, "501");
        Assert.Equal([null, "/job/O12.nc", "/job/O13.nc"], answer.Edits.Select(edit => edit.Path));
        Assert.Equal("#501 is in use already, in line 2 of O13.nc.",
            new Renaming(at.Analysis, "/job/main.nc", new Beside(("/job/O12.nc", "O12\nX#500\nM98 P13\nM99"), ("/job/O13.nc", "O13\n#501=#500\nM99")))
                .Rename(at.Line, at.Column, "501").Refusal);
    }
}
