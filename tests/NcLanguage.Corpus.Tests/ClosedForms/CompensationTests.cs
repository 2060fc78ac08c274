using static NcLanguage.Corpus.Tests.ClosedForms.Moves;

namespace NcLanguage.Corpus.Tests.ClosedForms;

/// <summary>Ways of the tool's centre under radius compensation, from plane geometry: parallels at the tool's radius (NISTIR 6556 appendix B).</summary>
public sealed class CompensationTests
{
    [Fact]
    public void Outside_contour()
    {
        // Radius 8: corner arcs of 10 + 8, straights beside the plate, out from.
        Near(Slope(25 - 8, 25 - 12) + 62 + 80 + 40 + 80 + 2 * Math.PI * 18 + 17, CutLength("bracket-outline"));
        Assert.All(ArcsOf("bracket-outline"), arc => Near(9 * Math.PI, arc.Length));
    }

    [Fact]
    public void Inside_contour()
    {
        var ramp = 1 + 2 * Slope(10, 2);
        // Radius 5: arcs of 12 - 5 in and out, corner arcs of 8 - 5, walls 5 away.
        Near(ramp + 2 * Slope(7, 8) + 7 * Math.PI + 2 * 44 + 2 * 24 + 6 * Math.PI, CutLength("cover-window"));
        Near(30 - 5, CutsOf("cover-window").Max(cut => cut.To.X));
        Near(-20 + 5, CutsOf("cover-window").Min(cut => cut.To.Y));
    }

    [Fact]
    public void Undercut_on_both_walls()
    {
        var cuts = CutsOf("t-slot-rail");
        At(95 - 9, -11 + 9, cuts[1].To);
        At(95 - 9, 11 - 9, cuts[2].To);
        Near(2 * Slope(16, 2) + 2 * 100 + 4, CutLength("t-slot-rail"));
    }
}
