using NcLanguage.Checks.Operations;

namespace NcLanguage.Reports.Tests.Trace;

/// <summary>What return levels cost (NISTIR 6556 §3.5.16, §3.5.20; beforeMove common practice): ways by hand at 100 mm/s, the clamp is 25 high and the
/// clearance 2, so that the traverse over it clears from Z27.</summary>
public sealed class ReturnCostTests
{
    static ReturnCost Of(string cycle, string readings = "") => Operations.Of(
        $"G21 G90 G17 G94 G54\nT1 M6\nG43 H1 G0 X10 Y20 Z40\nS1000 M3\n{cycle}\nG80\nM30\n", Operations.Plate, readings).Returns!.Value;

    [Fact]
    public void Always_to_the_initial_level()
    {
        var cost = Of("G98 G81 X10 Y20 Z-5 R2 F600\nX20\nX50\nX60");
        // Each of three hops: 45 up from the bottom, 38 down to R. At the least: 7 up for two of them, 32 up and 25 down for the one over the clamp.
        Assert.Equal((3, 3, 0), (cost.Hops, cost.Higher, cost.NotJudged));
        Assert.Equal(3 * (0.45 + 0.38), cost.Chosen, 9);
        Assert.Equal(0.07 + 0.07 + 0.32 + 0.25, cost.Least, 9);
        Assert.Equal(cost.Chosen - cost.Least, cost.Difference, 12);
    }

    [Fact]
    public void Only_where_it_is_needed()
    {
        var cost = Of("G99 G81 X10 Y20 Z-5 R2 F600\nG98 X20\nG99 X50\nX60");
        Assert.Equal((3, 1), (cost.Hops, cost.Higher));
        // What stays at R is not compared: 45 up and 38 down against 32 and 25.
        Assert.Equal((0.83, 0.57), (cost.Chosen, cost.Least), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-9);
    }

    [Fact]
    public void Pecks_go_up_to_the_level_too()
    {
        var cost = Of("G98 G83 X10 Y20 Z-10 R2 Q5 F600\nX20");
        // Pecks to Z-3 and Z-8, 1 short of them on the way in: 43, 42, 48, 47, then 50 up and 38 down. At R: 5, 4, 10, 9 and 12.
        Assert.Equal(2.68, cost.Chosen, 9);
        Assert.Equal(0.40, cost.Least, 9);
    }

    [Fact]
    public void Pecks_that_come_out_to_R_cost_nothing_above_it()
    {
        var cost = Of("G98 G83 X10 Y20 Z-10 R2 Q5 F600\nX20", "peckReturn=rLevel");
        // 50 up and 38 down; at R 12 up.
        Assert.Equal(0.88, cost.Chosen, 9);
        Assert.Equal(0.12, cost.Least, 9);
    }

    [Fact]
    public void A_return_at_feed_costs_its_feed()
    {
        var cost = Of("G98 G85 X10 Y20 Z-5 R2 F600\nX20");
        Assert.Equal(4.5 + 0.38, cost.Chosen, 9);
        Assert.Equal(0.7, cost.Least, 9);
    }

    [Fact]
    public void A_lift_before_the_move_is_the_same_height_twice()
    {
        var cost = Of("G98 G81 X10 Y20 Z-5 R2 F600\nX20\nX50", "returnLevel=beforeMove");
        Assert.Equal((2, 2), (cost.Hops, cost.Higher));
        Assert.Equal(2 * 0.76, cost.Chosen, 9);
        Assert.Equal(0.25 + 0.25, cost.Least, 9);
    }

    [Fact]
    public void What_does_not_clear_or_is_not_known_is_not_judged()
    {
        var low = Of("G99 G81 X20 Y20 Z-5 R2 F600\nX50");
        Assert.Equal((0, 1, 0.0), (low.Hops, low.NotJudged, low.Difference));
        var without = Operations.Of("G21 G90 G17 G94 G54\nT1 M6\nG0 X10 Y20 Z40\nG98 G81 X10 Y20 Z-5 R2 F600\nX20\nG80\nM30\n").Returns!.Value;
        Assert.Equal((0, 1), (without.Hops, without.NotJudged));
        Assert.Null(Operations.Of("G21 G90 G17 G94\nG0 X0 Y0 Z5\nG1 X5 F100\nM30\n").Returns);
    }
}
