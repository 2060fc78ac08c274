using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>Work offsets, tool lengths, shifts and machine coordinates: what they do to the numbers of a place at rest.</summary>
public sealed class OffsetTests
{
    static readonly Setup Two = OrderTests.Datum with
    {
        WorkOffsets = OrderTests.Datum.WorkOffsets.Add(55, new Point3(-250, -180, -390)).Add(593, new Point3(-10, -20, -30)),
        Tools = [new Tool { Number = 1, Length = 80 }, new Tool { Number = 2, Length = 120, LengthOffset = 12 }, new Tool { Number = 3 }],
    };

    /// <summary>NISTIR 6556 §3.5.13: another coordinate system gives the same place other numbers; nothing moves.</summary>
    [Theory]
    [InlineData("G55", -50, -20, 90)]
    [InlineData("G59.3", -290, -180, -270)]
    public void Work_offset_renumbers(string code, double x, double y, double z)
    {
        var session = new Session(setup: Two, start: new Point3(0, 0, 100)).Run(code);
        Assert.Empty(session.Log);
        Assert.Equal(new Point3(x, y, z), session.State.Position);
        Assert.Equal(new Point3(-300, -200, -300), session.State.MachinePosition);
        Assert.Equal(new Point3(0, 0, 100), session.Run("G54").State.Position);
    }

    /// <summary>Where the setup does not give the datums, the numbers of the place are not known, and come back with the next absolute move.</summary>
    [Theory]
    [InlineData("G55")]
    [InlineData("G59.1")]
    [InlineData("G54.1 P1")]
    public void Work_offset_not_in_the_setup(string code)
    {
        var session = new Session(start: new Point3(1, 2, 3)).Run(code);
        Assert.Equal(Point3.Unknown, session.State.Position);
        Assert.Equal("rapid 5 ? ?", session.Run("G90 G0 X5").Log[^1]);
    }

    /// <summary>Two further work offsets have one number here, and still two datums.</summary>
    [Fact]
    public void From_one_further_offset_to_the_next_the_place_is_not_known() =>
        Assert.Equal(Point3.Unknown, new Session(start: default(Point3)).Run("G54.1 P1", "G90 G0 X1 Y1 Z1", "G54.1 P2").State.Position);

    /// <summary>The same offset again changes nothing.</summary>
    [Fact]
    public void The_offset_in_force_again() => Assert.Equal(new Point3(1, 2, 3), new Session(start: new Point3(1, 2, 3)).Run("G54").State.Position);

    /// <summary>NISTIR 6556 §3.5.11: G43 adds the length of H, G49 takes it out; G44 (common practice) takes it away.</summary>
    [Theory]
    [InlineData("G43 H1", 20)]
    [InlineData("G43 H12", -20)]
    [InlineData("G44 H1", 180)]
    [InlineData("G43 H0", 100)]
    [InlineData("G49", 100)]
    public void Length_offset_renumbers_Z(string block, double z)
    {
        foreach (var setup in new[] { Two, Two with { WorkOffsets = Setup.None.WorkOffsets } })
        {
            var session = new Session(setup: setup, start: new Point3(5, 6, 100)).Run(block);
            Assert.Equal(new Point3(5, 6, z), session.State.Position);
            Assert.Equal(100, session.Run("G49").State.Position.Z);
        }
    }

    /// <summary>A length that the setup does not give leaves Z unknown, X and Y alone.</summary>
    [Theory]
    [InlineData("G43 H3")]
    [InlineData("G43 H99")]
    [InlineData("G43")]
    [InlineData("G43 H#1")]
    [InlineData("G43 H-1")]
    public void Length_offset_not_known(string block)
    {
        var session = new Session(setup: Two, start: new Point3(5, 6, 100)).Run("G43 H1").Run(block);
        Assert.Equal(5, session.State.Position.X);
        Assert.True(double.IsNaN(session.State.Position.Z));
        Assert.Equal(100, session.Run("G49").State.Position.Z);
    }

    /// <summary>Reading lengthOffset=withTool (common practice): the tool change brings the tool's own length; a tool not known has none that is known.</summary>
    [Fact]
    public void Length_with_the_tool()
    {
        var machine = OrderTests.Reading(r => r with { LengthOffset = LengthOffsetReading.WithTool });
        Assert.Equal(20, new Session(machine, Two, new Point3(0, 0, 100)).Run("T1 M6").State.Position.Z);
        Assert.Equal(-20, new Session(machine, Two, new Point3(0, 0, 100)).Run("T2 M6").State.Position.Z);
        Assert.Equal(100, new Session(machine, Two, new Point3(0, 0, 100)).Run("T0 M6").State.Position.Z);
        Assert.True(double.IsNaN(new Session(machine, Two, new Point3(0, 0, 100)).Run("T#1 M6").State.Position.Z));
        Assert.Equal(100, new Session(setup: Two, start: new Point3(0, 0, 100)).Run("T1 M6").State.Position.Z);
    }

    /// <summary>NISTIR 6556 §3.5.18: G92.1 forgets the shift, G92.2 keeps it for G92.3, also when it stands twice.</summary>
    [Fact]
    public void Shift_off_and_on_again()
    {
        var session = new Session(setup: Two, start: new Point3(4, 0, 0)).Run("G92 X7", "G92.2");
        Assert.Equal(4, session.State.Position.X);
        Assert.Equal(7, session.Run("G92.2", "G92.3").State.Position.X);
        Assert.Equal(4, session.Run("G92.1").State.Position.X);
        Assert.Equal(4, session.Run("G92.3").State.Position.X);
    }

    /// <summary>NISTIR 6556 table 5 and §3.4: only G92 wants the axis words, so a move may stand beside G92.1; it runs with the shift out.</summary>
    [Fact]
    public void A_move_beside_G92_1()
    {
        var session = new Session(setup: Two, start: new Point3(4, 0, 0)).Run("G92 X7").Run("G92.1 G0 X10");
        Assert.Equal(["rapid 10 0 0"], session.Log);
        Assert.Empty(session.Faults);
        Assert.Equal(4, session.Moves[0].From.X);
        Assert.Equal(default, session.Step.ToFrame);
    }

    /// <summary>G92 where the tool's place is not known: the numbers are known from here on, the shift is not.</summary>
    [Fact]
    public void Position_set_where_it_was_not_known()
    {
        var session = new Session().Run("G92 X0 Y0 Z0", "G90 G0 X5");
        Assert.Equal(["rapid 5 0 0"], session.Log);
        Assert.False(session.Step.ToFrame.IsKnown);
        Assert.True(double.IsNaN(session.Run("G92.1").State.Position.X));
    }

    /// <summary>G52 (common practice) shifts the datum and nothing moves; 0 takes it back.</summary>
    [Fact]
    public void Local_shift()
    {
        var session = new Session(setup: Two, start: new Point3(10, 0, 0)).Run("G52 X30");
        Assert.Equal(-20, session.State.Position.X);
        Assert.Equal(["rapid 0 0 0"], session.Run("G90 G0 X0").Log);
        Assert.Equal(new Point3(30, 0, 0), session.Step.ToFrame);
        Assert.Equal(30, session.Run("G52 X0").State.Position.X);
    }

    /// <summary>NISTIR 6556 §3.5.8: G28 goes by way of the point programmed; common practice: only the axes named go home.</summary>
    [Fact]
    public void Home_by_way_of_a_point()
    {
        var machine = MachineProfile.IsoMill with { Home = new Point3(10, 20, 30) };
        var session = new Session(machine, Two, new Point3(0, 0, 50)).Run("G90 G28 X5 Z80");
        Assert.Equal(["rapid 5 0 80", "rapid 310 0 430"], session.Log);
        Assert.Equal(new Point3(10, -200, 30), session.State.MachinePosition);
        Assert.Equal(["rapid 310 220 430"], session.Clear().Run("G28").Log);
        Assert.Empty(session.Clear().Run("G28").Log);
    }

    /// <summary>Without datums the work numbers of home are not known; moves from there keep the machine position, by as much as they are long.</summary>
    [Fact]
    public void Machine_position_follows_distances_from_home()
    {
        var session = new Session(start: new Point3(1, 2, 3)).Run("G91 G28 Z0");
        Assert.Equal(["rapid 1 2 ?"], session.Log);
        Assert.Equal(0, session.State.MachinePosition.Z);
        Assert.Equal(0, session.Run("G90 G0 X50").State.MachinePosition.Z);
        Assert.True(double.IsNaN(session.Run("G0 Z50").State.MachinePosition.Z));
        session.Run("G92 Z0", "G53 Z-20", "G0 Z-50");
        Assert.True(double.IsNaN(session.State.MachinePosition.Z));
        Assert.Equal(-20, new Session(start: default(Point3)).Run("G0 G53 Z0", "G92 Z0", "G90 Z-20").State.MachinePosition.Z);
    }

    /// <summary>The second reference point is not in the profile.</summary>
    [Fact]
    public void Second_reference_point() =>
        Assert.Equal(["rapid ? ? ?"], new Session(setup: Two, start: default(Point3)).Run("G30").Log);

    /// <summary>NISTIR 6556 §3.5.12: machine coordinates whatever offsets and G91 say, for its own block, under G0 or G1.</summary>
    [Fact]
    public void Machine_coordinates()
    {
        var session = new Session(setup: Two, start: default(Point3)).Run("G91 G0 G43 H1 G53 Z0");
        Assert.Equal(["rapid 0 0 320"], session.Log);
        Assert.Equal(0, session.State.MachinePosition.Z);
        Assert.Equal(["rapid 0 0 310"], session.Clear().Run("Z-10").Log);
        Assert.Empty(session.Faults);
    }

    /// <summary>§3.5.12 with §3.5.2: under G1 the move in machine coordinates runs at the feed, and takes as long.</summary>
    [Fact]
    public void Machine_coordinates_at_the_feed()
    {
        var move = new Session(setup: Two, start: default(Point3)).Run("G1 F600 G53 X-290").Moves[0];
        Assert.Equal(600, move.Feed);
        Assert.Equal(1, move.Seconds, 9);
        Assert.True(move.IsCut);
    }

    /// <summary>NISTIR 6556 §3.5.12: an error while an arc or a cycle is in force; then nothing is drilled.</summary>
    [Fact]
    public void Machine_coordinates_in_a_cycle()
    {
        var session = new Session(setup: Two, start: new Point3(0, 0, 9)).Run("G99 G81 X1 Z-1 R2 F100").Clear().Run("G53 X0 Z0");
        Assert.Empty(session.Holes);
        Assert.Contains(session.Faults, fault => fault.Kind == Control.Execution.FaultKind.MachineMoveMode);
        Assert.True(double.IsNaN(session.State.Position.X));
    }

    /// <summary>The codes that a safe first line switches off leave places known when they were not on.</summary>
    [Fact]
    public void Off_what_was_not_on() =>
        Assert.Equal(new Point3(1, 2, 3), new Session(start: new Point3(1, 2, 3)).Run("G40 G49 G50 G69 G15 G80 G92.1").State.Position);

    /// <summary>NISTIR 6556 §3.5.10: compensation takes the tool off the path in X and Y, not in Z; after G40 it stands beside it until it moves.</summary>
    [Fact]
    public void Radius_compensation()
    {
        var session = new Session(setup: Two, start: default(Point3)).Run("G41 D1 G1 X10 F100");
        Assert.True(double.IsNaN(session.Step.ToFrame.X));
        Assert.Equal(0, session.Step.ToFrame.Z);
        Assert.True(double.IsNaN(session.State.MachinePosition.X));
        session.Run("G40");
        Assert.True(double.IsNaN(session.State.Position.X));
        Assert.Equal("rapid 5 6 0", session.Run("G0 X5 Y6").Log[^1]);
        Assert.Equal(-295, session.State.MachinePosition.X);
    }

    /// <summary>Distances from a place not known lead to places not known, and are still moves.</summary>
    [Fact]
    public void Distances_from_nowhere()
    {
        var session = new Session().Run("G21 G91 G1 X10 F100");
        Assert.Equal(["feed ? ? ?"], session.Log);
        Assert.True(session.State.HasCut);
        Assert.Empty(session.Clear().Run("X0").Log);
    }

    /// <summary>The time of a move along one axis needs only that axis.</summary>
    [Fact]
    public void Time_of_a_move_along_a_known_axis() =>
        Assert.Equal(6, new Session().Run("G21 G90 G0 Z0", "G1 Z-10 F100").Moves[^1].Seconds, 9);
}
