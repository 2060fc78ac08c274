using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Analysis;

/// <summary>A key makes no finding anew but those of the chunk it is struck in, however many there are; what it moves is moved once. Counted in objects that stay the same.</summary>
public class KeptFindingsTests
{
    /// <summary>A fault in every tenth block: a feed with a stray sign.</summary>
    static string Program(int blocks) =>
        "G21 G90 G17 G54\nT1 M6\nG0 G43 H1 Z50\nS1800 M3\nG1 X1 Y1 F100\n"
        + string.Concat(Enumerable.Range(0, blocks).Select(i => i % 10 == 5 ? $"G1 X{i} F@\n" : $"G1 X{i} Y{i % 7}\n")) + "G0 Z100\nM30\n";

    static ProgramAnalysis Analyse(string text) => ProgramAnalysis.Create(SourceText.From(text), Setup.None, MachineProfile.IsoMill with { IsChosen = true });

    static ProgramAnalysis Edit(ProgramAnalysis before, int line, string inserted)
    {
        var at = before.Text.OffsetOf(line, 0);
        return before.WithText(before.Text.WithChange(at, at, Encoding.UTF8.GetBytes(inserted)));
    }

    static int SameObjects(ProgramAnalysis before, ProgramAnalysis after) => before.Findings.Count(after.Findings.ToHashSet(ReferenceEqualityComparer.Instance).Contains);

    [Theory]
    [InlineData(5_000)]
    [InlineData(10_000)]
    [InlineData(20_000)]
    public void A_key_that_moves_no_line_makes_only_the_findings_of_its_chunk_anew(int blocks)
    {
        var before = Analyse(Program(blocks));
        var after = Edit(before, blocks / 2, " ");
        Assert.Equal(before.Findings.Length, after.Findings.Length);
        Assert.InRange(before.Findings.Length, blocks / 10, blocks / 5 + 10);
        Assert.InRange(before.Findings.Length - SameObjects(before, after), 1, 40);
    }

    [Fact]
    public void A_new_line_moves_what_stands_behind_it_once()
    {
        var before = Analyse(Program(10_000));
        var moved = Edit(before, 5_000, "\n");
        // What stands before it stays as it is.
        Assert.InRange(SameObjects(before, moved), before.Findings.Length / 2 - 40, before.Findings.Length / 2 + 40);
        var after = Edit(moved, 5_001, " ");
        Assert.InRange(moved.Findings.Length - SameObjects(moved, after), 1, 40);
        Assert.Equal(Analyse(after.Text.ToString()).Findings.ToArray(), after.Findings.ToArray());
    }

    // Chunks hold some hundred lines, and facts of them are kept in stretches of some hundred chunks: these are three stretches.
    [Fact]
    public void Edits_anywhere_in_a_long_text_find_what_a_new_look_does()
    {
        const int Blocks = 45_000;
        var analysis = Analyse(Program(Blocks));
        _ = analysis.Findings;
        (int Line, int Lines, string Text)[] edits =
        [
            (Blocks / 2, 0, " "),
            (3, 0, "\n"), // all behind it moves
            (Blocks - 40, 0, "G1 X1 F@\n"),
            (Blocks / 2, 0, string.Concat(Enumerable.Repeat("G1 X2 F@ (MANY)\n", 30_000))), // more chunks than before
            (Blocks / 3, 0, "/G1 X3\n"), // a block that can be skipped
            (Blocks / 3, 0, "G1 X4 F@ (nc-allow word-without-number: TO BE WRITTEN)\n"),
            (Blocks / 3, 2, ""),
            (100, 40_000, ""), // fewer
            (6, 0, "G81 X1 Y1 Z-5 R2 F100\nG80\n"), // the first hole
            (6, 2, ""),
            (0, 1, "G21 G90 G17 G55\n"), // other coordinates for all
        ];
        foreach (var (line, lines, text) in edits)
        {
            var (start, end) = (analysis.Text.OffsetOf(line, 0), analysis.Text.OffsetOf(line + lines, 0));
            analysis = analysis.WithText(analysis.Text.WithChange(start, end, Encoding.UTF8.GetBytes(text)));
            var fresh = Analyse(analysis.Text.ToString());
            Assert.Equal(fresh.Findings.ToArray(), analysis.Findings.ToArray());
            Assert.Equal(fresh.Main.FirstSetter(Control.State.Slot.Cycle), analysis.Main.FirstSetter(Control.State.Slot.Cycle));
            Assert.Equal(HoleTable.Of(fresh.Main).Count, HoleTable.Of(analysis.Main).Count);
        }
    }
}
