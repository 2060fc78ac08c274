using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Tests.Cycles;

// Units: seconds as in NISTIR 6556 §3.5.4; milliseconds and the rule by point are common practice. At S1000 one turn takes 0.06 s.
public class DwellTests
{
    static readonly Readings Milliseconds = new() { Dwell = DwellReading.Milliseconds };
    static readonly Readings ByPoint = new() { Dwell = DwellReading.ByPoint };

    static string InCycle(string p) => $"G98 G82 X10 Y10 Z-3 R2 {p} F100\nX20\nX30";

    [Theory]
    [InlineData("P500", "P0.5")]
    [InlineData("P30", null)] // as milliseconds less than a turn
    [InlineData("P29.9", "")]
    [InlineData("P0.5", "")]
    [InlineData("P0.06", "")]
    [InlineData("P0.05", null)]
    [InlineData("P0", "")]
    public void In_seconds(string p, string? written) => Check(p, written, new Readings());

    [Theory]
    [InlineData("P0.5", "P500")]
    [InlineData("P2", "P2000")]
    [InlineData("P500", "")]
    [InlineData("P60", "")]
    [InlineData("P59", null)] // as seconds too long as well
    [InlineData("P30000", null)]
    public void In_milliseconds(string p, string? written) => Check(p, written, Milliseconds);

    [Theory]
    [InlineData("P500.", "P500")]
    [InlineData("P2", "P2000")]
    [InlineData("P0.5", "")]
    [InlineData("P500", "")]
    public void By_the_decimal_point(string p, string? written) => Check(p, written, ByPoint);

    static void Check(string p, string? written, Readings readings)
    {
        var found = CycleJob.Find("dwell-unit", InCycle(p), readings: readings);
        if (written?.Length == 0)
        {
            Assert.Empty(found);
            return;
        }
        Assert.Equal(0, Assert.Single(found).Block);
        Assert.Equal(written is null ? null : InCycle(written), CycleJob.Fix("dwell-unit", InCycle(p), readings: readings));
        if (written is not null)
            Assert.Empty(CycleJob.Find("dwell-unit", InCycle(written), readings: readings));
    }

    [Fact]
    public void Both_readings_are_said() => Assert.Equal(
        "P500 is 500 s (8 min 20 s) here; as milliseconds it would be 0.5 s.",
        CycleJob.Run(InCycle("P500")).Findings.Single(f => f.Name == "dwell-unit").Message);

    // At S1000 a turn takes 0.06 s.
    [Theory]
    [InlineData("G82 X10 Y10 Z-3 R2 P60000 F100", "P60000 is 60 s (1 min) here: all that time the tool rubs at the bottom of the hole. A turn or two of the spindle are enough, P60 to P120.")]
    [InlineData("G82 X10 Y10 Z-3 R2 P0.01 F100", "P0.01 is 0.00001 s here, less than a hundredth of a turn of the spindle: the bottom is not cut all round. A turn or two of the spindle are enough, P60 to P120.")]
    [InlineData("G4 P60000", "P60000 is 60 s (1 min) here: the machine waits all that time with the spindle turning. Write a shorter time, unless the wait is meant.")]
    public void Where_no_reading_makes_sense_it_is_said_what_is_wrong(string block, string message) =>
        Assert.Equal(message, CycleJob.Run(block, readings: Milliseconds).Findings.Single(f => f.Name == "dwell-unit").Message);

    /// <summary>At S70 a turn takes 60/70 = 0.857 s: it is told as somebody would write it, and no shorter.</summary>
    [Fact]
    public void Turns_are_told_in_two_figures() => Assert.EndsWith(
        "A turn or two of the spindle are enough, P860 to P1800.",
        CycleJob.Run("S70\nG82 X10 Y10 Z-3 R2 P200 F100", readings: ByPoint).Findings.Single(f => f.Name == "dwell-unit").Message, StringComparison.Ordinal);

    /// <summary>With a point X is seconds under every reading.</summary>
    [Fact]
    public void X_is_mended_with_a_point() => Assert.Equal("G4 X2.", CycleJob.Fix("dwell-unit", "G4 X2", readings: ByPoint));

    [Fact]
    public void G4_waits_long_only_while_the_spindle_stands_or_warms_up()
    {
        Assert.Equal([(1, Severity.Error)], CycleJob.Find("dwell-unit", "G1 Z-1 F100\nG4 P500"));
        Assert.Equal([(0, Severity.Warning)], CycleJob.Find("dwell-unit", "G4 P500"));
        Assert.Empty(CycleJob.Find("dwell-unit", "M5\nG4 P60"));
        Assert.Empty(CycleJob.Find("dwell-unit", "M5\nG4 P0.001"));
        Assert.Equal([(1, Severity.Warning)], CycleJob.Find("dwell-unit", "M5\nG4 P500"));
        Assert.Empty(CycleJob.Find("dwell-unit", "G4 P2"));
        Assert.Empty(CycleJob.Find("dwell-unit", "G4 X40"));
    }

    /// <summary>A warm-up calls no tool (common practice); as milliseconds 60 s are no wait at all, 500 s one that programs have before a cut.</summary>
    [Theory]
    [InlineData("G4 P60", 0)]
    [InlineData("G4 P500", 1)]
    [InlineData("G1 X5 F100\nG4 P60", 1)]
    public void A_warm_up_without_a_tool_may_wait(string blocks, int findings) =>
        Assert.Equal(findings, Rules.Check.Of("dwell-unit", $"G21 G90 G17 G54\nS1000 M3\n{blocks}\nM5\nM30").Count);

    /// <summary>A warning may be meant, and a time nobody commonly dwells may be another slip than that of the unit.</summary>
    [Theory]
    [InlineData("G98 G82 X10 Y10 Z-3 R2 P500 F100", "seconds", FixSafety.Safe)] // 0.5 s
    [InlineData("G98 G82 X10 Y10 Z-3 R2 P4000 F100", "seconds", FixSafety.Choice)] // 4 s, 67 turns
    [InlineData("G98 G82 X10 Y10 Z-3 R2 P2 F100", "milliseconds", FixSafety.Safe)]
    [InlineData("G98 G82 X10 Y10 Z-3 R2 P5 F100", "milliseconds", FixSafety.Choice)]
    [InlineData("G4 P60 (WARM UP)", "seconds", FixSafety.Choice)]
    [InlineData("G4 P500", "seconds", FixSafety.Choice)]
    [InlineData("G1 Z-1 F100\nG4 P500", "seconds", FixSafety.Safe)]
    [InlineData("G1 Z-1 F100\nG4 P60", "seconds", FixSafety.Choice)] // 0.06 s is no wait
    public void A_dwell_is_written_unasked_only_where_the_other_unit_gives_a_usual_one(string blocks, string unit, FixSafety safety)
    {
        var analysis = CycleJob.Run(blocks, readings: unit == "seconds" ? new Readings() : Milliseconds);
        Assert.Equal(safety, analysis.FixesOf(analysis.Findings.Single(f => f.Name == "dwell-unit")).Single().Safety);
    }

    /// <summary>Where nobody has told how the control reads it, it may be right as it stands.</summary>
    [Fact]
    public void Without_a_machine_no_dwell_is_written_unasked()
    {
        var analysis = CycleJob.Run("G98 G82 X10 Y10 Z-3 R2 P500 F100", chosen: false);
        Assert.Equal(FixSafety.Choice, analysis.FixesOf(analysis.Findings.Single(f => f.Name == "dwell-unit")).Single().Safety);
    }

    [Fact]
    public void A_dwell_carries_over_within_its_cycle_only()
    {
        Assert.Empty(CycleJob.Find("dwell-missing", "G98 G82 X10 Y10 Z-3 R2 P0.2 F100\nX20\nG89 X30 Z-3 R2"));
        Assert.Equal([(2, Severity.Warning)], CycleJob.Find("dwell-missing", "G98 G82 X10 Y10 Z-3 R2 P0.2 F100\nG80\nG82 X20 Z-3 R2\nX30"));
        Assert.Equal([(0, Severity.Note)], CycleJob.Find("dwell-missing", "G98 G86 X10 Y10 Z-3 R2 F100"));
        Assert.Empty(CycleJob.Find("dwell-missing", "G98 G81 X10 Y10 Z-3 R2 F100"));
    }
}
