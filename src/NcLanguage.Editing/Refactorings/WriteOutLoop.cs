using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Writes the blocks of a loop as often as they run, with the numbers that their variables have then.</summary>
sealed class WriteOutLoop : Refactoring
{
    const int MostBlocks = 2000;

    /// <summary>Lines above the cursor in which the loop may begin.</summary>
    const int Farthest = 500;

    public override string Name => "writeOutLoop";

    public override string Kind => "refactor.inline";

    public override Reach Reach => Reach.Place;

    protected override double Tolerance => MotionProof.WorkedOut;

    public override string? TitleFor(ProgramAnalysis analysis, Lines lines, CancellationToken cancel) => LoopAt(analysis, lines) is null ? null : "Write this loop out as blocks";

    /// <summary>The innermost loop that holds all the lines: its first and last.</summary>
    static (int First, int Last)? LoopAt(ProgramAnalysis analysis, Lines lines)
    {
        if (analysis.Main.Flow is not { } flow)
            return null;
        for (var line = lines.First; line >= 0 && line > lines.First - Farthest; line--)
            if (analysis.Text.BlockAt(line).HasStatement && flow.Text.PartnerOf(line) is var (end, statement) && end > line && end >= lines.Last
                && statement is StatementKind.End or StatementKind.EndWhile or StatementKind.EndRepeat or StatementKind.While)
                return (line, end);
        return null;
    }

    protected override Draft Write(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var (first, last) = LoopAt(analysis, lines)!.Value;
        var text = analysis.Text;
        var written = new List<string>();
        var (isIn, isLeft, depth) = (false, false, 0);
        var seen = new HashSet<int>();
        var style = WordNumber.Of(text, analysis.Machine.Readings);
        var walk = new ProgramWalk(text, analysis.Main.Job, cancel);
        while (walk.MoveNext())
        {
            // A program called from the loop runs on its own lines.
            if (isIn && walk.Depth > depth)
                continue;
            if (walk.Line < first || walk.Line > last)
            {
                (isIn, isLeft) = (false, isIn || isLeft);
                continue;
            }
            if (isLeft)
                return Draft.Refuse($"The loop of line {first + 1} is begun more than once.");
            (isIn, depth) = (true, walk.Depth);
            var block = text.BlockAt(walk.Line);
            if (LoopBlock.Obstacle(block, walk.Step) is { } obstacle)
                return Draft.Refuse($"Line {walk.Line + 1} {obstacle}.");
            if (LoopBlock.Write(block, walk.Step, style, seen.Add(walk.Line)) is { Length: > 0 } line)
                written.Add(line);
            if (written.Count > MostBlocks)
                return Draft.Refuse($"Written out, the loop would take more than {MostBlocks} blocks.");
        }
        if (seen.Count == 0)
            return Draft.Refuse("The run does not come to this loop.");
        var draft = new Draft(text);
        draft.ReplaceLines(first, last, written);
        return draft;
    }
}
