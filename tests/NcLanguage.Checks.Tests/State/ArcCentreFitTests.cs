using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Tests.State;

/// <summary>Arcs whose ends lie on no circle about the centre given (NISTIR 6556 §3.5.3.2), but about one that differs by a usual slip: a sign, or the place of the centre instead of distances
/// (common practice).</summary>
public sealed class ArcCentreFitTests
{
    static Finding Of(string blocks, string readings = "", string head = "G21 G90 G17 G54") =>
        Assert.Single(Check.Of("arc-radius-mismatch", head + "\nT1 M6\nM3 S500\nG43 H1 Z5\nG0 X10 Y20\nG1 Z-1 F100\n" + blocks + "\nM5\nM30", readings));

    [Theory]
    [InlineData("G2 X20 Y10 I0 J10", "With I0 J-10 it would fit.")]
    [InlineData("G2 X20 Y10 J10", "With J-10 it would fit.")]
    // Two centres are as far from both ends: about the other the arc goes the long way round.
    [InlineData("G2 X20 Y10 I-10", "With J-10 it would fit.")]
    [InlineData("G3 X20 Y10 I-10", "With I10 it would fit.")]
    [InlineData("G3 X20 Y10 J10", "With I10 it would fit.")]
    [InlineData("G2 X20 Y10 I-10 J0", "With I0 J-10 it would fit.")]
    // A part of a circle about X13 Y16, with I and J exchanged.
    [InlineData("G2 X17 Y13 I-4 J3", "With I3 J-4 it would fit.")]
    [InlineData("G3 X20 Y10 I-10 J0", "With I10 J0 it would fit.")]
    [InlineData("G2 X20 Y10 I10 J10", "Its words fit as the place of the centre, but are read as distances from the arc's start: those are I0 J-10.")]
    [InlineData("G2 X16 Y14 I16 J20", "Its words fit as the place of the centre, but are read as distances from the arc's start: those are I6 J0.")]
    // No slip, or more than one, makes it fit.
    [InlineData("G2 X20 Y10 I0 J-9", null)]
    [InlineData("G2 X20 Y10 I0 J[5+5]", null)]
    [InlineData("G2 X30 Y20 I12 J5", null)]
    public void The_words_that_fit_are_told(string block, string? hint)
    {
        var found = Of(block);
        if (hint is null)
            Assert.EndsWith(" mm.", found.Message, StringComparison.Ordinal);
        else
            Assert.EndsWith(hint, found.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void They_are_written_as_a_choice_each_in_its_place()
    {
        const string Program = "G20 G90 G17 G54\nT1 M6\nM3 S500\nG43 H1 Z1\nG0 X1 Y2\nG1 Z-.1 F10\nG2 X1.6 Y1.4 j2. I1.6\nM5\nM30";
        Assert.Contains("G2 X1.6 Y1.4 j0 I0.6\n", Check.Fixed("arc-radius-mismatch", Program), StringComparison.Ordinal);
        var analysis = Check.Analyse(Program);
        var finding = analysis.Findings.Single(found => found.Name == "arc-radius-mismatch");
        Assert.Equal(FixSafety.Choice, Assert.Single(analysis.FixesOf(finding)).Safety);
    }

    [Fact]
    public void The_other_letter_is_written_in_the_place_of_the_one_that_stands_there() => Assert.Contains(
        "G2 X20 Y10 J-10 F99\n", Check.Fixed("arc-radius-mismatch", "G21 G90 G17 G54\nT1 M6\nM3 S500\nG43 H1 Z5\nG0 X10 Y20\nG1 Z-1 F100\nG2 X20 Y10 I-10 F99\nM5\nM30"), StringComparison.Ordinal);

    [Fact]
    public void In_other_planes_they_are_those_of_the_plane() =>
        Assert.EndsWith("With I10 K0 it would fit.", Of("G18 G3 X20 Z9 I-10 K0").Message, StringComparison.Ordinal);

    /// <summary>Helices about the tool under a plane that was left on (NISTIR 6556 §3.5.3.2: the arc lies in the plane in force). With a K it was written for that plane.</summary>
    [Theory]
    [InlineData("G18", "G3 I-7.5 Z-5", true)]
    [InlineData("G18", "G3 X20 I5 Z-3", true)]
    [InlineData("G19", "G3 X10 J6 Z-3", true)]
    [InlineData("G18", "G3 X20 I5 K1 Z-3", false)]
    [InlineData("G18", "G3 X20 I6 Z-3", false)]
    [InlineData("G17", "G18 G3 X20 I5 Z-3", false)]
    public void An_arc_that_fits_in_XY_is_told_as_one_where_another_plane_is_on(string plane, string block, bool isTold)
    {
        var found = Of(block, head: $"G21 G90 {plane} G54");
        Assert.Equal(isTold, found.Message.EndsWith($" Under G17 it would fit; {plane} is in force.", StringComparison.Ordinal));
        Assert.Equal(isTold ? Slot.Plane : Slot.None, found.Concerns);
    }

    /// <summary>A radius that is none is no matter for compensation.</summary>
    [Fact]
    public void An_arc_that_is_none_is_told_once()
    {
        var setup = new NcLanguage.Machine.Setups.Tool { Number = 1, Diameter = 16, Length = 90 };
        var names = Check.Analyse("G21 G90 G17 G54\nT1 M6\nM3 S500\nG43 H1 Z5\nG0 X0 Y0\nG1 Z-1 F100\nG41 D1 X7.5 Y-20\nG3 X27.5 Y0 I7.5 J0\nG3 I-27.5\nG3 X7.5 Y20 I-20\nG40 G1 X0 Y0\nG0 Z50\nM5\nM30",
            setup: NcLanguage.Machine.Setups.Setup.None with { IsPresent = true, Tools = [setup] }).Findings.Where(finding => finding.Line == 7).Select(finding => finding.Name);
        Assert.Equal(["arc-radius-mismatch"], names);
    }
}
