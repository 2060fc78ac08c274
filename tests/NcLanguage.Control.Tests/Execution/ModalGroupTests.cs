using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>Codes of one block that exclude each other, and what a block may hold (NISTIR 6556 §3.3.5, §3.4, tables 4 and 5).</summary>
public sealed class ModalGroupTests
{
    static IEnumerable<FaultKind> Faults(string block) => new Session(start: default(Point3)).Run("F100").Clear().Run(block).Faults.Select(fault => fault.Kind);

    /// <summary>Table 4: two codes of one group.</summary>
    [Theory]
    [InlineData("G0 G1 X1")]
    [InlineData("G17 G18")]
    [InlineData("G90 G91")]
    [InlineData("G93 F1 G94")]
    [InlineData("G20 G21")]
    [InlineData("G41 D1 G42")]
    [InlineData("G43 H0 G49")]
    [InlineData("G98 G99")]
    [InlineData("G54 G55")]
    [InlineData("G61 G64")]
    [InlineData("M0 M1")]
    [InlineData("M3 M4")]
    [InlineData("M7 M9")]
    [InlineData("M48 M49")]
    [InlineData("G81 G82 X1 Z-1 R1")]
    [InlineData("G0 G81 X1 Z-1 R1")]
    [InlineData("G28 G92 X1")]
    [InlineData("G4 P1 G53 G0 X1")]
    [InlineData("M3 M19")] // common practice: a code of the spindle
    public void One_code_of_a_group(string block) => Assert.Contains(FaultKind.CodesConflict, Faults(block));

    /// <summary>Table 4: codes of different groups; M7 and M8 together.</summary>
    [Theory]
    [InlineData("G0 G17 G90 G94 G21 G40 G49 G98 G54 G61 X1")]
    [InlineData("M3 M8 M48")]
    [InlineData("M7 M8")]
    [InlineData("G80 G0 X1")]
    [InlineData("G4 P1 G90")]
    [InlineData("G53 G0 X1")]
    [InlineData("G38.2 Z-5")]
    [InlineData("G80 M5 (stop motion)")]
    public void Codes_of_different_groups(string block) =>
        Assert.DoesNotContain(Faults(block), kind => kind is FaultKind.CodesConflict or FaultKind.AxisWordsClaimedTwice);

    /// <summary>§3.4: two codes that both want the axis words; a motion mode that is only carried over is suspended.</summary>
    [Theory]
    [InlineData("G28 G1 X1", true)]
    [InlineData("G92 G0 X1", true)]
    [InlineData("G10 L2 P1 G1 X1", true)]
    [InlineData("G28 X1", false)]
    [InlineData("G92 X1", false)]
    [InlineData("G28 G0", false)]
    public void Claims_on_axis_words(string block, bool refused) =>
        Assert.Equal(refused, new Session(start: default(Point3)).Run("G1 F100").Clear().Run(block).Faults.Any(fault => fault.Kind == FaultKind.AxisWordsClaimedTwice));

    /// <summary>§3.3.5: at most four M codes; every other letter once.</summary>
    [Fact]
    public void What_a_block_may_hold()
    {
        Assert.DoesNotContain(FaultKind.TooManyMCodes, Faults("M3 M8 M48 M1"));
        Assert.Contains(FaultKind.TooManyMCodes, Faults("M3 M7 M8 M48 M1"));
        Assert.Contains(FaultKind.AddressRepeated, Faults("G0 X1 X2"));
        Assert.Equal(1, new Session(start: default(Point3)).Run("G0 X1 X2").State.Position.X);
    }

    /// <summary>Tables 3 and 5 and §3.7: what the language does not have, and values below zero.</summary>
    [Theory]
    [InlineData("U5", FaultKind.WordUnknown)]
    [InlineData("G77", FaultKind.CodeUnknown)]
    [InlineData("G1.5", FaultKind.CodeUnknown)]
    [InlineData("M777", FaultKind.CodeUnknown)]
    [InlineData("S-1", FaultKind.ValueNotAllowed)]
    [InlineData("T-1", FaultKind.ValueNotAllowed)]
    [InlineData("T1.5", FaultKind.ValueNotAllowed)]
    [InlineData("F-1", FaultKind.ValueNotAllowed)]
    [InlineData("G10 L2 P10 X0", FaultKind.ValueNotAllowed)]
    [InlineData("G41 D-1", FaultKind.ValueNotAllowed)]
    [InlineData("G4", FaultKind.WordMissing)]
    [InlineData("G92", FaultKind.WordMissing)]
    [InlineData("G80 X1", FaultKind.MotionNotSet)]
    public void Refused(string block, FaultKind kind) => Assert.Contains(kind, Faults(block));

    /// <summary>§3.7: S0 is legal.</summary>
    [Fact]
    public void S0() => Assert.Empty(Faults("S0"));

    /// <summary>§3.3.2.1: a whole number may be off by 0.0001.</summary>
    [Theory]
    [InlineData("T4.00005", 4)]
    [InlineData("T3.9999", 4)]
    public void Whole_numbers(string word, int tool) => Assert.Equal(tool, new Session().Run(word, "M6").State.Tool);

    /// <summary>§3.5.10 and §3.5.13: compensation on when on, and another coordinate system while it is on.</summary>
    [Theory]
    [InlineData("G42 D2")]
    [InlineData("G55")]
    public void Not_while_compensation_is_on(string block) =>
        Assert.Contains(new Session(start: default(Point3)).Run("G41 D1").Clear().Run(block).Faults, fault => fault.Kind == FaultKind.NotAllowedHere);

    /// <summary>Modes stay until another code of their group (table 4).</summary>
    [Fact]
    public void Modes_stay()
    {
        var state = new Session(start: default(Point3)).Run("G1 G18 G91 G20 G95 G99 G55 M4 M8 S5 F1", "(nothing)", "N10", "").State;
        Assert.Equal((MotionMode.Linear, WorkPlane.ZX, DistanceMode.Incremental, LengthUnit.Inch, FeedMode.PerTurn), (state.Motion, state.Plane, state.Distance, state.Units, state.FeedMode));
        Assert.Equal((ReturnLevel.RLevel, 55, SpindleState.Counterclockwise, CoolantState.Flood), (state.ReturnLevel, state.WorkOffset, state.Spindle, state.Coolant));
        Assert.Equal(CoolantState.Mist | CoolantState.Flood, new Session().Run("M7", "M8").State.Coolant);
        Assert.Equal(CoolantState.Off, new Session().Run("M7", "M8", "M9").State.Coolant);
    }

    /// <summary>A code that is refused as the second of its group does nothing.</summary>
    [Fact]
    public void The_second_code_of_a_group_does_nothing() =>
        Assert.Equal(MotionMode.Rapid, new Session(start: default(Point3)).Run("G0 G1 X5").State.Motion);
}
