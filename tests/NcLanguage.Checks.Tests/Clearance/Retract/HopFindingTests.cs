using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Clearance.Retract;

// Return levels: NISTIR 6556 §3.5.16 and §3.5.20 for afterHole; beforeMove is common practice. Distances by hand from the boxes: the clamp is
// 10 wide and the drill 6, so that from its middle the shortest way out is 5 + 3 mm.
public class HopFindingTests
{
    const ReturnLevelReading After = ReturnLevelReading.AfterHole;
    const ReturnLevelReading Before = ReturnLevelReading.BeforeMove;

    static (string Name, int Block)[] Found(string blocks, Setup setup, ReturnLevelReading returns = After, double start = 40) =>
        [.. HopJob.HopFindings(HopJob.Analyse(HopJob.Program(blocks, start), setup, returns)).Select(f => (f.Name, f.Line - HopJob.FirstBlock))];

    static string[] Fixed(string blocks, Setup setup, ReturnLevelReading returns = After, double start = 40)
    {
        var analysis = HopJob.FixAll(HopJob.Analyse(HopJob.Program(blocks, start), setup, returns));
        Assert.Empty(HopJob.HopFindings(analysis));
        return HopJob.Blocks(analysis, blocks.ReplaceLineEndings("\n").Split('\n').Length);
    }

    [Fact]
    public void After_the_hole_the_word_of_the_block_before_rules_the_traverse()
    {
        const string blocks = "G99 G81 X10 Y20 Z-5 R2\nX20\nX50\nX60";
        Assert.Equal([("hop-hits-obstacle", 2)], Found(blocks, HopJob.Setup(HopJob.Middle)));
        Assert.Equal(["G99 G81 X10 Y20 Z-5 R2", "G98 X20", "G99 X50", "X60"], Fixed(blocks, HopJob.Setup(HopJob.Middle)));
    }

    [Fact]
    public void Before_the_move_the_traverse_s_own_word_rules_it()
    {
        const string blocks = "G99 G81 X10 Y20 Z-5 R2\nX20\nX50\nX60";
        Assert.Equal([("hop-hits-obstacle", 2)], Found(blocks, HopJob.Setup(HopJob.Middle), Before));
        Assert.Equal(["G99 G81 X10 Y20 Z-5 R2", "X20", "G98 X50", "G99 X60"], Fixed(blocks, HopJob.Setup(HopJob.Middle), Before));
    }

    [Fact]
    public void The_same_words_clear_under_one_reading_only()
    {
        const string blocks = "G99 G81 X10 Y20 Z-5 R2\nG98 X20\nG99 X50\nX60";
        Assert.Empty(Found(blocks, HopJob.Setup(HopJob.Middle)));
        Assert.Equal([("hop-hits-obstacle", 2)], Found(blocks, HopJob.Setup(HopJob.Middle), Before));
        Assert.Equal(["G99 G81 X10 Y20 Z-5 R2", "G98 X20", "G98 X50", "G99 X60"], Fixed(blocks, HopJob.Setup(HopJob.Middle), Before));
    }

    [Fact]
    public void Several_clamps_each_ask_for_their_own_block()
    {
        const string blocks = "G99 G81 X10 Y20 Z-5 R2\nX20\nX50\nX60\nX90\nX100";
        var setup = HopJob.Setup(HopJob.Middle, HopJob.Right);
        Assert.Equal([("hop-hits-obstacle", 2), ("hop-hits-obstacle", 4)], Found(blocks, setup));
        Assert.Equal(["G99 G81 X10 Y20 Z-5 R2", "G98 X20", "G99 X50", "G98 X60", "G99 X90", "X100"], Fixed(blocks, setup));
        Assert.Equal(["G99 G81 X10 Y20 Z-5 R2", "X20", "G98 X50", "G99 X60", "G98 X90", "G99 X100"], Fixed(blocks, setup, Before));
    }

    [Fact]
    public void A_stud_is_round()
    {
        // Stud of 12 at (55, 20), drill of 6: along Y29 they are 0 apart, along Y31 exactly the clearance of 2, along Y30 1 mm.
        var setup = HopJob.Setup(HopJob.Stud);
        Assert.Equal([("hop-hits-obstacle", 1)], Found("G99 G81 X40 Y29 Z-5 R2\nX70", setup));
        Assert.Equal([("clearance-small", 1)], Found("G99 G81 X40 Y30 Z-5 R2\nX70", setup));
        Assert.Empty(Found("G99 G81 X40 Y31 Z-5 R2\nX70", setup));
        // The corner of the square around it is free: 45° off, the rim is 4.5 mm nearer to the middle than the square's.
        Assert.Empty(Found("G99 G81 X60 Y40 Z-5 R2\nX80 Y20", setup));
    }

    [Fact]
    public void Exactly_the_clearance_above_is_clear()
    {
        Assert.Empty(Found("G98 G81 X20 Y20 Z-5 R2\nX50", HopJob.Setup(HopJob.Middle), start: 27));
        Assert.Equal([("clearance-small", 1)], Found("G98 G81 X20 Y20 Z-5 R2\nX50", HopJob.Setup(HopJob.Middle), start: 26.999));
        Assert.Equal([("hop-hits-obstacle", 1)], Found("G98 G81 X20 Y20 Z-5 R2\nX50", HopJob.Setup(HopJob.Middle), start: 25));
    }

    [Fact]
    public void The_way_to_the_first_hole_is_no_hop() =>
        Assert.Empty(Found("G99 G81 X50 Y20 Z-5 R2\nX60", HopJob.Setup(HopJob.Middle), start: 10));

    [Fact]
    public void R_above_the_initial_level_is_the_level_crossed_at()
    {
        Assert.Empty(Found("G98 G81 X20 Y20 Z-5 R30\nX50", HopJob.Setup(HopJob.Middle), start: 5));
        Assert.Empty(Found("G99 G81 X20 Y20 Z-5 R30\nX50", HopJob.Setup(HopJob.Middle), Before, start: 5));
    }

    [Fact]
    public void An_initial_level_too_low_offers_no_words_and_says_the_level()
    {
        var analysis = HopJob.Analyse(HopJob.Program("G99 G81 X20 Y20 Z-5 R2\nX50", 15), HopJob.Setup(HopJob.Middle));
        var finding = Assert.Single(HopJob.HopFindings(analysis));
        Assert.Empty(analysis.FixesOf(finding));
        Assert.Equal(
            "The traverse from X20 Y20 to X50 Y20 at Z2 runs into middle clamp, 8 mm deep; it clears from Z27 up, and the initial level Z15 "
            + "is not enough: lift the tool that high before the cycle.", finding.Message);
    }

    [Fact]
    public void The_message_says_where_what_and_which_level()
    {
        var analysis = HopJob.Analyse(HopJob.Program("G99 G81 X20 Y20 Z-5 R2\nX50"), HopJob.Setup(HopJob.Middle));
        var finding = Assert.Single(HopJob.HopFindings(analysis));
        Assert.Equal(
            "The traverse from X20 Y20 to X50 Y20 at Z2 runs into middle clamp, 8 mm deep; it clears from Z27 up, and the initial level Z40 does.",
            finding.Message);
        var related = Assert.Single(analysis.Related(finding));
        Assert.Equal(HopJob.FirstBlock, related.Line);
    }

    [Fact]
    public void Repeats_in_G91_count_as_one_block()
    {
        // Holes at X20, 50, 80: the clamp stands between the first two.
        const string blocks = "G99\nG91 G81 X10 Z-7 R-38 L1\nX30 L2\nX10";
        var setup = HopJob.Setup(HopJob.Middle);
        Assert.Equal([("hop-hits-obstacle", 2)], Found(blocks, setup));
        Assert.Equal(["G99", "G91 G98 G81 X10 Z-7 R-38 L1", "G99 X30 L2", "X10"], Fixed(blocks, setup));
        Assert.Equal(["G99", "G91 G81 X10 Z-7 R-38 L1", "G98 X30 L2", "G99 X10"], Fixed(blocks, setup, Before));
    }

    [Fact]
    public void Cycles_may_change_within_a_run()
    {
        const string blocks = "G99 G81 X10 Y20 Z-5 R2\nG82 X20 Z-3 R2 P0.2\nG83 X50 Z-15 R2 Q4\nX60";
        Assert.Equal(
            ["G99 G81 X10 Y20 Z-5 R2", "G98 G82 X20 Z-3 R2 P0.2", "G99 G83 X50 Z-15 R2 Q4", "X60"],
            Fixed(blocks, HopJob.Setup(HopJob.Middle)));
    }

    [Fact]
    public void The_next_run_returns_where_it_did()
    {
        const string blocks = "G99 G81 X10 Y20 Z-5 R2\nX50\nG80\nG0 Z40 X60\nG82 Z-6 R2 P0.2\nX65";
        Assert.Equal(
            ["G99 G81 X10 Y20 Z-5 R2", "G98 X50", "G80", "G0 Z40 X60", "G99 G82 Z-6 R2 P0.2", "X65"],
            Fixed(blocks, HopJob.Setup(HopJob.Middle), Before));
    }

    [Fact]
    public void Block_numbers_comments_blanks_and_case_stay()
    {
        Assert.Equal(
            ["N10g99g81x10y20z-5r2", "N20  (before the clamp) g98 x20", "N30\tG99 X50 ; behind it"],
            Fixed("N10g99g81x10y20z-5r2\nN20  (before the clamp) x20\nN30\tX50 ; behind it", HopJob.Setup(HopJob.Middle)));
    }

    [Theory]
    [InlineData("G81 X20 Y20 Z-5 R2\nX50")] // no G98 or G99 before: the level is not known
    [InlineData("G99 G81 X#1 Y20 Z-5 R2\nX50")] // the place is not known
    public void What_is_not_known_is_not_judged(string blocks) => Assert.Empty(Found(blocks, HopJob.Setup(HopJob.Middle)));

    [Fact]
    public void Where_only_the_clamps_height_is_known_every_traverse_counts()
    {
        var setup = HopJob.Setup() with { ClampHeight = 25 };
        Assert.Equal([("retract-below-clamp", 1), ("retract-below-clamp", 2)], Found("G99 G81 X20 Y20 Z-5 R2\nX50\nX60", setup));
        Assert.Equal(["G98 G81 X20 Y20 Z-5 R2", "X50", "G99 X60"], Fixed("G99 G81 X20 Y20 Z-5 R2\nX50\nX60", setup));
        Assert.Equal([("clearance-small", 1)], Found("G98 G81 X20 Y20 Z-5 R2\nX50", setup, start: 26));
        Assert.Empty(Found("G98 G81 X20 Y20 Z-5 R2\nX50", setup, start: 27));
        Assert.Empty(Found("G99 G81 X20 Y20 Z-5 R2 L3", setup));
    }

    [Fact]
    public void A_bent_rapid_is_judged_by_its_bent_path()
    {
        // Straight from (20, 0) to (60, 40) the tool passes the stud's corner far off; each axis at its own rate it goes along 45° and meets the same.
        var corner = new BoxObstacle("corner clamp", new(new(50, 5, 0), new(60, 15, 20)));
        const string blocks = "G99 G81 X20 Y10 Z-5 R2\nX80 Y40";
        var straight = HopJob.Setup(corner);
        Assert.Empty(Found(blocks, straight));
        var machine = MachineProfile.IsoMill with { IsChosen = true, Rapid = new(15000, 2000, 15000), Readings = new Readings { RapidPath = RapidPathReading.PerAxis } };
        var bent = ProgramAnalysis.Create(NcLanguage.Syntax.Text.SourceText.From(HopJob.Program(blocks)), straight, machine);
        Assert.Equal(["hop-hits-obstacle"], HopJob.HopFindings(bent).Select(f => f.Name));
        Assert.Empty(HopJob.HopFindings(HopJob.FixAll(bent)));
    }

    [Fact]
    public void Words_for_speed_keep_the_traverses_clear()
    {
        var analysis = HopJob.Analyse(HopJob.Program("G98 G81 X10 Y20 Z-5 R2\nX20\nX50\nX60"), HopJob.Setup(HopJob.Middle));
        var findings = analysis.Findings.Where(f => f.Name == "return-higher-than-needed").ToList();
        // The traverses to X20 and X60 (blocks 1 and 3) are told once. From the bottom at Z-5 up to Z40 in place of Z2, and down again from Z40 to Z2, at 15 m/min and
        // 3 m/s²: 45 and 38 mm reach the rate (s / v + v / a), 7 mm do not (2 · sqrt(s / a)).
        var finding = Assert.Single(findings);
        Assert.Equal(1, finding.Line - HopJob.FirstBlock);
        Assert.Equal(2 * ((45 / 250.0) + (250 / 3000.0) - (2 * Math.Sqrt(7 / 3000.0)) + (38 / 250.0) + (250 / 3000.0)), finding.Value, 6);
        Assert.EndsWith("the way up costs 0.402 s, and with that of 1 more block of this run 0.804 s.", finding.Message, StringComparison.Ordinal);
        var quick = ProgramAnalysis.Create(TextEdits.Apply(analysis.Text, analysis.FixesOf(findings[0]).First().Edits), analysis.Setup, analysis.Machine);
        Assert.Equal(["G99 G81 X10 Y20 Z-5 R2", "G98 X20", "G99 X50", "G98 X60"], HopJob.Blocks(quick, 4));
        Assert.Empty(HopJob.HopFindings(quick));
        Assert.DoesNotContain(quick.Findings, f => f.Name == "return-higher-than-needed");
    }

    // What is told is what the program then takes less, by the times of its moves: pecks go all the way up each time or, by the reading, to R; a reamer or a tap at its feed (NISTIR 6556 §3.5.16.4 to .6).
    [Theory]
    [InlineData("G81 X10 Y20 Z-5 R2")]
    [InlineData("G82 X10 Y20 Z-5 R2 P0.3")]
    [InlineData("G83 X10 Y20 Z-15 R2 Q4")]
    [InlineData("G73 X10 Y20 Z-15 R2 Q4")]
    [InlineData("G84 X10 Y20 Z-12 R5")]
    [InlineData("G85 X10 Y20 Z-12 R2")]
    [InlineData("G95 F0.1 G85 X10 Y20 Z-12 R2")]
    [InlineData("G86 X10 Y20 Z-12 R2 P0.3")]
    [InlineData("G81 X10 Y20 Z-5 R2\nX15 Z-7 R4\nX18 R1")]
    [InlineData("G91 G83 X3 Z-15 R-38 Q4 L3\nG90 X30 Y20 Z-15 R2")]
    public void What_a_return_is_said_to_cost_is_saved(string blocks)
    {
        (ReturnLevelReading, PeckReturnReading)[] readings = [(After, PeckReturnReading.ReturnLevel), (After, PeckReturnReading.RLevel), (Before, PeckReturnReading.ReturnLevel)];
        foreach (var (returns, pecks) in readings)
        {
            var analysis = HopJob.Analyse(HopJob.Program($"G98 {blocks}\nX20\nX25"), HopJob.Setup(HopJob.Stud), returns, pecks);
            var finding = Assert.Single(analysis.Findings, finding => finding.Name == "return-higher-than-needed");
            var quick = ProgramAnalysis.Create(TextEdits.Apply(analysis.Text, Assert.Single(analysis.FixesOf(finding)).Edits), analysis.Setup, analysis.Machine);
            Assert.Equal(Seconds(analysis) - Seconds(quick), finding.Value, 6);
        }

        static double Seconds(ProgramAnalysis analysis)
        {
            var seconds = 0.0;
            foreach (var part in analysis.Main.Results)
                seconds += part.Seconds;
            return seconds;
        }
    }

    // A word stands in its block for all of its runs (common practice): the last X10 leads to no hole, and may not lose what the X10 before it needs.
    [Fact]
    public void A_block_that_a_loop_runs_again_gets_one_word()
    {
        const string blocks = "#1 = 0\nG99 G81 X10 Y20 Z-5 R2\nWHILE [#1 LT 2] DO1\nX60\nX10\n#1 = [#1 + 1]\nEND1";
        Assert.Equal([("hop-hits-obstacle", 3), ("hop-hits-obstacle", 4)], Found(blocks, HopJob.Setup(HopJob.Middle)));
        Assert.Equal(
            ["#1 = 0", "G98 G81 X10 Y20 Z-5 R2", "WHILE [#1 LT 2] DO1", "X60", "X10", "#1 = [#1 + 1]", "END1"], Fixed(blocks, HopJob.Setup(HopJob.Middle)));
        // It is thought out once for all blocks that hang together, however often they run.
        var run = HopJob.Analyse(HopJob.Program(blocks), HopJob.Setup(HopJob.Middle)).Main;
        Assert.Same(HopPlan.For(run, HopJob.FirstBlock + 3, HopAim.Clear), HopPlan.For(run, HopJob.FirstBlock + 4, HopAim.Clear));
    }

    // Shifted by G52 the same holes lie beside the clamp (NISTIR 6556 §3.5.16): one of the two calls needs the initial level.
    [Fact]
    public void Blocks_of_a_subprogram_do_for_all_calls()
    {
        const string blocks = "G52 X50\nM98 P200\nG52 X0\nM98 P200";
        const string sub = "\nO200\nG98 G81 X10 Y20 Z-5 R2\nX50\nX60\nM99";
        var analysis = HopJob.Analyse("O100\n" + HopJob.Program(blocks) + sub, HopJob.Setup(HopJob.Middle));
        var finding = Assert.Single(analysis.Findings, f => f.Name == "return-higher-than-needed" && analysis.Text.LineText(f.Line) == "X60");
        var quick = TextEdits.Apply(analysis.Text, Assert.Single(analysis.FixesOf(finding)).Edits);
        Assert.EndsWith("O200\nG98 G81 X10 Y20 Z-5 R2\nG99 X50\nG98 X60\nM99", string.Join("\n", Enumerable.Range(0, quick.LineCount).Select(quick.LineText)), StringComparison.Ordinal);
    }

    [Fact]
    public void Each_run_of_holes_is_told_for_itself_and_what_is_allowed_not_at_all()
    {
        const string blocks = "G98 G81 X10 Y20 Z-5 R2\nX20\nX25\nG80\nG0 Z40\nG98 G81 X60 Y20 Z-5 R2\nX65\nX70\nX75";
        List<Finding> Found(string program) =>
            [.. HopJob.Analyse(HopJob.Program(program), HopJob.Setup(HopJob.Middle)).Findings.Where(f => f.Name is "return-higher-than-needed" or "allow-idle")];
        Assert.Equal([1, 6], Found(blocks).Select(f => f.Line - HopJob.FirstBlock));
        Assert.Contains("2 more blocks", Found(blocks)[1].Message, StringComparison.Ordinal);
        var allowed = Found(blocks.Replace("X70", "(nc-allow return-higher-than-needed: chips)X70", StringComparison.Ordinal));
        Assert.Equal([1, 6], allowed.Select(f => f.Line - HopJob.FirstBlock));
        Assert.DoesNotContain("more block", allowed[1].Message, StringComparison.Ordinal);
    }

    // Cycles of ZX drill along Y (NISTIR 6556 §3.5.16).
    [Theory]
    [InlineData("G99 G81 X10 Z15 Y5 R-5\nX50", "hop-hits-obstacle", "The traverse from X10 Z15 to X50 Z15 at Y-5 runs into middle clamp, 8 mm deep.")]
    [InlineData("G99 G81 X35 Z15 Y55 R70", "cut-hits-obstacle", "The cycle's way down to Y55 cuts into middle clamp")]
    public void In_another_plane_places_and_levels_are_told_along_its_axes(string blocks, string name, string message)
    {
        var analysis = HopJob.Analyse(HopJob.Program($"Y-40\nG18\n{blocks}\nG80\nG0 Y-40\nG17"), HopJob.Setup(HopJob.Middle));
        Assert.StartsWith(message, Assert.Single(analysis.Findings, f => f.Name == name).Message, StringComparison.Ordinal);
    }
}
