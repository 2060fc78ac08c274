using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Control.Tests.Flow;

/// <summary>Calls by program number and returns from them: M98, M99 and G65 with its letters, all common practice. The places are worked out by hand.</summary>
public sealed class CallTests
{
    [Theory]
    [InlineData("G0 X1\nM98 P20\nG0 X3\nM30\nO20\nG0 X2\nM99", "1 2 3")]
    // The rest of the block is done before the call.
    [InlineData("M98 P20 G0 X1\nG0 X3\nM30\nO20\nG0 X2\nM99", "1 2 3")]
    // So many times; none; P with the times in front of four digits.
    [InlineData("G0 X0\nM98 P20 L3\nM30\nO20\nG91 G0 X5\nM99", "0 5 10 15")]
    [InlineData("G0 X0\nM98 P30020\nM30\nO20\nG91 G0 X5\nM99", "0 5 10 15")]
    // The program with all five digits comes first.
    [InlineData("G0 X0\nM98 P30020\nM30\nO20\nG0 X5\nM99\nO30020\nG0 X7\nM99", "0 7")]
    // Local variables are the caller's.
    [InlineData("#1=4\nM98 P20\nG0 X#1\nM30\nO20\nG0 X#1\n#1=6\nM99", "4 6")]
    // By a number that is worked out, within each other, and with modes that stay.
    [InlineData("#1=20\nM98 P#1\nG0 X3\nM30\nO20\nM98 P30\nG0 X2\nM99\nO30\nG0 X1\nM99", "1 2 3")]
    [InlineData("G0 X1\nM98 P20\nX1\nM30\nO20\nG91\nM99", "1 2")]
    // Back to a block of the caller by its number, whatever times are left; above the call as well.
    [InlineData("M98 P20\nG0 X1\nN50 G0 X3\nM30\nO20\nG0 X2\nM99 P50\nN50 G0 X4", "2 3")]
    [InlineData("M98 P20 L3\nG0 X1\nN50 G0 X3\nM30\nO20\nG0 X2\nM99 P50", "2 3")]
    [InlineData("#1=0\nN10 #1=#1+1\nM98 P20\nG0 X9\nM30\nO20\nG0 X#1\nIF [#1 LT 3] GOTO 1\nM99\nN1 M99 P10", "1 2 3 9")]
    // In the program itself M99 ends the run, and M99 P goes on at a block of its own.
    [InlineData("T1 G0 X1\nM99\nG0 X2", "1")]
    [InlineData("#1=0\nN10 #1=#1+1\nG0 X#1\nIF [#1 GE 3] GOTO 90\nM99 P10\nN90 M30", "1 2 3")]
    // Block numbers are each program's own.
    [InlineData("M98 P20\nGOTO 10\nG0 X1\nN10 G0 X2\nM30\nO20\nGOTO 10\nG0 X3\nN10 G0 X4\nM99", "4 2")]
    // Between % and %, under a number of its own; what comes behind the second % is none of it.
    [InlineData("%\nO1 G90\nM98 P20\nM30\nO20\nG0 X2\nM99\n%", "2")]
    // A subprogram in front: the run begins with the first program of the file.
    [InlineData("O1 G90\nM98 P20\nG0 X1\nM30\nO20\nG0 X2\nM99\nO30\nG0 X3\nM99", "2 1")]
    // Off the end of the text there is nothing more to do.
    [InlineData("G0 X1\nG0 X2", "1 2")]
    public void Calls_and_returns(string program, string places) => Assert.Equal(places, new FlowSession(program.Contains("G90", StringComparison.Ordinal) ? program : "G90\n" + program).X);

    /// <summary>A=1 B=2 C=3 I=4 J=5 K=6 D=7 E=8 F=9 H=11 M=13 Q=17 R=18 S=19 T=20 U=21 V=22 W=23 X=24 Y=25 Z=26 (common practice).</summary>
    [Theory]
    [InlineData('A', 1)] [InlineData('B', 2)] [InlineData('C', 3)] [InlineData('I', 4)] [InlineData('J', 5)] [InlineData('K', 6)] [InlineData('D', 7)]
    [InlineData('E', 8)] [InlineData('F', 9)] [InlineData('H', 11)] [InlineData('M', 13)] [InlineData('Q', 17)] [InlineData('R', 18)] [InlineData('S', 19)]
    [InlineData('T', 20)] [InlineData('U', 21)] [InlineData('V', 22)] [InlineData('W', 23)] [InlineData('X', 24)] [InlineData('Y', 25)] [InlineData('Z', 26)]
    public void Letters_of_a_call(char letter, int number)
    {
        var session = new FlowSession($"G90\nG65 P20 {letter}7\nM30\nO20\nG0 X[#{number}]\nM99");
        Assert.Equal("7", session.X);
        // Every other local variable is vacant.
        for (var other = 1; other <= 33; other++)
            Assert.Equal(other == number ? "1" : "2", new FlowSession($"G90\nG65 P20 {letter}7\nM30\nO20\nIF [#{other} NE #0] THEN #100=1\nIF [#{other} EQ #0] THEN #100=2\nG0 X#100\nM99").X);
    }

    [Theory]
    // Local variables are the call's own and are the caller's again behind it; common ones stay.
    [InlineData("#1=4 #2=5 #100=6\nG65 P20 A1\nG0 X#1\nG0 X#2\nG0 X#100\nM30\nO20\n#2=9\n#100=#1+6\nG0 X#2\nM99", "9 4 5 7")]
    // Each level has its own.
    [InlineData("#1=1\nG65 P20 A2\nG0 X#1\nM30\nO20\nG65 P30 A[#1+1]\nG0 X#1\nM99\nO30\nG0 X#1\nM99", "3 2 1")]
    // A program called by M98 from there works with those of its caller.
    [InlineData("#1=1\nG65 P20 A2\nG0 X#1\nM30\nO20\nM98 P30\nG0 X#1\nM99\nO30\n#1=#1+5\nM99", "7 1")]
    // So many times, each with the arguments as given.
    [InlineData("G65 P20 A2 L3\nM30\nO20\n#1=#1+1\nG91 G0 X#1\nM99", "3 6 9")]
    public void Variables_of_a_call(string program, string places) => Assert.Equal(places, new FlowSession("G90 G0 Y0 X0\n" + program).X["0 ".Length..]);

    /// <summary>The state before the first block holds: X is known only once it was given.</summary>
    [Fact]
    public void Nothing_of_a_call_with_arguments_moves_by_its_letters() =>
        Assert.Equal("", new FlowSession("G90 G0\nG65 P20 X5 Y6 Z7 F100 S500 M3 T4\nM30\nO20\nM99").X);

    [Theory]
    [InlineData("M98 P20\nM30", FaultKind.SubprogramMissing, 1, 20)]
    [InlineData("M98 P20\nM30\nO20\nG0 X1", FaultKind.ReturnMissing, 4, 20)]
    [InlineData("M98 P20\nM30\nO20\nM30", FaultKind.ReturnMissing, 4, 20)]
    [InlineData("M98 P20\nM30\nO20\nM99 P70", FaultKind.JumpMissing, 4, 70)]
    [InlineData("O1\nM98 P1\nM30", FaultKind.CallTooDeep, 2, FlowRunner.DeepestCall)]
    [InlineData("M98 P20\nM30\nO20\nM98 P30\nM99\nO30\nM98 P20\nM99", FaultKind.CallTooDeep, 7, FlowRunner.DeepestCall)]
    public void Faults_of_calls(string program, FaultKind kind, int line, double number)
    {
        var session = new FlowSession(program);
        Assert.Contains((kind, line, number), session.Faults.Select(fault => (fault.Kind, fault.Line, fault.A)));
    }

    /// <summary>Ten calls within each other run; an eleventh does not.</summary>
    [Theory]
    [InlineData(10, false)]
    [InlineData(11, true)]
    public void Calls_within_each_other(int depth, bool tooDeep)
    {
        var subs = string.Concat(Enumerable.Range(1, depth).Select(i => $"O{i}\n{(i < depth ? $"M98 P{i + 1}" : "G0 X7")}\nM99\n"));
        var session = new FlowSession("G90\nM98 P1\nM30\n" + subs);
        Assert.Equal(tooDeep, session.FaultKinds.Contains(FaultKind.CallTooDeep));
        Assert.Equal(tooDeep ? "" : "7", session.X);
    }

    /// <summary>What ends a called program ends the run.</summary>
    [Fact]
    public void The_end_in_a_called_program()
    {
        var session = new FlowSession("G90 G0 X1\nM98 P20\nG0 X3\nM30\nO20\nG0 X2\nM30");
        Assert.Equal("1 2", session.X);
        Assert.Equal(FlowEnd.Ended, session.End);
    }

    /// <summary>A return to a block by number on one way, a plain one on the other: the caller goes on at both places.</summary>
    [Fact]
    public void Two_ways_back()
    {
        var session = new FlowSession("G21 G90 G0 X1 Y0 #500=#5061\nM98 P20\nG0 X5\nN50 G0 Y1\nM30\nO20\nIF [#500 GT 1] GOTO 1\nG0 X3\nM99 P50\nN1 M99");
        // From N1 the tool stands at X1 and goes to X5; by N50 it stands at X3: there, X is one of the two.
        Assert.Equal("1 3 5 ?", session.X);
    }

    sealed class Beside(params (int Number, string Text)[] files) : ICalledPrograms
    {
        public List<int> Asked { get; } = [];

        public CalledFile? Find(int number)
        {
            Asked.Add(number);
            foreach (var file in files)
                if (file.Number == number)
                    return new CalledFile($"O{number}.nc", $"/jobs/O{number}.nc", SourceText.From(file.Text));
            return null;
        }
    }

    [Theory]
    [InlineData("O20\nG0 X2\nM99")]
    [InlineData("%\nO20 (pocket)\nG0 X2\nM99\n%")]
    [InlineData("G0 X2\nM99")]
    [InlineData("O7\nG0 X8\nM99\nO20\nG0 X2\nM99")]
    public void A_program_in_a_file_beside(string file)
    {
        var beside = new Beside((20, file));
        var session = new FlowSession("G90 G0 X1\nM98 P20 L2\nM98 P20\nG0 X3\nM30", beside);
        Assert.Equal("1 2 3", session.X);
        Assert.Equal([20], beside.Asked); // read once
        Assert.Contains(session.Visits, visit => visit.File == "O20.nc");
    }

    [Fact]
    public void A_program_of_the_file_itself_comes_before_one_beside()
    {
        var beside = new Beside((20, "G0 X8\nM99"));
        Assert.Equal("2", new FlowSession("G90\nM98 P20\nM30\nO20\nG0 X2\nM99", beside).X);
        Assert.Empty(beside.Asked);
    }

    /// <summary>From a file beside, calls lead to programs of that file, and to further files.</summary>
    [Fact]
    public void Calls_from_a_file_beside()
    {
        var beside = new Beside((20, "G0 X1\nM98 P21\nM98 P30\nM99\nO21\nG0 X2\nM99"), (30, "G0 X3\nM99"));
        Assert.Equal("1 2 3 4", new FlowSession("G90\nM98 P20\nG0 X4\nM30", beside).X);
    }

    /// <summary>Where the program called is not found, nothing is known behind the call.</summary>
    [Fact]
    public void A_program_not_found()
    {
        var session = new FlowSession("G21 G90 G0 X1\nM98 P20\nG0 Y5\nM30", new Beside());
        Assert.Equal("1 ?", session.X);
    }
}
