using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Tests;

/// <summary>Asked in turn, the lines are those that each finding's own question gives, in whatever order they are asked for.</summary>
public sealed class SetterLinesTests
{
    const string Body = "G21 G90 G17 G54\nT1 M6\nG0 G43 H1 Z50\nS1800 M3\nG1 X1 Y1 F100\n";

    static ProgramAnalysis Analyse(int seed)
    {
        var random = new Random(seed);
        string[] blocks = ["G1 X1 F900000\n", "G0 X5\n", "F100\n", "S90000 M3\n", "M5\n", "G1 X2 Y3\n", "G91\n", "G90\n", "T2 M6\n", "G43 H1 Z5\n", "G2 X1 I5\n", "M98 P1\n", "G20\n", "(a)\n"];
        var text = Body + string.Concat(Enumerable.Range(0, 700).Select(_ => blocks[random.Next(blocks.Length)])) + "M30\n";
        return ProgramAnalysis.Create(SourceText.From(text), Setup.None, MachineProfile.IsoMill with { IsChosen = true });
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void They_are_those_of_each_finding_alone(int seed)
    {
        var analysis = Analyse(seed);
        var concerned = analysis.Findings.Where(finding => finding.Concerns != Slot.None).ToList();
        Assert.NotEmpty(concerned);
        var inTurn = new SetterLines(analysis.Main);
        Assert.All(concerned, finding => Assert.Equal(analysis.Main.LastSetterBefore(finding.Concerns, finding.Line, finding.Run), inTurn.Of(finding)));
        new Random(seed).Shuffle(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(concerned));
        Assert.All(concerned, finding => Assert.Equal(analysis.Main.LastSetterBefore(finding.Concerns, finding.Line, finding.Run), inTurn.Of(finding)));
    }
}
