using NcLanguage.Checks.Cutting;

namespace NcLanguage.Checks.Tests.Cutting.Figures;

/// <summary>Places by X = Xc + R·cos, Y = Yc + R·sin, worked out by hand.</summary>
public sealed class HolePatternTests
{
    [Fact]
    public void Six_on_a_circle() => Same(
        [(150, 100), (125, 143.301), (75, 143.301), (50, 100), (75, 56.699), (125, 56.699)], HolePattern.Circle(new(100, 100), 100, 6, 0));

    [Fact]
    public void Five_on_a_circle_from_the_top() => Same(
        [(0, 40), (-38.042, 12.361), (-23.511, -32.361), (23.511, -32.361), (38.042, 12.361)], HolePattern.Circle(new(0, 0), 80, 5, 90));

    [Theory]
    [InlineData(100, 6)]
    [InlineData(80, 5)]
    public void Neighbours_are_a_chord_apart(double diameter, int holes)
    {
        var places = HolePattern.Circle(new(3, 4), diameter, holes, 17);
        for (var i = 0; i < holes; i++)
        {
            var (a, b) = (places[i], places[(i + 1) % holes]);
            Assert.Equal(HolePattern.Chord(diameter, 360.0 / holes), Math.Sqrt(Math.Pow(a.X - b.X, 2) + Math.Pow(a.Y - b.Y, 2)), 1e-9);
        }
    }

    [Fact]
    public void An_arc_clockwise() => Same([(0, 50), (50, 0), (0, -50)], HolePattern.Arc(new(0, 0), 100, 3, 90, -90));

    [Fact]
    public void A_grid_goes_there_and_back() => Same([(10, 5), (30, 5), (50, 5), (50, 15), (30, 15), (10, 15)], HolePattern.Grid(new(10, 5), 3, 2, 20, 10, 0));

    [Fact]
    public void A_grid_turns_about_its_first_hole() => Same([(10, 5), (10, 25), (0, 25), (0, 5)], HolePattern.Grid(new(10, 5), 2, 2, 20, 10, 90));

    static void Same((double X, double Y)[] expected, IReadOnlyList<PatternHole> found)
    {
        Assert.Equal(expected.Length, found.Count);
        for (var i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i].X, found[i].X, 0.0005);
            Assert.Equal(expected[i].Y, found[i].Y, 0.0005);
        }
    }
}
