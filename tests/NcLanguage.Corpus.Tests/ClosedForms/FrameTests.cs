using NcLanguage.Control.Moves;
using static NcLanguage.Corpus.Tests.ClosedForms.Moves;

namespace NcLanguage.Corpus.Tests.ClosedForms;

/// <summary>Places under frames that mirror, turn, scale or are set by probing, from the formulas of the figures.</summary>
/// <remarks>Sources: rotation x' = x cos − y sin, y' = x sin + y cos; scaling about a point p' = c + k (p − c); a mirrored arc turns the other way
/// (plane geometry). Which axes the words of G51, G51.1 and G68 name: common practice.</remarks>
public sealed class FrameTests
{
    [Fact]
    public void Mirrored_part()
    {
        var cuts = CutsOf("mirror-pair");
        Assert.Equal(10, cuts.Count);
        for (var i = 0; i < 5; i++)
        {
            At(-cuts[i].To.X, cuts[i].To.Y, cuts[i].To.Z, cuts[5 + i].To);
            Near(cuts[i].Length, cuts[5 + i].Length);
        }
        var (right, left) = (ArcsOf("mirror-pair")[0], ArcsOf("mirror-pair")[1]);
        Assert.True(right.Clockwise);
        Assert.False(left.Clockwise);
        At(30, 15, right.Center);
        At(-30, 15, left.Center);
        Near(2 * (1 + Slope(20, 2) + 20 + 5 * Math.PI + 25), CutLength("mirror-pair"));
    }

    [Fact]
    public void Mirrored_by_its_own_code()
    {
        var text = CorpusProgram.Of("mirror-pair").Text.Replace("G51 X0 Y0 I-1 J1 K1", "G51.1 X0", StringComparison.Ordinal).Replace("N90 G50", "N90 G50.1 X0", StringComparison.Ordinal);
        Assert.DoesNotContain("G51 ", text, StringComparison.Ordinal);
        Assert.Equal(Of("mirror-pair"), Of("mirror-pair", text));
    }

    [Fact]
    public void Turned_slots()
    {
        var cuts = CutsOf("rotated-slots");
        Assert.Equal(12, cuts.Count);
        double[] radius = [25, 45, 25, 45];
        double[] depth = [0, -1.5, -3, -3];
        for (var i = 0; i < 12; i++)
            At(radius[i % 4] * Cos(120 * (i / 4)), radius[i % 4] * Sin(120 * (i / 4)), depth[i % 4], cuts[i].To);
        Near(3 * (1 + 2 * Slope(20, 1.5) + 20), CutLength("rotated-slots"));
    }

    [Fact]
    public void Figure_at_half_size()
    {
        var cuts = CutsOf("arrow-sizes");
        Assert.Equal(10, cuts.Count);
        for (var i = 0; i < 5; i++)
            At(100 + (cuts[i].To.X - 100) / 2, -40 + (cuts[i].To.Y + 40) / 2, cuts[i].To.Z, cuts[5 + i].To);
        Near(1.5 * (40 + 2 * Slope(12, 6)) + 4 * 1.3, CutLength("arrow-sizes"));
    }

    [Fact]
    public void Probed_boss()
    {
        // Four ways of 35 - 18 towards the boss, each along one axis, at 120 mm/min; none of them is a cut that is counted on to end there.
        var probes = Of("boss-probe").Where(move => move.Feed == 120).ToList();
        Assert.Equal(4, probes.Count);
        double[] x = [-18, 18, 0, 0];
        double[] y = [0, 0, -18, 18];
        for (var i = 0; i < 4; i++)
        {
            At(x[i], y[i], -5, probes[i].To);
            Near(35 - 18, probes[i].Length);
            Assert.True(double.IsNaN(probes[i].Seconds));
        }
        // The datum is set from what is touched: behind it the place on the table is not known, and is not guessed.
        var last = Of("boss-probe").Last(move => move.Kind == MoveKind.Rapid);
        Assert.True(double.IsNaN(last.To.X) && double.IsNaN(last.To.Y));
    }
}
