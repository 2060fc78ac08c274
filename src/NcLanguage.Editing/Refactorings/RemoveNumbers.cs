using NcLanguage.Checks.Analysis;
using NcLanguage.Editing.Formatting;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Takes out the block numbers that no jump needs.</summary>
sealed class RemoveNumbers : Refactoring
{
    public override string Name => "removeNumbers";

    public override string Kind => "source.removeNumbers";

    public override Reach Reach => Reach.Program;

    public override string? TitleFor(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        foreach (var line in Lines.Each(0, analysis.Text.LineCount - 1, cancel))
            if (analysis.Text.BlockAt(line).NumberIndex >= 0)
                return "Remove the block numbers that no jump needs";
        return null;
    }

    protected override bool NeedsEveryWay => false;

    protected override Draft Write(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var text = analysis.Text;
        var needed = new HashSet<double>();
        for (var line = 0; line < text.LineCount; line++)
        {
            var block = text.BlockAt(line);
            if (JumpTargets.In(block) is not (>= 0 and var target))
                continue;
            if (block.Tokens[target].IsExpression || double.IsNaN(block.Tokens[target].Value))
                return Draft.Refuse($"Line {line + 1} jumps to a number that is worked out: any number may be needed.");
            needed.Add(block.Tokens[target].Value);
        }
        var draft = new Draft(text);
        for (var line = 0; line < text.LineCount; line++)
        {
            var block = text.BlockAt(line);
            var number = block.NumberIndex;
            // What cannot be read may hold anything; a number behind a variable's sign or a statement is none of the block's.
            if (number >= 0 && !block.Tokens[number].IsExpression && !block.Tokens[number].IsMalformed && !needed.Contains(block.Tokens[number].Value))
                draft.Remove(line, block, index => index == number);
        }
        return draft;
    }
}
