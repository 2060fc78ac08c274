using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.States;

/// <summary>The state and the holes as plain answers.</summary>
public sealed class StateAtTests
{
    const string Program = "G21 G90 G17 G54\nT4 M6\nG43 H4\nS1500 M3 F120\nG0 X10 Y12 Z50\nG99 G82 X20 Z-3 R2 P0.5\nX60\nG80\nM30\nG0 X1\n";

    [Fact]
    public void In_a_cycle()
    {
        var answer = StateAt.Line(Editor.Analyse(Program, Editor.PlateSetup), 6)!;
        Assert.True(answer.Runs);
        Assert.Equal((6, new PlaceAnswer(60, 12, 2)), (answer.Line, answer.Position));
        Assert.Equal(new PlaceAnswer(null, null, null), answer.MachinePosition);
        Assert.Equal(
            [
                "distance G90 = line 0", "units G21 = line 0", "plane G17 = line 0", "workOffset G54 = line 0", "compensation G40 = line ",
                "cycle G82 = line 5", "returnLevel G99 = line 5", "rLevel  =2 line 5", "bottom  =-3 line 5", "dwell  =0.5 line 5",
                "tool  =4 line 1", "selectedTool  =4 line 1", "lengthOffset G43 =4 line 2", "spindle M3 = line 3", "speed  =1500 line 3",
                "feedMode G94 = line ", "feed  =120 line 3", "coolant M9 = line ",
            ],
            answer.Modes.Select(mode => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{mode.Name} {mode.Code} ={mode.Value} line {mode.SetLine}")));
    }

    [Fact]
    public void Before_anything_is_known()
    {
        var answer = StateAt.Line(Editor.Analyse("(nothing)"), 0)!;
        Assert.Equal(new PlaceAnswer(null, null, null), answer.Position);
        var feed = Assert.Single(answer.Modes, mode => mode.Name == "feed");
        Assert.Equal(new ModeAnswer("feed", null, null, null, null), feed);
        Assert.DoesNotContain(answer.Modes, mode => mode.Name == "cycle");
    }

    [Fact]
    public void Machine_coordinates_where_the_setup_gives_the_datum() => Assert.Equal(
        new PlaceAnswer(-310, -188, -255),
        StateAt.Line(Editor.Analyse(Program, Editor.PlateSetup.Replace("\"clearance\"", "\"workOffsets\": {\"G54\": [-320, -200, -400]}, \"clearance\"", StringComparison.Ordinal)), 4)!.MachinePosition);

    [Fact]
    public void Behind_the_end_nothing_runs() => Assert.False(StateAt.Line(Editor.Analyse(Program), 9)!.Runs);

    /// <summary>How a loop and a jump run: common practice.</summary>
    [Theory]
    [InlineData(2, true, 4, 0.0)]
    [InlineData(4, true, 4, 0.0)]
    [InlineData(6, false, 0, null)]
    [InlineData(7, true, 1, 50.0)]
    [InlineData(8, true, null, 50.0)]
    public void How_often_a_block_runs_and_where_it_first_leaves_the_tool(int line, bool runs, int? times, double? x)
    {
        var answer = StateAt.Line(Editor.Analyse("#1=0\nWHILE [#1 LT 4] DO 1\nG90 G21 G0 X[#1*10]\n#1=#1+1\nEND 1\nGOTO 90\nG0 X60\nN90 G0 X50\n\nM30"), line)!;
        Assert.Equal((runs, times, x), (answer.Runs, answer.Times, answer.Position.X));
    }

    [Fact]
    public void Without_loops_a_block_runs_once_or_not_at_all() => Assert.Equal(
        [1, 0], new[] { 6, 9 }.Select(line => StateAt.Line(Editor.Analyse(Program), line)!.Times));

    [Theory]
    [InlineData(-1)]
    [InlineData(11)]
    [InlineData(int.MaxValue)]
    public void Outside_the_text(int line) => Assert.Null(StateAt.Line(Editor.Analyse(Program), line));

    [Fact]
    public void The_table_of_holes() => Assert.Equal(
        [
            new HoleAnswer(1, 5, "G82", 4, 20, 12, 2, -3, 2, 50, 0.5, 120, 1500, 27),
            new HoleAnswer(2, 6, "G82", 4, 60, 12, 2, -3, 2, 2, 0.5, 120, 1500, null),
        ],
        HoleAnswers.Of(Editor.Analyse(Program, Editor.PlateSetup)).Holes.AsEnumerable());

    [Fact]
    public void Holes_of_which_little_is_known() => Assert.Equal(
        [new HoleAnswer(1, 0, "G81", null, 1, null, null, -1, null, null, 0, null, null, null)],
        HoleAnswers.Of(Editor.Analyse("G81 X1 Z-1")).Holes.AsEnumerable());

    [Fact]
    public void A_hole_of_another_plane_has_no_place_in_XY()
    {
        var hole = Assert.Single(HoleAnswers.Of(Editor.Analyse("G21 G90 G18\nG0 X0 Y10 Z0\nG99 G81 X5 Z7 Y-3 R2 F100")).Holes.AsEnumerable());
        Assert.Equal((null, null, 2.0, -3.0), (hole.X, hole.Y, hole.RLevel, hole.Bottom));
    }

    [Fact]
    public void Holes_say_their_work_offset_where_there_is_more_than_one()
    {
        var holes = HoleAnswers.Of(Editor.Analyse("G21 G90 G17 G54\nG0 X0 Y0 Z10\nG99 G81 X10 Y0 Z-3 R2 F120\nG80\nG52 X5\nG81 X10 Y0 Z-3 R2\nG80\nM30")).Holes;
        Assert.Equal(["G54", "G54"], holes.Select(hole => hole.WorkOffset));
        Assert.Null(holes[0].Shift);
        Assert.Equal(new PlaceAnswer(5, 0, 0), holes[1].Shift);
    }
}
