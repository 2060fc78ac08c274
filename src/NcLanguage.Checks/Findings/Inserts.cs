using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks;

/// <summary>Edits that put words or lines into a program without touching what stands there. Lines count from 0.</summary>
public static class Inserts
{
    /// <summary>The line end that the text uses; LF where it has none.</summary>
    public static string LineEnd(SourceText text)
    {
        var bytes = text.Chunks[0].Bytes;
        var at = bytes.IndexOfAny((byte)'\n', (byte)'\r');
        if (at < 0 || bytes[at] == '\n')
            return "\n";
        return at + 1 < bytes.Length && bytes[at + 1] == '\n' ? "\r\n" : "\r";
    }

    /// <summary>A line of its own behind another.</summary>
    public static Edit AfterLine(SourceText text, int line, string newLine)
    {
        var end = text.Line(line).Length;
        return new Edit(line, end, end, LineEnd(text) + newLine);
    }

    /// <summary>Words before the words of a block, behind its skip mark, block number and program number.</summary>
    public static Edit Before(ProgramAnalysis analysis, int line, string words)
    {
        var block = analysis.Main.BlockAt(line);
        foreach (ref readonly var token in block.Tokens)
            if (IsPlainWord(token))
                return new Edit(line, token.Start, token.Start, words + " ");
        return WordEdits.AtEnd(line, block, words);
    }

    /// <summary>Words behind the last word of a block, before comments that end it and before a word that cannot be read, which would take them in.</summary>
    public static Edit Behind(ProgramAnalysis analysis, int line, string words)
    {
        var block = analysis.Main.BlockAt(line);
        foreach (ref readonly var token in block.Tokens)
            if (token.IsMalformed)
                return new Edit(line, token.Start, token.Start, token.Start > 0 && block.Line[token.Start - 1] is not ((byte)' ' or (byte)'\t') ? $" {words} " : words + " ");
        return WordEdits.AtEnd(line, block, words);
    }

    /// <summary>A block of its own before another. In a program with jumps it takes over the number of the other, wherever in it that stands: a jump to it would pass by what stands before it.</summary>
    public static Edit BlockBefore(ProgramAnalysis analysis, int line, string words)
    {
        var block = analysis.Main.BlockAt(line);
        if (analysis.Main.Flow is not { Text.HasJumps: true } || block.NumberIndex is not (>= 0 and var index) || block.BeginsProgram)
            return WordEdits.BlockBefore(analysis.Text, line, words);
        ref readonly var number = ref block.Tokens[index];
        var rest = block.Tokens.Length > index + 1 ? block.Tokens[index + 1].Start : number.End;
        var end = LineEnding.Of(analysis.Text, line);
        if (index == 0)
            return new Edit(line, number.End, rest, $" {words}{end}");
        var (before, itself) = (Encoding.UTF8.GetString(block.Line[..number.Start]), Encoding.UTF8.GetString(block.Line[number.Start..number.End]));
        return new Edit(line, 0, rest, $"{itself} {words}{end}{before}");
    }

    /// <summary>A block of its own before the first (<see cref="FirstBlock"/>), which runs once: a jump back to the first passes by it, unless the run itself begins with one that leads there.</summary>
    public static Edit BlockBeforeFirst(ProgramAnalysis analysis, int line, string words) =>
        IsComeToByStatement(analysis.Main, line) ? BlockBefore(analysis, line, words) : WordEdits.BlockBefore(analysis.Text, line, words);

    static bool IsComeToByStatement(ProgramRun run, int line)
    {
        if (run.Flow is null)
            return false;
        for (var before = run.LeaderLines; before < run.Text.LineCount; before++)
            if (run.BlockAt(before).HasStatement && run.IsReached(before) && run.OrderOf(before) < run.OrderOf(line))
                return true;
        return false;
    }

    /// <summary>The block that runs first of those that say more than a number and that the block skip switch cannot leave out; −1 where there is none.
    /// What is called may stand before the program that calls it.</summary>
    public static int FirstBlock(ProgramAnalysis analysis)
    {
        var run = analysis.Main;
        var (first, order) = (-1, int.MaxValue);
        for (var line = run.LeaderLines; line < analysis.Text.LineCount; line++)
        {
            if (!SaysMore(run.BlockAt(line)))
                continue;
            if (run.Flow is null)
                return line;
            if (run.IsReached(line) && run.OrderOf(line) < order)
                (first, order) = (line, run.OrderOf(line));
        }
        return first;
    }

    /// <summary>A fix that gives a mode before a block that needs it: in the first block of the program, or in one of its own where that comes too late or turns radius compensation on, with
    /// which modes do not go together. Null where the program has no block to put it in, and where the first gives such a mode itself and may not be run.</summary>
    /// <param name="needed">The line of the block that needs the mode.</param>
    public static Fix? ModeBefore(ProgramAnalysis analysis, int needed, string code)
    {
        var line = FirstBlock(analysis);
        if (line < 0)
            return null;
        var run = analysis.Main;
        if (RunsBefore(run, needed, line))
            return new Fix($"Add {code} in a block before this one", FixSafety.Choice, [BlockBefore(analysis, needed, code)]);
        var words = run.StepAt(line).Words;
        // While radius compensation is on no such mode may be given, be it on because a block with / runs.
        if (words.Find(CodeTable.Find(code)!.Group) is not null || run.StepAt(line).Before.IsCompensationOn || analysis.Runs.OtherSkip?.StepAt(line).Before.IsCompensationOn == true)
            return null;
        return words.Find(ModalGroup.RadiusCompensation) is not null
            ? new Fix($"Add {code} in a block before the first", FixSafety.Choice, [BlockBeforeFirst(analysis, line, code)])
            : new Fix($"Add {code} to the first block", FixSafety.Choice, [Before(analysis, line, code)]);
    }

    /// <summary>Whether the block on a line runs before the one on another, as one that the skip switch may leave out before the first that it cannot.</summary>
    public static bool RunsBefore(ProgramRun run, int line, int other) => run.Flow is null ? line < other : run.OrderOf(line) < run.OrderOf(other);

    static bool SaysMore(in Block block)
    {
        // What stands behind a % on its line never runs.
        if (block.Tokens.Length == 0 || block.Tokens[0].Kind == TokenKind.Percent || block.IsSkippable || block.HasStatement)
            return false;
        // What is text, and no words, is not carried out.
        var words = block.TextIndex is >= 0 and var text ? block.Tokens[..text] : block.Tokens;
        foreach (ref readonly var token in words)
            if (IsPlainWord(token))
                return true;
        return false;
    }

    static bool IsPlainWord(in Token token) =>
        token.Kind is TokenKind.Word or TokenKind.BareLetter or TokenKind.Assignment or TokenKind.Statement && !token.IsWord('N') && !token.IsWord('O') && !token.IsWord(':');
}
