using NcLanguage.Checks.Analysis;
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
        return new Edit(line, block.Line.Length, block.Line.Length, " " + words);
    }

    /// <summary>Words behind the last word of a block, before a comment that ends it.</summary>
    public static Edit Behind(ProgramAnalysis analysis, int line, string words)
    {
        var end = StepContext.WordsOf(analysis.Main.BlockAt(line)).End;
        return new Edit(line, end, end, " " + words);
    }

    /// <summary>The block that runs first of those that say more than a number and that the block skip switch cannot leave out; −1 where there is none.
    /// What is called may stand before the program that calls it.</summary>
    public static int FirstBlock(ProgramAnalysis analysis)
    {
        var run = analysis.Main;
        var (first, order) = (-1, int.MaxValue);
        for (var line = 0; line < analysis.Text.LineCount; line++)
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

    static bool SaysMore(in Block block)
    {
        if (block.Tokens.Length == 0 || block.Tokens[0].Kind == TokenKind.Skip || block.HasStatement)
            return false;
        foreach (ref readonly var token in block.Tokens)
            if (IsPlainWord(token))
                return true;
        return false;
    }

    static bool IsPlainWord(in Token token) =>
        !token.IsComment && token.Kind is not (TokenKind.Skip or TokenKind.Percent) && !token.IsWord('N') && !token.IsWord('O') && !token.IsWord(':');
}
