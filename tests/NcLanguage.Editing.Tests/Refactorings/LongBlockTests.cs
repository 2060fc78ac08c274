using System.Text;
using CsCheck;
using NcLanguage.Checks.Analysis;
using NcLanguage.Editing.Refactorings;
using NcLanguage.Editing.Tests.Support;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Tests.Refactorings;

/// <summary>Refactorings of programs whose blocks make thousands of moves each. Work is counted by the bytes that it takes.</summary>
public sealed class LongBlockTests
{
    /// <summary>50 holes of 1,077 strokes, 160,000 moves in all.</summary>
    static readonly string Program =
        "G21 G90 G17 G54\nT1 M6\nS1000 M3\nG43 H1 G0 X0 Y0 Z50\n" + string.Concat(Enumerable.Range(0, 50).Select(i => $"G98 G83 X{i * 37 % 100} Y{20 + i} Z-19 R2 Q0.0195 F180\n")) + "G80\nM30\n";

    static readonly Lazy<ProgramAnalysis> Analysis = new(() => Editor.Analyse(Program, Editor.PlateSetup));

    /// <summary>What a refactoring lists would take more than 60 MB for both texts.</summary>
    [Theory]
    [InlineData("renumber")]
    [InlineData("addPoints")]
    [InlineData("dropIdleWords")]
    [InlineData("toDistances")]
    [InlineData("convertUnits")]
    public void Moves_are_not_kept(string name)
    {
        var analysis = Analysis.Value;
        var refactoring = RefactoringList.Find(name)!;
        Assert.NotNull(refactoring.TitleFor(analysis, Lines.At(5)));
        var before = GC.GetAllocatedBytesForCurrentThread();
        var result = refactoring.Of(analysis, Lines.At(5), default);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 40_000_000);
        Assert.Null(result.Refusal);
    }

    [Fact]
    public void What_is_too_long_to_be_worked_out_at_once_is_known_without_running_it_to_its_end()
    {
        Assert.True(RefactoringList.CanWorkOutAll(Analysis.Value, default));
        Assert.False(RefactoringList.CanWorkOutAll(Editor.Analyse(Program.Replace("Q0.0195", "Q0.0145", StringComparison.Ordinal)), default));
        Assert.Throws<OperationCanceledException>(() => RefactoringList.CanWorkOutAll(Analysis.Value, new CancellationToken(canceled: true)));
    }

    /// <summary>What goes over all lines for its title stops there; nothing is looked at of what is not wanted.</summary>
    [Fact]
    public void Offers_end_when_they_are_cancelled()
    {
        var (whole, canceled) = (new Lines(0, Analysis.Value.Text.LineCount - 1, IsCursor: false), new CancellationToken(canceled: true));
        foreach (var name in new[] { "renumber", "removeNumbers", "addPoints", "dropIdleWords", "toDistances", "arcToRadius", "arcToCentre", "gatherCycle", "orderHoles", "writeOutCycle" })
            Assert.Throws<OperationCanceledException>(() => RefactoringList.Find(name)!.TitleFor(Analysis.Value, whole, canceled));
        Assert.Empty(RefactoringList.For(Analysis.Value, whole, kind => false, canceled));
    }

    /// <summary>Edits by chance, made one by one from the last to the first and all at once.</summary>
    [Fact]
    public void Edits_made_together_give_what_they_give_one_by_one() => Gen.Select(Gen.Int[0, 3].Array[0, 30], Gen.Int[1, 40]).Sample((steps, every) =>
    {
        var text = SourceText.From(string.Concat(Enumerable.Range(0, 5000).Select(i => i % 7 == 0 ? "G1 X1\r\n" : "G1 X1\n")));
        var draft = new Draft(text);
        var line = 0;
        foreach (var step in steps)
        {
            if (step == 0)
                draft.InsertBefore(line, "(a)", "(b)");
            else if (step == 1)
                draft.Replace(line, 3, 5, "Y22");
            else if (step == 2)
                draft.ReplaceLines(line, line + 1, []);
            else
                draft.InsertBehind(line, "M1");
            line += step == 3 ? every * 4 : 2;
        }
        var one = text;
        foreach (var edit in draft.Edits.Reverse())
            one = Draft.Apply(one, [edit]);
        Assert.Equal(one.ToString(), Draft.Apply(text, draft.Edits).ToString());
    }, iter: 300);

    /// <summary>A chunk that is made anew takes some kilobytes: one change for each of the edits would take 100 MB.</summary>
    [Fact]
    public void Edits_beside_each_other_are_one_change()
    {
        var text = SourceText.From(string.Concat(Enumerable.Repeat("G1 X1 Y1 Z1 F1\n", 20_000)));
        var draft = new Draft(text);
        for (var line = 0; line < 20_000; line++)
            draft.Replace(line, 4, 5, "2");
        var edits = draft.Edits;
        var before = GC.GetAllocatedBytesForCurrentThread();
        var edited = Draft.Apply(text, edits);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 20_000_000);
        Assert.Equal(Encoding.UTF8.GetString(text.ToBytes()).Replace("X1", "X2", StringComparison.Ordinal), edited.ToString());
    }
}
