using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Tests.Program;

/// <summary>What is found in the holes of a loop is told once at its block, however often the block runs. The programs are our own.</summary>
public sealed class OnceAPlaceTests
{
    const string Start = "G21 G90 G17 G54 G94 G40 G49\nT4 M6\nS1200 M3\nG43 H4 G0 X0 Y0 Z50 M8\n";
    const string End = "G0 Z50 M9\nM5\nM30\n";

    // NISTIR 6556 §3.5.16: X and Y follow G90; controls that take them as distances drill elsewhere (common practice).
    [Fact]
    public void Holes_of_a_loop_are_told_once()
    {
        const string loop = "#1=0\nWHILE [#1 LT 200] DO 1\nG99 G81 X[#1] Y10 Z-5 R2 F100\nX[#1+5]\nG80\n#1=#1+1\nEND 1\n";
        var found = Check.Of("positions-read-differently", Start + loop + End, machine: MachineProfile.IsoMill);
        Assert.Equal(found.Count, found.Select(finding => finding.Line).Distinct().Count());
        Assert.Contains(found, finding => finding.Line == 6 && finding.Message.EndsWith(" (199 times in the 200 runs of this block.)", StringComparison.Ordinal));
    }

    // A bottom above the material drills nothing (common practice).
    [Fact]
    public void Holes_above_the_stock_are_told_once()
    {
        const string plate = """
            { "stock": { "min": [0, 0, -20], "max": [200, 60, 0] }, "workOffsets": { "G54": [0, 0, 0] }, "tools": [ { "number": 4, "kind": "drill", "diameter": 6 } ] }
            """;
        const string loop = "#1=1\nN50 G99 G81 X[#1*10] Y10 Z1 R2 F100\nG80\n#1=#1+1\nIF [#1 LE 12] GOTO 50\n";
        var finding = Assert.Single(Programs.Of("hole-above-stock", Start + loop + End, plate));
        Assert.Equal(5, finding.Line);
        Assert.EndsWith(" (12 times in the 12 runs of this block.)", finding.Message, StringComparison.Ordinal);
    }

    // NISTIR 6556 §3.5.16: in absolute mode the holes of every pass lie in the same places.
    [Fact]
    public void A_hole_drilled_at_every_pass_is_told_once()
    {
        const string loop = "G99 G81 X10 Y10 Z-5 R2 F100\n#1=0\nWHILE [#1 LT 6] DO 1\nX20\nX30\n#1=#1+1\nEND 1\nG80\n";
        var found = Check.Of("hole-repeated", Start + loop + End);
        Assert.Equal([7, 8], found.Select(finding => finding.Line));
        Assert.All(found, finding => Assert.EndsWith(" (5 times in the 6 runs of this block.)", finding.Message, StringComparison.Ordinal));
    }
}
