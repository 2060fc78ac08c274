using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>How much is searched and how much a bound settles. Counts, not times: they are the same on every machine.</summary>
public sealed class SweepWorkTests
{
    const double Clearance = 2;
    const int Moves = 5000;

    static readonly ToolShape Tool = ToolShape.From(new Tool
    {
        Number = 1,
        Kind = ToolKind.Drill,
        PointAngle = 118,
        Diameter = 6.8,
        FluteLength = 60,
        Length = 150,
        HolderGauge = 60,
        HolderDiameter = 40,
    });

    /// <summary>Clamps in a row along both long sides of a plate of 500 × 100 mm, 4 mm off its edges.</summary>
    static Obstacle[] Clamps(int count) =>
    [
        .. Enumerable.Range(0, count).Select(i =>
        {
            var x = i / 2 * 1000.0 / count;
            return (Obstacle)(i % 2 == 0
                ? new BoxObstacle($"clamp {i}", new(new(x, -30, 0), new(x + 6, -4, 25)))
                : new CylinderObstacle($"stud {i}", x + 3, 110, 6, 0, 30));
        }),
    ];

    /// <summary>Short moves over the plate, as contours and hole patterns are.</summary>
    static int Searched(Obstacle[] obstacles, double within)
    {
        var random = new Random(7);
        var searched = 0;
        var place = new Point3(250, 50, 2);
        for (var i = 0; i < Moves; i++)
        {
            var next = new Point3(Math.Clamp(place.X + random.Next(-20, 21), 0, 500), Math.Clamp(place.Y + random.Next(-20, 21), 0, 100), random.Next(-5, 3));
            Sweep.Line(place, next, Tool, obstacles, within, ref searched);
            Sweep.Arc(place, next, new(place.X + 3, place.Y, 0), clockwise: true, 17, 0, Tool, obstacles, within, ref searched);
            place = next;
        }
        return searched;
    }

    [Fact]
    public void Among_a_hundred_clamps_a_bound_settles_nearly_all()
    {
        var clamps = Clamps(100);
        Assert.InRange(Searched(clamps, Clearance), 1, 2 * Moves * clamps.Length * Tool.Cylinders.Length / 100);
    }

    [Fact] // The least of all is asked for, as a trace does: each search beats the last.
    public void Without_a_limit_few_are_searched() =>
        Assert.InRange(Searched(Clamps(100), double.PositiveInfinity), 2 * Moves, 2 * Moves * 100 * Tool.Cylinders.Length / 5);

    [Fact]
    public void Clamps_out_of_reach_add_no_search()
    {
        Obstacle[] far = [.. Clamps(100), .. Enumerable.Range(0, 900).Select(i => new BoxObstacle($"far {i}", new(new(i, 400, 0), new(i + 1, 420, 50))))];
        Assert.Equal(Searched(Clamps(100), Clearance), Searched(far, Clearance));
    }
}
