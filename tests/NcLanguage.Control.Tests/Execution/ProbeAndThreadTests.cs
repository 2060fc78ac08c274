using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>Moves until contact, threads, exact stop, and the codes that govern tool and spindle.</summary>
public sealed class ProbeAndThreadTests
{
    /// <summary>NISTIR 6556 §3.5.9 (G38.2; the others common practice): a straight move at the feed towards the end point, ending where contact is: its way
    /// is known, its time and its end are not, along the axes named. It is no cut, and the spindle may stand.</summary>
    [Theory]
    [InlineData("G38.2 Z-10 F50")]
    [InlineData("G38.5 Z-10 F50")]
    [InlineData("G31 Z-10 F50")]
    public void Probe(string block)
    {
        var session = new Session(setup: OrderTests.Datum, start: new Point3(1, 2, 3)).Run("G0").Clear().Run(block);
        Assert.Equal(["feed 1 2 -10"], session.Log);
        Assert.Equal((50, double.NaN), (session.Moves[0].Feed, session.Moves[0].Seconds));
        Assert.False(session.Moves[0].IsCut);
        Assert.Equal("1 2 ?", $"{session.State.Position.X} {session.State.Position.Y} {Session.Number(session.State.Position.Z)}");
        Assert.Equal("-299 -198 ?", $"{session.State.MachinePosition.X} {session.State.MachinePosition.Y} {Session.Number(session.State.MachinePosition.Z)}");
        Assert.Empty(session.Faults);
        Assert.False(session.State.HasCut);
        Assert.Equal(Happened.None, session.State.Happened & Happened.CutStanding);
    }

    /// <summary>NISTIR 6556 table 4: G38.2 is a motion and stays in force; G31 acts in its block only (common practice).</summary>
    [Fact]
    public void Stays_in_force()
    {
        Assert.Equal(MoveRole.Probe, new Session(start: default(Point3)).Run("G38.2 Z-10 F50", "X5").Moves[^1].Role);
        Assert.Equal("rapid 5 0 ?", new Session(start: default(Point3)).Run("G0", "G31 Z-10 F50", "X5").Log[^1]);
    }

    /// <summary>NISTIR 6556 §3.5.9: too near the end point (0.254 mm, 0.01 in), inverse time feed, no axis word.</summary>
    [Theory]
    [InlineData("G38.2 Z0.2 F50", FaultKind.NotAllowedHere)]
    [InlineData("G38.2 Z0.2535 F50", FaultKind.NotAllowedHere)]
    [InlineData("G93 G38.2 Z-5 F50", FaultKind.NotAllowedHere)]
    [InlineData("G38.2 F50", FaultKind.WordMissing)]
    [InlineData("G31 F50", FaultKind.WordMissing)]
    [InlineData("G38.2 Z0.254 F50", null)]
    [InlineData("G20 G38.2 Z0.01 F2", null)]
    [InlineData("G31 Z0.1 F50", null)]
    public void Refused(string block, FaultKind? kind) =>
        Assert.Equal(kind is { } one ? [one] : [], new Session(start: default(Point3)).Run(block).Faults.Select(fault => fault.Kind));

    /// <summary>ISO 6983-1 (from memory): a thread runs one lead a turn: 2 mm at 300 turns a minute are 600 mm/min; 10 mm take 1 s.</summary>
    [Theory]
    [InlineData("G33 Z-10 K2")]
    [InlineData("G33 Z-10 F2")]
    public void Thread(string block)
    {
        var session = new Session(start: default(Point3)).Run("M3 S300").Clear().Run(block);
        Assert.Equal(600, session.Moves[0].Feed, 9);
        Assert.Equal(1, session.Moves[0].Seconds, 9);
        Assert.Empty(session.Faults);
        Assert.True(double.IsNaN(new Session(start: default(Point3)).Run("S300", block).Moves[0].Feed));
    }

    [Fact]
    public void Thread_without_a_lead() =>
        Assert.Equal([FaultKind.WordMissing], new Session(start: default(Point3)).Run("M3 S300 G33 Z-10").Faults.Select(fault => fault.Kind));

    /// <summary>NISTIR 6556 §3.5.14 (G61.1), ISO 6983-1 from memory (G9, G60): the move ends at rest. Published-values' check of a move of 100 mm at
    /// 10 m/min and 1000 mm/s²: 0.7667 s from rest to rest; without stop 0.6 s.</summary>
    [Theory]
    [InlineData("G1 F10000 X100", 0.6)]
    [InlineData("G61.1 G1 F10000 X100", 0.766667)]
    [InlineData("G60 G1 F10000 X100", 0.766667)]
    [InlineData("G9 G1 F10000 X100", 0.766667)]
    [InlineData("G61 G1 F10000 X100", 0.6)]
    [InlineData("G64 G1 F10000 X100", 0.6)]
    public void Exact_stop(string block, double seconds)
    {
        var machine = MachineProfile.IsoMill with { Acceleration = 1000 };
        Assert.Equal(seconds, new Session(machine, start: default(Point3)).Run(block).Moves[0].Seconds, 6);
    }

    /// <summary>Common practice: after M29 the tapping cycle starts the spindle, reverses it and stops it; without M29 a standing spindle is a fault of the program.</summary>
    [Theory]
    [InlineData("G84", SpindleState.Off)]
    [InlineData("G74", SpindleState.Off)]
    public void Rigid_tapping(string cycle, SpindleState after)
    {
        var session = new Session(start: new Point3(0, 0, 20)).Run("M29 S400", $"G99 {cycle} X5 Z-10 R5 F500", "X10");
        Assert.Equal(2, session.Holes.Count);
        Assert.Equal(400, session.Holes[1].Speed);
        Assert.Equal(after, session.State.Spindle);
        Assert.Equal(Happened.None, session.State.Happened & Happened.CutStanding);
        // 15 mm down and 15 mm up at 500 mm/min.
        Assert.Equal(3.6, session.Moves.Where(move => move.IsCut).Take(2).Sum(move => move.Seconds), 9);
        Assert.NotEqual(Happened.None, session.Run("G80", $"{cycle} X20 Z-10 R5").State.Happened & Happened.CutStanding);
    }

    /// <summary>NISTIR 6556 §3.6.3: M6 brings the tool of T; before any T the program does not say which.</summary>
    [Fact]
    public void Tool_change_without_a_tool()
    {
        Assert.Equal([FaultKind.WordMissing], new Session().Run("M6").Faults.Select(fault => fault.Kind));
        Assert.Empty(new Session().Run("T1 M6", "M6").Faults);
        Assert.DoesNotContain(new Session().Run("T#1", "M6").Faults, fault => fault.Kind == FaultKind.WordMissing);
        Assert.Empty(new Session(OrderTests.Reading(r => r with { ToolChange = ToolChangeReading.T })).Run("T1", "M6").Faults);
    }

    /// <summary>NISTIR 6556 §3.6.5 and §3.6.1: M49 until M48 or the end of the program.</summary>
    [Fact]
    public void Overrides()
    {
        Assert.True(new Session().Run("M49", "G0 X1").State.OverridesOff);
        Assert.False(new Session().Run("M49", "M48").State.OverridesOff);
        Assert.False(new Session().Run("M49", "M2").State.OverridesOff);
    }

    /// <summary>From memory (ISO 6983-1): M19 stops the spindle; R is its angle.</summary>
    [Fact]
    public void Oriented_stop()
    {
        var session = new Session().Run("M3 S100", "M19 R90");
        Assert.Equal(SpindleState.Off, session.State.Spindle);
        Assert.Empty(session.Faults);
    }
}
