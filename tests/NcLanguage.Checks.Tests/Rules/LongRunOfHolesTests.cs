using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Rules;

/// <summary>What is told once for a run of holes is so however long the run is: a text is held in chunks of lines, and they are nobody's business.</summary>
public sealed class LongRunOfHolesTests
{
    static readonly Setup Plate = new()
    {
        IsPresent = true,
        Stock = new(new(0, 0, -20), new(400, 100, 0)),
        Tools = [new Tool { Number = 1, Kind = ToolKind.Drill, Diameter = 3, PointAngle = 118, Length = 100, LengthOffset = 1 }],
    };

    [Theory]
    [InlineData("r-inside-stock", "G99 G81 X1 Y10 R-3 Z-5 F100", "X2 Y10 R2", "X2 Y60 R-3")]
    [InlineData("hole-above-stock", "G99 G81 X1 Y10 R9 Z1 F100", "X2 Y10 Z-5", "X2 Y60 Z1")]
    public void A_level_is_told_once_for_a_run(string name, string first, string between, string again)
    {
        foreach (var holes in new[] { 1, 60, 100, 150, 300, 700 })
        {
            var middle = string.Concat(Enumerable.Range(6, holes).Select(x => FormattableString.Invariant($"X{x * 0.5}\n")));
            foreach (var (isOtherRun, told) in new[] { (false, 1), (true, 2) })
            {
                var text = $"G21 G90 G17 G54\nT1 M6\nS900 M3\nG43 H1 G0 Z40\n{first}\n{between}\n{middle}{(isOtherRun ? "G80\nG0 Z40\nG99 G81 R2 Z-5 X5 Y5\n" : "")}{again}\nX9 Y60\nG80\nG0 Z40\nM30\n";
                var analysis = ProgramAnalysis.Create(SourceText.From(text), Plate, MachineProfile.IsoMill with { IsChosen = true });
                Assert.Equal((holes, isOtherRun, told), (holes, isOtherRun, analysis.Findings.Count(finding => finding.Name == name)));
            }
        }
    }
}
