using CsCheck;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Clearance.Retract;

/// <summary>Random plates, clamps and holes under both readings.</summary>
public class HopPlanPropertyTests
{
    static readonly Gen<Obstacle> Clamps =
        Gen.Select(Gen.Int[0, 100], Gen.Int[0, 40], Gen.Int[3, 25], Gen.Int[3, 25], Gen.Int[1, 45], Gen.Bool)
            .Select((x, y, width, depth, top, round) => round
                ? new CylinderObstacle("stud", x, y, width, 0, top)
                : (Obstacle)new BoxObstacle("clamp", new Box3(new(x, y, 0), new(x + width, y + depth, top))));

    // Words as someone may have left them: none, G98, G99, a change of cycle with its own R, a block without a hole, a new run.
    static readonly Gen<string> Blocks =
        Gen.Select(Gen.Int[0, 100], Gen.Int[0, 50], Gen.Int[0, 11], Gen.Int[1, 6]).Select((x, y, kind, r) => kind switch
        {
            0 => $"G98 X{x} Y{y}",
            1 => $"G99 X{x} Y{y}",
            2 => $"G83 X{x} Y{y} Z-8 R{r} Q3",
            3 => "M8",
            4 => $"G98\nX{x} Y{y}",
            5 => $"G80\nG0 Z{30 + r * 3}\nG82 X{x} Y{y} Z-4 R{r} P0.2",
            6 => $"G91 X{r} Y{-r} L3\nG90",
            7 => $"X{x} Y{y} Z-6 R{r}",
            _ => $"X{x} Y{y}",
        });

    [Fact]
    public void After_the_fix_a_traverse_is_left_only_where_the_initial_level_is_not_enough() =>
        Gen.Select(Clamps.Array[0, 4], Blocks.Array[1, 10], Gen.Int[4, 50], Gen.Bool, Gen.Bool, Gen.Int[0, 3]).Sample((clamps, blocks, start, before, high, clearance) =>
        {
            var returns = before ? ReturnLevelReading.BeforeMove : ReturnLevelReading.AfterHole;
            var setup = HopJob.Setup(clamps) with { Clearance = clearance, ClampHeight = clamps.Length == 0 ? 20 : null };
            var program = HopJob.Program($"{(high ? "G98" : "G99")} G81 X5 Y5 Z-5 R2\n" + string.Join("\n", blocks), start);
            var first = HopJob.Analyse(program, setup, returns);
            var mended = HopJob.FixAll(first);

            foreach (var finding in HopJob.HopFindings(mended))
            {
                Assert.Empty(mended.FixesOf(finding));
                Assert.True(InitialLevelIsNotEnough(mended, finding.Line), Examples(first, mended, finding));
            }
            Assert.Equal(Places(first), Places(mended));
            // A traverse that was clear never gets lower.
            var (old, now) = (HoleTable.Of(first.Main), HoleTable.Of(mended.Main));
            for (var i = 0; i < old.Count; i++)
                Assert.True(now[i].Hole.ArriveAt >= old[i].Hole.ArriveAt, $"{first.Text}\n----\n{mended.Text}");
            Assert.Equal(first.Main.Exit.Position.Z, mended.Main.Exit.Position.Z);
        }, iter: 3000);

    static readonly Gen<(Obstacle[] Clamps, ReturnLevelReading Returns, string Program)> Loops =
        Gen.Select(Clamps.Array[1, 4], Blocks.Array[1, 5], Gen.Int[4, 50], Gen.Bool, Gen.Bool).Select((clamps, blocks, start, before, high) =>
            (clamps, before ? ReturnLevelReading.BeforeMove : ReturnLevelReading.AfterHole, HopJob.Program(
                $"#1 = 0\n{(high ? "G98" : "G99")} G81 X5 Y5 Z-5 R2\nWHILE [#1 LT 3] DO1\nG52 X[#1 * 9]\n{string.Join("\n", blocks)}\n#1 = [#1 + 1]\nEND1\nG52 X0", start)));

    /// <summary>A word stands in its block for all runs of it: where a loop runs the blocks three times, each time a little further on, one fix does for all of them or none is offered.</summary>
    [Fact]
    public void In_a_loop_no_traverse_gets_lower_and_nothing_is_left_to_mend() => Loops.Sample(loop =>
    {
        var first = HopJob.Analyse(loop.Program, HopJob.Setup(loop.Clamps), loop.Returns);
        var mended = With(first, HopJob.HopFindings(first).SelectMany(first.FixesOf).SelectMany(fix => fix.Edits));
        foreach (var finding in HopJob.HopFindings(mended))
            Assert.True(!mended.FixesOf(finding).Any(), Examples(first, mended, finding));
        Assert.Equal(Places(first), Places(mended));
        var (old, now) = (HoleTable.Of(first.Main), HoleTable.Of(mended.Main));
        for (var i = 0; i < old.Count; i++)
            Assert.True(now[i].Hole.ArriveAt >= old[i].Hole.ArriveAt, $"{first.Text}\n----\n{mended.Text}");
    }, iter: 1000);

    [Fact]
    public void In_a_loop_words_for_speed_bring_no_traverse_too_low() => Loops.Sample(loop =>
    {
        var first = HopJob.Analyse(loop.Program, HopJob.Setup(loop.Clamps), loop.Returns);
        var known = HopJob.HopFindings(first).Select(finding => finding.Line).ToHashSet();
        foreach (var fix in first.Findings.Where(finding => finding.Name == "return-higher-than-needed").SelectMany(first.FixesOf))
        {
            var quick = With(first, fix.Edits);
            foreach (var finding in HopJob.HopFindings(quick))
                Assert.True(known.Contains(finding.Line), Examples(first, quick, finding));
        }
    }, iter: 1000);

    static ProgramAnalysis With(ProgramAnalysis analysis, IEnumerable<Edit> edits) => ProgramAnalysis.Create(TextEdits.Apply(analysis.Text, edits), analysis.Setup, analysis.Machine);

    // The same question asked of the geometry itself: no level up to the initial one keeps the clearance on this traverse.
    static bool InitialLevelIsNotEnough(ProgramAnalysis analysis, int line)
    {
        var table = HoleTable.Of(analysis.Main);
        var (first, count) = table.At(line);
        for (var i = first; i < first + count; i++)
        {
            var hole = table[i].Hole;
            if (!hole.IsHop)
                continue;
            var from = table[i - 1].Hole;
            var level = Math.Max(hole.InitialLevel, Math.Max(hole.RLevel, from.RLevel));
            if (analysis.Setup.Obstacles.IsEmpty ? level < 20 + analysis.Setup.Clearance : !Sweep.Line(
                    new(from.X, from.Y, level), new(hole.X, hole.Y, level), ToolShape.From(analysis.Setup.Tools[0]),
                    analysis.Setup.Obstacles.AsSpan()).Clears(analysis.Setup.Clearance))
                return true;
        }
        return false;
    }

    static IEnumerable<(double, double, double)> Places(ProgramAnalysis analysis) =>
        HoleTable.Of(analysis.Main).Select(row => (row.Hole.X, row.Hole.Y, row.Hole.Bottom));

    static string Examples(ProgramAnalysis first, ProgramAnalysis mended, Finding left) =>
        $"{left.Line + 1}: {left.Message}\n{first.Text}\n----\n{mended.Text}";
}
