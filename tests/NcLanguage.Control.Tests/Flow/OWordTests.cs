using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;

namespace NcLanguage.Control.Tests.Flow;

/// <summary>Statements behind O words, which pair by their number (common practice). The places are worked out by hand.</summary>
public sealed class OWordTests
{
    [Theory]
    [InlineData("#1=1\nO10 WHILE [#1 LE 3]\nG0 X#1\n#1=[#1+1]\nO10 ENDWHILE\nG0 X9\nM2", "1 2 3 9")]
    [InlineData("#1=1\nO10 DO\nG0 X#1\n#1=[#1+1]\nO10 WHILE [#1 LE 3]\nG0 X9\nM2", "1 2 3 9")]
    // A body with its test behind it runs once at least.
    [InlineData("#1=7\nO10 DO\nG0 X#1\nO10 WHILE [#1 LE 3]\nG0 X9\nM2", "7 9")]
    [InlineData("O10 REPEAT [3]\nG91 G0 X2\nO10 ENDREPEAT\nM2", "2 4 6")]
    [InlineData("O10 REPEAT [0]\nG0 X2\nO10 ENDREPEAT\nG0 X9\nM2", "9")]
    [InlineData("O10 REPEAT [2]\nO11 REPEAT [2]\nG91 G0 X1\nO11 ENDREPEAT\nG91 G0 X10\nO10 ENDREPEAT\nM2", "1 2 12 13 14 24")]
    [InlineData("#1=2\nO10 IF [#1 EQ 1]\nG0 X1\nO10 ELSEIF [#1 EQ 2]\nG0 X2\nO10 ELSEIF [#1 GT 0]\nG0 X3\nO10 ELSE\nG0 X4\nO10 ENDIF\nG0 X9\nM2", "2 9")]
    [InlineData("#1=8\nO10 IF [#1 EQ 1]\nG0 X1\nO10 ELSEIF [#1 EQ 2]\nG0 X2\nO10 ELSE\nG0 X4\nO10 ENDIF\nG0 X9\nM2", "4 9")]
    [InlineData("#1=8\nO10 IF [#1 EQ 1]\nG0 X1\nO10 ENDIF\nG0 X9\nM2", "9")]
    [InlineData("#1=1\nO10 IF [#1 EQ 1]\nO11 IF [#1 EQ 2]\nG0 X1\nO11 ELSE\nG0 X2\nO11 ENDIF\nO10 ELSE\nG0 X3\nO10 ENDIF\nM2", "2")]
    [InlineData("#1=0\nO10 WHILE [1 EQ 1]\n#1=[#1+1]\nO11 IF [#1 GT 3]\nO10 BREAK\nO11 ENDIF\nO12 IF [#1 EQ 2]\nO10 CONTINUE\nO12 ENDIF\nG0 X#1\nO10 ENDWHILE\nG0 X9\nM2", "1 3 9")]
    // Out of both loops by the number of the outer.
    [InlineData("O10 REPEAT [3]\nO11 REPEAT [3]\nG91 G0 X1\nO10 BREAK\nO11 ENDREPEAT\nO10 ENDREPEAT\nG0 X10\nM2", "1 11")]
    // Subroutines stand before their call or behind the end; met in the run they are passed over.
    [InlineData("O10 SUB\nG0 X#1\nO10 ENDSUB\nG0 X1\nO10 CALL [5]\nG0 X9\nM2", "1 5 9")]
    [InlineData("G0 X1\nO10 CALL [5]\nG0 X9\nM2\nO10 SUB\nG0 X#1\nO10 ENDSUB", "1 5 9")]
    [InlineData("O10 SUB\nO11 IF [#1 GT 3]\nO10 RETURN\nO11 ENDIF\nG0 X#1\nO10 ENDSUB\nO10 CALL [2]\nO10 CALL [4]\nO10 CALL [3]\nM2", "2 3")]
    // Arguments in order, from #1; the caller's local variables are its own again behind it.
    [InlineData("O10 SUB\nG0 X[#1*100+#2*10+#3]\n#1=0\nO10 ENDSUB\n#1=7\nO10 CALL [1] [2] [#1]\nG0 X#1\nM2", "127 7")]
    [InlineData("O10 SUB\n#100=[#1*2]\nO10 ENDSUB\nO10 CALL [4]\nG0 X#100\nM2", "8")]
    [InlineData("O10 SUB\n#<_wide>=[#<_wide>+1]\nO10 ENDSUB\n#<_wide>=4\nO10 CALL\nG0 X#<_wide>\nM2", "5")]
    [InlineData("O10 SUB\n#<deep>=9\nG0 X#<deep>\nO10 ENDSUB\n#<deep>=4\nO10 CALL\nG0 X#<deep>\nM2", "9 4")]
    // One subroutine calls another that stands above it.
    [InlineData("O10 SUB\nG0 X#1\nO10 ENDSUB\nO20 SUB\nO10 CALL [#1+1]\nG0 X#1\nO20 ENDSUB\nO20 CALL [3]\nM2", "4 3")]
    // Any case, any spaces.
    [InlineData("#1=1\no10 while [#1 le 2]\nG0 X#1\n#1=[#1+1]\no10 endwhile\nM2", "1 2")]
    [InlineData("#<count>=1\nO10 WHILE [#<count> LE 2]\nG0 X#<count>\n#<count>=[#<count>+1]\nO10 ENDWHILE\nM2", "1 2")]
    public void Statements_behind_O_words(string program, string places)
    {
        var session = new FlowSession("G90 G0 X0\n" + program);
        Assert.Equal(places, session.X == "0" ? "" : session.X["0 ".Length..]);
        Assert.Empty(session.Faults);
        Assert.Equal(FlowEnd.Ended, session.End);
    }

    [Theory]
    [InlineData("O10 WHILE [1 EQ 2]\nG0 X1\nM2", FaultKind.PairMissing)]
    [InlineData("O10 REPEAT [2]\nG0 X1\nM2", FaultKind.PairMissing)]
    [InlineData("O10 IF [1 EQ 2]\nG0 X1\nM2", FaultKind.PairMissing)]
    [InlineData("O10 ENDWHILE\nM2", FaultKind.PairMissing)]
    [InlineData("O10 BREAK\nM2", FaultKind.PairMissing)]
    [InlineData("O10 SUB\nG0 X1\nM2", FaultKind.PairMissing)]
    [InlineData("O10 CALL\nM2", FaultKind.SubprogramMissing)]
    [InlineData("O10 SUB\nO10 CALL\nO10 ENDSUB\nO10 CALL\nM2", FaultKind.CallTooDeep)]
    [InlineData("O10 WHILE\nO10 ENDWHILE\nM2", FaultKind.StatementIncomplete)]
    public void Faults_behind_O_words(string program, FaultKind fault) => Assert.Contains(fault, new FlowSession("G90\n" + program).FaultKinds);

    /// <summary>A jump by block number stays within its subroutine.</summary>
    [Fact]
    public void A_jump_does_not_leave_a_subroutine()
    {
        Assert.Equal("2", new FlowSession("G90\nO10 SUB\nGOTO 5\nG0 X1\nN5 G0 X2\nO10 ENDSUB\nO10 CALL\nM2\nN5 G0 X3").X);
        Assert.Contains(FaultKind.JumpMissing, new FlowSession("G90\nO10 SUB\nGOTO 7\nO10 ENDSUB\nO10 CALL\nN7 M2").FaultKinds);
    }
}
