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
    public static string? In(in Block block) => CommentText.In(block, Longest);
}
