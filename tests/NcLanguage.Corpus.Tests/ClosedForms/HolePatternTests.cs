using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Moves;
using static NcLanguage.Corpus.Tests.ClosedForms.Moves;

namespace NcLanguage.Corpus.Tests.ClosedForms;

/// <summary>Where holes lie and what drilling them comes to, from the formulas of the pattern and not from the trace.</summary>
/// <remarks>Sources: bolt circle X = Xc + R cos, Y = Yc + R sin (trade mathematics); order and levels of cycles NISTIR 6556 §3.5.16; pecks
/// ceil((R − Z) / Q); tapping feed pitch times speed (NISTIR 6556 §3.5.16.5); pitches ISO 261.</remarks>
public sealed class HolePatternTests
{
    [Fact]
    public void Bolt_circle_by_a_loop()
    {
        var holes = HolesOf("flange-loop");
        Assert.Equal(16, holes.Count);
        for (var k = 0; k < 16; k++)
            At(45 * Cos(45 * k), 45 * Sin(45 * k), holes[k]);
        // Eight spots from R2 to -4.5; five pecks each in eight holes of 19.5, each stroke but the first starting 1 mm above the one before.
        var spots = CutsOf("flange-loop").Where(move => move.Feed == 220).ToList();
        Near(8 * 6.5, spots.Sum(move => move.Length));
        Assert.Equal(8 * 5, CutsOf("flange-loop").Count - spots.Count);
    }

    [Fact]
    public void Bolt_circle_written_out()
    {
        var holes = HolesOf("flange-written");
        Assert.Equal(10, holes.Count);
        for (var k = 0; k < 5; k++)
        {
            At(32 * Cos(90 + 72 * k), 32 * Sin(90 + 72 * k), holes[k]);
            // The drill begins at the hole on the right, where the spot ended.
            At(32 * Cos(18 + 72 * k), 32 * Sin(18 + 72 * k), holes[5 + k]);
        }
    }

    [Fact]
    public void Grid_by_nested_loops()
    {
        var holes = HolesOf("sieve-grid");
        Assert.Equal(24, holes.Count);
        for (var i = 0; i < 6; i++)
            for (var j = 0; j < 4; j++)
                At(15 + 14 * i, 12 + 14 * j, holes[4 * i + j]);
        Near(24 * 8, CutLength("sieve-grid"));
    }

    [Fact]
    public void Family_of_parts_by_a_variable()
    {
        var holes = HolesOf("spacer-family");
        Assert.Equal([12.0, 78, 45], holes.Select(hole => hole.Hole.X));
        Assert.All(holes, hole => Assert.Equal(15, hole.Hole.Y));
    }

    /// <summary>The same program for the other parts of the family: type 1 is 60 long, type 2 is 90, neither has a hole in its middle.</summary>
    [Theory]
    [InlineData(1, 48)]
    [InlineData(2, 78)]
    public void Other_parts_of_the_family(int type, double second)
    {
        var program = CorpusProgram.Of("spacer-family");
        var text = program.Text.Replace("N30 IF", $"#500 = {type}\nN30 IF", StringComparison.Ordinal);
        Assert.Equal([12.0, second], HoleTable.Of(program.Analyse(text).Main).Select(hole => hole.Hole.X));
    }

    [Theory]
    [InlineData("manifold-deep", 83, 2, -48, 5)]
    [InlineData("manifold-deep", 73, 2, -18, 3)]
    [InlineData("tapped-block", 83, 2, -20, 4)]
    [InlineData("spacer-family", 83, 2, -12.5, 3.5)]
    [InlineData("jig-plate", 83, 2, -18.5, 4)]
    public void Pecks_of_a_hole(string name, int cycle, double r, double bottom, double peck)
    {
        var holes = HolesOf(name).Where(hole => hole.Hole.Cycle == cycle).ToList();
        Assert.NotEmpty(holes);
        var first = holes[0].Hole;
        // The strokes of the first hole: cuts straight down at its place.
        var strokes = Of(name).Where(move => move.Kind == MoveKind.Feed && move.Role == MoveRole.InHole && move.Feed == first.Feed && move.To.X == first.X && move.To.Y == first.Y)
            .Select(move => move.To.Z).ToList();
        var count = (int)Math.Ceiling((r - bottom) / peck);
        Assert.Equal(count, strokes.Count);
        for (var i = 0; i < count; i++)
            Near(Math.Max(r - peck * (i + 1), bottom), strokes[i]);
    }

    [Theory]
    [InlineData("tapped-block", 84, 500, 1.25)] // M8
    [InlineData("idler-shaft-support", 74, 320, 1.5)] // M10
    public void Tapping_feed_is_pitch_times_speed(string name, int cycle, double speed, double pitch)
    {
        var holes = HolesOf(name).Where(hole => hole.Hole.Cycle == cycle).ToList();
        Assert.NotEmpty(holes);
        Assert.All(holes, hole => Near(speed * pitch, hole.Hole.Feed));
    }

    [Fact]
    public void Boring_goes_out_as_each_cycle_says()
    {
        var moves = Of("bearing-block").Where(move => move.Role is MoveRole.Return or MoveRole.InHole).ToList();
        // G86 and G76 leave at rapid, G85 at the feed: two holes of 3 + 18 in and out.
        Near(2 * 2 * 21, moves.Where(move => move.Kind == MoveKind.Feed && move.Feed == 150).Sum(move => move.Length));
        Near(2 * 29, moves.Where(move => move.Kind == MoveKind.Feed && move.Feed == 90).Sum(move => move.Length));
        Near(2 * 29, moves.Where(move => move.Kind == MoveKind.Feed && move.Feed == 66).Sum(move => move.Length));
    }

    /// <summary>NISTIR 6556 §3.5.16.8; the shift by Q goes along X here: common practice.</summary>
    [Fact]
    public void Back_boring_goes_down_beside_the_axis_and_cuts_upwards()
    {
        var all = Of("snap-ring-seat");
        var moves = all.Skip(all.FindLastIndex(move => move.Kind == MoveKind.ToolChange)).ToList();
        var down = moves.FindIndex(move => move.From.Z == 3 && move.To.Z == -44);
        // The bar of 44 passes the bore of 30 from 7 beside the axis on.
        Assert.InRange(moves[down].From.X, (44 - 30) / 2.0, 44 / 2.0);
        Assert.Equal([(0.0, -44.0, -38.0), (0.0, -38.0, -44.0)], moves.Where(move => move.Kind == MoveKind.Feed).Select(move => (move.From.X, move.From.Z, move.To.Z)));
        Assert.All(moves.Where(move => move.Kind == MoveKind.Rapid && move.From.Z != move.To.Z && Math.Min(move.From.Z, move.To.Z) < 0), move => Near(7.5, move.To.X));
    }

    [Fact]
    public void Inches_are_25_4_mm()
    {
        double[] x = [0.75, 3.25, 3.25, 0.75];
        double[] y = [0.75, 0.75, 1.75, 1.75];
        var holes = HolesOf("adapter-inch");
        Assert.Equal(4, holes.Count);
        for (var k = 0; k < 4; k++)
        {
            At(25.4 * x[k], 25.4 * y[k], holes[k]);
            Near(25.4 * -0.65, holes[k].Hole.Bottom);
            Near(25.4 * 10.8, holes[k].Hole.Feed);
        }
        Near(5.2 * 25.4, CutsOf("adapter-inch")[0].Length);
        // 5.2 inches at 24 inches a minute.
        Near(5.2 / 24 * 60, CutsOf("adapter-inch")[0].Seconds);
    }

    [Fact]
    public void Block_skip_leaves_two_holes_out()
    {
        Assert.Equal([10.0, 40, 60, 90], HolesOf("optional-holes").Select(hole => hole.Hole.X));
        var analysis = CorpusProgram.Of("optional-holes").Analyse();
        var skipping = ProgramAnalysis.Create(analysis.Text, analysis.Setup, analysis.Machine, new AnalysisOptions(Skip: true));
        Assert.Equal([10.0, 90], HoleTable.Of(skipping.Main).Select(hole => hole.Hole.X));
    }

    [Fact]
    public void Named_variables_place_two_rows()
    {
        var holes = HolesOf("shelf-pins");
        Assert.Equal(12, holes.Count);
        for (var k = 0; k < 12; k++)
            At(20 + 16 * (k / 2), k % 2 == 0 ? 14 : 46, holes[k]);
        Near(12 * 11, CutLength("shelf-pins"));
    }

    [Fact]
    public void Hops_run_at_the_level_that_the_hole_before_left()
    {
        // Initial level 32 over the clamps, R2 where nothing stands: written down by hand from the plan of the clamps.
        double[] spot = [32, 2, 32, 2, 32, 32];
        double[] counterbore = [32, 32];
        Assert.Equal([.. spot, .. spot, .. counterbore], HolesOf("jig-plate").Select(hole => hole.Hole.ArriveAt));
    }

    [Fact]
    public void Places_in_a_cycle_as_distances()
    {
        double[] x = [15, 15 + 20, 15 + 20 + 20, 75, 95];
        double[] y = [10, 10, 18, 10, 10];
        var holes = HolesOf("hinge-strip");
        Assert.Equal(x, holes.Select(hole => hole.Hole.X));
        Assert.Equal(y, holes.Select(hole => hole.Hole.Y));
        // P200 on this machine are milliseconds.
        Assert.All(holes, hole => Near(0.2, hole.Hole.DwellSeconds));
    }

    [Fact]
    public void Local_shifts_add_35_each()
    {
        var holes = HolesOf("nameplate-row");
        Assert.Equal(8, holes.Count);
        for (var k = 0; k < 4; k++)
        {
            At(5 + 35 * k, 5, InFrame(holes[2 * k]));
            At(25 + 35 * k, 20, InFrame(holes[2 * k + 1]));
        }
    }

    [Fact]
    public void Each_datum_has_its_own_holes()
    {
        var holes = HolesOf("two-vises");
        Assert.Equal(6, holes.Count);
        for (var k = 0; k < 6; k++)
            At(10 + 40 * (k % 2) + 100 * (k / 2), 10, InFrame(holes[k]));
    }

    [Fact]
    public void Holes_by_radius_and_angle()
    {
        var holes = HolesOf("polar-ring");
        Assert.Equal(6, holes.Count);
        for (var k = 0; k < 6; k++)
            At(35 * Cos(60 * k), 35 * Sin(60 * k), holes[k]);
    }

    static NcLanguage.Machine.Geometry.Point3 InFrame(HoleRow hole) =>
        new NcLanguage.Machine.Geometry.Point3(hole.Hole.X, hole.Hole.Y, hole.Hole.Bottom) + hole.ToFrame;
}
