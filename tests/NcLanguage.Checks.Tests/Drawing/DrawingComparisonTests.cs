using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Drawing;

/// <summary>What a program drills, held against the drawing's holes. Point lengths are d/2 / tan(a/2) (trade mathematics: 7/8 in at 118
/// degrees is 0.2629 in); core holes are those of ISO 2306: M6 5.0 mm, M8 6.8 mm.</summary>
public sealed class DrawingComparisonTests
{
    const string Tools = """
        { "number": 1, "kind": "spot-drill", "diameter": 10, "pointAngle": 90 },
        { "number": 2, "kind": "drill", "diameter": 6.8, "pointAngle": 118 },
        { "number": 3, "kind": "tap", "diameter": 8, "pitch": 1.25 },
        { "number": 4, "kind": "drill", "diameter": 9, "pointAngle": 118 },
        { "number": 5, "kind": "counterbore", "diameter": 14 },
        { "number": 6, "kind": "tap", "diameter": 8, "pitch": 1 },
        { "number": 7, "kind": "reamer", "diameter": 8 },
        { "number": 8, "kind": "drill", "diameter": 7.8, "pointAngle": 118 },
        { "number": 9, "kind": "drill" },
        { "number": 10, "kind": "end-mill", "diameter": 20 },
        { "number": 11, "kind": "tap", "diameter": 7.925, "pitch": 1.422 },
        { "number": 12, "kind": "tap", "diameter": 8 }
        """;

    static DrawingComparison Compare(string holes, params string[] cuts) => CompareIn("""[0, 0, -20], "max": [100, 100, 0]""", holes, cuts);

    static DrawingComparison CompareIn(string stock, string holes, params string[] cuts)
    {
        var json = $$"""
            { "stock": { "min": {{stock}} }, "tools": [ {{Tools}} ], "holes": [ {{holes}} ],
              "workOffsets": { "G54": [-300, -200, -400], "G55": [-200, -200, -400] } }
            """;
        var setup = SetupFile.Read("test.setup.json", Encoding.UTF8.GetBytes(json));
        Assert.Empty(setup.Problems);
        var text = new StringBuilder("G21 G90 G17 G54 G94\nG0 X0 Y0 Z20\nM3 S800 F200\n");
        foreach (var cut in cuts)
            text.Append(cut).Append('\n');
        var run = ProgramRun.Create(SourceText.From(text.ToString()), new Job(MachineProfile.IsoMill, setup.Setup), [], [], CancellationToken.None);
        return DrawingComparison.Of(run);
    }

    static string Spot(double x) => $"T1 M6\nG99 G81 X{x} Y10 Z-4 R2\nG80 G0 Z20";

    static string Cut(int tool, double x, double bottom, string code = "G81") => $"T{tool} M6\nG99 {code} X{x} Y10 Z{bottom} R2\nG80 G0 Z20";

    static HoleStatus? Single(string hole, params string[] cuts) => Assert.Single(Compare(hole, cuts).Matches).Status;

    [Fact]
    public void Deep_enough_at_full_diameter()
    {
        // 6.8 mm at 118 degrees: a point of 2.043 mm.
        Assert.Equal(HoleStatus.Drilled, Single("""{ "x": 10, "y": 10, "diameter": 6.8, "depth": 15 }""", Spot(10), Cut(2, 10, -17.05)));
        Assert.Equal(HoleStatus.Shallow, Single("""{ "x": 10, "y": 10, "diameter": 6.8, "depth": 15 }""", Spot(10), Cut(2, 10, -17.02)));
    }

    [Fact]
    public void The_depth_made_is_told()
    {
        var match = Assert.Single(Compare("""{ "x": 10, "y": 10, "diameter": 6.8, "depth": 15 }""", Cut(2, 10, -10)).Matches);
        Assert.Equal(10 - 3.4 / Math.Tan(59 * Math.PI / 180), match.Depth, 9);
        Assert.Equal((6.8, 1), (match.Diameter, Assert.Single(match.Holes)));
    }

    [Fact]
    public void A_spot_is_no_hole()
    {
        var match = Assert.Single(Compare("""{ "x": 10, "y": 10, "diameter": 6.8 }""", Spot(10)).Matches);
        Assert.Equal((HoleStatus.Missing, HoleUnfinished.SpotOnly), (match.Status!.Value, match.Unfinished));
    }

    [Theory]
    // ISO 2768-1, class f: 0.05 mm for lengths from 0.5 to 6 mm (from memory). A list rounded to 0.001 in is off by up to 0.0127 mm.
    [InlineData(10.0127, HoleStatus.Drilled)]
    [InlineData(10.05, HoleStatus.Drilled)]
    [InlineData(9.95, HoleStatus.Drilled)]
    [InlineData(10.06, HoleStatus.Missing)]
    public void Places_are_one_within_the_finest_general_tolerance(double x, HoleStatus expected) =>
        Assert.Equal(expected, Compare("""{ "x": 10, "y": 10, "diameter": 6.8 }""", Cut(2, x, -10)).Matches[0].Status);

    [Fact]
    public void A_hole_elsewhere_is_extra_and_told_once()
    {
        var matches = Compare("""{ "x": 10, "y": 10 }""", Spot(10), Spot(30), Cut(2, 10, -10), Cut(2, 30, -10)).Matches;
        Assert.Equal([HoleStatus.Drilled, HoleStatus.Extra], matches.Select(match => match.Status!.Value));
        Assert.Equal((30, 10), (matches[1].X, matches[1].Y));
        Assert.Equal([2, 4], matches[1].Holes.ToArray());
    }

    [Fact]
    public void Another_size_is_the_wrong_size() =>
        Assert.Equal(HoleStatus.WrongSize, Single("""{ "x": 10, "y": 10, "diameter": 6.8 }""", Cut(4, 10, -10)));

    [Fact]
    public void A_larger_drill_that_goes_as_deep_takes_the_right_size_away() =>
        Assert.Equal(HoleStatus.WrongSize, Single("""{ "x": 10, "y": 10, "diameter": 6.8, "depth": 10 }""", Cut(2, 10, -13), Cut(4, 10, -14)));

    [Fact]
    public void A_counterbore_above_leaves_the_hole_as_it_is() =>
        Assert.Equal(HoleStatus.Drilled, Single("""{ "x": 10, "y": 10, "diameter": 6.8, "depth": 10 }""", Cut(2, 10, -13), Cut(5, 10, -4)));

    /// <summary>A counterbore makes no hole by itself (common practice).</summary>
    [Fact]
    public void A_counterbore_alone_is_no_hole()
    {
        Assert.Equal(HoleStatus.Missing, Single("""{ "x": 10, "y": 10, "diameter": 6.8, "depth": 10 }""", Cut(5, 10, -4)));
        Assert.Equal(HoleStatus.Drilled, Single("""{ "x": 10, "y": 10, "diameter": 14, "depth": 4 }""", Cut(5, 10, -4)));
        Assert.Equal(HoleStatus.WrongSize, Single("""{ "x": 10, "y": 10, "diameter": 6.8, "depth": 10 }""", Cut(4, 10, -13), Cut(5, 10, -4)));
    }

    [Fact]
    public void A_reamer_decides_for_the_hole_it_reams()
    {
        Assert.Equal(HoleStatus.Drilled, Single("""{ "x": 10, "y": 10, "diameter": 8, "depth": 12 }""", Cut(8, 10, -18), Cut(7, 10, -12)));
        Assert.Equal(HoleStatus.WrongSize, Single("""{ "x": 10, "y": 10, "diameter": 8, "depth": 12 }""", Cut(8, 10, -18)));
    }

    const string Thread = """{ "x": 10, "y": 10, "diameter": 6.8, "depth": 15, "thread": "M8" }""";

    [Fact]
    public void A_thread_needs_core_hole_and_tap()
    {
        Assert.Equal(HoleStatus.Drilled, Single(Thread, Spot(10), Cut(2, 10, -20), Cut(3, 10, -16, "G84")));
        Assert.Equal(HoleStatus.Shallow, Single(Thread, Spot(10), Cut(2, 10, -20), Cut(3, 10, -14, "G84")));
        Assert.Equal(HoleStatus.WrongSize, Single(Thread, Spot(10), Cut(4, 10, -20), Cut(3, 10, -16, "G84")));
        Assert.Equal(HoleStatus.Missing, Single(Thread, Spot(10), Cut(3, 10, -16, "G84")));
    }

    [Fact]
    public void A_core_hole_without_a_tap_is_not_finished()
    {
        var match = Assert.Single(Compare(Thread, Spot(10), Cut(2, 10, -20)).Matches);
        Assert.Equal((HoleStatus.Shallow, HoleUnfinished.NotTapped), (match.Status!.Value, match.Unfinished));
    }

    // A point of 2.043 mm: Z-15 is 12.957 deep at full width, Z-20 is 17.957. Where hole and thread are both wrong, both are told, and the table has the thread's depth.
    [Theory]
    [InlineData(-20, -16, HoleStatus.Drilled, false, false)]
    [InlineData(-20, -10, HoleStatus.Shallow, false, true)]
    [InlineData(-15, -10, HoleStatus.Shallow, true, true)]
    [InlineData(-15, -16, HoleStatus.Shallow, true, false)]
    public void A_hole_that_is_too_shallow_does_not_hide_its_thread(double drilled, double tapped, HoleStatus status, bool isHoleShallow, bool isThreadShort)
    {
        var match = Assert.Single(Compare(Thread, Cut(2, 10, drilled), Cut(3, 10, tapped, "G84")).Matches);
        Assert.Equal((status, isHoleShallow, isThreadShort, -tapped), (match.Status!.Value, match.IsHoleShallow, match.IsThreadShort, match.ThreadDepth));
    }

    [Fact]
    public void A_hole_of_another_size_does_not_hide_its_thread()
    {
        var match = Assert.Single(Compare(Thread, Cut(4, 10, -20), Cut(6, 10, -10, "G84")).Matches);
        Assert.Equal((HoleStatus.WrongSize, true, true, 10), (match.Status!.Value, match.IsOtherSize, match.IsOtherThread, match.ThreadDepth));
        Assert.Equal(10, Assert.Single(Compare(Thread, Cut(3, 10, -10, "G84")).Matches).ThreadDepth);
    }

    [Fact]
    public void A_tap_of_another_pitch_cuts_the_wrong_thread_where_the_drawing_names_one()
    {
        const string fine = """{ "x": 10, "y": 10, "diameter": 6.8, "depth": 15, "thread": "M8x1.25" }""";
        Assert.Equal(HoleStatus.WrongSize, Single(fine, Cut(2, 10, -20), Cut(6, 10, -16, "G84")));
        Assert.Equal(HoleStatus.Drilled, Single(fine, Cut(2, 10, -20), Cut(3, 10, -16, "G84")));
    }

    // T3 is M8x1.25: 8 mm, 1.25 mm; 1/4-20 is 6.35 mm by 1.27, 5/16-18 7.9375 mm by 1.411 (published charts of unified threads). G84 cuts right-hand threads (NISTIR 6556 §3.5.16.5), G74
    // left-hand ones (common practice). A metric name without a pitch means the coarse one (ISO 965-1, from memory).
    [Theory]
    [InlineData("M8", 3, "G84", HoleStatus.Drilled)]
    [InlineData("M8x1.25-6H", 3, "G84", HoleStatus.Drilled)]
    [InlineData("M8", 6, "G84", HoleStatus.WrongSize)]
    [InlineData("M8x1", 6, "G84", HoleStatus.Drilled)]
    [InlineData("M9", 3, "G84", HoleStatus.WrongSize)]
    [InlineData("1/4-20 UNC", 3, "G84", HoleStatus.WrongSize)]
    [InlineData("5/16-18", 3, "G84", HoleStatus.WrongSize)]
    [InlineData("5/16-18 UNC-2B", 11, "G84", HoleStatus.Drilled)]
    [InlineData("5/16-24", 11, "G84", HoleStatus.WrongSize)]
    [InlineData("M8x1.25 LH", 3, "G84", HoleStatus.WrongSize)]
    [InlineData("M8x1.25 LH", 3, "G74", HoleStatus.Drilled)]
    [InlineData("M8", 3, "G74", HoleStatus.WrongSize)]
    [InlineData("XY9", 3, "G84", HoleStatus.Drilled)]
    public void The_thread_that_is_cut_is_held_against_the_drawings(string thread, int tap, string cycle, HoleStatus expected)
    {
        var match = Assert.Single(Compare($$"""{ "x": 10, "y": 10, "diameter": 6.8, "depth": 15, "thread": "{{thread}}" }""", Cut(2, 10, -20), Cut(tap, 10, -16, cycle)).Matches);
        Assert.Equal((expected, expected == HoleStatus.WrongSize, thread == "XY9"), (match.Status!.Value, match.IsOtherThread, match.IsThreadUnread));
    }

    // NISTIR 6556 §3.5.16.5: speed = feed · threads per length, so 1000 at 800 is a pitch of 1.25; a hundredth more is 1.2625.
    [Theory]
    [InlineData("M8", "F1000", HoleStatus.Drilled, false)]
    [InlineData("M8", "F1010", HoleStatus.Drilled, false)]
    [InlineData("M8", "F1020", HoleStatus.WrongSize, false)]
    [InlineData("M8x1", "F1000", HoleStatus.WrongSize, false)]
    [InlineData("M8x1", "F[#900]", HoleStatus.Drilled, true)]
    public void A_pitch_that_is_not_given_is_what_the_program_feeds(string thread, string feed, HoleStatus expected, bool isUnread)
    {
        var match = Assert.Single(Compare($$"""{ "x": 10, "y": 10, "diameter": 6.8, "depth": 15, "thread": "{{thread}}" }""", Cut(2, 10, -20), feed + "\n" + Cut(12, 10, -16, "G84")).Matches);
        Assert.Equal((expected, isUnread), (match.Status!.Value, match.IsThreadUnread));
    }

    [Fact]
    public void Depths_count_from_the_top_of_the_stock() =>
        Assert.Equal(10, CompareIn("""[0, 0, -20], "max": [100, 100, 5]""", """{ "x": 10, "y": 10, "diameter": 14 }""", Cut(5, 10, -5)).Matches[0].Depth, 9);

    // Faced by 2 mm on every side of its mouth, the hole is 2 mm less deep than from the raw stock (subtraction).
    [Theory]
    [InlineData("G0 X-20 Y10 Z-2\nG1 X60", 8)]
    [InlineData("G0 X10 Y-20 Z-2\nG1 Y60", 8)]
    // Beside the hole, over a half of its mouth, and about its own middle nothing of the surface it starts from is gone.
    [InlineData("G0 X-20 Y40 Z-2\nG1 X60", 10)]
    [InlineData("G0 X-20 Y20 Z-2\nG1 X60", 10)]
    [InlineData("G0 X12 Y10 Z-2\nG3 X12 Y10 I-2 J0", 10)]
    // Milled away whole, it is no more.
    [InlineData("G0 X-20 Y10 Z-12\nG1 X60", 10)]
    public void Depths_count_from_the_surface_that_mills_leave(string milled, double depth)
    {
        var match = CompareIn("""[0, 0, -20], "max": [100, 100, 0]""", """{ "x": 10, "y": 10, "diameter": 14, "depth": 9 }""", "T10 M6\n" + milled + "\nG0 Z20", Cut(5, 10, -10)).Matches[0];
        Assert.Equal((depth, depth < 9 ? HoleStatus.Shallow : HoleStatus.Drilled), (Math.Round(match.Depth, 9), match.Status!.Value));
    }

    // A pocket of 8 mm in a plate of 20 leaves 12 of a hole that the list has 20 deep: it is through, and as drawn.
    [Fact]
    public void A_through_hole_in_a_pocket_is_as_deep_as_the_plate() =>
        Assert.Equal(HoleStatus.Drilled, Single("""{ "x": 10, "y": 10, "diameter": 14, "depth": 20 }""", "T10 M6\nG0 X-20 Y10 Z-8\nG1 X60\nG0 Z20", Cut(5, 10, -20)));

    [Fact]
    public void Places_are_those_of_the_setups_frame() =>
        Assert.Equal(HoleStatus.Drilled, Single("""{ "x": 110, "y": 10, "diameter": 6.8 }""", "G55", Cut(2, 10, -10)));

    [Fact]
    public void Holes_of_a_part_under_another_offset_beside_the_stock_are_no_extra_ones()
    {
        const string Hole = """{ "x": 10, "y": 10, "diameter": 6.8 }""";
        Assert.Equal(HoleStatus.Drilled, Assert.Single(Compare(Hole, Cut(2, 10, -10), "G55", Cut(2, 50, -10)).Matches).Status);
        // The same offset, but over the stock; and beside the stock in the setup's frame.
        Assert.Equal(HoleStatus.Extra, Compare(Hole, Cut(2, 10, -10), "G55", Cut(2, -50, -10)).Matches[1].Status);
        Assert.Equal(HoleStatus.Extra, Compare(Hole, Cut(2, 10, -10), Cut(2, 150, -10)).Matches[1].Status);
    }

    [Fact]
    public void A_tool_whose_size_is_not_known_is_given_the_benefit() =>
        Assert.Equal(HoleStatus.Drilled, Single("""{ "x": 10, "y": 10, "diameter": 6.8 }""", Cut(9, 10, -10)));

    [Fact]
    public void Nothing_is_called_missing_where_a_place_is_not_known()
    {
        var comparison = Compare("""{ "x": 10, "y": 10, "diameter": 6.8 }""", "T2 M6\nG99 G81 X[#900] Y10 Z-10 R2");
        Assert.False(comparison.AreAllPlacesKnown);
        Assert.Null(Assert.Single(comparison.Matches).Status);
    }

    [Fact]
    public void Without_a_drawing_there_is_nothing_to_compare() => Assert.Empty(Compare("", Cut(2, 10, -10)).Matches);
}
