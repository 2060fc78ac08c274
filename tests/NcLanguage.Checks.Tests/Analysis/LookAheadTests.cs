using CsCheck;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Analysis;

/// <summary>Under radius compensation a block's end depends on the blocks behind it, which may stand in the next chunk and change without it.</summary>
public sealed class LookAheadTests
{
    static readonly Setup Job = Setup.None with { IsPresent = true, Stock = new Machine.Geometry.Box3(new(-100, -100, -20), new(100, 100, 20)), Tools = [new Tool { Number = 1, Diameter = 10, Length = 90 }] };

    static readonly Gen<string> Block = Gen.Frequency(
        (8, Gen.Select(Gen.OneOf("X", "Y", "X-", "Y-"), Gen.Int[1, 30], (axis, way) => $"G1 {axis}{way}")),
        (1, Gen.OneOf("(a note)", "", "Z-1", "M8", "G3 X10 Y10 J10", "G2 X8 Y-8 J-8")),
        (1, Gen.OneOf("G40 G1 X40", "G40 G1 Y40|G41 D1 X40", "G40 G1 X40|G42 D1 Y40")));

    static string Program(IEnumerable<string> blocks) => "G21 G17 G54 G90\nG0 X0 Y0 Z5\nG91 G1 F100\nG41 D1 X40\n" + string.Join('\n', blocks).Replace('|', '\n');

    /// <summary>Edits anywhere, chunk ends among them: the same findings, and the same moves, as from scratch.</summary>
    [Fact]
    public void Edits_behind_a_block_move_its_end() =>
        Gen.Select(Block.Array[200, 500], Gen.Select(Gen.Double[0, 1], Block).Array[1, 6], Gen.Double[0, 1].Array[6]).Sample((blocks, edits, looks) =>
        {
            var analysis = ProgramAnalysis.Create(SourceText.From(Program(blocks)), Job, MachineProfile.IsoMill);
            foreach (var (where, block) in edits)
            {
                // Half of the edits fall near the end of a chunk.
                var line = where < 0.5 ? (int)(where * 2 * (analysis.Text.LineCount - 1)) : NearChunkEnd(analysis.Text, where);
                // From the second character on, so that the chunk before stays the same object.
                var (old, now) = (analysis.Text.Line(line).ToArray(), System.Text.Encoding.UTF8.GetBytes(block.Replace('|', '\n')));
                var kept = old.Length > 0 && now.Length > 0 && old[0] == now[0] ? 1 : 0;
                var (start, end) = (analysis.Text.OffsetOf(line, kept), analysis.Text.OffsetOf(line, old.Length));
                analysis = analysis.WithText(analysis.Text.WithChange(start, end, now.AsSpan(kept)));
                var fresh = ProgramAnalysis.Create(SourceText.From(analysis.Text.ToBytes()), Job, MachineProfile.IsoMill);
                Assert.Equal(fresh.Findings.ToList(), analysis.Findings.ToList());
                Assert.Equal(fresh.Main.Exit, analysis.Main.Exit);
                foreach (var at in looks.Select(look => (int)(look * (analysis.Text.LineCount - 1))).Append(line))
                {
                    Assert.Equal(fresh.Main.StepAt(at).Moves.Items.ToArray(), analysis.Main.StepAt(at).Moves.Items.ToArray());
                }
            }
        }, iter: 80);

    static int NearChunkEnd(SourceText text, double where)
    {
        var chunk = (int)((where - 0.5) * 2 * (text.Chunks.Length - 0.001));
        return Math.Min(text.LineCount - 1, text.FirstLineOf(chunk) + text.Chunks[chunk].LineCount + (int)(where * 1000) % 3);
    }

    const string Corner = "G0 X-30 Y-1\nG1 G41 D1 X0 Y0 F100\nY40\nX-30\nG40 Y80\n";

    /// <summary>Loops, called programs and stretches that are never reached see what follows, too: the corner at X0 Y40 ends 5 mm from both sides.</summary>
    [Theory]
    [InlineData("G21 G90 G17 G54\n#1=0\nWHILE [#1 LT 2] DO1\n" + Corner + "#1=[#1+1]\nEND1\nM30", 5)]
    [InlineData("G21 G90 G17 G54\nM98 P100\nM30\nO100\n" + Corner + "M99", 6)]
    [InlineData("G21 G90 G17 G54\n#1=0\nO1 DO\n#1=[#1+1]\nO1 WHILE [#1 LT 1]\nG0 X-30 Y-1\nG1 G41 D1 X0 Y0 F100\nY40\nO1 WHILE [#1 LT 2]\nX-30\n#1=[#1+1]\nO1 ENDWHILE\nG40 Y80\nM30", 7)]
    [InlineData("G21 G90 G17 G54\nGOTO 10\nN5 G17 G90 G21 G54\n" + Corner + "N10 M30", 5)]
    public void Runs_that_leave_the_order_of_the_text(string program, int line)
    {
        var run = ProgramAnalysis.Create(SourceText.From(program), Job, MachineProfile.IsoMill).Main;

        Assert.NotNull(run.Flow);
        var end = run.StepAt(line).Moves.Items[^1].To;
        Assert.Equal((-5, 35), (end.X, end.Y));
    }

    /// <summary>A control reads on into a called program and behind its end (common practice): compensation that is switched on before a call and off behind it is followed as if it stood in one
    /// piece, by the run and by who asks for a single block.</summary>
    [Theory]
    [InlineData("M98 P100\nG40 G1 Y80\nM30\nO100\nY40\nX-30\nM99", "")]
    [InlineData("Y40\nM98 P100\nG40 G1 Y80\nM30\nO100\nX-30\nM99", "")]
    [InlineData("M98 P100\nX-30\nG40 G1 Y80\nM30\nO100\n(DOWN THE SIDE)\nM98 P200\nM99\nO200\nY40\nM99", "")]
    [InlineData("M98 P100\nG40 G1 Y80\nM30", "O100\nY40\nX-30\nM99")]
    [InlineData("M98 P100\nX-30\nG40 G1 Y80\nM30", "%\nO100\nY40\nM99\n%")]
    public void Calls_between_the_blocks_of_a_contour(string contour, string file)
    {
        const string Head = "G21 G90 G17 G54\nT1 M6\nG43 H1 Z5\nG0 X-30 Y-1\nG1 G41 D1 X0 Y0 F100\n";
        var programs = file.Length > 0 ? new Beside(file) : null;
        var analysis = ProgramAnalysis.Create(SourceText.From(Head + contour), Job, MachineProfile.IsoMill, new AnalysisOptions(Programs: programs));
        var straight = ProgramAnalysis.Create(SourceText.From(Head + "Y40\nX-30\nG40 G1 Y80\nM30"), Job, MachineProfile.IsoMill);

        Assert.DoesNotContain(analysis.Findings, finding => finding.Name is "path-not-known" or "compensation-entry" or "compensation-corner");
        Assert.Equal(Moves(straight), Moves(analysis));
        // Where it is switched on, asked by itself.
        Assert.Equal(straight.Main.StepAt(4).Moves.Items[^1].To, analysis.Main.StepAt(4).Moves.Items[^1].To);
        Assert.Equal((-5, 0), (Math.Round(analysis.Main.StepAt(4).Moves.Items[^1].To.X, 9), Math.Round(analysis.Main.StepAt(4).Moves.Items[^1].To.Y, 9)));
    }

    /// <summary>A program that is called twice in one go goes on with its beginning.</summary>
    [Fact]
    public void A_program_that_is_called_more_than_once_comes_again()
    {
        const string Head = "G21 G90 G17 G54\nT1 M6\nG43 H1 Z5\nG0 X-30 Y-1\nG1 G41 D1 X0 Y0 F100\nG91\n";
        const string Tail = "G90 G40 G1 X-60\nM30";
        var called = ProgramAnalysis.Create(SourceText.From(Head + "M98 P100 L2\n" + Tail + "\nO100\nY20\nX20\nM99"), Job, MachineProfile.IsoMill);
        var straight = ProgramAnalysis.Create(SourceText.From(Head + "Y20\nX20\nY20\nX20\n" + Tail), Job, MachineProfile.IsoMill);
        Assert.Equal(Moves(straight), Moves(called));
    }

    static List<(double X, double Y)> Moves(ProgramAnalysis analysis)
    {
        var exit = analysis.Main.Exit.Position;
        var moves = new List<(double X, double Y)> { (Math.Round(exit.X, 9), Math.Round(exit.Y, 9)) };
        foreach (var part in analysis.Main.Results)
            foreach (var cut in part.Cuts)
                moves.Add((Math.Round(cut.To.X, 9), Math.Round(cut.To.Y, 9)));
        return moves;
    }

    sealed class Beside(string text) : ICalledPrograms
    {
        public CalledFile? Find(int number) => number == 100 ? new CalledFile("O100.nc", "O100.nc", SourceText.From(text)) : null;
    }

    /// <summary>An inside corner across the ends of two chunks is one: what stands behind makes room for it, or does not.</summary>
    [Fact]
    public void A_corner_between_two_chunks_edited()
    {
        for (var blanks = 100; blanks < 140; blanks++)
        {
            var text = SourceText.From(string.Concat(Enumerable.Repeat("(a note)\n", blanks)) + Program(["Y60", "X-12", "Y60", "G40 X-40"]));
            var analysis = ProgramAnalysis.Create(text, Job, MachineProfile.IsoMill);
            var (line, digit) = (blanks + 5, "X-12".Length - 1);
            var edited = analysis.WithText(text.WithChange(text.OffsetOf(line, digit - 1), text.OffsetOf(line, digit + 1), "4"u8));
            Assert.Contains(edited.Findings, finding => finding.Name == "compensation-corner");
        }
    }

    [Theory]
    [InlineData("X-12", 0)]
    [InlineData("X-4", 1)]
    public void A_corner_between_two_chunks(string side, int refused)
    {
        for (var blanks = 100; blanks < 140; blanks++)
        {
            var text = string.Concat(Enumerable.Repeat("(a note)\n", blanks)) + Program(["Y60", side, "Y60", "G40 X-40"]);
            var analysis = ProgramAnalysis.Create(SourceText.From(text), Job, MachineProfile.IsoMill);
            Assert.Equal(refused, analysis.Findings.Count(finding => finding.Name == "compensation-corner"));
        }
    }
}
