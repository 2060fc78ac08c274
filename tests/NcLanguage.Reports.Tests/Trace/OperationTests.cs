using NcLanguage.Checks.Operations;

namespace NcLanguage.Reports.Tests.Trace;

/// <summary>Where one operation ends and the next begins, what it is called, and what belongs to it. Times and ways by hand.</summary>
public sealed class OperationTests
{
    const string Drilling = """
        %
        O1 (BRACKET)
        (G54 LEFT FRONT)
        G21 G90 G17 G94 G54
        G0 Z50
        (SPOT)
        T1 M6
        G0 X0 Y0 Z50
        S1000 M3
        G99 G82 X10 Y0 Z-3 R2 P0.5 F120
        X20
        G80 G0 Z50
        (DRILL)
        G81 X20 Z-8 R2
        S1200
        X10
        G80 G0 Z50
        G83 X30 Z-8 R2 Q10 F240
        G80 G0 Z50
        T2 M6 (END MILL)
        G0 X-10 Y0 S1500 M3
        Z-1
        G1 X50 F600
        G3 X60 Y10 I0 J10
        G0 Z50
        M0
        M30
        """;

    static string[] Titles(OperationList list) => [.. list.Operations.Select(operation => operation.Title)];

    /// <summary>S stays in force behind M5, but a tool that stands still has no speed.</summary>
    [Fact]
    public void Holes_drilled_with_a_standing_spindle_have_no_speed()
    {
        const string Stopped = "G21 G90 G17 G94 G54\nT1 M6\nG0 X0 Y0 Z50 S1000 M3\nM5\nG99 G81 X10 Y0 Z-3 R2 F120\nX20\nG80 G0 Z50\nM30\n";
        var speed = Assert.Single(Operations.Of(Stopped).Operations, operation => operation.Holes == 2).Speed;
        Assert.True(double.IsNaN(speed.Least) && double.IsNaN(speed.Greatest));
        Assert.Equal(1000, Assert.Single(Operations.Of(Stopped.Replace("M5\n", "", StringComparison.Ordinal)).Operations, operation => operation.Holes == 2).Speed.Greatest);
    }

    [Fact]
    public void A_tool_a_cycle_and_a_comment_end_an_operation()
    {
        var list = Operations.Of(Drilling);
        Assert.Equal(["SPOT", "DRILL", "G83 peck drilling", "END MILL"], Titles(list));
        Assert.Equal([true, true, false, true], list.Operations.Select(operation => operation.IsTitled));
        Assert.Equal([1, 1, 1, 2], list.Operations.Select(operation => operation.Tool));
        Assert.Equal([OperationKind.Cycle, OperationKind.Cycle, OperationKind.Cycle, OperationKind.Feed], list.Operations.Select(operation => operation.Kind));
        Assert.Equal([82, 81, 83, 0], list.Operations.Select(operation => operation.Cycle));
        Assert.Equal([2, 2, 1, 0], list.Operations.Select(operation => operation.Holes));
        // From the first move that leads to it (the tool change) to its last; what leads away before a tool change is the end of the operation before.
        Assert.Equal([(5, 11), (12, 16), (17, 19), (20, 27)], list.Operations.Select(operation => (operation.FirstLine + 1, operation.LastLine + 1)));
        Assert.Equal([(1000.0, 1000.0), (1000, 1200), (1200, 1200), (1500, 1500)], list.Operations.Select(operation => (operation.Speed.Least, operation.Speed.Greatest)));
        Assert.Equal([(120.0, 120.0), (120, 120), (240, 240), (600, 600)], list.Operations.Select(operation => (operation.Feed.Least, operation.Feed.Greatest)));
        Assert.Equal([-3.0, -8, -8, -1], list.Operations.Select(operation => operation.Deepest));
        // M0 is a stop, M30 the end.
        Assert.Equal([0, 0, 0, 1], list.Operations.Select(operation => operation.Stops));
    }

    [Fact]
    public void Seconds_and_ways_by_hand()
    {
        var totals = Operations.Of(Drilling).Operations.Select(operation => operation.Totals).ToList();
        // Two holes from R2 to Z-3 at 120 mm/min, each with a dwell of half a second; two to Z-8; one at 240 mm/min in one stroke.
        Assert.Equal([5.0, 10, 2.5], totals.Take(3).Select(total => total.FeedSeconds), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal([1.0, 0, 0, 0], totals.Select(total => total.DwellSeconds));
        Assert.Equal([5.0, 0, 0, 5], totals.Select(total => total.ChangeSeconds));
        // 60 mm along X and a quarter of a circle of 10 at 600 mm/min.
        Assert.Equal((60 + 5 * Math.PI) / 10, totals[3].FeedSeconds, 9);
        Assert.Equal(60 + 5 * Math.PI, totals[3].CutDistance, 9);
        // DRILL: Z2 to 50 and back down to R, 10 back in X at R, two returns of 10.
        Assert.Equal(48 + 48 + 10 + 20, totals[1].RapidDistance, 9);
        Assert.Equal((48 + 48 + 10 + 20) / 100.0, totals[1].RapidSeconds, 9);
        // END MILL: from X30 Y0 Z50 to X-10, down 51, up 51 again.
        Assert.Equal(40 + 51 + 51, totals[3].RapidDistance, 9);
    }

    [Fact]
    public void A_comment_without_a_rapid_before_the_next_cut_ends_nothing() =>
        Assert.Equal(["FIRST"], Titles(Operations.Of("G21 G90 G17 G94\nT2 M6\n(FIRST)\nG0 X0 Y0 Z5\nG1 Z-1 F100\n(LONG SIDE)\nX50\nG0 Z5\nX0\nG1 Z-2\nX50\nM30\n")));

    [Fact]
    public void A_comment_and_a_rapid_begin_the_next() =>
        Assert.Equal(["FIRST", "SECOND"], Titles(Operations.Of("G21 G90 G17 G94\nT2 M6\n(FIRST)\nG0 X0 Y0 Z5\nG1 Z-1 F100\nX50\nG0 Z5\n(SECOND)\nX0\nG1 Z-2\nX50\nM30\n")));

    [Fact]
    public void A_comment_that_only_the_way_home_follows_is_no_title_of_the_next_tool() =>
        Assert.Equal(["FIRST", "Milling"], Titles(Operations.Of(
            "G21 G90 G17 G94\nT1 M6\n(FIRST)\nG0 X0 Y0 Z5\nG1 Z-1 F100\n(HOME)\nG0 Z50\nT2 M6\nG0 X0\nG1 Z-2\nM30\n", Operations.Plate)));

    [Fact]
    public void Rounds_of_a_loop_under_one_comment_are_one_operation()
    {
        const string Loop = "G21 G90 G17 G94\nT2 M6\n#1 = 0\nWHILE [#1 LT 3] DO 1\n(LEFT)\nG0 X0 Y0 Z5\nG1 Z-1 F100\nG0 Z5\n(RIGHT)\nX50\nG1 Z-1\nG0 Z5\n#1 = #1 + 1\nEND 1\nM30\n";
        var list = Operations.Of(Loop);
        Assert.Equal(["LEFT", "RIGHT"], Titles(list));
        // Three plunges of 6 mm each.
        Assert.All(list.Operations, operation => Assert.Equal(18, operation.Totals.CutDistance, 9));
    }

    [Fact]
    public void Nothing_cut_is_an_operation_of_its_own_and_nothing_at_all_is_none()
    {
        Assert.Equal(["Moves without a cut"], Titles(Operations.Of("G21 G90\nG0 X10\nM30\n")));
        Assert.Equal(["Moves without a cut", "Cuts at feed"], Titles(Operations.Of("G21 G90 G94\nT3 M6\nG0 X0 Y0 Z10\nT1 M6\nG0 X10\nG1 X20 F100\nM30\n", Operations.Plate)));
        Assert.Equal(["Probing"], Titles(Operations.Of("G21 G90 G94\nT9 M6\nG0 X0 Y0 Z10\nG38.2 Z-5 F50\nM30\n", Operations.Plate)));
        Assert.Empty(Operations.Of("").Operations);
        Assert.Empty(Operations.Of("%\nO1\n%\n").Operations);
    }

    /// <summary>An arc of 10 in the XZ plane from Z0 through its lowest place to Z0 reaches Z-10; the short way over the top stays above.</summary>
    [Theory]
    [InlineData("G18 G3 X20 Z0 I10 K0", 0)]
    [InlineData("G18 G2 X20 Z0 I10 K0", -10)]
    [InlineData("G19 G2 Y20 Z0 J10 K0", 0)]
    [InlineData("G19 G3 Y20 Z0 J10 K0", -10)]
    [InlineData("G18 G2 X10 Z-10 I10 K0", -10)]
    public void The_lowest_place_of_an_arc_may_lie_between_its_ends(string arc, double deepest)
    {
        // Seen against +Y the ZX plane has Z to the first axis, X to the second (NISTIR 6556 §3.5.3): there clockwise from X0 to X20 runs below or above.
        var list = Operations.Of($"G21 G90 G94 T2 M6\nG0 X0 Y0 Z0\n{arc} F100\nM30\n");
        Assert.Equal(deepest, Assert.Single(list.Operations).Deepest, 9);
    }

    /// <summary>A drilled hole is a cylinder on a cone (elementary solid geometry): D 6, 118°, 8 deep at the point. The mill of 10 clears a slot 1 deep of
    /// 60 mm with a half circle at its far end, as far as it lies in the plate, which begins at X0.</summary>
    [Fact]
    public void What_is_removed_belongs_to_the_operation_that_took_it()
    {
        const string Blocks = "G21 G90 G17 G94 G54\nT1 M6\nG0 X80 Y20 Z50\nS1000 M3\nG99 G81 X80 Y20 Z-8 R2 F120\nG80 G0 Z50\nT2 M6\nG0 X-10 Y20 Z-1 S1000 M3\nG1 X50 F600\nX-10\nM30\n";
        const string Setup = """
            { "stock": { "min": [0, 0, -20], "max": [100, 40, 0] },
              "tools": [ { "number": 1, "kind": "drill", "diameter": 6, "pointAngle": 118 }, { "number": 2, "kind": "end-mill", "diameter": 10 } ] }
            """;
        var list = Operations.Of(Blocks, Setup);
        var cone = 3 / Math.Tan(59 * Math.PI / 180);
        var (drilled, milled) = (Math.PI * 9 * (8 - cone) + Math.PI * 9 * cone / 3, 10 * 50 + Math.PI * 25 / 2);
        Assert.Equal(drilled, list.Operations[0].Removed!.Value, 0.02 * drilled);
        Assert.Equal(milled, list.Operations[1].Removed!.Value, 0.01 * milled);
        Assert.Equal(list.Operations.Sum(operation => operation.Removed!.Value), list.Removed!.Value, 9);
        Assert.Null(Operations.Of(Blocks).Removed);
        Assert.Equal([8, 1], list.Operations.Select(operation => Math.Round(operation.DepthOfCut!.Value, 3)));
        // Volume over time (common practice, Q = V / t): there and back the mill feeds 120 mm at 600 mm/min, 12 s.
        Assert.Equal(milled * 60 / 12, list.Operations[1].RemovalRate!.Value, 0.01 * milled * 60 / 12);
        // A tool of unknown size takes an unknown amount, and so does all behind it.
        Assert.Equal([null, null], Operations.Of(Blocks, """{ "stock": { "min": [0, 0, -20], "max": [100, 40, 0] } }""").Operations.Select(operation => operation.Removed));
        Assert.Equal([null, null], Operations.Of(Blocks).Operations.Select(operation => operation.DepthOfCut ?? operation.RemovalRate));
    }

    /// <summary>A bore milled as a helix of 4 mm a turn, and a level circle to clean its floor: no cut is deeper than a turn (solid geometry), whatever chords the helix is followed by.</summary>
    [Theory]
    [InlineData("G1 X6.2\n", 4)]
    [InlineData("G1 X20\n", 12)]
    public void A_circle_behind_a_helix_cuts_no_deeper_than_its_turns(string behind, double deepest)
    {
        const string Helix = "G21 G90 G17 G94 G54\nT6 M6\nG0 X6.2 Y0 Z1 S4000 M3\nG1 Z0 F400\nG3 I-6.2 Z-4 F600\nI-6.2 Z-8\nI-6.2 Z-12\nI-6.2\n";
        var list = Operations.Of(Helix + behind + "G0 Z20\nM30\n", """
            { "stock": { "min": [-30, -30, -30], "max": [30, 30, 0] }, "tools": [ { "number": 6, "kind": "end-mill", "diameter": 16, "centreCutting": true } ] }
            """);
        Assert.Equal(deepest, Assert.Single(list.Operations).DepthOfCut!.Value, 0.01);
    }

    [Fact]
    public void Tools_sum_their_operations()
    {
        var list = Operations.Of(Drilling);
        Assert.Equal([(1, 3), (2, 1)], list.Tools.Select(tool => (tool.Tool, tool.Operations.Length)));
        Assert.Equal(list.Totals.Seconds, list.Tools.Sum(tool => tool.Totals.Seconds), 9);
        Assert.Equal((1000.0, 1200.0), (list.Tools[0].Speed.Least, list.Tools[0].Speed.Greatest));
    }
}
