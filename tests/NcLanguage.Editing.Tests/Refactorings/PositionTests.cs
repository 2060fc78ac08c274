using NcLanguage.Editing.Refactorings;
using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Refactorings;

/// <summary>Positions and distances (NISTIR 6556 §3.5.17; words of cycles §3.5.16: in G91 R counts from the level before and Z from R).</summary>
public sealed class PositionTests
{
    const string Absolute = "G21 G90 G0 X10 Y10\nZ5\nG1 Z-2 F100\nX30 Y25\nG2 X40 Y15 I0 J-10\nG0 Z5\nM30\n";

    [Fact]
    public void Positions_become_distances() => Assert.Equal(
        "G21 G90 G0 X10 Y10\nZ5\nG91 G1 Z-7 F100\nX20 Y15\nG2 X10 Y-10 I0 J-10\nG0 Z7\nM30\n", Rewritten.At(0, "toDistances", Absolute));

    [Fact]
    public void And_back() => Assert.Equal(
        "G21 G90 G0 X10 Y10\nZ5\nG90 G1 Z-2 F100\nX30 Y25\nG2 X40 Y15 I0 J-10\nG0 Z5\nM30\n",
        Rewritten.At(0, "toPositions", Rewritten.At(0, "toDistances", Absolute)));

    [Fact]
    public void Behind_the_lines_marked_the_mode_is_as_it_was() => Assert.Equal(
        "G21 G90 G0 X10 Y10\nZ5\nG1 Z-2 F100\nG91 X20 Y15\nG90\nG2 X40 Y15 I0 J-10\nG0 Z5\nM30\n",
        Rewritten.In(new Lines(3, 3, false), "toDistances", Absolute));

    [Fact]
    public void R_counts_from_the_level_before_and_Z_from_R() => Assert.Equal(
        "G21 G90 G0 X10 Y10\nZ20\nG91 G99 G81 X0 Y0 Z-7 R-18 F100\nX20\nX5 Y-4 Z-9\nG80\nG0 Z18\nM30\n",
        Rewritten.At(0, "toDistances", "G21 G90 G0 X10 Y10\nZ20\nG99 G81 X10 Y10 Z-5 R2 F100\nX30\nX35 Y6 Z-7\nG80\nG0 Z20\nM30\n"));

    [Fact]
    public void Under_the_reading_by_the_initial_level_R_counts_from_there() => Assert.Equal(
        "G21 G90 G0 X10 Y10\nZ20\nG91 G99 G81 X0 Y0 Z-7 R-18 F100\nX20 R-17\nG80\nG0 Z17\nM30\n",
        Rewritten.At(0, "toDistances", "G21 G90 G0 X10 Y10\nZ20\nG99 G81 X10 Y10 Z-5 R2 F100\nX30 R3\nG80\nG0 Z20\nM30\n", machine: Editor.Reading("incrementalR=initialLevel")));

    [Fact]
    public void Where_cycle_positions_are_distances_already_only_levels_change() => Assert.Equal(
        "G21 G90 G0 X10 Y10\nZ20\nG91 G99 G81 X0 Y0 Z-7 R-18 F100\nX20\nG80\nG0 Z18\nM30\n",
        Rewritten.At(0, "toDistances", "G21 G90 G0 X10 Y10\nZ20\nG99 G81 X0 Y0 Z-5 R2 F100\nX20\nG80\nG0 Z20\nM30\n", machine: Editor.Reading("holePositions=incremental")));

    [Fact]
    public void The_way_home_keeps_its_words() => Assert.Equal(
        "G90 G0 X10 Y10\nZ5\nG91 X5\nG91 G28 Z0\nG91 G0 X-15 Y-10\nM30\n",
        Rewritten.At(0, "toDistances", "G90 G0 X10 Y10\nZ5\nX15\nG91 G28 Z0\nG90 G0 X0 Y0\nM30\n"));

    [Fact]
    public void A_subprogram_run_from_two_places_keeps_its_positions() => Assert.StartsWith(
        "No block here", Rewritten.Refused(0, "toPositions", "G90 G0 X0 Y0\nM98 P7 L2\nM30\nO7\nG91 X5\nG90\nM99\n"), StringComparison.Ordinal);

    [Fact]
    public void Calls_and_loops_are_met_in_the_mode_they_were() => Assert.Equal(
        "G90 G0 X1 Y0\nG91 X1\nG90\nM98 P7\nG91 X3\nM30\nO7\nG91 X1\nG90\nM99\n",
        Rewritten.At(0, "toDistances", "G90 G0 X1 Y0\nX2\nM98 P7\nX6\nM30\nO7\nX3\nM99\n"));

    /// <summary>The second time round the first block would start from where the last one ended.</summary>
    [Fact]
    public void Blocks_that_may_run_again_keep_their_positions()
    {
        const string program = "G90 G0 X0 Y0\nN10 X10\nX20\nIF [#500 LT 5] GOTO 10\nM30\n";
        Assert.StartsWith("Which way line 4 leads is not known", Rewritten.Refused(0, "toDistances", program), StringComparison.Ordinal);
        Assert.Contains("N40 IF [#500 LT 5] GOTO 20", Rewritten.At(0, "renumber", program), StringComparison.Ordinal);
    }
}
