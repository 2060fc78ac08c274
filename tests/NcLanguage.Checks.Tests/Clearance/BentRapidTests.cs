using CsCheck;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Tests.Clearance;

public class BentRapidTests
{
    static Point3[] Path(Point3 from, Point3 to, Point3 rates)
    {
        var path = new Point3[4];
        return path[..BentRapid.Points(from, to, rates, path)];
    }

    [Fact] // 45 degrees to X50 Y50, then along X: 50 * sqrt(2) + 50.
    public void Its_length_is_that_of_its_pieces() =>
        Assert.Equal(120.7107, BentRapid.Length(default, new(100, 50, 0), new(15000, 15000, 15000)), 4);

    [Fact] // Closed form: at equal rates X and Y run together until the shorter is there.
    public void Equal_rates_go_at_45_degrees_first() =>
        Assert.Equal([new(0, 0, 0), new(30, 30, 0), new(100, 30, 0)], Path(new(0, 0, 0), new(100, 30, 0), new(15000, 15000, 15000)));

    [Fact]
    public void Each_axis_may_arrive_at_a_time_of_its_own() =>
        Assert.Equal([new(0, 0, 0), new(-20, 20, 10), new(-40, 40, 10), new(-60, 40, 10)], Path(new(0, 0, 0), new(-60, 40, 10), new(20000, 20000, 10000)));

    [Fact]
    public void Axes_that_arrive_together_make_no_corner()
    {
        Assert.Equal(2, Path(new(0, 0, 5), new(70, -70, 5), new(15000, 15000, 8000)).Length);
        Assert.Equal(2, Path(new(0.1, 0.2, 0), new(0.4, 0.5, 0.1), new(9000, 9000, 3000)).Length);
        Assert.Equal(2, Path(new(1, 2, 3), new(1, 2, 3), new(9000, 9000, 3000)).Length);
    }

    [Fact]
    public void Without_a_place_or_a_rate_there_is_no_path()
    {
        Assert.Empty(Path(new(double.NaN, 0, 0), new(1, 0, 0), new(1, 1, 1)));
        Assert.Empty(Path(new(0, 0, 0), new(1, 0, 0), new(double.NaN, 1, 1)));
        Assert.Empty(Path(new(0, 0, 0), new(1, 0, 0), new(0, 1, 1)));
        Assert.Equal(2, Path(new(0, 0, 0), new(1, 0, 0), new(1, double.NaN, 0)).Length);
    }

    // Outside reference: a simulation in small time steps, each axis moving at its own rate until it is there.
    [Fact]
    public void It_agrees_with_a_simulation_in_small_steps() =>
        Gen.Select(Reference.Place, Reference.Place, Gen.Double[3000, 30000], Gen.Double[3000, 30000], Gen.Double[3000, 30000]).Sample((from, to, x, y, z) =>
        {
            var rates = new Point3(x, y, z);
            var path = Path(from, to, rates);
            Assert.Equal(from, path[0]);
            Assert.Equal(to, path[^1]);
            var position = from;
            var step = 1e-5; // minutes: at most 0.3 mm
            while (position != to)
            {
                for (var axis = 0; axis < 3; axis++)
                {
                    var left = to[axis] - position[axis];
                    position = position.With(axis, Math.Abs(left) <= rates[axis] * step ? to[axis] : position[axis] + Math.Sign(left) * rates[axis] * step);
                }
                var off = Enumerable.Range(1, path.Length - 1).Min(i => FromSegment(position, path[i - 1], path[i]));
                // A step that ends at an axis's destination cuts the corner by no more than a step.
                Assert.True(off < 1e-6, $"{position} is {off} off the path");
            }
        }, iter: 300);

    static double FromSegment(Point3 p, Point3 a, Point3 b)
    {
        var (along, to) = (b - a, p - a);
        var square = along.X * along.X + along.Y * along.Y + along.Z * along.Z;
        var t = square == 0 ? 0 : Math.Clamp((along.X * to.X + along.Y * to.Y + along.Z * to.Z) / square, 0, 1);
        return Point3.Distance(p, Point3.Lerp(a, b, t));
    }
}
