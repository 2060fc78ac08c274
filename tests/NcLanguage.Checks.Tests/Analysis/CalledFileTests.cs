using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Analysis;

/// <summary>A file that is there to be called begins with whatever the caller has set: what is missing from it is not its fault (common practice).</summary>
public sealed class CalledFileTests
{
    static string[] Names(string text) =>
        [.. ProgramAnalysis.Create(SourceText.From(text), Setup.None, MachineProfile.IsoMill with { IsChosen = true }).Findings.Select(finding => finding.Name).Distinct()];

    [Theory]
    [InlineData("O2000\nG91 G1 X5 F200\nG90\nM99\n")]
    [InlineData("O2000\n#3=0\nWHILE [#3 LT #1] DO 1\nG91 G1 X5 F200\n#3=#3+1\nEND 1\nG90 M99\n")]
    public void What_the_caller_sets_is_not_missed(string text) => Assert.Empty(Names(text));

    [Theory]
    [InlineData("O2000\nG1 X5 F200\nM30\n")]
    [InlineData("O2000\nT1 M6\nG1 X5 F200\nM99\n")]
    public void A_program_of_its_own_is_held_to_it(string text) => Assert.Contains("units-not-set", Names(text));

    /// <summary>An edit that makes a program one that is called, and back, gives what a fresh look gives.</summary>
    [Fact]
    public void Turning_into_one_that_is_called()
    {
        const string Text = "O2000\nG1 X5 F200\nG1 X6\nM30\n";
        var analysis = ProgramAnalysis.Create(SourceText.From(Text), Setup.None, MachineProfile.IsoMill);
        var at = Text.IndexOf("M30", StringComparison.Ordinal) + 1;
        var called = analysis.WithText(analysis.Text.WithChange(at, at + 2, "99"u8));
        Assert.Equal(Names("O2000\nG1 X5 F200\nG1 X6\nM99\n"), called.Findings.Select(finding => finding.Name).Distinct());
        Assert.Equal(
            analysis.Findings.Select(finding => finding.Message), called.WithText(called.Text.WithChange(at, at + 2, "30"u8)).Findings.Select(finding => finding.Message));
    }
}
