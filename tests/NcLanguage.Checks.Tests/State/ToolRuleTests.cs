using System.Collections.Immutable;
using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.State;

/// <summary>Rules on tools, their lengths and their change, and on words and values.</summary>
public sealed class ToolRuleTests
{
    const string Modes = "G21 G90 G17 G54\n";

    static readonly Setup Carousel = Setup.None with
    {
        IsPresent = true,
        Tools = [new Tool { Number = 1, Length = 90, LengthOffset = 21 }, new Tool { Number = 2, Length = 120 }],
        WorkOffsets = ImmutableDictionary<int, Point3>.Empty.Add(54, new Point3(-300, -200, -400)),
    };

    static int Count(string rule, string program, string readings = "", Setup? setup = null) => Check.Of(rule, program, readings, setup).Count;

    // ---- length offsets ----

    [Theory]
    [InlineData("T1 M6\nG0 X1\nZ5\nZ4\nG1 Z-1 F100", 1)]
    [InlineData("T1 M6\nG0 X1\nG43 H1 Z5\nZ4", 0)]
    [InlineData("T1 M6\nG0 X1\nG43 H1\nZ5", 0)]
    [InlineData("T1 M6\nG49\nG0 Z5", 1)]
    [InlineData("T1 M6\nG43 H0 Z5\nZ4", 1)] // NISTIR 6556 §3.5.11: H0 is an offset of zero
    [InlineData("T1 M6\nG43 H0\nG0 Z5", 1)]
    [InlineData("T1 M6\nG43 H0\nG43 H1 G0 Z5", 0)]
    [InlineData("T1 M6\nG43 H1 G0 Z5\nG43 H0\nZ50", 1)]
    [InlineData("T1 M6\nG43 H1 G0 Z5\nG49\nZ50", 1)]
    [InlineData("T1 M6\nG0 X1\nG43 H1 Z5\nG28 Z5\nT2 M6\nG0 X1\nZ5", 1)]
    [InlineData("T1 M6\nG53 G0 Z0\nG28\nG43 H1 Z5", 0)]
    [InlineData("T1 M6\nG1 X1 F100", 1)]
    [InlineData("T1 M6\nG81 X1 Z-1 R1 F100", 1)]
    [InlineData("G0 Z5\nG1 Z-1 F100", 0)]
    [InlineData("T0 M6\nG0 Z5", 0)]
    public void A_tool_without_its_length_is_told_once(string blocks, int findings) =>
        Assert.Equal(findings, Count("length-offset-missing", Modes + blocks + "\nM30"));

    [Fact]
    public void No_length_offset_is_missed_where_it_comes_with_the_tool() =>
        Assert.Equal(0, Count("length-offset-missing", Modes + "T1 M6\nG0 Z5\nM30", "lengthOffset=withTool"));

    [Fact]
    public void The_length_offset_added_is_the_setup_s() =>
        Assert.Contains("G0 Z5 G43 H21 (down)", Check.Fixed("length-offset-missing", Modes + "T1 M6\nG0 Z5 (down)\nM30", setup: Carousel), StringComparison.Ordinal);

    [Fact]
    public void Without_the_setup_s_tool_a_length_offset_is_a_guess()
    {
        const string Program = Modes + "T1 M6\nG0 Z5\nM30";
        var listed = Check.Analyse(Program, setup: Carousel);
        Assert.Equal(FixSafety.Safe, listed.FixesOf(listed.Findings.Single(f => f.Name == "length-offset-missing")).Single().Safety);
        var unlisted = Check.Analyse(Program);
        var fix = unlisted.FixesOf(unlisted.Findings.Single(f => f.Name == "length-offset-missing")).Single();
        Assert.Equal(FixSafety.Choice, fix.Safety);
        Assert.Contains("by custom", fix.Title, StringComparison.Ordinal);
        Assert.Contains("by custom", Check.Of("length-offset-mismatch", Modes + "G0\nT1 M6\nG43 H2 Z5\nM30").Single().Message, StringComparison.Ordinal);
        Assert.DoesNotContain("by custom", Check.Of("length-offset-mismatch", Modes + "G0\nT1 M6\nG43 H2 Z5\nM30", setup: Carousel).Single().Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("T1 M6\nG43 H21 Z5", 0)]
    [InlineData("T1 M6\nG43 H1 Z5", 1)]
    [InlineData("T2 M6\nG43 H2 Z5", 0)]
    [InlineData("T2 M6\nG43 H0 Z5", 0)] // no other tool's: length-offset-missing
    [InlineData("T2\nG43 H1 Z5", 0)]
    [InlineData("T2 M6\nG43 H#1 Z5", 0)]
    public void An_offset_of_another_tool_is_told(string blocks, int findings) =>
        Assert.Equal(findings, Count("length-offset-mismatch", Modes + "G0\n" + blocks + "\nM30", setup: Carousel));

    /// <summary>T0 is an empty spindle (NISTIR 6556 §3.7.3, from memory), and has no length.</summary>
    [Theory]
    [InlineData("T0 M6\nG43 H21 Z5", 1)]
    [InlineData("T0 M6\nG43 H0 Z5", 0)]
    [InlineData("T0 M6\nG49", 0)]
    [InlineData("T0 M6\nT1 M6\nG43 H21 Z5", 0)]
    public void An_empty_spindle_has_no_length(string blocks, int findings)
    {
        var found = Check.Of("length-offset-mismatch", Modes + "G0\n" + blocks + "\nM30", setup: Carousel);
        Assert.Equal(findings, found.Count);
        Assert.All(found, finding => Assert.Equal((Severity.Error, "H21 is a tool's length, and the spindle is empty: T0 is no tool."), (finding.Severity, finding.Message)));
    }

    /// <summary>The machine goes to the programmed Z plus the length in force (NISTIR 6556 §3.5.11); the tip is below that by the tool's own.</summary>
    [Theory]
    [InlineData("T3 M6\nG43 H1 Z5", Severity.Error, "the tip runs 10 mm lower than the program says")]
    [InlineData("T1 M6\nG43 H3 Z5", Severity.Warning, "the tip runs 10 mm higher than the program says")]
    [InlineData("T1 M6\nG43 H2 Z5", Severity.Warning, "both are as long in the setup")]
    [InlineData("G10 L10 P1 R130.5\nT3 M6\nG43 H1 Z5", Severity.Warning, "the tip runs 0.5 mm higher than the program says")]
    [InlineData("T1 M6\nG43 H4 Z5", Severity.Warning, "Z is off by the difference of the two lengths")]
    public void It_is_said_how_far_off_the_tip_is(string blocks, Severity severity, string amount)
    {
        var setup = Setup.None with { Tools = [new Tool { Number = 1, Length = 120 }, new Tool { Number = 2, Length = 120 }, new Tool { Number = 3, Length = 130 }, new Tool { Number = 4 }] };
        var found = Assert.Single(Check.Of("length-offset-mismatch", Modes + "G0\n" + blocks + "\nM30", setup: setup));
        Assert.Equal(severity, found.Severity);
        Assert.Contains(amount, found.Message, StringComparison.Ordinal);
    }

    /// <summary>Under M6 a T only readies a tool (NISTIR 6556 §3.6.3). The length of the tool that is called and not changed to: either M6 is missing, or the H is too early.</summary>
    [Fact]
    public void The_length_of_a_tool_that_is_called_and_not_changed_to()
    {
        const string Program = Modes + "G0\nT1 M6\nG43 H21 Z5\nT2 (NEXT)\nG43 H2 Z5\nM30";
        var analysis = Check.Analyse(Program, setup: Carousel);
        var found = Assert.Single(analysis.Findings, finding => finding.Name == "length-offset-mismatch");
        Assert.Contains("T2 is called, but no M6 has changed to it", found.Message, StringComparison.Ordinal);
        var fixes = analysis.FixesOf(found).ToList();
        Assert.Equal(["Change to the tool with M6 in line " + (found.Line), "Write H21"], fixes.Select(fix => fix.Title));
        Assert.All(fixes, fix => Assert.Equal(FixSafety.Choice, fix.Safety));
        Assert.Contains("\nT2 M6 (NEXT)\n", Check.Fixed("length-offset-mismatch", Program, setup: Carousel), StringComparison.Ordinal);
        // A tool readied for later is none: another's length is another's.
        var other = Check.Analyse(Modes + "G0\nT1 M6\nT2\nG43 H3 Z5\nM30", setup: Carousel);
        Assert.DoesNotContain("no M6", Assert.Single(other.Findings, finding => finding.Name == "length-offset-mismatch").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void H0_is_mended_to_the_tool_s()
    {
        Assert.Contains("G43 H21 Z5", Check.Fixed("length-offset-missing", Modes + "T1 M6\nG0 G43 H0 Z5\nM30", setup: Carousel), StringComparison.Ordinal);
        Assert.Contains("G43 H0\nG0 Z5 G43 H21", Check.Fixed("length-offset-missing", Modes + "T1 M6\nG43 H0\nG0 Z5\nM30", setup: Carousel), StringComparison.Ordinal);
    }

    [Fact]
    public void A_wrong_offset_is_mended_safely_only_where_the_setup_lists_it()
    {
        const string Program = Modes + "G0\nT1 M6\nG43 H2 Z5\nM30";
        var listed = Check.Analyse(Program, setup: Carousel);
        Assert.Equal(FixSafety.Safe, listed.FixesOf(listed.Findings.Single(f => f.Name == "length-offset-mismatch")).Single().Safety);
        var unlisted = Check.Analyse(Program);
        Assert.Equal(FixSafety.Choice, unlisted.FixesOf(unlisted.Findings.Single(f => f.Name == "length-offset-mismatch")).Single().Safety);
    }

    // ---- where the tool is changed ----

    [Theory]
    [InlineData("T1 M6", 0)]
    [InlineData("T1 M6\nG43 H1 Z5\nT2 M6", 1)]
    [InlineData("T1 M6\nG43 H1 Z5\nG28 Z5\nT2 M6", 0)]
    [InlineData("T1 M6\nG43 H1 Z5\nG91 G28 Z0\nG90 T2 M6", 0)]
    [InlineData("T1 M6\nG43 H1 Z5\nG91 G30 Z0\nG90 T2 M6", 0)]
    [InlineData("T1 M6\nG43 H1 Z5\nG53 Z-10\nT2 M6", 0)]
    [InlineData("T1 M6\nG43 H1 Z5\nG28 Z5\nX9 Y9\nT2 M6", 0)]
    [InlineData("T1 M6\nG43 H1 Z5\nG28 Z5\nZ50\nT2 M6", 1)]
    [InlineData("T1 M6\nG43 H1 Z5\nT1 M6", 0)]
    [InlineData("G92 Z0\nT1 M6", 0)]
    public void A_change_down_at_the_work_is_told(string blocks, int findings) =>
        Assert.Equal(findings, Count("tool-change-low", Modes + "G0 X1\n" + blocks + "\nM30"));

    [Theory]
    [InlineData("G0 Z200", 1)]
    [InlineData("G0 Z310", 0)]
    public void With_offsets_in_the_setup_the_machine_level_decides(string retract, int findings) =>
        Assert.Equal(findings, Count("tool-change-low", Modes + $"G0 X1\nT1 M6\nG43 H21 Z5\n{retract}\nT2 M6\nM30", setup: Carousel));

    [Fact]
    public void A_profile_of_its_own_says_where_the_change_position_is()
    {
        var machine = MachineProfile.IsoMill with { Path = "shop.machine.json", IsChosen = true };
        var finding = Check.Of("tool-change-low", Modes + "G0 X1\nT1 M6\nG43 H1 Z5\nG53 Z-110\nT2 M6\nM30", machine: machine).Single();
        Assert.Contains("110 mm below", finding.Message, StringComparison.Ordinal);
    }

    // ---- words without effect ----

    [Theory]
    [InlineData("G0 X1 H1", 1)]
    [InlineData("G0 X1 D1", 1)]
    [InlineData("G40 D0", 0)]
    [InlineData("G49 H0", 0)]
    [InlineData("G0 X1 R5", 1)]
    [InlineData("G2 X9 R5 I2 F100", 1)]
    [InlineData("G2 X9 I4.5 J0 F100", 0)]
    [InlineData("G81 X1 Z-1 R1 P2 F100", 1)]
    [InlineData("G10 L2 P1 X0 Y0", 0)]
    [InlineData("G82 X1 Z-1 R1 P2 F100", 0)]
    [InlineData("G68 X0 Y0 R30", 0)]
    [InlineData("G51 X0 Y0 P2", 0)]
    [InlineData("G51.1 X0 Y0", 0)]
    [InlineData("G77 P2", 0)]
    [InlineData("G30 P2 Z5", 0)]
    [InlineData("M98 P100 L2", 0)]
    [InlineData("M99 P10", 0)]
    [InlineData("G65 P100 A1 B2 Q3", 0)]
    [InlineData("G4 X1", 0)]
    [InlineData("G64 P0.01", 0)]
    public void An_idle_word_is_told(string block, int findings) =>
        Assert.Equal(findings, Count("word-without-effect", Modes + "G0 X0 Y0 Z1\n" + block + "\nM30"));

    [Theory]
    [InlineData("G43 Z5", true, FixSafety.Safe)]
    [InlineData("G43 Z5", false, FixSafety.Choice)]
    [InlineData("G43 (length H2 Z5", true, FixSafety.Choice)]
    public void H_is_added_for_certain_only_where_the_setup_has_the_tool_and_no_comment_may_hold_it(string block, bool isListed, FixSafety safety)
    {
        var analysis = Check.Analyse(Modes + $"T1 M6\nG0 X0 Y0\n{block}\nM30", setup: isListed ? Carousel : null);
        Assert.Equal(safety, analysis.FixesOf(analysis.Findings.Single(f => f.Name == "word-missing")).Single().Safety);
    }

    // ---- what is allowed ----

    [Theory]
    [InlineData("S-1", "not negative")]
    [InlineData("T1.5", "whole number")]
    [InlineData("F-100", "not negative")]
    [InlineData("G41 D-1", "whole number")]
    [InlineData("G10 L2 P10 X0", "1 to 9")]
    [InlineData("G10 L10 P1.5 R3", "whole number")]
    [InlineData("G54.1 P0", "from 1")]
    [InlineData("G51 P0", "factor of 0")]
    public void What_is_allowed_is_said(string block, string said) =>
        Assert.Contains(said, Check.Of("value-not-allowed", Modes + "G0 X0 Y0 Z1\n" + block + "\nM30").Single().Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("G93\nG81 X1 Z-1 R1 F2\nX2\nX3", 1)]
    [InlineData("G41 D1\nG81 X1 Z-1 R1 F2\nX2", 1)]
    [InlineData("G41 D1\nG42 D1", 1)]
    [InlineData("G41 D1\nG55", 1)]
    [InlineData("G41 D1\nG0 G53 Z0", 1)]
    [InlineData("G41 D1\nG40\nG42 D1\nG40\nG55", 0)]
    [InlineData("G93\nG38.2 Z-5 F10", 1)]
    [InlineData("G38.2 Z0.9 F10", 1)]
    [InlineData("G41 D1\nG92 X0", 1)]
    [InlineData("G41 D1\nG18", 1)]
    [InlineData("G51 X0 Y0 I2\nG3 X0 Y0 I5 F100", 1)]
    [InlineData("G51 X0 Y0 P2\nG3 X0 Y0 I5 F100", 0)]
    [InlineData("G93\nG94\nG81 X1 Z-1 R1 F2", 0)]
    public void A_code_that_the_modes_forbid_is_told_once(string blocks, int findings) =>
        Assert.Equal(findings, Count("not-allowed-here", Modes + "G0 X0 Y0 Z1\n" + blocks + "\nM30"));

    [Theory]
    [InlineData("G4", 1)]
    [InlineData("G43 Z5", 1)]
    [InlineData("G2 X5 F100", 1)]
    [InlineData("G18 G2 X5 J5 F100", 1)]
    [InlineData("G92", 1)]
    [InlineData("G52", 1)]
    [InlineData("G10 P1 X5", 1)]
    [InlineData("G10 L2 X5", 1)]
    [InlineData("G10 L10 P1", 1)]
    [InlineData("G51.1", 1)]
    [InlineData("G50.1", 0)]
    [InlineData("G51 X0 Y0", 1)]
    [InlineData("G68 X0 Y0", 1)]
    [InlineData("G54.1", 1)]
    [InlineData("G38.2 F10", 1)]
    [InlineData("G31 F10", 1)]
    [InlineData("G33 Z-5", 1)]
    [InlineData("M6", 1)]
    [InlineData("T1 M6", 0)]
    [InlineData("G33 Z-5 F1", 0)]
    [InlineData("G51 I-1", 0)]
    [InlineData("G81 X1 Z-1 F100", 0)]
    [InlineData("G2 X5 R5 F100", 0)]
    public void A_word_that_a_code_needs_is_missed(string block, int findings) =>
        Assert.Equal(findings, Count("word-missing", Modes + "G0 X0 Y0 Z1\n" + block + "\nM30"));

    [Theory]
    [InlineData("G91 G99 G81 X1 Z-1 R-1 F100 L99999999", 1)]
    [InlineData("G68 X0 Y0 R30\nG0 X5\nG69", 0)]
    [InlineData("G51 X0 Y0 P2\nG0 X5\nG50", 0)]
    [InlineData("G16\nG0 X5 Y30\nG15", 0)]
    [InlineData("G10 L2 P1 X5\nG0 X5", 0)]
    [InlineData("G10 L20 P1 X5\nG0 X5", 0)]
    [InlineData("G10 L10 P1 R80", 0)]
    [InlineData("G10 L3 P1 R80\nG10 L2 P#9 X1", 1)]
    [InlineData("G38.2 Z-5 F10\nG0 X5", 0)]
    [InlineData("G31 Z-5 F10", 0)]
    [InlineData("G96 S50\nG97 S500", 0)]
    [InlineData("M3 S500\nG33 Z-5 K1", 0)]
    [InlineData("IF [#2 GT 2] GOTO 10\nN10 G0 X5", 1)]
    [InlineData("G41 D1 G1 X5 F100\nG40", 1)]
    [InlineData("#1=5\nG0 X#1", 0)]
    [InlineData("G0 X[2*3]", 0)]
    public void What_is_not_followed_is_noted_where_it_begins(string blocks, int findings) =>
        Assert.Equal(findings, Count("path-not-known", Modes + "G0 X0 Y0 Z1\n" + blocks + "\nM30"));

    /// <summary>H and D are both another tool's: two words speak against the T (common practice: the three have one number).</summary>
    [Theory]
    [InlineData("G43 H2 Z5\nG1 Z-1\nG41 D2 X0 Y0\nG40 X-9", "Write T2 in line 6")]
    [InlineData("G43 H2 Z5\nG1 Z-1\nG41 D1 X0 Y0\nG40 X-9", "Write H1")]
    public void Where_both_offsets_are_another_tool_s_the_T_is_mended(string blocks, string title)
    {
        var setup = Setup.None with
        {
            IsPresent = true,
            Tools = [new Tool { Number = 1, Diameter = 10, Length = 90, LengthOffset = 1, RadiusOffset = 1 }, new Tool { Number = 2, Diameter = 12, Length = 80, LengthOffset = 2, RadiusOffset = 2 }],
        };
        var program = "G21 G90 G17 G54\nG94\nG40\nM3 S900\nG0\nT1 M6\nF200\nX-9 Y-9\n" + blocks + "\nM5\nM30";
        var analysis = Check.Analyse(program, setup: setup);
        foreach (var finding in analysis.Findings.Where(found => found.Name is "length-offset-mismatch" or "radius-offset-mismatch"))
        {
            Fix[] fixes = [.. analysis.FixesOf(finding)];
            Assert.Equal(title, fixes[0].Title);
            Assert.Equal(fixes.Length > 1 ? FixSafety.Choice : FixSafety.Safe, fixes[^1].Safety);
            var mended = Check.Analyse(TextEdits.Apply(analysis.Text, fixes[0].Edits).ToString(), setup: setup);
            Assert.DoesNotContain(mended.Findings, found => found.Name is "length-offset-mismatch" or "radius-offset-mismatch");
        }
    }
}
