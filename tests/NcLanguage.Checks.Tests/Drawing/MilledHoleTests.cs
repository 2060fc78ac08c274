using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Drawing;

/// <summary>Holes that are made without a cycle. A mill of diameter d whose centre goes round on radius r cuts to r + d/2 from the middle (elementary geometry); under radius
/// compensation the centre is kept d/2 off the circle that is written (NISTIR 6556 §3.5.10).</summary>
public sealed class MilledHoleTests
{
    const string Setup = """
        { "stock": { "min": [0, 0, -20], "max": [100, 100, 0] },
          "tools": [ { "number": 1, "kind": "end-mill", "diameter": 10, "flutes": 3, "radiusOffset": 1 },
                     { "number": 2, "kind": "drill", "diameter": 8, "pointAngle": 118 },
                     { "number": 3, "kind": "thread-mill", "diameter": 12, "pitch": 1.5 },
                     { "number": 4, "kind": "ball-mill", "diameter": 10 }, { "number": 5, "kind": "spot-drill", "diameter": 12, "pointAngle": 90 } ],
          "holes": [ HOLES ] }
        """;

    static DrawingComparison Compare(string holes, string cuts)
    {
        var setup = SetupFile.Read("test.setup.json", Encoding.UTF8.GetBytes(Setup.Replace("HOLES", holes, StringComparison.Ordinal)));
        Assert.Empty(setup.Problems);
        var text = "G21 G90 G17 G54 G94 G40\nG0 X50 Y50 Z20\nM3 S800 F200\n" + cuts.ReplaceLineEndings("\n") + "\nM30\n";
        return DrawingComparison.Of(ProgramRun.Create(SourceText.From(text), new Job(MachineProfile.IsoMill, setup.Setup), [], [], CancellationToken.None));
    }

    static DrawingMatch Single(double diameter, double depth, string cuts) =>
        Assert.Single(Compare($$"""{ "x": 50, "y": 50, "diameter": {{diameter}}, "depth": {{depth}} }""", cuts).Matches);

    // 2·(4 + 10/2) = 18.
    [Theory]
    [InlineData("G3 X54 Y50 I-4 J0")]
    [InlineData("G2 X54 Y50 I-4 J0")]
    [InlineData("G3 X46 Y50 I-4 J0\nG3 X54 Y50 I4 J0")]
    [InlineData("G3 X50 Y54 I-4 J0\nG3 X46 Y50 I0 J-4\nG3 X50 Y46 I4 J0\nG3 X54 Y50 I0 J4")]
    public void A_full_circle_in_one_piece_or_more_is_a_hole(string circle)
    {
        var match = Single(18, 5, "T1 M6\nG0 X54 Y50 Z2\nG1 Z-5\n" + circle);
        Assert.Equal((HoleStatus.Drilled, HoleMaking.Milled, false), (match.Status!.Value, match.By, match.MayBeBoss));
        Assert.Equal((18, 5), (match.Diameter, match.Depth));
        Assert.Equal(HoleStatus.WrongSize, Single(18.1, 5, "T1 M6\nG0 X54 Y50 Z2\nG1 Z-5\n" + circle).Status);
        Assert.Equal(HoleStatus.Shallow, Single(18, 5.1, "T1 M6\nG0 X54 Y50 Z2\nG1 Z-5\n" + circle).Status);
    }

    // 2·(2.25 + 10/2) = 14.5, in which the thread mill winds 1.5 mm up.
    [Fact]
    public void A_thread_that_is_milled_in_a_plain_hole_is_not_as_drawn()
    {
        const string Core = "T1 M6\nG0 X52.25 Y50 Z2\nG1 Z-12\nG3 X52.25 Y50 I-2.25 J0\nG0 Z20\n";
        Assert.Equal(HoleStatus.Drilled, Single(14.5, 12, Core).Status);
        var match = Single(14.5, 12, Core + "T3 M6\nG0 X52 Y50 Z-10\nG3 X52 Y50 I-2 J0 Z-8.5\nG0 Z20");
        Assert.Equal((HoleStatus.WrongSize, true, ThreadMaking.Milled), (match.Status!.Value, match.IsThreadUndrawn, match.ThreadBy));
    }

    [Fact]
    public void Three_quarters_of_a_circle_are_no_hole() =>
        Assert.Equal(HoleStatus.Missing, Single(18, 5, "T1 M6\nG0 X54 Y50 Z-5\nG3 X50 Y46 I-4 J0").Status);

    // Of the arcs between the two halves, or around them, none is a piece of a turn.
    [Fact]
    public void Arcs_between_two_halves_part_them()
    {
        const string Away = "G3 X40 Y50 I-3 J0\nG2 X46 Y50 I3 J0\n";
        Assert.Equal(HoleStatus.Missing, Single(18, 5, $"T1 M6\nG0 X54 Y50 Z-5\nG3 X46 Y50 I-4 J0\n{Away}G3 X54 Y50 I4 J0").Status);
        Assert.Equal(HoleStatus.Drilled, Single(18, 5, $"T1 M6\nG0 X46 Y50 Z-5\n{Away}{Away}G3 X54 Y50 I4 J0\nG3 X46 Y50 I-4 J0\n{Away}{Away}G1 X50").Status);
    }

    // Turns of a circle go on where a chunk of the text ends, whatever stands before and behind it.
    [Fact]
    public void Two_halves_in_two_chunks_are_one_hole()
    {
        const string Away = "G3 X40 Y50 I-3 J0\nG2 X46 Y50 I3 J0\n";
        for (var lines = 0; lines < 130; lines++)
        {
            var before = string.Concat(Enumerable.Repeat("(finish)\n", lines));
            Assert.Equal(HoleStatus.Drilled, Single(18, 5, $"T1 M6\nG0 X46 Y50 Z-5\n{Away}{before}{Away}G3 X54 Y50 I4 J0\nG3 X46 Y50 I-4 J0\n{Away}{Away}").Status);
        }
    }

    [Fact]
    public void Quarters_of_two_levels_are_no_circle() =>
        Assert.Equal(HoleStatus.Missing, Single(18, 5, "T1 M6\nG0 X54 Y50 Z-5\nG3 X46 Y50 I-4 J0\nG0 Z-3\nG3 X54 Y50 I4 J0").Status);

    // Two mm a turn: the last whole turn of a helix to Z-6 begins at Z-4; going round once more at the bottom makes it 6 deep.
    [Theory]
    [InlineData("G3 X54 Y50 I-4 J0 Z-2\nG3 X54 Y50 I-4 J0 Z-4\nG3 X54 Y50 I-4 J0 Z-6", 4)]
    [InlineData("G3 X54 Y50 I-4 J0 Z-2\nG3 X54 Y50 I-4 J0 Z-4\nG3 X54 Y50 I-4 J0 Z-6\nG3 X54 Y50 I-4 J0", 6)]
    [InlineData("G3 X46 Y50 I-4 J0 Z-1\nG3 X54 Y50 I4 J0 Z-2\nG3 X46 Y50 I-4 J0 Z-3", 1)]
    public void A_helix_is_as_deep_as_its_last_whole_turn(string helix, double depth) =>
        Assert.Equal(depth, Single(18, 6, "T1 M6\nG0 X54 Y50 Z0\n" + helix).Depth, 6);

    // A thread is a helix: the screw follows the groove to its lowest place (common practice), however many turns it has.
    [Theory]
    [InlineData("G1 Z-15\nG3 X54 Y50 I-4 J0 Z-13.5", 15)] // up
    [InlineData("G1 Z-13.5\nG2 X54 Y50 I-4 J0 Z-15", 15)] // down
    [InlineData("G1 Z0\nG2 X54 Y50 I-4 J0 Z-1.5\nG2 X54 Y50 I-4 J0 Z-3\nG2 X54 Y50 I-4 J0 Z-4.5", 4.5)]
    [InlineData("G1 Z-15\nG3 X46 Y50 I-4 J0 Z-14.25", double.NaN)] // half a turn is no thread
    public void A_milled_thread_is_as_deep_as_its_helix(string helix, double depth) =>
        Assert.Equal(depth, Single(20, 15, "T3 M6\nG0 X54 Y50 Z2\n" + helix).ThreadDepth, 6);

    [Fact]
    public void A_helix_from_below_is_as_deep_as_the_end_of_its_first_turn() =>
        Assert.Equal(4, Single(18, 6, "T1 M6\nG0 X54 Y50 Z-6\nG3 X54 Y50 I-4 J0 Z-4\nG3 X54 Y50 I-4 J0 Z-2").Depth, 6);

    // The written circle of 30 is the hole: the centre runs on 30/2 - 5.
    [Fact]
    public void Under_compensation_the_written_circle_is_the_hole()
    {
        var match = Single(30, 4, "T1 M6\nG0 X50 Y50 Z-4\nG41 D1 G1 X59 Y44\nG3 X65 Y50 I0 J6\nG3 X65 Y50 I-15 J0\nG3 X59 Y56 I-6 J0\nG40 G1 X50 Y50");
        Assert.Equal((HoleStatus.Drilled, 30), (match.Status!.Value, Math.Round(match.Diameter, 6)));
    }

    // Round a boss of 30 the centre runs on 20: a ring from 30 to 50, and perhaps no hole.
    [Fact]
    public void A_circle_that_leaves_its_middle_may_be_a_boss()
    {
        const string Around = "T1 M6\nG0 X70 Y50 Z-4\nG2 X70 Y50 I-20 J0";
        Assert.Equal((HoleStatus.Drilled, true), (Single(50, 4, Around).Status!.Value, Single(50, 4, Around).MayBeBoss));
        // A drilled hole inside stays the hole of its size.
        Assert.Equal(HoleStatus.Drilled, Single(8, 4, "T2 M6\nG0 X50 Y50\nG1 Z-7\nG0 Z20\n" + Around).Status);
        // Cleared in three steps of the tool's width it is one.
        var cleared = Single(8, 4, "T2 M6\nG0 X50 Y50\nG1 Z-7\nG0 Z20\nT1 M6\nG0 X54 Y50 Z-7\nG3 X54 Y50 I-4 J0\nG1 X60\nG3 X60 Y50 I-10 J0\nG1 X70\nG3 X70 Y50 I-20 J0");
        Assert.Equal((HoleStatus.WrongSize, 50), (cleared.Status!.Value, cleared.Diameter));
    }

    // Plunged in the middle, round on 7 with a mill of 10: 2·(7 + 5) = 24 wide, and 4 stand in the middle until the mill crosses it.
    [Theory]
    [InlineData(25, HoleStatus.WrongSize)]
    [InlineData(24, HoleStatus.Drilled)]
    [InlineData(23, HoleStatus.WrongSize)]
    public void A_straight_cut_through_the_middle_clears_it(double wanted, HoleStatus expected)
    {
        var match = Single(wanted, 10, "T1 M6\nG0 X50 Y50\nZ2\nG1 Z0\nX57\nG3 I-7 Z-5\nG3 I-7 Z-10\nG3 I-7\nG1 X50");
        Assert.Equal((expected, 24, false), (match.Status!.Value, match.Diameter, match.MayBeBoss));
        Assert.Equal(10, match.DecidingLine);
    }

    [Fact]
    public void A_middle_that_is_crossed_above_the_bottom_still_stands() =>
        Assert.True(Single(24, 10, "T1 M6\nG0 X57 Y50 Z-10\nG3 I-7\nG0 Z-9\nG1 X50").MayBeBoss);

    // Drilled 8 through, plunged, then milled to 2·(10.5 + 5) = 31 where 30 is wanted: it is the mill that is wrong.
    [Fact]
    public void The_widest_cut_that_is_deep_enough_is_the_size()
    {
        var match = Single(30, 15, "T2 M6\nG99 G81 X50 Y50 Z-27 R2\nG80 G0 Z20\nT1 M6\nX50 Y50 Z2\nG1 Z-15\nX56\nG3 I-6\nG1 X60.5\nG3 I-10.5\nG1 X50");
        Assert.Equal((HoleStatus.WrongSize, 31), (match.Status!.Value, match.Diameter));
    }

    // A boss of 30 stands where a hole of 6 is wanted.
    [Fact]
    public void A_hole_in_a_boss_that_is_only_milled_round_is_missing() => Assert.Equal(HoleStatus.Missing, Single(6, 10, "T1 M6\nG0 X70 Y50 Z-5\nG2 X70 Y50 I-20 J0").Status);

    // A ball of radius 5 cuts at its full diameter 5 mm above its tip.
    [Fact]
    public void A_ball_cuts_full_above_its_tip() => Assert.Equal(7, Single(18, 7, "T4 M6\nG0 X54 Y50 Z-12\nG3 X54 Y50 I-4 J0").Depth, 9);

    // M30 x 1.5: a helix of 1.5 mm a turn on radius 9 with a tool of 12 is 30 wide.
    [Theory]
    [InlineData("M30x1.5", 9, 1.5, HoleStatus.Drilled)]
    [InlineData("M30x1.5", 8.5, 1.5, HoleStatus.WrongSize)]
    [InlineData("M30x2", 9, 1.5, HoleStatus.WrongSize)]
    [InlineData("M30x2", 9, 2, HoleStatus.Drilled)]
    public void A_helix_of_a_thread_mill_is_a_thread(string thread, double radius, double pitch, HoleStatus expected)
    {
        var cuts = FormattableString.Invariant(
            $"T1 M6\nG0 X54 Y50 Z-15\nG3 X54 Y50 I-4 J0\nG0 Z20\nT3 M6\nG0 X{50 + radius} Y50 Z-12\nG3 X{50 + radius} Y50 I-{radius} J0 Z{-12 + pitch}\nG0 X50 Y50");
        Assert.Equal(expected, Assert.Single(Compare($$"""{ "x": 50, "y": 50, "depth": 10, "thread": "{{thread}}" }""", cuts).Matches).Status);
    }

    // Up and counterclockwise, or down and clockwise, as seen from above: a right-hand helix (elementary geometry).
    [Theory]
    [InlineData("M30x1.5", "G3", 1.5, HoleStatus.Drilled)]
    [InlineData("M30x1.5", "G2", -1.5, HoleStatus.Drilled)]
    [InlineData("M30x1.5", "G2", 1.5, HoleStatus.WrongSize)]
    [InlineData("M30x1.5 LH", "G2", 1.5, HoleStatus.Drilled)]
    [InlineData("M30x1.5 LH", "G3", 1.5, HoleStatus.WrongSize)]
    public void A_helix_has_the_hand_that_it_winds(string thread, string arc, double climb, HoleStatus expected)
    {
        var cuts = FormattableString.Invariant($"T1 M6\nG0 X54 Y50 Z-15\nG3 X54 Y50 I-4 J0\nG0 Z20\nT3 M6\nG0 X59 Y50 Z-12\n{arc} X59 Y50 I-9 J0 Z{-12 + climb}\nG0 X50 Y50");
        Assert.Equal(expected, Assert.Single(Compare($$"""{ "x": 50, "y": 50, "depth": 10, "thread": "{{thread}}" }""", cuts).Matches).Status);
    }

    [Fact]
    public void A_drill_fed_straight_down_makes_a_hole_and_a_mill_may_be_on_its_way_to_a_pocket()
    {
        Assert.Equal(HoleStatus.Drilled, Single(8, 4, "T2 M6\nG0 X50 Y50\nG1 Z-6.5").Status);
        Assert.Equal(HoleStatus.Drilled, Single(10, 4, "T1 M6\nG0 X50 Y50\nG1 Z-4").Status);
        Assert.Null(Single(40, 4, "T1 M6\nG0 X50 Y50\nG1 Z-4\nG1 X65").Status);
        Assert.DoesNotContain(Compare("""{ "x": 10, "y": 10 }""", "T1 M6\nG0 X50 Y50\nG1 Z-4\nG1 X65\nG3 X65 Y50 I-15 J0").Matches, match => match.Status == HoleStatus.Extra);
    }

    [Fact]
    public void A_hole_that_is_milled_away_is_no_extra_hole()
    {
        const string Start = "T2 M6\nG99 G81 X30 Y30 Z-6 R2\nG80 G0 Z20\n";
        Assert.Contains(Compare("""{ "x": 10, "y": 10 }""", Start).Matches, match => match.Status == HoleStatus.Extra);
        Assert.DoesNotContain(Compare("""{ "x": 10, "y": 10 }""", Start + "T1 M6\nG0 X30 Y30\nG1 Z-4\nX60").Matches, match => match.Status == HoleStatus.Extra);
        // Faced over by half a millimetre it is still a hole.
        Assert.Contains(Compare("""{ "x": 10, "y": 10 }""", Start + "T1 M6\nG0 X20 Y30 Z-0.5\nG1 X60").Matches, match => match.Status == HoleStatus.Extra);
    }

    [Theory] // The cone of a spot 3 deep would be as wide as the tool 3 above the face.
    [InlineData("Z-0.5", true)]
    [InlineData("Z-4", false)]
    public void A_spot_is_milled_away_where_the_mill_goes_as_deep_as_its_tip(string level, bool isExtra)
    {
        var cuts = $"T1 M6\nG0 X20 Y30 {level}\nG1 X60\nG0 Z20\nT5 M6\nG99 G81 X30 Y30 Z-3 R2\nG80 G0 Z20";
        Assert.Equal(isExtra, Compare("""{ "x": 10, "y": 10 }""", cuts).Matches.Any(match => match.Status == HoleStatus.Extra));
    }
}
