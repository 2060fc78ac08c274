using NcLanguage.Editing.Refactorings;
using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Refactorings;

/// <summary>The order of holes. The shortest ways of these few holes can be seen without reckoning.</summary>
public sealed class OrderTests
{
    [Fact]
    public void Holes_in_a_row_are_drilled_one_after_the_other() => Assert.Equal(
        "G21 G90 G0 X0 Y10 Z20\nN10 G99 G81 X10 Y10 Z-5 R2 F100 (cycle)\nN20 X20\n(between)\nN30 X40 (mid)\nN40 X50 (far)\nN50 G80\nM30\n",
        Rewritten.At(2, "orderHoles", "G21 G90 G0 X0 Y10 Z20\nN10 G99 G81 X10 Y10 Z-5 R2 F100 (cycle)\nN20 X50 (far)\n(between)\nN30 X20\nN40 X40 (mid)\nN50 G80\nM30\n"));

    [Fact]
    public void Where_positions_are_distances_they_are_written_so() => Assert.Equal(
        "G21 G90 G0 X0 Y10 Z20\nG99 G81 X10 Y0 Z-5 R2 F100\nX10\nX20\nG80\nM30\n",
        Rewritten.At(1, "orderHoles", "G21 G90 G0 X0 Y10 Z20\nG99 G81 X10 Y0 Z-5 R2 F100\nX30\nX-20\nG80\nM30\n",
            machine: Editor.Reading("holePositions=incremental", "returnLevel=beforeMove")));

    /// <summary>The clamp stands between X25 and X45 up to Y20: round it no traverse has to be lifted.</summary>
    [Fact]
    public void The_way_leads_round_a_clamp() => Assert.Equal(
        "G21 G90 G54 G17 T4 M6\nG0 X10 Y10 S1000 M3\nG43 H4 Z30\nG99 G81 X10 Y10 Z-3 R2 F100\nY50\nX60\nY10\nG80\nG0 Z30\nM30\n",
        Rewritten.At(3, "orderHoles",
            "G21 G90 G54 G17 T4 M6\nG0 X10 Y10 S1000 M3\nG43 H4 Z30\nG98 G81 X10 Y10 Z-3 R2 F100\nX60\nG99 X10 Y50\nX60\nG80\nG0 Z30\nM30\n", Editor.PlateSetup));

    [Fact]
    public void A_short_way_stays() => Assert.Equal(
        "No order was found that takes less travel than this one.",
        Rewritten.Refused(1, "orderHoles", "G21 G90 G0 X0 Y10 Z20\nG99 G81 X10 Y10 Z-5 R2 F100\nX20\nX50\nG80\nM30\n"));

    [Theory]
    [InlineData("X50\nX20 Z-6\nX40", "The hole of line 4 is not like the first: only holes alike are ordered.")]
    [InlineData("X50\nX20 M8\nX40", "Line 4 says more than where its hole lies (M8).")]
    [InlineData("X50\nX20 L2\nX40", "Line 4 drills more than one hole.")]
    [InlineData("G91 X50\nX20\nX40", "Line 3 is read in distances (G91): write it in positions first.")]
    [InlineData("X50\n/X20\nX40", "Line 4 can be skipped by a switch at the machine.")]
    public void What_cannot_be_ordered_says_why(string holes, string expected) => Assert.Equal(
        expected, Rewritten.Refused(1, "orderHoles", $"G21 G90 G0 X0 Y10 Z20\nG99 G81 X10 Y10 Z-5 R2 F100\n{holes}\nG80\nM30\n"));

    [Fact]
    public void Cuts_behind_the_run_begin_where_they_began() => Assert.StartsWith(
        "The new text would not do the same between the holes",
        Rewritten.Refused(1, "orderHoles", "G21 G90 G0 X0 Y10 Z20\nG99 G81 X10 Y10 Z-5 R2 F100\nX50\nX20\nG80\nG1 Y50\nM30\n"), StringComparison.Ordinal);

    [Fact]
    public void Two_holes_have_no_order() => Assert.False(Rewritten.IsOffered(Lines.At(1), "orderHoles", "G21 G90 G0 X0 Y10 Z20\nG99 G81 X10 Y10 Z-5 R2 F100\nX50\nG80\nM30\n"));

    [Fact]
    public void Random_places_never_get_a_longer_way()
    {
        var random = new Random(20261127);
        for (var run = 0; run < 100; run++)
        {
            var places = Enumerable.Range(0, random.Next(2, 40)).Select(_ => (X: random.NextDouble() * 100, Y: random.NextDouble() * 100)).ToArray();
            double Between(int a, int b) => Math.Sqrt(Math.Pow(places[a].X - places[b].X, 2) + Math.Pow(places[a].Y - places[b].Y, 2));
            var fromStart = places.Select(place => Math.Sqrt(place.X * place.X + place.Y * place.Y)).ToArray();
            var order = ShortestOrder.Of(places.Length, fromStart, Between, default);
            Assert.Equal(Enumerable.Range(0, places.Length), order.Order());
            Assert.True(Length(order) <= Length([.. Enumerable.Range(0, places.Length)]) + 1e-9);

            double Length(int[] way) => fromStart[way[0]] + Enumerable.Range(1, way.Length - 1).Sum(i => Between(way[i - 1], way[i]));
        }
    }

    /// <summary>Time is not to be saved on a way that meets a clamp: it is mended first.</summary>
    [Fact]
    public void A_way_that_meets_something_is_to_be_mended_first()
    {
        const string setup = """
            { "units": "mm", "frame": "G54", "stock": { "min": [0, 0, -20], "max": [200, 100, 0] }, "clearance": 2,
              "obstacles": [ { "name": "clamp", "min": [32, -10, 0], "max": [42, 30, 30] } ],
              "tools": [ { "number": 4, "kind": "drill", "diameter": 6 } ] }
            """;
        const string program = "G21 G90 G54 G17 T4 M6\nG0 X20 Y15 S1000 M3\nG43 H4 Z50\nG99 G81 X20 Y15 Z-5 R2 F120\nX50\nG98 X110\nX130\nX150\nG80\nG0 Z50\nM30\n";
        Assert.Equal("The way to a hole in line 5 would still meet something (hop-hits-obstacle): mend that first.", Rewritten.Refused(0, "allReturnLevels", program, setup));
    }
}
