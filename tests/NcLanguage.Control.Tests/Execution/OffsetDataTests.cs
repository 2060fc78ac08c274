using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>G10, G52 beside G92, and further work offsets: offsets that the program writes itself.</summary>
public sealed class OffsetDataTests
{
    static readonly Setup Two = OrderTests.Datum with
    {
        WorkOffsets = OrderTests.Datum.WorkOffsets.Add(55, new Point3(-250, -180, -390)).Add(WorkOffsetName.Further(3), new Point3(-10, -20, -30)),
        Tools = [new Tool { Number = 1, Length = 80 }, new Tool { Number = 2, Length = 120, LengthOffset = 12 }],
    };

    /// <summary>NISTIR 6556 §3.5.5, its own example: only the axes named change, absolutely, and nothing moves.</summary>
    [Fact]
    public void Published_example()
    {
        var session = new Session(setup: Two, start: new Point3(1, 2, 3)).Run("G10 L2 P1 X3.5 Y17.2");
        Assert.Empty(session.Log);
        Assert.Empty(session.Faults);
        // The machine stands at -299, -198, -397.
        Assert.Equal(new Point3(-302.5, -215.2, 3), Rounded(session.State.Position));
        Assert.Equal(new Point3(-299, -198, -397), session.State.MachinePosition);
        Assert.Equal(new Point3(3.5, 17.2, -400), Rounded(session.Run("G90 G0 X0 Y0 Z0").State.MachinePosition));
    }

    /// <summary>NISTIR 6556 table 2 and §3.5.5: G10 writes the origin into its parameters, where the program can read it.</summary>
    [Fact]
    public void Read_as_a_variable()
    {
        var session = new Session(setup: Two, start: default(Point3)).Run("#1=#5221", "G10 L2 P1 X3.5", "#2=#5221", "#3=#5241");
        Assert.Equal((-300, 3.5, -250), (session.State.Variables!.Get(1), session.State.Variables.Get(2), session.State.Variables.Get(3)));
    }

    /// <summary>What stands on the table stays there: the datum has moved away from the frame of the setup by as much as it was moved.</summary>
    [Fact]
    public void The_frame_of_the_setup_stays()
    {
        var session = new Session(setup: Two, start: default(Point3)).Run("G10 L2 P1 X-270", "G0 X0");
        Assert.Equal(new Point3(30, 0, 0), session.Step.ToFrame);
        Assert.Equal(new Point3(50, 20, 10), session.Run("G55 G0 X0").Step.ToFrame);
    }

    /// <summary>Systems 1 to 9 are G54 to G59.3 (NISTIR 6556 §3.5.13); one not in force gets its place at its next use.</summary>
    [Theory]
    [InlineData(2, "G55")]
    [InlineData(6, "G59")]
    [InlineData(7, "G59.1")]
    [InlineData(9, "G59.3")]
    public void Systems_by_number(int number, string code)
    {
        var session = new Session(setup: Two, start: new Point3(1, 2, 3)).Run($"G10 L2 P{number} X-100 Y-50 Z-20");
        Assert.Equal(new Point3(1, 2, 3), session.State.Position);
        Assert.Equal(new Point3(-199, -148, -377), session.Run(code).State.Position);
    }

    /// <summary>NISTIR 6556 §3.5.5: another number is an error; L and P are needed.</summary>
    [Theory]
    [InlineData("G10 L2 P10 X1", FaultKind.ValueNotAllowed)]
    [InlineData("G10 L2 P0 X1", FaultKind.ValueNotAllowed)]
    [InlineData("G10 L20 P-1 X1", FaultKind.ValueNotAllowed)]
    [InlineData("G10 L2 P1.5 X1", FaultKind.ValueNotAllowed)]
    [InlineData("G10 L2 X1", FaultKind.WordMissing)]
    [InlineData("G10 P1 X1", FaultKind.WordMissing)]
    [InlineData("G10 L10 P1", FaultKind.WordMissing)]
    public void Refused(string block, FaultKind kind)
    {
        var session = new Session(setup: Two, start: new Point3(1, 2, 3)).Run(block);
        Assert.Equal([kind], session.Faults.Select(fault => fault.Kind));
        Assert.Equal(new Point3(1, 2, 3), session.State.Position);
        Assert.Null(session.State.OffsetData);
    }

    /// <summary>Common practice: in G91 the amounts are added.</summary>
    [Fact]
    public void Added_in_increments()
    {
        var session = new Session(setup: Two, start: default(Point3)).Run("G91 G10 L2 P1 X5 Z-1", "G10 L2 P1 X5");
        Assert.Equal(new Point3(-10, 0, 1), session.State.Position);
        Assert.Equal(new Point3(-290, -200, -401), session.State.OffsetData!.Datum(54)!.Value.Origin);
    }

    /// <summary>Common practice: L20 sets the datum so that the tool stands at the numbers written.</summary>
    [Fact]
    public void The_place_of_the_tool_read_as_written()
    {
        var session = new Session(setup: Two, start: new Point3(12, 34, 56)).Run("G43 H1", "G10 L20 P1 X0 Z100");
        Assert.Equal(new Point3(0, 34, 100), session.State.Position);
        Assert.Equal(new Point3(-288, -166, -344), session.State.MachinePosition);
        Assert.Equal(new Point3(-288, -200, -524), session.State.OffsetData!.Datum(54)!.Value.Origin);
        // The other system gets its datum there too, and reads the numbers once it is in force.
        Assert.Equal(new Point3(7, 14, -34), session.Run("G10 L20 P2 X7", "G55").State.Position);
    }

    /// <summary>Without datums in the setup the frame of the setup is the datum that the program first sets; what is not known stays so.</summary>
    [Fact]
    public void A_setup_without_datums()
    {
        var session = new Session(setup: Setup.None with { IsPresent = true }).Run("G10 L2 P1 X-300 Y-200 Z-400", "G90 G0 X1 Y2 Z3");
        Assert.Equal(default, session.Step.ToFrame);
        Assert.Equal(new Point3(-299, -198, -397), session.State.MachinePosition);
        session.Run("G10 L2 P1 X-270", "G0 X0 Y0 Z0");
        Assert.Equal(new Point3(30, 0, 0), session.Step.ToFrame);
        Assert.Equal(new Point3(-270, -200, -400), session.State.MachinePosition);

        session = new Session(setup: Setup.None with { IsPresent = true }).Run("G90 G0 X1 Y2 Z3", "G91 G10 L2 P1 X10", "G90 G0 Z9");
        Assert.Equal(new Point3(-9, 2, 9), session.State.Position);
        Assert.Equal(new Point3(10, 0, 0), session.Step.ToFrame);
        Assert.Equal(Point3.Unknown, session.State.MachinePosition);
        // Moved first and placed then: where that is in the setup nobody knows.
        Assert.True(double.IsNaN(session.Run("G10 L2 P1 X-300", "G0 X0").Step.ToFrame.X));
    }

    /// <summary>Common practice: L10 sets the length of H, L11 its wear, L1 as L10; they count at once where H is in force.</summary>
    [Theory]
    [InlineData("G10 L10 P1 R90", 10)]
    [InlineData("G10 L1 P1 R90", 10)]
    [InlineData("G10 L11 P1 R-0.5", 20.5)]
    [InlineData("G91 G10 L10 P1 R1.5", 18.5)]
    [InlineData("G10 L10 P2 R7", 20)]
    public void Lengths(string block, double z)
    {
        var session = new Session(setup: Two, start: new Point3(0, 0, 100)).Run("G43 H1", block);
        Assert.Equal(z, session.State.Position.Z, 9);
        Assert.Equal(100, session.Run("G49").State.Position.Z, 9);
    }

    /// <summary>A length that the setup does not give is known once the program has given it.</summary>
    [Fact]
    public void A_length_of_its_own() =>
        Assert.Equal(58, new Session(setup: Two, start: new Point3(0, 0, 100)).Run("G10 L10 P77 R42", "G43 H77").State.Position.Z);

    /// <summary>Common practice: L12 sets the radius of D, L13 its wear.</summary>
    [Fact]
    public void Radii()
    {
        var data = new Session(setup: Two).Run("G10 L12 P5 R4", "G10 L13 P5 R0.02", "G91 G10 L13 P5 R0.03").State.OffsetData!;
        Assert.Equal(4.05, data.Radius(5)!.Value.Sum, 12);
        Assert.Null(data.Radius(6));
    }

    /// <summary>Inches are read as inches.</summary>
    [Fact]
    public void In_inches() => Assert.Equal(-25.4, new Session(setup: Two).Run("G20 G10 L2 P1 X-1").State.OffsetData!.Datum(54)!.Value.Origin.X, 12);

    /// <summary>Which offset was written is not known: none is known any more.</summary>
    [Theory]
    [InlineData("G10 L2 P#1 X5")]
    [InlineData("G10 L#1 P1 X5")]
    [InlineData("G10 L3 P1 R5")]
    public void Written_not_known_where(string block)
    {
        var session = new Session(setup: Two, start: new Point3(1, 2, 3)).Run(block);
        Assert.Equal(Point3.Unknown, session.State.Position);
        Assert.Equal(new Point3(-299, -198, -397), session.State.MachinePosition);
        session.Run("G92.1", "G90 G0 X1 Y1 Z1");
        Assert.False(session.Step.ToFrame.IsKnown);
        Assert.Equal(Point3.Unknown, session.State.MachinePosition);
    }

    /// <summary>Two programs that have written the same stand in the same state.</summary>
    [Fact]
    public void Equal_by_value()
    {
        var one = new Session(setup: Two).Run("G10 L2 P1 X1", "G10 L10 P1 R5").State;
        Assert.Equal(one, new Session(setup: Two).Run("G10 L10 P1 R5", "G10 L2 P1 X1").State);
        Assert.NotEqual(one, new Session(setup: Two).Run("G10 L10 P1 R5", "G10 L2 P1 X2").State);
    }

    /// <summary>Common practice: the shift of G52 is another than that of G92 and is taken out by itself; NISTIR 6556 §3.5.18 for G92.1 and G92.2.</summary>
    [Fact]
    public void Two_shifts()
    {
        var session = new Session(setup: Two, start: new Point3(10, 0, 0)).Run("G92 X0", "G52 X3 Y1");
        Assert.Equal(new Point3(-3, -1, 0), session.State.Position);
        Assert.Equal(0, session.Run("G52 X0 Y0 Z0").State.Position.X);
        Assert.Equal(7, session.Run("G52 X3", "G92.1").State.Position.X);
        Assert.Equal(-3, session.Run("G92 X-3").State.Position.X);
        Assert.Equal(10, session.Run("G92.2", "G52 X0").State.Position.X);
    }

    /// <summary>Common practice: G54.1 P n counts from the n-th further datum, known where the setup gives it.</summary>
    [Fact]
    public void Further_work_offsets()
    {
        var session = new Session(setup: Two, start: default(Point3)).Run("G54.1 P3");
        Assert.Equal(new Point3(-290, -180, -370), session.State.Position);
        Assert.Equal(new Point3(290, 180, 370), session.Run("G90 G0 X0").Step.ToFrame);
        Assert.Equal(Point3.Unknown, session.Run("G54.1 P4").State.Position);
        Assert.Equal(default, session.Run("G54").State.Position with { X = 0 });
        Assert.Equal([FaultKind.WordMissing], session.Clear().Run("G54.1").Faults.Select(fault => fault.Kind));
        Assert.Equal([FaultKind.ValueNotAllowed], session.Clear().Run("G54.1 P0").Faults.Select(fault => fault.Kind));
    }

    /// <summary>NISTIR 6556 §B.5: axis offsets, units, the plane, home and probing are refused under compensation; §3.4: in a cycle G92 suspends it.</summary>
    [Theory]
    [InlineData("G92 X0")]
    [InlineData("G92.1")]
    [InlineData("G92.2")]
    [InlineData("G92.3")]
    [InlineData("G20")]
    [InlineData("G18")]
    [InlineData("G19")]
    [InlineData("G28")]
    [InlineData("G30")]
    [InlineData("G38.2 Z-5 F10")]
    public void Refused_under_compensation(string block)
    {
        var session = new Session(setup: Two, start: default(Point3)).Run("G41 D1").Clear().Run(block);
        Assert.Contains(session.Faults, fault => fault.Kind == FaultKind.NotAllowedHere);
        Assert.DoesNotContain(new Session(setup: Two, start: default(Point3)).Run(block).Faults, fault => fault.Kind == FaultKind.NotAllowedHere);
    }

    /// <summary>NISTIR 6556 §3.4: with a group-0 code that wants the axis words the cycle in force is suspended for its block.</summary>
    [Theory]
    [InlineData("G92 X0 Y0")]
    [InlineData("G52 X1")]
    [InlineData("G10 L2 P1 X0")]
    [InlineData("G10 L20 P1 Y3")]
    public void Suspends_a_cycle(string block)
    {
        var session = new Session(setup: Two, start: new Point3(0, 0, 9)).Run("G99 G81 X1 Z-1 R2 F100").Clear().Run(block);
        Assert.Empty(session.Log);
        Assert.Empty(session.Faults);
        Assert.Single(session.Run("X5").Holes);
    }

    static Point3 Rounded(Point3 place) => new(Math.Round(place.X, 9), Math.Round(place.Y, 9), Math.Round(place.Z, 9));
}
