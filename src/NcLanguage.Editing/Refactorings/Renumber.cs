using NcLanguage.Checks.Analysis;
using NcLanguage.Editing.Formatting;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Numbers the blocks of each program anew; the jumps follow.</summary>
sealed class Renumber : Refactoring
{
    /// <summary>Room for blocks put in between; smaller steps where a program is long.</summary>
    static readonly int[] Steps = [10, 5, 2, 1];

    public override string Name => "renumber";

    public override string Kind => "source.renumber";

    public override Reach Reach => Reach.Program;

    public override string? TitleFor(ProgramAnalysis analysis, Lines lines, CancellationToken cancel) => HasBlocks(analysis.Text, cancel) ? "Number the blocks anew in tens" : null;

    static bool HasBlocks(SourceText text, CancellationToken cancel)
    {
        foreach (var line in Lines.Each(0, text.LineCount - 1, cancel))
            if (Renumbering.TakesNumber(text.BlockAt(line)))
                return true;
        return false;
    }

    protected override bool NeedsEveryWay => false;

    protected override Draft Write(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        string? refusal = null;
        foreach (var step in Steps)
        {
            if (Renumbering.Of(analysis.Text, step, out refusal) is not { } numbers)
                continue;
            var draft = new Draft(analysis.Text);
            foreach (var edit in numbers.Edits(analysis.Text))
                draft.Add(edit);
            return draft;
        }
        return Draft.Refuse(char.ToUpperInvariant(refusal![0]) + refusal[1..] + ".");
    }
}
