using NcLanguage.Editing.Refactorings;
using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Refactorings;

/// <summary>Cycles and the moves they make (NISTIR 6556 §3.5.16; G73 and the gap of a peck common practice).</summary>
public sealed class CycleTests
{
    [Fact]
    public void A_run_of_holes_is_written_out() => Assert.Equal(
        "G21 G90 G54 G0 X10 Y10 Z20 S1000 M3\nN10 G0 Z2 (first)\nG1 Z-5 F100\nG4 P0.5\nG0 Z2\nN20 G0 X30\nG1 Z-5\nG4 P0.5\nG0 Z20\nN30 G80\nM30\n",
        Rewritten.At(1, "writeOutCycle", "G21 G90 G54 G0 X10 Y10 Z20 S1000 M3\nN10 G99 G82 X10 Y10 Z-5 R2 P0.5 F100 (first)\nN20 G98 X30\nN30 G80\nM30\n"));

    [Fact]
    public void Where_the_control_lifts_before_the_traverse_so_do_the_moves() => Assert.Equal(
        "G21 G90 G0 X10 Y10 Z20\nG0 Z2\nG1 Z-5 F100\nG0 Z2\nG0 Z20\nG0 X30\nG0 Z2\nG1 Z-5\nG0 Z2\nG80\nM30\n",
        Rewritten.At(2, "writeOutCycle", "G21 G90 G0 X10 Y10 Z20\nG98 G81 X10 Y10 Z-5 R2 F100\nX30\nG80\nM30\n", machine: Editor.Reading("returnLevel=beforeMove")));

    [Fact]
    public void Pecks_and_distances() => Assert.Equal(
        "G21 G91 G0 X0\nG90 G0 X0 Y0 Z10\nG91 G0 X5\nG0 Z-8\nG1 Z-4 F100\nG0 Z4\nG0 Z-3\nG1 Z-3\nG0 Z6\nG90 G80\nM30\n",
        Rewritten.At(2, "writeOutCycle", "G21 G91 G0 X0\nG90 G0 X0 Y0 Z10\nG91 G99 G83 X5 R-8 Z-6 Q4 F100\nG90 G80\nM30\n"));

    [Fact]
    public void Tapping_is_more_than_moves() => Assert.Equal(
        "G84 does more than rapids, feeds and dwells can say.",
        Rewritten.Refused(1, "writeOutCycle", "G21 G90 G0 X0 Y0 Z10 S500 M3\nG84 X5 Y0 Z-8 R3 F625\nG80\nM30\n"));

    [Fact]
    public void Holes_in_a_loop_are_not_written_out_so() => Assert.Equal(
        "Line 4 does not run just once.",
        Rewritten.Refused(3, "writeOutCycle", "G21 G90 G0 X0 Y0 Z10\n#1 = 0\nWHILE [#1 LT 3] DO 1\nG99 G81 X[#1 * 5] Y0 Z-3 R2 F100\n#1 = #1 + 1\nEND 1\nG80\nM30\n"));

    [Fact]
    public void The_next_run_of_holes_returns_where_it_did() => Assert.Contains(
        "\nG98 G0 Z2\n",
        Rewritten.At(2, "writeOutCycle", "G21 G90 G0 X10 Y10 Z20\nG99\nG98 G81 X10 Y10 Z-5 R2 F100\nG80\nG0 Z30\nG81 X50 Y10 Z-5 R2\nX60\nG80\nM30\n"), StringComparison.Ordinal);

    [Fact]
    public void Moves_are_gathered() => Assert.Equal(
        "G21 G90 G17 G0 X0 Y0 Z20\nN10 G99 G82 X10 Y10 Z-5 R2 P0.5 F100\nN20 X30\nG98 Y25\nG80\nG0 Z30\nM30\n",
        Rewritten.At(3, "gatherCycle",
            "G21 G90 G17 G0 X0 Y0 Z20\nN10 G0 X10 Y10\nG0 Z2\nG1 Z-5 F100\nG4 P0.5\nG0 Z2\nN20 G0 X30\nG1 Z-5\nG4 P0.5\nG0 Z2\nG0 Y25\nG1 Z-5\nG4 P0.5\nG0 Z20\nG0 Z30\nM30\n"));

    [Fact]
    public void Out_at_the_feed() => Assert.Equal(
        "G21 G90 G17 G0 X10 Y10 Z5\nG99 G85 X10 Y10 Z-5 R5 F80\nX30\nG80 G1\nX50\nM30\n",
        Rewritten.At(1, "gatherCycle", "G21 G90 G17 G0 X10 Y10 Z5\nG1 Z-5 F80\nG1 Z5\nG0 X30\nG1 Z-5\nG1 Z5\nX50\nM30\n"));

    [Fact]
    public void Holes_that_differ_are_not_gathered() =>
        Assert.False(Rewritten.IsOffered(Lines.At(1), "gatherCycle", "G21 G90 G17 G0 X10 Y10 Z5\nG1 Z-5 F80\nG0 Z5\nG0 X30\nG1 Z-6\nG0 Z5\nM30\n"));

    [Fact]
    public void Where_cycle_positions_are_distances_they_are_written_so() => Assert.Equal(
        "G21 G90 G17 G0 X10 Y10 Z20\nG99 G81 X0 Y0 Z-5 R2 F100\nX20\nX10 Y5\nG80\nG0 Z30\nM30\n",
        Rewritten.At(1, "gatherCycle", "G21 G90 G17 G0 X10 Y10 Z20\nG0 Z2\nG1 Z-5 F100\nG0 Z2\nG0 X30\nG1 Z-5\nG0 Z2\nG0 X40 Y15\nG1 Z-5\nG0 Z2\nG0 Z30\nM30\n",
            machine: Editor.Reading("holePositions=incremental", "returnLevel=beforeMove")));

    /// <summary>The clamp between X25 and X45 is 25 high: the traverse over it needs the initial level, the others do not. The last hole is left as it was.</summary>
    [Fact]
    public void Return_levels_for_least_time() => Assert.Equal(
        "G21 G90 G54 G17 T4 M6\nG0 X10 Y10 S1000 M3\nG43 H4 Z30\nG98 G81 X10 Y10 Z-3 R2 F100\nG99 X60\nX80\nG98 X100\nG80\nG0 Z30\nM30\n",
        Rewritten.At(4, "returnLevels",
            "G21 G90 G54 G17 T4 M6\nG0 X10 Y10 S1000 M3\nG43 H4 Z30\nG98 G81 X10 Y10 Z-3 R2 F100\nX60\nX80\nX100\nG80\nG0 Z30\nM30\n", Editor.PlateSetup));

    [Fact]
    public void Return_levels_are_offered_only_where_one_may_be_lower()
    {
        const string High = "G21 G90 G54 G0 X0 Y0 Z30\nG98 G81 X10 Y10 Z-3 R2 F100\nX60\nG80\nM30\n";
        var low = High.Replace("G98", "G99", StringComparison.Ordinal);
        foreach (var name in new[] { "returnLevels", "allReturnLevels" })
        {
            Assert.True(Rewritten.IsOffered(Lines.At(1), name, High, Editor.PlateSetup));
            Assert.False(Rewritten.IsOffered(Lines.At(1), name, low, Editor.PlateSetup));
            // Without obstacles no traverse is called clear.
            Assert.False(Rewritten.IsOffered(Lines.At(1), name, High));
            Assert.False(Rewritten.IsOffered(Lines.At(1), name, High, """{ "obstacles": [] }"""));
        }
    }

    [Fact]
    public void All_runs_at_once()
    {
        const string Program = "G21 G90 G54 G17 T4 M6\nG0 X60 Y10 S1000 M3\nG43 H4 Z30\nG98 G81 X60 Y10 Z-3 R2 F100\nX80\nG80\nG0 Z30\nG98 G82 X80 Y20 Z-3 R2 P0.5\nX60\nG80\nG0 Z30\nM30\n";
        Assert.Equal(
            Program.Replace("G98", "G99", StringComparison.Ordinal).Replace("\nX80", "\nG98 X80", StringComparison.Ordinal).Replace("\nX60", "\nG98 X60", StringComparison.Ordinal),
            Rewritten.At(0, "allReturnLevels", Program, Editor.PlateSetup));
        Assert.False(Rewritten.IsOffered(Lines.At(0), "returnLevels", Program, Editor.PlateSetup));
    }
}
