using System.Globalization;
using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Cycles;

// A cycle stays on until G80, G0 to G3 (NISTIR 6556 §3.5.15 and table 4) or the end of the program (§3.6.1).
public class CycleStateTests
{
    const string Holes = "G98 G81 X10 Y10 Z-3 R2 F100\nX20\n";

    /// <summary>Behind the call of a program that is not there the unit is not known, and with it no length: the peck that was given counts as given (NISTIR 6556 §3.5.16.3 wants one).</summary>
    [Theory]
    [InlineData("G99 G83 Z-23 R2 Q5 F350 L0\nX30 Y30", false)]
    [InlineData("G99 G83 Z-23 R2 F350 L0\nX30 Y30", true)]
    public void A_peck_without_a_known_length_is_one(string blocks, bool told) => Assert.Equal(told, Programs.Of(
        "cycle-word-missing", $"O1\nG21 G90 G17 G54\nT7 M6\nG0 X10 Y10 Z20\nM98 P6001\n{blocks}\nG80\nM30\n", readings: "zeroRepeats=keepsCycle").Count > 0);

    [Theory]
    [InlineData("T4 M6", 2)]
    [InlineData("M30", 2)]
    [InlineData("M2", 2)]
    [InlineData("T4 M6\nM1", 2)] // once for one cycle left on
    [InlineData("M9\nG28 G91 Z0\nT4 M6\nM30", 4)]
    [InlineData("X30 M30", 2)]
    public void A_cycle_left_on_is_found_where_it_is_met(string blocks, int at) =>
        Assert.Equal([(at, Severity.Error)], CycleJob.Find("cycle-not-cancelled", Holes + blocks));

    // A stop only warns: the cycle may go on behind it. What the tool change then does stays an error.
    [Fact]
    public void A_stop_warns_and_hides_nothing()
    {
        Assert.Equal([(2, Severity.Warning)], CycleJob.Find("cycle-not-cancelled", Holes + "M0\nX30\nG80\nM30"));
        Assert.Equal([(2, Severity.Warning), (3, Severity.Error)], CycleJob.Find("cycle-not-cancelled", Holes + "M1\nT4 M6"));
    }

    [Theory]
    [InlineData("G80\nT4 M6")]
    [InlineData("G80 M30")]
    [InlineData("G0 Z50\nT4 M6")]
    [InlineData("G0 Z50 M30")]
    [InlineData("G80 M1\nG81 X10 Y20 Z-3 R2\nG80\nM30")]
    [InlineData("O20\nX10\nM99")] // what a caller left on is not known
    [InlineData("O20\nG81 X10 Y10 Z-5 R2 F100\nM99")] // nor is what it does behind the return
    public void A_cycle_that_was_ended_is_not(string blocks) => Assert.Empty(CycleJob.Find("cycle-not-cancelled", "G98\n" + (blocks[0] == 'O' ? "M30\n" + blocks : Holes + blocks)));

    [Fact]
    public void A_peck_that_is_refused_is_not_judged()
    {
        const string Deep = "G98 G73 X10 Y10 Z-30 R2 Q20 F100\n";
        Assert.Empty(CycleJob.Find("peck-step", Deep + "X30 Z-10 Q0"));
        Assert.Equal([(1, Severity.Error)], CycleJob.Find("value-not-allowed", Deep + "X30 Z-10 Q0"));
        Assert.Equal([(1, Severity.Warning)], CycleJob.Find("peck-step", Deep + "X30 Z-10"));
    }

    // Under G99 the tool stays at R in any case (NISTIR 6556 §3.5.20).
    [Theory]
    [InlineData("G98", "The cycle starts at Z1, 4 mm below its R level Z5: G98 returns no higher than R.")]
    [InlineData("G99", "The cycle starts at Z1, 4 mm below its R level Z5: the tool first goes up to Z5 where it stands.")]
    public void A_start_below_R_is_told_by_the_code_in_force(string code, string message) =>
        Assert.Equal(message, CycleJob.Run($"G0 Z1\n{code} G81 X10 Y10 Z-3 R5 F100").Findings.Single(f => f.Name == "initial-level-below-r").Message);

    // Back boring goes down to Z and bores upwards to K (NISTIR 6556 §3.5.16.8); that K lies between the bottom and R is common practice.
    [Theory]
    [InlineData("K25", "K leads to Z25, and the R level is Z5: the bar bores up through the whole part.")]
    [InlineData("K-35", "K leads to Z-35, and the bottom is Z-32: back boring feeds upwards from the bottom, and here there is nothing to bore.")]
    [InlineData("K-25", null)]
    [InlineData("K[#100]", null)]
    public void Back_boring_ends_between_bottom_and_R(string word, string? message)
    {
        Assert.Equal(message, CycleJob.Run($"G98 G87 X10 Y10 Z-32 R5 I-4 {word} F60\nX30").Findings.SingleOrDefault(f => f.Name is "r-below-bottom" or "cycle-word-missing")?.Message);
        Assert.Equal([(0, Severity.Error)], CycleJob.Find("cycle-word-missing", "G98 G87 X10 Y10 Z-32 R5 I-4 F60\nX30"));
    }

    // Cycles of ZX drill along Y, those of YZ along X (NISTIR 6556 §3.5.16).
    [Theory]
    [InlineData("G18\nG0 Y1\nG98 G81 X10 Z20 Y-3 R5 F100", "initial-level-below-r", "The cycle starts at Y1, 4 mm below its R level Y5: G98 returns no higher than R.", 1)]
    [InlineData("G19\nG0 X1\nG98 G81 Y10 Z20 X-3 R5 F100", "initial-level-below-r", "The cycle starts at X1, 4 mm below its R level X5: G98 returns no higher than R.", 1)]
    [InlineData("G18\nG98 G81 X10 Z20 Y-3 R-5 F100", "r-below-bottom", "The R level Y-5 lies 2 mm below the bottom Y-3: the control stops, or goes at rapid into the part.", -1)]
    public void Levels_are_told_along_the_axis_of_the_plane(string blocks, string name, string message, int levelSet)
    {
        var analysis = CycleJob.Run(blocks);
        var finding = Assert.Single(analysis.Findings, f => f.Name == name);
        Assert.Equal(message, finding.Message);
        if (levelSet >= 0)
            Assert.Equal(CycleJob.Before + levelSet, Assert.Single(analysis.Related(finding)).Line);
    }

    [Fact]
    public void A_cycle_left_on_again_is_found_again() =>
        Assert.Equal([2, 4], CycleJob.Find("cycle-not-cancelled", Holes + "M0\nX30\nM30").Select(f => f.Block));

    [Fact]
    public void G80_goes_before_the_block_unless_the_cycle_goes_on()
    {
        Assert.Equal(Holes + "G80\nN90 M30 (end)", CycleJob.Fix("cycle-not-cancelled", Holes + "N90 M30 (end)"));
        Assert.Equal(Holes + "G80\nT4 M6\nG81 X30 Z-3 R2\nG80", CycleJob.Fix("cycle-not-cancelled", Holes + "T4 M6\nG81 X30 Z-3 R2\nG80"));
        Assert.Null(CycleJob.Fix("cycle-not-cancelled", Holes + "M0\nX30\nG80"));
    }

    [Fact]
    public void A_move_that_ends_a_cycle_is_found_under_its_reading_only()
    {
        Assert.Equal([2], CycleJob.Find("cycle-ended-by-move", Holes + "G0 Z50\nX0").Select(f => f.Block));
        Assert.Equal(Holes + "N5 G80 G00 Z50", CycleJob.Fix("cycle-ended-by-move", Holes + "N5 G00 Z50"));
        Assert.Empty(CycleJob.Find("cycle-ended-by-move", Holes + "G80 G0 Z50"));
        Assert.Empty(CycleJob.Find("cycle-ended-by-move", Holes + "G80\nG0 Z50"));
        Assert.Empty(CycleJob.Find("cycle-ended-by-move", Holes + "T4 M6\nG0 X0 Y0")); // said at the tool change
        var stays = new Readings { RapidsEndCycle = false };
        Assert.Empty(CycleJob.Find("cycle-ended-by-move", Holes + "G0 Z50", readings: stays));
        // There the lift drills.
        Assert.Equal([2], CycleJob.Find("depth-changed-in-cycle", Holes + "G0 Z50", readings: stays).Select(f => f.Block));
        Assert.Equal(Holes + "G80 G0 Z50", CycleJob.Fix("depth-changed-in-cycle", Holes + "G0 Z50", readings: stays));
    }

    [Fact]
    public void A_lone_Z_upwards_drills_again_and_a_deeper_one_is_meant()
    {
        Assert.Equal([2], CycleJob.Find("depth-changed-in-cycle", Holes + "Z50").Select(f => f.Block));
        Assert.Empty(CycleJob.Find("r-below-bottom", Holes + "Z50\nX30"));
        Assert.Empty(CycleJob.Find("depth-changed-in-cycle", Holes + "Z-6"));
        Assert.Empty(CycleJob.Find("depth-changed-in-cycle", Holes + "X30 Z-2"));
        Assert.Empty(CycleJob.Find("depth-changed-in-cycle", "G98\nG81\nZ-2 R2"));
        Assert.Equal(Holes + "N7 G80 G0 Z50 (up)", CycleJob.Fix("depth-changed-in-cycle", Holes + "N7 Z50 (up)"));
    }

    [Fact]
    public void A_missing_word_is_said_once()
    {
        var found = CycleJob.Run("G98 G81 X10 Y10 F100\nX20\nX30\nG80").Findings.Where(f => f.Name == "cycle-word-missing").ToList();
        Assert.Equal("G81 has no R and no Z: the control stops here, or drills with what an earlier cycle left.", Assert.Single(found).Message);
        Assert.Equal(CycleJob.Before, found[0].Line);
    }

    [Fact]
    public void R_below_the_bottom_is_said_where_it_comes_about() =>
        Assert.Equal([(2, Severity.Error)], CycleJob.Find("r-below-bottom", Holes + "X30 Z5\nX40\nX50"));

    [Fact]
    public void R_inside_the_stock_is_silent_in_a_pocket_and_over_a_hole_drilled_before()
    {
        var mill = CycleJob.Plate(new Tool { Number = 3, Kind = ToolKind.EndMill, Diameter = 10 });
        Assert.Equal([(0, Severity.Error)], CycleJob.Find("r-inside-stock", "G98 G81 X10 Y10 Z-12 R-4 F100\nX20\nX30\nG80", mill));
        const string pocket = "G0 Z2\nG1 Z-5 F100\nX30\nG0 Z40\n";
        Assert.Empty(CycleJob.Find("r-inside-stock", pocket + "G98 G81 X20 Y12 Z-12 R-4 F100\nG80", mill));
        Assert.Single(CycleJob.Find("r-inside-stock", pocket + "G98 G81 X20 Y12 Z-12 R-6 F100\nG80", mill));
        Assert.Single(CycleJob.Find("r-inside-stock", pocket + "G98 G81 X20 Y16 Z-12 R-4 F100\nG80", mill));
        Assert.Empty(CycleJob.Find("r-inside-stock", "G98 G81 X20 Y12 Z-6 R2 F100\nG80\nG83 X20 Y12 Z-20 R-5 Q4\nG80", mill));
        Assert.Empty(CycleJob.Find("r-inside-stock", "G98 G81 X90 Y12 Z-12 R-4 F100\nG80", mill)); // beside the stock
        Assert.Empty(CycleJob.Find("r-inside-stock", "G98 G81 X20 Y12 Z-12 R0 F100\nG80", mill)); // at the top is no fault
        Assert.Equal("G98 G81 X10 Y10 Z-12 R2 F100\nG80", CycleJob.Fix("r-inside-stock", "G98 G81 X10 Y10 Z-12 R-4 F100\nG80", mill));
        Assert.Null(CycleJob.Fix("r-inside-stock", "G91 G98 G81 X10 Y10 Z-12 R-44 F100\nG80", mill));
    }

    // By hand: a 90° spot 4 deep is 4 wide at Z-2, 2 at Z-3 and 8 at the top, a pilot of 5 is 5 wide all the way. A 118° drill of 10 is 6.7 wide 2 above its tip
    // and 10 wide 3 above it.
    [Fact]
    public void R_inside_the_stock_is_found_over_a_hole_too_narrow_for_the_tool()
    {
        var setup = CycleJob.Plate() with
        {
            Tools =
            [
                new Tool { Number = 3, Kind = ToolKind.SpotDrill, Diameter = 10, PointAngle = 90 },
                new Tool { Number = 4, Kind = ToolKind.Drill, Diameter = 6, PointAngle = 118 },
                new Tool { Number = 5, Kind = ToolKind.Drill, Diameter = 10, PointAngle = 118 },
                new Tool { Number = 6, Kind = ToolKind.Drill, Diameter = 5, PointAngle = 118 },
            ],
        };
        const string spot = "G98 G81 X20 Y12 Z-4 R2 F100\nG80\nT{0} M6\nS900 M3\nG83 X20 Y12 Z-20 R{1} Q4\nG80";
        Assert.Empty(CycleJob.Find("r-inside-stock", string.Format(spot, 4, -2), setup));
        Assert.Empty(CycleJob.Find("r-inside-stock", string.Format(spot, 5, -2), setup));
        Assert.Equal([4], CycleJob.Find("r-inside-stock", string.Format(spot, 5, -3), setup).Select(f => f.Block));
        const string pilot = "G98\nT6 M6\nS900 M3\nG81 X20 Y12 Z-15 R2 F100\nG80\nT{0} M6\nS900 M3\nG83 X20 Y12 Z-20 R-5 Q4\nG80";
        Assert.Equal([7], CycleJob.Find("r-inside-stock", string.Format(pilot, 5), setup).Select(f => f.Block));
        Assert.Empty(CycleJob.Find("r-inside-stock", string.Format(pilot, 6), setup));
    }

    // Common practice: the short chamfer of a tap is two to three pitches long; for M8 by 1.25 that is 2.5 mm, and further up it is as wide as its thread. The core is 6.8 wide.
    [Theory]
    [InlineData("", -2.4, 0)]
    [InlineData("", -2.6, 1)]
    [InlineData("", -6, 1)]
    // In a counterbore of 14 mm by 5 deep it stands free, and in one of 7 it does not.
    [InlineData("T7 M6\nS900 M3\nG82 X20 Y12 Z-5 R2 P0.5\nG80\n", -4, 0)]
    [InlineData("T7 M6\nS900 M3\nG82 X20 Y12 Z-5 R2 P0.5\nG80\n", -7.4, 0)]
    [InlineData("T7 M6\nS900 M3\nG82 X20 Y12 Z-5 R2 P0.5\nG80\n", -7.6, 1)]
    [InlineData("T8 M6\nS900 M3\nG82 X20 Y12 Z-5 R2 P0.5\nG80\n", -4, 1)]
    public void R_of_a_tap_inside_its_core_hole_is_found(string between, double r, int told)
    {
        var setup = CycleJob.Plate() with
        {
            Tools =
            [
                new Tool { Number = 3, Kind = ToolKind.Drill, Diameter = 6.8, PointAngle = 118 },
                new Tool { Number = 4, Kind = ToolKind.Tap, Diameter = 8, Pitch = 1.25 },
                new Tool { Number = 5, Kind = ToolKind.Tap, Diameter = 8 },
                new Tool { Number = 7, Kind = ToolKind.Counterbore, Diameter = 14 },
                new Tool { Number = 8, Kind = ToolKind.Counterbore, Diameter = 7 },
            ],
        };
        string Program(int tap) => string.Create(
            CultureInfo.InvariantCulture, $"G98\nG81 X20 Y12 Z-19 R2 F100\nG80\n{between}T{tap} M6\nS500 M3\nG84 X20 Y12 Z-15 R{r} F625\nG80");
        Assert.Equal(told, CycleJob.Find("r-inside-stock", Program(4), setup).Count);
        // Of a tap whose pitch nobody gives it is not known how long its chamfer is.
        Assert.Empty(CycleJob.Find("r-inside-stock", Program(5), setup));
    }

    [Fact]
    public void A_hole_drilled_twice()
    {
        Assert.Equal([2], CycleJob.Find("hole-repeated", Holes + "X10\nX30").Select(f => f.Block));
        Assert.Equal([0], CycleJob.Find("hole-repeated", "G98 G81 X10 Y10 Z-3 R2 F100 L3").Select(f => f.Block));
        Assert.Empty(CycleJob.Find("hole-repeated", "G91 G98 G81 X10 Y10 Z-3 R-38 F100 L3"));
        Assert.Empty(CycleJob.Find("hole-repeated", Holes + "G82 X20 Z-3 R2 P0.2\nX10")); // another cycle
        Assert.Empty(CycleJob.Find("hole-repeated", Holes + "X10 Z-6")); // deeper
        Assert.Equal([4], CycleJob.Find("hole-repeated", Holes + "G80\nG0 Z40\nG81 X10 Y10 Z-3 R2").Select(f => f.Block)); // another run of the same tool
        var many = Holes + string.Join("\n", Enumerable.Range(30, 400).Select(x => $"X{x}"));
        Assert.Empty(CycleJob.Find("hole-repeated", many));
        Assert.Equal([402], CycleJob.Find("hole-repeated", many + "\nX35").Select(f => f.Block));
    }

    [Fact]
    public void Levels_are_said_once_for_a_run()
    {
        Assert.Equal([1], CycleJob.Find("initial-level-below-r", "G0 Z1\nG98 G81 X10 Y10 Z-3 R5 F100\nX20\nX30").Select(f => f.Block));
        Assert.Empty(CycleJob.Find("initial-level-below-r", "G0 Z5\nG98 G81 X10 Y10 Z-3 R5 F100"));
        Assert.Equal([0], CycleJob.Find("r-far", "G98 G81 X10 Y10 Z-3 R10.1 F100\nX20", CycleJob.Plate()).Select(f => f.Block));
        Assert.Empty(CycleJob.Find("r-far", "G98 G81 X10 Y10 Z-3 R10 F100\nX20", CycleJob.Plate()));
        Assert.Empty(CycleJob.Find("r-far", "G98 G81 X10 Y10 Z-3 R30 F100\nX20"));
    }

    [Fact]
    public void The_return_level_is_asked_for_once()
    {
        Assert.Equal([(0, Severity.Warning)], CycleJob.Find("return-level-not-set", "G81 X10 Y10 Z-3 R2 F100\nX20\nG80\nG0 Z40\nG82 X10 Z-3 R2 P0.2\nG80"));
        Assert.Empty(CycleJob.Find("return-level-not-set", "G99\nG81 X10 Y10 Z-3 R2 F100"));
        Assert.Equal("N5 G98 G81 X10 Y10 Z-3 R2 F100", CycleJob.Fix("return-level-not-set", "N5 G81 X10 Y10 Z-3 R2 F100"));
    }

    [Fact]
    public void Tapping()
    {
        var tap = CycleJob.Plate(new Tool { Number = 3, Kind = ToolKind.Tap, Pitch = 1 });
        Assert.Empty(CycleJob.Find("tap-direction", "G98 G84 X10 Y10 Z-3 R2 F1000", tap));
        Assert.Equal([(0, Severity.Error)], CycleJob.Find("tap-direction", "G98 G74 X10 Y10 Z-3 R2 F1000\nX20", tap));
        Assert.Empty(CycleJob.Find("tap-direction", "M4\nG98 G74 X10 Y10 Z-3 R2 F1000", tap));
        // A speed changed within the run makes the feed wrong there.
        Assert.Equal([1], CycleJob.Find("tap-feed", "G98 G84 X10 Y10 Z-3 R2 F1000\nX20 S800\nX30", tap).Select(f => f.Block));
        Assert.Equal("F1000\nG98 G84 X10 Y10 Z-3 R2 S800 F800 (tap)", CycleJob.Fix("tap-feed", "F1000\nG98 G84 X10 Y10 Z-3 R2 S800 (tap)", tap));
        // Whose speed it is that a standing spindle has been given nobody knows.
        const string Change = "T4 M6\nG1 Z-1 F100\nG0 Z40 M5\nT3 M6\n";
        Assert.Empty(CycleJob.Find("tap-feed", Change + "G98 G84 X10 Y10 Z-3 R2 F600", tap));
        Assert.Equal([4], CycleJob.Find("tap-feed", Change + "G98 G84 X10 Y10 Z-3 R2 S400 F600", tap).Select(f => f.Block));
        Assert.Equal([2], CycleJob.Find("tap-feed", "M5\nM29 S400\nG98 G84 X10 Y10 Z-3 R2 F600", tap).Select(f => f.Block));
        // An F that is the pitch was written for the feed per turn: the number may be meant, or the mode.
        var perTurn = CycleJob.Run("G98 G84 X10 Y10 Z-3 R2 S800 F1", tap);
        var found = perTurn.Findings.Single(f => f.Name == "tap-feed");
        Assert.EndsWith(" It is the pitch itself: is G95 meant, the feed per turn?", found.Message, StringComparison.Ordinal);
        Assert.Equal(FixSafety.Choice, Assert.Single(perTurn.FixesOf(found)).Safety);
        Assert.Empty(CycleJob.Find("tap-pitch-unknown", "G98 G84 X10 Y10 Z-3 R2 F1000", tap));
        Assert.Empty(CycleJob.Find("tap-pitch-unknown", "G98 G84 X10 Y10 Z-3 R2 F1000"));
    }

    /// <summary>Where a lone Z gets its G80, the end of the program needs none of its own.</summary>
    [Theory]
    [InlineData("G98 G81 X10 Y10 Z-5 R2 F100\nX20\nG0 Z30\nG91 G28 Z0\nG90\nM30", FixSafety.Choice)]
    [InlineData("G98 G81 X10 Y10 Z-5 R2 F100\nX20\nG91 G28 Z0\nG90\nM30", FixSafety.Safe)]
    [InlineData("G98 G81 X10 Y10 Z-5 R2 F100\nG0 Z30\nG80\nG81 X10 Y10 Z-6 R2\nG91 G28 Z0\nG90\nM30", FixSafety.Safe)]
    public void One_G80_is_written_for_one_cycle(string blocks, FixSafety safety)
    {
        var analysis = CycleJob.Run(blocks, readings: new NcLanguage.Machine.Profiles.Readings { RapidsEndCycle = false });
        Assert.Equal(safety, analysis.FixesOf(analysis.Findings.Single(f => f.Name == "cycle-not-cancelled")).Single().Safety);
    }
}
