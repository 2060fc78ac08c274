using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>Where words go into a cycle's block.</summary>
static class CycleWords
{
    /// <summary>A word behind the depth and the R level, or behind the last word that is there.</summary>
    public static Edit AfterLevels(ProgramRun run, int line, string word)
    {
        var block = run.BlockAt(line);
        var after = Math.Max(block.IndexOf('Z'), block.IndexOf('R'));
        return after >= 0 && FirstUnreadable(block) < 0 ? WordEdits.After(line, block, after, word) : AtEnd(run, line, word);
    }

    /// <summary>A word behind the last one of the block, before a comment that ends it; before one that cannot be read, which may take in what stands behind it.</summary>
    public static Edit AtEnd(ProgramRun run, int line, string word)
    {
        var block = run.BlockAt(line);
        return FirstUnreadable(block) is var unreadable and >= 0 ? WordEdits.Before(line, block, unreadable, word) : WordEdits.AtEnd(line, block, word);
    }

    /// <summary>A word in place of the one with its letter, or behind the block's last word.</summary>
    public static Edit Set(ProgramRun run, int line, string word)
    {
        var block = run.BlockAt(line);
        var token = block.IndexOf(word[0]);
        return token >= 0 ? WordEdits.Replace(line, block, token, word) : AtEnd(run, line, word);
    }

    static int FirstUnreadable(in Block block)
    {
        for (var i = 0; i < block.Tokens.Length; i++)
            if (block.Tokens[i].IsMalformed)
                return i;
        return -1;
    }
}
