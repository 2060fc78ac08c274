using CsCheck;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Comparison;
using NcLanguage.Editing.Refactorings;
using NcLanguage.Editing.Tests.Support;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Tests.Refactorings;

/// <summary>Refactorings of any text, also of what is no program, under any way of reading: none throws, and what is handed out moves the same.</summary>
public sealed class AnyProgramTests
{
    static readonly HashSet<string> MoveOtherwise = ["returnLevels", "allReturnLevels", "orderHoles"];

    [Fact]
    public void None_throws_and_none_moves_otherwise()
    {
        var setup = Editor.Setup(Editor.PlateSetup);
        Gen.Select(RobustnessTests.AnyMachine, RobustnessTests.AnyProgram, Gen.Double[0, 1], Gen.Int[0, 8]).Sample((machine, bytes, place, marked) =>
        {
            var analysis = ProgramAnalysis.Create(SourceText.From(bytes), setup, machine, new AnalysisOptions(MostBlocks: 2000));
            var last = analysis.Text.LineCount - 1;
            var first = (int)(place * last);
            var lines = new Lines(first, Math.Min(last, first + marked), marked == 0);
            foreach (var offer in RefactoringList.For(analysis, lines))
            {
                var result = offer.Refactoring.Of(analysis, lines, default);
                Assert.True(result.Refusal is null == result.Edits.Count > 0, offer.Title);
                if (result.Refusal is not null || MoveOtherwise.Contains(offer.Refactoring.Name))
                    continue;
                var edited = Draft.Apply(analysis.Text, result.Edits);
                var comparison = MotionComparison.Of(MotionList.Of(analysis.Text, analysis.Main.Job, default), MotionList.Of(edited, analysis.Main.Job, default));
                Assert.True(comparison.IsSame, $"{offer.Title}\n{analysis.Text}\nbecame\n{edited}");
            }
        }, iter: 200);
    }
}
