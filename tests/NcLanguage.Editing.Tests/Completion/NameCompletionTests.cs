using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Editing.Tests.Support;
using NcLanguage.Machine.Files;

namespace NcLanguage.Editing.Tests.Completions;

/// <summary>Variables, functions, statements, numbers of blocks and programs, names of rules.</summary>
public sealed class NameCompletionTests
{
    [Fact]
    public void Variables_in_use_come_first_with_what_they_hold()
    {
        var answer = Typist.At("#1=5\n#<depth>=[#1*2]\nX#|");
        Assert.Equal(["#1", "#<depth>"], answer.Entries.Take(2).Select(entry => entry.Label));
        Assert.Equal("= 5", answer.Entries[0].Detail);
        Assert.Equal("= 10", answer.Entries[1].Detail);
        Assert.Contains("#5041", answer.Entries.Select(entry => entry.Label));
        Assert.Equal("work position, X", answer.Entry("#5041").Detail);
    }

    /// <summary>Where a variable is set: what is in use, then the first that is free, and none that the control alone writes (common practice, from memory).</summary>
    [Theory]
    [InlineData("#|", "#100")]
    [InlineData("#1|", "#100")]
    [InlineData("N10 #|", "#100")]
    [InlineData("#1=5\nN20 #|", "#1,#100")]
    [InlineData("#1=5\nIF [#1 GT 2] THEN #|", "#1,#100")]
    [InlineData("#100=5\n#1|", "#100,#101")]
    [InlineData("#|\n#100=#102", "#101,#100,#102")]
    public void The_variable_to_be_set_is_one_in_use_or_one_that_is_free(string program, string first)
    {
        var labels = Typist.Labels(program).ToList();
        Assert.Equal(first.Split(','), labels.Take(first.Split(',').Length));
        Assert.Empty(labels.Intersect(["#0", "#4001", "#4014", "#5001", "#5021", "#5043"]));
    }

    [Theory]
    [InlineData("#100=|")]
    [InlineData("#100=#|")]
    [InlineData("X#|")]
    [InlineData("G0 X-#|")]
    [InlineData("GOTO #|")]
    public void A_value_is_no_variable_that_is_only_being_set(string program)
    {
        var labels = Typist.Labels(program).ToList();
        Assert.Empty(labels.Intersect(["#100", "#3000"]));
        Assert.Contains("#4001", labels);
        Assert.DoesNotContain("#0", labels.Take(40));
    }

    [Fact]
    public void Functions_come_before_the_variables_of_the_control()
    {
        var labels = Typist.Labels("#7=5\nG1 X[|").ToList();
        Assert.Equal("#7", labels[0]);
        Assert.True(labels.IndexOf("COS") < labels.IndexOf("#4001"));
    }

    [Fact]
    public void Variables_of_the_setup_and_of_the_lines_around_are_offered()
    {
        var answer = Typist.At("X#|\n#7=#8", """{ "variables": { "#500": 3.2 } }""");
        Assert.Equal("= 3.2", answer.Entry("#500").Detail);
        Assert.Equal("not set before this block", answer.Entry("#7").Detail);
        Assert.Contains("#8", answer.Entries.Select(entry => entry.Label));
        Assert.Equal(["#500", "#5001", "#5002", "#5003", "#5021"], Typist.Labels("X#50|", """{ "variables": { "#500": 3.2 } }""").Take(5));
    }

    [Fact]
    public void A_value_that_is_not_known_is_told_so() => Assert.Equal("value not known here", Typist.At("#1=#500\nX#|").Entry("#1").Detail);

    [Theory]
    [InlineData("X[|", "SIN")]
    [InlineData("X[S|", "SQRT")]
    [InlineData("X[1+|", "COS")]
    [InlineData("#1=|", "ABS")]
    [InlineData("#1=[2*|", "TAN")]
    [InlineData("#1=5+A|", "ATAN")]
    [InlineData("IF [SI|", "SIN")]
    public void A_function_fits_where_a_value_does(string program, string expected)
    {
        Assert.Contains(expected, Typist.Labels(program));
        Assert.DoesNotContain("MOD", Typist.Labels(program));
    }

    [Theory]
    [InlineData("X[#1 |", "MOD")]
    [InlineData("IF [#1 |", "GT")]
    [InlineData("IF [#1 E|", "EQ")]
    [InlineData("IF [[#1+2] |", "LE")]
    public void An_operator_fits_behind_a_value(string program, string expected)
    {
        Assert.Contains(expected, Typist.Labels(program));
        Assert.DoesNotContain("SIN", Typist.Labels(program));
    }

    [Fact]
    public void A_function_brings_its_brackets()
    {
        Assert.Equal("SIN[${1:}]", Typist.At("X[|").Entry("SIN").NewText);
        Assert.Equal("ATAN[${1:}]/[${2:}]", Typist.At("X[|").Entry("ATAN").NewText);
        Assert.Equal("SIN[", Typist.At("X[|", snippets: false).Entry("SIN").NewText);
    }

    /// <summary>A condition begins with a bracket: nothing else may stand there.</summary>
    [Theory]
    [InlineData("IF |")]
    [InlineData("WHILE |")]
    [InlineData("O100 WHILE |")]
    [InlineData("IF G|")]
    public void Nothing_is_offered_where_a_condition_begins(string program) => Assert.Empty(Typist.Labels(program));

    [Theory]
    [InlineData("IF [#1 GT 2] |", "GOTO,THEN")]
    [InlineData("IF [#1 GT 2] G|", "GOTO")]
    [InlineData("WHILE [#1 LT 3] |", "DO")]
    [InlineData("WHILE [#1 LT 3] D|", "DO")]
    [InlineData("O100 S|", "SUB")]
    [InlineData("O100 END|", "ENDIF,ENDREPEAT,ENDSUB,ENDWHILE")]
    [InlineData("WHI|", "WHILE")]
    [InlineData("G0 X1\nGO|", "GOTO")]
    public void Statements_fit_what_stands_before_them(string program, string expected) =>
        Assert.Equal(expected.Split(','), Typist.Labels(program).Order());

    [Theory]
    [InlineData("G0 X1 I|")]
    [InlineData("X1 |")]
    public void No_statement_begins_behind_other_words(string program) => Assert.DoesNotContain("IF", Typist.Labels(program));

    /// <summary>A loop within a loop has another number; END ends the innermost.</summary>
    [Theory]
    [InlineData("WHI|", "WHILE", "DO 1")]
    [InlineData("WHILE [#500 LT 3] DO 1\nWHI|\nEND 1", "WHILE", "DO 2")]
    [InlineData("WHILE [#500 LT 3] DO 1\nX1\nEND 1\nWHI|", "WHILE", "DO 1")]
    [InlineData("WHILE [#500 LT 3] DO 1\nWHILE [#501 LT 3] DO 2\nX1\nEN|", "END", "2")]
    public void A_loop_takes_a_number_that_is_free_there(string program, string label, string expected) =>
        Assert.Contains(expected, Typist.Filled(Typist.At(program).Entry(label).NewText), StringComparison.Ordinal);

    [Theory]
    [InlineData("WHILE [#500 LT 3] DO 1\nX1\nEN|", true)]
    [InlineData("WHILE [#500 LT 3] DO 1\nX1\nEN|\nEND 1", false)]
    [InlineData("WHILE [#500 LT 3] DO 1\nX1\nEN|\nWHILE [#501 LT 3] DO 1\nEND 1", true)]
    [InlineData("WHILE [#500 LT 3] DO 1\nWHILE [#501 LT 3] DO 2\nEN|\nEND 1", true)]
    [InlineData("WHILE [#500 LT 3] DO 1\nX1\nEN|\nM99\nO2\nEND 1", true)]
    [InlineData("G0 X1\nEN|", false)]
    public void An_end_is_offered_in_a_loop_that_has_none(string program, bool isOffered) =>
        Assert.Equal(isOffered, Typist.Labels(program).Contains("END"));

    [Fact]
    public void A_jump_offers_the_block_numbers_of_its_program_nearest_first()
    {
        const string program = "O1\nN10 G0\nN20 X1\nGOTO |\nN30 M30\nO2\nN90 M99";
        Assert.Equal(["20", "30", "10"], Typist.Labels(program).OrderBy(label => label == "10").ThenBy(label => label == "30"));
        Assert.Equal("10", Typist.Labels(program)[^1]);
        Assert.Equal("line 2: N10 G0", Typist.At(program).Entry("10").Detail);
        Assert.Equal(["30"], Typist.Labels(program.Replace("|", "3|", StringComparison.Ordinal)));
        Assert.Equal(["20"], Typist.Labels("N10 G0\nN20 X1\nIF [1 GT 0] GOTO2|"));
    }

    /// <summary>The emoji is one character of two UTF-16 code units, and stands where the text is cut.</summary>
    [Fact]
    public void A_block_is_not_cut_within_a_character()
    {
        var shown = "N10 (" + new string('x', 34);
        Assert.Equal($"line 1: {shown}😀…", Typist.At($"{shown}😀 and more)\nGOTO |").Entry("10").Detail);
    }

    /// <summary>Thousands of numbers are no list: the nearest are shown, and more come when digits are typed.</summary>
    [Fact]
    public void Many_block_numbers_are_cut_short_and_said_to_be()
    {
        var program = string.Concat(Enumerable.Range(1, 3000).Select(i => $"N{i} X1\n"));
        var answer = Typist.At(program + "GOTO |");
        Assert.True(answer.IsIncomplete);
        Assert.Equal(100, answer.Entries.Length);
        Assert.Equal("3000", answer.Entries[0].Label);
        answer = Typist.At(program + "GOTO 123|");
        Assert.False(answer.IsIncomplete);
        Assert.Equal(["123", "1230", "1231", "1232", "1233", "1234", "1235", "1236", "1237", "1238", "1239"], answer.Entries.Select(entry => entry.Label).Order());
        Assert.False(Typist.At("N1 X1\nGOTO |").IsIncomplete);
    }

    [Fact]
    public void A_call_offers_the_programs_of_the_file()
    {
        const string program = "O1\nM98 P|\nM30\nO100 (pocket)\nM99\nO200\nM99";
        Assert.Equal(["P100", "P200"], Typist.Labels(program));
        Assert.Equal("in this file, line 4: pocket", Typist.At(program).Entry("P100").Detail);
        Assert.Equal(["P200"], Typist.Labels(program.Replace("P|", "P2|", StringComparison.Ordinal)));
        Assert.Equal(["P100", "P200"], Typist.Labels(program.Replace("M98", "G65", StringComparison.Ordinal)));
    }

    /// <summary>A real folder: files named by a number, in the ways that a call finds them.</summary>
    [Fact]
    public void A_call_offers_the_programs_beside_the_file()
    {
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            foreach (var name in new[] { "O1200.nc", "0012.nc", "o7.tap", "main.nc", "O5.txt", "part1.nc", "O99999999999.nc" })
                File.WriteAllText(Path.Combine(folder.FullName, name), "M99\n");
            var beside = new SiblingPrograms(Path.Combine(folder.FullName, "main.nc"), DiskFiles.Instance);
            Assert.Equal([(7, "o7.tap"), (12, "0012.nc"), (1200, "O1200.nc")], beside.List());
            Assert.All(beside.List(), program => Assert.Equal(program.Name, beside.Find(program.Number)!.Name));
            var answer = Typist.At("M98 P|", options: new AnalysisOptions(Programs: beside));
            Assert.Equal(["P7", "P12", "P1200"], answer.Entries.Select(entry => entry.Label));
            Assert.Equal("O1200.nc, beside this file", answer.Entry("P1200").Detail);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void A_folder_that_is_not_there_has_no_programs() =>
        Assert.Empty(new SiblingPrograms(Path.Combine(Path.GetTempPath(), "no-such-folder-here", "main.nc"), DiskFiles.Instance).List());

    [Fact]
    public void O_offers_the_calls_of_subroutines() => Assert.Equal(["O100 CALL"], Typist.Labels("O100 SUB\nX1\nO100 ENDSUB\nO|"));

    [Fact]
    public void Rules_found_here_come_first()
    {
        var answer = Typist.At("G21 G90 G54 G17\nT1 M6\nS1000 M3\n(nc-allow |)\nG1 X5");
        var labels = answer.Entries.Select(entry => entry.Label).ToList();
        Assert.True(labels.IndexOf("feed-missing") < labels.IndexOf("address-repeated"));
        Assert.Equal("feed-missing: ${1:reason}", answer.Entry("feed-missing").NewText);
        Assert.Equal("A cut has no feed", answer.Entry("feed-missing").Detail);
        Assert.DoesNotContain("setup-malformed", answer.Entries.Select(entry => entry.Label));
        Assert.DoesNotContain("allow-without-reason", answer.Entries.Select(entry => entry.Label));
    }

    [Fact]
    public void A_rule_brings_what_the_comment_lacks()
    {
        Assert.Equal("feed-missing: ${1:reason})", Typist.At("(nc-allow feed-m|").Entry("feed-missing").NewText);
        Assert.Equal("feed-missing: ", Typist.At("(nc-allow feed-m|", snippets: false).Entry("feed-missing").NewText);
        Assert.Equal("(nc-allow feed-missing: tried)", Typist.Accept("(nc-allow fee|d-other: tried)", "feed-missing"));
    }
}
