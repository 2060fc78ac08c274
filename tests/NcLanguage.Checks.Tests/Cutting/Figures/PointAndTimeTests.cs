using NcLanguage.Checks.Cutting;

namespace NcLanguage.Checks.Tests.Cutting.Figures;

public sealed class PointAndTimeTests
{
    /// <summary>Factors of the diameter, printed in a web engineering reference (the table of Machinery's Handbook); 130° and 140° by arithmetic.</summary>
    [Theory]
    [InlineData(60, 0.866)]
    [InlineData(82, 0.5752)]
    [InlineData(90, 0.5)]
    [InlineData(100, 0.4195)]
    [InlineData(118, 0.3004)]
    [InlineData(120, 0.2887)]
    [InlineData(130, 0.2331)]
    [InlineData(135, 0.2071)]
    [InlineData(140, 0.1820)]
    [InlineData(142, 0.1722)]
    public void A_point_is_a_factor_of_the_diameter_long(double angle, double factor)
    {
        Assert.Equal(factor, PointShape.Length(1, angle), 0.00006);
        Assert.Equal(1, PointShape.Diameter(PointShape.Length(1, angle), angle), 1e-12);
    }

    /// <summary>7/8 in at 118°: 0.2629 in (trade-mathematics course); No. 37 drill, 0.104 in: 0.031 in (drill sheet).</summary>
    [Theory]
    [InlineData(0.875, 0.2629)]
    [InlineData(0.104, 0.031)]
    public void Points_in_inches(double diameter, double length) => Assert.Equal(length, PointShape.Length(diameter, 118), 0.0003);

    /// <summary>A sink of 10 mm in a hole of 5 mm: 2.5 at 90°, 2.876 at 82° (web engineering reference).</summary>
    [Theory]
    [InlineData(90, 2.5)]
    [InlineData(82, 2.876)]
    public void A_sink_in_a_hole(double angle, double depth)
    {
        Assert.Equal(depth, PointShape.Length(10, angle, 5), 0.0005);
        Assert.Equal(10, PointShape.Diameter(depth, angle, 5), 0.001);
    }

    /// <summary>Groover's problem: depth 60, D 12.7, 118°, F 188: 0.3395 min with the point's 3.815 mm, 0.3192 as one printed answer has it without.</summary>
    [Theory]
    [InlineData(12.7, 60, 187.98, true, 0.3395)]
    [InlineData(12.7, 60, 187.98, false, 0.3192)]
    [InlineData(10, 60, 238.73, true, 0.264)] // printed 0.265 after rounding
    public void Drilling_time(double diameter, double depth, double feed, bool withPoint, double minutes) =>
        Assert.Equal(minutes, DrillingTime.Seconds(depth, withPoint ? PointShape.Length(diameter, 118) : 0, feed) / 60, 0.0005);

    /// <summary>thickness + point + clearance (drill reference): 12 mm, 10 mm drill of 118°, 1 mm beyond.</summary>
    [Fact]
    public void A_through_hole() => Assert.Equal(16.004, PointShape.Through(12, PointShape.Length(10, 118), 1), 0.001);

    /// <summary>t = 60·revs/n, by arithmetic: 2 turns at 1000 take 0.12 s; 0.2 s at 1200 are 4 turns.</summary>
    [Fact]
    public void Dwell_and_turns()
    {
        Assert.Equal(0.12, DrillingTime.Dwell(2, 1000), 1e-12);
        Assert.Equal(4, DrillingTime.Turns(0.2, 1200), 1e-12);
    }

    /// <summary>NISTIR 6556 §3.5.16.4: by Q or to Z. R2 Z−20 Q5 ends at −3 −8 −13 −18 −20.</summary>
    [Fact]
    public void Pecks_end_at_their_levels()
    {
        Assert.Equal(new double[] { -3, -8, -13, -18, -20 }, Pecks.Levels(2, -20, 5).ToArray());
        Assert.Equal(5, Pecks.Count(2, -20, 5));
        Assert.Equal(4, Pecks.Count(2, -18, 5)); // an even number of steps leaves no rest
        Assert.Equal(3, Pecks.Count(0, -0.3, 0.1));
    }

    /// <summary>Drill reference sheet: by 10/10 % at 3×D, 20/10 at 4×D, 30/20 at 5×D, 35–40/20 at 6×D.</summary>
    [Theory]
    [InlineData(2.9, 0, 0)]
    [InlineData(3, 10, 10)]
    [InlineData(4, 20, 10)]
    [InlineData(5, 30, 20)]
    [InlineData(6, 40, 20)]
    [InlineData(24.9 / 8.3, 10, 10)] // 2.9999999999999996 in double precision
    [InlineData(9.6 / 1.6, 40, 20)]
    public void Deep_holes_ask_for_less(double diameters, int speed, int feed) => Assert.Equal((speed, feed), Pecks.DeepHole(diameters));

    /// <summary>e = r·(1 − cos(θ/2)), by arithmetic: r 10, e 0.01: 5.1251°, 71 pieces; r 25, e 0.005: 158; r 50, e 0.01: 158.</summary>
    [Theory]
    [InlineData(10, 0.01, 71)]
    [InlineData(25, 0.005, 158)]
    [InlineData(50, 0.01, 158)]
    public void Chords_of_a_circle(double radius, double error, int pieces)
    {
        Assert.Equal(pieces, ChordError.Pieces(radius, error));
        Assert.Equal(error, ChordError.Of(radius, ChordError.Angle(radius, error)), 1e-9);
        Assert.Equal(5.1251, ChordError.Angle(10, 0.01), 0.0001);
    }
}
