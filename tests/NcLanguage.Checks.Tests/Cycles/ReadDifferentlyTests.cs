using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Cycles;

// Positions: NISTIR 6556 §3.5.16 against distances (common practice). Returns: §3.5.20 against a lift before the move (common practice).
public class ReadDifferentlyTests
{
    static readonly Setup Clamped = new()
    {
        IsPresent = true,
        Obstacles = [new BoxObstacle("clamp", new Box3(new(30, -10, 0), new(40, 60, 25)))],
        Tools = [new Tool { Number = 3, Diameter = 6 }],
    };

    [Fact]
    public void Positions_speak_once_for_each_run_and_only_where_no_machine_was_chosen()
    {
        const string blocks = "G98 G81 X10 Y10 Z-3 R2 F100\nX45 Y15\nX50\nG80\nG0 Z40\nG81 X60 Y15 Z-3 R2";
        var found = CycleJob.Run(blocks, chosen: false).Findings.Where(f => f.Name == "positions-read-differently").ToList();
        Assert.Equal([0, 5], found.Select(f => f.Line - CycleJob.Before));
        Assert.Equal(
            "Hole 1: at X10 Y10 here; a control that takes cycle positions as distances drills at X20 Y20, and 2 more holes of this run elsewhere too.",
            found[0].Message);
        Assert.Empty(CycleJob.Find("positions-read-differently", blocks));
    }

    [Fact]
    public void Positions_that_come_out_the_same_are_silent()
    {
        Assert.Empty(CycleJob.Find("positions-read-differently", "G91 G98 G81 X5 Y5 Z-5 R-38 F100\nX10 L3\nG90", chosen: false));
        Assert.Empty(CycleJob.Find("positions-read-differently", "G98 G81 Z-3 R2 F100\nG80", chosen: false));
    }

    [Fact]
    public void Positions_speak_at_the_first_hole_that_differs() => Assert.Equal(
        [2], CycleJob.Find("positions-read-differently", "G0 X0 Y0\nG98 G81 X10 Y0 Z-3 R2 F100\nX20\nX30", chosen: false).Select(f => f.Block));

    [Fact]
    public void Returns_are_an_error_where_one_reading_meets_something()
    {
        const string blocks = "G99 G81 X10 Y10 Z-3 R2 F100\nG98 X20\nG99 X50\nX60";
        var found = CycleJob.Run(blocks, Clamped, chosen: false).Findings.Where(f => f.Name == "return-read-differently").ToList();
        Assert.Equal(CycleJob.Before + 2, Assert.Single(found).Line);
        Assert.Equal(Severity.Error, found[0].Severity);
        Assert.Equal("The traverse to X50 Y10 at Z40 clears here; a control that lifts before it moves crosses at Z2 and runs into clamp.", found[0].Message);
        Assert.Empty(CycleJob.Find("return-read-differently", blocks, Clamped));
    }

    // Holes of ZX have no place in X and Y that could be told (NISTIR 6556 §3.5.16: they are drilled along Y).
    [Fact]
    public void In_another_plane_the_level_is_told_along_its_axis_and_no_place()
    {
        const string blocks = "G18 G0 Y60 Z20\nG99 G81 X10 Z20 Y30 R32 F100\nG98 X20\nG99 X50\nX60\nG80\nG17";
        var lower = Clamped with { Obstacles = [new BoxObstacle("clamp", new Box3(new(30, -10, 0), new(40, 40, 25)))] };
        var found = CycleJob.Run(blocks, lower, chosen: false).Findings.Where(f => f.Name is "return-read-differently" or "positions-read-differently").ToList();
        Assert.Equal("The traverse to this hole at Y60 clears here; a control that lifts before it moves crosses at Y32 and runs into clamp.", Assert.Single(found).Message);
    }

    [Fact]
    public void Returns_are_a_warning_where_only_the_clearance_differs()
    {
        // R26 is 1 mm above the clamp, the initial level 40 clears it.
        Assert.Equal(
            [(1, Severity.Warning)],
            CycleJob.Find("return-read-differently", "G98 G81 X20 Y10 Z-3 R26 F100\nG99 X50", Clamped, chosen: false));
    }

    [Fact]
    public void Returns_that_come_out_the_same_are_silent()
    {
        Assert.Empty(CycleJob.Find("return-read-differently", "G98 G81 X10 Y10 Z-3 R2 F100\nX20\nX50", Clamped, chosen: false));
        Assert.Empty(CycleJob.Find("return-read-differently", "G99 G81 X10 Y10 Z-3 R2 F100\nX20\nX50", Clamped, chosen: false)); // both meet it
        Assert.Empty(CycleJob.Find("return-read-differently", "G99 G81 X10 Y10 Z-3 R2 F100\nG98 X20\nG99 X25", Clamped, chosen: false)); // the levels differ, both clear
    }
}
