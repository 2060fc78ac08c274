using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>Where holders and shanks meet what stands of the stock. Expected outcomes are closed-form: where the underside of holder or shank is, and what the cuts before have left.</summary>
public sealed class HolderMeetsStockTests
{
    // Tool 5 stands 30 out of a holder of 40, tool 6 has a shank of 10 from 8 above its tip, tool 7 is a wide mill that makes room for both, tool 8 has no length.
    const string Block = """
        { "stock": { "min": [0, 0, -80], "max": [100, 60, 0] },
          "tools": [ { "number": 5, "kind": "end-mill", "diameter": 10, "length": 80, "holderDiameter": 40, "holderGauge": 50 },
                     { "number": 6, "kind": "end-mill", "diameter": 4, "fluteLength": 8, "shankDiameter": 10, "length": 60, "holderDiameter": 30, "holderGauge": 30 },
                     { "number": 7, "kind": "end-mill", "diameter": 60, "length": 150, "holderDiameter": 60, "holderGauge": 50 },
                     { "number": 8, "kind": "end-mill", "diameter": 10, "holderDiameter": 40, "holderGauge": 50 },
                     { "number": 9, "kind": "centre-drill", "diameter": 2, "fluteLength": 3, "shankDiameter": 6, "length": 50 },
                     { "number": 10, "kind": "end-mill" } ] }
        """;
    const string Start = "G21 G90 G17 G54\nT5 M6\nG0 X-40 Y30 Z50\n";

    static List<Finding> Of(string moves, string setup = Block) => Programs.Of("holder-meets-stock", Start + moves, setup);

    [Theory]
    [InlineData("Z-31\nG1 X50 F300\nG0 Z50\nM30", new[] { 5 })] // the slot of 10 has no room for the holder of 40, 1 below the top
    [InlineData("Z-30\nG1 X50 F300\nG0 Z50\nM30", new int[0])] // just at the top
    [InlineData("G0 X-10\nZ-31\nG0 Z50\nM30", new[] { 5 })] // the rapid down beside the stock: the holder reaches 10 over its edge
    [InlineData("G0 X-21\nZ-31\nG0 Z50\nM30", new int[0])] // and here it passes
    [InlineData("Y-21\nZ-40\nG1 X140 F300\nG0 Z50\nM30", new int[0])] // along the side, 1 mm off
    [InlineData("Y-21\nZ-40\nG1 X140 Y-15 F300\nG0 Z50\nM30", new[] { 6 })] // askew, at the end 5 over it
    [InlineData("Z50\nT7 M6\nG0 X-40 Y30\nZ-15\nG1 X140 F300\nG0 Z50\nT5 M6\nG0 X-40 Y30\nZ-40\nG1 X140 F300\nG0 Z50\nM30", new int[0])] // in a channel 60 wide and 15 deep
    [InlineData("Z50\nT7 M6\nG0 X-40 Y30\nZ-5\nG1 X140 F300\nG0 Z50\nT5 M6\nG0 X-40 Y30\nZ-40\nG1 X140 F300\nG0 Z50\nM30", new[] { 13 })] // 5 deep only
    [InlineData("G0 X50\nG1 Z-20 F100\nG2 X50 Y30 Z-32 I-10 J0\nG0 Z50\nM30", new[] { 6 })] // a helix
    [InlineData("G0 X50\nG1 Z-20 F100\nG2 X50 Y30 I-10 J0\nG0 Z50\nM30", new int[0])]
    [InlineData("G0 X50\nG1 Z-31 F100\nG2 X50 Y30 I-10 J0\nG1 Z-35\nG0 Z50\nM30", new[] { 5 })] // each tool once
    [InlineData("Z50\nT6 M6\nG0 X-40 Y30\nZ-10\nG1 X50 F300\nG0 Z50\nM30", new int[0])] // deeper-than-flutes has told it
    [InlineData("Z50\nT6 M6\nG0 X-40 Y-3\nZ-10\nG1 X140 F300\nG0 Z50\nM30", new[] { 8 })] // the shank along the side
    [InlineData("Z50\nT6 M6\nG0 X-40 Y-6\nZ-10\nG1 X140 F300\nG0 Z50\nM30", new int[0])]
    [InlineData("Z50\nT8 M6\nG0 X-40 Y30\nZ-40\nG1 X50 F300\nG0 Z50\nM30", new int[0])] // nobody knows where its holder begins
    [InlineData("Z50\nT9 M6\nG0 X50 Y30\nG1 Z-3.5 F300\nG0 Z50\nM30", new int[0])] // a centre drill cuts with its body
    [InlineData("Z50\nT10 M6\nG0 X50 Y30\nG1 Z-3.5 F300\nG0 Z50\nT5 M6\nG0 X-40 Y30\nZ-40\nG1 X50 F300\nG0 Z50\nM30", new int[0])] // what a tool of unknown size left is not known
    public void A_holder_or_shank_is_told_where_it_meets_what_stands(string moves, int[] lines) => Assert.Equal(lines, Of(moves).Select(finding => finding.Line + 1));

    [Fact]
    public void It_says_how_deep_at_least_and_where_it_begins()
    {
        Assert.Equal("The holder of tool 5 meets stock that still stands, at least 1.5 mm deep on this cut: it begins 30 mm above the tip, and the tip goes to 31.56 mm below the stock's top.",
            Assert.Single(Of("Z-31.56\nG1 X50 F300\nG0 Z50\nM30")).Message);
        Assert.StartsWith("The shank of tool 6 meets stock that still stands, at least 2 mm deep on this cut: it begins 8 mm above the tip",
            Assert.Single(Of("Z50\nT6 M6\nG0 X-40 Y-3\nZ-10\nG1 X140 F300\nG0 Z50\nM30")).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Z-31\nG1 X50 F300\nG0 Z50\nM30", """{ "tools": [ { "number": 5, "kind": "end-mill", "diameter": 10, "length": 80, "holderDiameter": 40, "holderGauge": 50 } ] }""")] // no stock
    [InlineData("M98 P7\nG1 X50 F300\nG0 Z50\nM30", Block)]
    public void Where_what_it_needs_is_not_known_it_is_silent(string moves, string setup) => Assert.Empty(Of(moves, setup));

    /// <summary>The holder begins 80 − 45 = 35 mm above the tip: on a helix that goes down from Z-34 to Z-37 it comes 2 mm below the stock's top, and not where it meets it first.</summary>
    [Fact]
    public void A_helix_is_told_by_its_end()
    {
        const string setup = """
            { "stock": { "min": [0, 0, -60], "max": [100, 60, 0] },
              "tools": [ { "number": 1, "kind": "end-mill", "diameter": 10, "length": 80, "holderDiameter": 40, "holderGauge": 45 } ] }
            """;
        var finding = Assert.Single(Programs.Of("holder-meets-stock", "G21 G90 G17 G54\nT1 M6\nG0 X50 Y30 Z2\nG1 Z0 F300\nG3 I-10 Z-12\nI-10 Z-24\nI-10 Z-34\nI-10 Z-37\nI-10\nG1 X40\nG0 Z50\nM30", setup));
        Assert.Equal(8, finding.Line + 1);
        Assert.Equal("The holder of tool 1 meets stock that still stands, at least 2 mm deep on this cut: it begins 35 mm above the tip, and the tip goes to 37 mm below the stock's top.", finding.Message);
    }
}
