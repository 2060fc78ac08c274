using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Program;

/// <summary>The block that a finding points back to is the one that acted before the run it was found at. The programs are our own.</summary>
public sealed class RelatedRunTests
{
    // NISTIR 6556 §3.5.10: it is an error if cutter radius compensation is already on when it is turned on; what turned it on is the call before, not the G40 at the head.
    [Theory]
    [InlineData("M98 P100\nM98 P100\nG40 G0 Z50\nM5\nM30\nO100\nG41 D1 G1 X5 Y5 F300\nY20\nM99\n", 12)]
    [InlineData("M98 P100\nG40 G1 X0\nM98 P100\nM98 P100\nG40 G0 Z50\nM5\nM30\nO100\nG41 D1 G1 X5 Y5 F300\nY20\nM99\n", 14)]
    public void Compensation_left_on_by_the_call_before_is_shown_there(string rest, int setter)
    {
        var text = SourceText.From("G21 G90 G17 G40 G49 G80 G54 G94\nT1 M6\nS3000 M3\nG43 H1 G0 X0 Y0 Z50\nG0 Z-2\n" + rest);
        var analysis = ProgramAnalysis.Create(text, Setup.None, MachineProfile.IsoMill);
        var finding = Assert.Single(analysis.Findings.ToArray(), finding => finding.Name == "not-allowed-here");
        Assert.Equal(setter - 1, finding.Line);
        Assert.Equal(setter - 1, Assert.Single(analysis.Related(finding)).Line);
    }
}
