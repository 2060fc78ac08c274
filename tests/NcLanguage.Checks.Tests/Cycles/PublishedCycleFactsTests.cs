using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Cycles;

/// <summary>Rules on cycles against published values; each test names its source.</summary>
public class PublishedCycleFactsTests
{
    static Setup Tap(double pitch) => CycleJob.Plate(new Tool { Number = 3, Kind = ToolKind.Tap, Pitch = pitch });

    // ISO 261 coarse pitches and the feed at 500 1/min: feed = pitch · speed (NISTIR 6556 §3.5.16.5).
    [Theory]
    [InlineData(0.5, 250)] // M3
    [InlineData(0.7, 350)] // M4
    [InlineData(0.8, 400)] // M5
    [InlineData(1, 500)] // M6
    [InlineData(1.25, 625)] // M8
    [InlineData(1.5, 750)] // M10
    [InlineData(1.75, 875)] // M12
    [InlineData(2, 1000)] // M16
    [InlineData(2.5, 1250)] // M20
    [InlineData(3, 1500)] // M24
    public void Thread_feed_is_pitch_times_speed(double pitch, double feed)
    {
        Assert.Empty(CycleJob.Find("tap-feed", $"G98 G84 X10 Y10 Z-12 R5 S500 F{feed}", Tap(pitch)));
        Assert.Equal(
            FormattableString.Invariant($"G98 G84 X10 Y10 Z-12 R5 S500 F{feed}"),
            CycleJob.Fix("tap-feed", "G98 G84 X10 Y10 Z-12 R5 S500 F100", Tap(pitch)));
        Assert.Empty(CycleJob.Find("tap-feed", FormattableString.Invariant($"G95 G98 G84 X10 Y10 Z-12 R5 S500 F{pitch}"), Tap(pitch)));
        Assert.Equal(
            FormattableString.Invariant($"G95 G98 G84 X10 Y10 Z-12 R5 S500 F{pitch}"),
            CycleJob.Fix("tap-feed", "G95 G98 G84 X10 Y10 Z-12 R5 S500 F9", Tap(pitch)));
    }

    // NISTIR 6556 §3.5.16.5, its own example: 2 threads per mm at F150 want S300.
    [Fact]
    public void Two_threads_per_mm_at_F150_want_S300()
    {
        Assert.Empty(CycleJob.Find("tap-feed", "G98 G84 X10 Y10 Z-12 R5 S300 F150", Tap(0.5)));
        Assert.Single(CycleJob.Find("tap-feed", "G98 G84 X10 Y10 Z-12 R5 S304 F150", Tap(0.5)));
        Assert.Empty(CycleJob.Find("tap-feed", "G98 G84 X10 Y10 Z-12 R5 S302 F150", Tap(0.5)));
    }

    // UNC 1/4-20: 20 threads per inch, so at S200 the feed is 10 in/min (feed = speed / threads).
    [Fact]
    public void Inch_threads_in_an_inch_program() => Assert.Equal(
        "G20\nG98 G84 X0.4 Y0.4 Z-0.5 R0.2 S200 F10", CycleJob.Fix("tap-feed", "G20\nG98 G84 X0.4 Y0.4 Z-0.5 R0.2 S200 F5", Tap(25.4 / 20)));

    // Turns of a dwell: t = 60 · turns / n. 2 turns at 1000 1/min take 0.12 s; 0.2 s at 1200 1/min are 4 turns (arithmetic).
    [Fact]
    public void A_missing_dwell_is_offered_as_two_turns()
    {
        const string blocks = "G98 G82 X10 Y10 Z-3 R2 F100";
        Assert.Equal("G98 G82 X10 Y10 Z-3 R2 P0.12 F100", CycleJob.Fix("dwell-missing", blocks));
        Assert.Equal("G98 G82 X10 Y10 Z-3 R2 P120 F100", CycleJob.Fix("dwell-missing", blocks, readings: new Readings { Dwell = DwellReading.Milliseconds }));
        Assert.Equal("G98 G82 X10 Y10 Z-3 R2 P120 F100", CycleJob.Fix("dwell-missing", blocks, readings: new Readings { Dwell = DwellReading.ByPoint }));
        Assert.Single(CycleJob.Find("dwell-revolutions", "G98 G82 X10 Y10 Z-3 R2 P1.21 F100"));
        Assert.Empty(CycleJob.Find("dwell-revolutions", "G98 G82 X10 Y10 Z-3 R2 P1.2 F100"));
        Assert.Empty(CycleJob.Find("dwell-revolutions", "S1200\nG98 G82 X10 Y10 Z-3 R2 P0.2 F100"));
    }

    // The reject list of NISTIR 6556 §3.5.16, as far as it concerns cycles: each of these blocks is refused.
    [Theory]
    [InlineData("G81 X4 Y5 Z1.5", "cycle-word-missing")]
    [InlineData("G81 X4 Y5 R2.8", "cycle-word-missing")]
    [InlineData("G81 X4 Y5 Z2.8 R1.5", "r-below-bottom")]
    [InlineData("G81 X4 Y5 Z1 R2.8\nR3", "cycle-word-missing")]
    [InlineData("G83 X4 Y5 Z1 R2.8", "cycle-word-missing")]
    [InlineData("M4\nG84 X4 Y5 Z1 R2.8", "tap-direction")]
    [InlineData("G43", "word-missing")] // §3.5.11
    [InlineData("G4", "word-missing")] // §3.5.4
    [InlineData("G2 X20", "word-missing")] // §3.5.3
    public void Blocks_that_the_published_specification_refuses(string blocks, string name)
    {
        var found = CycleJob.Run("G98 F100\n" + blocks).Findings.Where(f => f.Name == name).ToList();
        Assert.Equal(CycleJob.Before + blocks.Split('\n').Length, Assert.Single(found).Line);
        Assert.Equal(Severity.Error, found[0].Severity);
    }

    // NISTIR 6556 §3.5.16.2, both worked examples: sound, apart from what they say about their own levels.
    [Theory]
    [InlineData("G0 X1 Y2 Z3\nG90 G81 G98 X4 Y5 Z1.5 R2.8", 0)]
    [InlineData("G0 X1 Y2 Z3\nG91 G81 G98 X4 Y5 Z-0.6 R1.8 L3", 1)] // begins 1.8 below R
    public void Worked_examples_are_sound(string blocks, int belowR)
    {
        var analysis = CycleJob.Run("F100\n" + blocks + "\nG80");
        Assert.Equal(belowR, analysis.Findings.Count(f => f.Name == "initial-level-below-r"));
        Assert.DoesNotContain(analysis.Findings, f => f.Id.StartsWith("NC3", StringComparison.Ordinal) && f.Name != "initial-level-below-r");
    }

    // Strokes = (R − Z) / Q rounded up: R2 Z−20 Q5 takes 5 (arithmetic); a drill of 5 mm is deep from 4 diameters on.
    [Fact]
    public void Pecks()
    {
        var drill = CycleJob.Plate(new Tool { Number = 3, Kind = ToolKind.Drill, Diameter = 5 });
        Assert.Empty(CycleJob.Find("peck-step", "G98 G83 X10 Y10 Z-20 R2 Q5 F100", drill));
        Assert.Single(CycleJob.Find("peck-step", "G98 G83 X10 Y10 Z-20 R2 Q16 F100", drill)); // over 3 diameters
        Assert.Empty(CycleJob.Find("peck-step", "G98 G83 X10 Y10 Z-20 R2 Q15 F100", drill));
        Assert.Single(CycleJob.Find("peck-step", "G98 G83 X10 Y10 Z-20 R2 Q0.2 F100", drill)); // 110 strokes
        Assert.Empty(CycleJob.Find("peck-step", "G98 G83 X10 Y10 Z-20 R2 Q0.22 F100", drill)); // 100 strokes
        Assert.Empty(CycleJob.Find("peck-missing", "G98 G81 X10 Y10 Z-20 R2 F100", drill));
        Assert.Single(CycleJob.Find("peck-missing", "G98 G81 X10 Y10 Z-20.1 R2 F100", drill));
        // Coolant through the drill washes the chips out (common practice).
        var cooled = CycleJob.Plate(new Tool { Number = 3, Kind = ToolKind.Drill, Diameter = 5, ThroughCoolant = true });
        Assert.Empty(CycleJob.Find("peck-missing", "G98 G81 X10 Y10 Z-35 R2 F100", cooled));
        Assert.Equal("G98 G83 X10 Y10 Z-25 R2 Q5 F100", CycleJob.Fix("peck-missing", "G98 G81 X10 Y10 Z-25 R2 F100", drill));
        Assert.Equal(
            "G98 G83 X10. Y10. Z-25. R2. Q5. F100",
            CycleJob.Fix("peck-missing", "G98 G81 X10. Y10. Z-25. R2. F100", drill, new Readings { Integers = IntegerReading.Increments }));
    }
}
