using System.Globalization;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Program;

public sealed class ProgramRuleTests
{
    // ---- number-repeated: NISTIR 6556 §3.3.1 allows repeats, so it is a warning --------------------------------

    [Theory]
    [InlineData("N10 G21\nN20 G90\nN30 M30", new int[0])]
    [InlineData("N30 G21\nN20 G90\nN10 M30", new int[0])]
    [InlineData("N10 G21\nN20 G90\nN10 M30", new[] { 3 })]
    [InlineData("N10 G21\nN10 G90\nN10 M30", new[] { 2, 3 })]
    [InlineData("N010 G21\nN10 M30", new[] { 2 })]
    [InlineData("O1000\nN10 G21\nN20 M30\nO2000\nN10 G0 X1\nN20 M99", new int[0])]
    [InlineData("O1000\nN10 G21\nN20 M30\nO2000\nN10 G0 X1\nN10 M99", new[] { 6 })]
    public void A_number_is_repeated_only_within_its_program(string program, int[] lines) => Assert.Equal(lines, Programs.Lines("number-repeated", program));

    [Theory] // One slip, one finding: a stretch that was pasted, and numbers that begin again.
    [InlineData("N10 G21\nN20 G90\nN30 X1\nN20 X2\nN30 X3\nN40 M30", new[] { 4 })]
    [InlineData("N10 G21\nN20 G90\nN30 X1\nX2\nN20 X2\nX5\nN30 X3\nN40 M30", new[] { 5 })]
    [InlineData("N10 G21\nN20 G90\nN30 X1\nN20 X2\nN40 X3\nN30 M30", new[] { 4, 6 })]
    [InlineData("N1 G21\nN2 G90\nN3 X1\nN1 X2\nN2 X3\nN3 X4\nN1 X5\nN2 M30", new[] { 4, 7 })]
    public void A_stretch_of_repeated_numbers_is_told_once(string program, int[] lines) => Assert.Equal(lines, Programs.Lines("number-repeated", program));

    [Fact]
    public void A_stretch_says_how_many_they_are()
    {
        var blocks = string.Join('\n', Enumerable.Range(0, 5000).Select(i => $"N{i % 1000 * 10} G0 X{i % 90}"));
        var analysis = Programs.Analyse(blocks);
        var found = analysis.Findings.Where(f => f.Name == "number-repeated").ToList();
        Assert.Equal([1000, 2000, 3000, 4000], found.Select(f => f.Line));
        Assert.All(found, f => Assert.Equal("N0, and 999 block numbers behind it, stand already further up, N0 on line 1: a search or a jump to one of them stops there.", f.Message));
        Assert.All(found, f => Assert.Empty(analysis.FixesOf(f)));
        Assert.DoesNotContain(analysis.Findings, f => f.Name == "number-order");
    }

    [Theory] // What is looked up chunk by chunk is what a plain look at all numbers of each program gives.
    [InlineData(300, 400)]
    [InlineData(3000, 4000)]
    [InlineData(2000, 1_900_000_000)]
    public void Repeats_are_those_of_a_plain_look(int count, int most)
    {
        var random = new Random(count);
        var blocks = Enumerable.Range(0, count).Select(i => random.Next(400) == 0 ? $"O{random.Next(9000)}" : $"N{(random.Next(3) == 0 ? random.Next(most) : i)} G0 X{i % 90}").ToList();
        var (expected, first, isRepeating, last) = (new List<int>(), new HashSet<string>(), false, -1L);
        foreach (var (block, line) in blocks.Select((block, line) => (block, line + 1)))
        {
            if (block[0] == 'O')
            {
                first.Clear();
                (isRepeating, last) = (false, -1);
                continue;
            }
            var number = block.Split(' ')[0];
            var isRepeated = !first.Add(number);
            if (isRepeated && !(isRepeating && long.Parse(number[1..], CultureInfo.InvariantCulture) > last))
                expected.Add(line);
            (isRepeating, last) = (isRepeated, long.Parse(number[1..], CultureInfo.InvariantCulture));
        }
        Assert.Equal(expected, Programs.Lines("number-repeated", string.Join('\n', blocks)));
    }

    [Fact]
    public void The_first_use_is_named_as_related_place()
    {
        var analysis = Programs.Analyse("N10 G21\nN20 G90\n/N10 M30");
        var finding = analysis.Findings.Single(f => f.Name == "number-repeated");
        Assert.Equal((2, 1, 4), (finding.Line, finding.StartColumn, finding.EndColumn));
        Assert.Contains(analysis.Related(finding), place => place is { Line: 0, StartColumn: 0, EndColumn: 3 });
    }

    [Theory]
    [InlineData("N10 G21\nN10 G90\nN20 M30", "N10 G21\nN15 G90\nN20 M30")]
    [InlineData("N0010 G21\nN0010 G90 (keep)\nN0012 M30", "N0010 G21\nN0011 G90 (keep)\nN0012 M30")]
    [InlineData("n10 G21\nn10 G90\nn11 M30", "n10 G21\nn20 G90\nn11 M30")]
    [InlineData("N10 G21\nN10 G90\nN20 IF [#500 EQ 1] GOTO 15\nN30 M30", "N10 G21\nN16 G90\nN20 IF [#500 EQ 1] GOTO 15\nN30 M30")] // the jump has no target, and must not get this one
    [InlineData("N10 GOTO 20\nN10 M30", "N10 GOTO 20\nN30 M30")]
    [InlineData("N10 G21\nN20 G90\nN20 M30", "N10 G21\nN20 G90\nN30 M30")]
    public void The_fix_takes_a_free_number_written_as_its_neighbours_are(string program, string expected)
    {
        var analysis = Programs.Analyse(program);
        var fix = analysis.FixesOf(analysis.Findings.Single(f => f.Name == "number-repeated")).Single();
        Assert.Equal(expected, TextEdits.Apply(analysis.Text, fix.Edits).ToString());
    }

    [Theory]
    [InlineData("WHILE [#500 LT 3] DO1\nWHILE [#501 LT 3] DO1\nX1\nEND1\nEND1\nM30", new[] { 2 })]
    [InlineData("WHILE [#500 LT 3] DO1\nWHILE [#501 LT 3] DO2\nWHILE [#502 LT 3] DO1\nX1\nEND1\nEND2\nEND1\nM30", new[] { 3 })]
    [InlineData("WHILE [#500 LT 3] DO1\nX1\nEND1\nWHILE [#501 LT 3] DO1\nX1\nEND1\nM30", new int[0])]
    [InlineData("O1\nWHILE [#500 LT 3] DO1\nX1\nM30\nO2\nWHILE [#501 LT 3] DO1\nX1\nEND1\nM99", new int[0])]
    public void A_loop_within_a_loop_needs_another_number(string program, int[] lines) => Assert.Equal(lines, Programs.Lines("loop-number-open", program));

    [Fact] // The usual case must not look at each number: a repeat far apart is still found, over many chunks.
    public void Repeats_far_apart_are_found()
    {
        var blocks = Enumerable.Range(1, 2000).Select(i => $"N{i} G0 X{i}").ToList();
        Assert.Empty(Programs.Lines("number-repeated", string.Join('\n', blocks)));
        blocks[1900] = "N17 G0 X1901";
        Assert.Equal([1901], Programs.Lines("number-repeated", string.Join('\n', blocks)));
    }

    // ---- number-order: NISTIR 6556 §3.3.1 allows any order; rising numbers are common practice ------------------

    [Theory]
    [InlineData("N10 G21\nN20 G90\nN30 M30", new int[0])]
    [InlineData("N30 G21\nN20 G90\nN10 M30", new[] { 2 })]
    [InlineData("N10 G21\nN100 G90\nN20 G17\nN30 G54\nN5 M30", new[] { 3 })]
    [InlineData("N10 G21\nN20 G90\nN10 M30", new int[0])] // number-repeated speaks
    [InlineData("O1000\nN10 G21\nN20 M30\nO2000\nN10 G0 X1\nN20 M99", new int[0])]
    [InlineData("O1000\nN20 G21\nN10 M30\nO2000\nN20 G0 X1\nN10 M99", new[] { 3, 6 })]
    [InlineData("G21\nG90\nM30", new int[0])]
    public void Numbers_that_fall_are_noted_once_in_a_program(string program, int[] lines) => Assert.Equal(lines, Programs.Lines("number-order", program));

    [Theory]
    [InlineData("N10 G21\nN20 G90\nN5 G17\nN30 M30", "N10 G21\nN20 G90\nN25 G17\nN30 M30")]
    [InlineData("N0010 G21\nN0020 G90\nN0005 M30", "N0010 G21\nN0020 G90\nN0030 M30")]
    [InlineData("N10 G21\nN100 G90\nN20 G17\nN30 M30", null)] // N100 is the odd one: no room
    [InlineData("N10 G21\nN20 G90\nN5 G17\nGOTO 5\nN30 M30", null)]
    [InlineData("N10 G21\nN20 G90\nN5 G17\nN30 M99 P5", null)]
    public void A_number_is_changed_only_where_no_jump_may_mean_it(string program, string? expected)
    {
        var analysis = Programs.Analyse(program);
        var fix = analysis.FixesOf(analysis.Findings.Single(f => f.Name == "number-order")).SingleOrDefault();
        Assert.Equal(expected, fix is null ? null : TextEdits.Apply(analysis.Text, fix.Edits).ToString());
        Assert.NotEqual(FixSafety.Safe, fix?.Safety);
    }

    // ---- program-end-missing: ISO 6983-1 (from memory), NISTIR 6556 §3.1 --------------------------------------

    [Theory]
    [InlineData("G21 G90\nG0 X0\nM30\n", new int[0])]
    [InlineData("G21 G90\nG0 X0\nM2", new int[0])]
    [InlineData("G21 G90\nG0 X0\nM99", new int[0])]
    [InlineData("%\nO1\nG21 G90\nG0 X0\nM30\n%\n", new int[0])]
    [InlineData("%\nO1\nG21 G90\nG0 X0\n(ready)\n%\n", new[] { 4 })]
    [InlineData("G21 G90\nG0 X0\n\n(ready)\n", new[] { 2 })]
    [InlineData("G21 G90\nM98 P2000\nM30\nO2000\nG0 X0\nM99", new int[0])]
    [InlineData("G21 G90\nM98 P2000\nO2000\nG0 X0\nM99", new[] { 2 })]
    [InlineData("G21 G90\nM98 P2000\nG0 X5", new[] { 3 })]
    [InlineData("(only a note)\n", new int[0])]
    [InlineData("%\nO1000\n%\n", new int[0])]
    [InlineData("", new int[0])]
    [InlineData("G21 G90\nG0 X0\nM30\nG0 X5", new int[0])] // after-program-end speaks of the rest
    public void The_end_is_looked_for_in_each_form(string program, int[] lines) => Assert.Equal(lines, Programs.Lines("program-end-missing", program));

    [Theory]
    [InlineData("G21 G90\r\nG0 X0", "G21 G90\r\nG0 X0\r\nM30")]
    [InlineData("G21 G90\nG0 X0 (last)\n%\n", "G21 G90\nG0 X0 (last)\nM30\n%\n")]
    [InlineData("N5 G21 G90\nN10 G0 X0\n", "N5 G21 G90\nN10 G0 X0\nN15 M30\n")]
    [InlineData("N0010G21G90\nN0020G0X0\n", "N0010G21G90\nN0020G0X0\nN0030M30\n")]
    [InlineData("G21 G0 X0", "G21 G0 X0\nM30")]
    [InlineData("N5 G21 G90\nN10 G0 X0\nN15\n%\n", "N5 G21 G90\nN10 G0 X0\nN15 M30\n%\n")]
    [InlineData("N5 G21 G90\nN10 G0 X0\nN15 ( M30\n", "N5 G21 G90\nN10 G0 X0\nN15 M30 ( M30\n")] // what stands in a comment is not read
    [InlineData("N5 G21 G90\nN10 G0 X0\nN15 ; M30\n", "N5 G21 G90\nN10 G0 X0\nN15 M30 ; M30\n")]
    [InlineData("G21 G90\nS900 M3\nG0 X0 M8", "G21 G90\nS900 M3\nG0 X0 M8\nM9 M5 M30")]
    [InlineData("WHILE [#3 EQ 1] DO3\nG0 Y0\nM99\nEND3", "WHILE [#3 EQ 1] DO3\nG0 Y0\nM99\nEND3\nM99")] // there to be called
    public void The_fix_writes_the_end_as_the_program_is_written(string program, string expected)
    {
        var analysis = Programs.Analyse(program);
        var fix = analysis.FixesOf(analysis.Findings.Single(f => f.Name == "program-end-missing")).Single();
        Assert.Equal(expected, TextEdits.Apply(analysis.Text, fix.Edits).ToString());
    }

    // ---- tool-not-in-setup, setup-missing ----------------------------------------------------------------------

    const string Tools = """{ "tools": [ { "number": 1 }, { "number": 3 }, { "number": 5 }, { "number": 20 } ] }""";

    [Theory]
    [InlineData("T3 M6", "", null)]
    [InlineData("T0 M6", "", null)]
    [InlineData("T4", "", "1, 3 and 5")]
    [InlineData("T4", "toolChange=T", "1, 3 and 5")]
    [InlineData("T19 M6", "", "3, 5 and 20")]
    public void A_tool_is_looked_up_in_the_list(string words, string readings, string? nearest)
    {
        var found = Programs.Of("tool-not-in-setup", $"G21 G90\n{words}\nM30", Tools, null, readings);
        if (nearest is null)
            Assert.Empty(found);
        else
            Assert.Contains(nearest, Assert.Single(found).Message, StringComparison.Ordinal);
        Assert.Empty(Programs.Of("tool-not-in-setup", $"G21 G90\n{words}\nM30", """{ "clearance": 2 }"""));
    }

    [Theory]
    [InlineData("(note)\n%\nO1\nG21\nG0 X0\nM30", true, 1)]
    [InlineData("G21\nM30", true, 0)]
    [InlineData("G21\nG0 X0\nM30", false, 0)]
    public void A_missing_setup_is_mentioned_once_and_only_when_asked_for(string program, bool mention, int times) =>
        Assert.Equal(times, Programs.Of("setup-missing", program, options: new AnalysisOptions(MentionMissingSetup: mention)).Count);

    // ---- jump-missing: how a jump finds its block is common practice -------------------------------------------

    [Theory]
    [InlineData("GOTO 120\nN100 G0 X1\nN150 M30", null)]
    [InlineData("GOTO 120\nN100 G0 X1\nN155 M30", "GOTO 100\nN100 G0 X1\nN155 M30")]
    [InlineData("GOTO 120\nN55 G0 X1\nN0130 M30", "GOTO 130\nN55 G0 X1\nN0130 M30")]
    [InlineData("GOTO 120\nN1200 G0 X1\nN12 M30", null)]
    [InlineData("GOTO 2\nN1 G0 X1\nM30", null)]
    [InlineData("GOTO 120\nM30\nO200\nN130 M99", null)]
    [InlineData("GOTO [119+1]\nN130 M30", null)]
    [InlineData("M98 P200\nN30 M30\nO200\nM99 P31", null)]
    [InlineData("M98 P200\nM30\nO200\nIF [1] GOTO 45\nN35 M99", "M98 P200\nM30\nO200\nIF [1] GOTO 35\nN35 M99")]
    public void The_number_that_is_plainly_meant_is_offered(string program, string? expected)
    {
        var analysis = Programs.Analyse(program);
        var fix = analysis.FixesOf(analysis.Findings.Single(f => f.Name == "jump-missing")).SingleOrDefault();
        Assert.Equal(expected, fix is null ? null : TextEdits.Apply(analysis.Text, fix.Edits).ToString());
    }

    // What this run does not jump to, another may.
    [Theory]
    [InlineData("#1=1\nIF [#1 EQ 2] GOTO 45\nN35 M30", new[] { 2 })]
    [InlineData("M30\nGOTO 45\nN35 M30", new[] { 2 })]
    [InlineData("#1=1\nIF [#1 EQ 2] GOTO 35\nN35 M30", new int[0])]
    [InlineData("#1=1\nIF [#1 EQ 2] GOTO [#1 + 44]\nN35 M30", new int[0])]
    [InlineData("#1=2\nIF [#1 EQ 2] GOTO 45\nN35 M30", new int[0])] // an error, told once
    public void A_jump_that_is_not_taken_warns(string program, int[] lines) => Assert.Equal(
        lines, Programs.Of("jump-missing", program).Where(finding => finding.Severity == Severity.Warning).Select(finding => finding.Line + 1));

    // Common practice: WHILE … DO n and END n belong together by n; O words may begin and end in more than one way.
    [Theory]
    [InlineData("#1=0\nWHILE [#1 LT 3] DO1\n#1=#1+1\nEND2\nM30", 1, "This loop has no END1: ")]
    [InlineData("#1=0\n#1=#1+1\nEND2\nM30", 2, "No loop with DO2 begins before this end: ")]
    [InlineData("O5 IF [1]\nM30", 0, "The statement that goes with this one by its number 5 is not there: ")]
    public void What_a_loop_lacks_is_named(string program, int line, string begins)
    {
        var finding = Assert.Single(Programs.Of("jump-missing", program));
        Assert.Equal(line, finding.Line);
        Assert.StartsWith(begins, finding.Message, StringComparison.Ordinal);
    }

    // ---- path-not-known: one plain sentence for each way a run can be lost --------------------------------------

    // L0 and P1.5 are known, and refused.
    [Theory]
    [InlineData("M98 P200 L0\nM30\nO200\nM99", "How many times this runs the program is not known, because L0 is not allowed: ")]
    [InlineData("M98 P1.5\nM30", "Which program this calls is not known, because P1.5 is not allowed: ")]
    public void A_call_whose_number_is_refused_says_so(string program, string begins) => Assert.StartsWith(
        begins, Assert.Single(Programs.Of("path-not-known", "G21 G90 G94 F100\n" + program)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("IF [#5063 GT 1] GOTO 90\nG0 X1\nN90 M30", "Which way this goes")]
    [InlineData("N10 G0 X1\nIF [#5063 GT 1] GOTO 10\nM30", "How often this jumps back")]
    [InlineData("GOTO #5063\nN90 M30", "Where this jumps to")]
    [InlineData("M98 P#5063\nM30", "Which program this calls")]
    [InlineData("M98 P200 L#5063\nM30\nO200\nM99", "How many times this runs the program")]
    [InlineData("WHILE [#5063 GT 1] DO 1\nG0 X1\nEND 1\nM30", "How often this loop runs")]
    public void What_hangs_on_a_value_not_known_is_told_in_one_sentence(string program, string begins)
    {
        var message = Programs.Analyse("G21 G90 G94 F100\nG38.2 Z-5\n" + program).Findings.Single(f => f.Name == "path-not-known" && f.Line > 1).Message;
        Assert.StartsWith(begins + " depends on a value that is not known here: ", message, StringComparison.Ordinal);
        Assert.Equal(1, message.Count(c => c == '.'));
    }
}
