using CsCheck;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>Silhouettes and outlines of what stands.</summary>
public sealed class StockOutlineTests
{
    static readonly Box3 Stock = new(new(10, -20, -20), new(50, 10, 0));

    /// <summary>Surveyor's formula: positive for a ring with what stands on its left.</summary>
    static double Area((double X, double Y)[] ring)
    {
        var twice = 0.0;
        for (var i = 0; i < ring.Length; i++)
        {
            var (a, b) = (ring[i], ring[(i + 1) % ring.Length]);
            twice += a.X * b.Y - b.X * a.Y;
        }
        return twice / 2;
    }

    [Fact]
    public void The_uncut_stock_is_one_rectangle_and_a_pocket_a_ring_the_other_way()
    {
        var field = new StockField(Stock, 0.5, CellRule.Middle);
        Assert.Equal([(50, -20), (50, 10), (10, 10), (10, -20)], Assert.Single(StockOutline.Above(field, -1)));
        Assert.Empty(StockOutline.Above(field, 0));
        field.Cut(new(20, 0, -5), new(40, 0, -5), EndForm.Flat(4));
        var rings = StockOutline.Above(field, -2);
        Assert.Equal([1200, -(2 * 4 * 20 + Math.PI * 16)], rings.Select(Area), (a, b) => Math.Abs(a - b) < 4);
        Assert.Single(StockOutline.Above(field, -6));
    }

    [Fact]
    public void Silhouettes_are_the_highest_along_the_view()
    {
        var field = new StockField(Stock, 0.5, CellRule.Middle);
        field.Cut(new(0, -15, -3), new(60, -15, -3), EndForm.Flat(20));
        field.Cut(new(30, -40, -7), new(30, 40, -7), EndForm.Flat(2));
        var front = StockOutline.Front(field);
        Assert.Equal(80, front.Length);
        Assert.Equal((0, -7, 0), (front[0], front[40], front[79]));
        var side = StockOutline.Side(field);
        Assert.Equal(60, side.Length);
        Assert.Equal((-3, 0), (side[0], side[59]));
    }

    [Fact] // Reference: counted cell by cell: the area that stands, and every border of it once and no other.
    public void Outlines_go_round_the_cells_that_stand() =>
        Gen.Select(Gen.Select(Gen.Double[5, 55], Gen.Double[-25, 15], (x, y) => new Point3(x, y, -4)).Array[2, 9], Gen.Double[0.5, 4]).Sample((path, radius) =>
        {
            var field = new StockField(Stock, 1, CellRule.Middle);
            for (var i = 1; i < path.Length; i += 2)
                field.Cut(path[i - 1], path[i], EndForm.Flat(radius));
            bool Stands(int column, int row) => column is >= 0 and < 40 && row is >= 0 and < 30 && field.Heights[row * 40 + column] > -2;
            var (area, border) = (0, 0);
            for (var row = 0; row <= 30; row++)
            {
                for (var column = 0; column <= 40; column++)
                {
                    area += Stands(column, row) ? 1 : 0;
                    border += (Stands(column, row) != Stands(column - 1, row) ? 1 : 0) + (Stands(column, row) != Stands(column, row - 1) ? 1 : 0);
                }
            }
            var rings = StockOutline.Above(field, -2);
            Assert.Equal(area, rings.Sum(Area), 1e-6);
            Assert.Equal(border, rings.Sum(ring => ring.Select((p, i) => Math.Abs(p.X - ring[(i + 1) % ring.Length].X) + Math.Abs(p.Y - ring[(i + 1) % ring.Length].Y)).Sum()), 1e-6);
        }, iter: 200);
}
