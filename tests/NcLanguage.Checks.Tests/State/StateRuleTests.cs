using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.State;

/// <summary>Rules on modes, spindle, feed and coolant: where they speak, that they speak once, and where they are silent.</summary>
public sealed class StateRuleTests
{
    const string Modes = "G21 G90 G17 G54\n";

    static int Count(string rule, string program, string readings = "") => Check.Of(rule, program, readings).Count;

    // ---- modes at the beginning ----

    [Theory]
    [InlineData("G90 G17 G54\nG0 X1\nG0 X2\nM30", 1)]
    [InlineData("G90 G17 G54\nG28\nG21\nG0 X1\nM30", 0)]
    [InlineData("G90 G17 G54\nG91 G28 Z0\nG90 G21\nG0 X1\nM30", 0)]
    [InlineData("G90 G17 G54\nG0 X1 G21\nM30", 0)]
    [InlineData("G90 G17 G54\nS500 M3\nT1 M6\nM30", 0)]
    [InlineData(Modes + "M30\nO2\nG0 X1\nM99", 0)]
    public void Units_are_missed_at_the_first_length_and_once(string program, int findings) =>
        Assert.Equal(findings, Count("units-not-set", program));

    [Theory]
    [InlineData("%\nO5 (plate)\nN10 G90 G17 G54\nN20 G0 X1\nM30", "%\nO5 (plate)\nN10 G21 G90 G17 G54\nN20 G0 X1\nM30")]
    [InlineData("G0 X1\nG54\nM30", "G21 G0 X1\nG54\nM30")]
    [InlineData("/G90\nG17 G54\nG0 X1\nM30", "/G90\nG21 G17 G54\nG0 X1\nM30")]
    public void The_units_are_added_to_the_first_block_that_always_runs(string program, string mended) =>
        Assert.Equal(mended, Check.Fixed("units-not-set", program));

    [Fact]
    public void Units_follow_the_setup_and_the_reading()
    {
        var inch = Setup.None with { IsPresent = true, IsInch = true };
        Assert.StartsWith("G20 G90", Check.Fixed("units-not-set", "G90 G17 G54\nG0 X1\nM30", setup: inch), StringComparison.Ordinal);
        Assert.StartsWith("G70 G90", Check.Fixed("units-not-set", "G90 G17 G54\nG0 X1\nM30", "units=G70/G71", inch), StringComparison.Ordinal);
    }

    /// <summary>Read in the wrong unit every length is wrong by 25.4: no unit is written unasked.</summary>
    [Theory]
    [InlineData("G90 G17 G54\nG0 X1\nM30", null, "G21 G20")]
    [InlineData("G90 G17 G54\nG0 X1\nM30", false, "G21")]
    [InlineData("G90 G17 G54\nG0 X1\nM30", true, "G20")]
    [InlineData("G90 G17 G54\nG0 X1\nG20\nM30", false, "G21 G20")]
    [InlineData("G90 G17 G54\nG0 X1\nG20\nM30", null, "G20")]
    [InlineData("G90 G17 G54\nG0 X1\nG21\nG20\nM30", true, "G20 G21")]
    [InlineData("G90 G17 G54\nG0 X1\nG20\nM30", true, "G20")]
    public void The_unit_is_a_choice_and_both_are_where_nothing_tells(string program, bool? inchSetup, string codes)
    {
        var analysis = Check.Analyse(program, setup: Setup.None with { IsPresent = inchSetup is not null, IsInch = inchSetup == true });
        var fixes = analysis.FixesOf(analysis.Findings.Single(f => f.Name == "units-not-set")).ToList();
        Assert.All(fixes, fix => Assert.Equal(FixSafety.Choice, fix.Safety));
        Assert.Equal(codes, string.Join(" ", fixes.Select(fix => fix.Edits.Single().NewText.Trim())));
    }

    [Fact]
    public void A_work_offset_is_not_written_unasked()
    {
        var analysis = Check.Analyse("G21 G90 G17\nG0 X1\nM30");
        Assert.Equal(FixSafety.Choice, analysis.FixesOf(analysis.Findings.Single(f => f.Name == "work-offset-not-set")).Single().Safety);
    }

    [Theory]
    [InlineData("G21 G90 G17\nG0 X1\nG0 X2\nM30", 1)]
    [InlineData("G21 G90 G17\nG28\nG53 G0 Z0\nG54\nG0 X1\nM30", 0)]
    [InlineData("G21 G90 G17\nG92 X0 Y0 Z0\nG0 X1\nM30", 0)]
    [InlineData("G21 G90 G17\nG0 G55 X1\nM30", 0)]
    public void The_work_offset_is_missed_at_the_first_move_from_it_and_once(string program, int findings) =>
        Assert.Equal(findings, Count("work-offset-not-set", program));

    [Fact]
    public void The_work_offset_added_is_the_setup_s_frame() =>
        Assert.StartsWith("G55 G21", Check.Fixed("work-offset-not-set", "G21 G90 G17\nG0 X1\nM30", setup: Setup.None with { IsPresent = true, Frame = 55 }), StringComparison.Ordinal);

    [Theory]
    [InlineData("X1\nX2\nX3", 1)]
    [InlineData("G0 X1\nX2", 0)]
    [InlineData("G0 X1\nG80\nX2\nX3\nG0 X4\nG80\nX5", 2)]
    [InlineData("G0 X1\nG80 G0 X2", 0)]
    public void A_missing_motion_code_is_told_once_for_each_gap(string blocks, int findings) =>
        Assert.Equal(findings, Count("motion-not-set", Modes + blocks + "\nM30"));

    // ---- codes that exclude each other ----

    [Theory]
    [InlineData("G98 G99", 1)]
    [InlineData("M3 M5", 1)]
    [InlineData("M0 M30", 1)]
    [InlineData("G0 G81 X1 Z-1 R1", 1)]
    [InlineData("G28 X0 G92 Y0", 1)]
    [InlineData("G0 G28 Z5", 0)]
    [InlineData("G80 G0 X1", 0)]
    [InlineData("M7 M8", 0)]
    [InlineData("G90 G0 G54 G17 G40 G49 G80 X1", 0)]
    public void Codes_of_one_group_exclude_each_other(string block, int findings) =>
        Assert.Equal(findings, Count("codes-conflict", Modes + block + "\nM30"));

    // ---- spindle, speed, feed, coolant ----

    [Theory]
    [InlineData("G1 Z-1 F100\nG1 Z-2\nG0 Z5", 1)]
    [InlineData("M3\nG1 Z-1 F100\nM5\nG1 Z-2\nG1 Z-3", 1)]
    [InlineData("M3\nG1 Z-1 F100\nG0 Z5\nT2 M6\nG43 H2 Z5\nG1 Z-1", 1)]
    [InlineData("M3 S0\nG1 Z-1 F100", 1)]
    [InlineData("M3\nG0 Z5\nM5\nG0 X5", 0)]
    [InlineData("G1 Z-1 F100 M3", 0)]
    [InlineData("M3\nM6 T1\nM4\nG43 H1 Z5\nG81 X1 Z-1 R1 F100", 0)]
    [InlineData("G91 G1 X5 F100", 1)]
    public void A_standing_spindle_is_told_once_for_each_stop(string blocks, int findings) =>
        Assert.Equal(findings, Count("spindle-off", Modes + "S1000\nG0 X0 Y0 Z9\n" + blocks + "\nM30"));

    /// <summary>The published specification stops the spindle before the block's motion, ISO 6983-1 (from memory) after it.</summary>
    [Theory]
    [InlineData("beforeMotion", 1)]
    [InlineData("afterMotion", 0)]
    public void M5_beside_a_cut_acts_as_the_reading_says(string reading, int findings) =>
        Assert.Equal(findings, Count("spindle-off", Modes + "S1000 M3\nG0 X0 Y0 Z9\nG1 Z-1 F100\nG1 X5 M5\nM30", $"stopsAct={reading}"));

    [Theory] // A standing tool that is fed through air, or lifted, cuts nothing; the next one that goes down does.
    [InlineData("G1 Z60 F1000", false, new int[0])]
    [InlineData("G1 X20 F1000", true, new int[0])]
    [InlineData("G1 X20 F1000", false, new[] { 4 })]
    [InlineData("G1 X20 Z60 F1000", false, new[] { 4 })]
    [InlineData("G1 Z0 F1000\nX20", true, new int[0])]
    [InlineData("G1 Z60 F1000\nG1 Z-1", true, new[] { 5 })]
    [InlineData("G98 G81 Z1 R2 F100", true, new[] { 4 })]
    public void A_feed_in_the_air_needs_no_spindle(string blocks, bool hasStock, int[] lines)
    {
        var setup = Setup.None with { IsPresent = true, Stock = hasStock ? new(new(0, 0, -20), new(100, 60, 0)) : null };
        var found = Check.Of("spindle-off", "G21 G90 G17 G54 G94\nS1000\nG0 X10 Y10 Z30\n" + blocks + "\nG80\nM30", setup: setup);
        Assert.Equal(lines, found.Select(finding => finding.Line + 1));
    }

    [Fact]
    public void A_probe_is_fed_with_a_standing_spindle()
    {
        const string Program = Modes + "T9 M6\nG0 X0 Y0\nG43 H9 Z9\nG1 Z1 F100\nM30";
        var probe = Setup.None with { IsPresent = true, Tools = [new Tool { Number = 9, Kind = ToolKind.Probe }] };
        Assert.Single(Check.Of("spindle-off", Program));
        Assert.Empty(Check.Of("spindle-off", Program, setup: probe));
    }

    [Fact]
    public void Left_hand_tapping_is_mended_with_M4() =>
        Assert.Contains("\nM4\nG74 X1 Y1 Z-8 R3 F500\n", Check.Fixed("spindle-off", Modes + "S500\nG0 X0 Y0 Z9\nG74 X1 Y1 Z-8 R3 F500\nG80\nM30"), StringComparison.Ordinal);

    /// <summary>In the block of the cut the spindle would still run up while the tool goes in: that a control does not wait for it there is common
    /// practice.</summary>
    [Theory]
    [InlineData("T1 M6\nG43 H1 Z9\nN50 G1 Z-1 F100", "\nM3\nN50 G1 Z-1 F100\n", FixSafety.Safe)]
    [InlineData("M5\nT1 M6\nG43 H1 Z9\nN50 G1 Z-1 F100", "\nM3\nN50 G1 Z-1 F100\n", FixSafety.Safe)]
    [InlineData("M3\nG1 X9 F100\nM5 T1 M6\nG0 G43 H1 Z9 S800\nN50 G1 Z-1 F100", "\nM3\nN50 G1 Z-1 F100\n", FixSafety.Safe)]
    [InlineData("M3\nG1 X9 F100\nM5 T1 M6\nG0 G43 H1 Z9\nN50 G1 Z-1 F100", "\nM3\nN50 G1 Z-1 F100\n", FixSafety.Choice)] // at the speed of the tool before
    [InlineData("T1 M6\nG43 H1 Z9\nM3\nG1 Z-1 F100\nM5\nN50 G1 Z-2", "\nM3\nN50 G1 Z-2\n", FixSafety.Choice)]
    [InlineData("M5\nG1 Z-2 F100", "\nM3\nG1 Z-2 F100\n", FixSafety.Choice)]
    public void The_spindle_is_started_in_a_block_of_its_own(string blocks, string mended, FixSafety safety)
    {
        var analysis = Check.Analyse(Modes + "S1000\nG0 X0 Y0 Z9\n" + blocks + "\nM30");
        var fix = analysis.FixesOf(analysis.Findings.Single(finding => finding.Name == "spindle-off")).Single();
        Assert.Equal(safety, fix.Safety);
        Assert.Contains(mended, TextEdits.Apply(analysis.Text, fix.Edits).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_block_that_starts_the_spindle_ends_as_the_others_do()
    {
        var analysis = ProgramAnalysis.Create(SourceText.From("G21 G90 G17 G54\r\nS500\r\nG0 X0 Y0 Z9\r\nG1 Z-1 F100\r\nM30\r\n"), Setup.None, MachineProfile.IsoMill);
        var fix = analysis.FixesOf(analysis.Findings.Single(finding => finding.Name == "spindle-off")).Single();
        Assert.Contains("Z9\r\nM3\r\nG1", TextEdits.Apply(analysis.Text, fix.Edits).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void No_start_is_offered_where_the_speed_is_not_known()
    {
        var analysis = Check.Analyse(Modes + "G0 X0 Y0 Z9\nG1 Z-1 F100\nM30");
        Assert.Empty(analysis.FixesOf(analysis.Findings.Single(finding => finding.Name == "spindle-off")));
    }

    /// <summary>NISTIR 6556 §3.6.2: the speed may be given after M3.</summary>
    [Theory]
    [InlineData("M3\nG0 X1\nG1 Z-1 F100", 1)]
    [InlineData("M3\nS1000\nG1 Z-1 F100", 0)]
    [InlineData("M3\nG1 Z-1 F100 S1000", 0)]
    [InlineData("M3\nG1 Z-1 F100\nS1000\nG1 Z-2", 1)]
    [InlineData("S1000\nM3\nG1 Z-1 F100", 0)]
    [InlineData("S-1000 M3\nG0 X1\nG1 Z-1 F100", 0)] // refused, and told as that
    [InlineData("M5\nT1 M6\nM4 (warm up)", 1)]
    [InlineData("M5\nG0 X1", 0)]
    public void The_speed_has_to_come_before_the_first_cut(string blocks, int findings) =>
        Assert.Equal(findings, Count("speed-missing", Modes + blocks + "\nM5\nM30"));

    [Theory]
    [InlineData("G1 Z-1\nG1 Z-2", 1)]
    [InlineData("F100\nG1 Z-1", 0)]
    [InlineData("G81 X1 Z-1 R1", 1)]
    [InlineData("F0\nG1 Z-1", 1)]
    [InlineData("G93 G1 Z-1 F2\nG1 Z-2", 1)]
    [InlineData("G93 G1 Z-1 F2\nG1 Z-2 F2\nG94", 0)]
    [InlineData("G1 Z-1 F#1\nG1 Z-2", 0)]
    public void The_first_cut_needs_a_feed(string blocks, int findings) =>
        Assert.Equal(findings, Count("feed-missing", Modes + "S1000 M3\nG0 X0 Y0 Z9\n" + blocks + "\nM30"));

    [Theory]
    [InlineData("M3 S500\nM8\nG0 X1\nM30", 1, 1)]
    [InlineData("M3 S500\nM7\nG0 X1\nM5\nM9\nM2", 0, 0)]
    [InlineData("M3 S500\nM8\nG0 X1\nM5 M9 M30", 0, 0)]
    [InlineData("M3 S500\nT1 M6\nG0 X1\nM30", 0, 0)]
    public void Spindle_and_coolant_are_stopped_by_the_program(string blocks, int spindle, int coolant)
    {
        Assert.Equal(spindle, Count("spindle-left-on", Modes + blocks));
        Assert.Equal(coolant, Count("coolant-left-on", Modes + blocks));
    }

    [Fact]
    public void Both_stops_are_added_together()
    {
        var analysis = Check.Analyse(Modes + "M3 S500\nM8\nG0 X1\nN90 M30 (end)");
        var edits = analysis.Findings.SelectMany(finding => analysis.FixesOf(finding).First().Edits);
        var mended = TextEdits.Apply(analysis.Text, edits).ToString();
        Assert.EndsWith(" M30 (end)", mended, StringComparison.Ordinal);
        Assert.Empty(Check.Analyse(mended).Findings);
    }

    /// <summary>Until the program says a unit its lengths are taken in that of the setup: one finding tells that it says none, and no other comes of it.</summary>
    [Fact]
    public void A_program_without_a_unit_is_read_in_the_setup_s()
    {
        var setup = Setup.None with { IsPresent = true, IsInch = true, Stock = new Machine.Geometry.Box3(new(0, 0, -25.4), new(101.6, 76.2, 0)) };
        var analysis = Check.Analyse("G90 G17 G54\nG0 X3.5 Y2.5\nM30", setup: setup);
        Assert.Equal((88.9, 63.5), (Math.Round(analysis.Main.Exit.Position.X, 6), Math.Round(analysis.Main.Exit.Position.Y, 6)));
        Assert.EndsWith("Here they are taken as inches, the unit of the setup.", analysis.Findings.Single(finding => finding.Name == "units-not-set").Message, StringComparison.Ordinal);
        Assert.Equal(3.5, Check.Analyse("G90 G17 G54\nG0 X3.5 Y2.5\nM30").Main.Exit.Position.X);
    }

    // ---- distances left on ----

    [Theory]
    [InlineData("G91 G28 Z0\nG0 X5\nX6", 1)]
    [InlineData("G91\nG28 Z0\nG0 X5", 1)]
    [InlineData("G91 G28 Z0\nG28 X0 Y0\nG90\nG0 X5", 0)]
    [InlineData("G91 G28 Z0\nT2 M6\nG90 G0 X5\nG43 H2 Z5", 0)]
    [InlineData("G91 G28 Z0\nT2 M6\nG0 X5", 1)]
    [InlineData("G91 G28 Z0", 0)]
    [InlineData("G91 G28 Z0\nG91 G0 X-5\nG90", 0)]
    [InlineData("G91 G0 X5\nX5\nG90 G0 X0", 0)]
    [InlineData("G91 G0 X5", 1)]
    public void G91_is_told_where_positions_were_meant(string blocks, int findings) =>
        Assert.Equal(findings, Count("incremental-left-on", Modes + "G0 X1 Y1 Z1\n" + blocks + "\nM30"));

    /// <summary>What a called program switches on stays on (common practice); who called in G90 hardly meant distances.</summary>
    [Theory]
    [InlineData("G0 X1\nM98 P5\nG0 X2\nM30\nO5\nG91 G0 X1\nM99", "7")]
    [InlineData("G0 X1\nM98 P5\nG0 X2\nX3\nM98 P5\nG90 X2\nM30\nO5\nG91 G0 X1\nM99", "7")]
    [InlineData("G0 X1\nM98 P5\nG90 G0 X2\nM30\nO5\nG91 G0 X1\nM99", "")]
    [InlineData("G0 X1\nM98 P5\nG91 G0 X2\nG90\nM30\nO5\nG91 G0 X1\nM99", "")]
    [InlineData("G0 X1\nM98 P5\nG91 G28 Z0\nG90\nM30\nO5\nG91 G0 X1\nM99", "")]
    [InlineData("G0 X1\nG91\nM98 P5 L3\nX2\nG90\nM30\nO5\nG0 X1\nM99", "")]
    [InlineData("G0 X1\nM98 P5 L3\nG90 X2\nM30\nO5\nG91 G0 X1\nM99", "")]
    [InlineData("G0 X1\nM98 P5\nG0 X2\nM30\nO5\nG91 G0 X1\nG90\nM99", "")]
    public void G91_that_a_called_program_leaves_on_is_told_at_the_caller_s_first_move(string blocks, string lines)
    {
        var found = Check.Of("incremental-left-on", "G21 G90 G17 G54\nT1 M6\nM3 S500\nG43 H1 Z5\n" + blocks);
        Assert.Equal(lines, string.Join(' ', found.Select(finding => finding.Line + 1)));
    }

    [Fact]
    public void A_program_in_distances_throughout_is_left_alone() =>
        Assert.Empty(Check.Of("incremental-left-on", "G21 G91 G17 G54\nG28 Z0\nM3 S500\nG0 X1 Y1\nG28 Z0\nG91 G0 X1\nM5\nM30"));
}
