using CsCheck;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Geometry;
using NetTopologySuite.Geometries;

namespace NcLanguage.Checks.Tests.Clearance;

public class StockFieldTests
{
    static readonly Box3 Stock = new(new(0, 0, -20), new(80, 50, 0));
    static readonly double Whole = 80 * 50 * 20;

    static EndForm End(double radius, double? point = null) => EndForm.Cone(radius, point ?? 180);

    static void Drill(StockField field, double x, double y, double radius, double bottom, double? point = null) =>
        field.Cut(new(x, y, bottom), new(x, y, bottom), End(radius, point));

    static double Removed(double cell, Action<StockField> cut)
    {
        var field = new StockField(Stock, cell);
        cut(field);
        return Whole - field.Volume;
    }

    /// <summary>Cells at the rim count as cut, so too much is taken, by at most a cell along the outline of the cut; that shrinks with the cell.</summary>
    static void Converges(double exact, double wall, Action<StockField> cut)
    {
        var last = double.PositiveInfinity;
        foreach (var cell in new[] { 1, 0.5, 0.25, 0.125 })
        {
            var error = Removed(cell, cut) - exact;
            Assert.InRange(error, 0, wall * cell);
            Assert.True(error < last * 0.65, $"{error} at {cell}, {last} at twice that");
            last = error;
        }
    }

    [Fact] // Closed form: a cylinder.
    public void A_flat_hole_takes_a_cylinder() =>
        Converges(Math.PI * 16 * 12, Math.Tau * 4 * 12, f => Drill(f, 30.3, 20.7, 4, -12));

    [Fact] // Closed form: a cylinder on a cone; point length r / tan(118°/2).
    public void A_drilled_hole_takes_a_cylinder_and_a_cone()
    {
        var point = 4 / Math.Tan(59 * Math.PI / 180);
        // A rim of the cone is taken to the lowest over its cell as well: half as much again.
        Converges(Math.PI * 16 * (12 - point) + Math.PI * 16 * point / 3, Math.Tau * 4 * 12 * 1.5, f => Drill(f, 30.3, 20.7, 4, -12, 118));
    }

    [Fact] // Closed form: a spot drilled less deep than its point is long leaves a cone of radius depth · tan(90°/2).
    public void A_spot_takes_a_cone() =>
        Converges(Math.PI * 9 * 3 / 3, Math.PI * 9 * 2, f => Drill(f, 30.3, 20.7, 5, -3, 90));

    [Fact] // Closed form: a cylinder through the stock; what lies below the stock does not count.
    public void A_through_hole_takes_no_more_than_the_stock() =>
        Converges(Math.PI * 16 * 20, Math.Tau * 4 * 20, f => Drill(f, 30.3, 20.7, 4, -26));

    [Fact] // Closed form: (2 r L + π r²) · depth.
    public void A_slot_takes_a_bar_with_round_ends() =>
        Converges((2 * 4 * 50 + Math.PI * 16) * 5, (100 + Math.Tau * 4) * 5, f => f.Cut(new(15.2, 8.1, -5), new(63.2, 22.1, -5), End(4))); // 48, 14, 50

    [Fact] // Closed form: length, breadth and depth less the four corners (4 − π) r².
    public void A_pocket_takes_a_block_with_round_corners() =>
        Converges((50 * 30 - (4 - Math.PI) * 9) * 6, 160 * 6, f =>
        {
            for (var y = 10.0; y <= 34; y += 4)
                f.Cut(new(13, y, -6), new(57, y, -6), End(3));
            f.Cut(new(13, 10, -6), new(13, 34, -6), End(3));
            f.Cut(new(57, 10, -6), new(57, 34, -6), End(3));
        });

    [Fact] // Closed form: π (R + r)² · depth less the standing core π (R − r)².
    public void A_ring_leaves_its_core() =>
        Converges(Math.PI * (15 * 15 - 9 * 9) * 7, Math.Tau * (15 + 9) * 7, f => f.CutArc(new(52, 25, -7), new(52, 25, -7), new(40, 25, 0), true, 17, 0, End(3)));

    [Fact] // Closed form: a ramp from Z0 to Z−8 over 40 mm by a square-ended cut: the flat end stands at the level of its lowest place.
    public void A_ramp_is_cut_to_the_lowest_level_over_each_place()
    {
        var field = new StockField(Stock, 0.1);
        field.Cut(new(20, 25, 0), new(60, 25, -8), End(5));
        // On the axis the tool, 5 in radius, has gone on to 5 mm further: 8/40 of a mm deeper per mm.
        foreach (var x in new[] { 20.05, 33.05, 50.05 })
            Assert.Equal(-(x + 5 - 20) * 8 / 40, field.TopAt(x, 25.05), 0.03);
        Assert.Equal(-8, field.TopAt(60.05, 25.05), 1e-6);
        Assert.Equal(-8, field.TopAt(64.95, 25.05), 1e-6);
        Assert.Equal(0, field.TopAt(65.5, 25.05));
    }

    [Fact]
    public void A_rapid_into_standing_stock_is_met_where_the_tool_first_touches()
    {
        var field = new StockField(Stock, 0.5);
        Assert.True(field.Meets(new(-20, 25, -5), new(100, 25, -5), End(4), out var where, out var depth));
        Assert.Equal(-4, where.X, 0.5); // rim on the face, and half a cell to its first middle
        Assert.Equal(5, depth, 1e-6);
        Assert.True(field.Meets(new(40, 25, 30), new(40, 25, -3), End(4), out where, out depth));
        Assert.Equal(-StockField.Tolerance, where.Z, 1e-4);
        Assert.Equal(3, depth, 1e-6);
        // 118°: the tip is 2.4 deeper than its corners.
        Assert.True(field.Meets(new(40, 25, 30), new(40, 25, -3), End(4, 118), out where, out depth));
        Assert.InRange(depth, 2.7, 3);
        Assert.False(field.Meets(new(-20, 25, 0), new(100, 25, 0), End(4), out where, out depth));
        Assert.Equal((Point3.Unknown, 0), (where, depth));
        Assert.False(field.Meets(new(-4, -20, -5), new(-4, 70, -5), End(4), out _, out _)); // along the face
    }

    [Theory] // by subtraction: the stock is 20 thick, whatever the tool goes through below it
    [InlineData(-15, 15)]
    [InlineData(-20, 20)]
    [InlineData(-39.2, 20)]
    public void Nothing_stands_below_the_stocks_underside(double level, double standing)
    {
        var field = new StockField(Stock, 0.5);
        Assert.True(field.Meets(new(-20, 25, level), new(100, 25, level), End(4), out _, out var depth));
        Assert.Equal(standing, depth, 1e-6);
        field.Cut(new(-20, 25, -3), new(100, 25, -3), End(8));
        Assert.True(field.Meets(new(40, 25, 30), new(40, 25, level), End(4), out _, out depth));
        Assert.Equal(standing - 3, depth, 1e-6);
    }

    [Fact]
    public void A_drill_goes_back_into_its_own_hole_and_not_into_a_narrower_one()
    {
        var field = new StockField(Stock, 0.4);
        Drill(field, 30, 20, 4, -12, 118);
        Assert.False(field.Meets(new(30, 20, 2), new(30, 20, -12), End(4, 118), out _, out _));
        Assert.True(field.Meets(new(30, 20, 2), new(30, 20, -12.5), End(4, 118), out _, out var depth));
        Assert.Equal(0.5, depth, 0.2);
        Assert.True(field.Meets(new(30, 20, 2), new(30, 20, -10), End(5, 118), out _, out _));
        // A flat end does not go to the bottom of a cone.
        Assert.True(field.Meets(new(30, 20, 2), new(30, 20, -12), End(4), out _, out _));
        // Cut through, nothing stands there however deep the tool goes.
        Drill(field, 30, 20, 4, -24, 118);
        Assert.False(field.Meets(new(30, 20, 2), new(30, 20, -40), End(4, 118), out _, out _));
        Assert.Equal(double.NegativeInfinity, field.TopAt(30, 20));
    }

    [Fact]
    public void After_an_unknown_cut_nothing_is_claimed()
    {
        var field = new StockField(Stock, 1);
        Assert.True(field.Meets(new(40, 25, 30), new(40, 25, -3), End(4), out _, out _));
        field.Cut(new(double.NaN, 25, 30), new(40, 25, -3), End(4));
        Assert.False(field.IsKnown);
        Assert.False(field.Meets(new(40, 25, 30), new(40, 25, -3), End(4), out _, out _));
    }

    [Fact]
    public void A_large_stock_gets_larger_cells()
    {
        var field = new StockField(new(new(0, 0, 0), new(3000, 1500, 50)), 0.05);
        Assert.InRange(field.Cells, StockField.MostCells * 0.9, StockField.MostCells);
        Assert.Equal(Math.Sqrt(3000.0 * 1500 / StockField.MostCells), field.CellSize, 0.05);
        var thin = new StockField(new(new(0, 0, 0), new(4000, 0.001, 1)), 1e-4);
        Assert.InRange(thin.Cells, 1, StockField.MostCells);
    }

    [Theory] // Closed forms: the tool goes over all of a narrow bar; on a slope it leaves a wedge.
    [InlineData(0.4, 60)]
    [InlineData(60, 0.4)]
    public void A_bar_narrower_than_a_cell_is_cut_like_any(double width, double depth)
    {
        var field = new StockField(new(new(0, 0, -10), new(width, depth, 0)), 1);
        Assert.InRange(field.CellSize, 0, 1);
        field.Cut(new(-5, -5, -4), new(width + 5, depth + 5, -4), End(40));
        Assert.Equal(width * depth * 6, field.Volume, 1e-3);
        field.Cut(new(width / 2, depth / 2, -6), new(width / 2, depth / 2, -6), EndForm.Round(0.1, 0.1));
        Assert.InRange(field.TopAt(width / 2, depth / 2), -6.0001, -5.9);
        var (from, to) = width > depth ? (new Point3(-40, 0.2, -6), new Point3(width + 40, 0.2, -9)) : (new Point3(0.2, -40, -6), new Point3(0.2, depth + 40, -9));
        field.Cut(from, to, End(5));
        // Where the tool leaves a place it has fallen as far as it has gone, and its own radius further; a cell is cut by what touches any of it.
        Assert.InRange(field.TopAt(width * 0.5, depth * 0.5), -6 - 3 * 76.3 / 140, -6 - 3 * 75.0 / 140);
    }

    [Fact] // Reference: an arc of a radius of 200 m over 40 mm leaves its chord by 40² / (8 · 200,000) = 0.001 mm.
    public void An_arc_of_a_huge_radius_cuts_as_its_chord_does()
    {
        var (from, to, center) = (new Point3(20, 25, -5), new Point3(60, 25, -5), new Point3(40, 25 + Math.Sqrt(200_000.0 * 200_000 - 400), -5));
        Assert.Equal(Removed(0.5, f => f.Cut(from, to, End(4))), Removed(0.5, f => f.CutArc(from, to, center, false, 17, 0, End(4))), 3.0);
    }

    static readonly Gen<Point3> Inside = Gen.Select(Gen.Double[-5, 85], Gen.Double[-5, 55], Gen.Double[-15, 3], (x, y, z) => new Point3(x, y, z));

    [Fact] // Reference: the meaning of the word: where a tool has just been there is nothing left to meet.
    public void Retracing_cuts_is_silent() =>
        Gen.Select(Inside.Array[2, 12], Gen.Double[0.6, 8], Gen.Double[0.3, 2], Gen.OneOf(Gen.Const((double?)null), Gen.Double[60, 150].Select(a => (double?)a))).Sample((path, radius, cell, point) =>
        {
            var field = new StockField(Stock, cell);
            for (var i = 1; i < path.Length; i++)
                field.Cut(path[i - 1], path[i], End(radius, point));
            for (var i = path.Length - 1; i > 0; i--)
            {
                Assert.False(field.Meets(path[i], path[i - 1], End(radius, point), out var where, out var depth), $"{depth} at {where}");
                var part = Point3.Lerp(path[i], path[i - 1], 0.37);
                Assert.False(field.Meets(part.With(2, 30), part, End(radius, point), out _, out _));
                Assert.False(field.Meets(part, part + new Point3(0, 0, 7), End(radius, point), out _, out _));
            }
        }, iter: 300);

    [Fact] // Reference: as above, for arcs: the tool goes back along chords finer than those it was cut by.
    public void Retracing_an_arc_is_silent() =>
        Gen.Select(Inside, Gen.Double[1, 25], Gen.Double[0.6, 6], Gen.Double[0.3, 1.5], Gen.Double[-6, 0], Gen.Bool).Sample((center, reach, radius, cell, drop, clockwise) =>
        {
            var field = new StockField(Stock, cell);
            var start = center + new Point3(reach, 0, 0);
            var end = start + new Point3(0, 0, drop);
            field.CutArc(start, end, center, clockwise, 17, 0, End(radius));
            var last = end;
            for (var i = 359; i >= 0; i--)
            {
                var (sin, cos) = Math.SinCos(i * Math.PI / 180 * (clockwise ? -1 : 1));
                var next = center + new Point3(reach * cos, reach * sin, drop * i / 360);
                // Chords of a degree leave the arc by reach (1 − cos ½°), at most 0.001 mm.
                Assert.False(field.Meets(last, next, End(radius), out var where, out var depth), $"{depth} at {where}, {i}°");
                last = next;
            }
        }, iter: 100);

    [Fact] // Outside reference: dense sampling of the tool's places over random places of the stock.
    public void Heights_lie_between_those_of_a_slightly_smaller_and_a_slightly_larger_tool() =>
        Gen.Select(Inside, Inside, Gen.Double[1, 8], Gen.OneOf(Gen.Const(180.0), Gen.Double[60, 150]), Gen.Select(Gen.Double[0, 80], Gen.Double[0, 50]).Array[30]).Sample((from, to, radius, point, places) =>
        {
            var field = new StockField(Stock, 0.5);
            field.Cut(from, to, End(radius, point));
            const int Steps = 2000;
            var step = Point3.Distance(from, to) / Steps;
            var steepness = point == 180 ? 0 : 1 / Math.Tan(point / 360 * Math.PI);
            double Lowest(double x, double y, double reach, double spread)
            {
                var low = 0.0;
                for (var i = 0; i <= Steps; i++)
                {
                    var tip = Point3.Lerp(from, to, (double)i / Steps);
                    var off = double.Hypot(tip.X - x, tip.Y - y);
                    if (off <= reach)
                        low = Math.Min(low, tip.Z + steepness * (off - spread));
                }
                return low;
            }
            foreach (var (x, y) in places)
            {
                // A place is at most half a diagonal, 0.354, from its cell's middle, and so is the cell's farthest corner.
                var top = field.TopAt(x, y);
                Assert.InRange(top, Lowest(x, y, radius + 0.708 + step, 0.708 + step) - step - 1e-5, Lowest(x, y, radius - step, 0) + step * (1 + steepness) + 1e-5);
            }
        }, iter: 300);

    [Fact] // Outside reference: NetTopologySuite: buffers of the paths, their difference and what is left of it.
    public void Rapids_meet_what_the_difference_of_buffers_leaves()
    {
        // A cell stands when its middle is farther than the tool's radius and half a diagonal, 0.354, from the cuts, and is met when its middle is within the other
        // radius of the rapid. Hence both margins below hold for every program; rounding of the buffers' arcs to chords is within 0.005. Clear rapids are rare by chance, so
        // that every other one goes along a part of a cut.
        var (met, silent) = (0, 0);
        var level = Gen.Select(Gen.Double[-5, 85], Gen.Double[-5, 55], (x, y) => new Point3(x, y, -5));
        Gen.Select(level.Array[2, 5], level, level, Gen.Double[2, 8], Gen.Double[2, 8], Gen.Bool).Sample((cuts, from, to, radius, rapidRadius, isAlong) =>
        {
            const double Cell = 0.5;
            if (isAlong)
                (from, to) = (Point3.Lerp(cuts[0], cuts[1], 0.2), Point3.Lerp(cuts[0], cuts[1], 0.7));
            var field = new StockField(Stock, Cell);
            for (var i = 1; i < cuts.Length; i++)
                field.Cut(cuts[i - 1], cuts[i], End(radius));

            var factory = new GeometryFactory();
            Coordinate Flat(Point3 p) => new(p.X, p.Y);
            var stock = factory.ToGeometry(new Envelope(0, 80, 0, 50));
            var cut = factory.CreateLineString(Array.ConvertAll(cuts, Flat)).Buffer(radius, 32);
            var standing = stock.Difference(cut);
            var rapid = factory.CreateLineString([Flat(from), Flat(to)]).Buffer(rapidRadius, 32);
            // Certainly touching: in what is left even when the cut is larger by two cells there is room for a circle of radius 0.5, and so for the middle of a cell.
            var certain = !stock.Difference(cut.Buffer(2 * Cell)).Intersection(rapid).Buffer(-Cell).IsEmpty;
            var clear = !standing.Intersects(rapid);
            var meets = field.Meets(from, to, End(rapidRadius), out _, out var depth);
            if (certain)
            {
                Assert.True(meets);
                Assert.Equal(5, depth, 1e-5);
                Interlocked.Increment(ref met);
            }
            if (clear)
            {
                Assert.False(meets);
                Interlocked.Increment(ref silent);
            }
        }, iter: 600);
        Assert.True(met > 100 && silent > 50, $"{met} met, {silent} silent: too few to tell");
    }
}
