using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>A plane that was left on is one slip, however many arcs follow it (NISTIR 6556 §3.5.3.2: an arc lies in the plane in force).</summary>
public sealed class PlaneLeftOnTests
{
    const string Arcs = "G3 I-7.5 Z-3\nI-7.5 Z-5\nG3 X0 Y0 I-5 J0\nG3 X-5 Y5 I-5 J0\nG1 X0 Y0";

    static List<Finding> OfArcs(string blocks, string readings = "") =>
        [.. Check.Analyse("G21 G90 G17 G54\nT1 M6\nM3 S500\nG43 H1 Z5\nG0 X0 Y0\nG1 Z-1 F100\n" + blocks + "\nG0 Z50\nM5\nM30", readings)
            .Findings.Where(finding => finding.Name is "arc-radius-mismatch" or "arc-plane" or "not-allowed-here" or "word-without-effect")];

    [Fact]
    public void It_is_told_once_with_what_may_come_of_it()
    {
        var found = Assert.Single(OfArcs("G18\n" + Arcs));
        Assert.Equal((7, Severity.Error), (found.Line, found.Severity));
        Assert.EndsWith(
            " Under G17 it would fit; G18 is in force. 3 more findings may come of the plane and are not told by themselves: arc-radius-mismatch, arc-plane (2), the last in line 11.",
            found.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void One_other_is_told_with_its_line() =>
        Assert.EndsWith(
            " One more finding may come of the plane and is not told by itself: arc-radius-mismatch in line 9.",
            Assert.Single(OfArcs("G18\nG3 I-7.5 Z-3\nI-7.5 Z-5")).Message, StringComparison.Ordinal);

    /// <summary>The first stands for the worst of them.</summary>
    [Fact]
    public void It_is_as_bad_as_the_worst_of_them()
    {
        var found = Assert.Single(OfArcs("G18\nG3 I-5 J0\nG3 X-5 Y5 I-5 J0"));
        Assert.Equal(("arc-plane", 7, Severity.Error), (found.Name, found.Line, found.Severity));
    }

    [Fact]
    public void Each_setting_is_told_by_itself() =>
        Assert.Equal([7, 13, 19], OfArcs($"G18\n{Arcs}\nG18\n{Arcs}\nG19\nG3 J-5 Z-3\nG17\n{Arcs}").Select(finding => finding.Line));

    /// <summary>Radius compensation works in the XY plane (NISTIR 6556 §3.5.10).</summary>
    [Fact]
    public void Compensation_in_the_wrong_plane_comes_of_it_too() =>
        Assert.Contains("not-allowed-here", Assert.Single(OfArcs("G18\nG3 I-7.5 Z-3\nG1 G41 D1 X20 Y20")).Message, StringComparison.Ordinal);

    /// <summary>An arc that fits no plane is another slip.</summary>
    [Fact]
    public void Another_slip_under_it_is_told_by_itself() =>
        Assert.Equal([7, 8], OfArcs("G18\nG3 I-7.5 Z-3\nG3 X20 I6 K9 Z-3").Select(finding => finding.Line));

    [Fact]
    public void In_a_called_program_it_is_told_once_at_its_first_place()
    {
        var found = Check.Analyse("O1\nG21 G90 G17 G54\nT1 M6\nM3 S500\nG43 H1 Z5\nG0 X0 Y0\nG1 Z-1 F100\nG18\nM98 P2\nM98 P2\nG17\nG0 Z50\nM5\nM30\nO2\n" + Arcs + "\nM99")
            .Findings.Where(finding => finding.Name is "arc-radius-mismatch" or "arc-plane");
        Assert.Equal(15, Assert.Single(found).Line);
    }

    [Fact]
    public void A_silenced_one_takes_no_others_with_it() =>
        Assert.Equal([9], OfArcs("G18\nG3 I-7.5 Z-3 (nc-allow arc-radius-mismatch: tried)\nG1 X0\nG3 I-7.5 Z-5").Select(finding => finding.Line));

    /// <summary>Once the plane is set at the first arc, the others fit too.</summary>
    [Theory]
    [InlineData("arc-radius-mismatch", "G18\n" + Arcs, "G17 G3 I-7.5 Z-3\n")]
    [InlineData("arc-plane", "G19\nG3 X0 Y0 I-5 J0\n" + Arcs, "G17 G3 X0 Y0 I-5 J0\n")]
    [InlineData("arc-plane", "G2 X10 Z-1 I5 K0", "G18 G2 X10 Z-1 I5 K0\n")]
    public void The_plane_that_fits_can_be_set_there(string rule, string blocks, string written)
    {
        var program = "G21 G90 G17 G54\nT1 M6\nM3 S500\nG43 H1 Z5\nG0 X0 Y0\nG1 Z-1 F100\n" + blocks + "\nG0 Z50\nM5\nM30";
        var mended = Check.Fixed(rule, program);
        Assert.Contains(written, mended, StringComparison.Ordinal);
        Assert.DoesNotContain(Check.Analyse(mended).Findings, finding => finding.Name is "arc-radius-mismatch" or "arc-plane");
    }
}
