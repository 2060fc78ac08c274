using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>What the control model remembers of the program's course, and places that go stale.</summary>
public sealed class HistoryTests
{
    [Fact]
    public void A_machine_position_is_forgotten_when_the_axis_moves_by_an_offset_not_known()
    {
        var session = new Session().Run("G21 G90 G28");
        Assert.Equal(0, session.State.MachinePosition.Z);
        session.Run("G0 X5");
        Assert.Equal(0, session.State.MachinePosition.Z);
        session.Run("G0 Z5");
        Assert.True(double.IsNaN(session.State.MachinePosition.Z));
        Assert.Equal(0, session.State.MachinePosition.Y);
    }

    [Theory]
    [InlineData("G91 G30 P2 Z0")]
    [InlineData("M19 R90")]
    public void Words_that_their_code_uses_are_not_called_idle(string block) =>
        Assert.DoesNotContain(new Session().Run(block).Faults, fault => fault.Kind == FaultKind.WordWithoutEffect);

    [Theory]
    [InlineData("G68 X5 Y5 R30")]
    [InlineData("G51 X5 Y5 P2")]
    [InlineData("G51.1 X5 Y5")]
    [InlineData("G50.1 X5 Y5")]
    [InlineData("G65 P100 X5 Y5")]
    public void A_fixed_point_and_arguments_are_no_move(string block)
    {
        var session = new Session().Run("G21 G90 G0 X1 Y1 Z1").Clear().Run(block);
        Assert.Empty(session.Moves);
        Assert.DoesNotContain(session.Faults, fault => fault.Kind == FaultKind.WordWithoutEffect);
    }

    [Fact]
    public void A_cut_with_a_standing_spindle_is_remembered_until_it_starts()
    {
        var session = new Session().Run("G21 G90 G1 Z-1 F100");
        Assert.True((session.State.Happened & Happened.CutStanding) != 0);
        Assert.True((session.Run("M3 S1000").State.Happened & Happened.CutStanding) == 0);
        Assert.True((session.Run("G1 Z-2").State.Happened & Happened.CutStanding) == 0);
        Assert.True((session.Run("M5", "G1 Z-3").State.Happened & Happened.CutStanding) != 0);
        Assert.True((session.Run("T2 M6").State.Happened & Happened.CutStanding) == 0);
    }

    [Fact]
    public void A_cut_with_the_spindle_reversed_is_remembered_until_the_tool_is_changed()
    {
        var session = new Session().Run("G21 G90 G0 Z5", "M4 S1000", "G1 Z6 F100");
        Assert.True((session.State.Happened & Happened.CutReversed) == 0);
        Assert.True((session.Run("G74 X5 Z-8 R2 F900", "G80").State.Happened & Happened.CutReversed) == 0);
        Assert.True((session.Run("G1 Z-2").State.Happened & Happened.CutReversed) != 0);
        Assert.True((session.Run("M3", "G1 Z-3").State.Happened & Happened.CutReversed) != 0);
        Assert.True((session.Run("T2 M6").State.Happened & Happened.CutReversed) == 0);
    }

    [Fact]
    public void Distances_after_a_way_home_are_told_from_distances_programmed_as_such()
    {
        Assert.Equal(IncrementalUse.Homed, new Session().Run("G90", "G91 G28 Z0").State.IncrementalUse);
        Assert.Equal(IncrementalUse.Homed, new Session().Run("G90", "G91", "G28 Z0", "M6").State.IncrementalUse);
        Assert.Equal(IncrementalUse.None, new Session().Run("G91 G28 Z0", "G90").State.IncrementalUse);
        Assert.Equal(IncrementalUse.Moved, new Session().Run("G91 G0 X5", "G28 Z0").State.IncrementalUse);
        Assert.Equal(IncrementalUse.Homed, new Session().Run("G90", "G91 G0 X5", "G28 Z0").State.IncrementalUse);
        Assert.Equal(IncrementalUse.MovedFromHome, new Session().Run("G90", "G91 G28 Z0", "G0 X5").State.IncrementalUse);
    }

    [Fact]
    public void A_tool_used_without_its_length_offset_is_remembered()
    {
        Assert.True((new Session().Run("T1 M6", "G0 X5").State.Happened & Happened.UsedWithoutOffset) == 0);
        Assert.True((new Session().Run("T1 M6", "G0 Z5").State.Happened & Happened.UsedWithoutOffset) != 0);
        Assert.True((new Session().Run("T1 M6", "G0 G43 H1 Z5").State.Happened & Happened.UsedWithoutOffset) == 0);
        Assert.True((new Session().Run("T1 M6", "G0 G43 H1 Z5", "T2 M6", "G0 Z5").State.Happened & Happened.UsedWithoutOffset) != 0);
        Assert.True((new Session().Run("T1 M6", "G28 Z5").State.Happened & Happened.UsedWithoutOffset) == 0);
    }
}
