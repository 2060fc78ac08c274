using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Tests.Analysis;

/// <summary>The cuts come back as they were, to the last bit.</summary>
public class CutLogTests
{
    static readonly double[] Odd = [0, -0.0, double.NaN, BitConverter.Int64BitsToDouble(-1), double.MaxValue, 1e-300, -7.25];

    [Fact]
    public void Every_cut_comes_back_as_it_was()
    {
        var random = new Random(5);
        for (var turn = 0; turn < 500; turn++)
        {
            var cuts = new List<StockCut>();
            var arcs = 0;
            for (var i = random.Next(40); i > 0; i--)
            {
                var before = cuts.Count > 0 ? cuts[^1] : default;
                var from = new Point3(One(before.To.X), One(before.To.Y), random.Next(3) == 0 ? before.From.Z : One(before.To.Z));
                var to = new Point3(One(from.X), One(from.Y), random.Next(3) == 0 ? before.To.Z : One(from.Z));
                cuts.Add(new StockCut(
                    from, to, random.Next(4) == 0 ? random.Next() : before.Tool, random.Next(4) == 0 ? random.Next() : before.Line + 1, random.Next(4), random.Next(3) == 0 ? arcs++ : -1,
                    random.Next(4) == 0 ? float.NaN : random.Next(3), random.Next(5) == 0));
            }
            var log = CutLog.Of([.. cuts]);
            Assert.Equal(cuts.Count, log.Length);
            var at = 0;
            foreach (ref readonly var cut in log)
                AssertSame(cuts[at++], cut);
            Assert.Equal(cuts.Count, at);
            for (var i = 0; i < cuts.Count; i++)
                AssertSame(cuts[i], log[i]);
        }

        double One(double known) => random.Next(4) switch { 0 => Odd[random.Next(Odd.Length)], 1 => random.NextDouble() * 100, _ => known };
    }

    [Fact]
    public void A_cut_that_is_not_there_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => CutLog.Empty[0]);
        Assert.Throws<ArgumentOutOfRangeException>(() => CutLog.Of([default])[-1]);
    }

    static void AssertSame(in StockCut expected, in StockCut actual)
    {
        Assert.Equal(Bits(expected.From), Bits(actual.From));
        Assert.Equal(Bits(expected.To), Bits(actual.To));
        Assert.Equal((expected.Tool, expected.Line, expected.Move, expected.Arc), (actual.Tool, actual.Line, actual.Move, actual.Arc));
        Assert.Equal((expected.Seconds, expected.IsFromBelow), (actual.Seconds, actual.IsFromBelow));
    }

    static (long, long, long) Bits(in Point3 point) => (BitConverter.DoubleToInt64Bits(point.X), BitConverter.DoubleToInt64Bits(point.Y), BitConverter.DoubleToInt64Bits(point.Z));
}
