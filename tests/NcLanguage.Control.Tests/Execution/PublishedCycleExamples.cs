using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>The worked examples of NISTIR 6556 (Kramer, Proctor, Messina; NIST 2000), move for move.</summary>
public sealed class PublishedCycleExamples
{
    /// <summary>NISTIR 6556 §3.5.16.2, first example: absolute, return to the initial level.</summary>
    [Fact]
    public void Section_3_5_16_2_example_1()
    {
        var session = new Session(start: new Point3(1, 2, 3)).Run("G90 G81 G98 X4 Y5 Z1.5 R2.8");
        Assert.Equal(["rapid 4 5 3", "rapid 4 5 2.8", "feed 4 5 1.5", "rapid 4 5 3"], session.Log);
    }

    /// <summary>The same with G99 ends at R (derived from §3.5.20).</summary>
    [Fact]
    public void Section_3_5_16_2_example_1_with_return_to_R()
    {
        var session = new Session(start: new Point3(1, 2, 3)).Run("G90 G81 G99 X4 Y5 Z1.5 R2.8");
        Assert.Equal("rapid 4 5 2.8", session.Log[^1]);
    }

    /// <summary>NISTIR 6556 §3.5.16.2, second example: increments, three repeats, R above the start.</summary>
    [Fact]
    public void Section_3_5_16_2_example_2()
    {
        var session = new Session(start: new Point3(1, 2, 3)).Run("G91 G81 G98 X4 Y5 Z-0.6 R1.8 L3");
        Assert.Equal(
            [
                "rapid 1 2 4.8",
                "rapid 5 7 4.8", "feed 5 7 4.2", "rapid 5 7 4.8",
                "rapid 9 12 4.8", "feed 9 12 4.2", "rapid 9 12 4.8",
                "rapid 13 17 4.8", "feed 13 17 4.2", "rapid 13 17 4.8",
            ],
            session.Log);
    }

    /// <summary>NISTIR 6556 table 10: the session of the interpreter, with a tool 2 of length 1.0.</summary>
    [Fact]
    public void Table_10_session()
    {
        var setup = new Setup { IsPresent = true, Tools = [new Tool { Number = 2, Length = 1.0, LengthOffset = 2 }] };
        var session = new Session(setup: setup, start: default(Point3));

        session.Run("g1 x3 y1 f20.0");
        Assert.Equal(["feed 3 1 0"], session.Log);
        Assert.Equal(20, session.Moves[0].Feed);

        session.Clear().Run("g2 x[6-[4*3/2]] r 7.01 z0.5");
        Assert.Equal(["arc 0 1 0.5"], session.Log);
        Assert.True(session.Moves[0].Clockwise);
        Assert.Equal(1.5, session.Moves[0].Center.X, 4);
        Assert.Equal(7.8476, session.Moves[0].Center.Y, 4);

        session.Clear().Run("t2", "m6 g43 h2");
        Assert.Equal(2, session.State.Tool);

        session.Clear().Run("m2");
        Assert.Contains("stop", session.Log);

        // The published session goes on after M2 in the same interpreter; a program does not.
        session.State.Ended = false;
        session.Clear().Run("g1 x asim[0.5]");
        // The interpreter stops with an error here; to go on checking, the place is carried as not known.
        Assert.Equal(["feed ? 1 -0.5"], session.Log);
        session.Clear().Run("g1 x asin[0.5]");
        Assert.Equal(["feed 30 1 -0.5"], session.Log);

        session.Clear().Run("g91 g81 x3 y2 z-0.8 r1.5 l2");
        Assert.Equal(
            [
                "rapid 30 1 1",
                "rapid 33 3 1", "feed 33 3 0.2", "rapid 33 3 1",
                "rapid 36 5 1", "feed 36 5 0.2", "rapid 36 5 1",
            ],
            session.Log);
    }

    /// <summary>NISTIR 6556 §3.5.3.2: the centre-form example; the helix where the start is not at Z9.</summary>
    [Fact]
    public void Section_3_5_3_2_centre_form()
    {
        var session = new Session(start: new Point3(7, 7, 0)).Run("F100 G17 G2 x10 y16 i3 j4 z9");
        Assert.Equal(["arc 10 16 9"], session.Log);
        Assert.Equal(new Point3(10, 11, 0), session.Moves[0].Center);
        Assert.Empty(session.Faults);
    }

    /// <summary>NISTIR 6556 §3.5.18: at X4, G92 X7 and then G92 X9 give the axis offsets −3 and −5.</summary>
    [Fact]
    public void Section_3_5_18_preload()
    {
        var session = new Session(start: new Point3(4, 0, 0)).Run("G92 X7");
        Assert.Equal(7, session.State.Position.X);
        Assert.Equal(-3, session.State.Shift.X);
        session.Run("G92 X9");
        Assert.Equal(-5, session.State.Shift.X);
        Assert.Empty(session.Log);
    }

    /// <summary>NISTIR 6556 §3.5.19: F2 in inverse time is half a minute.</summary>
    [Fact]
    public void Section_3_5_19_inverse_time()
    {
        var session = new Session(start: default(Point3)).Run("G93 G1 X10 F2");
        Assert.Equal(30, session.Moves[0].Seconds, 9);
    }

    /// <summary>The same words in another reading drill elsewhere: distances, whatever G90 says.</summary>
    [Fact]
    public void Cycle_positions_as_distances()
    {
        var session = new Session(MachineProfile.TrainingMill, start: new Point3(0, 0, 10)).Run("G90 G99 G81 X10 Y5 Z-3 R2", "X20", "Y5");
        Assert.Equal([(10.0, 5.0), (30.0, 5.0), (30.0, 10.0)], session.Holes.Select(h => (h.X, h.Y)));
    }

    /// <summary>The reading that lifts before the move: every hole ends at R, a block under G98 lifts first.</summary>
    [Fact]
    public void Return_level_before_the_move()
    {
        var machine = MachineProfile.IsoMill with { Readings = new Readings { ReturnLevel = ReturnLevelReading.BeforeMove } };
        var session = new Session(machine, start: new Point3(0, 0, 10)).Run("G90 G99 G81 X10 Y0 Z-3 R2", "G98 X20");
        Assert.Equal(
            ["rapid 10 0 10", "rapid 10 0 2", "feed 10 0 -3", "rapid 10 0 2", "rapid 10 0 10", "rapid 20 0 10", "rapid 20 0 2", "feed 20 0 -3", "rapid 20 0 2"],
            session.Log);
        Assert.Equal([10.0, 10.0], session.Holes.Select(h => h.ArriveAt));
    }
}
