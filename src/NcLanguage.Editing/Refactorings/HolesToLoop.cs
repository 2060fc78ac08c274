using System.Globalization;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Writes holes that lie at even angles on a circle as a loop that works their places out. The first block stays as it is.</summary>
sealed class HolesToLoop : Refactoring
{
    /// <summary>Fewer holes are shorter written out.</summary>
    const int Fewest = 4;

    /// <summary>Variables that may count the holes, the first free one does: common ones, so that no call hands them over.</summary>
    const int FirstVariable = 101, LastVariable = 199;

    public override string Name => "holesToLoop";

    public override string Kind => "refactor.rewrite";

    public override Reach Reach => Reach.Place;

    protected override double Tolerance => MotionProof.WorkedOut;

    public override string? TitleFor(ProgramAnalysis analysis, Lines lines, CancellationToken cancel) =>
        HoleRun.In(analysis, lines, cancel) is { Count: >= Fewest } run && Circle(run, analysis) is not null ? "Write this bolt circle as a loop" : null;

    static BoltCircle? Circle(HoleRun run, ProgramAnalysis analysis)
    {
        if (run.Table[run.First].File is not null || analysis.Text.LineCount <= run.FirstLine)
            return null;
        // Blocks that run more than once are a loop already.
        if (analysis.Main.Flow is { } flow && (flow.RunsOf(run.FirstLine) > 1 || flow.RunsOf(run.LastLine) > 1))
            return null;
        var unit = UnitLength.Of(analysis.Main.StateBefore(run.FirstLine).Units);
        return BoltCircle.Through([.. Enumerable.Range(run.First, run.Count).Select(hole => (run.Table[hole].Hole.X / unit, run.Table[hole].Hole.Y / unit))], MotionProof.WorkedOut / unit);
    }

    protected override Draft Write(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var run = HoleRun.In(analysis, lines, cancel)!.Value;
        var text = analysis.Text;
        if ((run.Obstacle(analysis) ?? Obstacle(analysis, run)) is { } obstacle)
            return Draft.Refuse(obstacle);
        if (FreeVariable(text, analysis) is not { } variable)
            return Draft.Refuse($"No variable from #{FirstVariable} to #{LastVariable} is free.");
        var loop = FreeLoop(text);
        var words = Circle(run, analysis)!.Words($"#{variable}");
        var draft = Write(holes: run.Count);
        // What is worked out differs from what was written by rounding. Where the program goes on from just that place, the last hole stays as it is.
        return run.Count > Fewest && !MotionProof.MovesAlike(analysis, Draft.Apply(text, draft.Edits), Tolerance, cancel) ? Write(run.Count - 1) : draft;

        Draft Write(int holes)
        {
            var style = WordNumber.Of(text, analysis.Machine.Readings);
            var written = new Draft(text);
            written.ReplaceLines(run.FirstLine + 1, run.FirstLine + holes - 1,
            [
                $"#{variable} = 1",
                style.Code($"WHILE [#{variable} LT {holes}] DO {loop}"),
                style.Code(words),
                $"#{variable} = #{variable} + 1",
                style.Code($"END {loop}"),
            ]);
            return written;
        }
    }

    static string? Obstacle(ProgramAnalysis analysis, HoleRun run)
    {
        if (analysis.Machine.Readings.HolePositions == HolePositionReading.Incremental)
            return "X and Y inside a cycle are distances here: the loop would have to work out each from the last.";
        for (var i = run.First; i < run.End; i++)
        {
            var row = run.Table[i];
            if (row.Line != run.FirstLine + i - run.First)
                return "The blocks of the holes do not stand one below the other.";
            if (analysis.Main.StepAt(row.Line).After.Distance != DistanceMode.Absolute)
                return $"Line {row.Line + 1} is read in distances (G91): write it in positions first.";
            if (row.Return != run.Table[run.First].Return)
                return $"Line {row.Line + 1} returns to another level than the first.";
            if (i > run.First && HasMore(analysis.Text.BlockAt(row.Line)))
                return $"Line {row.Line + 1} says more than where its hole lies.";
        }
        return null;
    }

    static bool HasMore(in Block block)
    {
        foreach (ref readonly var token in block.Tokens)
            if (token.Kind != TokenKind.Word || (char)token.Letter is not ('N' or 'X' or 'Y'))
                return true;
        return false;
    }

    static int? FreeVariable(SourceText text, ProgramAnalysis analysis)
    {
        var all = text.ToString();
        for (var number = FirstVariable; number <= LastVariable; number++)
        {
            var name = "#" + number.ToString(CultureInfo.InvariantCulture);
            if (!all.Contains(name, StringComparison.Ordinal) && !analysis.Setup.Variables.ContainsKey(name))
                return number;
        }
        return null;
    }

    static int FreeLoop(SourceText text)
    {
        var taken = new HashSet<double>();
        for (var line = 0; line < text.LineCount; line++)
            foreach (ref readonly var token in text.BlockAt(line).Tokens)
                if (token.Statement == StatementKind.Do)
                    taken.Add(token.Value);
        for (var number = 1; number <= 3; number++)
            if (!taken.Contains(number))
                return number;
        // All are taken elsewhere: the blocks run once, so they stand in no loop of theirs.
        return 1;
    }
}
