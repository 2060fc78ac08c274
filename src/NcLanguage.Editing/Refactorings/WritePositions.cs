using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Writes positions (G90) as distances (G91), or distances as positions. Blocks for which that cannot be said keep their words; G90 and G91 are put
/// where they are needed, and behind the lines the mode is as it was.</summary>
sealed class WritePositions(DistanceMode into) : Refactoring
{
    public override string Name => into == DistanceMode.Incremental ? "toDistances" : "toPositions";

    public override string Kind => "refactor.rewrite";

    public override Reach Reach => Reach.Lines;

    protected override double Tolerance => MotionProof.WorkedOut;

    public override string? TitleFor(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var (first, last) = lines.MeantOf(analysis.Text);
        var from = into == DistanceMode.Incremental ? DistanceMode.Absolute : DistanceMode.Incremental;
        var isIn = analysis.Main.StateBefore(first).Distance == from;
        if (!HasAxisWordIn(analysis.Text, first, last, from == DistanceMode.Incremental ? 91 : 90, isIn, cancel))
            return null;
        var where = lines.IsCursor ? "" : " in these lines";
        return into == DistanceMode.Incremental ? $"Write positions as distances (G91){where}" : $"Write distances as positions (G90){where}";
    }

    /// <summary>Whether an axis word stands in the lines where the mode may be in force, or behind its code.</summary>
    static bool HasAxisWordIn(SourceText text, int first, int last, int code, bool isIn, CancellationToken cancel)
    {
        foreach (var line in Lines.Each(first, last, cancel))
        {
            var block = text.BlockAt(line);
            isIn |= Checks.WordEdits.IndexOfCode(block, 'G', code) >= 0;
            if (isIn && (block.IndexOf('X') >= 0 || block.IndexOf('Y') >= 0 || block.IndexOf('Z') >= 0) && Checks.WordEdits.IndexOfCode(block, 'G', 28) < 0)
                return true;
        }
        return false;
    }

    protected override Draft Write(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var blocks = PositionBlocks.Read(analysis, lines, into, cancel);
        if (!blocks.Exists(block => block.IsWritten))
            return Draft.Refuse(into == DistanceMode.Incremental
                ? "No block here has positions that can be written as distances: the place before must be known, and the same each time the block runs."
                : "No block here has distances that can be written as positions: the place must be known, and the same each time the block runs.");
        var text = analysis.Text;
        var draft = new Draft(text);
        var style = WordNumber.Of(text, analysis.Machine.Readings);
        var mode = blocks[0].Before;
        foreach (var planned in blocks)
        {
            var block = text.BlockAt(planned.Line);
            WriteWords(draft, planned, block, style);
            mode = WriteMode(draft, text, planned, block, mode, style);
        }
        // A comment at the end belongs to what follows.
        var end = blocks.FindLast(planned => text.BlockAt(planned.Line).HasWords) ?? blocks[^1];
        if (mode != end.After && !end.EndsRun)
            draft.InsertBehind(end.Line, style.Code(CodeOf(end.After)));
        return draft;
    }

    static void WriteWords(Draft draft, PositionBlock planned, in Block block, WordNumber style)
    {
        if (!planned.IsWritten)
            return;
        foreach (var (index, value) in planned.Values)
        {
            ref readonly var token = ref block.Tokens[index];
            var own = style with { HasPoints = style.HasPoints || token.HasPoint };
            draft.Replace(planned.Line, token.ValueStart, token.End, own.Number(value));
        }
    }

    /// <summary>Puts the mode that a block needs before it, and takes out a word of the block that no longer holds.</summary>
    /// <returns>The mode in force behind the block.</returns>
    static DistanceMode WriteMode(Draft draft, SourceText text, PositionBlock planned, in Block block, DistanceMode mode, WordNumber style)
    {
        if (planned.BeginsProgram)
            return planned.After;
        var own = planned.ModeToken;
        var needed = planned.IsWritten ? planned.Into : planned.IsSensitive ? planned.After : mode;
        // A jump arrives here in the mode that the program had.
        var isSaid = mode == needed && !(planned.IsLabel && planned.Before != needed);
        if (own >= 0)
        {
            var said = block.Tokens[own].Value == 90 ? DistanceMode.Absolute : DistanceMode.Incremental;
            if (!planned.IsSensitive)
            {
                // A block that only sets modes: the blocks behind it say what they need.
                if (planned.IsAlone)
                    return said;
                needed = said;
            }
            if (said != needed)
                draft.Replace(planned.Line, block.Tokens[own].ValueStart, block.Tokens[own].End, CodeOf(needed)[1..]);
            return needed;
        }
        if (isSaid)
            return needed;
        if (planned.NeedsOwnLine)
            draft.InsertBefore(AboveComments(text, planned.Line), style.Code(CodeOf(needed)));
        else
            draft.Add(Checks.WordEdits.AtHead(planned.Line, block, CodeOf(needed)));
        return needed;
    }

    /// <summary>The first of the comments that stand right above a block, or its own line.</summary>
    static int AboveComments(SourceText text, int line)
    {
        while (line > 0 && text.BlockAt(line - 1) is { Tokens.Length: > 0, HasWords: false } above && above.Tokens[0].IsComment)
            line--;
        return line;
    }

    static string CodeOf(DistanceMode mode) => mode == DistanceMode.Incremental ? "G91" : "G90";
}
