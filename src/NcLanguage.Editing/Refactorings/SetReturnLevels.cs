using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Lets every hole return to its R level (G99) where the traverse clears there, in one run of holes or in all of a program.</summary>
sealed class SetReturnLevels(Reach reach) : Refactoring
{
    public override string Name => reach == Reach.Program ? "allReturnLevels" : "returnLevels";

    public override string Kind => reach == Reach.Program ? "source.returnLevels" : "refactor.rewrite";

    public override Reach Reach => reach;

    public override string? TitleFor(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        // Where nothing is listed that stands in the way no traverse can be called clear.
        if (!HopClearance.CanJudge(analysis.Main.Job))
            return null;
        var table = HoleTable.Of(analysis.Main);
        if (reach == Reach.Program)
            return MayBeLower(table, 0, table.Count) ? "Set all return levels for least time" : null;
        return HoleRun.In(analysis, lines, cancel) is { Count: > 1 } run && MayBeLower(table, run.First, run.End) ? "Set the return levels of these holes for least time" : null;
    }

    /// <summary>Whether a traverse between two holes runs above the R level.</summary>
    static bool MayBeLower(HoleTable table, int first, int end)
    {
        for (var i = first + 1; i < end; i++)
            if (table.ResultAt(i).Hole is var hole && !(hole.ArriveAt <= hole.RLevel))
                return true;
        return false;
    }

    protected override Draft Write(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var run = analysis.Main;
        if (reach == Reach.Place)
        {
            if (HoleRun.In(analysis, lines, cancel) is { } holes)
                run = Lowered(run, holes.FirstLine, cancel);
        }
        else
        {
            // What is written for one run may say more for the next: each is weighed when those before it are written.
            for (var hole = 0; HoleTable.Of(run) is var table && hole < table.Count; hole = table.RunOf(hole).End)
                if (table[hole].File is null)
                    run = Lowered(run, table[hole].Line, cancel);
        }
        return ReferenceEquals(run, analysis.Main) ? Draft.Refuse("No return level here can be lower.") : LineChanges.Between(analysis.Text, run.Text);
    }

    static ProgramRun Lowered(ProgramRun run, int line, CancellationToken cancel) =>
        HopPlan.For(run, line, HopAim.Fast)?.Edits() is { Length: > 0 } edits ? run.WithText(TextEdits.Apply(run.Text, edits), [], [], cancel) : run;

    protected override string? Judge(ProgramAnalysis analysis, SourceText edited, CancellationToken cancel) => HoleProof.Refuse(analysis, edited, cancel);
}
