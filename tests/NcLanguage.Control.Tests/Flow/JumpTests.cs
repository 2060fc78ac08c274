using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;

namespace NcLanguage.Control.Tests.Flow;

/// <summary>Jumps, conditions and loops by DO number. The statements are common practice; expressions and variables are those of NISTIR 6556 §3.3.2. The places
/// are worked out by hand.</summary>
public sealed class JumpTests
{
    [Theory]
    // Ahead, and back while a counter counts.
    [InlineData("G0 X1\nGOTO 20\nG0 X2\nN20 G0 X3\nM30", "1 3")]
    [InlineData("#1=1\nN10 G0 X#1\n#1=#1+1\nIF [#1 LE 3] GOTO 10\nG0 X9\nM30", "1 2 3 9")]
    // By a value, and by one that is worked out.
    [InlineData("#1=30\nGOTO #1\nG0 X1\nN30 G0 X2\nM30", "2")]
    [InlineData("#1=3\nGOTO [#1*10]\nG0 X1\nN30 G0 X2\nM30", "2")]
    [InlineData("#1=2\nIF [#1 EQ 2] GOTO [10+#1]\nG0 X1\nN12 G0 X2\nM30", "2")]
    // A number with noughts in front is the same number.
    [InlineData("GOTO 20\nG0 X1\nN0020 G0 X2\nM30", "2")]
    // A condition that does not hold; THEN.
    [InlineData("#1=5\nIF [#1 LT 5] GOTO 20\nG0 X1\nN20 G0 X2\nM30", "1 2")]
    [InlineData("#1=5\nIF [#1 EQ 5] THEN #2=7\nIF [#1 NE 5] THEN #2=8\nG0 X#2\nM30", "7")]
    // Of two blocks with the number the next one behind the jump is meant, else the first of the program.
    [InlineData("N5 G0 X1\nGOTO 7\nN7 G0 X2\nN7 G0 X3\nM30", "1 2 3")]
    [InlineData("#1=0\nN7 G0 X1\n#1=#1+1\nN8 G0 X2\nIF [#1 LT 2] GOTO 7\nM30", "1 2 1 2")]
    // A jump out of loops, and one over the end of a loop to its END.
    [InlineData("WHILE [1 EQ 1] DO1\nWHILE [1 EQ 1] DO2\nG0 X1\nGOTO 40\nEND2\nEND1\nN40 G0 X2\nM30", "1 2")]
    [InlineData("#1=0\nWHILE [#1 LT 2] DO1\n#1=#1+1\nIF [#1 EQ 1] GOTO 10\nG0 X#1\nN10\nEND1\nG0 X9\nM30", "2 9")]
    public void Jumps(string program, string places) => Assert.Equal(places, new FlowSession("G90\n" + program).X);

    [Theory]
    [InlineData("#1=0\nWHILE [#1 LT 3] DO1\nG0 X#1\n#1=#1+1\nEND1\nG0 X9\nM30", "0 1 2 9")]
    [InlineData("#1=3\nWHILE [#1 LT 3] DO1\nG0 X#1\nEND1\nG0 X9\nM30", "9")]
    // Three within each other: 1·100 + 1·10 + 1 and so on.
    [InlineData("#1=1\nWHILE [#1 LE 2] DO1\n#2=1\nWHILE [#2 LE 2] DO2\n#3=1\nWHILE [#3 LE 2] DO3\nG0 X[#1*100+#2*10+#3]\n#3=#3+1\nEND3\n#2=#2+1\nEND2\n#1=#1+1\nEND1\nM30",
        "111 112 121 122 211 212 221 222")]
    // The same number again for a loop behind the first, and for one within a program called.
    [InlineData("#1=0\nWHILE [#1 LT 2] DO1\nG0 X#1\n#1=#1+1\nEND1\nWHILE [#1 LT 4] DO1\nG0 X#1\n#1=#1+1\nEND1\nM30", "0 1 2 3")]
    // DO without a condition, left by a jump.
    [InlineData("#1=1\nDO1\nG0 X#1\n#1=#1*2\nIF [#1 GT 8] GOTO 90\nEND1\nN90 G0 X99\nM30", "1 2 4 8 99")]
    // Spaces or none.
    [InlineData("#1=0\nWHILE[#1LT2]DO 1\nG0X#1\n#1=#1+1\nEND 1\nM30", "0 1")]
    public void Loops(string program, string places) => Assert.Equal(places, new FlowSession("G90\n" + program).X);

    /// <summary>A variable that was never set equals #0, and one that was set does not, whatever it holds (common practice).</summary>
    [Theory]
    [InlineData("IF [#5 EQ #0] GOTO 10\nG0 X1\nN10 G0 X2\nM30", "2")]
    [InlineData("#5=0\nIF [#5 EQ #0] GOTO 10\nG0 X1\nN10 G0 X2\nM30", "1 2")]
    [InlineData("#5=0\n#5=#0\nIF [#5 NE #0] GOTO 10\nG0 X1\nN10 G0 X2\nM30", "1 2")]
    [InlineData("#<a>=0\n#<a>=#0\nIF [#<a> NE #0] GOTO 10\nG0 X1\nN10 G0 X2\nM30", "1 2")]
    [InlineData("IF [#<depth> EQ #0] THEN #<Depth>=4\nG0 X#<DEPTH>\nM30", "4")]
    public void Vacant_variables(string program, string places)
    {
        var session = new FlowSession("G90\n" + program);
        Assert.Equal(places, session.X);
        Assert.Empty(session.Faults);
    }

    /// <summary>A common variable may hold what was left in it before the program began (common practice): whether it was set is not known, and asking that (by #0) is no fault.</summary>
    [Theory]
    [InlineData("IF [#500 EQ #0] GOTO 20", false)]
    [InlineData("IF [#500 EQ 5] GOTO 20", true)]
    [InlineData("IF [#500 NE 5] THEN #1=2\nIF [#1 GT 0] GOTO 20", true)]
    [InlineData("IF [#500 GT 5] GOTO 20", true)]
    public void A_common_variable_not_set(string blocks, bool isFault)
    {
        var session = new FlowSession($"G21 G90 G0 X0\n{blocks}\nG0 X1\nN20 G0 Y5\nM30");
        Assert.Equal("0 1 ?", session.X);
        Assert.Equal(isFault, session.FaultKinds.Contains(FaultKind.VariableUnset));
    }

    /// <summary>What is worked out from a variable never set is not known, and so no longer vacant.</summary>
    [Theory]
    [InlineData("#1=[#5+1]")]
    [InlineData("#1=-#5")]
    [InlineData("#1=ABS[#5]")]
    public void Working_with_a_vacant_variable_gives_none(string setting)
    {
        var value = new FlowSession(setting + "\nM30").Variable(1);
        Assert.True(double.IsNaN(value) && !NcLanguage.Syntax.Expressions.Expression.IsVacant(value));
    }

    [Theory]
    [InlineData("G90 G0 X1\nGOTO 50\nG0 X2\nN60 M30", 2, 50, "1")]
    [InlineData("G90 G0 X1\n#1=7.5\nGOTO #1\nN7 N8 G0 X2\nM30", 3, 7.5, "1")]
    [InlineData("G90 G0 X1\nGOTO -10\nN10 M30", 2, -10, "1")]
    // Block numbers of another program of the file are none of this one.
    [InlineData("O1\nG90 G0 X1\nGOTO 50\nM30\nO2\nN50 G0 X2\nM99", 3, 50, "1")]
    public void A_jump_to_nowhere_stops(string program, int line, double number, string places)
    {
        var session = new FlowSession(program);
        Assert.Equal((FaultKind.JumpMissing, line, number, double.NaN), session.Faults[^1]);
        Assert.Equal(FlowEnd.Stopped, session.End);
        Assert.Equal(places, session.X);
    }

    [Theory]
    [InlineData("#1=0\nWHILE [#1 LT 3] DO1\n#1=#1+1\nM30", FaultKind.PairMissing)]
    [InlineData("#1=0\nEND1\nM30", FaultKind.PairMissing)]
    [InlineData("WHILE [1 EQ 1]\nM30", FaultKind.StatementIncomplete)]
    [InlineData("IF [1 EQ 1]\nM30", FaultKind.StatementIncomplete)]
    [InlineData("GOTO\nM30", FaultKind.StatementIncomplete)]
    public void Statements_without_what_they_need(string program, FaultKind fault) => Assert.Contains(fault, new FlowSession(program).FaultKinds);

    /// <summary>With the switch on, a block with / is passed over, whatever it would do with the run.</summary>
    [Theory]
    [InlineData(false, "2")]
    [InlineData(true, "1 2")]
    public void A_jump_that_can_be_skipped(bool skip, string places) =>
        Assert.Equal(places, new FlowSession("G90\n/GOTO 20\nG0 X1\nN20 G0 X2\nM30", skip: skip).X);

    [Theory]
    [InlineData("#1=0\nN10 #1=#1+1\nIF [#1 LT 0] GOTO 20\nGOTO 10\nN20 M30", FlowEnd.TooLong)] // the counter grows: nothing shows that it never ends
    [InlineData("N10 G91 G0 X1\nGOTO 10", FlowEnd.Endless)]
    [InlineData("#1=0\nDO1\n#1=#1+1\nEND1\nM30", FlowEnd.Endless)]
    [InlineData("#1=1\nWHILE [#1 GT 0] DO1\nG91 G0 X1\nEND1\nM30", FlowEnd.Endless)]
    // Goes round by three: nothing is as it was in the pass before.
    [InlineData("#1=0\nN10 #1=[[#1+1] MOD 3]\nIF [#1 LT 5] GOTO 10\nM30", FlowEnd.Endless)]
    // Waits for a place that comes: the tool moves on.
    [InlineData("G90 G0 X0\nN10 G91 G0 X1\nIF [#5001 LT 5] GOTO 10\nM30", FlowEnd.Ended)]
    [InlineData("G90 G0 X0\nN10 G0 X0\nIF [#5001 LT 5] GOTO 10\nM30", FlowEnd.Endless)]
    // The program called ends the run, or leads on, in time.
    [InlineData("#100=0\nN10 M98 P50\nGOTO 10\nO50\n#100=#100+1\nIF [#100 LT 3] GOTO 1\nM30\nN1 M99", FlowEnd.Ended)]
    [InlineData("#100=0\nN10 M98 P50\nGOTO 10\nN90 M30\nO50\n#100=#100+1\nIF [#100 LT 3] GOTO 1\nM99 P90\nN1 M99", FlowEnd.Ended)]
    public void Runs_without_end(string program, FlowEnd end)
    {
        var session = new FlowSession("G21\n" + program);
        Assert.Equal(end, session.End);
        Assert.Equal(end == FlowEnd.Endless, session.FaultKinds.Contains(FaultKind.LoopEndless));
    }

    /// <summary>Both ways of a condition that is not known are run, and meet with what both have in common.</summary>
    [Theory]
    [InlineData("G0 X1\nIF [#500 GT 1] GOTO 20\nG0 X2\nN20 G0 Y1\nM30", "1 2 ?")]
    [InlineData("G0 X1\nIF [#500 GT 1] GOTO 20\nG0 Z1\nN20 G0 Y1\nM30", "1 1 1")]
    [InlineData("G0 X1\nIF [#500 GT 1] GOTO 20\nG0 X2\nM30\nN20 G0 Y1\nM30", "1 2 1")]
    // Back to a place above: any number of times, so that nothing is known behind it, nor where an earlier jump may have left it.
    [InlineData("G0 X1\nN10 G91 G0 X1\nIF [#500 GT 1] GOTO 10\nG0 X1\nM30", "1 2 ?")]
    [InlineData("G0 X1\nN10 G91 G0 X1\nIF [#500 GT 2] GOTO 90\nIF [#500 GT 1] GOTO 10\nM30\nN90 G0 X1\nM30", "1 2 ?")]
    [InlineData("G0 X1\nM98 P5\nG0 Y1\nM30\nO5\nN10 G91 G0 X1\nIF [#500 GT 2] GOTO 30\nGOTO 40\nN30 M99\nN40 IF [#500 GT 1] GOTO 10\nM30", "1 2 ?")]
    // A loop that may not run at all.
    [InlineData("G0 X1\nWHILE [#500 GT 1] DO1\nG21 G90 G0 X5\nEND1\nG0 Y1\nM30", "1 5 ?")]
    [InlineData("G0 X5\nWHILE [#500 GT 1] DO1\nG21 G90 G0 X5\nEND1\nG0 Y1\nM30", "5 5 5")]
    // Left by a jump before its end, and met again: not taken for its second pass.
    [InlineData("#1=0\nN5 G0 X1\nWHILE [#500 GT 1] DO1\nG21 G90 G0 X5\nIF [#1 LT 9] GOTO 20\nEND1\nN20 G21 G90 G0 X7\nM30", "1 5 7")]
    public void Ways_not_known(string program, string places)
    {
        var session = new FlowSession("G21 G90 #500=#5061\n" + program);
        Assert.Equal(places, session.X);
        Assert.Contains(FaultKind.WayNotKnown, session.FaultKinds);
    }
}
