using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Hovers;

/// <summary>What hovering one word says.</summary>
public sealed class WordHoverTests
{
    const string Cycle = "G21 G90 G17 G54\nT4 M6\nS1500 M3 F120\nG0 X10 Y10 Z50\nG99 G82 X10 Z-3 R2 P0.5\n";

    [Fact]
    public void A_position_inside_a_cycle_tells_what_is_carried_over() => Editor.Shows(
        """
        **X60** hole along X

        To X60, +50 mm from X10 · G90 (line 1).

        Hole 2. Carried over: F 120 mm/min (line 3); G82, G99 back to Z2, R level Z2, bottom Z-3, dwell 0.5 s (line 5).
        """,
        Cycle + "X$060\nG80");

    /// <summary>Places are those of plane geometry: a quarter turn, a mirror, twice the size.</summary>
    [Theory]
    [InlineData("G68 X0 Y0 R90\nG0 X$010 Y5", "To X-5, -5 mm from X0 · G90 (line 1) · G68 (line 4).")]
    [InlineData("G68 X0 Y0 R90\nG0 X10 Z$05", "To Z5, -25 mm from Z30 · G90 (line 1).")]
    [InlineData("G51.1 X0\nG0 X$010 Y5", "To X-10, -10 mm from X0 · G90 (line 1) · G51.1 (line 4).")]
    [InlineData("G51.1 X0\nG0 X10 Y$05", "To Y5, +5 mm from Y0 · G90 (line 1).")]
    [InlineData("G51 X0 Y0 P2\nG91\nG0 X$010", "+20 mm from X0, to X20 · G91 (line 5) · G51 (line 4).")]
    [InlineData("G16\nG0 X10 Y$090", "To Y10, +10 mm from Y0 · G90 (line 1) · G16 (line 4).")]
    public void A_place_that_is_another_than_its_number_says_names_the_code_that_makes_it_so(string blocks, string expected) =>
        Assert.Contains("\n\n" + expected, Editor.Markdown("G21 G90 G17 G54\nT4 M6\nG0 G43 H4 X0 Y0 Z30\n" + blocks), StringComparison.Ordinal);

    /// <summary>What is carried over is a position: under G91 the number would mislead.</summary>
    [Fact]
    public void Carried_levels_are_positions() => Assert.Contains(
        "Carried over: G99 back to Z2, F 120 mm/min (line 3); G82, R level Z2, bottom Z-3, dwell 0.5 s (line 6).",
        Editor.Markdown("G21 G90 G17 G54\nT4 M6\nS1500 M3 F120 G99\nG0 X10 Y10 Z50\nG91\nG82 X10 Z-5 R-48 P0.5\nX$060\nG80"), StringComparison.Ordinal);

    [Fact]
    public void The_cycle_word_tells_what_it_takes_over_from_another_cycle() => Assert.StartsWith(
        """
        **G83** peck drilling

        Feeds down peck by peck, comes out at rapid after each, to the level where the hole is left or, by the reading peckReturn, to R, to clear the chips, and goes back in at rapid. Stays in force until replaced.

        Carried over: F 120 mm/min (line 3); G99 back to Z2, R level Z2, dwell 0.5 s (line 5).

        **Hole 2** X60 Y10 · G83 from Z2 to Z-20 · 14.4 s

        1. traverse X10 → X60 at Z2 · 0.283 s
        2. 5 pecks to Z-3 Z-8 Z-13 Z-18 Z-20, out to R between · 120 mm/min · 14 s
        3. return Z-20 → Z2 · 0.171 s

        Left at Z2.
        """.ReplaceLineEndings("\n"),
        Editor.Markdown(Cycle + "$0G83 X60 Z-20 Q5\nG80"), StringComparison.Ordinal);

    [Fact]
    public void An_axis_word_without_a_motion_code_tells_the_one_in_force() => Editor.Shows(
        """
        **Y5** end point along Y

        To Y5, +5 mm from Y0 · G90 (line 1).

        Moves by G1 straight cut (line 2).
        """,
        "G90 G0 X0 Y0\nG1 X5 F100\n$0Y5");

    [Fact]
    public void An_axis_word_behind_G80_has_no_motion_code() => Assert.EndsWith(
        "**No motion code is in force**: the cycle has ended.",
        Editor.Markdown("G90 G0 X0 Y0 Z5\nG81 X1 Z-1 R1 F100\nG80\n$0X5"), StringComparison.Ordinal);

    [Fact]
    public void A_distance_tells_where_it_leads() => Editor.Shows(
        """
        **X5** end point along X

        +5 mm from X10, to X15 · G91 (line 2).

        Moves by G0 rapid (line 1).
        """,
        "G90 G0 X10 Y0\nG91 $0X5");

    [Fact]
    public void A_control_that_takes_distances_in_cycles_says_so() => Assert.Contains(
        "+5 mm from X10, to X15 · training-mill takes positions inside cycles as distances.",
        Editor.Markdown("G90 G0 X10 Y0 Z5\nG99 G81 $0X5 Z-1 R1 F100", machine: Machine.Profiles.MachineProfile.TrainingMill), StringComparison.Ordinal);

    [Fact]
    public void The_depth_and_the_R_level()
    {
        Assert.StartsWith("**Z-3** bottom of the hole\n\nBottom at Z-3, 5 mm below the R level Z2. Carried over to the holes that follow.",
            Editor.Markdown("G90 G0 X0 Y0 Z50\nG81 X1 Z$0-3 R2 F100"), StringComparison.Ordinal);
        Assert.Equal("**R2** R level, where the feed begins\n\nR level at Z2, 48 mm below the initial level Z50. Carried over to the holes that follow.",
            Editor.Markdown("G90 G0 X0 Y0 Z50\nG81 X1 Z-3 R$02 F100"));
        Assert.EndsWith("R level at Z2, at the initial level. Carried over to the holes that follow.", Editor.Markdown("G90 G0 X0 Y0 Z2\nG81 X1 Z-3 R$02 F100"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("dwell=seconds", "P0.5", "0.5 s (seconds, iso-mill) · 12.5 turns at S1500.")]
    [InlineData("dwell=milliseconds", "P500", "0.5 s (milliseconds, iso-mill) · 12.5 turns at S1500.")]
    [InlineData("dwell=byPoint", "P500", "0.5 s (without a point: milliseconds, iso-mill) · 12.5 turns at S1500.")]
    [InlineData("dwell=byPoint", "P0.5", "0.5 s (with a point: seconds, iso-mill) · 12.5 turns at S1500.")]
    [InlineData("dwell=milliseconds", "P0.0001", "under 0.000001 s (milliseconds, iso-mill) · under 0.1 turns at S1500.")]
    [InlineData("dwell=milliseconds", "P0.4", "0.0004 s (milliseconds, iso-mill) · under 0.1 turns at S1500.")]
    [InlineData("dwell=milliseconds", "X0.5", "0.5 s (seconds, iso-mill) · 12.5 turns at S1500.")]
    [InlineData("dwell=milliseconds", "X2", "2 s (seconds, iso-mill) · 50 turns at S1500.")]
    [InlineData("dwell=byPoint", "X2", "0.002 s (without a point: milliseconds, iso-mill) · 0.1 turns at S1500.")]
    [InlineData("dwell=byPoint", "X2.", "2 s (with a point: seconds, iso-mill) · 50 turns at S1500.")]
    [InlineData("integers=increments", "X500", "0.5 s (without a point: milliseconds, iso-mill) · 12.5 turns at S1500.")]
    [InlineData("integers=increments", "P2", "2 s (seconds, iso-mill) · 50 turns at S1500.")]
    [InlineData("dwell=byPoint", "P[2]", "2 s (seconds, iso-mill) · 50 turns at S1500.")]
    public void A_dwell_by_the_reading(string reading, string word, string expected) =>
        Assert.EndsWith(expected, Editor.Markdown($"S1500 M3\nG4 $0{word}", machine: Editor.Reading(reading)), StringComparison.Ordinal);

    /// <summary>NISTIR 6556 table 8: beside P the axis words are the motion's.</summary>
    [Fact]
    public void X_beside_the_P_of_a_dwell_is_a_place() =>
        Assert.StartsWith("**X1** ", Editor.Markdown("G21 G90 G0 Z5\nG4 $0X1 P2"), StringComparison.Ordinal);

    [Fact]
    public void A_cycle_that_does_not_wait() => Assert.EndsWith(
        "G83 does not wait as it is read here. Carried over to the holes that follow.",
        Editor.Markdown("G90 G0 X0 Y0 Z50\nG83 X1 Z-3 R2 Q1 $0P1 F100"), StringComparison.Ordinal);

    [Fact]
    public void Tool_and_length_offset_come_from_the_setup()
    {
        Editor.Shows("**T6** number of the tool\n\nIn the setup: tap, diameter 8 mm, pitch 1.25 mm, 3 teeth, length 100 mm, H6.", "$0T6 M6", Editor.PlateSetup);
        const string Broach = """{ "tools": [ { "number": 7, "diameter": 6, "turns": false } ] }""";
        Assert.EndsWith("In the setup: tool, diameter 6 mm, works with the spindle standing.", Editor.Markdown("$0T7 M6", Broach), StringComparison.Ordinal);
        Assert.EndsWith("100 mm in the setup, the length of T6.", Editor.Markdown("T6 M6\nG43 $0H6", Editor.PlateSetup), StringComparison.Ordinal);
        Assert.EndsWith("The setup does not list it.", Editor.Markdown("$0T7 M6", Editor.PlateSetup), StringComparison.Ordinal);
        Assert.EndsWith("No setup file: nothing is known about the tool.", Editor.Markdown("$0T7 M6"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_code_is_told_from_the_table() => Editor.Shows(
        """
        **G54** work offset 1

        Counts positions from the datum of work offset 1. Stays in force until replaced.
        """,
        "G90 $0G54");

    [Theory]
    [InlineData("$0g054 X1", "**G54** ")]
    [InlineData("G 5$0 4", "**G54** ")]
    [InlineData("$0G59.1", "**G59.1** ")]
    [InlineData("$0M03 S1", "**M3** ")]
    [InlineData("#1=54\n$0G#1", "**G54** work offset 1 (`G#1`)")]
    public void A_code_is_found_however_it_is_written(string marked, string expected) =>
        Assert.StartsWith(expected, Editor.Markdown(marked), StringComparison.Ordinal);

    [Fact]
    public void A_code_that_this_machine_lacks() => Assert.Contains(
        "iso-mill does not have this code: it selects inch and millimetre by G70 and G71.",
        Editor.Markdown("$0G20", machine: Editor.Reading("units=G70/G71")), StringComparison.Ordinal);

    [Fact]
    public void Repeats_by_the_reading()
    {
        Assert.Contains("; L times the cycle is repeated;", Editor.Markdown("G90 $0G82 X1 Z-1 R1 F1"), StringComparison.Ordinal);
        Assert.Contains("; K times the cycle is repeated;", Editor.Markdown("G90 $0G82 X1 Z-1 R1 F1", machine: Editor.Reading("repeats=K")), StringComparison.Ordinal);
        Assert.EndsWith("3 times at the same place, X1 Y0.", Editor.Markdown("G90 G0 X0 Y0 Z5\nG81 X1 Z-1 R1 F1 $0L3"), StringComparison.Ordinal);
        Assert.EndsWith("3 holes, from X1 Y0 to X3 Y0.", Editor.Markdown("G90 G0 X0 Y0 Z5\nG91 G81 X1 Z-1 R1 F1 $0L3"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_word_that_nothing_uses() => Assert.EndsWith("Nothing in this block uses it.", Editor.Markdown("G90 G0 X1 $0Q5"), StringComparison.Ordinal);

    [Fact]
    public void A_letter_twice() => Assert.EndsWith("The block has this letter already: this word is not read.", Editor.Markdown("G90 G0 X1 $0X5"), StringComparison.Ordinal);

    /// <summary>Settings act after all reads of their block (NISTIR 6556 §3.3.3).</summary>
    [Fact]
    public void A_variable()
    {
        Editor.Shows("`#3` local variable\n\nBecomes 6, was 15. It is set when the other words of the block have been read.", "#3=15\n$0#3=6 G1 X#3");
        Assert.StartsWith("`##3` (#15) local variable\n\nBecomes 7.", Editor.Markdown("#3=15\n$0##3=7"), StringComparison.Ordinal);
        Assert.Contains("Its value is not known here.", Editor.Markdown("$0#4=#5"), StringComparison.Ordinal);
        Assert.Contains("To X15", Editor.Markdown("#3=15\nG90 #3=6 G1 $0X#3"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_statement_from_the_table() => Assert.StartsWith(
        "**GOTO** jump\n\nGoes on at the block whose N number is n. Written `GOTO n`.", Editor.Markdown("$0GOTO 5"), StringComparison.Ordinal);

    [Fact]
    public void An_arc_tells_its_centre()
    {
        Assert.EndsWith("3 mm: the centre is at X10.", Editor.Markdown("F100 G90 G0 X7 Y7 Z0\nG2 X10 Y16 $0I3 J4"), StringComparison.Ordinal);
        Assert.Contains("1. arc clockwise X7 Y7 → X10 Y16 at Z0 · centre X10 Y11, radius 5 mm · 100 mm/min · ",
            Editor.Markdown("F100 G90 G0 X7 Y7 Z0\n$0G2 X10 Y16 I3 J4"), StringComparison.Ordinal);
    }

    [Fact]
    public void Machine_coordinates_and_the_reference_point()
    {
        Assert.EndsWith("-5 mm in machine coordinates.", Editor.Markdown("G90 G0 G53 $0Z-5"), StringComparison.Ordinal);
        Assert.StartsWith("**Z0** point on the way along Z\n\n", Editor.Markdown("G91 G28 $0Z0"), StringComparison.Ordinal);
    }

    /// <summary>A broad number without a point under the reading that takes least increments.</summary>
    [Fact]
    public void Least_increments() => Assert.Contains("To X0.015", Editor.Markdown("G90 G0 $0X15", machine: Editor.Reading("integers=increments")), StringComparison.Ordinal);
}
