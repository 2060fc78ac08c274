using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests;

/// <summary>Which coordinates a place is told in. NISTIR 6556 §3.5.13 and §3.5.18: a work offset and G92 give places other numbers, nothing moves; G52 likewise (common practice).
/// G55 lies 100, 20 and 10 mm from G54, in which the clamp is measured.</summary>
public sealed class WorkCoordinatesTests
{
    const string Setup = """
        { "stock": { "min": [0, 0, -20], "max": [200, 100, 0] }, "clearance": 2,
          "obstacles": [ { "name": "C2", "min": [110, 30, 0], "max": [140, 60, 30] } ],
          "workOffsets": { "G54": [-500, -300, -400], "G55": [-400, -280, -390] },
          "tools": [ { "number": 1, "kind": "drill", "diameter": 8, "pointAngle": 118, "fluteLength": 60, "length": 120, "lengthOffset": 1 } ] }
        """;

    const string Start = "G21 G17 G90 G94 G40 G49 G80 G54\nT1 M6\nG0 X20 Y20 S900 M3\nG43 H1 Z50 M8\n";
    const string First = "G98 G81 X20 Y20 R2 Z-10 F100\n";
    const string End = "G80 G0 Z60 M9\nM5\nM30\n";

    static string[] Messages(string rule, string blocks) => [.. Programs.Of(rule, Start + blocks + End, Setup).Select(finding => finding.Message)];

    [Theory]
    [InlineData("G55 X20 Y20 Z-20 R-8\n", "X20 Y20 (G55)", "Z20", "Z-20")]
    [InlineData("G80\nG52 X100 Y20 Z10\nG98 G81 X20 Y20 Z-20 R-8\n", "X20 Y20 (G54 shifted X100 Y20 Z10 by G52)", "Z20", "Z-20")]
    [InlineData("G80\nG0 X0 Y0\nG92 X-100 Y-20\nG98 G81 X20 Y20 Z-10 R2\n", "X20 Y20 (G54 shifted X100 Y20 by G92)", "Z30", "Z-10")]
    [InlineData("G80\nG52 X50\nG0 X0 Y0\nG92 X-50 Y-20\nG98 G81 X20 Y20 Z-10 R2\n", "X20 Y20 (G54 shifted X50 by G52 and X50 Y20 by G92)", "Z30", "Z-10")]
    [InlineData("G80\nG10 L2 P1 X-400 Y-280\nG98 G81 X20 Y20 Z-10 R2\n", "X20 Y20 (G54 moved X100 Y20 by the program)", "Z30", "Z-10")]
    public void A_place_says_its_work_offset_and_what_shifts_it(string blocks, string place, string meets, string bottom) =>
        Assert.Equal([$"The hole at {place} lies under C2: the tool meets it at {meets} on its way down to {bottom}."], Messages("hole-under-obstacle", First + blocks));

    [Fact] // The hole at X120 Y40 of G54, before anything else is in force: its name hangs on what comes behind it.
    public void What_comes_later_makes_the_first_offset_worth_a_name()
    {
        const string under = "G98 G81 X120 Y40 R2 Z-10 F100\n";
        Assert.StartsWith("The hole at X120 Y40 (G54) lies", Assert.Single(Messages("hole-under-obstacle", under + "G55 X60 Y20\n")), StringComparison.Ordinal);
        Assert.StartsWith("The hole at X120 Y40 lies", Assert.Single(Messages("hole-under-obstacle", under)), StringComparison.Ordinal);
        // Set, and nothing done under it.
        Assert.StartsWith("The hole at X120 Y40 lies", Assert.Single(Messages("hole-under-obstacle", under + End.Replace("M5", "G55 M5", StringComparison.Ordinal))), StringComparison.Ordinal);
    }

    [Theory] // Beside figures of the setup, which are meant in its frame, those of another offset would be taken for the same.
    [InlineData("G54", " (G55)")]
    [InlineData("G55", "")]
    public void The_only_work_offset_needs_no_name_where_the_setup_is_meant_in_it(string frame, string name) => Assert.StartsWith(
        $"The hole at X20 Y20{name} lies under C2",
        Assert.Single(Programs.Of(
            "hole-under-obstacle", "G21 G17 G90 G94 G40 G49 G80\nG91 G28 Z0\nG90\nT1 M6\nG0 G55 X20 Y20 S900 M3\nG43 H1 Z50 M8\n" + First + End,
            (frame == "G54" ? Setup : Setup.Replace("\"min\": [110, 30, 0], \"max\": [140, 60, 30]", "\"min\": [10, 10, 0], \"max\": [40, 40, 30]", StringComparison.Ordinal))
                .Replace("\"clearance\": 2", $"\"clearance\": 2, \"frame\": \"{frame}\"", StringComparison.Ordinal))).Message,
        StringComparison.Ordinal);

    [Fact]
    public void A_shift_taken_back_leaves_the_work_offset_as_it_was()
    {
        var messages = Messages("hole-under-obstacle", "G52 X100\nG0 X-40 Y80\nG52 X0\nG98 G81 X120 Y40 R2 Z-10 F100\n");
        Assert.StartsWith("The hole at X120 Y40 (G54) lies", Assert.Single(messages), StringComparison.Ordinal);
    }

    [Fact]
    public void Amounts_are_in_the_unit_of_the_program() => Assert.Contains(
        "X0.7874 Y0.7874 (G54 shifted X4 Y1 by G52)",
        Assert.Single(Messages("hole-under-obstacle", "G20\nG52 X4 Y1\nG98 G81 X0.7874 Y0.7874 Z-0.4 R0.1 F4\n")), StringComparison.Ordinal);

    [Fact] // What the tool stands at is not known, nor how far G92 shifts.
    public void A_shift_of_unknown_amount_has_no_figures() => Assert.Contains(
        "The cycle starts at Z1 (G54 shifted by G92), 1 mm below its R level Z2",
        Assert.Single(Programs.Of("initial-level-below-r", "G21 G17 G90 G94 G40 G49 G80 G54\nG92 X0 Y0 Z1\nT1 M6\nS900 M3\n" + First + End)).Message, StringComparison.Ordinal);

    [Fact] // Once for a way whose ends have it in common, and behind the place where the message has only one.
    public void A_name_is_said_once()
    {
        var messages = Messages("hop-hits-obstacle", "G55\nG98 G81 X-20 Y20 R2 Z-10 F100\nG99 X0\nX60\n" + "G80\nG54\nG0 X10 Y10\n");
        Assert.StartsWith("The traverse from X0 Y20 to X60 Y20 (G55) at Z2 runs into C2", Assert.Single(messages), StringComparison.Ordinal);
        Assert.Single(messages, message => message.Split('(').Length == 2);
    }

    [Fact] // The same block under two work offsets: each of its runs is told in its own.
    public void A_subprogram_has_the_work_offset_of_each_call()
    {
        var text = Start + "M98 P100\nG55 G0 X20 Y20\nM98 P100\n" + End + "O100\nG98 G81 X20 Y20 Z-10 R2 F100\nG80\nM99\n";
        Assert.Contains("X20 Y20 (G55) lies under C2", Assert.Single(Programs.Of("hole-under-obstacle", text, Setup)).Message, StringComparison.Ordinal);
        Assert.Equal(["G54", "G55"], HoleTable.Of(Programs.Analyse(text, Setup).Main).Select(row => row.Coordinates.Name()));
    }

    [Fact] // Of the drawing's holes one is made under each work offset, and one under none: that is a place of the setup's frame.
    public void Holes_of_the_drawing_are_told_where_the_program_has_them()
    {
        var setup = Setup.Replace("110, 30", "110, 80", StringComparison.Ordinal).Replace("60, 30]", "90, 30]", StringComparison.Ordinal).Insert(Setup.LastIndexOf('}'), """, "holes": [ { "x": 20, "y": 20, "diameter": 9 }, { "x": 120, "y": 40, "diameter": 9 }, { "x": 180, "y": 80, "diameter": 5 } ] """);
        var text = Start + First + "G55 X20 Y20 Z-20 R-8\n" + End;
        Assert.StartsWith("The 2 holes at X20 Y20 (G54), X20 Y20 (G55) are made with 8 mm by T1", Assert.Single(Programs.Of("hole-wrong-size", text, setup)).Message, StringComparison.Ordinal);
        Assert.StartsWith("The drawing's hole at X180 Y80 (G54) is not made", Assert.Single(Programs.Of("hole-missing", text, setup)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_level_of_the_machine_has_no_name() => Assert.All(
        Programs.Of("tool-change-low", Start + First + "G80\nG55 G0 Z40\nT2 M6\n" + End, Setup), finding => Assert.Matches(@"at machine Z-?[\d.]+, ", finding.Message));

    [Theory] // An edit far behind a finding gives it its name, and takes it back.
    [InlineData(10)]
    [InlineData(4000)]
    public void An_edit_elsewhere_tells_places_anew(int between)
    {
        var text = Start + "G98 G81 X120 Y40 R2 Z-10 F100\nG80\n" + string.Concat(Enumerable.Range(0, between).Select(i => $"G0 X{i % 50}\n")) + "(HERE)\nG0 X30\n" + End;
        var before = Programs.Analyse(text, Setup);
        Assert.Contains(before.Findings, finding => finding.Message.StartsWith("The hole at X120 Y40 lies", StringComparison.Ordinal));
        var at = text.IndexOf("(HERE)", StringComparison.Ordinal);
        var after = before.WithText(before.Text.WithChange(at, at + 6, "G55"u8));
        Assert.Contains(after.FirstLook(before), finding => finding.Message.StartsWith("The hole at X120 Y40 (G54) lies", StringComparison.Ordinal));
        Assert.Equal(Programs.Analyse(after.Text.ToString(), Setup).Findings.ToArray(), after.Findings.ToArray());
        var back = after.WithText(before.Text);
        Assert.Equal(before.Findings.ToArray(), back.Findings.ToArray());
    }

    [Theory]
    [InlineData("as it is", null, "as it is")]
    [InlineData("at X1\uFDD0G54\uFDD1 and X2\uFDD0G54\uFDD1", null, "at X1 (G54) and X2")]
    [InlineData("at X1\uFDD0G54\uFDD1 and X2\uFDD0G55\uFDD1", null, "at X1 (G54) and X2 (G55)")]
    [InlineData("at X1\uFDD0G54\uFDD1 and X2\uFDD0G55\uFDD1", "G54", "at X1 and X2 (G55)")]
    [InlineData("at X1\uFDD0G54\uFDD1", "", "at X1")]
    [InlineData("at X1\uFDD0work offset not known\uFDD1", "G54", "at X1")]
    [InlineData("at X1\uFDD0work offset not known\uFDD1", null, "at X1 (work offset not known)")]
    [InlineData("a sign \uFDD0 of the program", null, "a sign \uFDD0 of the program")]
    public void Marks_become_names(string message, string? plain, string told) => Assert.Equal(told, PlaceNames.Told(message, plain));
}
