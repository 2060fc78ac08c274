using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Analysis;

/// <summary>A run under another reading comes out as by itself, and runs no more than the reading touches.</summary>
public class RunBesideTests
{
    static readonly Setup WithTool = Setup.None with { Tools = [new Tool { Number = 1, Diameter = 6, Length = 80, LengthOffset = 1, RadiusOffset = 1 }] };

    /// <summary>Cuts, with some holes and one block that can be skipped in every <paramref name="each"/> blocks.</summary>
    static string Program(int blocks, int each, string compensated = "") =>
        "T1 M6\nG21 G90 G54 G0 X0 Y0\nS900 M3\nG43 H1 Z20\nG99\n"
        + string.Concat(Enumerable.Range(1, blocks).Select(i => (i % each) switch
        {
            0 => $"G81 X{i % 50} Y10 Z-4 R2 F100\nX{i % 30}\nG80\nG0 X0 Y0\n/G0 X{i % 5}\nG1 {compensated}X1 Y1 F200\n",
            1 => $"G1 X{i % 50} Y{i % 7} Z1 F200\n",
            _ => $"X{i % 50} Y{i % 7}\n",
        }))
        + "G40 M30\n";

    static void ComesOutAsAlone(ProgramRun beside, ProgramRun alone, bool onlyHoles)
    {
        Assert.Equal(alone.Results.Length, beside.Results.Length);
        for (var i = 0; i < alone.Results.Length; i++)
        {
            Assert.Equal(alone.Results[i].Entry, beside.Results[i].Entry);
            Assert.Equal(alone.Results[i].Exit, beside.Results[i].Exit);
            Assert.Equal(alone.Results[i].Sets, beside.Results[i].Sets);
            Assert.Equal(alone.Results[i].Holes, beside.Results[i].Holes);
            if (!onlyHoles)
                Assert.Equal(alone.Results[i].Findings, beside.Results[i].Findings);
        }
    }

    static void AllComeOutAsAlone(ProgramAnalysis analysis)
    {
        ProgramAnalysis Alone(MachineProfile machine, bool skip) => ProgramAnalysis.Create(analysis.Text, analysis.Setup, machine, AnalysisOptions.Default with { Skip = skip });

        var machine = analysis.Machine;
        ComesOutAsAlone(analysis.Runs.OtherSkip!, Alone(machine, skip: true).Main, onlyHoles: false);
        ComesOutAsAlone(analysis.Runs.OtherPositions!, Alone(ReadingSwitch.Positions(machine), skip: false).Main, onlyHoles: true);
        ComesOutAsAlone(analysis.Runs.OtherReturns!, Alone(ReadingSwitch.Returns(machine), skip: false).Main, onlyHoles: true);
    }

    [Theory]
    [InlineData(600, 200, "", false)]
    [InlineData(600, 200, "G41 D1 ", false)]
    [InlineData(600, 3, "", false)]
    [InlineData(6_000, 1_000, "", true)]
    [InlineData(6_000, 1_000, "G41 D1 ", true)]
    [InlineData(6_000, 3, "", true)]
    public void Beside_another_it_comes_out_as_alone(int blocks, int each, string compensated, bool withTwoHands)
    {
        var text = SourceText.From(Program(blocks, each, compensated));
        var analysis = ProgramAnalysis.Create(text, WithTool, MachineProfile.IsoMill, AnalysisOptions.Default with { WithTwoHands = withTwoHands });
        AllComeOutAsAlone(analysis);
        foreach (var (word, by) in new[] { ("G90 ", "G91 "), ("S900", "S950"), ("/G0", "G0"), ("G80", ""), ("G99", "G98") })
        {
            var at = text.ToString().IndexOf(word, StringComparison.Ordinal);
            AllComeOutAsAlone(analysis.WithText(text.WithChange(at, at + word.Length, Encoding.ASCII.GetBytes(by))));
        }
    }

    /// <summary>The work is that of one run and of the chunks that hold holes or a mark of skipped blocks, not of four runs.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void No_more_is_run_than_the_reading_touches(bool withTwoHands)
    {
        const int Blocks = 20_000;
        var analysis = ProgramAnalysis.Create(SourceText.From(Program(Blocks, 5_000)), WithTool, MachineProfile.IsoMill, AnalysisOptions.Default with { WithTwoHands = withTwoHands });
        var longest = analysis.Text.Chunks.ToArray().Max(chunk => chunk.LineCount);
        Assert.Equal(4 * 2, analysis.Main.Results.ToArray().Sum(part => part.Holes.Length));
        Assert.InRange(analysis.BlocksRun - analysis.Main.BlocksRun, 3, 3 * 4 * 2 * longest);
    }
}
