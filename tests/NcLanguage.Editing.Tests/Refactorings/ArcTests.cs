using NcLanguage.Editing.Refactorings;
using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Refactorings;

/// <summary>Arcs by radius and by centre (NISTIR 6556 §3.5.3: a negative radius for more than half a turn; full circles by their centre only).</summary>
public sealed class ArcTests
{
    [Theory]
    [InlineData("G2 X10 Y10 I10 J0", "G2 X10 Y10 R10")]
    [InlineData("G3 X10 Y10 I0 J10", "G3 X10 Y10 R10")]
    [InlineData("G2 X10 Y10 I0 J10", "G2 X10 Y10 R-10")]
    [InlineData("G3 X20 Y0 I10", "G3 X20 Y0 R10")]
    [InlineData("G2 X20 I10 J0 Z-3", "G2 X20 R10 Z-3")]
    [InlineData("G2 X10. Y10. I10. J0.", "G2 X10. Y10. R10.")]
    public void By_radius(string centre, string radius)
    {
        Assert.Equal(Around(radius), Rewritten.At(1, "arcToRadius", Around(centre)));
    }

    [Theory]
    [InlineData("G2 X10 Y10 R10", "G2 X10 Y10 I10 J0")]
    [InlineData("G2 X10 Y10 R-10", "G2 X10 Y10 I0 J10")]
    [InlineData("G3 X20 Y0 R10", "G3 X20 Y0 I10 J0")]
    [InlineData("G91 G3 X20 Y0 R10", "G91 G3 X20 Y0 I10 J0")]
    public void By_centre(string radius, string centre) => Assert.Equal(Around(centre), Rewritten.At(1, "arcToCentre", Around(radius)));

    [Fact]
    public void The_planes_have_their_letters() => Assert.Equal(
        "G21 G90 G18 G0 X0 Y0 Z0\nG2 X10 Z10 I0 K10 F100\nM30\n", Rewritten.At(1, "arcToCentre", "G21 G90 G18 G0 X0 Y0 Z0\nG2 X10 Z10 R10 F100\nM30\n"));

    [Fact]
    public void Centres_may_be_coordinates() => Assert.Equal(
        "G21 G90 G0 X5 Y5 Z0\nG2 X15 Y15 I15 J5 F100\nM30\n",
        Rewritten.At(1, "arcToCentre", "G21 G90 G0 X5 Y5 Z0\nG2 X15 Y15 R10 F100\nM30\n", machine: Editor.Reading("arcCentre=absolute")));

    [Fact]
    public void A_full_circle_stays() => Assert.Equal(
        "A full circle begins where it ends: R cannot say where its centre lies.", Rewritten.Refused(1, "arcToRadius", Around("G2 I10 J0")));

    /// <summary>179.9°: the centre lies 0.017 mm beside the chord, and R would have to be right to nanometres.</summary>
    [Fact]
    public void Almost_half_a_turn_is_refused_or_said_closely_enough()
    {
        var program = Around("G2 X20 Y0.035 I10 J0.0175");
        var analysis = Editor.Analyse(program);
        var result = RefactoringList.Find("arcToRadius")!.Of(analysis, Lines.At(1), default);
        Assert.True(result.Refusal is not null || result.Edits.Count == 2);
    }

    [Fact]
    public void All_arcs_of_the_lines() => Assert.Equal(
        "G21 G90 G0 X0 Y0 Z0\nG1 F100\nG2 X10 Y10 R10\nG2 X20 Y0 R10\nM30\n",
        Rewritten.In(new Lines(0, 4, false), "arcToRadius", "G21 G90 G0 X0 Y0 Z0\nG1 F100\nG2 X10 Y10 I10 J0\nG2 X20 Y0 I0 J-10\nM30\n"));

    static string Around(string arc) => $"G21 G90 G17 G94 F100 G0 X0 Y0 Z0\n{arc}\nM30\n";

    /// <summary>NISTIR 6556 §3.5.3.1: in the XZ plane the centre is given by I and K, in this order.</summary>
    [Fact]
    public void In_the_XZ_plane_I_stands_before_K() => Assert.Equal(
        "G21 G90 G18 G0 X0 Y0 Z0\nG2 X10 Z10 I0 K10 F100\nM30\n", Rewritten.At(1, "arcToCentre", "G21 G90 G18 G0 X0 Y0 Z0\nG2 X10 Z10 R10 F100\nM30\n"));
}
