using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Takes out words that change nothing: modes, feeds, speeds, words of a cycle and positions that are in force anyway. What a tool begins with stays,
/// so that the program can be begun there.</summary>
sealed class DropIdleWords : Refactoring
{
    /// <summary>Blocks with more tokens are left as they are.</summary>
    const int MostTokens = 64;

    public override string Name => "dropIdleWords";

    public override string Kind => "refactor.rewrite";

    public override Reach Reach => Reach.Lines;

    public override string? TitleFor(ProgramAnalysis analysis, Lines lines, CancellationToken cancel) =>
        !HasWords(analysis, lines, cancel) ? null : lines.IsCursor ? "Drop words that change nothing" : "Drop words that change nothing in these lines";

    static bool HasWords(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var (first, last) = lines.MeantOf(analysis.Text);
        foreach (var line in Lines.Each(first, last, cancel))
            if (analysis.Text.BlockAt(line).HasWords)
                return true;
        return false;
    }

    protected override Draft Write(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var text = analysis.Text;
        // For each line the tokens, as bits, that change nothing in any of its runs.
        var idle = new Dictionary<int, ulong>();
        foreach (var job in MotionProof.JobsOf(analysis))
        {
            var words = new IdleWords(job.Readings);
            var walk = new ProgramWalk(text, job, cancel);
            while (walk.MoveNext())
            {
                var (line, step) = (walk.Line, walk.Step);
                var block = text.BlockAt(line);
                var now = words.In(block, step, walk.Depth);
                if (lines.Means(line) && block.Tokens.Length <= MostTokens)
                    idle[line] = idle.GetValueOrDefault(line, ulong.MaxValue) & now;
            }
        }
        var draft = new Draft(text);
        foreach (var (line, tokens) in idle)
        {
            var block = text.BlockAt(line);
            var gone = KeepMeaning(block, tokens);
            if (gone != 0)
                draft.Remove(line, block, index => (gone >> index & 1) != 0);
        }
        return draft;
    }

    /// <summary>A block keeps one axis word if it has any, and one word beside its number.</summary>
    static ulong KeepMeaning(in Block block, ulong idle)
    {
        var (isMoving, axisLeft, wordLeft) = (false, false, false);
        ulong axes = 0;
        for (var i = 0; i < block.Tokens.Length && i < MostTokens; i++)
        {
            ref readonly var token = ref block.Tokens[i];
            if (token.Kind != TokenKind.Word || token.IsWord('N'))
                continue;
            var stays = (idle >> i & 1) == 0;
            wordLeft |= stays;
            if ((char)token.Letter is not ('X' or 'Y' or 'Z'))
                continue;
            (isMoving, axisLeft) = (true, axisLeft || stays);
            axes |= 1UL << i;
        }
        if (isMoving && !axisLeft)
            (idle, wordLeft) = (idle & ~axes, true);
        return wordLeft ? idle : 0;
    }
}
