using System.Text;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Analysis;

/// <summary>Comments as a person reads them: without brackets, on one line, not longer than wanted.</summary>
public static class CommentText
{
    /// <summary>The first comment of a block that is a text for people; null where there is none.</summary>
    /// <param name="longest">Characters shown at most; what goes beyond ends in an ellipsis.</param>
    public static string? In(in Block block, int longest)
    {
        foreach (ref readonly var token in block.Tokens)
        {
            if (token.Kind is not (TokenKind.Comment or TokenKind.LineComment))
                continue;
            var text = Shown(block.TextOf(token), longest);
            if (text.Length > 0 && !text.StartsWith("nc-allow", StringComparison.OrdinalIgnoreCase))
                return text;
        }
        return null;
    }

    /// <summary>Whether a block holds a comment and nothing else but a block number.</summary>
    public static bool StandsAlone(in Block block)
    {
        var hasComment = false;
        foreach (ref readonly var token in block.Tokens)
            if (token.IsComment)
                hasComment = true;
            else if (!token.IsWord('N'))
                return false;
        return hasComment;
    }

    static string Shown(ReadOnlySpan<byte> comment, int longest)
    {
        var inside = comment.TrimStart("(; \t"u8);
        var text = new StringBuilder();
        foreach (var rune in Encoding.UTF8.GetString(inside.Length > 4 * longest ? inside[..(4 * longest)] : inside.TrimEnd(") \t"u8)).EnumerateRunes())
        {
            if (text.Length >= longest)
                return text.ToString().TrimEnd() + "…";
            text.Append(Rune.IsControl(rune) || Rune.IsWhiteSpace(rune) ? " " : rune.ToString());
        }
        return text.ToString().Trim();
    }
}
