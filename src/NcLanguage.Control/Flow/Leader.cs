using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Control.Flow;

/// <summary>What stands in a file before the % that begins the program: a name, a note of the shop, the leader of a tape. The control passes over it up to the % (ISO 6983-1, program start; from
/// memory).</summary>
/// <remarks>A program may also stand before a % that ends it. So only text that holds no block that could run is a leader, and only where a program follows.</remarks>
public static class Leader
{
    /// <summary>Lines that are looked at: no leader is longer.</summary>
    const int MostLines = 200;

    /// <summary>How many lines stand before the % that begins the program; 0 where the text begins with it, or has none.</summary>
    public static int LinesOf(SourceText text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var hasText = false;
        for (var line = 0; line < Math.Min(text.LineCount, MostLines); line++)
        {
            var block = text.BlockAt(line);
            if (block.Tokens.Length == 0)
                continue;
            if (block.Tokens[0].Kind == TokenKind.Percent)
                return hasText && HasBlocksBehind(text, line) ? line : 0;
            if (!IsProse(block))
                return 0;
            hasText = true;
        }
        return 0;
    }

    /// <summary>Whether a line is no block: something in it cannot be read as a word.</summary>
    static bool IsProse(in Block block)
    {
        foreach (ref readonly var token in block.Tokens)
            if (token.Kind is TokenKind.BareLetter or TokenKind.Unknown)
                return true;
        return false;
    }

    static bool HasBlocksBehind(SourceText text, int line)
    {
        for (line++; line < text.LineCount; line++)
            if (text.BlockAt(line).HasWords)
                return true;
        return false;
    }
}
