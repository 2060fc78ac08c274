using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>Comments that name a part of a program.</summary>
static class Titles
{
    const int Longest = 40;

    /// <summary>The comment of a line's block or else, where nothing but one stands in the line above, that one; null where there is none.</summary>
    public static string? Above(ProgramAnalysis analysis, int line)
    {
        if (In(analysis.Main.BlockAt(line)) is { } own)
            return own;
        if (line == 0)
            return null;
        var above = analysis.Main.BlockAt(line - 1);
        return above.Tokens.Length == 1 ? In(above) : null;
    }

    /// <summary>The first comment of a block that is a text for people; null where there is none.</summary>
    public static string? In(in Block block)
    {
        foreach (ref readonly var token in block.Tokens)
        {
            if (token.Kind is not (TokenKind.Comment or TokenKind.LineComment))
                continue;
            var text = Shown(block.TextOf(token));
            if (text.Length > 0 && !text.StartsWith("nc-allow", StringComparison.OrdinalIgnoreCase))
                return text;
        }
        return null;
    }

    static string Shown(ReadOnlySpan<byte> comment)
    {
        var inside = comment.TrimStart("(; \t"u8);
        var text = new StringBuilder();
        foreach (var rune in Encoding.UTF8.GetString(inside.Length > 4 * Longest ? inside[..(4 * Longest)] : inside.TrimEnd(") \t"u8)).EnumerateRunes())
        {
            if (text.Length >= Longest)
                return text.ToString().TrimEnd() + "…";
            text.Append(Rune.IsControl(rune) || Rune.IsWhiteSpace(rune) ? " " : rune.ToString());
        }
        return text.ToString().Trim();
    }
}
