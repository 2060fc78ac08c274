using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>What a thread takes away counts as a cylinder of its pitch diameter, 9.026 for M10 (ISO 724, from memory).</summary>
public sealed class ThreadVolumeTests
{
    const string Setup = """
        { "stock": { "min": [0, 0, -20], "max": [60, 40, 0] },
          "tools": [ { "number": 1, "kind": "end-mill", "diameter": 8.5 }, { "number": 2, "kind": "tap", "diameter": 10, "pitch": 1.5 },
                     { "number": 3, "kind": "thread-mill", "diameter": 8, "pitch": 1.5 } ] }
        """;

    [Theory]
    [InlineData("T2 M6\nG84 X30 Y20 Z-15 R2 F750\nG80")]
    [InlineData("T3 M6\nG0 Z-15\nG1 X31\nG3 I-1\nG1 X30")]
    public void A_tapped_and_a_milled_thread_take_as_much(string thread)
    {
        var setup = SetupFile.Read("test.setup.json", Encoding.UTF8.GetBytes(Setup));
        Assert.Empty(setup.Problems);
        var text = "G21 G90 G17 G54 G94\nM3 S500\nT1 M6\nG0 X30 Y20 Z5\nG1 Z-18 F100\nG0 Z5\n" + thread + "\nG0 Z5\nM30\n";
        var run = ProgramRun.Create(SourceText.From(text), new Job(MachineProfile.IsoMill, setup.Setup), [], [], CancellationToken.None);
        var expected = Math.PI / 4 * (8.5 * 8.5 * 18 + (9.026 * 9.026 - 8.5 * 8.5) * 15);
        Assert.Equal(expected, StockLeft.Of(run)!.Removed, 0.01 * expected);
    }
}
