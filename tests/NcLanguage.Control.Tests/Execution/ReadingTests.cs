using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>Every reading of a profile changes what the control does (control.md, "Readings"; common practice). Return level, arc centre,
/// stops and length offset are tested with cycles, arcs, order and offsets.</summary>
public sealed class ReadingTests
{
    static readonly Point3 Above = new(0, 0, 10);

    static Session With(Func<Readings, Readings> change) => new(OrderTests.Reading(change), OrderTests.Datum, Above);

    [Theory]
    [InlineData(DwellReading.Seconds, "P500", 500)]
    [InlineData(DwellReading.Seconds, "P0.5", 0.5)]
    [InlineData(DwellReading.Seconds, "X0.5", 0.5)]
    [InlineData(DwellReading.Milliseconds, "P500", 0.5)]
    [InlineData(DwellReading.Milliseconds, "P0.5", 0.0005)]
    [InlineData(DwellReading.Milliseconds, "X0.5", 0.5)]
    [InlineData(DwellReading.ByPoint, "P500", 0.5)]
    [InlineData(DwellReading.ByPoint, "P0.5", 0.5)]
    [InlineData(DwellReading.ByPoint, "P1.", 1)]
    [InlineData(DwellReading.ByPoint, "P[1/2]", 0.5)]
    [InlineData(DwellReading.ByPoint, "X0.5", 0.5)]
    [InlineData(DwellReading.ByPoint, "X500", 0.5)]
    public void Dwell(DwellReading reading, string word, double seconds)
    {
        Assert.Equal(seconds, With(r => r with { Dwell = reading }).Run("G4 " + word).Moves[0].Seconds, 12);
        if (word[0] == 'P')
            Assert.Equal(seconds, With(r => r with { Dwell = reading }).Run("F100 G99 G82 X0 Z-1 R2 " + word).Holes[0].DwellSeconds, 12);
    }

    /// <summary>NISTIR 6556 §3.5.4: a negative dwell is refused, and takes no time that is known.</summary>
    [Theory]
    [InlineData("G4 P-1")]
    [InlineData("G4 X-1")]
    public void Dwell_refused(string block)
    {
        var session = With(r => r).Run(block);
        Assert.Equal([FaultKind.ValueNotAllowed], session.Faults.Select(fault => fault.Kind));
        Assert.True(double.IsNaN(session.Moves[0].Seconds));
    }

    [Theory]
    [InlineData("G21", "X15", 0.015)]
    [InlineData("G21", "X15.", 15)]
    [InlineData("G21", "X[10+5]", 15)]
    [InlineData("G21", "X#1", 15)]
    [InlineData("G21", "X0", 0)]
    [InlineData("G20", "X15", 0.0381)]
    [InlineData("G20", "X1.5", 38.1)]
    public void Integers_as_increments(string units, string word, double x)
    {
        var session = With(r => r with { Integers = IntegerReading.Increments }).Run("#1=15", units, "G90 G0 X1.", word);
        Assert.Equal(x, session.State.Position.X, 12);
    }

    /// <summary>Every kind of length is read so: centre, radius, R level, bottom, peck; feeds and counts are not.</summary>
    [Fact]
    public void Increments_in_all_length_words()
    {
        var session = With(r => r with { Integers = IntegerReading.Increments }).Run("G21 G99 G83 X1000 Z-5000 R2000 Q5000 F100 L1");
        Assert.Equal((1.0, -5.0, 2.0, 5.0, 100.0), (session.Holes[0].X, session.Holes[0].Bottom, session.Holes[0].RLevel, session.Holes[0].Peck, session.Holes[0].Feed));
        Assert.Equal(6, session.Run("G80", "G2 X11000 I5000").Moves[^1].Center.X, 9);
        Assert.Equal(0.5, session.Run("G4 X500").Moves[^1].Seconds, 12);
        Assert.Equal(15, With(r => r).Run("G90 G0 X15").State.Position.X);
    }

    [Fact]
    public void Hole_positions()
    {
        string[] program = ["F100 G90 G99 G81 X10 Y5 Z-3 R2", "X20 Z-4", "G91 X5 R-1"];
        Assert.Equal([(10.0, 5.0, -3.0), (20.0, 5.0, -4.0), (25.0, 5.0, -4.0)], Holes(HolePositionReading.DistanceMode));
        Assert.Equal([(10.0, 5.0, -3.0), (30.0, 5.0, -4.0), (35.0, 5.0, -4.0)], Holes(HolePositionReading.Incremental));
        // Outside a cycle G90 rules.
        Assert.Equal(20, With(r => r with { HolePositions = HolePositionReading.Incremental }).Run("G90 G0 X10", "X20").State.Position.X);

        IEnumerable<(double, double, double)> Holes(HolePositionReading reading) =>
            With(r => r with { HolePositions = reading }).Run(program).Holes.Select(hole => (hole.X, hole.Y, hole.Bottom));
    }

    [Theory]
    [InlineData(RepeatReading.L, "L3", 3)]
    [InlineData(RepeatReading.L, "K3", 1)]
    [InlineData(RepeatReading.K, "K3", 3)]
    [InlineData(RepeatReading.K, "L3", 1)]
    public void Repeats(RepeatReading reading, string word, int holes)
    {
        var session = With(r => r with { Repeats = reading }).Run("F100 G91 G99 G81 X10 R-8 Z-5 " + word);
        Assert.Equal(holes, session.Holes.Count);
        Assert.Equal(holes == 1, session.Faults.Any(fault => fault.Kind == FaultKind.WordWithoutEffect));
    }

    /// <summary>Common practice: in beside the axis from the initial level, up from R to Z, a dwell, aside and out from there. In increments R counts from the initial level and Z from R.</summary>
    [Theory]
    [InlineData("G98 G87 X5 Y6 R-20 Z-15 Q0.5 P1")]
    [InlineData("G99 G87 X5 Y6 Z-15 R-20 I0.5 P1")]
    [InlineData("G91 G98 G87 X5 Y6 R-30 Z5 Q0.5 P1")]
    public void Back_boring_from_R(string block)
    {
        var session = With(r => r with { BackBoring = BackBoringReading.FromRToZ }).Run("F100 G0 X0 Y0 Z10").Clear().Run(block);
        Assert.Equal(
            "rapid 5 6 10|rapid 5.5 6 10|spindle|rapid 5.5 6 -20|rapid 5 6 -20|spindle|feed 5 6 -15|dwell 1|spindle|rapid 5.5 6 -15|rapid 5.5 6 10|rapid 5 6 10|spindle", string.Join('|', session.Log));
        Assert.Empty(session.Faults);
    }

    [Theory]
    [InlineData("G98 G87 X5 Z-15 Q0.5", "R")]
    [InlineData("G98 G87 X5 R-20 Q0.5", "Z")]
    [InlineData("G81 X1 Z-3 R2\nG87 X5 Q0.5", "RZ")] // nothing of another cycle's levels
    public void Back_boring_from_R_wants_both_levels(string blocks, string missing) =>
        Assert.Equal(missing, string.Concat(With(r => r with { BackBoring = BackBoringReading.FromRToZ }).Run(["F100 G90 G0 X0 Y0 Z10", .. blocks.Split('\n')]).Faults.Where(fault => fault.Kind == FaultKind.WordMissing).Select(fault => fault.Letter)));

    [Fact]
    public void Back_boring_from_R_has_to_lead_up() =>
        Assert.Single(With(r => r with { BackBoring = BackBoringReading.FromRToZ }).Run("F100 G90 G0 X0 Y0 Z10", "G98 G87 X5 R-20 Z-25 Q0.5").Faults, fault => fault.Kind == FaultKind.BoreTopOutside);

    /// <summary>Under repeats=K the K of back boring is still its level, that of fine boring its repeats.</summary>
    [Fact]
    public void Repeats_and_boring()
    {
        Assert.Single(With(r => r with { Repeats = RepeatReading.K }).Run("F100 G99 G87 X1 R2 Z-20 I1 K-15").Holes);
        Assert.Equal(2, With(r => r with { Repeats = RepeatReading.K }).Run("F100 G99 G76 X1 R2 Z-20 Q1 K2").Holes.Count);
    }

    [Fact]
    public void Tool_change()
    {
        var session = With(r => r with { ToolChange = ToolChangeReading.T }).Run("M3 S100").Clear().Run("T4");
        Assert.Equal((4, SpindleState.Off), (session.State.Tool, session.State.Spindle));
        Assert.Equal(["toolchange"], session.Log);
        // The M6 that many programs keep beside or behind it changes nothing more.
        Assert.Empty(session.Clear().Run("M6").Log);
        Assert.Single(session.Clear().Run("T5 M6").Log);
        Assert.Equal(-1, session.Run("T#9").State.Tool);
        Assert.Equal(-1, With(r => r).Run("T4").State.Tool);
    }

    [Fact]
    public void Units()
    {
        Assert.Equal(25.4, With(r => r with { Units = UnitReading.G70G71 }).Run("G70", "G90 G0 X1").State.Position.X);
        Assert.Equal(1, With(r => r with { Units = UnitReading.G70G71 }).Run("G70", "G71", "G90 G0 X1").State.Position.X);
        // A control that does not have the code refuses it: what lengths mean behind it is not known.
        var session = With(r => r with { Units = UnitReading.G70G71 }).Run("G20", "G90 G0 X1");
        Assert.Equal([FaultKind.CodeNotInReading], session.Faults.Select(fault => fault.Kind));
        Assert.True(double.IsNaN(session.State.Position.X));
        Assert.Equal([FaultKind.CodeNotInReading], With(r => r).Run("G71").Faults.Select(fault => fault.Kind));
    }

    [Fact]
    public void Rapids_end_a_cycle()
    {
        foreach (var code in new[] { "G0", "G1", "G2 R50", "G3 R50" })
        {
            Assert.Single(With(r => r).Run("F100 G99 G81 X10 R2 Z-5", code + " X20").Holes);
            Assert.Equal(2, With(r => r with { RapidsEndCycle = false }).Run("F100 G99 G81 X10 R2 Z-5", code + " X20").Holes.Count);
        }
        var session = With(r => r with { RapidsEndCycle = false }).Run("F100 G99 G81 X10 R2 Z-5", "G80 G0 X20");
        Assert.Single(session.Holes);
        Assert.Equal(0, session.State.Cycle);
    }

    [Fact]
    public void Incremental_R()
    {
        string[] program = ["F100 G91 G99 G81 X10 R-8 Z-5", "X10 R-8"];
        Assert.Equal([2.0, -6.0], With(r => r).Run(program).Holes.Select(hole => hole.RLevel));
        Assert.Equal([2.0, 2.0], With(r => r with { IncrementalR = IncrementalRReading.InitialLevel }).Run(program).Holes.Select(hole => hole.RLevel));
    }
}
