using System.Text;
using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>A fault that every hole of a run has is told once, with how many have it. Counts are of the grids written here.</summary>
public sealed class HoleGridTests
{
    const string Setup = """
        { "stock": { "min": [0, 0, -15], "max": [200, 200, 0] },
          "obstacles": [ { "name": "rail", "min": [-40, -40, 0], "max": [300, -10, 50] } ],
          "supports": [ { "name": "plate", "min": [0, 0, -45], "max": [200, 200, -15] } ],
          "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118, "fluteLength": 60, "length": 140, "holderDiameter": 40, "holderGauge": 80 } ] }
        """;

    /// <summary>Ten rows of ten holes, 15 mm apart, the first row at Y5.</summary>
    static string Grid(string depth, int rows = 10)
    {
        var text = new StringBuilder("G21 G90 G17 G54\nT3 M6\nS1500 M3\nG0 X10 Y5 Z60\n");
        for (var row = 0; row < rows; row++)
            for (var column = 0; column < 10; column++)
                text.Append(row + column == 0 ? "G98 G81 R2 F150 Z" + depth : "").Append($" X{10 + column * 15} Y{5 + row * 15}\n");
        return text.Append("G80\nG0 Z60\nM30\n").ToString();
    }

    [Fact]
    public void A_hundred_holes_into_a_support_are_one_finding_at_the_first()
    {
        var finding = Assert.Single(Programs.Of("hits-support", Grid("-20"), Setup));
        Assert.Equal(5, finding.Line + 1);
        Assert.EndsWith("The same goes for 99 more holes of this run.", finding.Message, StringComparison.Ordinal);
        Assert.Empty(Programs.Of("hits-support", Grid("-15"), Setup));
    }

    // The holder begins 60 above the tip and reaches 20 beside the axis: at Y5 from Y-15 on, 5 into the rail whose top is Z50; it is
    // below that when the tip is below Z-10. The second row, at Y20, clears.
    [Fact]
    public void The_holder_at_a_row_of_holes_is_one_finding()
    {
        var finding = Assert.Single(Programs.Of("holder-hits", Grid("-12"), Setup));
        Assert.Equal(5, finding.Line + 1);
        Assert.EndsWith("The same goes for 9 more holes of this run.", finding.Message, StringComparison.Ordinal);
        Assert.Empty(Programs.Of("holder-hits", Grid("-9.9"), Setup));
    }

    // The same rail as a support: nine tools of ten in the row are told with the first.
    [Fact]
    public void The_holder_at_a_support_is_one_finding_for_a_row_of_holes()
    {
        var finding = Assert.Single(Programs.Of("hits-support", Grid("-12"), Setup.Replace("\"obstacles\": [", "\"supports\": [", StringComparison.Ordinal).Replace("\"supports\": [ { \"name\": \"plate\"", "\"obstacles\": [ { \"name\": \"plate\"", StringComparison.Ordinal)));
        Assert.Contains("deep into the support rail with the holder", finding.Message, StringComparison.Ordinal);
        Assert.EndsWith("The same goes for 9 more holes of this run.", finding.Message, StringComparison.Ordinal);
    }

    [Fact] // The cycle ends between them: another cause, another finding.
    public void Each_run_of_holes_has_its_own() =>
        Assert.Equal([5, 8], Programs.Lines("hits-support", "G21 G90 G17 G54\nT3 M6\nS1500 M3\nG0 X10 Y20 Z60\nG98 G81 X10 Y20 Z-20 R2 F150\nX30\nG80\nG98 G81 X10 Y50 Z-20 R2 F150\nX30\nG80\nM30", Setup));

    [Fact]
    public void Repeats_of_one_block_count()
    {
        var finding = Assert.Single(Programs.Of("hits-support", "G21 G90 G17 G54\nT3 M6\nS1500 M3\nG0 X10 Y20 Z60\nG98 G81 X10 Y20 Z-20 R2 F150\nG91 X15 L4\nG90 G80\nM30", Setup));
        Assert.EndsWith("The same goes for 4 more holes of this run.", finding.Message, StringComparison.Ordinal);
    }

    const string TwoSupports = """
        { "stock": { "min": [0, 0, -20], "max": [120, 80, 0] }, "obstacles": [],
          "supports": [ { "name": "front", "min": [0, 5, -50], "max": [120, 10, -20] }, { "name": "rear", "min": [0, 70, -50], "max": [120, 75, -25] } ],
          "tools": [ { "number": 3, "kind": "drill", "diameter": 6.8, "pointAngle": 118, "fluteLength": 60, "length": 140 } ] }
        """;

    const string Start = "G21 G90 G17 G54\nT3 M6\nS1500 M3\nG0 X10 Y8 Z60\n";

    [Fact] // 1 and 25 mm deep: another support, another fault.
    public void A_hole_into_another_support_is_told_by_itself()
    {
        var findings = Programs.Of("hits-support", Start + "G98 G81 X10 Y8 Z-21 R2 F150\nX20 Y72 Z-50\nX30\nG80\nM30", TwoSupports);
        Assert.Equal([(5, false), (6, true)], findings.Select(finding => (finding.Line + 1, finding.Message.EndsWith("1 more hole of this run.", StringComparison.Ordinal))));
        Assert.Contains("25 mm into the support rear", findings[1].Message, StringComparison.Ordinal);
    }

    [Fact] // 1, 1, 20, 1 and 20 mm deep in one support: each depth once, with its own number.
    public void A_much_deeper_hole_is_told_by_itself()
    {
        var findings = Programs.Of("hits-support", Start + "G98 G81 X10 Y8 Z-21 R2 F150\nX20\nX30 Z-40\nX40 Z-21\nX50 Z-40\nG80\nM30", TwoSupports);
        Assert.Equal([5, 7], findings.Select(finding => finding.Line + 1));
        Assert.Contains(", 1 mm into", findings[0].Message, StringComparison.Ordinal);
        Assert.EndsWith("The same goes for 2 more holes of this run.", findings[0].Message, StringComparison.Ordinal);
        Assert.Contains(", 20 mm into", findings[1].Message, StringComparison.Ordinal);
        Assert.EndsWith("The same goes for 1 more hole of this run.", findings[1].Message, StringComparison.Ordinal);
    }

    [Fact] // The front one is made to reach under all of the plate, so that at Y72 both lie below.
    public void A_block_whose_holes_meet_two_supports_tells_both()
    {
        var findings = Programs.Of("hits-support", Start + "G91 G98 G81 X10 Y64 L2 Z-90 R-58 F150\nG90 G80\nM30", TwoSupports.Replace("[120, 10, -20]", "[120, 80, -20]", StringComparison.Ordinal));
        Assert.Equal(2, findings.Count);
        Assert.All(findings, finding => Assert.Equal(5, finding.Line + 1));
        Assert.Equal(["68 mm into the support front", "63 mm into the support rear"], findings.Select(finding => finding.Message.Split(", ")[1]).OrderDescending(StringComparer.Ordinal));
    }

    [Fact] // The holder, 40 wide and 60 above the tip, meets the rail (top Z50) with the tip below Z-10: 1 deep at Z-11, and at Z-40 as far as the sides go, 5.
    public void A_holder_that_goes_much_deeper_is_told_by_itself()
    {
        var findings = Programs.Of("holder-hits", "G21 G90 G17 G54\nT3 M6\nS1500 M3\nG0 X10 Y5 Z60\nG98 G81 X10 Y5 Z-11 R2 F150\nX30\nX50 Z-40\nX70\nG80\nM30", Setup);
        Assert.Equal([5, 7], findings.Select(finding => finding.Line + 1));
        Assert.All(findings, finding => Assert.EndsWith("The same goes for 1 more hole of this run.", finding.Message, StringComparison.Ordinal));
    }

    [Fact] // What is silenced at one hole is still told of the next.
    public void Silencing_one_hole_silences_no_other()
    {
        const string program = "G21 G90 G17 G54\nT3 M6\nS1500 M3\nG0 X10 Y20 Z60\nG98 G81 X10 Y20 Z-20 R2 F150 (nc-allow hits-support: a hole is there)\nX30\nX45\nX60\nG80\nM30";
        var finding = Assert.Single(Programs.Of("hits-support", program, Setup));
        Assert.Equal(7, finding.Line + 1);
        Assert.EndsWith("1 more hole of this run.", finding.Message, StringComparison.Ordinal);
    }

    [Fact] // The traverse at Z-20 goes into the plate, though no hole is that deep.
    public void A_traverse_into_a_support_is_told() =>
        Assert.Equal([6], Programs.Lines("hits-support", "G21 G90 G17 G54\nT3 M6\nS1500 M3\nG0 X-30 Y100 Z60\nZ-20\nG99 G81 X300 Z-25 R-22 F150\nG80\nM30", Setup));
}
