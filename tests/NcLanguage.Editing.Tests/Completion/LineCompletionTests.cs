using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Cutting;
using NcLanguage.Control.State;
using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Completions;

/// <summary>Whole blocks that are put in, by running what comes of them.</summary>
public sealed class LineCompletionTests
{
    static readonly string InCycle = Typist.Drill + "G99 G81 X100 Y50 Z-11.05 R2\n";

    // The plate with its clamp beside the holes, which are all as deep as each other.
    static readonly string Free = Typist.Plate.Replace("[25, 0, 0], \"max\": [45, 20, 25]", "[60, 0, 0], \"max\": [80, 20, 25]", StringComparison.Ordinal).Replace("7.5", "9", StringComparison.Ordinal);

    static ProgramAnalysis Run(string program, string label, string? setup = Typist.Plate) => Editor.Analyse(Typist.Accept(program, label, setup), setup);

    [Fact]
    public void A_cycle_line_drills_the_next_hole_of_the_drawing()
    {
        Assert.Equal("G83 G98 X10 Y12 Z-11.05 R2 Q6.8 F280", Typist.Accept(Typist.Drill + "G8|", "G83 X Y Z R Q F", Typist.Plate).Split('\n')[^1]);
        var analysis = Run(Typist.Drill + "|\nG80\nG0 Z50\nM30", "G81 X Y Z R F");
        var hole = Assert.Single(HoleTable.Of(analysis.Main)).Hole;
        Assert.Equal((10, 12, 2, -11.05, 280), (hole.X, hole.Y, hole.RLevel, hole.Bottom, hole.Feed));
        Assert.DoesNotContain(analysis.Findings, finding => finding.Line == 4 && finding.Severity == Checks.Severity.Error);
    }

    [Fact]
    public void What_is_not_known_is_left_open()
    {
        Assert.Equal("G81 G98 X${1:} Y${2:} Z${3:} R${4:} F${5:}", Typist.At("G21\n|").Entry("G81 X Y Z R F").NewText);
        Assert.Equal("G81 G98 X Y Z R F", Typist.At("G21\n|", snippets: false).Entry("G81 X Y Z R F").NewText);
    }

    [Fact]
    public void Places_to_fill_in_go_only_to_editors_that_have_them()
    {
        Assert.DoesNotContain(Typist.At(InCycle + "|", Typist.Plate, snippets: false).Entries, entry => entry.IsSnippet || entry.NewText.Contains('$', StringComparison.Ordinal));
        Assert.Contains(Typist.At(InCycle + "|", Typist.Plate).Entries, entry => entry.IsSnippet);
    }

    [Theory]
    [InlineData("G0 |")]
    [InlineData("| X10")]
    [InlineData("X1 G8|")]
    public void Whole_blocks_stand_alone(string line) => Assert.DoesNotContain(Typist.At(line, Typist.Plate).Entries, entry => entry.Kind == CompletionKind.Lines);

    [Fact]
    public void The_cycles_are_those_of_the_tool()
    {
        string[] Cycles(int tool) => [.. Typist.Labels(Typist.Drill.Replace("T5", "T" + tool, StringComparison.Ordinal) + "G|", Typist.Plate).Where(label => label.Contains(" X Y", StringComparison.Ordinal))];
        Assert.Equal(["G82 X Y Z R P F", "G81 X Y Z R F"], Cycles(4));
        Assert.Equal(["G84 X Y Z R F"], Cycles(6));
        Assert.Empty(Cycles(7));
    }

    /// <summary>The state that the end of a program leaves (NISTIR 6556 §3.6.1).</summary>
    [Fact]
    public void A_start_block_sets_the_modes()
    {
        var analysis = Run("|", "start block");
        var state = analysis.Main.Exit;
        Assert.True(state.HasSet(Slot.Units | Slot.Plane | Slot.Compensation | Slot.LengthOffset | Slot.Cycle | Slot.Distance | Slot.FeedMode | Slot.WorkOffset));
        Assert.Empty(analysis.Main.StepAt(0).Faults.Items.ToArray());
        Assert.Equal(LengthUnit.Inch, Run("|", "start block", Typist.Plate.Replace("\"mm\"", "\"inch\"", StringComparison.Ordinal)).Main.Exit.Units);
        // The unit that the program has said goes before that of the setup.
        Assert.Equal(LengthUnit.Inch, Run("G20 G17\n|", "start block").Main.Exit.Units);
    }

    [Fact]
    public void An_end_block_switches_off_what_is_on()
    {
        Assert.Equal(["M9", "M5", "G91 G28 Z0", "G90", "M30"], Typist.Accept(Typist.Drill + "M8\n|", "end block", Typist.Plate).Split('\n')[5..]);
        Assert.Equal(["G80", "M5", "G91 G28 Z0", "G90", "M30"], Typist.Accept(InCycle + "|", "end block", Typist.Plate).Split('\n')[5..]);
        var exit = Run(InCycle + "|", "end block").Main.Exit;
        Assert.True(exit.Ended);
    }

    [Fact]
    public void A_tool_change_brings_the_tool_its_length_and_its_speed()
    {
        var state = Run(Typist.Drill + "T|", "T4 tool change").Main.Exit;
        Assert.Equal((4, 14, SpindleState.Clockwise), (state.Tool, state.H, state.Spindle));
        // The clamp is 25 mm high, the clearance 2 mm.
        Assert.Equal(27, state.Position.Z);
        Assert.True(state.Speed > 0);
        Assert.DoesNotContain("T5 tool change", Typist.Labels(Typist.Drill + "T|", Typist.Plate));
        Assert.DoesNotContain("M6", Typist.At("T|", Typist.Plate, Editor.Reading("toolChange=T")).Entry("T5 tool change").NewText, StringComparison.Ordinal);
    }

    /// <summary>One of which the setup says that it does not turn is not given a spindle that does.</summary>
    [Fact]
    public void A_tool_that_works_standing_is_changed_in_without_starting_the_spindle()
    {
        var text = Typist.Accept("G21 G90 G17 G54\nT|", "T7 tool change", """{ "stock": { "min": [0, 0, -9], "max": [9, 9, 0] }, "obstacles": [], "tools": [ { "number": 7, "diameter": 6, "turns": false } ] }""");
        Assert.Equal(["T7 M6", "G90 G0 G43 H7 Z2"], text.Split('\n')[1..3]);
    }

    [Fact]
    public void The_holes_of_the_drawing_can_be_written_out()
    {
        foreach (var distance in new[] { "", "G91\n" })
        {
            var holes = HoleTable.Of(Run(InCycle + distance + "|", "holes of the drawing", Free).Main).Skip(1).Select(row => (row.Hole.X, row.Hole.Y)).Order();
            Assert.Equal([(10, 12), (40, 12), (40, 40)], holes);
        }
    }

    [Fact]
    public void Holes_that_the_cycle_does_not_fit_are_not_written_out()
    {
        var obstructed = Free.Replace("[60, 0, 0], \"max\": [80, 20, 25]", "[25, 0, 0], \"max\": [36, 20, 25]", StringComparison.Ordinal);
        var entry = Typist.At(InCycle + "|", obstructed).Entry("holes of the drawing");
        Assert.Equal("2 that this tool has not drilled yet, one a block; 1 left out", entry.Detail);
        // 4 mm from the clamp's edge to the hole, less 3.4 mm of the drill.
        Assert.Contains("- hole 2: 0.6 mm from clamp A", entry.Documentation, StringComparison.Ordinal);
        Assert.Equal([(10, 12), (40, 40)], HoleTable.Of(Run(InCycle + "|", "holes of the drawing", obstructed).Main).Skip(1).Select(row => (row.Hole.X, row.Hole.Y)).Order());
        // One alone needs no pattern.
        Assert.DoesNotContain("holes of the drawing", Typist.Labels(InCycle + "|", Typist.Plate));
    }

    static void AssertPlaces(IEnumerable<PatternHole> expected, ProgramAnalysis analysis)
    {
        var holes = HoleTable.Of(analysis.Main).Skip(1).ToList();
        Assert.Equal(expected.Count(), holes.Count);
        foreach (var (want, have) in expected.Zip(holes))
        {
            Assert.Equal(want.X, have.Hole.X, 9);
            Assert.Equal(want.Y, have.Hole.Y, 9);
        }
    }

    /// <summary>The figure, which is held against published bolt circles elsewhere, and the loop say the same.</summary>
    [Fact]
    public void A_bolt_circle_drills_as_its_figure_says() => AssertPlaces(HolePattern.Circle(new(0, 0), 40, 6, 0), Run(InCycle + "|", "bolt circle"));

    [Fact]
    public void A_hole_arc_drills_as_its_figure_says() => AssertPlaces(HolePattern.Arc(new(0, 0), 40, 6, 0, 30), Run(InCycle + "|", "hole arc"));

    [Fact]
    public void A_hole_grid_drills_the_places_of_its_figure()
    {
        var holes = HoleTable.Of(Run(InCycle + "|", "hole grid").Main).Skip(1).Select(row => (row.Hole.X, row.Hole.Y)).Order();
        Assert.Equal(HolePattern.Grid(new(0, 0), 4, 3, 20, 20, 0).Select(hole => (hole.X, hole.Y)).Order(), holes);
    }

    [Fact]
    public void Patterns_take_variables_that_are_free() =>
        Assert.StartsWith("#2=", Typist.At("#1=5\n" + InCycle + "|", Typist.Plate).Entry("bolt circle").NewText, StringComparison.Ordinal);

    /// <summary>Without a cycle nothing is drilled: its line is offered first.</summary>
    [Fact]
    public void Patterns_need_a_cycle()
    {
        var labels = Typist.Labels(Typist.Drill + "|", Typist.Plate);
        foreach (var pattern in new[] { "bolt circle", "hole arc", "hole grid", "holes of the drawing" })
        {
            Assert.DoesNotContain(pattern, labels);
            Assert.Contains(pattern, Typist.Labels(InCycle + "|", Free));
        }
        Assert.Contains("G81 X Y Z R F", labels);
    }

    /// <summary>Whole blocks put in where they are offered bring no finding that was not there, what is left open aside.</summary>
    [Theory]
    [InlineData("T4 tool change")]
    [InlineData("end block")]
    [InlineData("G81 X Y Z R F")]
    public void What_is_put_in_brings_no_finding(string label)
    {
        const string Wet = "G21 G17 G40 G49 G80 G90 G94 G54\nG91 G28 Z0\nG90 T5 M6\nG0 X10 Y12\nG43 H5 Z50 S3550 M3\nM8\nG98 G81 X10 Y12 Z-11.05 R2 F500\nG80\n|";
        var end = label switch { "end block" => "", "G81 X Y Z R F" => "\nG80\nM9\nM5\nG91 G28 Z0\nG90\nM30", _ => "\nG0 X10 Y12\nG98 G82 X10 Y12 Z-4 R2 P0.1 F200\nG80\nM9\nM5\nG91 G28 Z0\nG90\nM30" };
        // No hole under the clamp.
        var analysis = Run(Wet + end, label, Typist.Plate.Replace("[25, 0, 0], \"max\": [45, 20, 25]", "[60, 0, 0], \"max\": [80, 20, 25]", StringComparison.Ordinal));
        Assert.DoesNotContain(analysis.Findings, finding => finding.Name is not ("hole-missing" or "hole-not-finished"));
    }

    [Fact]
    public void Patterns_of_places_are_not_for_distances()
    {
        Assert.DoesNotContain("bolt circle", Typist.Labels(InCycle + "G91\n|", Typist.Plate));
        Assert.DoesNotContain("bolt circle", Typist.Labels(InCycle + "|", Typist.Plate, Editor.Reading("holePositions=incremental")));
    }

    [Fact]
    public void Lines_end_as_the_text_does()
    {
        var analysis = ProgramAnalysis.Create(Syntax.Text.SourceText.From("G21\r\n\r\n"), Editor.Setup(Typist.Plate), Machine.Profiles.MachineProfile.IsoMill);
        Assert.Contains("\r\n", Completion.At(analysis, 1, 0, true).Entry("T5 tool change").NewText, StringComparison.Ordinal);
    }
}
