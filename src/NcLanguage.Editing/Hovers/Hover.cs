using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>What a hover shows, in Markdown, and the bytes of the line it is about. Line and columns count from 0.</summary>
public sealed record HoverAnswer(string Markdown, int Line, int StartColumn, int EndColumn);

/// <summary>Says what a word or a block will do.</summary>
public static class Hover
{
    /// <summary>The answer at a byte column of a line, both from 0; null where there is nothing to say: comments other than those
    /// that silence a finding, blank lines, what cannot be read, places outside the text or inside a character.</summary>
    public static HoverAnswer? At(ProgramAnalysis analysis, int line, int column)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        if (line < 0 || line >= analysis.Text.LineCount || column < 0)
            return null;
        var block = analysis.Main.BlockAt(line);
        if (column > block.Line.Length || (column < block.Line.Length && IsInsideCharacter(block.Line[column])))
            return null;
        var index = TokenAt(block, column);
        if (index < 0)
            return HasWords(block) ? BlockHover.Of(analysis, line, column) : null;
        var token = block.Tokens[index];
        if (token.IsWord('N'))
            return BlockHover.Of(analysis, line, column);
        if (ExpressionHover.At(analysis, line, index, column) is { } part)
            return part;
        var text = WordHover.Of(analysis, line, index);
        return text is null ? null : new HoverAnswer(text, line, token.Start, token.End);
    }

    // The bytes of a UTF-8 character behind its first.
    static bool IsInsideCharacter(byte b) => (b & 0b1100_0000) == 0b1000_0000;

    // The end of a line belongs to the token that stands there: an editor puts its cursor behind the last character.
    static int TokenAt(in Block block, int column)
    {
        for (var i = 0; i < block.Tokens.Length; i++)
            if (column >= block.Tokens[i].Start && (column < block.Tokens[i].End || (column == block.Line.Length && column == block.Tokens[i].End)))
                return i;
        return -1;
    }

    static bool HasWords(in Block block)
    {
        foreach (ref readonly var token in block.Tokens)
            if (token.Kind is TokenKind.Word or TokenKind.Assignment or TokenKind.Statement)
                return true;
        return false;
    }
}
