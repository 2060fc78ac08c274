using CsCheck;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>Heights that every form of end leaves along every kind of path, against dense sampling of the tool's places.</summary>
public sealed class StockHeightTests
{
    static readonly Box3 Stock = new(new(0, 0, -20), new(80, 50, 0));
    static readonly Gen<Point3> Inside = Gen.Select(Gen.Double[-5, 85], Gen.Double[-5, 55], Gen.Double[-15, 3], (x, y, z) => new Point3(x, y, z));
    static readonly Gen<EndForm> AnyEnd = Gen.Select(Gen.Int[0, 3], Gen.Double[1, 8], Gen.Double[60, 150], Gen.Double[0.05, 0.95], (form, radius, angle, corner) => form switch
    {
        0 => EndForm.Flat(radius),
        1 => EndForm.Cone(radius, angle),
        2 => EndForm.Round(radius, radius),
        _ => EndForm.Round(radius, radius * corner),
    });

    const int Steps = 2000;

    /// <summary>The lowest that the end comes over a place, for a slightly smaller or larger tool, the formula of each form written out once more.</summary>
    static double Lowest(double x, double y, EndForm end, double larger, Func<double, Point3> tip)
    {
        var low = 0.0;
        for (var i = 0; i <= Steps; i++)
        {
            var place = tip((double)i / Steps);
            var off = double.Hypot(place.X - x, place.Y - y) - larger;
            if (off > end.Radius)
                continue;
            var beyond = Math.Max(0, off - end.FlatRadius);
            var up = end.CornerRadius > 0
                ? end.CornerRadius * (1 - Math.Cos(Math.Asin(Math.Min(1, beyond / end.CornerRadius))))
                : end.Steepness * beyond;
            low = Math.Min(low, place.Z + up);
        }
        return low;
    }

    static void Agrees(StockField field, EndForm end, double length, double fall, double spread, (double X, double Y)[] places, Func<double, Point3> tip)
    {
        // Between two samples the tool goes on by a step; a chord of an arc may lie aside by spread.
        var (aside, down) = (length / Steps + spread, fall / Steps + 1e-4);
        foreach (var (px, py) in places)
        {
            // The middle of the cell that the place lies in.
            var x = (Math.Floor(px / field.CellWidth) + 0.5) * field.CellWidth;
            var y = (Math.Floor(py / field.CellDepth) + 0.5) * field.CellDepth;
            var top = Math.Max(field.TopAt(x, y), -20);
            Assert.InRange(top, Math.Max(-20, Lowest(x, y, end, aside, tip) - down), Math.Max(-20, Lowest(x, y, end, -aside, tip) + down));
        }
    }

    [Fact]
    public void Straight_cuts_leave_what_the_tool_s_places_leave() =>
        Gen.Select(Inside, Inside, AnyEnd, Gen.Select(Gen.Double[0, 79.99], Gen.Double[0, 49.99]).Array[25], Gen.Int[0, 3]).Sample((from, to, end, places, kind) =>
        {
            to = kind == 0 ? to.With(2, from.Z) : kind == 1 ? from.With(2, to.Z) : to;
            var field = new StockField(Stock, 0.5, CellRule.Middle);
            field.Cut(from, to, end);
            Agrees(field, end, Point3.Distance(from, to), Math.Abs(from.Z - to.Z), 0, [.. places, (Math.Clamp(from.X, 0, 79.9), Math.Clamp(from.Y, 0, 49.9))], t => Point3.Lerp(from, to, t));
        }, iter: 200);

    [Fact]
    public void Arcs_and_helices_leave_what_the_tool_s_places_leave() =>
        Gen.Select(Inside, Gen.Double[1, 25], Gen.Double[-3, 3], Gen.Double[0.1, 6.2], AnyEnd, Gen.Select(Gen.Double[0, 79.99], Gen.Double[0, 49.99]).Array[25], Gen.Double[-9, 0], Gen.Bool).Sample(
            (center, reach, start, angle, end, places, drop, clockwise) =>
            {
                drop = drop < -6 ? 0 : drop;
                Point3 Tip(double t)
                {
                    var (sin, cos) = Math.SinCos(start + (clockwise ? -angle : angle) * t);
                    return center + new Point3(reach * cos, reach * sin, drop * t);
                }
                var field = new StockField(Stock, 0.5, CellRule.Middle);
                field.CutArc(Tip(0), Tip(1), center, clockwise, 17, 0, end);
                // Chords keep within an eighth of a cell.
                Agrees(field, end, reach * angle - drop, -drop, drop == 0 ? 1e-6 : 0.0625, places, Tip);
            }, iter: 200);

    [Fact] // What stands is never said to be more than it is: under the other rule a cell is at most as high as any place in it.
    public void The_other_rule_never_leaves_more() =>
        Gen.Select(Inside, Inside, AnyEnd).Sample((from, to, end) =>
        {
            var touched = new StockField(Stock, 1);
            var middle = new StockField(Stock, 0.2, CellRule.Middle);
            touched.Cut(from, to, end);
            middle.Cut(from, to, end);
            for (var row = 0; row < middle.Rows; row++)
                for (var column = 0; column < middle.Columns; column++)
                    Assert.True(touched.Heights[row / 5 * touched.Columns + column / 5] <= middle.Heights[row * middle.Columns + column] + 1e-4f);
        }, iter: 60);
}
