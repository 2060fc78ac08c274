using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>A G40 that was forgotten is one slip, however many codes follow that radius compensation forbids (NISTIR 6556 §3.5.10, §3.5.12, §3.5.13 and §3.5.16).</summary>
public sealed class CompensationLeftOnTests
{
    const string Start = "G21 G90 G17 G54\nT1 M6\nM3 S500\nG43 H1 Z5\nG0 X0 Y0\nG1 Z-1 F100\nG41 D1 X20\nY40\n";

    const string Later = "G28 Z5\nG98 G81 X10 Y10 Z-5 R2 F100\nG80\nG41 D1 G1 X20\n";

    static List<Finding> Forbidden(string blocks) =>
        [.. Check.Analyse(Start + blocks + "M5\nM30").Findings.Where(finding => finding.Name == "not-allowed-here")];

    [Fact]
    public void It_is_told_once_with_what_may_come_of_it()
    {
        var found = Assert.Single(Forbidden(Later));
        Assert.Equal(8, found.Line);
        Assert.Equal(
            "G28 is not allowed while radius compensation is on: the control stops with an alarm. 2 more findings may come of radius compensation and are not told by themselves: not-allowed-here (2), the last in line 12.",
            found.Message);
    }

    [Fact]
    public void Each_setting_is_told_by_itself() =>
        Assert.Equal([8, 11], Forbidden("G28 Z5\nG40 G1 X0\nG41 D1 X20\nG28 Z5\nG28 X0\nG40 G1 X0\n").Select(finding => finding.Line));

    /// <summary>A contour that is called for each level lacks its G40 each time, and what follows the last call meets it too.</summary>
    [Fact]
    public void One_that_a_called_contour_lacks_is_told_once()
    {
        var found = Check.Analyse("O1\nG21 G90 G17 G54\nT1 M6\nM3 S500\nG43 H1 Z5\nG0 X0 Y0\nG1 Z-1 F100\nM98 P2\nZ-2\nM98 P2\nG53 G0 Z0\nM5\nM30\nO2\nG41 D1 G1 X20\nY40\nX0\nY0\nM99")
            .Findings.Where(finding => finding.Name == "not-allowed-here");
        Assert.EndsWith(
            "One more finding may come of radius compensation and is not told by itself: not-allowed-here in line 11.", Assert.Single(found).Message, StringComparison.Ordinal);
    }

    /// <summary>A corner without room is a matter of its own.</summary>
    [Fact]
    public void A_corner_without_room_takes_none_with_it()
    {
        var setup = """{ "tools": [ { "number": 1, "kind": "end-mill", "diameter": 10, "radiusOffset": 1 } ] }""";
        var found = Programs.Of("compensation-corner", Start + "X18\nY0\nG28 Z5\nG40 G1 X0\nM5\nM30", setup);
        Assert.NotEmpty(found);
        Assert.All(found, finding => Assert.DoesNotContain("not-allowed-here", finding.Message, StringComparison.Ordinal));
    }
}
