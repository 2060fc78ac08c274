using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>Where programs begin and end, which blocks run, variables, and what makes everything unknown.</summary>
public sealed class ProgramTests
{
    /// <summary>NISTIR 6556 §3.6.1: what M2 and M30 reset.</summary>
    [Theory]
    [InlineData("M2")]
    [InlineData("M30")]
    public void Program_end_resets(string end)
    {
        var session = new Session(setup: OrderTests.Datum, start: default(Point3))
            .Run("G18 G91 G95 G41 D1 G55 M3 S100 M8 F0.1 G43 H7", "G52 X5", "G99 G81 X1 Y-3 R2", end);
        ref readonly var state = ref session.State;
        Assert.Equal((54, WorkPlane.XY, DistanceMode.Absolute, FeedMode.PerMinute), (state.WorkOffset, state.Plane, state.Distance, state.FeedMode));
        Assert.Equal((CompensationSide.Off, SpindleState.Off, CoolantState.Off, MotionMode.Linear, 0), (state.Compensation, state.Spindle, state.Coolant, state.Motion, state.Cycle));
        Assert.Equal(default, state.Shift);
        // The length offset is not in the list of §3.6.1: table 10 goes on with it after M2.
        Assert.Equal((LengthOffsetMode.Plus, 7), (state.LengthOffset, state.H));
        Assert.True(state.Ended);
    }

    /// <summary>§3.1: lines after M2 or M30 are not executed; M99 ends a program as well (common practice).</summary>
    [Theory]
    [InlineData("M2")]
    [InlineData("M30")]
    [InlineData("M99")]
    [InlineData("M99 P10")]
    public void Nothing_runs_behind_the_end(string end)
    {
        var session = new Session(start: default(Point3)).Run("G0 X1", end).Clear();
        var before = session.State.Position;
        session.Run("G0 X99", "M3 S500");
        Assert.Empty(session.Log);
        Assert.Equal(StepEvents.NotRun, session.Step.Events);
        Assert.Equal(before, session.State.Position);
        Assert.False(session.Step.Words.Has('S'));
    }

    /// <summary>An O word beside a statement is the number of a structure and begins no program (common practice): nothing runs behind the end there either.</summary>
    [Fact]
    public void A_numbered_statement_behind_the_end_begins_no_program()
    {
        var session = new Session(start: default(Point3)).Run("G0 X1", "M30", "O100 WHILE [1 EQ 1]", "G0 X5").Clear();
        Assert.False(session.State.IsCalled);
        session.Run("G0 X99");
        Assert.Empty(session.Log);
    }

    /// <summary>A further program of the file is called from elsewhere: what it starts from is not known.</summary>
    [Theory]
    [InlineData("O2000")]
    [InlineData(":2000")]
    [InlineData("O2000 (pattern)")]
    public void A_further_program_starts_from_the_unknown(string start)
    {
        var session = new Session(setup: OrderTests.Datum, start: default(Point3)).Run("G21 G90 G0 X1", "M30", start, "X5 Y6 Z7");
        Assert.Equal(Point3.Unknown, session.State.Position);
        Assert.True(session.State.IsCalled);
        Assert.Empty(session.Faults);
        Assert.Equal("rapid 5 ? ?", session.Run("G21 G90 G0 X5").Log[^1]);
    }

    /// <summary>Where a cycle may be on from the caller, axis words may drill: where they lead is not known, and their R and P are no fault.</summary>
    [Fact]
    public void Places_in_a_called_program_that_may_drill()
    {
        var session = new Session().Run("M30", "O5", "G21 G90", "X5 R2 P1 Z-3");
        Assert.Equal(Point3.Unknown, session.State.Position);
        Assert.Empty(session.Faults);
        session.Run("G81 X1 Y1 Z-1 R2 F100");
        Assert.True(double.IsNaN(session.Holes[0].InitialLevel));
    }

    /// <summary>§3.1: % opens the file and closes it; what stands behind the second does not run.</summary>
    [Fact]
    public void Percent()
    {
        var session = new Session(start: default(Point3)).Run("%", "(plate)", "O10", "G0 X1", "%", "G0 X2");
        Assert.Equal(["rapid 1 0 0"], session.Log);
    }

    /// <summary>§2.2.2: with block delete on, a line with / is passed over; with it off, it runs.</summary>
    [Theory]
    [InlineData("/G0 X5")]
    [InlineData("/2 G0 X5")]
    [InlineData("/ N10 G0 X5")]
    public void Block_delete(string block)
    {
        Assert.Equal(["rapid 5 0 0"], new Session(start: default(Point3)).Run(block).Log);
        var skipped = new Session(start: default(Point3), skip: true).Run(block);
        Assert.Empty(skipped.Log);
        Assert.Equal(StepEvents.Skipped, skipped.Step.Events);
        Assert.Equal(MotionMode.Unknown, skipped.State.Motion);
    }

    /// <summary>§3.3.3: settings act after every read of their line: with #3 = 15, "#3=6 G1 X#3" moves to 15; the last of two settings wins.</summary>
    [Theory]
    [InlineData("#3=6 G1 X#3")]
    [InlineData("G1 X#3 #3=6")]
    [InlineData("#3=99 X#3 G1 #3=6")]
    public void Settings_act_after_reads(string block)
    {
        var session = new Session(start: default(Point3)).Run("F100 #3=15", block);
        Assert.Equal(["feed 15 0 0"], session.Log);
        Assert.Equal(6, session.State.Variables!.Get(3));
    }

    /// <summary>§3.3.2.2: ##2 is the variable whose number is in #2; #[1+2] is #3; #1+2 in brackets is (#1)+2. A sign may stand before (common practice).</summary>
    [Theory]
    [InlineData("X##2", 7)]
    [InlineData("X#[1+2]", 7)]
    [InlineData("X[#1+2]", 3)]
    [InlineData("X-#3", -7)]
    [InlineData("X-[#3+1]", -8)]
    [InlineData("X-SQRT[#1]", -1)]
    [InlineData("X+#3", 7)]
    [InlineData("X[2.0 / 3 * 1.5 - 5.5 / 11.0]", 0.5)]
    public void Variables_in_words(string word, double x) =>
        Assert.Equal(x, new Session(start: default(Point3)).Run("#1=1 #2=3 #3=7", "G90 G0 " + word).State.Position.X, 12);

    [Fact]
    public void Setting_through_a_variable()
    {
        var state = new Session().Run("#2=5", "##2=8", "#[#2+1]=9").State;
        Assert.Equal((8.0, 9.0), (state.Variables!.Get(5), state.Variables!.Get(6)));
    }

    /// <summary>A value not known stays so, and a setting whose target is not known leaves none known.</summary>
    [Fact]
    public void Values_not_known()
    {
        var session = new Session(start: default(Point3)).Run("#1=#9", "G90 G0 X#1");
        Assert.True(double.IsNaN(session.State.Position.X));
        Assert.True(double.IsNaN(session.Run("#2=5", "##9=1").State.Variables!.Get(2)));
        Assert.Equal(Variables.Unknown, new Session().Run("#2=5", "#3=2.5", "##3=7").State.Variables);
        Assert.Equal(5, new Session().Run("#2=5", "#<depth>=3").State.Variables!.Get(2));
    }

    [Fact]
    public void Values_of_the_setup()
    {
        var setup = Setup.None with { IsPresent = true, Variables = Setup.None.Variables.Add("#500", 3.25) };
        Assert.Equal(3.25, new Session(setup: setup, start: default(Point3)).Run("G90 G0 X#500").State.Position.X);
    }

    /// <summary>A code whose number is not known may have done anything, and the words beside it may not run at all.</summary>
    [Theory]
    [InlineData("G#9 X5")]
    [InlineData("M#9")]
    public void What_leaves_nothing_known(string block)
    {
        var session = new Session(setup: OrderTests.Datum, start: default(Point3)).Run("G0 G90 #2=4 T1 M6").Clear().Run(block);
        ref readonly var state = ref session.State;
        Assert.Equal(Point3.Unknown, state.Position);
        Assert.Equal(Point3.Unknown, state.MachinePosition);
        Assert.Equal((MotionMode.Unknown, DistanceMode.Unknown, LengthUnit.Unknown, -1, -1), (state.Motion, state.Distance, state.Units, state.Tool, state.Cycle));
        Assert.True(double.IsNaN(state.Variables!.Get(2)));
        Assert.Empty(session.Moves);
        Assert.Equal([FaultKind.VariableUnset, FaultKind.NotFollowed], session.Faults.Select(fault => fault.Kind));
        Assert.True(double.IsNaN(session.Run("G92.3").State.Shift.X));
    }

    /// <summary>Common practice: a subprogram runs when the rest of its block is done, so the block itself moves first; where the run goes then is the flow's matter.</summary>
    [Fact]
    public void A_move_beside_a_call()
    {
        var session = new Session(start: default(Point3)).Run("G90 G0 X5 M98 P100");
        Assert.Equal(["rapid 5 0 0"], session.Log);
        Assert.Equal((MotionMode.Rapid, 5), (session.State.Motion, session.State.Position.X));
    }

    /// <summary>A block longer than is read may hold anything in its rest, unless that is a comment.</summary>
    [Fact]
    public void A_block_too_long_to_read()
    {
        var session = new Session(start: default(Point3)).Run("G0 X1" + new string(' ', 5000) + "G91 X500");
        Assert.Equal(Point3.Unknown, session.State.Position);
        Assert.Equal(1, new Session(start: default(Point3)).Run("G0 X1 ; " + new string('-', 5000)).State.Position.X);
    }
}
