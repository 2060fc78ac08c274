using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>The order in which the words of one block act: NISTIR 6556 table 8, pair by pair where the order can be seen.</summary>
public sealed class OrderTests
{
    static Point3 Origin => default;

    /// <summary>Table 8, items 2 and 3: the feed mode is in force before F is read.</summary>
    [Fact]
    public void Feed_mode_before_F()
    {
        var session = new Session(start: Origin).Run("G1 X10 F2 G93");
        Assert.Equal(30, session.Moves[0].Seconds, 9);
    }

    /// <summary>Table 8, items 3 and 20: the F of a block governs its own motion.</summary>
    [Fact]
    public void F_before_motion() => Assert.Equal(120, new Session(start: Origin).Run("F900", "G1 X10 F120").Moves[0].Feed);

    /// <summary>Table 8, items 3 and 12, with §4.3.3.3: F keeps its number, whichever unit the block goes on to choose.</summary>
    [Theory]
    [InlineData("G1 X1 F10 G20", 254)]
    [InlineData("G20 F10 G1 X1", 254)]
    [InlineData("G1 X1 F10 G21", 10)]
    public void F_keeps_its_number_when_its_block_changes_units(string block, double feed) =>
        Assert.Equal(feed, new Session(start: Origin).Run(block).Moves[0].Feed, 9);

    /// <summary>§4.3.3.3: F16 inches a minute becomes F16 mm a minute.</summary>
    [Fact]
    public void Units_change_keeps_the_number_of_the_feed()
    {
        var session = new Session(start: Origin).Run("G20", "F16", "G1 X1");
        Assert.Equal(16 * 25.4, session.Moves[0].Feed, 9);
        session.Clear().Run("G21", "X1");
        Assert.Equal(16, session.Moves[0].Feed, 9);
        Assert.Equal(0.016, new Session(start: Origin).Run("G20 G95 F0.016 M3 S1000", "G21").State.Feed, 9);
    }

    /// <summary>§4.3.3.3: a change of units renumbers the position; the tool has not moved.</summary>
    [Fact]
    public void Units_change_leaves_the_tool_where_it_is()
    {
        var session = new Session(start: new Point3(25.4, 0, 0)).Run("G20", "G90 G0 X1");
        Assert.Empty(session.Log);
        Assert.Equal("rapid 50.8 0 0", session.Run("G91 X1").Log[^1]);
    }

    /// <summary>Table 8, items 5 to 7: T, then M6, which stops the spindle (§3.6.3), then M3.</summary>
    [Theory]
    [InlineData("T5 M6 M3 S900")]
    [InlineData("M3 S900 M6 T5")]
    public void T_before_M6_before_M3(string block)
    {
        var session = new Session(start: Origin).Run("T1 M6", "M4 S100").Clear().Run(block);
        Assert.Equal(["toolChange", "spindle"], session.Log.Select(line => line == "toolchange" ? "toolChange" : line));
        Assert.Equal(5, session.State.Tool);
        Assert.Equal(SpindleState.Clockwise, session.State.Spindle);
    }

    /// <summary>§3.6.3: M6 stops the spindle; the coolant is as it was and the axes end where they were.</summary>
    [Fact]
    public void Tool_change_stops_the_spindle_and_nothing_else()
    {
        var session = new Session(start: new Point3(1, 2, 3)).Run("M3 S500 M8", "T2 M6");
        Assert.Equal(SpindleState.Off, session.State.Spindle);
        Assert.Equal(CoolantState.Flood, session.State.Coolant);
        Assert.Equal(new Point3(1, 2, 3), session.State.Position);
    }

    /// <summary>§3.6.3 with §3.7: without a new T, M6 brings the tool chosen last.</summary>
    [Fact]
    public void M6_brings_the_tool_chosen_before()
    {
        var session = new Session(start: Origin).Run("T7");
        Assert.Equal(-1, session.State.Tool);
        Assert.Equal(7, session.Run("M6").State.Tool);
    }

    /// <summary>Table 8, items 7, 8, 10 and 20: spindle, coolant, dwell, motion.</summary>
    [Fact]
    public void Spindle_coolant_and_dwell_before_motion()
    {
        var session = new Session(start: Origin).Run("G0 X10 G4 P2 M8 M3 S100");
        Assert.Equal(["spindle", "coolant", "dwell 2", "rapid 10 0 0"], session.Log);
        Assert.Empty(session.Faults);
    }

    /// <summary>Table 8, items 10 and 20, with a motion mode carried over: the axis words of a dwell block with P still move.</summary>
    [Fact]
    public void Dwell_leaves_the_axis_words_to_the_motion_in_force() =>
        Assert.Equal(["dwell 0.5", "feed 10 0 0"], new Session(start: Origin).Run("G1 F100").Clear().Run("G4 P0.5 X10").Log);

    /// <summary>Table 8, items 11, 12, 15, 17 and 20: plane, units, offset and distance mode act on their own block's motion.</summary>
    [Fact]
    public void Modes_before_motion()
    {
        Assert.Equal(["rapid 25.4 0 0"], new Session(start: Origin).Run("G0 X1 G20").Log);
        Assert.Equal(["rapid 15 0 0"], new Session(start: new Point3(5, 0, 0)).Run("G0 X10 G91").Log);
        Assert.Equal(new Point3(5, 0, 0), new Session(start: Origin).Run("F100 G2 X10 Z0 I5 G18").Moves[0].Center);
        Assert.Equal(["rapid 1 ? ?"], new Session(start: Origin).Run("G0 X1 G55").Log);
    }

    /// <summary>Table 8, items 14 and 20: the length offset is in force before the block's motion.</summary>
    [Fact]
    public void Length_offset_before_motion()
    {
        var setup = new Setup { IsPresent = true, Tools = [new Tool { Number = 2, Length = 30 }] };
        var session = new Session(setup: setup, start: new Point3(0, 0, 100)).Run("G0 Z80 G43 H2");
        Assert.Equal(70, session.Moves[0].From.Z);
        Assert.Equal(80, session.Moves[0].To.Z);
    }

    /// <summary>Table 8, items 17 and 19: G91 is in force before G28 reads its point.</summary>
    [Fact]
    public void Distance_mode_before_G28()
    {
        var session = new Session(setup: Datum, start: new Point3(10, 0, 50)).Run("G0 G90").Clear().Run("G28 G91 Z0");
        Assert.Equal(["rapid 10 0 400"], session.Log);
        Assert.Equal(["rapid 10 0 0", "rapid 10 0 400"], new Session(setup: Datum, start: new Point3(10, 0, 50)).Run("G28 G90 Z0").Log);
    }

    /// <summary>Table 8, items 18 and 20: the return level of a block is that of its hole.</summary>
    [Fact]
    public void Return_level_before_the_hole() =>
        Assert.Equal("rapid 0 0 2", new Session(start: new Point3(0, 0, 9)).Run("G98", "G81 X0 Z-1 R2 F100 G99").Log[^1]);

    /// <summary>Table 8, items 19 and 20: G92 takes its block's axis words before any motion.</summary>
    [Fact]
    public void Position_shift_takes_the_axis_words()
    {
        var session = new Session(start: new Point3(4, 0, 0)).Run("G0").Run("G92 X7");
        Assert.Empty(session.Log);
        Assert.Equal(7, session.State.Position.X);
    }

    /// <summary>Table 8, items 7, 8 and 20: M5 and M9 act before the motion of their block; ISO 6983-1 (from memory): after it.</summary>
    [Fact]
    public void M5_and_M9_before_or_after_motion_by_the_reading()
    {
        Assert.Equal(["spindle", "coolant", "feed 1 0 0"], Stops(StopReading.BeforeMotion));
        Assert.Equal(["feed 1 0 0", "spindle", "coolant"], Stops(StopReading.AfterMotion));

        static IEnumerable<string> Stops(StopReading reading) =>
            new Session(Reading(r => r with { StopsAct = reading }), start: Origin).Run("M3 S100 M8 F100").Clear().Run("G1 X1 M5 M9").Log;
    }

    /// <summary>Table 8, items 20 and 21: the stop comes last, and after it nothing of the block.</summary>
    [Theory]
    [InlineData("M0 G0 X1 M9")]
    [InlineData("M1 M9 G0 X1")]
    [InlineData("G0 M60 M9 X1")]
    [InlineData("M30 M9 G0 X1")]
    public void Stop_last(string block)
    {
        foreach (var reading in new[] { StopReading.BeforeMotion, StopReading.AfterMotion })
            Assert.Equal("stop", new Session(Reading(r => r with { StopsAct = reading }), start: Origin).Run(block).Log[^1]);
    }

    /// <summary>§3.3.6: "g40 g1 #3=15 (foo) #4=-7.0" means the same in all 120 orders.</summary>
    [Fact]
    public void All_120_orders_of_the_example_are_the_same()
    {
        var orders = Orders(["g40", "g1", "#3=15", "(foo)", "#4=-7.0"]).ToList();
        Assert.Equal(120, orders.Count);
        var first = new Session(start: Origin).Run(string.Join(' ', orders[0])).State;
        Assert.Equal(15, first.Variables!.Get(3));
        Assert.Equal(-7, first.Variables!.Get(4));
        Assert.Equal(MotionMode.Linear, first.Motion);
        foreach (var order in orders)
            Assert.Equal(first, new Session(start: Origin).Run(string.Join(' ', order)).State);
    }

    /// <summary>§3.3.6: the order of words has no meaning: a whole block of a cycle in many orders.</summary>
    [Fact]
    public void Words_of_a_cycle_block_in_any_order()
    {
        var expected = new Session(start: new Point3(0, 0, 20)).Run("G90 G99 G82 X10 Z-3 R2 P1 F100").Log;
        foreach (var order in Orders(["G90", "G99", "G82", "X10", "Z-3 R2", "P1 F100"]))
            Assert.Equal(expected, new Session(start: new Point3(0, 0, 20)).Run(string.Join(' ', order)).Log);
    }

    /// <summary>Common practice: G96 and G97 govern the S of their own block.</summary>
    [Fact]
    public void Speed_mode_before_S()
    {
        Assert.True(double.IsNaN(new Session().Run("S200 G96").State.Speed));
        Assert.Equal(1000, new Session().Run("G96 S200", "S1000 G97").State.Speed);
        Assert.True(double.IsNaN(new Session().Run("S1500", "G96").State.Speed));
    }

    /// <summary>A constant cutting speed bends no path: places stay known (common practice).</summary>
    [Fact]
    public void Constant_cutting_speed_leaves_places_known() =>
        Assert.True(new Session(start: Origin).Run("G96 S200 G0 X1").Step.ToFrame.IsKnown);

    internal static readonly Setup Datum = new()
    {
        IsPresent = true,
        WorkOffsets = Setup.None.WorkOffsets.Add(54, new Point3(-300, -200, -400)),
    };

    internal static MachineProfile Reading(Func<Readings, Readings> change) =>
        MachineProfile.IsoMill with { Readings = change(MachineProfile.IsoMill.Readings) };

    static IEnumerable<string[]> Orders(string[] items)
    {
        if (items.Length == 1)
            return [items];
        return items.SelectMany((item, i) => Orders([.. items[..i], .. items[(i + 1)..]]).Select(rest => (string[])[item, .. rest]));
    }
}
