using CsCheck;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Analysis;

/// <summary>Under radius compensation a block's end depends on the blocks behind it, which may stand in the next chunk and change without it.</summary>
public sealed class LookAheadTests
{
    static readonly Setup Job = Setup.None with { IsPresent = true, Tools = [new Tool { Number = 1, Diameter = 10, Length = 90 }] };

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
    [InlineData("G21 G90 G17 G54\nGOTO 10\nN5 G17 G90 G21 G54\n" + Corner + "N10 M30", 5)]
    public void Runs_that_leave_the_order_of_the_text(string program, int line)
    {
        var run = ProgramAnalysis.Create(SourceText.From(program), Job, MachineProfile.IsoMill).Main;

        Assert.NotNull(run.Flow);
        var end = run.StepAt(line).Moves.Items[^1].To;
        Assert.Equal((-5, 35), (end.X, end.Y));
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
