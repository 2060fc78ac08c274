using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing.Refactorings;

/// <summary>One block of a loop as it runs.</summary>
static class LoopBlock
{
    /// <summary>Why it cannot be written without its loop, the rest of a sentence; null where it can.</summary>
    public static string? Obstacle(in Block block, Step step)
    {
        foreach (ref readonly var token in block.Tokens)
        {
            if (token.Kind == TokenKind.Skip)
                return "can be skipped by a switch at the machine";
            if (token.IsMalformed || token.Kind is TokenKind.Unknown or TokenKind.Excess or TokenKind.BareLetter)
                return "cannot be read to its end";
            if (token.Statement is StatementKind.Call or StatementKind.Sub or StatementKind.EndSub or StatementKind.Return)
                return "calls a subroutine with values of its own";
            if (block.HasStatement && token.Kind == TokenKind.Word && (char)token.Letter is not ('N' or 'O'))
                return "acts under a condition";
            if (token.Kind == TokenKind.Word && token.IsExpression && ((char)token.Letter is 'G' or 'M' || double.IsNaN(step.Words[(char)token.Letter])))
                return $"has a word whose number is not known ({block.StringOf(token)})";
        }
        return null;
    }

    /// <summary>Its words with numbers; empty where it only steers or sets variables. Comments stand there once.</summary>
    public static string Write(in Block block, Step step, WordNumber style, bool isFirstTime)
    {
        var (words, hasWord) = (new List<string>(), false);
        foreach (ref readonly var token in block.Tokens)
        {
            if (token.IsComment ? !isFirstTime : token.Kind != TokenKind.Word || token.IsWord('N') || token.IsWord('O'))
                continue;
            hasWord |= !token.IsComment;
            words.Add(token.Kind == TokenKind.Word && token.IsExpression
                ? style.Letter((char)token.Letter) + WordNumber.Number(step.Words[(char)token.Letter], step.After.Units == LengthUnit.Inch ? 6 : 4, style.HasPoints)
                : block.StringOf(token));
        }
        return hasWord || isFirstTime ? string.Join(' ', words) : "";
    }
}
