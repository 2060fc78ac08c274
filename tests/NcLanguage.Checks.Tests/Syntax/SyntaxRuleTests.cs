using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Syntax;

/// <summary>Rules on the text: edges that their two examples do not reach.</summary>
public sealed class SyntaxRuleTests
{
    static string Program(string block) => $"G21 G90 G17 G54\nG0 X1 Y1 Z1\n{block}\nM30";

    static List<string> NamesOf(string block, string readings = "") => Check.NamesOn(3, Program(block), readings);

    // ---- characters and letters ----

    [Theory]
    [InlineData("G0 X5 % Y6")]
    [InlineData("!")]
    [InlineData("G0 X5 ) Y6")]
    [InlineData("G0 X5 ? ! & Y6")]
    public void A_character_without_meaning_is_found_once_a_block(string block) =>
        Assert.Single(NamesOf(block), "unknown-character");

    [Fact]
    public void Text_outside_brackets_is_one_finding_over_all_its_letters()
    {
        var finding = Assert.Single(Check.Of("word-without-number", Program("HALT")));
        Assert.Equal((0, 4), (finding.StartColumn, finding.EndColumn));
        Assert.Contains("( )", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>What a line of text for people holds of numbers and signs is not told besides, and does nothing: no tool is called, nothing moves. The words before it are carried out. Common practice.</summary>
    [Theory]
    [InlineData("DRILL 4 HOLES DIA 5", 0, 19)]
    [InlineData("ROUGH POCKET 2 MM DEEP", 0, 22)]
    [InlineData("END MILL 10 MM", 0, 14)]
    [InlineData("10 MM END MILL", 0, 14)]
    [InlineData("IF TOOL WORN STOP", 0, 17)]
    [InlineData("CHECK OFFSET 4!", 0, 15)]
    [InlineData("N7 SLOT 8H7 X 20 (NOTE)", 3, 16)]
    [InlineData("M9 COOLANT OFF FOR T4", 3, 21)]
    public void Text_with_numbers_in_it_is_one_finding(string block, int start, int end)
    {
        Assert.Equal(["word-without-number"], NamesOf(block));
        var analysis = ProgramAnalysis.Create(SourceText.From(Program(block)), Setup.None, MachineProfile.IsoMill);
        var finding = Assert.Single(analysis.Findings, found => found.Name == "word-without-number");
        Assert.Equal((start, end), (finding.StartColumn, finding.EndColumn));
        Assert.Equal($"\"{block[start..end]}\" is text and no words: the control stops here with an alarm; text for people belongs in ( ).", finding.Message);
        var after = analysis.Main.StepAt(2);
        Assert.Equal((after.Before.Position, after.Before.Tool, after.Before.SelectedTool), (after.After.Position, after.After.Tool, after.After.SelectedTool));
        Assert.Equal($"{block[..start]}({block[start..end]}){block[end..]}", TextEdits.Apply(analysis.Text, Assert.Single(analysis.FixesOf(finding)).Edits).ToString().Split('\n')[2]);
    }

    [Theory]
    [InlineData("G0 X Y Z")] // letters whose numbers are to come
    [InlineData("GOX10")]
    [InlineData("#1=[ABC]")]
    public void Letters_alone_are_no_text(string block) => Assert.Equal(-1, SourceText.From(block).BlockAt(0).TextIndex);

    /// <summary>NISTIR 6556 §3.3.2; that a setting needs no brackets round its value is common practice.</summary>
    [Theory]
    [InlineData("#2=25+4*[1-COS[3*30]", 8)]
    [InlineData("#2 = 25 + 4*[1 - COS[3*30]", 12)]
    [InlineData("IF [1 LE 120] THEN #2=25+4*[1-COS[3*30]", 27)]
    [InlineData("IF [1 LE 120 THEN #2=25", 3)]
    [InlineData("X[1+COS[3] Y5", 1)]
    public void A_bracket_left_out_is_one_finding_at_the_one_that_stays_open(string block, int column)
    {
        Assert.Equal(["expression-malformed"], NamesOf(block));
        var finding = Assert.Single(Check.Of("expression-malformed", Program(block)));
        Assert.Equal((column, "This bracket is not closed: the control stops with an alarm."), (finding.StartColumn, finding.Message));
    }

    [Fact]
    public void Nothing_is_said_of_what_the_control_never_reads() =>
        Assert.Equal(["after-program-end"], Check.Analyse("G21 G90 G17 G54\nG0 X1 Y1\nM30\nhello! (a (b\nX1.2.3\n%").Findings.Select(f => f.Name));

    // ---- what stands before the program ----

    /// <summary>ISO 6983-1 (from memory): what stands before the % that begins the program is passed over.</summary>
    [Theory]
    [InlineData("PART HOLDER 12\nREV B\n%\n{0}\n%")]
    [InlineData("FOR THE NEW VISE, O77 M30\n\n%\nO100\n{0}\n%")]
    [InlineData("\0\0\0%\nO100\n{0}\n%\n\0\0\0")]
    [InlineData("PART 4711: HOLDER\n%\nO100\nG21 G90 G17 G54 G40 G49 G80\nM98 P200\n{0}\nO200\nG0 X3\nM99\n%")]
    public void Text_before_the_program_is_silent(string text) =>
        Assert.Empty(Check.Analyse(text.Replace("{0}", "G21 G90 G17 G54 G40 G49 G80\nG0 X1 Y1 Z1\nM30", StringComparison.Ordinal)).Findings.Select(f => f.Name));

    /// <summary>A program that stands before a % is one, whatever comes behind; so is what no % follows.</summary>
    [Theory]
    [InlineData("G21 G90 G17 G54\nG0 X1 Y1.2.3\nM30\n%\nG0 X5\n%", "number-malformed")]
    [InlineData("HALT\nG21 G90 G17 G54\nG0 X1\nM30\n%\nG0 X5", "word-without-number")]
    [InlineData("HALT\n%", "word-without-number")]
    [InlineData("HALT\nG21 G90 G17 G54\nG0 X1\nM30", "word-without-number")]
    public void A_program_before_a_percent_is_read(string text, string name) => Assert.Contains(name, Check.Analyse(text).Findings.Select(f => f.Name));

    /// <summary>A line that comes before the % while it is typed makes no leader of what runs, and the % that is taken away makes a program of it again.</summary>
    [Fact]
    public void A_leader_is_one_as_soon_as_its_percent_stands_there()
    {
        const string body = "G21 G90 G17 G54 G40 G49 G80\nG0 X1 Y1 Z1\nM30\n";
        var without = Check.Analyse("HOLDER\n" + body);
        var text = without.Text;
        var with = without.WithText(text.WithChange(7, 7, "%\n"u8));
        Assert.NotEmpty(without.Findings);
        Assert.Empty(with.Findings);
        Assert.Equal(without.Findings.Select(f => (f.Name, f.Line)), with.WithText(with.Text.WithChange(7, 9, ""u8)).Findings.Select(f => (f.Name, f.Line)));
    }

    // ---- numbers ----

    /// <summary>NISTIR 6556 §3.3.1 and §3.3.2.1.</summary>
    [Theory]
    [InlineData("G0 X1.2.3")]
    [InlineData("G0 X-")]
    [InlineData("G0 X.")]
    [InlineData("N000009 G0 X2")]
    [InlineData("N1.5 G0 X2")]
    [InlineData("N-5 G0 X2")]
    public void A_number_that_cannot_be_read_is_found(string block) => Assert.Contains("number-malformed", NamesOf(block));

    [Theory]
    [InlineData("G0 X+.5")]
    [InlineData("G0 X-5.")]
    [InlineData("G0 X 1 2 . 5")]
    [InlineData("N00010 G0 X2")]
    public void A_number_of_an_unusual_but_right_form_is_silent(string block) => Assert.Empty(NamesOf(block));

    [Fact]
    public void Block_numbers_beyond_five_digits_are_told_once()
    {
        var finding = Assert.Single(Check.Of("number-malformed", "G21 G90 G17 G54\nN99999 G0 X1\nN100000 X2\nN100001 X3\nM30"));
        Assert.Equal(2, finding.Line);
    }

    [Theory]
    [InlineData("G0 X15", true)]
    [InlineData("G0 X-3 Y2.", true)]
    [InlineData("G0 X0", false)]
    [InlineData("G0 X15000", false)]
    [InlineData("G0 X[15]", false)]
    [InlineData("G4 X2", false)]
    [InlineData("G4 P15", false)]
    public void A_length_without_a_point_matters_where_integers_are_increments(string block, bool found)
    {
        Assert.Equal(found, NamesOf(block, "integers=increments").Contains("number-without-point"));
        Assert.DoesNotContain("number-without-point", NamesOf(block));
    }

    [Fact]
    public void The_point_is_added_behind_the_number() =>
        Assert.Contains("\nG0 X15. (edge)\n", Check.Fixed("number-without-point", "G21 G90 G17 G54\nG0 X15 (edge)\nM30", "integers=increments"), StringComparison.Ordinal);

    // ---- comments ----

    [Fact]
    public void A_comment_is_closed_before_blanks_that_end_the_line() =>
        Assert.Contains("\nG0 X5 (edge)  \n", Check.Fixed("comment-not-closed", Program("G0 X5 (edge  ")), StringComparison.Ordinal);

    /// <summary>Words in an open comment may be meant to run, or not to: nobody but the writer knows.</summary>
    [Theory]
    [InlineData("G43 (LENGTH H2 Z30 M8", "G43 (LENGTH) H2 Z30 M8", "G43 (LENGTH H2 Z30 M8)")]
    [InlineData("G0 X5 (edge Z-.5", "G0 X5 (edge) Z-.5", "G0 X5 (edge Z-.5)")]
    [InlineData("G0 X5 (edge Y#1", "G0 X5 (edge) Y#1", "G0 X5 (edge Y#1)")]
    [InlineData("G0 X5 (X30", "G0 X5 (X30)", null)]
    public void An_open_comment_with_words_is_a_choice(string block, string first, string? second)
    {
        var analysis = Check.Analyse(Program(block));
        var fixes = analysis.FixesOf(analysis.Findings.Single(f => f.Name == "comment-not-closed")).ToList();
        Assert.All(fixes, fix => Assert.Equal(FixSafety.Choice, fix.Safety));
        string[] expected = second is null ? [first] : [first, second];
        Assert.Equal(expected, fixes.Select(fix => TextEdits.Apply(analysis.Text, fix.Edits).ToString().Split('\n').Single(line => line.Contains('(', StringComparison.Ordinal))));
    }

    [Theory]
    [InlineData("G0 X5 (left front hole")]
    [InlineData("G0 X5 (drill 6.8, 20 deep")]
    [InlineData("G0 X5 (OP10")]
    public void An_open_comment_of_plain_text_is_closed_for_certain(string block)
    {
        var analysis = Check.Analyse(Program(block));
        Assert.Equal(FixSafety.Safe, analysis.FixesOf(analysis.Findings.Single(f => f.Name == "comment-not-closed")).Single().Safety);
    }

    [Theory]
    [InlineData("(3 flutes; 45 deg)")]
    [InlineData("; a line (with ( brackets")]
    [InlineData("() G0 X2")]
    public void A_sound_comment_is_silent(string block) => Assert.Empty(NamesOf(block));

    [Theory]
    [InlineData("(Bohrung Ø8 für Stift)", "(Bohrung DIA 8 fuer Stift)")]
    [InlineData("(Boring ø6.8 i låg, smøres)", "(Boring DIA 6.8 i lag, smores)")]
    [InlineData("(Ø 20)", "(DIA  20)")]
    [InlineData("(20°C ± 2)", "(20deg C +/- 2)")]
    [InlineData("(Příruba)", "(Priruba)")]
    [InlineData("; naïve", "; naive")]
    [InlineData("(漢)", "(?)")]
    public void Comments_are_spelled_in_ascii(string block, string spelled) =>
        Assert.Contains($"\n{spelled}\n", Check.Fixed("character-not-sendable", Program(block)), StringComparison.Ordinal);

    [Fact]
    public void Bytes_that_are_no_utf8_are_taken_as_latin_1()
    {
        var analysis = ProgramAnalysis.Create(SourceText.From(Encoding.Latin1.GetBytes("G21 G90 G17 G54\n(Höhe)\nG0 X1\nM30")), Setup.None, MachineProfile.IsoMill with { IsChosen = true });
        var finding = Assert.Single(analysis.Findings);
        Assert.Contains("(Hoehe)", TextEdits.Apply(analysis.Text, analysis.FixesOf(finding).Single().Edits).ToString(), StringComparison.Ordinal);
    }

    /// <summary>A control character is ASCII (ISO/IEC 646: 00 to 1F and 7F, from memory) and cannot be shown: it is told by its number.</summary>
    [Theory]
    [InlineData("(A\0B)", "character-not-sendable", "holds the control character 00 (hexadecimal)")]
    [InlineData("(A\u007F)", "character-not-sendable", "holds the control character 7F (hexadecimal)")]
    [InlineData("(\u001Aü)", "character-not-sendable", "is not plain ASCII")]
    [InlineData("G0 X5 \u001A", "unknown-character", "The control character 1A (hexadecimal) has no meaning")]
    public void A_control_character_is_told_by_its_number(string block, string name, string part)
    {
        var finding = Assert.Single(Check.Analyse(Program(block)).Findings, finding => finding.Line == 2);
        Assert.Equal(name, finding.Name);
        Assert.Contains(part, finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Lower_case_is_written_in_upper_case_where_the_control_takes_none()
    {
        Assert.Empty(NamesOf("g0 x5"));
        Assert.Contains("\nG0 X5 (EDGE)\n", Check.Fixed("character-not-sendable", Program("g0 x5 (edge)"), "programMarks.lowerCase=false"), StringComparison.Ordinal);
    }

    [Fact]
    public void Writing_upper_case_leaves_the_bytes_between_as_they_are()
    {
        var machine = MachineProfile.IsoMill with { IsChosen = true, Readings = new Readings { ProgramMarks = new ProgramMarks { LowerCase = false } } };
        var analysis = ProgramAnalysis.Create(SourceText.From(Encoding.Latin1.GetBytes("G21 G90 G17 G54\ng0 x1 (bei 5° höher)\nM30")), Setup.None, machine);
        var fix = Assert.Single(analysis.Findings.SelectMany(analysis.FixesOf), one => one.Safety == FixSafety.Safe);
        Assert.Equal(Encoding.Latin1.GetBytes("G0 X1 (BEI 5° HöHER)"), TextEdits.Apply(analysis.Text, fix.Edits).Line(1).ToArray());
    }

    /// <summary>The first sign of a block that the profile's list lacks; one that is no part of a program is unknown-character (the signs of NF Z 68-010 and
    /// ISO 6983-1 are from memory).</summary>
    [Theory]
    [InlineData("G0 X1.5 Y-2 (a; b, c)", "character-not-sendable", 14)]
    [InlineData("#1=5", "character-not-sendable", 0)]
    [InlineData("/N5 G0 X+1.5 (ok: 1/2)", null, 0)]
    [InlineData("G0 X1 !", "unknown-character", 6)]
    public void Signs_that_the_control_does_not_take_are_told(string block, string? name, int column)
    {
        var analysis = Check.Analyse(Program(block), "programMarks.characters=%()+-./:");
        var found = analysis.Findings.Where(finding => finding.Line == 2).ToList();
        Assert.Equal(name, found.Count == 0 ? null : Assert.Single(found).Name);
        Assert.All(found, finding => Assert.Equal((column, column + 1), (finding.StartColumn, finding.EndColumn)));
        Assert.All(found, finding => Assert.Empty(analysis.FixesOf(finding)));
    }

    [Fact]
    public void A_byte_order_mark_is_told_and_taken_out()
    {
        byte[] text = [0xEF, 0xBB, 0xBF, .. "%\nG21 G90 G17 G54\nG0 X1\nM30\n%"u8];
        var analysis = ProgramAnalysis.Create(SourceText.From(text), Setup.None, MachineProfile.IsoMill with { IsChosen = true });
        var finding = Assert.Single(analysis.Findings);
        Assert.Equal("character-not-sendable", finding.Name);
        Assert.StartsWith("%\nG21", TextEdits.Apply(analysis.Text, analysis.FixesOf(finding).Single().Edits).ToString(), StringComparison.Ordinal);
    }

    // ---- words and codes ----

    [Theory]
    [InlineData("G20", "units=G70/G71", "G70")]
    [InlineData("G71", "units=G20/G21", "G21")]
    public void A_code_of_the_other_reading_names_the_one_to_write(string code, string reading, string instead)
    {
        var finding = Check.Of("code-unknown", $"G90 G17 G54\n{code}\nM30", reading).Single();
        Assert.Contains(instead, finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("G5.5")]
    [InlineData("M77")]
    [InlineData("G200")]
    [InlineData("G-1")]
    public void A_code_no_table_has_is_found(string block) => Assert.Equal(["code-unknown"], NamesOf(block));

    [Theory]
    [InlineData("G00 X5")]
    [InlineData("G1.0 X5 F100 M03 S500")]
    public void Leading_and_trailing_zeros_of_a_code_say_nothing(string block) => Assert.Empty(NamesOf(block));

    [Fact]
    public void A_block_longer_than_is_read_says_how_much_was_read()
    {
        var finding = Check.Of("block-too-long", Program("G0 X5 (" + new string('x', BlockLexer.LongestRead) + ")")).Single();
        Assert.Contains($"{BlockLexer.LongestRead}", finding.Message, StringComparison.Ordinal);
        Assert.Equal(256, finding.StartColumn);
    }

    /// <summary>NISTIR 6556 §3.3: 256 characters.</summary>
    [Theory]
    [InlineData(256, 0)]
    [InlineData(257, 1)]
    public void A_block_has_256_characters_at_most(int length, int findings) =>
        Assert.Equal(findings, Check.Of("block-too-long", Program("G0 X5 " + "(".PadRight(length - 7, 'x') + ")")).Count);

    [Theory]
    [InlineData("G0 X[1+]", 7, "value is missing")]
    [InlineData("G0 X[1 [2]]", 7, "operator")]
    [InlineData("G0 X[4/0]", 6, "divides by 0")]
    [InlineData("G0 XASIM[0.5]", 4, "no function")]
    [InlineData("#9999=2", 0, "#5399")]
    public void An_expression_is_told_at_its_place(string block, int column, string message)
    {
        var finding = Check.Of("expression-malformed", Program(block)).Single();
        Assert.Contains(message, finding.Message, StringComparison.Ordinal);
        Assert.InRange(finding.StartColumn, column, column + 1);
    }

    // ---- the file as a whole ----

    [Theory]
    [InlineData("%\nG21 G90 G17 G54\nG0 X1\nM30\n%\n", 0)]
    [InlineData("\n%\nG21 G90 G17 G54\nG0 X1\nM30\n%\n\n", 0)]
    [InlineData("G21 G90 G17 G54\nG0 X1\nM30\n%\n", 1)]
    [InlineData("G21 G90 G17 G54\nG0 X1\nM30", 2)]
    public void Percent_lines_are_asked_for_by_the_profile(string program, int findings)
    {
        Assert.Equal(findings, Check.Of("mark-missing", program, "programMarks.percent=true").Count);
        Assert.Empty(Check.Of("mark-missing", program));
    }

    [Theory]
    [InlineData("%\n(plate)\nO12 (first side)\nG21 G90 G17 G54\nM30\n%", 0)]
    [InlineData(":12\nG21 G90 G17 G54\nM30", 0)]
    [InlineData("(plate)\nG21 G90 G17 G54\nM30", 1)]
    [InlineData("(plate) G21 G90\nO12\nG17 G54\nM30", 1)]
    [InlineData("(plate) O12\nG21 G90 G17 G54\nM30", 0)]
    [InlineData("/\nO12\nG21 G90 G17 G54\nM30", 0)]
    public void A_program_number_is_asked_for_by_the_profile(string program, int findings) =>
        Assert.Equal(findings, Check.Of("mark-missing", program, "programMarks.number=true").Count);

    [Fact]
    public void Marks_are_added_with_the_line_ends_of_the_file()
    {
        var machine = ReadingOption.Apply(MachineProfile.IsoMill with { IsChosen = true }, "programMarks.percent=true", out _);
        var analysis = ProgramAnalysis.Create(SourceText.From("G21 G90 G17 G54\r\nM30"), Setup.None, machine);
        var edits = analysis.Findings.SelectMany(finding => analysis.FixesOf(finding).First().Edits);
        Assert.Equal("%\r\nG21 G90 G17 G54\r\nM30\r\n%", TextEdits.Apply(analysis.Text, edits).ToString());
    }

    [Theory]
    [InlineData("M30\n%", 0)]
    [InlineData("M30\n\n(end of plate)\n%\n", 0)]
    [InlineData("M30\nO2\nG0 X1\nM99", 0)]
    [InlineData("M30\nG0 X1\nG0 X2", 1)]
    [InlineData("M30\n%\nG0 X1", 1)]
    [InlineData("M30\nO2\n%\nG0 X1", 1)]
    public void Blocks_behind_the_end_are_told_once(string end, int findings) =>
        Assert.Equal(findings, Check.Of("after-program-end", "G21 G90 G17 G54\nG0 X0\n" + end).Count);
}
