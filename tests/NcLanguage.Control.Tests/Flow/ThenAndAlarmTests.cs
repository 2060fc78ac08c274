using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Control.Tests.Flow;

/// <summary>What may stand behind THEN beside a setting, alarms of the program's own, and called files with % marks (common practice).</summary>
public sealed class ThenAndAlarmTests
{
    [Theory]
    [InlineData("IF [1 EQ 1] THEN GOTO 10\nG0 X1\nN10 G0 X2\nM30", "2")]
    [InlineData("IF [1 EQ 2] THEN GOTO 10\nG0 X1\nN10 G0 X2\nM30", "1 2")]
    [InlineData("IF [1 EQ 1] THEN G0 X1\nX2\nM30", "1 2")]
    [InlineData("G0 X1\nIF [1 EQ 2] THEN G0 X5\nX2\nM30", "1 2")]
    [InlineData("IF [1 EQ 1] THEN M98 P20\nG0 X3\nM30\nO20\nG0 X1\nM99", "1 3")]
    [InlineData("IF [1 EQ 2] THEN M98 P20\nG0 X3\nM30\nO20\nG0 X1\nM99", "3")]
    [InlineData("IF [1 EQ 1] THEN #1=4 G0 X1\nX#1\nM30", "1 4")]
    public void Behind_THEN(string program, string places)
    {
        var session = new FlowSession("G90\n" + program);
        Assert.Equal(places, session.X);
        Assert.Empty(session.Faults);
    }

    /// <summary>Where the condition is not known, words behind it may or may not have acted: nothing is known behind them.</summary>
    [Fact]
    public void Behind_THEN_with_a_condition_not_known()
    {
        var session = new FlowSession("G90 G0 X1\nIF [#500 GT 1] THEN G91 X2\nX2\nM30");
        Assert.Contains(FaultKind.NotFollowed, session.FaultKinds);
        Assert.StartsWith("1", session.X, StringComparison.Ordinal);
        Assert.DoesNotContain("3", session.X, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("G0 X1\n#3000=1 (STOP)\nG0 X2\nM30", true)]
    [InlineData("G0 X1\n#1=2\nIF [#1 EQ 2] GOTO 5\n#3000=1 (STOP)\nN5 M30", false)]
    [InlineData("G0 X1\nIF [#500 GT 2] GOTO 5\n#3000=1 (STOP)\nN5 M30", false)]
    [InlineData("G0 X1\n#3000=0\nM30", false)]
    public void Alarms(string program, bool isReached)
    {
        var session = new FlowSession("G90\n" + program);
        Assert.Equal("1", session.X);
        Assert.Equal(isReached, session.FaultKinds.Contains(FaultKind.AlarmReached));
    }

    /// <summary>A called program that puts back what it found: #4003 is 90 or 91 as in force (common practice, from memory).</summary>
    [Theory]
    [InlineData("G90 G0 X1\nG91\nM98 P20\nX1\nM30\nO20\n#10=#4003\nG90 G0 X7\nG#10\nM99", "1 7 8")]
    [InlineData("G90 G0 X1\nM98 P20\nX1\nM30\nO20\n#10=#4003\nG91 G0 X7\nG#10\nM99", "1 8 1")]
    [InlineData("G90 G0 X1\nG#4001 X#4002\nM30", "1 17")]
    [InlineData("G55 G0 X1\n#1=#4014\nG54\nG#1\nG0 X#1\nM30", "1 55")]
    public void Codes_in_force(string program, string places) =>
        Assert.Equal(places, new FlowSession("G90 G17 G54\n" + program, setup: BothDatums).X);

    static readonly Setup BothDatums = Setup.None with
    {
        IsPresent = true,
        WorkOffsets = Setup.None.WorkOffsets.Add(54, default).Add(55, default),
    };

    sealed class Beside(string text) : ICalledPrograms
    {
        public CalledFile? Find(int number) => number == 88 ? new CalledFile("88.nc", "88.nc", SourceText.From(text)) : null;
    }

    [Theory]
    [InlineData("%\nG0 X8\nM99\n%\n", "8 5", false)]
    [InlineData("%\nO88\nG0 X8\nM99\n%\n", "8 5", false)]
    [InlineData("%\nG0 X8\n%\n", "8 5", true)]
    [InlineData("G0 X8\nM99\n", "8 5", false)]
    public void A_called_file_with_marks(string file, string places, bool lacksReturn)
    {
        var session = new FlowSession("%\nG90\nM98 P88\nG0 X5\nM30\n%", new Beside(file));
        Assert.Equal(places, session.X);
        Assert.Equal(lacksReturn, session.FaultKinds.Contains(FaultKind.ReturnMissing));
    }
}
