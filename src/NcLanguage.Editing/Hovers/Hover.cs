using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>What a hover shows, in Markdown, and the bytes of the line it is about. Line and columns count from 0.</summary>
public sealed record HoverAnswer(string Markdown, int Line, int StartColumn, int EndColumn);

/// <summary>Says what a word or a block will do.</summary>
public static class Hover
{
    /// <summary>The answer at a byte column of a line, both from 0; null where there is nothing to say: comments, blank lines,
    /// places outside the text.</summary>
    public static HoverAnswer? At(ProgramAnalysis analysis, int line, int column)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        if (line < 0 || line >= analysis.Text.LineCount || column < 0)
            return null;
        var block = analysis.Main.BlockAt(line);
        if (column > block.Line.Length)
            return null;
        var index = TokenAt(block, column);
        if (index < 0)
            return HasWords(block) ? BlockHover.Of(analysis, line) : null;
        var token = block.Tokens[index];
        if (token.IsComment)
            return null;
        if (token.IsWord('N'))
            return BlockHover.Of(analysis, line);
        var text = WordHover.Of(analysis, line, index);
        return text is null ? null : new HoverAnswer(text, line, token.Start, token.End);
    }

    // A place right behind a word belongs to the word when nothing else does.
    static int TokenAt(in Block block, int column)
    {
        for (var i = 0; i < block.Tokens.Length; i++)
            if (column >= block.Tokens[i].Start && column < block.Tokens[i].End)
                return i;
        return -1;
    }

    static bool HasWords(in Block block)
    {
        foreach (ref readonly var token in block.Tokens)
            if (!token.IsComment)
                return true;
        return false;
    }
}
