using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Analysis;

/// <summary>What a large program tells at once after an edit, before its distant places are compared.</summary>
public class FirstLookTests
{
    const int Rows = 3000;

    // Every hundredth hole is drilled twice, which only a look at the whole run of holes tells.
    static string Program(int rows = Rows) =>
        "T1 M6\nG21 G90 G54 G0 X0 Y0\nS900 M3\nG43 H1 Z50\nG99 G81 X900 Y900 Z-4 R2 F100\n"
        + string.Concat(Enumerable.Range(0, rows).Select(i => i % 100 == 50 ? $"X{i - 1} Y1\nX{i} Y2\n" : $"X{i} Y{(i % 100 == 49 ? 1 : 2)}\n")) + "G80\nG0 Z100\nM30\n";

    static ProgramAnalysis Analyse(string text) => ProgramAnalysis.Create(SourceText.From(text), Setup.None, MachineProfile.IsoMill with { IsChosen = true });

    static (ProgramAnalysis After, string Text) Edited(ProgramAnalysis before, string text, int at, int length, string replacement)
    {
        var edited = before.WithText(before.Text.WithChange(at, at + length, System.Text.Encoding.UTF8.GetBytes(replacement)));
        return (edited, string.Concat(text.AsSpan(0, at), replacement, text.AsSpan(at + length)));
    }

    [Theory]
    [InlineData("X1000 Y2\n", "X1000 Y2 \n")]
    [InlineData("X1000 Y2\n", "\nX1000 Y2\n")]
    [InlineData("X1000 Y2\n", "")]
    [InlineData("X1000 Y2\n", "(one)\n(two)\n(three)\nX1000 Y2 F90\n")]
    public void It_is_what_the_whole_look_finds_where_nothing_distant_changed(string old, string replacement)
    {
        var text = Program();
        var before = Analyse(text);
        Assert.Equal(Rows / 100, before.Findings.Count(finding => finding.Name == "hole-repeated"));
        var (after, _) = Edited(before, text, text.IndexOf("\n" + old, StringComparison.Ordinal) + 1, old.Length, replacement);
        Assert.Equal(after.FindAll(CancellationToken.None).ToArray(), before.WithText(after.Text).FirstLook(before).ToArray());
    }

    [Fact]
    public void What_was_taken_over_is_handed_on_to_the_next_version()
    {
        var text = Program();
        var before = Analyse(text);
        _ = before.Findings;
        var (second, secondText) = Edited(before, text, text.IndexOf("\nX1000 ", StringComparison.Ordinal) + 1, 0, "\n");
        _ = second.FirstLook(before);
        var (third, _) = Edited(second, secondText, secondText.IndexOf("\nX2000 ", StringComparison.Ordinal) + 1, 0, "\n\n");
        var look = third.FirstLook(second);
        Assert.Equal(third.FindAll(CancellationToken.None).ToArray(), look.ToArray());
    }

    [Fact]
    public void An_edit_that_changes_all_behind_it_shows_what_follows_it_at_once()
    {
        var text = Program(20_000);
        var before = Analyse(text);
        _ = before.Findings;
        var shown = new List<(int Run, Finding[] Findings)>();
        var at = text.IndexOf("G90", StringComparison.Ordinal);
        var after = before.WithText(
            before.Text.WithChange(at, at + 3, "G91"u8), onTheWay => shown.Add((onTheWay.BlocksRun, onTheWay.FirstLook(before).ToArray())));
        var (blocks, findings) = Assert.Single(shown);
        // The work before the first look does not grow with the program.
        Assert.InRange(blocks, ProgramRun.BlocksOfAFirstLook, ProgramRun.BlocksOfAFirstLook + 512);
        Assert.InRange(after.BlocksRun, 20_000, int.MaxValue);
        // What is told of the blocks behind the edit is what the whole run tells of them.
        var blockwise = after.Findings.Where(finding => !finding.Rule.ReadsFile && finding.Line < 900).ToArray();
        Assert.Equal(blockwise, findings.Where(finding => !finding.Rule.ReadsFile && finding.Line < 900).ToArray());
    }

    [Fact]
    public void A_small_edit_gives_no_look_on_the_way()
    {
        var text = Program();
        var before = Analyse(text);
        var at = text.IndexOf("\nX1000 ", StringComparison.Ordinal) + 1;
        before.WithText(before.Text.WithChange(at, at, " "u8), _ => Assert.Fail("on the way"));
    }
}
