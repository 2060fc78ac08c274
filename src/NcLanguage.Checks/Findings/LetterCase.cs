using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks;

/// <summary>Writes what fixes put in with small letters where the words beside it are written so: a control reads both alike, a person would see two hands in one program.</summary>
static class LetterCase
{
    /// <summary>How many lines above, and then below, are looked at for a word.</summary>
    const int MostLines = 100;

    public static Fix AsBeside(Fix fix, ProgramAnalysis analysis) =>
        analysis.Machine.Readings.ProgramMarks.LowerCase && fix.Edits.Any(edit => IsToBeSmall(analysis.Main, edit))
            ? fix with { Edits = [.. fix.Edits.Select(edit => IsToBeSmall(analysis.Main, edit) ? edit with { NewText = Small(edit.NewText) } : edit)] }
            : fix;

    static bool IsToBeSmall(ProgramRun run, Edit edit) => edit.NewText.AsSpan().ContainsAnyInRange('A', 'Z') && IsSmall(run, edit.Line) && !IsInComment(run, edit);

    static bool IsSmall(ProgramRun run, int line)
    {
        for (var above = line; above >= 0 && above > line - MostLines; above--)
            if (IsSmall(run.BlockAt(above)) is { } isSmall)
                return isSmall;
        for (var below = line + 1; below < run.Text.LineCount && below < line + MostLines; below++)
            if (IsSmall(run.BlockAt(below)) is { } isSmall)
                return isSmall;
        return false;
    }

    /// <summary>Whether the first word of a block, its number if it has no other, is small; null where it has none.</summary>
    static bool? IsSmall(in Block block)
    {
        var word = WordEdits.FirstWord(block);
        for (var i = 0; i < block.Tokens.Length && word < 0; i++)
            if (block.Tokens[i].Kind == TokenKind.Word && block.Tokens[i].Letter != ':')
                word = i;
        return word < 0 ? null : block.Line[block.Tokens[word].Start] is >= (byte)'a' and <= (byte)'z';
    }

    static bool IsInComment(ProgramRun run, Edit edit)
    {
        foreach (ref readonly var token in run.BlockAt(edit.Line).Tokens)
            if (token.IsComment && token.Start < edit.StartColumn && edit.StartColumn < token.End)
                return true;
        return false;
    }

    /// <summary>Words in small letters; comments stay.</summary>
    static string Small(string words)
    {
        var small = new StringBuilder(words.Length);
        var commentEnd = '\0';
        foreach (var sign in words)
        {
            small.Append(commentEnd == '\0' ? char.ToLowerInvariant(sign) : sign);
            if (commentEnd == sign)
                commentEnd = '\0';
            else if (commentEnd == '\0')
                commentEnd = sign switch { '(' => ')', ';' => '\n', _ => '\0' };
        }
        return small.ToString();
    }
}
