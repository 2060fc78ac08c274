using System.Globalization;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Control.Flow;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Program;

/// <summary>Programs with loops and calls, held against the same written out and against closed forms; and those whose run has no end.</summary>
public sealed class RunOrderTests
{
    const string Start = "G21 G90 G17 G54 G94 G40 G49\nT4 M6\nS1200 M3\nG43 H4 G0 Z50 M8\n";
    const string End = "G80\nG0 Z50 M9\nM5\nG28 G91 Z0\nG90\nM30\n";

    static ProgramAnalysis Analyse(string program, int mostBlocks = AnalysisOptions.MostBlocksByDefault) => ProgramAnalysis.Create(
        SourceText.From(program), Setup.None, MachineProfile.IsoMill with { IsChosen = true }, AnalysisOptions.Default with { MostBlocks = mostBlocks });

    /// <summary>Eight holes on a circle of 60 mm about X70 Y45: x = cx + r·cos α, y = cy + r·sin α.</summary>
    [Theory]
    [InlineData("#1=0\nWHILE [#1 LT 8] DO1\n#2=#1*45+10\nG98 G81 X[70+30*COS[#2]] Y[45+30*SIN[#2]] Z-12 R2 F120\n#1=#1+1\nEND1\n")]
    [InlineData("#1=0\nN10 G98 G81 X[70+30*COS[#1*45+10]] Y[45+30*SIN[#1*45+10]] Z-12 R2 F120\n#1=#1+1\nIF [#1 LT 8] GOTO 10\n")]
    [InlineData("#1=10\nG98 G81 X[70+30*COS[#1]] Y[45+30*SIN[#1]] Z-12 R2 F120\nO7 REPEAT [7]\n#1=[#1+45]\nX[70+30*COS[#1]] Y[45+30*SIN[#1]]\nO7 ENDREPEAT\n")]
    [InlineData("G65 P900 X70 Y45 R30 A10 H8 Z-12\n", "O900\n#30=0\nWHILE [#30 LT #11] DO1\n#31=#1+#30*360/#11\nG98 G81 X[#24+#18*COS[#31]] Y[#25+#18*SIN[#31]] Z#26 R2 F120\n#30=#30+1\nEND1\nM99\n")]
    public void A_bolt_circle_by_trigonometry(string loop, string subprogram = "")
    {
        var places = Enumerable.Range(0, 8).Select(i => (10 + i * 45) * Math.PI / 180).Select(angle => (X: 70 + 30 * Math.Cos(angle), Y: 45 + 30 * Math.Sin(angle))).ToList();
        var written = string.Concat(places.Select(place => string.Create(CultureInfo.InvariantCulture, $"G98 G81 X{place.X:F9} Y{place.Y:F9} Z-12 R2 F120\n")));
        var (byLoop, writtenOut) = (Analyse(Start + loop + End + subprogram), Analyse(Start + written + End));
        Assert.Empty(byLoop.Findings);
        Assert.Empty(writtenOut.Findings);
        var (holes, others) = (HoleTable.Of(byLoop.Main), HoleTable.Of(writtenOut.Main));
        Assert.Equal(8, holes.Count);
        Assert.Equal(8, others.Count);
        for (var i = 0; i < 8; i++)
        {
            Assert.Equal(places[i].X, holes[i].Hole.X, 9);
            Assert.Equal(places[i].Y, holes[i].Hole.Y, 9);
            Assert.Equal(others[i].Hole.X, holes[i].Hole.X, 8);
            Assert.Equal(others[i].Hole.Y, holes[i].Hole.Y, 8);
            Assert.Equal((others[i].Hole.RLevel, others[i].Hole.Bottom, others[i].Hole.ReturnTo, others[i].Hole.ArriveAt, others[i].Hole.Tool),
                (holes[i].Hole.RLevel, holes[i].Hole.Bottom, holes[i].Hole.ReturnTo, holes[i].Hole.ArriveAt, holes[i].Hole.Tool));
        }
    }

    /// <summary>Rows of a facing cut by increments, called once a level and repeated: the time and the place at the end are those of the same written out.</summary>
    [Fact]
    public void A_facing_subprogram_runs_as_written_out()
    {
        const string Row = "G1 X80 F400\nY10\nX-80\nY10\n";
        var called = Start + "G0 X-10 Y0\nZ2\nG1 Z-0.5 F200\nM98 P100 L3\nG90 G0 Z2\nX-10 Y0\nG1 Z-1 F200\nM98 P30100\nG90\n" + End + "O100\nG91\n" + Row + "M99\n";
        var rows = "G91\n" + string.Concat(Enumerable.Repeat(Row, 3));
        var written = Start + "G0 X-10 Y0\nZ2\nG1 Z-0.5 F200\n" + rows + "G90 G0 Z2\nX-10 Y0\nG1 Z-1 F200\n" + rows + "G90\n" + End;
        var (sub, plain) = (Analyse(called), Analyse(written));
        Assert.Equal(Seconds(plain), Seconds(sub), 6);
        Assert.True(Seconds(sub) > 60);
        // 3 rows of 2 · 80 + 2 · 10 mm twice, at 400 mm/min, and little else.
        Assert.Equal(6 * (2 * 80 + 2 * 10) / 400.0 * 60, Seconds(sub), 15.0);
        Assert.Equal(plain.Findings.Select(finding => finding.Name), sub.Findings.Select(finding => finding.Name));
        Assert.Equal(plain.Main.Exit with { Variables = null }, sub.Main.Exit with { Variables = null });
    }

    static double Seconds(ProgramAnalysis analysis)
    {
        var seconds = 0.0;
        foreach (var part in analysis.Main.Results)
            seconds += part.Seconds;
        return seconds;
    }

    /// <summary>Whatever a program does, its finding comes, and no more blocks run than the bound and the text have.</summary>
    [Theory]
    [InlineData("loop-endless", 3, "N10 G0 X1\nX2\nGOTO 10\nM30")]
    [InlineData("loop-endless", 4, "#1=1\nWHILE [#1 GT 0] DO1\nG0 X1\nEND1\nM30")]
    [InlineData("loop-endless", 9, "#1=0\nWHILE [#1 LT 9] DO1\n#2=0\nWHILE [#2 LT 3] DO2\n#2=#2+1\nG0 X#2\nG4 P1\nEND2\nEND1\nM30")]
    [InlineData("loop-endless", 3, "O7 WHILE [1]\nG0 X1\nO7 ENDWHILE\nM30")]
    [InlineData("run-too-long", 3, "#1=1\nN10 G0 X1\n#1=#1+1\nIF [#1 GT 0] GOTO 10\nM30")]
    [InlineData("call-too-deep", 4, "M98 P5\nM30\nO5\nM98 P5\nM99")]
    [InlineData("call-too-deep", 2, "O5 SUB\nO5 CALL\nO5 ENDSUB\nO5 CALL\nM30")]
    [InlineData("jump-missing", 1, "GOTO 99\nM30")]
    [InlineData("jump-missing", 2, "#1=99\nIF [#1 EQ 99] GOTO #1\nM30")]
    [InlineData("run-too-long", 1, "M98 P5 L1000000000\nM30\nO5\nG0 X1\nM99")]
    [InlineData("run-too-long", 3, "O7 REPEAT [1000000000]\nG0 X1\nO7 ENDREPEAT\nM30")]
    [InlineData("run-too-long", 3, "O7 REPEAT [1000000000]\n#1=1\nO7 ENDREPEAT\nM30")]
    [InlineData("variable-unset", 1, "G0 X#77\nM30")]
    [InlineData("subprogram-missing", 1, "M98 P77\nM30")]
    public void Runs_that_lead_nowhere(string rule, int line, string program)
    {
        const int Bound = 20_000;
        var analysis = Analyse("G21 G90 G17 G54\n" + program, Bound);
        Assert.Contains((rule, line), analysis.Findings.Select(finding => (finding.Name, finding.Line)));
        Assert.InRange(analysis.BlocksRun, 1, Bound + (2 * analysis.Text.LineCount));
        Assert.Equal(rule == "run-too-long", analysis.Main.Flow?.End == FlowEnd.TooLong);
    }

    /// <summary>A counter that runs away from the number which ends its loop is told where it is counted on; one that steps past a number it should meet is a run that is too long.</summary>
    [Theory]
    [InlineData("#1=0\nWHILE [#1 LT 5] DO1\nG0 X#1\n#1=#1-1\nEND1\nM30", 4, "#1 goes down by 1 at each turn, and it goes on as long as #1 is less than 5")]
    [InlineData("#1=8\nWHILE [#1 GE 2] DO1\nG0 X#1\n#1=[#1+0.5]\nEND1\nM30", 4, "#1 goes up by 0.5 at each turn, and it goes on as long as #1 is at least 2")]
    [InlineData("#1=0\nN20 G0 X#1\n#1=#1-2\nIF [#1 LE 8] GOTO 20\nM30", 3, "#1 goes down by 2 at each turn, and it goes on as long as #1 is at most 8")]
    [InlineData("#1=2\nWHILE [#1 NE 7] DO1\nG0 X#1\n#1=#1+2\nEND1\nM30", 5, null)]
    [InlineData("#1=2\nWHILE [#1 GT 1] DO1\nG0 X#1\n#1=#1-2\n#1=#1+3\nEND1\nM30", 6, null)] // counted twice
    [InlineData("#1=2\n#2=1\nWHILE [#1 GT 1] DO1\nG0 X#1\n#1=#1+#2\nEND1\nM30", 6, null)]
    public void A_counter_that_runs_the_wrong_way(string program, int line, string? words)
    {
        var finding = Assert.Single(Analyse("G21 G90 G17 G54\n" + program, 2000).Findings, finding => finding.Name == "run-too-long");
        Assert.Equal((line, words is null ? Severity.Warning : Severity.Error), (finding.Line, finding.Severity));
        Assert.Equal(words is not null, finding.Message == $"This loop never ends: {words}. What comes behind is not checked.");
    }

    [Fact]
    public void What_a_counter_brings_that_runs_the_wrong_way_is_told_with_it()
    {
        const string Setup = """{ "stock": { "min": [0, 0, -15], "max": [100, 60, 0] }, "tools": [ { "number": 3, "kind": "drill", "diameter": 8 } ] }""";
        var analysis = Programs.Analyse("G21 G90 G17 G54\nT3 M6\nS1500 M3\nG43 H3 G0 X10 Y20 Z20\n#1=0\nWHILE [#1 LT 5] DO1\nG99 G81 X[10+15*#1] Y20 Z-5 R2 F200\n#1=#1-1\nEND1\nG80 G0 Z20\nM5\nM30", Setup);
        var finding = Assert.Single(analysis.Findings);
        Assert.Equal(("run-too-long", 7), (finding.Name, finding.Line));
        Assert.EndsWith(" One more finding may come of it and is not told by itself: hole-outside-stock.", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>Which letter of G65 becomes which variable: common practice (A to #1, R to #18, H to #11).</summary>
    [Theory]
    [InlineData("G65 P5 X1 Z-3\nM30\nO5\nG0 X#24\nG0 Z#18\nM99", "#18 has no value here: the call in line 2 gives no R, and nothing else sets it before.")]
    [InlineData("G65 P5 X1\nM30\nO5\nM98 P6\nM99\nO6\nG0 Z#26\nM99", "#26 has no value here: the call in line 2 gives no Z, and nothing else sets it before.")]
    [InlineData("G65 P5 X1\nM30\nO5\nG0 Z#30\nM99", "#30 has no value here: nothing sets it before, and the setup's variables do not give it.")]
    [InlineData("M98 P5\nM30\nO5\nG0 Z#18\nM99", "#18 has no value here: nothing sets it before, and the setup's variables do not give it.")]
    [InlineData("O5 SUB\nG0 Z#18\nO5 ENDSUB\nO5 CALL [1]\nM30", "#18 has no value here: nothing sets it before, and the setup's variables do not give it.")]
    public void A_letter_that_a_call_leaves_out_is_named(string program, string message) => Assert.StartsWith(
        message, Analyse("G21 G90 G17 G54\n" + program, 20_000).Findings.Single(finding => finding.Name == "variable-unset").Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(30, false)]
    [InlineData(60, true)]
    [InlineData(200, true)]
    public void Brackets_within_each_other(int deep, bool isTooDeep)
    {
        var analysis = Analyse($"G21 G90 G17 G54\nG0 X{new string('[', deep)}1{new string(']', deep)}\nM30\n");
        Assert.Equal(isTooDeep, analysis.Findings.Any(finding => finding.Name == "expression-malformed"));
        Assert.Equal(isTooDeep ? double.NaN : 1, analysis.Main.StateBefore(2).Position.X);
    }
}
