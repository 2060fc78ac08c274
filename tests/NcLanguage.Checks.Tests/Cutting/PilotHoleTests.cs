using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cutting;

/// <summary>A long drill is led into its pilot hole slowly turning and fed fast there, and slowed down again before it is drawn out: it cuts nothing meanwhile (common practice of deep drilling). Cutting
/// speeds by v = π·D·n: 6 mm at S300 are 5.7 m/min, less than half of the 15.2 of HSS in steel (50 ft/min, U.S. Navy training course).</summary>
public sealed class PilotHoleTests
{
    const string Setup = """
        { "material": "steel", "tools": [ { "number": 1, "kind": "drill", "diameter": 6, "material": "HSS", "length": 90 }, { "number": 2, "kind": "drill", "diameter": 6, "material": "HSS", "length": 230 },
          { "number": 3, "kind": "drill", "diameter": 5, "material": "HSS", "length": 90 } ] }
        """;

    const string Pilot = "G21 G17 G90 G94 G54\nT1 M6\nG0 G43 H1 X20 Y20 Z20 S1400 M3\nG98 G81 X20 Y20 Z-15 R2 F120\nG80\nG0 Z100\nT2 M6\n";
    const string Deep = "G0 G43 H2 X20 Y20 Z20 S300 M3\nG1 Z-14 F400\nS1400\nG98 G83 X20 Y20 Z-120 R-14 Q3 F120\nG80\nS300\nG0 Z20\nM5\nM30";

    static int[] Lines(string program) =>
        [.. Programs.Analyse(program, Setup).Findings.Where(finding => finding.Name is "cutting-speed" or "feed-per-tooth").Select(finding => finding.Line + 1)];

    [Fact]
    public void On_its_way_into_the_pilot_and_out_nothing_is_told() => Assert.Empty(Lines(Pilot + Deep));

    [Fact] // One stroke by G1, as drills with coolant through them are fed.
    public void A_stroke_without_a_cycle_is_a_hole_too() => Assert.Empty(Lines(Pilot + Deep.Replace("G98 G83 X20 Y20 Z-120 R-14 Q3 F120\nG80\nS300\nG0 Z20", "G1 Z-120 F120\nS300\nG1 Z20 F1500", StringComparison.Ordinal)));

    [Fact]
    public void A_bore_that_the_stock_has_is_a_pilot_too()
    {
        var setup = Setup.Replace("\"tools\"", "\"stock\": { \"min\": [0, 0, -150], \"max\": [60, 60, 0], \"hollows\": [ { \"center\": [20, 20], \"diameter\": 6.02, \"bottom\": -15 } ] }, \"tools\"", StringComparison.Ordinal);
        var found = Programs.Analyse("G21 G17 G90 G94 G54\nT2 M6\n" + Deep, setup).Findings.Where(finding => finding.Name is "cutting-speed" or "feed-per-tooth");
        Assert.Empty(found);
    }

    [Theory]
    [InlineData("G1 Z-14 F400", "G1 Z-18 F400", new[] { 8, 9 })] // below the pilot's bottom
    [InlineData("X20 Y20 Z20 S300", "X30 Y20 Z20 S300", new[] { 8, 9 })] // beside it
    [InlineData("\nS1400\nG98", "\nG98", new[] { 8 })] // it stays slow
    [InlineData("\nS300\nG0 Z20", "\nS300\nG98 G83 X40 Y20 Z-20 R2 Q3\nG80\nG0 Z20", new[] { 13 })] // drilled at it
    public void Where_it_cuts_it_is_told(string was, string instead, int[] lines) => Assert.Equal(lines, Lines(Pilot + Deep.Replace(was, instead, StringComparison.Ordinal)).Distinct().Order());

    [Fact] // 5 mm wide, the drill of 6 mm cuts on its way.
    public void A_pilot_that_is_narrower_is_none() => Assert.Equal([8, 9], Lines(Pilot.Replace("T1 M6", "T3 M6", StringComparison.Ordinal).Replace("H1", "H3", StringComparison.Ordinal) + Deep));
}
