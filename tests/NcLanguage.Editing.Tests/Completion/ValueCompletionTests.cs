using System.Globalization;
using NcLanguage.Checks.Analysis;
using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Completions;

/// <summary>Numbers from the setup, the cutting data and the drawing.</summary>
public sealed class ValueCompletionTests
{
    static string[] Values(string program, string? setup = Typist.Plate, Machine.Profiles.MachineProfile? machine = null) =>
        [.. Typist.At(program, setup, machine).Entries.Where(entry => entry.Kind == CompletionKind.Value).Select(entry => entry.Label)];

    static double Number(string label) => double.Parse(label.AsSpan(1), CultureInfo.InvariantCulture);

    [Fact]
    public void T_offers_the_tools_of_the_setup()
    {
        Assert.Equal(["T4", "T5", "T6", "T7"], Values("T|"));
        Assert.Equal("drill 6.8 mm", Typist.At("T|", Typist.Plate).Entry("T5").Detail);
        Assert.Equal("tap 8 mm × 1.25 mm", Typist.At("T|", Typist.Plate).Entry("T6").Detail);
        Assert.Equal(["T5", "T6", "T7", "T4"], Values("T4 M6\nT|"));
        Assert.Equal(["T5"], Values("T5|"));
        Assert.Equal("T04", Values("T01 M06\nT|")[0]);
        Assert.Empty(Values("T|", setup: null));
    }

    [Fact]
    public void H_and_D_offer_the_offsets_of_the_tool_in_the_spindle_first()
    {
        Assert.Equal(["H14", "H5", "H6", "H7"], Values("T4 M6\nG43 H|"));
        Assert.Equal(["H7", "H14", "H5", "H6"], Values("T7 M6\nG43 H|"));
        Assert.Equal("D27", Values("T7 M6\nG41 D|")[0]);
        Assert.Equal("H6", Values("T6 G43 H|")[0]);
    }

    /// <summary>200 to 300 ft/min for aluminium with a drill of high-speed steel (U.S. Navy training course on drilling), and n = 12·v/(π·D) of the open
    /// textbook Machining 1: 2,853, 3,566 and 4,280 rev/min at 6.8 mm.</summary>
    [Theory]
    [InlineData("G21")]
    [InlineData("G20")]
    public void S_comes_from_the_cutting_data_for_tool_and_material(string units)
    {
        var speeds = Values($"{units} G90\nT5 M6\nS|").Select(Number).ToArray();
        double Turns(double feetPerMinute) => 12 * feetPerMinute / (Math.PI * 6.8 / 25.4);
        Assert.Equal(3, speeds.Length);
        Assert.InRange(speeds[0], Turns(250) - 25, Turns(250) + 25);
        Assert.InRange(speeds[1], Turns(200) - 25, Turns(200) + 25);
        Assert.InRange(speeds[2], Turns(300) - 25, Turns(300) + 25);
        Assert.All(speeds, speed => Assert.Equal(0, speed % 50));
        Assert.Contains(units == "G21" ? "61 to 91.4 m/min" : "200 to 300 ft/min", Typist.At($"{units} G90\nT5 M6\nS|", Typist.Plate).Entries[0].Detail, StringComparison.Ordinal);
        Assert.Contains("U.S. Navy training course on drilling", Typist.At($"{units} G90\nT5 M6\nS|", Typist.Plate).Entries[0].Documentation, StringComparison.Ordinal);
    }

    [Fact]
    public void The_tool_being_changed_to_counts()
    {
        Assert.Equal(Values("G21\nT5 M6\nS|"), Values("G21\nT4 M6\nT5 S|"));
        Assert.NotEqual(Values("G21\nT4 M6\nS|"), Values("G21\nT4 M6\nT5 S|"));
    }

    [Fact]
    public void No_speed_is_faster_than_the_machine_turns()
    {
        var machine = Machine.Profiles.MachineProfile.IsoMill with { IsChosen = true, Spindle = new(100, 3000) };
        Assert.Equal([3000, 2850], Values("G21\nT5 M6\nS|", machine: machine).Select(Number));
    }

    /// <summary>0.004 to 0.007 in a turn for drills from 1/4 to 1/2 in (U.S. Navy training course on drilling): 203 to 356 mm/min at S2000.</summary>
    [Fact]
    public void F_comes_from_the_cutting_data_at_the_speed_in_force()
    {
        Assert.Equal([280, 200, 360], Values(Typist.Drill + "G1 F|").Select(Number));
        Assert.Equal([11, 8, 14], Values(Typist.Drill.Replace("G21", "G20", StringComparison.Ordinal) + "G1 F|").Select(Number));
        Assert.Equal([0.14, 0.1, 0.18], Values(Typist.Drill.Replace("G94", "G95", StringComparison.Ordinal) + "G1 F|").Select(Number));
        Assert.Empty(Values("G21\nT5 M6\nG1 F|"));
        Assert.Empty(Values(Typist.Drill.Replace("G94", "G93", StringComparison.Ordinal) + "G1 F|"));
    }

    /// <summary>NISTIR 6556 §3.5.16.5: one turn feeds one pitch.</summary>
    [Theory]
    [InlineData("G21 G94", "F625")]
    [InlineData("G21 G95", "F1.25")]
    [InlineData("G20 G94", "F24.6063")]
    [InlineData("G20 G95", "F0.0492")]
    public void The_feed_of_a_tap_is_pitch_times_speed(string modes, string expected) =>
        Assert.Equal([expected], Values($"{modes} G90\nT6 M6\nS500 M3\nG84 X1 Z-9 R2 F|"));

    [Fact]
    public void X_offers_the_drawings_holes_that_the_tool_fits_and_has_not_drilled()
    {
        Assert.Equal(["X10 Y12", "X40 Y40", "X40 Y12"], Values(Typist.Drill + "G81 X|"));
        Assert.Equal(["X40 Y40", "X40 Y12"], Values(Typist.Drill + "G81 X10 Y12 Z-11 R2\nX|"));
        Assert.Equal(["X40 Y12"], Values(Typist.Drill + "G81 X10 Y12 Z-11 R2\nX|\nX40 Y40\nG80"));
        Assert.Equal(["X10 Y12", "X40 Y12"], Values(Typist.Drill.Replace("T5", "T6", StringComparison.Ordinal) + "G84 X|"));
        Assert.Equal(4, Values(Typist.Drill.Replace("T5", "T4", StringComparison.Ordinal) + "G82 X|").Length);
        Assert.Equal(["Y40", "Y12"], Values(Typist.Drill + "G81 X40 Y|"));
        Assert.Empty(Values(Typist.Drill + "G1 X|"));
    }

    /// <summary>The clamp reaches from X25 to X45 and from Y0 to Y20, the drill has 6.8 mm.</summary>
    [Theory]
    [InlineData("[25, 0, 0], \"max\": [45, 20, 25]", "under clamp A: hole 2 of the drawing, 6.8 mm, 9 mm deep, M8", true)]
    [InlineData("[25, 0, 0], \"max\": [37, 20, 25]", "the tool meets clamp A: hole 2 of the drawing, 6.8 mm, 9 mm deep, M8", true)]
    [InlineData("[25, 0, 0], \"max\": [35.1, 20, 25]", "1.5 mm from clamp A: hole 2 of the drawing, 6.8 mm, 9 mm deep, M8", true)]
    [InlineData("[25, 0, 0], \"max\": [34.6, 20, 25]", "hole 2 of the drawing, 6.8 mm, 9 mm deep, M8", false)]
    // Lower than the hole is deep, it is no less in the way.
    [InlineData("[25, -5, -12], \"max\": [45, 20, -11]", "under clamp A: hole 2 of the drawing, 6.8 mm, 9 mm deep, M8", true)]
    [InlineData("[25, 0, -30], \"max\": [45, 20, -20]", "hole 2 of the drawing, 6.8 mm, 9 mm deep, M8", false)]
    public void A_place_near_a_clamp_comes_last_and_says_why(string clamp, string detail, bool isLast)
    {
        var setup = Typist.Plate.Replace("[25, 0, 0], \"max\": [45, 20, 25]", clamp, StringComparison.Ordinal).Replace("7.5", "9", StringComparison.Ordinal);
        var answer = Typist.At(Typist.Drill + "G81 X|", setup);
        Assert.Equal(detail, answer.Entry("X40 Y12").Detail);
        Assert.Equal(isLast ? "X40 Y12" : "X40 Y40", answer.Entries.Last(entry => entry.Kind == CompletionKind.Value).Label);
        // Where no letter asks for places, and in a whole block, it is not offered.
        Assert.Equal(!isLast, Values(Typist.Drill + "G81 |", setup).Contains("X40 Y12"));
        var line = Typist.At(Typist.Drill + "G81 X10 Y12 Z-11.05 R2\nG80\n|", setup).Entry("G81 X Y Z R F").NewText;
        Assert.Contains(isLast ? " X${1:40} Y${2:40} " : " X${1:40} Y${2:12} ", line, StringComparison.Ordinal);
    }

    /// <summary>A holder 50 mm wide, 40 mm above the tip, over a clamp 45 mm high: at Z-11.05 it would stand at 28.95 mm.</summary>
    [Fact]
    public void A_holder_that_would_meet_a_clamp_is_told()
    {
        var setup = Typist.Plate.Replace("[25, 0, 0], \"max\": [45, 20, 25]", "[50, 0, 0], \"max\": [60, 20, 45]", StringComparison.Ordinal)
            .Replace("\"length\": 110", "\"length\": 110, \"holderGauge\": 70, \"holderDiameter\": 50", StringComparison.Ordinal);
        Assert.StartsWith("the holder meets clamp A: hole 2", Typist.At(Typist.Drill + "G81 X|", setup).Entry("X40 Y12").Detail, StringComparison.Ordinal);
    }

    /// <summary>Holes 9 and 7.5 mm deep ask a drill of 6.8 mm with a point of 118° for Z-11.05 and Z-9.55 (point: 0.3004 diameters, engineering reference).</summary>
    [Theory]
    [InlineData("Z-11.05", "hole 3 of the drawing, 6.8 mm, 7.5 mm deep", "asks for Z-9.55, the cycle goes to Z-11.05: ")]
    [InlineData("Z-9.55", "hole 3 of the drawing, 6.8 mm, 7.5 mm deep", "")]
    [InlineData("Z-9.7", "hole 3 of the drawing, 6.8 mm, 7.5 mm deep", "")]
    [InlineData("Z-9", "hole 3 of the drawing, 6.8 mm, 7.5 mm deep", "asks for Z-9.55, the cycle goes to Z-9: ")]
    // Through the plate of 12 mm.
    [InlineData("Z-18", "hole 3 of the drawing, 6.8 mm, 12 mm deep", "")]
    [InlineData("Z-12", "hole 3 of the drawing, 6.8 mm, 12 mm deep", "asks for Z-14.05, the cycle goes to Z-12: ")]
    public void A_hole_of_another_depth_than_the_cycle_says_so(string bottom, string hole, string doubt)
    {
        var setup = hole.Contains("12 mm", StringComparison.Ordinal) ? Typist.Plate.Replace("7.5", "12", StringComparison.Ordinal) : Typist.Plate;
        Assert.Equal(doubt + hole, Typist.At(Typist.Drill + $"G81 X100 Y50 {bottom} R2\nX|", setup).Entry("X40 Y40").Detail);
    }

    /// <summary>A thread's hole may be deeper than the thread; the tap itself may not.</summary>
    [Fact]
    public void A_drill_may_go_deeper_than_a_thread()
    {
        Assert.Equal("hole 1 of the drawing, 6.8 mm, 9 mm deep, M8", Typist.At(Typist.Drill + "G81 X100 Y50 Z-11.9 R2\nX|", Typist.Plate).Entry("X10 Y12").Detail);
        Assert.Equal("asks for Z-9, the cycle goes to Z-10: hole 1 of the drawing, 6.8 mm, 9 mm deep, M8",
            Typist.At(Typist.Drill.Replace("T5", "T6", StringComparison.Ordinal) + "G84 X100 Y50 Z-10 R2\nX|", Typist.Plate).Entry("X10 Y12").Detail);
    }

    /// <summary>M8 without a diameter has a tap drill of 6.8 mm (ISO 2306, from memory).</summary>
    [Theory]
    [InlineData("\"drill\", \"diameter\": 6.8", "X10 Y12, X40 Y12")]
    [InlineData("\"drill\", \"diameter\": 5", "X10 Y12, X40 Y12, X90 Y40")]
    [InlineData("\"drill\", \"diameter\": 10", "X90 Y40")]
    [InlineData("\"drill\", \"diameter\": 12", "")]
    [InlineData("\"reamer\", \"diameter\": 10", "X90 Y40")]
    [InlineData("\"reamer\", \"diameter\": 8", "")]
    [InlineData("\"end-mill\", \"diameter\": 8", "X90 Y40")]
    [InlineData("\"boring-bar\", \"diameter\": 16", "")]
    [InlineData("\"countersink\", \"diameter\": 16", "X10 Y12, X40 Y12, X90 Y40")]
    public void Holes_of_another_size_are_not_for_this_tool(string tool, string places)
    {
        var setup = $$"""
            { "frame": "G54", "stock": { "min": [0, 0, -12], "max": [120, 60, 0] }, "tools": [ { "number": 5, "kind": {{tool}} } ],
              "holes": [ { "x": 10, "y": 12, "thread": "M8" }, { "x": 40, "y": 12, "diameter": 6.8 }, { "x": 90, "y": 40, "diameter": 10 } ] }
            """;
        Assert.Equal(places, string.Join(", ", Values(Typist.Drill + "G81 X|", setup)));
    }

    /// <summary>2.5 mm above the stock are 0.0984252 in: written lower, the tool would come nearer than was asked for.</summary>
    [Fact]
    public void A_level_is_never_written_lower_than_it_is() =>
        Assert.Equal(["R0.0985"], Values(Typist.Drill.Replace("G21", "G20", StringComparison.Ordinal) + "G81 R|", Typist.Plate.Replace("\"clearance\": 2", "\"clearance\": 2.5", StringComparison.Ordinal)));

    [Fact]
    public void Holes_drilled_by_another_tool_are_still_to_be_drilled() =>
        Assert.Equal(3, Values(Typist.Drill.Replace("T5", "T4", StringComparison.Ordinal) + "G82 X10 Y12 Z-3 R2\nX40\nY40\nG80\nT5 M6\nG81 X|").Length);

    /// <summary>What is put in leads to the drawing's holes, however the control reads it.</summary>
    [Theory]
    [InlineData("G90", "holePositions=distanceMode")]
    [InlineData("G91", "holePositions=distanceMode")]
    [InlineData("G90", "holePositions=incremental")]
    public void The_places_put_in_are_those_of_the_drawing(string distance, string reading)
    {
        var machine = Editor.Reading(reading);
        var levels = distance == "G91" ? "Z-13 R-48" : "Z-11 R2";
        var program = Typist.Drill + $"{distance} G81 X| {levels}";
        foreach (var label in Values(program, machine: machine))
        {
            var hole = Assert.Single(HoleTable.Of(Editor.Analyse(Typist.Accept(program, label, Typist.Plate, machine), Typist.Plate, machine).Main));
            Assert.Contains((hole.Hole.X, hole.Hole.Y), new[] { (10.0, 12.0), (40, 12), (40, 40) });
        }
        var second = Typist.Drill + $"{distance} G81 X10 Y12 {levels}\nX|";
        Assert.NotEmpty(Values(second, machine: machine));
        foreach (var label in Values(second, machine: machine))
        {
            var holes = HoleTable.Of(Editor.Analyse(Typist.Accept(second, label, Typist.Plate, machine), Typist.Plate, machine).Main);
            Assert.Contains((holes[1].Hole.X, holes[1].Hole.Y), new[] { (40.0, 12.0), (40, 40) });
        }
    }

    [Fact]
    public void Places_are_counted_from_the_datum_in_force()
    {
        var setup = Typist.Plate.Replace("\"clearance\": 2", "\"clearance\": 2, \"workOffsets\": { \"G54\": [-300, -200, -400], \"G55\": [-290, -195, -402] }", StringComparison.Ordinal);
        Assert.Equal("X0 Y7", Values(Typist.Drill.Replace("G54", "G55", StringComparison.Ordinal) + "G81 X|", setup)[0]);
        Assert.Equal("R4", Values(Typist.Drill.Replace("G54", "G55", StringComparison.Ordinal) + "G81 R|", setup)[0]);
        Assert.Empty(Values(Typist.Drill.Replace("G54", "G55", StringComparison.Ordinal) + "G81 X|"));
    }

    /// <summary>A point of 118° is 0.3004 diameters long (engineering reference): 9 + 2.043 mm for 6.8 mm, to the next hundredth.</summary>
    [Fact]
    public void Z_is_the_depth_of_the_hole_and_the_drills_point()
    {
        Assert.Equal(["Z-11.05"], Values(Typist.Drill + "G81 X10 Y12 Z|"));
        Assert.Equal(["Z-9.55"], Values(Typist.Drill + "G81 X40 Y40 Z|"));
        Assert.Equal(["Z-13.05"], Values(Typist.Drill + "G91 G81 X10 Y12 R-48 Z|"));
        Assert.Equal(["Z-9"], Values(Typist.Drill.Replace("T5", "T6", StringComparison.Ordinal) + "G84 X10 Y12 Z|"));
    }

    /// <summary>A point of 90° leaves a diameter of twice its depth: 4 mm for M8.</summary>
    [Fact]
    public void Z_of_a_spot_drill_leaves_the_threads_diameter() =>
        Assert.Equal(["Z-4"], Values(Typist.Drill.Replace("T5", "T4", StringComparison.Ordinal) + "G82 X10 Y12 Z|"));

    [Fact]
    public void R_is_the_clearance_above_the_stock()
    {
        Assert.Equal(["R2"], Values(Typist.Drill + "G83 R|"));
        Assert.Equal(["R-48"], Values(Typist.Drill + "G91 G83 R|"));
        Assert.Empty(Values("G21 G90 G0 X0 Y0\nG2 X10 R|"));
    }

    [Fact]
    public void Q_is_a_diameter_or_half_of_it() => Assert.Equal(["Q6.8", "Q3.4"], Values(Typist.Drill + "G83 Q|"));

    /// <summary>Two turns at S2000 are 0.06 s; each control reads P in its own unit.</summary>
    [Theory]
    [InlineData("dwell=seconds", "P0.06")]
    [InlineData("dwell=milliseconds", "P60")]
    [InlineData("dwell=byPoint", "P60")]
    public void P_is_two_turns_in_the_unit_that_the_control_reads(string reading, string expected)
    {
        Assert.Equal([expected], Values(Typist.Drill + "G82 P|", machine: Editor.Reading(reading)));
        var analysis = Editor.Analyse(Typist.Accept(Typist.Drill + "G82 X1 Z-5 R2 P|", expected, Typist.Plate, Editor.Reading(reading)), Typist.Plate, Editor.Reading(reading));
        Assert.Equal(0.06, HoleTable.Of(analysis.Main)[0].Hole.DwellSeconds, 9);
    }

    [Fact]
    public void Lengths_are_written_as_the_program_writes_them()
    {
        Assert.Equal("X10. Y12.", Values(Typist.Drill + "G0 X1. Y1.\nX2. Z5.\nG81 X|")[0]);
        Assert.Equal("X10. Y12.", Values(Typist.Drill + "G81 X|", machine: Editor.Reading("integers=increments"))[0]);
        Assert.Equal("x10 y12", Values(Typist.Drill.ToLowerInvariant() + "g81 x|")[0]);
        Assert.Equal("X0.3937 Y0.4724", Values(Typist.Drill.Replace("G21", "G20", StringComparison.Ordinal) + "G81 X|")[0]);
    }

    [Fact]
    public void A_rotated_program_gets_no_places() => Assert.Empty(Values(Typist.Drill + "G68 X0 Y0 R30\nG81 X|"));
}
